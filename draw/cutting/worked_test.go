package cutting

import (
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
)

const mm = length.Millimetre

func pair(x, y length.Length) [2]length.Length { return [2]length.Length{x * mm, y * mm} }

// sawnBoard is one board of 2000 × 200 mm with a far rough edge, of which 10 mm come off, and a knot from 560
// to 640. The saw takes 4 mm.
//
//	x    0 … 500  two strips for A1, 90 and 80 wide: y 0 … 90, 94 … 174
//	x  504 … 700  skipped for the knot: 192 long, its cut takes 696 … 700
//	x  700 … 1300 one strip for A2, 150 wide
//	x 1304 … 2000 kept
func sawnBoard() layout.Layout {
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: 4 * mm, Jointing: mm, EndTrim: 10 * mm, PanelEdgeTrim: 5 * mm, BoardEdgeTrim: 10 * mm, MinTail: 300 * mm,
		Boards: []cut.Board{{
			Tag: "R7", Length: 2000 * mm, Width: 200 * mm, RoughEdges: 1, Ring: cut.RingUp,
			Defects: []cut.Defect{
				{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: 560 * mm, Y: 60 * mm, Length: 80 * mm, Width: 50 * mm}},
				{Kind: cut.Sap, Face: cut.BackFace, Rect: cut.Rect{X: 100 * mm, Y: 100 * mm, Length: 300 * mm, Width: 40 * mm}},
			},
		}},
		Panels: []cut.Panel{
			{Tag: "A1.1", Length: 480 * mm, Width: 156 * mm, Count: 1, Show: cut.Clear},
			{Tag: "A2.1", Length: 580 * mm, Width: 138 * mm, Count: 1, Show: cut.Clear},
		},
	}
	a := &cut.Answer{
		Used: []cut.Used{{
			Stock: "R7",
			Parts: []cut.Placed{
				{Tag: "A1.1", At: pair(0, 0), Size: pair(500, 90)},
				{Tag: "A1.1", At: pair(0, 94), Size: pair(500, 80)},
				{Tag: "A2.1", At: pair(700, 0), Size: pair(600, 150)},
			},
			Left: []cut.Offcut{{At: pair(1304, 0), Size: pair(696, 200)}},
		}},
		Panels: []cut.GluedPanel{
			{Tag: "A1.1", Strips: []cut.Strip{
				{Board: "R7", At: pair(0, 94), Size: pair(500, 80), Ring: cut.RingUp, NetWidth: 78 * mm},
				{Board: "R7", At: pair(0, 0), Size: pair(500, 90), Ring: cut.RingDown, NetWidth: 88 * mm},
			}},
			{Tag: "A2.1", Strips: []cut.Strip{{Board: "R7", At: pair(700, 0), Size: pair(600, 150), NetWidth: 148 * mm}}},
		},
	}
	return layout.Layout{
		Task: layout.Task{
			Kind: layout.OfBoards, Material: "white-oak 5/4", Boards: p,
			Stock: []layout.Stock{{Tag: "R7", Item: "white-oak 5/4", FromRack: true}},
		},
		Answer: a, Opened: []layout.Stock{{Tag: "R7", Item: "white-oak 5/4", FromRack: true}},
	}
}

// Cuts worked by hand: a line runs in the middle of the 4 mm that the saw takes. All crosscuts come first, then
// the rips, the widest first of those that can be made.
func TestSawCutsRunWhereTheyAreMade(t *testing.T) {
	got, n := linesOf(sawnBoard().Cuts(), 0)
	want := []struct {
		a, b [2]length.Length
		step int
	}{
		{pair(502, 0), pair(502, 200), 1},   // behind the strips of 500
		{pair(0, 92), pair(500, 92), 5},     // between them: 90 and half of 4
		{pair(0, 176), pair(500, 176), 6},   // behind the second: 174 and half of 4
		{pair(698, 0), pair(698, 200), 2},   // takes off what is skipped
		{pair(1302, 0), pair(1302, 200), 3}, // behind the strip that ends at 1300
		{pair(700, 152), pair(1300, 152), 4},
	}
	if len(got) != len(want) {
		t.Fatalf("%d cuts, by hand %d", len(got), len(want))
	}
	for i, w := range want {
		if g := got[i]; g.a != at(w.a[0], w.a[1]) || g.b != at(w.b[0], w.b[1]) || n[i] != w.step {
			t.Errorf("cut %d runs %v to %v, step %d; by hand %v", i, g.a, g.b, n[i], w)
		}
	}
}

