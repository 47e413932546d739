package view

import (
	"math"
	"slices"
	"testing"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/solid"
)

const inch = float64(in)

// A level bar of 5 in radius with its axis 100 in behind the front: on its axis the skin is 95 in behind; 3 in
// above, by the triangle of 3, 4 and 5, 96 in; 5.1 in above there is none.
func TestTheSkinOfABarIsItsRadiusBeforeItsAxis(t *testing.T) {
	bar := barOf(Front, solid.Cylinder{A: solid.Vec{Y: 100 * in}, B: solid.Vec{X: 50 * in, Y: 100 * in}, Radius: 5 * in})
	for _, c := range []struct {
		u, v, near float64
		there      bool
	}{
		{25, 0, -95, true}, {25, 3, -96, true}, {25, -4, -97, true}, {25, 5.1, 0, false}, {51, 0, 0, false}, {-1, 0, 0, false},
	} {
		near, there := bar.nearest(c.u*inch, c.v*inch)
		if there != c.there || there && math.Abs(near-c.near*inch) > 1 {
			t.Errorf("at %g, %g: %g in, %v; want %g, %v", c.u, c.v, near/inch, there, c.near, c.there)
		}
	}
}

// A bar of 5 in radius whose axis goes 30 in to the right and 40 in to the back: the line of sight at its middle
// meets the skin nearer by 5 in ÷ cos of the angle between axis and sheet, 3/5: 25/3 in before the axis, which is
// 20 in behind the front there.
func TestTheSkinOfABarThatRunsToTheBackLiesFurtherBeforeItsAxis(t *testing.T) {
	bar := barOf(Front, solid.Cylinder{B: solid.Vec{X: 30 * in, Y: 40 * in}, Radius: 5 * in})
	near, there := bar.nearest(15*inch, 0)
	if want := (-20 + 25.0/3) * inch; !there || math.Abs(near-want) > 1 {
		t.Errorf("%g in, %v; want %g", near/inch, there, want/inch)
	}
}

