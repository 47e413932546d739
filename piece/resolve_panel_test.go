package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func TestWhatHoldsAPanel(t *testing.T) {
	rows := fourLegs(t, 30, 20) // the legs stand at 3 and 23 in
	one := stand(t)
	straps := trestle(t, Relieved)
	loose := trestle(t, Relieved)
	loose.Panels[0].Straps = 0
	grain := fourLegs(t, 30, 20)
	grain.Panels[0].GrainX = false
	hung := blank(t)
	hung.Panels = []Panel{plank("tray", 30, 12, 1, 20, Seat{Kind: UnderPosts, Group: "hangers"})}
	hung.Posts = []Posts{{Name: "hangers", Panel: "tray", Corners: []Corner{FrontLeft, FrontRight}, InsetX: inch(4), InsetY: inch(4), From: toPanel("tray"), To: toLevel(60, pipe.Cap)}}
	for _, c := range []struct {
		name  string
		doc   *Document
		at    float64 // across the grain
		by    string
		fixed bool
	}{
		{"one row of flanges: that row", one, 2.75, "flanges under it", true},
		{"two rows: their middle", rows, 13, "the middle of flanges under it", true},
		{"two rows, the grain from front to back", grain, 18, "the middle of flanges under it", true},
		{"straps alone: their middle", straps, 10, "the middle of straps", true},
		{"flanges from above", hung, 4, "flanges on it", true},
		{"nothing", loose, 10, "nothing: it lies loose", false},
	} {
		r := resolved(t, c.doc)
		p := r.Panels[0]
		if p.HeldAt != inch(c.at) || p.HeldBy != c.by || p.Fixed != c.fixed {
			t.Errorf("%s: at %.3f in by %s, fixed %v", c.name, p.HeldAt.Inches(), p.HeldBy, p.Fixed)
		}
	}
}

func TestSeatsOfThePosts(t *testing.T) {
	p := panelNamed(t, resolved(t, stand(t)), "deep board")
	kinds := map[SeatKind]int{}
	for _, s := range p.Seats {
		kinds[s.Kind]++
	}
	// two flanges; one bearing and the shop's straps on the back rail; two posts passed
	if want := 1 + shop.Sample().Settings.Straps; kinds[OnPosts] != 2 || kinds[AroundPosts] != 2 || kinds[OnRails] != want {
		t.Errorf("%v", kinds)
	}
}

func TestStrapsShareTheClearPipe(t *testing.T) {
	d := stand(t)
	for _, c := range []struct {
		n  int
		at []float64
	}{
		// the rail is 36 1/2 in long between the posts at 2 3/4 in and bare for 36.5 − 2·1.31 = 33.88 in
		{1, []float64{21}},
		{2, []float64{2.75 + 1.31 + 33.88/4, 2.75 + 1.31 + 33.88*3/4}},
		{0, nil},
	} {
		d.Panels[0].Straps = c.n
		var got []length.Length
		for _, s := range panelNamed(t, resolved(t, d), "deep board").Seats {
			if s.Strap {
				got = append(got, s.At[0])
			}
		}
		if len(got) != len(c.at) {
			t.Errorf("%d straps: at %v", c.n, got)
			continue
		}
		for i, x := range c.at {
			if got[i] != inch(x) {
				t.Errorf("%d straps: the %d. at %.4f in, want %.4f", c.n, i+1, got[i].Inches(), x)
			}
		}
	}
}

func TestAShortBearingTakesOneStrap(t *testing.T) {
	for width, want := range map[float64]int{0.5: 0, 4: 1, 7: 2} {
		d := trestle(t, Relieved)
		d.Panels[0].Width = inch(width)
		got := 0
		for _, s := range resolved(t, d).Panels[0].Seats {
			if s.Strap {
				got++
			}
		}
		if got != 2*want { // on two rails
			t.Errorf("a panel %v in wide has %d straps on two rails, want %d", width, got, 2*want)
		}
	}
}

func TestStrapsKeepOffFittings(t *testing.T) {
	d := stand(t)
	d.Posts = append(d.Posts, Posts{Name: "mid", At: [][2]length.Length{at(21, 16.25)}, From: toLevel(2, pipe.Cap), To: toRail("back")})
	d.Panels[0].Straps = 1
	for _, s := range panelNamed(t, resolved(t, d), "deep board").Seats {
		if s.Strap && (s.At[0]-inch(21)).Abs() < inch(1.31) {
			t.Errorf("a strap at %.4f in on the tee in the middle of the rail", s.At[0].Inches())
		}
	}
}

func TestAPanelThatMissesItsRailsIsRefused(t *testing.T) {
	d := trestle(t, Relieved)
	corner := at(0, 30)
	d.Panels[0].At = &corner
	refused(t, d, "shelf lies on side, but none of these passes under it")
}

func TestPanelsBetweenPostsMustStandBetweenThem(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{{Name: "ends", At: [][2]length.Length{at(0, 0), at(30, 0)}, From: toLevel(0, pipe.Cap), To: toLevel(40, pipe.Cap)}}
	d.Panels = []Panel{plank("shelf", 28, 6, 1, 20, Seat{Kind: BetweenPosts, Group: "ends"})}
	p := resolved(t, d).Panels[0]
	if len(p.Seats) != 2 || p.Fixed || len(p.Features) != 0 {
		t.Errorf("%+v", p)
	}
	d.Panels[0].Length = inch(32)
	refused(t, d, "the axis of the left end is inside it")
}

func TestEdgesGoToTheirPanel(t *testing.T) {
	r := resolved(t, stand(t))
	if p := panelNamed(t, r, "deep board"); len(p.Edges) != 1 || p.Edges[0].Profile != "chamfer" {
		t.Errorf("%v", p.Edges)
	}
	if p := panelNamed(t, r, "high board"); len(p.Edges) != 0 {
		t.Errorf("%v", p.Edges)
	}
}
