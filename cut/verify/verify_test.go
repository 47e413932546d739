package verify_test

import (
	"fmt"
	"slices"
	"testing"

	"rodwright/cut"
	"rodwright/cut/verify"
	"rodwright/length"
)

const mm = length.Millimetre

func at(x, y length.Length) [2]length.Length { return [2]length.Length{x * mm, y * mm} }

// plant is a wrong layout and the rule it breaks.
type plant[P any] struct {
	name  string
	rule  verify.Rule
	wrong func(p *P, a *cut.Answer)
}

// tryAll checks that the layout of fresh is right and that every planted one is refused by its rule.
func tryAll[P any](t *testing.T, fresh func() (*P, *cut.Answer), check func(*P, *cut.Answer) []verify.Fault, plants []plant[P]) {
	t.Helper()
	p, a := fresh()
	if faults := check(p, a); len(faults) > 0 {
		t.Fatalf("the right layout is refused: %v", faults)
	}
	for _, c := range plants {
		t.Run(c.name, func(t *testing.T) {
			p, a := fresh()
			c.wrong(p, a)
			faults := check(p, a)
			if !slices.ContainsFunc(faults, func(f verify.Fault) bool { return f.Rule == c.rule }) {
				t.Errorf("want a fault of the rule %q, got %v", c.rule, faults)
			}
		})
	}
}

// sticks is a problem of two sticks with a right layout: kerf 2, trim 5, parts of 300 and 200.
func sticks() (*cut.StickProblem, *cut.Answer) {
	p := &cut.StickProblem{
		Unit: length.MM, Kerf: 2 * mm, Trim: 5 * mm, Useful: 50 * mm,
		Stock: []cut.StickStock{{Tag: "S1", Length: 1000 * mm, Count: 2, Price: cut.Priced(40)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 300 * mm, Count: 4}, {Tag: "C2", Length: 200 * mm, Count: 1}, {Tag: "C3", Length: 2000 * mm, Count: 1}},
	}
	one := func(tag string, x, l length.Length) cut.Placed {
		return cut.Placed{Tag: tag, At: at(x, 0), Size: at(l, 0)}
	}
	a := &cut.Answer{
		Cost: 80, Bound: 80, Proven: true,
		Used: []cut.Used{
			{Stock: "S1", Parts: []cut.Placed{one("C1", 5, 300), one("C1", 307, 300), one("C1", 609, 300)}, Left: []cut.Offcut{{At: at(911, 0), Size: at(84, 0)}}},
			{Stock: "S1", Parts: []cut.Placed{one("C1", 5, 300), one("C2", 307, 200)}, Left: []cut.Offcut{{At: at(509, 0), Size: at(486, 0)}}},
		},
		Waste: cut.Waste{Kerf: 10, Trim: 20, LeftoverUseful: 570},
		Cuts: []cut.Setting{
			{N: 1, On: "S1", Machine: cut.Crosscut, Setting: 300 * mm, Makes: []string{"C1", "C1", "C1"}},
			{N: 2, On: "S1", Machine: cut.Crosscut, Setting: 300 * mm, Makes: []string{"C1"}},
			{N: 3, On: "S1", Machine: cut.Crosscut, Setting: 200 * mm, Makes: []string{"C2"}},
		},
		NotPlaced: []cut.NotPlaced{{Tag: "C3", Why: "longer than any stock"}},
	}
	return p, a
}

