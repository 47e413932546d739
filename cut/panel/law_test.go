package panel_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/verify"
	"rodwright/length"
)

const mm = length.Millimetre

func size(t *rapid.T, name string, least, most int) length.Length {
	return length.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
}

func drawBoard(t *rapid.T, i int) panel.Board {
	b := panel.Board{
		Tag: fmt.Sprint("B", i), Length: size(t, "length", 20, 90), Width: size(t, "width", 4, 20), Thickness: size(t, "thickness", 1, 3),
		RoughEdges: rapid.IntRange(0, 2).Draw(t, "rough"), Mate: rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "mate"),
		Ring: rapid.SampledFrom([]cut.Ring{cut.NoRing, cut.RingUp, cut.RingDown}).Draw(t, "ring"),
	}
	if rapid.Bool().Draw(t, "priced") {
		b.Price = cut.Priced(float64(rapid.IntRange(0, 40).Draw(t, "price")))
	}
	for range rapid.IntRange(0, 3).Draw(t, "defects") {
		b.Defects = append(b.Defects, cut.Defect{
			Kind: rapid.SampledFrom([]cut.DefectKind{cut.Knot, cut.Split, cut.Wane, cut.Sap, cut.Void}).Draw(t, "kind"),
			Face: rapid.SampledFrom([]cut.Face{cut.BothFaces, cut.GoodFace, cut.BackFace}).Draw(t, "face"),
			Rect: cut.Rect{X: size(t, "x", 0, 80), Y: size(t, "y", 0, 18), Length: size(t, "dl", 1, 30), Width: size(t, "dw", 1, 8)},
		})
	}
	return b
}

func drawProblem(t *rapid.T, boards, panels int) *panel.Problem {
	p := &panel.Problem{
		Unit: length.MM, Kerf: size(t, "kerf", 0, 2), Jointing: size(t, "jointing", 0, 2) / 4, EndTrim: size(t, "end", 0, 2),
		PanelEdgeTrim: size(t, "edge", 0, 1), BoardEdgeTrim: size(t, "rough", 0, 2), MinTail: size(t, "tail", 0, 30),
		Salvage: rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "salvage"), Strip: cut.Span{Least: size(t, "least", 0, 4)},
	}
	if rapid.Bool().Draw(t, "limited") {
		p.Strip.Most = p.Strip.Least + size(t, "most", 2, 6)
	}
	for i := range rapid.IntRange(1, boards).Draw(t, "boards") {
		p.Boards = append(p.Boards, drawBoard(t, i))
	}
	for i := range rapid.IntRange(0, panels).Draw(t, "panels") {
		q := panel.Panel{
			Tag: fmt.Sprint("A", i), Length: size(t, "length", 5, 50), Width: size(t, "width", 2, 30), Count: cut.Count(rapid.IntRange(0, 2).Draw(t, "count")),
			Show:  rapid.SampledFrom([]cut.Show{cut.Clear, cut.SmallKnots, cut.Character}).Draw(t, "show"),
			Mates: rapid.IntRange(0, 3).Draw(t, "mates") == 0, Thickness: size(t, "thickness", 0, 2),
		}
		if rapid.IntRange(0, 2).Draw(t, "kept out") == 0 {
			q.KeepOut = []cut.Rect{{X: size(t, "x", 0, 20), Y: size(t, "y", 0, 20), Length: size(t, "kl", 1, 9), Width: size(t, "kw", 1, 9)}}
		}
		p.Panels = append(p.Panels, q)
	}
	return p
}

func TestEveryAnswerPassesTheVerifier(t *testing.T) {
	made, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6, 4)
		a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: rapid.SampledFrom([]int{1, 1500}).Draw(t, "nodes")})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Panel(p, a) {
			t.Errorf("%v", f)
		}
		made += len(a.Panels)
		all += len(a.Panels) + len(a.NotPlaced)
	})
	t.Logf("%d of %d panels made", made, all)
	if made*3 < all {
		t.Errorf("only %d of %d panels are made: the law is hardly tried", made, all)
	}
}

// want is a kind of panel: strips of one length and grade.
type want struct {
	length length.Length
	show   cut.Show
}

// least is the least cost of boards whose segments, each for one kind, have at least the net width of the panels of
// each kind, trying every choice of boards and every segment at every place that is a whole millimetre.
func least(p *panel.Problem, fine bool) float64 {
	need := map[want]length.Length{}
	var kinds []want
	for i, q := range p.Panels {
		if q.Count > 0 {
			k := want{p.BlankLength(i), q.Show}
			if need[k] == 0 {
				kinds = append(kinds, k)
			}
			need[k] += p.BlankWidth(i) * length.Length(q.Count)
		}
	}
	best := math.Inf(1)
	var next func(k int, cost float64)
	next = func(k int, cost float64) {
		open := false
		for _, n := range need {
			open = open || n > 0
		}
		if !open {
			best = min(best, cost)
			return
		}
		if k == len(p.Boards) || cost >= best {
			return
		}
		next(k+1, cost)
		var saw func(x length.Length)
		saw = func(x length.Length) {
			if x > 0 {
				next(k+1, cost+p.Cost(k)-p.TailCredit(k, p.Boards[k].Length-x))
			}
			for at := x; at < p.Boards[k].Length; at += mm {
				for _, w := range kinds {
					if at+w.length > p.Boards[k].Length || need[w] <= 0 {
						continue
					}
					if net := yield(p, k, at, w); net > 0 {
						need[w] -= net
						saw(at + w.length + p.Kerf)
						need[w] += net
					}
				}
				if !fine {
					break
				}
			}
		}
		saw(0)
	}
	next(0, 0)
	return best
}