// Two circles of 5 in radius with their centres 6 in apart meet 4 in above and below the middle between them; the
// line through both these places meets each there.
func TestCirclesAndLinesMeetWhereTheyDo(t *testing.T) {
	left, right := circle(place{}, 5*inch), circle(place{u: 6 * inch}, 5*inch)
	line := straight(place{u: 3 * inch, v: -10 * inch}, place{u: 3 * inch, v: 10 * inch})
	upper := arc(place{}, 5*inch, 0, math.Pi)
	for _, c := range []struct {
		name string
		a, b curve
		want []float64 // v of the places, ascending, in inches
	}{
		{"two circles", left, right, []float64{-4, 4}},
		{"a circle and a line", left, line, []float64{-4, 4}},
		{"a line and a circle", line, right, []float64{-4, 4}},
		{"a line and the upper half", line, upper, []float64{4}},
		{"the upper half and a circle", upper, right, []float64{4}},
		{"a circle and one it does not reach", left, circle(place{u: 11 * inch}, 5*inch), nil},
		{"a circle and one within", left, circle(place{u: 1 * inch}, 3*inch), nil},
		{"a line and a line", line, straight(place{v: 2 * inch}, place{u: 6 * inch, v: 2 * inch}), []float64{2}},
		{"a line and one that ends before it", line, straight(place{v: 2 * inch}, place{u: 2 * inch, v: 2 * inch}), nil},
	} {
		var got []float64
		for _, share := range c.a.crossings(nil, c.b) {
			if share >= 0 && share <= 1 {
				got = append(got, math.Round(c.a.at(share).v/inch*1e6)/1e6)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s meet at %v, want %v", c.name, got, c.want)
		}
	}
}

func TestWhatIsDrawnAlreadyIsLeftOut(t *testing.T) {
	got := without([]span{{0, 10}, {20, 30}}, []span{{3, 4}, {8, 22}, {29, 40}}, 0.1)
	if want := []span{{0, 3}, {4, 8}, {22, 29}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Of two equal boards behind one another the outline is drawn once, and nothing is hidden.
func TestEqualOutlinesAreDrawnOnce(t *testing.T) {
	board := func(index int, y length.Length) piece.Body {
		return piece.Body{Kind: piece.PanelBody, Index: index, Shape: solid.Box{Min: solid.Vec{Y: y}, Max: solid.Vec{X: 40 * in, Y: y + 10*in, Z: in}}}
	}
	lines := newSheet()
	for _, s := range look(board(0, 0), board(1, 12*in)) {
		lines.add(s)
	}
	pens := map[draw.Pen]int{}
	for _, m := range lines.marks() {
		pens[m.(draw.Line).Pen]++
	}
	if pens[draw.Outline] != 4 || len(pens) != 1 {
		t.Errorf("%v, want 4 lines that are seen", pens)
	}
}

// A panel 40 in long and 20 in deep with a notch from 10 to 13 in of its front edge, 4 in deep, and a pocket from
// 20 to 25 in of it, 1/4 in deep in its thickness of 1 in, that goes all the way back.
func TestANotchStandsBackFromTheEdge(t *testing.T) {
	r := rimOf(Front, solid.Slab{Max: solid.Vec{X: 40 * in, Y: 20 * in, Z: in}, Openings: []solid.Opening{
		{Min: [2]length.Length{10 * in, -in}, Max: [2]length.Length{13 * in, 4 * in}},
		{Min: [2]length.Length{20 * in, -in}, Max: [2]length.Length{25 * in, 21 * in}, Depth: in / 4},
	}})
	for _, c := range []struct {
		u, v, near float64
		there      bool
	}{
		{5, 0.5, 0, true}, {11, 0.5, -4, true}, {22, 0.5, 0, true}, {22, 0.125, 0, false}, {30, 0.125, 0, true}, {41, 0.5, 0, false},
	} {
		near, there := r.nearest(c.u*inch, c.v*inch)
		if there != c.there || there && math.Abs(near-c.near*inch) > 1 {
			t.Errorf("at %g, %g: %g in, %v; want %g, %v", c.u, c.v, near/inch, there, c.near, c.there)
		}
	}
}

// The posts of the stand roll on casters: what is measured of them begins at the floor.
func TestPostsAreMeasuredFromTheFloor(t *testing.T) {
	r, list := example(t, "stepped-stand")
	posts := 0
	for _, m := range Of(r, list, Front, sheetRoom).Marks {
		if d, ok := m.(draw.Dimension); ok && d.Along == draw.AlongX && d.From.X == 11*in/4 {
			posts++
			if d.From.Y != 0 {
				t.Errorf("the front left post is measured from %s up", length.Sixteenth.Text(d.From.Y))
			}
		}
	}
	if posts != 1 {
		t.Errorf("%d links begin at the front left post", posts)
	}
}

// A caster of 3 in, 4 in high and with 1 1/8 in offset, stands with its wheel's middle 1 1/2 in over the floor and
// 1 1/8 in beside its axis.
func TestACasterStandsOnItsWheel(t *testing.T) {
	r, _ := example(t, "stepped-stand")
	w, ok := casterOf(Front, &r.Feet[0]).(wheel)
	if !ok || w.radius != 1.5*inch || w.hub.v != 1.5*inch || w.hub.u-w.stem.u != 1.125*inch || w.stem.v != 4*inch {
		t.Errorf("%v, %v", w, ok)
	}
}

// A board 40 by 20 in with a hole of 4 in radius about 10, 10 and its front right corner rounded by 5 in: along
// the diagonal the hole's rim is 2.83 in from its middle each way, and the corner's (1 − 1/√2) · 5 in = 1.46 in
// from where the square corner would be.
func TestThereIsNoWoodInHolesAndBeyondCorners(t *testing.T) {
	b := boardOf(&piece.FlatPanel{
		Spec: &piece.Panel{Corners: map[piece.Corner]length.Length{piece.FrontRight: 5 * in}},
		Max:  piece.Vec{X: 40 * in, Y: 20 * in, Z: in},
		Features: []piece.Feature{
			{Kind: piece.HoleFeature, Min: [2]length.Length{6 * in, 6 * in}, Max: [2]length.Length{14 * in, 14 * in}, Round: true, Radius: 4 * in},
		},
	})
	for _, c := range []struct {
		u, v  float64
		there bool
	}{
		{10, 10, false}, {10 + 2.8, 10 + 2.8, false}, {10 + 2.86, 10 + 2.86, true}, {13.9, 10, false}, {14.1, 10, true},
		{40 - 1.4, 1.4, false}, {40 - 1.5, 1.5, true}, {0.1, 0.1, true}, {39.9, 19.9, true}, {40.1, 10, false},
	} {
		if near, there := b.nearest(c.u*inch, c.v*inch); there != c.there || near != inch {
			t.Errorf("at %g, %g: %v, want %v", c.u, c.v, there, c.there)
		}
	}
}