func TestEveryWrongLayoutOfSticksIsRefused(t *testing.T) {
	type problem = cut.StickProblem
	tryAll(t, sticks, verify.Stick, []plant[problem]{
		{"stock that is not there", verify.StockRule, func(_ *problem, a *cut.Answer) { a.Used[0].Stock = "S2" }},
		{"more stock than there is", verify.StockRule, func(p *problem, _ *cut.Answer) { p.Stock[0].Count = 1 }},
		{"a part that nobody wants", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[0].Tag = "C9" }},
		{"a part cut too often", verify.PartRule, func(p *problem, _ *cut.Answer) { p.Parts[0].Count = 3 }},
		{"a part forgotten", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Used[1].Parts = a.Used[1].Parts[:1] }},
		{"a part both cut and told as not placed", verify.PartRule, func(_ *problem, a *cut.Answer) {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: "C2"})
		}},
		{"a part not placed that nobody wants", verify.PartRule, func(_ *problem, a *cut.Answer) { a.NotPlaced[0].Tag = "C9" }},
		{"a part too short", verify.SizeRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[0].Size[0]-- }},
		{"a part in the trim", verify.InsideRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[0].At[0]-- }},
		{"a part beyond the end", verify.InsideRule, func(_ *problem, a *cut.Answer) { a.Used[1].Parts[1].At[0] = 900 * mm }},
		{"half a saw cut between parts", verify.KerfRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[1].At[0] -= mm }},
		{"parts one over the other", verify.KerfRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[1].At[0] = 100 * mm }},
		{"an offcut that overlaps a part", verify.KerfRule, func(_ *problem, a *cut.Answer) { a.Used[0].Left[0].At[0] -= mm }},
		{"an offcut too short to keep", verify.LeftRule, func(p *problem, _ *cut.Answer) { p.Useful = 100 * mm }},
		{"waste that does not add up", verify.WasteRule, func(_ *problem, a *cut.Answer) { a.Waste.Kerf++ }},
		{"negative waste", verify.WasteRule, func(_ *problem, a *cut.Answer) { a.Waste.Kerf -= 20; a.Waste.Trim += 20 }},
		{"a cost too low", verify.CostRule, func(_ *problem, a *cut.Answer) { a.Cost, a.Bound = 40, 40 }},
		{"a bound above the cost", verify.BoundRule, func(_ *problem, a *cut.Answer) { a.Bound = 81 }},
		{"a proof that is none", verify.BoundRule, func(_ *problem, a *cut.Answer) { a.Bound = 79 }},
		{"a cut at another setting", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts[0].Setting++ }},
		{"a part that no cut makes", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts = a.Cuts[:2] }},
		{"a cut on stock that is not there", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts[0].On = "S7" }},
		{"a cut that makes what nobody wants", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts[0].Makes[0] = "C9" }},
	})
}

// sheets is one sheet with four parts, one turned, and a defect: kerf 2, trim 10.
func sheets() (*cut.SheetProblem, *cut.Answer) {
	p := &cut.SheetProblem{
		Unit: length.MM, Kerf: 2 * mm, Trim: 10 * mm, Stages: 2, Useful: at(100, 50),
		Sheets: []cut.Sheet{{Tag: "P1", Length: 1000 * mm, Width: 500 * mm, Count: 1, Price: cut.Priced(60), Defects: []cut.Rect{{X: 900 * mm, Y: 400 * mm, Length: 20 * mm, Width: 20 * mm}}}},
		Parts:  []cut.SheetPart{{Tag: "D1", Length: 300 * mm, Width: 200 * mm, Count: 3}, {Tag: "D2", Length: 200 * mm, Width: 100 * mm, Count: 1, Turn: true}},
	}
	a := &cut.Answer{
		Cost: 60, Bound: 60, Proven: true,
		Used: []cut.Used{{Stock: "P1", Parts: []cut.Placed{
			{Tag: "D1", At: at(10, 10), Size: at(300, 200)}, {Tag: "D1", At: at(10, 212), Size: at(300, 200)},
			{Tag: "D1", At: at(312, 10), Size: at(300, 200)}, {Tag: "D2", At: at(312, 212), Size: at(100, 200), Turned: true},
		}, Left: []cut.Offcut{{At: at(614, 10), Size: at(200, 480)}}}},
	}
	return p, a
}

