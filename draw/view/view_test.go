package view

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"rodwright/draw"
	"rodwright/examples"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/solid"
)

// failer is a test or a property's draw.
type failer interface {
	Helper()
	Fatal(...any)
}

func resolve(t failer, text []byte) (*piece.Resolved, *part.List) {
	t.Helper()
	doc, err := piece.Read("piece", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.Resolve(doc, shop.Sample())
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, shop.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return r, list
}

func example(t testing.TB, name string) (*piece.Resolved, *part.List) {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return resolve(t, text)
}

// exampleWith is an example with one thing written otherwise.
func exampleWith(t testing.TB, name, was, is string) (*piece.Resolved, *part.List) {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(text, []byte(was)) {
		t.Fatalf("%s does not say %q", name, was)
	}
	return resolve(t, bytes.Replace(text, []byte(was), []byte(is), 1))
}

// sheetRoom is the room for a figure on a sheet.
var sheetRoom = draw.Style{Fineness: length.Sixteenth, Width: 180, Height: 120}

const in = length.Inch

// look returns the stretches of some bodies as they are seen from the front.
func look(bodies ...piece.Body) []stretch {
	s := scene{r: &piece.Resolved{}, side: Front}
	for _, b := range bodies {
		s.bodies = append(s.bodies, bodyOf(Front, b, formOf(Front, b.Shape)))
	}
	return s.stretches()
}

// A bar of 1 in radius, 20 in long, lies level behind a panel on edge that hides it from 5 to 8 in of its length.
// Its upper side is seen from 0 to 5 and from 8 to 20 in, hidden between.
func TestABarIsHiddenExactlyBehindAPanel(t *testing.T) {
	bar := piece.Body{Kind: piece.StickBody, Shape: solid.Cylinder{A: solid.Vec{Y: 10 * in, Z: 10 * in}, B: solid.Vec{X: 20 * in, Y: 10 * in, Z: 10 * in}, Radius: in}}
	board := piece.Body{Kind: piece.PanelBody, Shape: solid.Box{Min: solid.Vec{X: 5 * in}, Max: solid.Vec{X: 8 * in, Y: 2 * in, Z: 30 * in}}}
	if got, want := upperSide(look(bar, board)), "outline 0 in – 5 in; hidden 5 in – 8 in; outline 8 in – 20 in"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// The same bar behind a post of 3 in: pipe behind pipe is left out.
func TestPipeBehindPipeIsNotDrawn(t *testing.T) {
	bar := piece.Body{Kind: piece.StickBody, Shape: solid.Cylinder{A: solid.Vec{Y: 10 * in, Z: 10 * in}, B: solid.Vec{X: 20 * in, Y: 10 * in, Z: 10 * in}, Radius: in}}
	post := piece.Body{Kind: piece.StickBody, Index: 1, Shape: solid.Cylinder{A: solid.Vec{X: 10 * in}, B: solid.Vec{X: 10 * in, Z: 30 * in}, Radius: 3 * in / 2}}
	if got, want := upperSide(look(bar, post)), "outline 0 in – 8 1/2 in; outline 11 1/2 in – 20 in"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// upperSide tells what becomes of the line 11 in above the floor of the first body.
func upperSide(all []stretch) string {
	var got []string
	for _, s := range all {
		if a, b := s.at(s.t0), s.at(s.t1); s.body == 0 && a.v == float64(11*in) && b.v == float64(11*in) {
			got = append(got, s.pen.String()+" "+length.Sixteenth.Text(nm(a.u))+" – "+length.Sixteenth.Text(nm(b.u)))
		}
	}
	return strings.Join(got, "; ")
}

// A bar of 5 in radius that slants upwards to the right by 3 in 4 has its sides 5 in from its axis: the upper one
// begins 3 in left of it and 4 in above, since the normal of (4, 3) is (−3, 4)/5.
func TestTheSidesOfASlantingBarLieARadiusFromItsAxis(t *testing.T) {
	bar := piece.Body{Kind: piece.StickBody, Shape: solid.Cylinder{A: solid.Vec{X: 100 * in, Z: 100 * in}, B: solid.Vec{X: 140 * in, Z: 130 * in}, Radius: 5 * in}}
	s := look(bar)[0]
	a, b := s.at(0).point(), s.at(1).point()
	if want := (draw.Point{X: 97 * in, Y: 104 * in}); a != want {
		t.Errorf("the upper side begins at %v, want %v", a, want)
	}
	if want := (draw.Point{X: 137 * in, Y: 134 * in}); b != want {
		t.Errorf("the upper side ends at %v, want %v", b, want)
	}
}

// A round bar seen on its end behind a panel that covers its right half is hidden from the lowest to the highest
// point on the right: half of a circle of 1 in radius, π in.
func TestARoundEndIsHiddenByHalf(t *testing.T) {
	bar := piece.Body{Kind: piece.StickBody, Shape: solid.Cylinder{A: solid.Vec{Y: 10 * in}, B: solid.Vec{Y: 20 * in}, Radius: in}}
	board := piece.Body{Kind: piece.PanelBody, Shape: solid.Box{Min: solid.Vec{Z: -5 * in}, Max: solid.Vec{X: 8 * in, Y: 2 * in, Z: 5 * in}}}
	lengths := map[draw.Pen]float64{}
	for _, s := range look(bar, board) {
		if s.body == 0 {
			lengths[s.pen] += s.length()
		}
	}
	for _, pen := range []draw.Pen{draw.Outline, draw.Hidden} {
		if got, want := lengths[pen], math.Pi*float64(in); math.Abs(got-want) > 1000 { // a micrometre
			t.Errorf("%g nm %s, want %g", got, pen, want)
		}
	}
}

// The deep board of the stand can go round its back posts by notches: the view from above shows their sides, which
// stand in the board's back edge.
func TestAViewFromAboveShowsNotches(t *testing.T) {
	r, list := exampleWith(t, "stepped-stand", "opens:     hole", "opens:     back")
	var deep *piece.FlatPanel
	for i := range r.Panels {
		if r.Panels[i].Name == "deep board" {
			deep = &r.Panels[i]
		}
	}
	if deep == nil {
		t.Fatal("the stand has no deep board")
	}
	notches := 0
	for _, f := range deep.Features {
		if f.Opens != "" {
			notches++
		}
	}
	s := sceneOf(r, list, Top)
	sides := map[length.Length]bool{}
	for _, st := range s.stretches() {
		a, b := st.at(st.t0), st.at(st.t1)
		upright := a.u == b.u && st.radius == 0
		if st.body < len(r.Panels) && s.bodies[st.body].Name == "deep board" && upright && nm(a.u) > deep.Min.X && nm(a.u) < deep.Max.X {
			sides[nm(a.u)] = true
		}
	}
	if notches == 0 || len(sides) != 2*notches {
		t.Errorf("%d notches have %d sides", notches, len(sides))
	}
}

func TestPipeInsideAFittingIsNotDrawn(t *testing.T) {
	r, list := example(t, "packing-table")
	for _, side := range Sides() {
		s := sceneOf(r, list, side)
		all := s.before(extent{-1e15, -1e15, 1e15, 1e15}, -1e15)
		for _, st := range s.stretches() {
			if s.within(st.body, st.at((st.t0+st.t1)/2), all) {
				t.Errorf("%s: an edge of %s lies inside another", side, s.bodies[st.body].Name)
			}
		}
	}
}

// The front corners of the table's top are rounded by 1 in; the back ones are square.
func TestRoundedCornersAreArcs(t *testing.T) {
	r, list := example(t, "packing-table")
	var arcs []draw.Arc
	for _, m := range Of(r, list, Top, sheetRoom).Marks {
		if a, ok := m.(draw.Arc); ok && a.Pen == draw.Outline && a.Sweep < 91 {
			arcs = append(arcs, a)
		}
	}
	if len(arcs) != 2 {
		t.Fatalf("%d quarter circles, want 2", len(arcs))
	}
	for _, a := range arcs {
		if a.Radius != in || math.Abs(a.Sweep-90) > 1e-6 || a.Centre.Y != in || a.Centre.X != in && a.Centre.X != 71*in {
			t.Errorf("%v", a)
		}
	}
}

// The table's rectangle of stretchers is 6 in above the floor and its top at 35 in, 1 3/8 in thick: the chains
// beside the front view say so.
func TestLevelsStandBesideTheFrontView(t *testing.T) {
	r, list := example(t, "packing-table")
	got := map[int][]string{}
	for _, m := range Of(r, list, Front, sheetRoom).Marks {
		if l, ok := m.(draw.Dimension); ok && l.Along == draw.AlongY {
			got[l.Chain] = append(got[l.Chain], l.Words)
		}
	}
	if want := "map[3:[6 29] 4:[33 5/8 1 3/8] 5:[35]]"; fmt.Sprint(got) != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestThingsHeldAreGhostsWithTheirNames(t *testing.T) {
	r, list := example(t, "packing-table")
	var names []string
	for _, m := range Of(r, list, Front, sheetRoom).Marks {
		if text, ok := m.(draw.Text); ok {
			names = append(names, text.Words)
		}
	}
	if fmt.Sprint(names) != "[parcels paper roll]" {
		t.Errorf("%q", names)
	}
}

// On the examples every panel and every kind of pipe that is seen has its tag, and its ring stands off all words.
func TestEveryPanelAndKindOfPipeThatIsSeenHasItsTag(t *testing.T) {
	for _, name := range examples.Names() {
		r, list := example(t, name)
		for _, side := range Sides() {
			for _, st := range rooms[:2] {
				tags := tagsOf(Of(r, list, side, st))
				for _, ring := range sceneOf(r, list, side).rings {
					if ring.needed && !tags[ring.words] {
						t.Errorf("%s, %s to %s: %s has no tag", name, side, st.Fineness, ring.words)
					}
				}
			}
		}
	}
}

// The packing table from the front shows its top, a leg's two pipes and a stretcher; the end rails are seen from
// their ends only, behind the legs.
func TestTheFrontOfTheTableShowsWhichParts(t *testing.T) {
	r, list := example(t, "packing-table")
	var got []string
	for _, ring := range sceneOf(r, list, Front).rings {
		if ring.needed {
			got = append(got, ring.words)
		}
	}
	if fmt.Sprint(got) != "[A1 C1 C2 C7]" {
		t.Error(got)
	}
}

func TestTheViewsAreToldInWords(t *testing.T) {
	r, list := example(t, "packing-table")
	for side, want := range map[Side]string{
		Front: "The packing table seen from the front: 72 in wide and 35 in high, with top A1; it holds parcels, paper roll.",
		Right: "The packing table seen from the right: 30 in deep and 35 in high, with top A1; it holds parcels, paper roll.",
		Top:   "The packing table seen from above: 72 in wide and 30 in deep, with top A1.",
	} {
		if got := Of(r, list, side, sheetRoom).Alt; got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func BenchmarkThreeViews(b *testing.B) {
	r, list := example(b, "large")
	for b.Loop() {
		for _, side := range Sides() {
			Of(r, list, side, sheetRoom)
		}
	}
}

// From above, the stand's deep board shows 11 3/4 in of its depth of 19 in before the high board, which stands out
// 1 3/4 in behind it and is 9 in deep.
func TestDepthsStandBesideTheViewFromAbove(t *testing.T) {
	r, list := example(t, "stepped-stand")
	got := map[int][]string{}
	for _, m := range Of(r, list, Top, sheetRoom).Marks {
		if l, ok := m.(draw.Dimension); ok && l.Along == draw.AlongY {
			got[l.Chain] = append(got[l.Chain], l.Words)
		}
	}
	if want := "map[4:[2 3/4 13 1/2 4 1/2] 5:[11 3/4 7 1/4 1 3/4] 6:[20 3/4]]"; fmt.Sprint(got) != want {
		t.Errorf("got %v, want %s", got, want)
	}
}