func saying(t *testing.T, d *draw.Drawing, says ...string) {
	t.Helper()
	all := strings.Join(wordsOf(d), " ") // lines are broken anywhere
	for _, s := range says {
		if !strings.Contains(all, s) {
			t.Errorf("%s: nowhere says %q: %q", d.ID, s, all)
		}
	}
}

func TestABoardShowsStripsDefectsAndWhatIsKept(t *testing.T) {
	l := sawnBoard()
	for _, st := range sheets {
		ds := Of(l, st)
		for _, law := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, keepsWithin, partsOnce, idsDiffer} {
			if err := law(l, ds, st); err != nil {
				t.Error(err)
			}
		}
		if len(ds) != 1 || ds[0].ID != "cut-white-oak-5-4-1" || ds[0].Title != "white oak 5/4, board 1" {
			t.Fatalf("%d drawings, the first %q, %q", len(ds), ds[0].ID, ds[0].Title)
		}
		// the strip at y = 94 is A1's first in the clamps, that at 0 its second
		saying(t, ds[0], "A1 strip 1", "A1 strip 2", "A2 strip 1", "kept, R7", "Defects: K knot, P sap; dashed: on the face that lies down", "from the rack, marked R7", "one rough edge", "rings curve up", "6")
	}
	mms := Of(l, sheets[1])[0]
	saying(t, mms, "500 × 90", "500 × 80", "600 × 150", "696 × 200", "Each saw cut takes 4 mm, and each rough edge loses 10 mm")
}

func TestAGluedPanelShowsItsStripsInOrder(t *testing.T) {
	l := sawnBoard()
	list := &part.List{Parts: []part.Part{{Tag: "A1", Name: "shelf", Tags: []string{"A1.1"}}}}
	ds := GlueUp(l, list, sheets[1])
	if len(ds) != 2 || ds[0].ID != "glue-a1" || ds[0].Title != "A1 shelf, strips as they are glued" {
		t.Fatalf("%d drawings, the first %q, %q", len(ds), ds[0].ID, ds[0].Title)
	}
	saying(t, ds[0], "strip 1, board 1, rings up", "strip 2, board 1, rings down", "rip each strip 2 mm wider", "480 × 156 mm")
	// 78 + 88 = 166: the panel's 156 and 5 at each edge
	sum, whole := length.Length(0), length.Length(0)
	for _, m := range ds[0].Marks {
		if d, ok := m.(draw.Dimension); ok && d.Along == draw.AlongY {
			if d.Whole {
				whole = d.Value
			} else {
				sum += d.Value
			}
		}
	}
	if sum != 166*mm || whole != 166*mm {
		t.Errorf("strips come to %s, the whole is %s", length.WholeMM.Text(sum), length.WholeMM.Text(whole))
	}
}