func TestEveryWrongLayoutOfSheetsIsRefused(t *testing.T) {
	type problem = cut.SheetProblem
	tryAll(t, sheets, verify.Sheet, []plant[problem]{
		{"more sheets than there are", verify.StockRule, func(_ *problem, a *cut.Answer) { a.Used = append(a.Used, cut.Used{Stock: "P1"}); a.Cost += 60 }},
		{"a sheet that is not there", verify.StockRule, func(_ *problem, a *cut.Answer) { a.Used[0].Stock = "P2" }},
		{"a part forgotten", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts = a.Used[0].Parts[1:] }},
		{"a part turned that may not be", verify.SizeRule, func(p *problem, _ *cut.Answer) { p.Parts[1].Turn = false }},
		{"a part turned across the grain", verify.SizeRule, func(p *problem, _ *cut.Answer) { p.Sheets[0].Grain = true }},
		{"a part turned and not told", verify.SizeRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[3].Turned = false }},
		{"a part in the trim", verify.InsideRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[0].At[1] = 9 * mm }},
		{"half a saw cut between parts", verify.KerfRule, func(_ *problem, a *cut.Answer) { a.Used[0].Parts[1].At[1] = 211 * mm }},
		{"a part on a defect", verify.DefectRule, func(_ *problem, a *cut.Answer) { a.Used[0].Left = nil; a.Used[0].Parts[3].At = at(850, 250) }},
		{"an offcut too small to keep", verify.LeftRule, func(_ *problem, a *cut.Answer) { a.Used[0].Left[0].Size = at(60, 45) }},
		{"an offcut beyond the sheet", verify.InsideRule, func(_ *problem, a *cut.Answer) { a.Used[0].Left[0].Size[0] = 400 * mm }},
		{"too many stages", verify.CutRule, func(p *problem, _ *cut.Answer) { p.Stages = 1 }},
		{"cuts that can't go right across", verify.CutRule, func(p *problem, a *cut.Answer) {
			p.Parts = []cut.SheetPart{{Tag: "D1", Length: 200 * mm, Width: 100 * mm, Count: 4, Turn: true}}
			a.Used[0].Left = nil
			a.Used[0].Parts = []cut.Placed{
				{Tag: "D1", At: at(10, 10), Size: at(200, 100)}, {Tag: "D1", At: at(212, 10), Size: at(100, 200), Turned: true},
				{Tag: "D1", At: at(112, 212), Size: at(200, 100)}, {Tag: "D1", At: at(10, 112), Size: at(100, 200), Turned: true},
			}
		}},
		{"a cost too low", verify.CostRule, func(_ *problem, a *cut.Answer) { a.Cost, a.Bound = 50, 50 }},
		{"a bound above the cost", verify.BoundRule, func(_ *problem, a *cut.Answer) { a.Bound = 61 }},
		{"a value said too high", verify.CostRule, func(p *problem, _ *cut.Answer) { p.Parts[0].Value = cut.Priced(10) }},
		{"waste that does not add up", verify.WasteRule, func(_ *problem, a *cut.Answer) { a.Waste.Kerf = 3 }},
		{"a cut that makes what nobody wants", verify.CutRule, func(_ *problem, a *cut.Answer) {
			a.Cuts = []cut.Setting{{N: 1, On: "P1", Machine: cut.Rip, Setting: mm, Makes: []string{"D7"}}}
		}},
		{"a cut without a setting", verify.CutRule, func(_ *problem, a *cut.Answer) {
			a.Cuts = []cut.Setting{{N: 1, On: "P1", Machine: cut.Rip}}
		}},
	})
}

func TestOfSheetsFilledForValueTheBoundIsAbove(t *testing.T) {
	p, a := sheets()
	p.Parts[0].Value, p.Parts[0].Count = cut.Priced(10), cut.Any
	a.Cost, a.Bound, a.Proven = 30, 35, false
	if faults := verify.Sheet(p, a); len(faults) > 0 {
		t.Errorf("refused: %v", faults)
	}
	a.Bound = 29
	if faults := verify.Sheet(p, a); len(faults) == 0 {
		t.Error("an upper bound below the value is taken")
	}
}