// yield is the net width of the strips of one segment, from the ranges that hold nothing forbidden, a millimetre at a
// time.
func yield(p *panel.Problem, k int, x length.Length, w want) (net length.Length) {
	from, to := p.Usable(k)
	run := length.Length(0)
	for y := from; y <= to; y += mm {
		free := y < to
		for _, d := range p.Boards[k].Defects {
			if d.X < x+w.length && d.X+d.Length > x && d.Y < y+mm && d.Y+d.Width > y && !w.show.Takes(d, false) {
				free = false
			}
		}
		if free {
			run += mm
			continue
		}
		net += widest(p, run)
		run = 0
	}
	return net
}

// widest is the greatest net width of strips out of a range, trying every number of strips.
func widest(p *panel.Problem, width length.Length) (best length.Length) {
	for n := length.Length(1); n < 100; n++ {
		ripped := width - (n-1)*p.Kerf
		if p.Strip.Most > 0 {
			ripped = min(ripped, n*p.Strip.Most)
		}
		if ripped >= n*p.Strip.Least {
			best = max(best, ripped-n*p.Joint())
		}
	}
	return best
}

// On boards without defects no layout is cheaper than the cheapest boards whose segments are wide enough together; the
// bound must not be above that.
func TestTheBoundIsNeverAboveTheCheapestBoards(t *testing.T) {
	tight, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 3, 2)
		for i := range p.Boards {
			p.Boards[i].Defects = nil
			if i == 1 && rapid.Bool().Draw(t, "alike") {
				p.Boards[i] = p.Boards[0]
				p.Boards[i].Tag = fmt.Sprint("B", i)
			}
		}
		for i := range p.Panels {
			p.Panels[i].Mates, p.Panels[i].KeepOut, p.Panels[i].Thickness = false, nil, 0
			p.Panels[i].Length += 15 * mm
		}
		a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 3000})
		if err != nil {
			t.Fatal(err)
		}
		if len(a.NotPlaced) > 0 {
			return
		}
		want := least(p, false)
		if a.Bound > want+1e-6 {
			t.Fatalf("bound %v, the cheapest boards cost %v, the layout %v", a.Bound, want, a.Cost)
		}
		all++
		if a.Bound > 0.9*want-1e-9 {
			tight++
		}
	})
	t.Logf("of %d bounds %d are within a tenth", all, tight)
}

// The same on boards with knots and splits, where a segment may begin anywhere. The boards are small, as every place is
// tried. Defects are no narrower than a saw cut: beside a narrower one the saw takes more than the defect, which yield
// does not reckon with.
func TestTheBoundIsNeverAboveTheCheapestBoardsWithDefects(t *testing.T) {
	tight, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 2, 2)
		for i := range p.Boards {
			b := &p.Boards[i]
			b.Ring, b.Length, b.Width = cut.NoRing, min(b.Length, 30*mm), b.Width+6*mm
			for j := range b.Defects {
				d := &b.Defects[j]
				d.X, d.Length, d.Width = d.X/3/mm*mm, min(d.Length, 6*mm), max(p.Kerf, min(d.Width, 4*mm))
			}
		}
		for i := range p.Panels {
			q := &p.Panels[i]
			q.Mates, q.KeepOut, q.Thickness = false, nil, 0
			q.Length, q.Width, q.Count = 10*mm+q.Length/5/mm*mm, min(q.Width, 12*mm), min(q.Count, 1)
		}
		a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 4000})
		if err != nil {
			t.Fatal(err)
		}
		if len(a.NotPlaced) > 0 || len(a.Panels) == 0 {
			return
		}
		want := least(p, true)
		if a.Bound > want+1e-6 {
			t.Fatalf("bound %v, the cheapest boards cost %v, the layout %v", a.Bound, want, a.Cost)
		}
		all++
		if a.Bound > 0.9*want-1e-9 {
			tight++
		}
	})
	t.Logf("of %d bounds %d are within a tenth", all, tight)
}

// Wherever the time ends, what was not looked at to its end rules no layout out: of an early bound, no later layout is
// cheaper.
func TestABoundThatIsBrokenOffIsStillTrue(t *testing.T) {
	below := 0
	for seed := range 40 {
		p := rapid.Custom(func(t *rapid.T) *cut.PanelProblem { return drawProblem(t, 6, 3) }).Example(seed)
		solve := func(nodes int) *cut.Answer {
			a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: nodes})
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		last := solve(20_000)
		if len(last.NotPlaced) > 0 {
			continue
		}
		for nodes := 10; nodes < 10_000; nodes += 10 + nodes/10 {
			switch a := solve(nodes); {
			case len(a.NotPlaced) > 0:
			case a.Bound > last.Cost+1e-6:
				t.Fatalf("seed %d: after %d nodes the bound is %v, a layout costs %v", seed, nodes, a.Bound, last.Cost)
			case a.Cost > last.Cost+1e-6:
				below++
			}
		}
	}
	if below < 20 {
		t.Errorf("only %d times was a cheaper layout found later", below)
	}
}