// By hand: the sap lies on the back at x 100 … 400, y 100 … 140 of the board, on A1's first strip at y 6 … 46 of
// its 80; 1 is jointed off, so that it shows at y 5 … 45 in the panel, in dashes. Round the notch at 100, 20 with
// 30 × 40 nothing may lie: in the blank 110, 25.
func TestAGluedPanelShowsDefectsAndWhereNoneMayLie(t *testing.T) {
	l := sawnBoard()
	l.Boards.Panels[0].KeepOut = []cut.Rect{{X: 100 * mm, Y: 20 * mm, Length: 30 * mm, Width: 40 * mm}}
	l.Answer.Panels[0].Strips[0].Ring = cut.RingUp // as it lies on the board
	d := GlueUp(l, nil, sheets[1])[0]
	found := map[string]bool{}
	for _, m := range d.Marks {
		a, ok := m.(draw.Area)
		switch {
		case !ok:
		case a.Fill == draw.LongWood && a.Pen == draw.Hidden:
			found["sap"] = a.Outer[0].Point == at(100*mm, 5*mm) && a.Outer[2].Point == at(400*mm, 45*mm)
		case a.Pen == draw.Ghost:
			found["keep-out"] = a.Outer[0].Point == at(110*mm, 25*mm) && a.Outer[2].Point == at(140*mm, 65*mm)
		}
	}
	if !found["sap"] || !found["keep-out"] {
		t.Errorf("drawn as by hand: %v", found)
	}
	saying(t, d, "P sap", "dashed: on the face that lies down", "no knot, sap or filling may lie")
	l.Answer.Panels[0].Strips[0].Ring = cut.RingDown // turned over: y 80 − 6 − 40 − 1 = 33 … 73, and it shows
	for _, m := range GlueUp(l, nil, sheets[1])[0].Marks {
		if a, ok := m.(draw.Area); ok && a.Fill == draw.LongWood && (a.Pen != draw.Outline || a.Outer[0].Y != 33*mm || a.Outer[2].Y != 73*mm) {
			t.Errorf("turned over the sap is drawn at %v", a.Outer)
		}
	}
}

// sawnSheet is a sheet of 2000 × 1000 mm, trimmed by 10 mm all round; the saw takes 4 mm. B1 and B2 lie side
// by side in the lower strip, a tiny B3 beside them, the upper strip is kept.
func sawnSheet() layout.Layout {
	tags := []string{"A1.1", "A2.1", "A3.1"}
	p := &cut.SheetProblem{Unit: length.MM, Kerf: 4 * mm, Trim: 10 * mm, Sheets: []cut.Sheet{{Tag: "ply", Length: 2000 * mm, Width: 1000 * mm, Count: cut.Any, Grain: true}}}
	for _, t := range tags {
		p.Parts = append(p.Parts, cut.SheetPart{Tag: t, Count: 1})
	}
	used := cut.Used{Stock: "ply", Left: []cut.Offcut{{At: pair(10, 414), Size: pair(1980, 576)}}, Parts: []cut.Placed{
		{Tag: "A1.1", At: pair(10, 10), Size: pair(900, 400)},
		{Tag: "A2.1", At: pair(914, 10), Size: pair(800, 400)},
		{Tag: "A3.1", At: pair(1718, 10), Size: pair(30, 400)},
	}}
	return layout.Layout{
		Task:   layout.Task{Kind: layout.OfSheets, Material: "birch-plywood-18", Sheets: p, Stock: []layout.Stock{{Tag: "ply", Item: "birch-plywood-18"}}},
		Answer: &cut.Answer{Used: []cut.Used{used}}, Opened: []layout.Stock{{Tag: "ply"}},
	}
}

func TestASheetShowsEveryPartAndTheGrain(t *testing.T) {
	l := sawnSheet()
	for _, st := range sheets {
		ds := Of(l, st)
		for _, law := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, keepsWithin, partsOnce} {
			if err := law(l, ds, st); err != nil {
				t.Error(err)
			}
		}
		saying(t, ds[0], "A1", "A2", "A3", "kept", "grain along the", "each edge loses ")
	}
}

func TestStocksCutAlikeAreDrawnOnce(t *testing.T) {
	l := sticksOf([][]length.Length{{500, 300}, {500, 300}, {300, 500}, {500, 300}})
	ds := Of(l, sheets[1])
	if len(ds) != 1 {
		t.Fatalf("%d drawings", len(ds))
	}
	saying(t, ds[0], "Sticks 1, 2 and 4, 3 alike", "Stick 3")
	if err := partsOnce(l, ds, sheets[1]); err != nil {
		t.Error(err)
	}
}