// boards is one panel of two strips from two boards: kerf 2, jointing 1, trims 5, 3 and 4.
func boards() (*cut.PanelProblem, *cut.Answer) {
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: 2 * mm, Jointing: mm, EndTrim: 5 * mm, PanelEdgeTrim: 3 * mm, BoardEdgeTrim: 4 * mm,
		Salvage: 0.5, MinTail: 200 * mm, Strip: cut.Span{Least: 40 * mm, Most: 90 * mm},
		Boards: []cut.Board{
			{Tag: "B1", Length: 1000 * mm, Width: 150 * mm, Thickness: 30 * mm, RoughEdges: 2, Price: cut.Priced(40), Mate: "a", Ring: cut.RingUp, Defects: []cut.Defect{
				{Kind: cut.Knot, Face: cut.GoodFace, Rect: cut.Rect{X: 600 * mm, Y: 20 * mm, Length: 30 * mm, Width: 30 * mm}},
				{Kind: cut.Knot, Face: cut.BackFace, Rect: cut.Rect{X: 100 * mm, Y: 20 * mm, Length: 30 * mm, Width: 30 * mm}},
			}},
			{Tag: "B2", Length: 600 * mm, Width: 100 * mm, Thickness: 30 * mm, Price: cut.Priced(20), Mate: "a", Ring: cut.RingUp},
		},
		Panels: []cut.Panel{{Tag: "A1", Length: 490 * mm, Width: 150 * mm, Thickness: 25 * mm, Count: 1, Show: cut.Clear, Mates: true}},
	}
	strips := []cut.Strip{
		{Board: "B1", At: at(0, 4), Size: at(500, 80), Ring: cut.RingUp, NetWidth: 78 * mm},
		{Board: "B2", At: at(0, 0), Size: at(500, 80), Ring: cut.RingDown, NetWidth: 78 * mm},
	}
	a := &cut.Answer{
		// B1 keeps a tail of 498: 40 − 0.5·40·0.498; B2 of 98 keeps none.
		Cost: 40 - 9.96 + 20, Bound: 40,
		Panels: []cut.GluedPanel{{Tag: "A1", Strips: strips}},
		Used: []cut.Used{
			{Stock: "B1", Parts: []cut.Placed{{Tag: "A1", At: strips[0].At, Size: strips[0].Size}}, Left: []cut.Offcut{{At: at(502, 0), Size: at(498, 150)}}},
			{Stock: "B2", Parts: []cut.Placed{{Tag: "A1", At: strips[1].At, Size: strips[1].Size}}},
		},
	}
	return p, a
}

// move changes a strip on its board and in its panel alike.
func move(a *cut.Answer, n int, change func(at, size *[2]length.Length)) {
	s, q := &a.Panels[0].Strips[n], &a.Used[n].Parts[0]
	change(&s.At, &s.Size)
	q.At, q.Size = s.At, s.Size
	s.NetWidth = s.Size[1] - 2*mm
}

func TestEveryWrongLayoutOfPanelsIsRefused(t *testing.T) {
	type problem = cut.PanelProblem
	tryAll(t, boards, verify.Panel, []plant[problem]{
		{"a board used twice", verify.StockRule, func(_ *problem, a *cut.Answer) { a.Used = append(a.Used, a.Used[1]) }},
		{"a board that is not there", verify.StockRule, func(_ *problem, a *cut.Answer) { a.Panels[0].Strips[1].Board = "B3" }},
		{"a panel forgotten", verify.PartRule, func(p *problem, _ *cut.Answer) { p.Panels[0].Count = 2 }},
		{"a strip that is on no board", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Used[1].Parts = nil }},
		{"a strip that is in no panel", verify.PartRule, func(_ *problem, a *cut.Answer) {
			a.Used[0].Parts = append(a.Used[0].Parts, cut.Placed{Tag: "A1", At: at(0, 86), Size: at(500, 50)})
		}},
		{"a strip in the rough edge", verify.InsideRule, func(_ *problem, a *cut.Answer) {
			move(a, 0, func(at, _ *[2]length.Length) { at[1] = 3 * mm })
		}},
		{"a strip beyond the board", verify.InsideRule, func(_ *problem, a *cut.Answer) {
			move(a, 1, func(at, _ *[2]length.Length) { at[0] = 101 * mm })
		}},
		{"a strip too near to the tail", verify.KerfRule, func(_ *problem, a *cut.Answer) { a.Used[0].Left[0].At[0] = 501 * mm }},
		{"a tail too short to keep", verify.LeftRule, func(p *problem, a *cut.Answer) { p.MinTail = 499 * mm; a.Cost = 60 }},
		{"a strip too short", verify.StripRule, func(p *problem, _ *cut.Answer) { p.EndTrim = 6 * mm }},
		{"a strip too wide", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Strip.Most = 79 * mm }},
		{"a strip too narrow", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Strip.Least = 81 * mm }},
		{"a false net width", verify.StripRule, func(_ *problem, a *cut.Answer) { a.Panels[0].Strips[0].NetWidth += mm }},
		{"a panel too narrow", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Panels[0].Width = 151 * mm }},
		{"a board too thin", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Boards[1].Thickness = 20 * mm }},
		{"a knot in a clear face", verify.DefectRule, func(_ *problem, a *cut.Answer) {
			move(a, 0, func(at, _ *[2]length.Length) { at[0] = 200 * mm })
		}},
		{"the knotty face shown", verify.DefectRule, func(_ *problem, a *cut.Answer) { a.Panels[0].Strips[0].Ring = cut.RingDown }},
		{"a defect where a screw will be", verify.DefectRule, func(p *problem, _ *cut.Answer) {
			p.Panels[0].KeepOut = []cut.Rect{{X: 120 * mm, Y: 30 * mm, Length: 10 * mm, Width: 10 * mm}}
		}},
		{"a joint through a void", verify.DefectRule, func(p *problem, _ *cut.Answer) {
			p.Panels[0].Show = cut.Character
			p.Boards[1].Defects = []cut.Defect{{Kind: cut.Void, Face: cut.BothFaces, Rect: cut.Rect{X: 50 * mm, Y: 70 * mm, Length: 20 * mm, Width: 20 * mm}}}
		}},
		{"strips of two logs", verify.MateRule, func(p *problem, _ *cut.Answer) { p.Boards[1].Mate = "b" }},
		{"a tail that is not taken off", verify.CostRule, func(_ *problem, a *cut.Answer) { a.Cost = 60 }},
		{"a bound above the cost", verify.BoundRule, func(_ *problem, a *cut.Answer) { a.Bound = 51 }},
		{"waste that does not add up", verify.WasteRule, func(_ *problem, a *cut.Answer) { a.Waste.Defect = 5 }},
	})
}

