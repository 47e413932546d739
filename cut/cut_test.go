package cut_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"rodwright/cut"
	"rodwright/length"
)

func TestCostAndBoundArePrintedOnTheSafeSide(t *testing.T) {
	for _, c := range []struct {
		name        string
		cost, bound float64
		upper       bool
		wantCost    float64
		wantBound   float64
		proven      bool
	}{
		{"a bound below the cost stays below", 80, 79.25, false, 80, 79.25, false},
		{"equal is proven", 80, 80, false, 80, 80, true},
		{"a sum that drifted is proven still", 0.1 + 0.2, 0.3, false, 0.3, 0.3, true},
		{"a bound is never printed above the cost", 80, 80.00000001, false, 80, 80, true},
		{"a bound is rounded down", 80, 79.1234569, false, 80, 79.123456, false},
		{"an upper bound is rounded up", 80, 81.1234561, true, 80, 81.123457, false},
		{"an upper bound that is met is proven", 80, 80, true, 80, 80, true},
		{"what is no whole millionth is proven when it is met", 142.35 / 25.4, 142.35 / 25.4, false, 5.604331, 5.604331, true},
		{"an upper bound alike", 100 / 25.4, 100 / 25.4, true, 3.937008, 3.937008, true},
		{"nothing costs nothing", 0, 0, false, 0, 0, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			cost, bound, proven := cut.Settle(c.cost, c.bound, c.upper)
			if math.Abs(cost-c.wantCost) > 1e-12 || math.Abs(bound-c.wantBound) > 1e-12 || proven != c.proven {
				t.Errorf("got %v, %v, %v", cost, bound, proven)
			}
		})
	}
}

func TestTheGapIsAShareOfTheLarger(t *testing.T) {
	for _, c := range []struct{ cost, bound, want float64 }{
		{80, 60, 0.25}, {60, 80, 0.25}, {0, 0, 0}, {5, 5, 0},
	} {
		a := cut.Answer{Cost: c.cost, Bound: c.bound}
		if got := a.Gap(); got != c.want {
			t.Errorf("cost %v, bound %v: gap %v, want %v", c.cost, c.bound, got, c.want)
		}
	}
}

func TestALengthIsPrintedInFullInItsUnit(t *testing.T) {
	for _, c := range []struct {
		l    length.Length
		u    length.Unit
		want string
	}{
		{317_600_000, length.MM, "317.6 mm"},
		{14*length.Inch + 3*length.Inch/8, length.In, "14.375 in"},
		{1, length.MM, "0.000001 mm"},
	} {
		if got := cut.Text(c.l, c.u); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestWithoutAPriceStockCostsItsLengthOrArea(t *testing.T) {
	sticks := cut.StickProblem{Unit: length.In, Stock: []cut.StickStock{{Length: 252 * length.Inch}, {Length: 252 * length.Inch, Price: cut.Priced(52)}}}
	sheets := cut.SheetProblem{Unit: length.MM, Sheets: []cut.Sheet{{Length: 2440 * length.Millimetre, Width: 1220 * length.Millimetre}}}
	boards := cut.PanelProblem{Unit: length.In, Boards: []cut.Board{{Length: 96 * length.Inch, Width: 6 * length.Inch}}}
	for _, c := range []struct{ got, want float64 }{
		{sticks.Cost(0), 252}, {sticks.Cost(1), 52}, {sheets.Cost(0), 2440 * 1220}, {boards.Cost(0), 576},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("got %v, want %v", c.got, c.want)
		}
	}
}

func TestAKeptTailTakesOffItsShareOfThePrice(t *testing.T) {
	p := cut.PanelProblem{
		Unit: length.In, Salvage: 0.5, MinTail: 24 * length.Inch,
		Boards: []cut.Board{{Length: 100 * length.Inch, Width: 6 * length.Inch, Price: cut.Priced(40)}},
	}
	for _, c := range []struct {
		inches length.Length
		want   float64
	}{{25, 5}, {24, 4.8}, {23, 0}, {0, 0}} {
		if got := p.TailCredit(0, c.inches*length.Inch); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("a tail of %d in takes off %v, want %v", c.inches, got, c.want)
		}
	}
}