// sticksOf is sticks of 1 m, cut without loss into the lengths given in millimetres.
func sticksOf(sticks [][]length.Length) layout.Layout {
	p := &cut.StickProblem{Unit: length.MM, Stock: []cut.StickStock{{Tag: "pipe 3/4 1 m", Length: 1000 * mm, Count: cut.Any}}}
	a := &cut.Answer{}
	kinds := map[length.Length]int{}
	for _, s := range sticks {
		u := cut.Used{Stock: "pipe 3/4 1 m"}
		x := length.Length(0)
		for _, l := range s {
			kinds[l]++
			tag := "C" + length.WholeMM.Number(l*mm) + "." + length.WholeMM.Number(length.Length(kinds[l])*mm)
			p.Parts = append(p.Parts, cut.StickPart{Tag: tag, Length: l * mm, Count: 1})
			u.Parts = append(u.Parts, cut.Placed{Tag: tag, At: pair(x, 0), Size: pair(l, 0)})
			x += l
		}
		a.Used = append(a.Used, u)
	}
	return layout.Layout{Task: layout.Task{Kind: layout.OfSticks, Material: "3/4", Sticks: p}, Answer: a}
}

func TestManyShortPiecesShareTheirWords(t *testing.T) {
	var many []length.Length
	for range 90 {
		many = append(many, 10)
	}
	l := sticksOf([][]length.Length{many})
	ds := Of(l, sheets[0])
	for _, law := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, partsOnce} {
		if err := law(l, ds, sheets[0]); err != nil {
			t.Error(err)
		}
	}
	saying(t, ds[0], "C10.1 to C10.90, each 3/8")
}

func TestLongListsOfSticksRunOverSeveralDrawings(t *testing.T) {
	var many [][]length.Length
	for i := range length.Length(30) {
		many = append(many, []length.Length{400 + i, 5, 300})
	}
	l := sticksOf(many)
	for _, st := range sheets {
		ds := Of(l, st)
		if len(ds) < 2 {
			t.Errorf("30 different sticks in %d drawing", len(ds))
		}
		for _, law := range []func(layout.Layout, []*draw.Drawing, draw.Style) error{wordsKeepApart, keepsWithin, partsOnce, idsDiffer} {
			if err := law(l, ds, st); err != nil {
				t.Error(err)
			}
		}
	}
}

func TestNothingIsDrawnOfNothing(t *testing.T) {
	for _, l := range []layout.Layout{{}, {Answer: &cut.Answer{}}, {Task: layout.Task{Kind: layout.OfBoards}, Answer: &cut.Answer{Used: []cut.Used{{}}}}} {
		if ds := Of(l, sheets[0]); len(ds) > 0 {
			t.Errorf("%d drawings of %+v", len(ds), l)
		}
		if ds := GlueUp(l, nil, sheets[0]); len(ds) > 0 {
			t.Errorf("%d glued panels of %+v", len(ds), l)
		}
	}
}

func TestIDsAreMadeOfLettersAndDigits(t *testing.T) {
	for in, want := range map[string]string{"white-oak 5/4": "white-oak-5-4", "1 1/4": "1-1-4", "Birch  plywood (18)": "birch-plywood-18", "": ""} {
		if got := Slug(in); got != want {
			t.Errorf("%q: %q, not %q", in, got, want)
		}
	}
}

func TestStocksAreNumberedInWords(t *testing.T) {
	for _, c := range []struct {
		of   []int
		want string
	}{{[]int{0}, "board 1"}, {[]int{0, 1}, "boards 1 and 2, 2 alike"}, {[]int{0, 1, 2, 4}, "boards 1 to 3 and 5, 4 alike"}} {
		if got := numbered("board", stack{c.of}); got != c.want {
			t.Errorf("%v: %q, not %q", c.of, got, c.want)
		}
	}
}