// A long strip beside two short ones on one stretch of the board would need a crosscut after the rip.
func TestStripsThatCanNotBeCrosscutFirstAreRefused(t *testing.T) {
	p, a := boards()
	p.Boards[0].Defects = nil
	p.Panels = append(p.Panels, cut.Panel{Tag: "A2", Length: 240 * mm, Width: 50 * mm, Count: 2, Show: cut.Clear})
	for i, x := range []length.Length{0, 252} {
		s := cut.Strip{Board: "B1", At: at(x, 86), Size: at(248+2*length.Length(i), 58), Ring: cut.RingUp, NetWidth: 56 * mm}
		if i == 0 {
			s.Size[0] = 250 * mm
		}
		a.Panels = append(a.Panels, cut.GluedPanel{Tag: "A2", Strips: []cut.Strip{s}})
		a.Used[0].Parts = append(a.Used[0].Parts, cut.Placed{Tag: "A2", At: s.At, Size: s.Size})
	}
	a.Cost, a.Used[0].Left = 40-0.5*40*0.496+20, nil
	faults := verify.Panel(p, a)
	if !slices.ContainsFunc(faults, func(f verify.Fault) bool { return f.Rule == verify.CutRule }) {
		t.Errorf("got %v", faults)
	}
}

// A clear strip beside a knotty one of the same segment: panels of two grades are cut from segments of their own.
func TestASegmentIsForPanelsOfOneKind(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*cut.Panel)
		wrong  bool
	}{
		{"the same kind", func(*cut.Panel) {}, false},
		{"another grade", func(q *cut.Panel) { q.Show = cut.Character }, true},
		{"another length", func(q *cut.Panel) { q.Length -= 10 * mm }, true},
		{"another thickness", func(q *cut.Panel) { q.Thickness = 20 * mm }, true},
	} {
		p, a := boards()
		p.Boards[0].Defects = nil
		q := p.Panels[0]
		q.Tag, q.Width = "A2", 50*mm
		c.change(&q)
		p.Panels = append(p.Panels, q)
		s := cut.Strip{Board: "B1", At: at(0, 86), Size: at(500, 60), Ring: cut.RingUp, NetWidth: 58 * mm}
		a.Panels = append(a.Panels, cut.GluedPanel{Tag: "A2", Strips: []cut.Strip{s}})
		a.Used[0].Parts = append(a.Used[0].Parts, cut.Placed{Tag: "A2", At: s.At, Size: s.Size})
		faults := verify.Panel(p, a)
		if got := slices.ContainsFunc(faults, func(f verify.Fault) bool { return f.Rule == verify.CutRule }); got != c.wrong {
			t.Errorf("%s: %v", c.name, faults)
		}
	}
}

func ExampleStick() {
	p, a := sticks()
	a.Used[0].Parts[1].At[0] -= mm
	for _, f := range verify.Stick(p, a) {
		fmt.Println(f)
	}
	// Output:
	// kerf: C1 and C1 on S1 are less than a saw cut apart
}