// The grades are this program's own words; what they take is common practice, no source.
func TestWhatAGradeTakes(t *testing.T) {
	small := cut.Rect{Length: length.Inch / 2, Width: length.Inch / 2}
	large := cut.Rect{Length: 2 * length.Inch, Width: length.Inch}
	for _, c := range []struct {
		kind              cut.DefectKind
		face              cut.Face
		rect              cut.Rect
		clear, small, any bool
	}{
		{cut.Knot, cut.BothFaces, small, false, true, true},
		{cut.Knot, cut.BothFaces, large, false, false, true},
		{cut.Knot, cut.BackFace, large, true, true, true},
		{cut.Knot, cut.GoodFace, large, false, false, true},
		{cut.Sap, cut.BothFaces, large, false, true, true},
		{cut.Sap, cut.BackFace, large, true, true, true},
		{cut.Void, cut.BackFace, small, false, false, true},
		{cut.Split, cut.BackFace, small, false, false, false},
		{cut.Wane, cut.BothFaces, small, false, false, false},
	} {
		d := cut.Defect{Kind: c.kind, Face: c.face, Rect: c.rect}
		got := [3]bool{cut.Clear.Takes(d, false), cut.SmallKnots.Takes(d, false), cut.Character.Takes(d, false)}
		if want := [3]bool{c.clear, c.small, c.any}; got != want {
			t.Errorf("%s on %s: clear, small knots, character take it %v, want %v", c.kind, c.face, got, want)
		}
		if got[0] && !got[1] || got[1] && !got[2] {
			t.Errorf("%s on %s: a stricter grade takes what a looser one refuses", c.kind, c.face)
		}
	}
	back := cut.Defect{Kind: cut.Knot, Face: cut.BackFace, Rect: large}
	if cut.Clear.Takes(back, true) {
		t.Error("a knot on the back is taken when the back is shown")
	}
}