// By hand: of A1 one strip turns its rings up, the other down; both ends stand right of the 500 long strips, 2 mm of paper
// apart, their rings with the same bend and the centres on opposite sides. A2's rings nobody has looked at.
func TestTheEndsOfStripsShowHowTheirRingsLie(t *testing.T) {
	drawn := GlueUp(sawnBoard(), nil, draw.Style{})
	arcs := func(d *draw.Drawing) (out []draw.Arc) {
		for _, m := range d.Marks {
			if a, ok := m.(draw.Arc); ok {
				out = append(out, a)
			}
		}
		return out
	}
	got := arcs(drawn[0])
	if len(got) != 4 || len(arcs(drawn[1])) != 0 {
		t.Fatalf("%d rings on A1 and %d on A2, want 4 and none", len(got), len(arcs(drawn[1])))
	}
	left, right := full(2, drawn[0].Per)+500*mm, full(6, drawn[0].Per)+500*mm
	for i, a := range got {
		up := i < 2
		if up && a.Centre.X > left || !up && a.Centre.X < right {
			t.Errorf("ring %d has its centre at %v", i, a.Centre)
		}
		if reach := a.Centre.X + a.Radius; up && (reach < left || reach > right) {
			t.Errorf("ring %d reaches %v", i, reach)
		}
	}
	if says := strings.Join(wordsOf(drawn[0]), " "); !strings.Contains(says, "how their rings lie") {
		t.Errorf("%q", says)
	}
	if says := strings.Join(wordsOf(drawn[1]), " "); strings.Contains(says, "rings") {
		t.Errorf("%q", says)
	}
}

// A telephone of 360 px has room for 65 mm of a drawing with words that can be read.
func TestOnANarrowSheetTheStockIsNoSpeck(t *testing.T) {
	l, st := manyStrips(), draw.Style{Fineness: length.Sixteenth, Width: 65, Height: 88}
	all := append(Of(l, st), GlueUp(l, nil, st)...)
	for _, d := range all {
		if w, _ := d.Size(); w > 66 {
			t.Errorf("%s is %.1f mm wide", d.ID, w)
		}
		if wide := float64(2400*mm) / float64(mm) / float64(d.Per); wide < 65*0.35 {
			t.Errorf("the stock of %s is %.1f mm long", d.ID, wide)
		}
		for _, m := range d.Marks {
			if w, ok := m.(draw.Text); ok && w.Height < draw.Small {
				t.Errorf("%q of %s is %.1f mm high", w.Words, d.ID, w.Height)
			}
		}
	}
	saying(t, all[0], "A1 strip 1", "A1 strip 2", "A1 strip 3")
}

// manyStrips is a panel of three strips out of one board of 2400 × 150 mm.
func manyStrips() layout.Layout {
	p := &cut.PanelProblem{
		Unit: length.In, Kerf: 3 * mm, Boards: []cut.Board{{Tag: "B", Length: 2400 * mm, Width: 150 * mm, RoughEdges: 1}},
		Panels: []cut.Panel{{Tag: "A1.1", Length: 1900 * mm, Width: 120 * mm, Count: 1}},
	}
	u, g := cut.Used{Stock: "B"}, cut.GluedPanel{Tag: "A1.1"}
	for k := range length.Length(3) {
		u.Parts = append(u.Parts, cut.Placed{Tag: "A1.1", At: pair(0, 43*k), Size: pair(1900, 40)})
		g.Strips = append(g.Strips, cut.Strip{Board: "B", At: pair(0, 43*k), Size: pair(1900, 40), NetWidth: 40 * mm})
	}
	return layout.Layout{
		Task:   layout.Task{Kind: layout.OfBoards, Material: "white-oak 5/4", Boards: p, Stock: []layout.Stock{{Tag: "B", Item: "white-oak 5/4"}}},
		Answer: &cut.Answer{Used: []cut.Used{u}, Panels: []cut.GluedPanel{g}}, Opened: []layout.Stock{{Tag: "B", Item: "white-oak 5/4"}},
	}
}
