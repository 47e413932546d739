package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// bored is the table with one hole in the middle of its top.
func bored(t testing.TB, s *shop.Shop, hole string, changes ...string) *Piece {
	return deriveWith(t, s, table+"holes:\n  port: {in: top, "+hole+"}\n", changes...)
}

// The pipe needs 2 1/8 in, the hub of its fitting 2 9/16 in: the hole must pass the hub (a public answer).
func TestAHolePassesTheLargestThingNotThePipe(t *testing.T) {
	p := bored(t, shop.Sample(), "at: [20 in, 10 in], diameter: 2 1/8 in, passes: hub 2 9/16 in")
	f := only(t, Hole(p), "lets hub")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "make it 2 5/8 in", "fit what is larger after the panel is on") // 2 9/16 and 1/32, up
	p = bored(t, shop.Sample(), "at: [20 in, 10 in], diameter: 2 5/8 in, passes: hub 2 9/16 in")
	verdict(t, only(t, Hole(p), "lets hub"), finding.Stands)
}

func TestAHoleSawCutsFromBothFaces(t *testing.T) {
	s := shop.Sample()
	for i := range s.Tools {
		if s.Tools[i].ID == "hole-saw" {
			s.Tools[i].Depth = inch(0.75)
		}
	}
	p := bored(t, s, "at: [20 in, 10 in], diameter: 2 1/8 in")
	f := only(t, Hole(p), "sawn")
	verdict(t, f, finding.Stands)
	says(t, f.Assumed[0], "from both faces")
	p = bored(t, s, "at: [20 in, 10 in], diameter: 2 1/8 in", "thickness: 1 1/8 in", "thickness: 1 3/4 in")
	f = only(t, Hole(p), "sawn")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "1/4 in thinner")
	p = bored(t, shop.Defaults(), "at: [20 in, 10 in], diameter: 2 1/8 in")
	verdict(t, only(t, Hole(p), "sawn"), finding.Unknown)
	for _, f := range Hole(bored(t, shop.Defaults(), "at: [20 in, 10 in], diameter: 1 in")) {
		if strings.Contains(f.Place, "sawn") {
			t.Errorf("a bit bores it: %s", told([]finding.Finding{f}))
		}
	}
}

// A hole of 2 in with its middle 1 1/4 in from the front edge leaves 1/4 in; the chamfer takes 1/8 in of it.
func TestARimKeepsOffTheEdgeAndItsProfile(t *testing.T) {
	at := "at: [20 in, 1 1/4 in], diameter: 2 in"
	f := only(t, Hole(bored(t, shop.Sample(), at)), "to the panel's edge")
	near(t, "wood", f.Figure.Value/25.4, 0.25, 1e-9)
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "move it 1/4 in away")
	p := bored(t, shop.Sample(), at, "feet: caps", "feet: caps\nedges:\n  top: {front: chamfer 1/8 in}")
	f = only(t, Hole(p), "to the panel's edge")
	near(t, "wood", f.Figure.Value/25.4, 0.125, 1e-9)
}

// The flange at 3, 3 is 3 1/2 in wide: a hole of 1 in at 6, 3 leaves 3 − 1.75 − 0.5 = 0.75 in; at 5, 4 it leaves
// √(4 + 1) − 2.25 < 0.
func TestARimKeepsOffAFlange(t *testing.T) {
	f := only(t, Hole(bored(t, shop.Sample(), "at: [6 in, 3 in], diameter: 1 in")), "to the flange")
	near(t, "wood", f.Figure.Value/25.4, 0.75, 1e-6)
	verdict(t, f, finding.Stands)
	f = only(t, Hole(bored(t, shop.Sample(), "at: [5 in, 4 in], diameter: 1 in")), "to the flange")
	verdict(t, f, finding.Fails)
}

func TestARowOfHolesIsToldOnceByItsWorst(t *testing.T) {
	p := bored(t, shop.Sample(), "along: front edge, from edge: 2 in, diameter: 1 in, count: 12")
	fs := Hole(p)
	if len(fs) != 1 {
		t.Fatal(told(fs))
	}
	// 12 holes at i/13 of 40 in: the first at 3.077 in lies in the flange at 3, 3
	says(t, fs[0].Place, "port 1", "flange")
	verdict(t, fs[0], finding.Fails)
}

func TestWoodBetweenOpenings(t *testing.T) {
	mm := length.Millimetre
	round := func(x, y, d length.Length) piece.Feature {
		return piece.Feature{Round: true, Min: [2]length.Length{(x - d/2) * mm, (y - d/2) * mm}, Max: [2]length.Length{(x + d/2) * mm, (y + d/2) * mm}}
	}
	box := func(x0, x1, y0, y1 length.Length) piece.Feature {
		return piece.Feature{Min: [2]length.Length{x0 * mm, y0 * mm}, Max: [2]length.Length{x1 * mm, y1 * mm}}
	}
	for name, c := range map[string]struct {
		f, g piece.Feature
		want length.Length
	}{
		"two circles, 3-4-5":         {round(0, 0, 20), round(30, 40, 20), 30},
		"a circle beside a box":      {round(0, 0, 20), box(25, 60, -40, 40), 15},
		"a circle at a box's corner": {round(0, 0, 20), box(30, 60, 40, 80), 40},
		"two boxes in line":          {box(0, 10, 0, 10), box(17, 30, 5, 8), 7},
		"boxes that touch":           {box(0, 10, 0, 10), box(10, 30, 0, 10), 0},
		"one circle in another":      {round(0, 0, 20), round(0, 0, 40), -30},
	} {
		if got := between(c.f, c.g); got != c.want*mm || between(c.g, c.f) != got {
			t.Errorf("%s: %v mm, the other way %v, want %v", name, got.MM(), between(c.g, c.f).MM(), c.want)
		}
	}
}

func TestAHoleRoundAPostIsSawnToo(t *testing.T) {
	s := shop.Sample()
	for i := range s.Tools {
		if s.Tools[i].ID == "hole-saw" {
			s.Tools[i].Depth = inch(0.25)
		}
	}
	p := deriveWith(t, s, notched, "width: 18 in,", "width: 18 in, opens: {front: hole, back: hole},")
	f := only(t, Hole(p), "round front left post", "sawn")
	verdict(t, f, finding.Fails)
}
