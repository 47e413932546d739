package verify_test

import (
	"slices"
	"testing"

	"rodwright/cut"
	"rodwright/cut/verify"
	"rodwright/length"
)

// piece is a strip on the one board of a layout: x, y, length, width in millimetres.
type piece [4]length.Length

// recut is a board of 1000 × 150, saw cut 2, no jointing, out of which each piece makes a panel of its own.
func recut(pieces ...piece) (*cut.PanelProblem, *cut.Answer) {
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: 2 * mm, Recut: true,
		Boards: []cut.Board{{Tag: "B1", Length: 1000 * mm, Width: 150 * mm, Price: cut.Priced(40)}},
	}
	a := &cut.Answer{Cost: 40, Bound: 40, Used: []cut.Used{{Stock: "B1"}}}
	for i, s := range pieces {
		tag := "A" + string(rune('1'+i))
		place, size := at(s[0], s[1]), at(s[2], s[3])
		p.Panels = append(p.Panels, cut.Panel{Tag: tag, Length: size[0], Width: size[1], Count: 1, Show: cut.Character})
		a.Panels = append(a.Panels, cut.GluedPanel{Tag: tag, Strips: []cut.Strip{{Board: "B1", At: place, Size: size, NetWidth: size[1]}}})
		a.Used[0].Parts = append(a.Used[0].Parts, cut.Placed{Tag: tag, At: place, Size: size})
	}
	return p, a
}

func breaks(faults []verify.Fault, rule verify.Rule) bool {
	return slices.ContainsFunc(faults, func(f verify.Fault) bool { return f.Rule == rule })
}

// Where what falls off may be used, a board comes apart by crosscuts, rips, crosscuts again and rips again.
func TestWhatFallsOffMayBeCrosscutAndRippedOnceMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		pieces []piece
		right  bool
	}{
		{"two lengths side by side", []piece{{0, 0, 600, 80}, {0, 82, 300, 60}}, true},
		{"an offcut crosscut again", []piece{{0, 0, 600, 80}, {0, 82, 300, 60}, {302, 82, 298, 60}}, true},
		{"and ripped again", []piece{{0, 0, 600, 80}, {0, 82, 300, 30}, {0, 114, 300, 36}, {302, 82, 298, 60}}, true},
		{"and crosscut a third time", []piece{{0, 0, 600, 80}, {0, 82, 300, 30}, {0, 114, 150, 36}, {302, 82, 298, 60}}, false},
		{"two segments of their own lengths", []piece{{0, 0, 600, 80}, {602, 0, 300, 150}}, true},
		{"a pinwheel", []piece{{0, 0, 60, 50}, {62, 0, 50, 60}, {52, 62, 60, 50}, {0, 52, 50, 60}}, false},
		{"less than a saw cut between two recut pieces", []piece{{0, 0, 600, 80}, {0, 82, 300, 60}, {301, 82, 298, 60}}, false},
		{"one over the other", []piece{{0, 0, 600, 80}, {0, 70, 300, 60}}, false},
		{"beyond the board", []piece{{0, 0, 600, 80}, {500, 82, 501, 60}}, false},
	} {
		p, a := recut(c.pieces...)
		if faults := verify.Panel(p, a); (len(faults) == 0) != c.right {
			t.Errorf("%s: %v", c.name, faults)
		}
	}
}

// A knot that the remainder beside a clear strip holds is judged by the grade of the panel the remainder serves.
func TestEachStripOfASegmentIsJudgedByItsOwnPanel(t *testing.T) {
	p, a := recut(piece{0, 0, 600, 80}, piece{0, 82, 600, 60})
	p.Panels[0].Show = cut.Clear
	p.Boards[0].Defects = []cut.Defect{{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: 100 * mm, Y: 90 * mm, Length: 20 * mm, Width: 20 * mm}}}
	if faults := verify.Panel(p, a); len(faults) > 0 {
		t.Errorf("refused: %v", faults)
	}
	p.Panels[1].Show = cut.SmallKnots
	if !breaks(verify.Panel(p, a), verify.DefectRule) {
		t.Error("a knot of 20 mm is taken for a small one")
	}
	p.Recut, p.Panels[1].Show = false, cut.Character
	if !breaks(verify.Panel(p, a), verify.CutRule) {
		t.Error("without recutting one segment serves two grades")
	}
}

// Every rule but that of the cuts holds for recut pieces as for any.
func TestEveryWrongLayoutOfRecutPiecesIsRefused(t *testing.T) {
	type problem = cut.PanelProblem
	fresh := func() (*problem, *cut.Answer) {
		return recut(piece{0, 0, 600, 80}, piece{0, 82, 300, 60}, piece{302, 82, 298, 60})
	}
	shift := func(a *cut.Answer, i int, change func(at, size *[2]length.Length)) {
		s, q := &a.Panels[i].Strips[0], &a.Used[0].Parts[i]
		change(&s.At, &s.Size)
		q.At, q.Size, s.NetWidth = s.At, s.Size, s.Size[1]
	}
	tryAll(t, fresh, verify.Panel, []plant[problem]{
		{"not allowed", verify.CutRule, func(p *problem, _ *cut.Answer) { p.Recut = false }},
		{"too short", verify.StripRule, func(_ *problem, a *cut.Answer) { shift(a, 2, func(_, size *[2]length.Length) { size[0] -= mm }) }},
		{"too narrow a strip", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Strip.Least = 61 * mm }},
		{"too wide a strip", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Strip.Most = 79 * mm }},
		{"too thin", verify.StripRule, func(p *problem, _ *cut.Answer) { p.Panels[1].Thickness = 20 * mm }},
		{"in the rough edge", verify.InsideRule, func(p *problem, _ *cut.Answer) { p.Boards[0].RoughEdges, p.BoardEdgeTrim = 1, 9*mm }},
		{"half a saw cut beside the strip it fell off from", verify.KerfRule, func(_ *problem, a *cut.Answer) {
			shift(a, 1, func(at, _ *[2]length.Length) { at[1] -= mm })
		}},
		{"on a split", verify.DefectRule, func(p *problem, _ *cut.Answer) {
			p.Boards[0].Defects = []cut.Defect{{Kind: cut.Split, Face: cut.BothFaces, Rect: cut.Rect{X: 400 * mm, Y: 100 * mm, Length: mm, Width: mm}}}
		}},
		{"a defect where a screw will be", verify.DefectRule, func(p *problem, _ *cut.Answer) {
			p.Boards[0].Defects = []cut.Defect{{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: 400 * mm, Y: 100 * mm, Length: mm, Width: mm}}}
			p.Panels[2].KeepOut = []cut.Rect{{X: 90 * mm, Y: 10 * mm, Length: 20 * mm, Width: 20 * mm}}
		}},
		{"a joint through a void", verify.DefectRule, func(p *problem, _ *cut.Answer) {
			p.Boards[0].Defects = []cut.Defect{{Kind: cut.Void, Face: cut.BothFaces, Rect: cut.Rect{X: 400 * mm, Y: 140 * mm, Length: mm, Width: 5 * mm}}}
		}},
		{"a tail that is longer than what is left", verify.CostRule, func(p *problem, _ *cut.Answer) { p.Salvage = 0.5 }},
		{"a proof that is none", verify.BoundRule, func(_ *problem, a *cut.Answer) { a.Bound, a.Proven = 39, true }},
	})
}