func TestEveryValueThatCanNotBeIsNamed(t *testing.T) {
	mm := length.Millimetre
	sticks := func(change func(*cut.StickProblem)) error {
		p := cut.StickProblem{Stock: []cut.StickStock{{Tag: "S1", Length: 100 * mm, Count: cut.Any}}, Parts: []cut.StickPart{{Tag: "C1", Length: mm, Count: 1}}}
		change(&p)
		return p.Check()
	}
	boards := func(change func(*cut.PanelProblem)) error {
		p := cut.PanelProblem{
			Boards: []cut.Board{{Tag: "B1", Length: 100 * mm, Width: 50 * mm, Defects: []cut.Defect{{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{Length: mm, Width: mm}}}}},
			Panels: []cut.Panel{{Tag: "A1", Length: mm, Width: mm, Count: 1, Show: cut.Clear, KeepOut: []cut.Rect{{Length: mm, Width: mm}}}},
		}
		change(&p)
		return p.Check()
	}
	sheets := func(change func(*cut.SheetProblem)) error {
		p := cut.SheetProblem{
			Sheets: []cut.Sheet{{Tag: "P1", Length: 100 * mm, Width: 50 * mm, Count: cut.Any}},
			Parts:  []cut.SheetPart{{Tag: "D1", Length: mm, Width: mm, Count: 1}},
		}
		change(&p)
		return p.Check()
	}
	if err := errors.Join(sticks(func(*cut.StickProblem) {}), boards(func(*cut.PanelProblem) {}), sheets(func(*cut.SheetProblem) {})); err != nil {
		t.Fatalf("a sound problem is refused: %v", err)
	}
	for _, c := range []struct {
		path string
		err  error
	}{
		{"kerf", sticks(func(p *cut.StickProblem) { p.Kerf = -1 })},
		{"trim", sticks(func(p *cut.StickProblem) { p.Trim = length.Max + 1 })},
		{"useful", sticks(func(p *cut.StickProblem) { p.Useful = -1 })},
		{"stock", sticks(func(p *cut.StickProblem) { p.Stock = nil })},
		{"stock[0].length", sticks(func(p *cut.StickProblem) { p.Stock[0].Length = 0 })},
		{"stock[0].count", sticks(func(p *cut.StickProblem) { p.Stock[0].Count = -2 })},
		{"stock[0].price", sticks(func(p *cut.StickProblem) { p.Stock[0].Price = cut.Priced(-1) })},
		{"stock[0].price", sticks(func(p *cut.StickProblem) { p.Stock[0].Price = cut.Priced(math.NaN()) })},
		{"stock[0].tag", sticks(func(p *cut.StickProblem) { p.Stock[0].Tag = "" })},
		{"stock[1].tag", sticks(func(p *cut.StickProblem) { p.Stock = append(p.Stock, p.Stock[0]) })},
		{"parts[0].length", sticks(func(p *cut.StickProblem) { p.Parts[0].Length = -5 })},
		{"parts[0].count", sticks(func(p *cut.StickProblem) { p.Parts[0].Count = cut.Any })},
		{"parts[0].count", sticks(func(p *cut.StickProblem) { p.Parts[0].Count = cut.MaxPieces + 1 })},
		{"salvage", boards(func(p *cut.PanelProblem) { p.Salvage = 1.5 })},
		{"salvage", boards(func(p *cut.PanelProblem) { p.Salvage = math.NaN() })},
		{"strip.most", boards(func(p *cut.PanelProblem) { p.Strip = cut.Span{Least: 5 * mm, Most: 4 * mm} })},
		{"strip.most", boards(func(p *cut.PanelProblem) { p.Strip.Most, p.Jointing = 4*mm, 2*mm })},
		{"strip.most", boards(func(p *cut.PanelProblem) { p.Strip.Most = 1 })},
		{"boards[0].width", boards(func(p *cut.PanelProblem) { p.Boards[0].Width = 0 })},
		{"boards[0].rough_edges", boards(func(p *cut.PanelProblem) { p.Boards[0].RoughEdges = 3 })},
		{"boards[0].ring", boards(func(p *cut.PanelProblem) { p.Boards[0].Ring = "left" })},
		{"boards[0].defects[0].kind", boards(func(p *cut.PanelProblem) { p.Boards[0].Defects[0].Kind = "hole" })},
		{"boards[0].defects[0].face", boards(func(p *cut.PanelProblem) { p.Boards[0].Defects[0].Face = "front" })},
		{"boards[0].defects[0].x", boards(func(p *cut.PanelProblem) { p.Boards[0].Defects[0].X = -1 })},
		{"panels[0].show", boards(func(p *cut.PanelProblem) { p.Panels[0].Show = "nice" })},
		{"panels[0].keep_out[0].width", boards(func(p *cut.PanelProblem) { p.Panels[0].KeepOut[0].Width = 0 })},
		{"stages", sheets(func(p *cut.SheetProblem) { p.Stages = -1 })},
		{"sheets[0].count", sheets(func(p *cut.SheetProblem) { p.Parts[0].Value = cut.Priced(3) })},
		{"sheets[0].defects[0].length", sheets(func(p *cut.SheetProblem) { p.Sheets[0].Defects = []cut.Rect{{Width: mm}} })},
		{"parts[0].count", sheets(func(p *cut.SheetProblem) { p.Parts[0].Count = cut.Any })},
		{"useful[1]", sheets(func(p *cut.SheetProblem) { p.Useful[1] = -1 })},
	} {
		var fe *cut.FieldError
		if !errors.As(c.err, &fe) || fe.Path != c.path || fe.Why == "" {
			t.Errorf("want an error at %s, got %v", c.path, c.err)
		}
	}
}

func TestCountsTogetherAreLimited(t *testing.T) {
	p := cut.StickProblem{Stock: []cut.StickStock{{Tag: "S1", Length: length.Metre, Count: cut.Any}}}
	for i := range 3 {
		p.Parts = append(p.Parts, cut.StickPart{Tag: fmt.Sprint("C", i), Length: 1, Count: cut.MaxPieces / 2})
	}
	var fe *cut.FieldError
	if err := p.Check(); !errors.As(err, &fe) || fe.Path != "parts[2].count" {
		t.Errorf("got %v", err)
	}
}
