package offcut

import (
	"context"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

const mm = length.Millimetre

func bare(kerf, jointing, least, most length.Length, b cut.Board) *work {
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: kerf * mm, Jointing: jointing * mm, Strip: cut.Span{Least: least * mm, Most: most * mm}, Boards: []cut.Board{b},
		Panels: []cut.Panel{{Tag: "A1", Length: mm, Width: mm, Count: 1, Show: cut.Clear}},
	}
	return newWork(p, &cut.Answer{}, cut.NewBudget(context.Background(), cut.Limits{Nodes: 1}))
}

// Worked by hand: a board of 100 × 20 with a knot at 40 to 50, 8 to 12 across. Beside the knot 8 are clear on either side,
// two strips of 8 and 6 net each; elsewhere 20 are two strips of 10 less a saw cut: 20 − 2 − 4 = 14 net, or one of 12 at
// most. A saw cut of 2 is added behind each free place, so that the knot's own stretch is 42 to 50.
func TestWhatABoardYieldsLineByLine(t *testing.T) {
	b := cut.Board{Tag: "B1", Length: 100 * mm, Width: 20 * mm, Defects: []cut.Defect{
		{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: 40 * mm, Y: 8 * mm, Length: 10 * mm, Width: 4 * mm}},
	}}
	w := bare(2, 1, 4, 12, b)
	sum := new(big.Int)
	for _, s := range w.slabs(0, cut.Clear, 30*mm) {
		sum.Add(sum, area128(s.to-s.from, s.net))
	}
	if want := area128((102-8)*mm, 14*mm); sum.Cmp(want.Add(want, area128(8*mm, 12*mm))) != 0 {
		t.Errorf("yields %v, want %v", sum, want)
	}
	// Where no strip is shorter than 60, the 40 before the knot are only free beside it.
	sum.SetInt64(0)
	for _, s := range w.slabs(0, cut.Clear, 60*mm) {
		sum.Add(sum, area128(s.to-s.from, s.net))
	}
	if want := area128(102*mm, 12*mm); sum.Cmp(want) != 0 {
		t.Errorf("yields %v, want %v", sum, want)
	}
}

// A knot that only the good face shows is no hindrance to a strip that may be turned over, and one to a strip that may not.
func TestAKnotOnOneFaceHindersWhereTheStripMayNotBeTurned(t *testing.T) {
	for ring, want := range map[cut.Ring]length.Length{cut.RingUp: 14 * mm, cut.NoRing: 0} {
		w := bare(2, 1, 4, 12, cut.Board{Tag: "B1", Length: 100 * mm, Width: 20 * mm, Ring: ring, Defects: []cut.Defect{
			{Kind: cut.Knot, Face: cut.GoodFace, Rect: cut.Rect{X: 10 * mm, Length: 90 * mm, Width: 20 * mm}},
		}})
		for _, s := range w.slabs(0, cut.Clear, 30*mm) {
			if s.net != want {
				t.Errorf("rings %q: %v net from %v on", ring, s.net, s.from)
			}
		}
	}
}

// Worked by hand: two panels of 49 × 10 with a saw cut of 2 between them fill a board of 100 × 12, jointed by 1 at each
// edge, to the last: 2·(49 + 2)·10 = 102·10. So the board for 20 is enough, and the bound is 20; any more would want the
// one for 30 as well.
func TestABoardThatIsFilledIsJustEnough(t *testing.T) {
	b := cut.Board{Tag: "B1", Length: 100 * mm, Width: 12 * mm, Price: cut.Priced(20)}
	w := bare(2, 1, 4, 12, b)
	b.Tag, b.Price = "B2", cut.Priced(30)
	w.p.Boards = append(w.p.Boards, b)
	w.glued = []glued{{0, 49 * mm, 10 * mm, nil}, {0, 49 * mm, 10 * mm, nil}}
	strips := []strip{{0, 0, cut.Rect{Length: 49 * mm, Width: 12 * mm}}, {1, 0, cut.Rect{X: 51 * mm, Length: 49 * mm, Width: 12 * mm}}}
	l := w.low(w.with(strips))
	if got := l.cover(0); got != 20_000_000 {
		t.Errorf("the cheapest boards cost %d millionths, want 20", got)
	}
	if got := l.lagrange(l.weights()); got > 20_000_000 || got < 19_990_000 {
		t.Errorf("the bound is %d millionths, want 20", got)
	}
	if low, proven := w.bound(w.with(strips)); !proven || low != 20 {
		t.Errorf("bound %v, proven %v", low, proven)
	}
	for i := range strips {
		strips[i].board = 1
	}
	if low, proven := w.bound(w.with(strips)); proven || low > 20 || low < 19.99 {
		t.Errorf("from the other board: bound %v, proven %v", low, proven)
	}
	w.p.Boards[1].Price = cut.Priced(21)
	if low, proven := w.bound(w.with(strips)); proven || low > 20 {
		t.Errorf("from the other board for 21: bound %v, proven %v", low, proven)
	}
	w.p.Boards[1].Price = cut.Priced(30)
	w.glued[0].width += mm / 10
	if got := w.low(w.with(strips)).cover(0); got != 50_000_000 {
		t.Errorf("the cheapest boards cost %d millionths, want 50", got)
	}
}

// Panels of a grade need wood that serves it, and any stricter wood serves it too: of what clear panels need nothing is said
// by those that take knots.
func TestANeedIsOfItsGradeAndThoseThatTakeMore(t *testing.T) {
	for g, show := range grades {
		w := bare(2, 1, 4, 12, cut.Board{Tag: "B1", Length: 100 * mm, Width: 12 * mm})
		w.p.Panels[0].Show = show
		w.glued = []glued{{0, 49 * mm, 10 * mm, nil}}
		l := w.low(w.with([]strip{{0, 0, cut.Rect{Length: 49 * mm, Width: 12 * mm}}}))
		for i := range grades {
			if needed := l.need[i] > 0; needed != (i >= g) {
				t.Errorf("%s: need of %s %d", show, grades[i], l.need[i])
			}
		}
	}
}

// Worked by hand: a split from 30 to 40 leaves 30 and 60 of a board of 100. Panels of 20 and of 50 are wanted: the shorter one
// comes from the 30, too, so that they count, each run a saw cut of 2 longer: 32 + 62 of 10 net.
func TestTheShortestPanelSaysWhichPlacesCount(t *testing.T) {
	w := bare(2, 1, 4, 12, cut.Board{Tag: "B1", Length: 100 * mm, Width: 12 * mm, Price: cut.Priced(20), Defects: []cut.Defect{
		{Kind: cut.Split, Face: cut.BothFaces, Rect: cut.Rect{X: 30 * mm, Length: 10 * mm, Width: 12 * mm}},
	}})
	w.glued = []glued{{0, 50 * mm, 10 * mm, nil}, {0, 20 * mm, 10 * mm, nil}}
	l := w.low(w.with([]strip{{0, 0, cut.Rect{X: 40 * mm, Length: 50 * mm, Width: 12 * mm}}, {1, 0, cut.Rect{Length: 20 * mm, Width: 12 * mm}}}))
	offers := l.boards[0]
	share := float64(offers[len(offers)-1].yield[0]) / float64(l.need[0])
	if want := 94.0 * 10 / ((52 + 22) * 10); share < want-1e-6 || share > want+1e-6 {
		t.Errorf("yields %v of what is needed, want %v", share, want)
	}
}

// Strips a saw cut apart that hold nothing forbidden have no more net area, each a saw cut longer, than the board is said
// to yield up to where the last one ends.
func TestNoStripsYieldMoreThanTheirBoard(t *testing.T) {
	full := 0
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, least, most int) length.Length {
			return length.Length(rapid.IntRange(least, most).Draw(t, name))
		}
		b := cut.Board{Tag: "B1", Length: n("length", 10, 60) * mm, Width: n("width", 4, 24) * mm, RoughEdges: rapid.IntRange(0, 2).Draw(t, "rough")}
		b.Ring = rapid.SampledFrom([]cut.Ring{cut.NoRing, cut.RingUp}).Draw(t, "ring")
		for range rapid.IntRange(0, 4).Draw(t, "defects") {
			b.Defects = append(b.Defects, cut.Defect{
				Kind: rapid.SampledFrom([]cut.DefectKind{cut.Knot, cut.Split, cut.Sap, cut.Void}).Draw(t, "kind"),
				Face: rapid.SampledFrom([]cut.Face{cut.BothFaces, cut.GoodFace, cut.BackFace}).Draw(t, "face"),
				Rect: cut.Rect{X: n("x", 0, 60) * mm, Y: n("y", 0, 24) * mm, Length: n("dl", 1, 15) * mm, Width: n("dw", 1, 6) * mm},
			})
		}
		w := bare(n("kerf", 0, 2), 0, n("least", 1, 4), 0, b)
		w.p.Jointing, w.p.BoardEdgeTrim = n("jointing", 0, 2)*mm/4, n("trim", 0, 2)*mm
		w.p.Strip.Most = n("most", 0, 1) * (w.p.Strip.Least + 4*mm)
		w.least = max(w.p.Strip.Least, w.p.Joint()+1)
		show := rapid.SampledFrom(grades).Draw(t, "show")
		shortest := n("shortest", 4, 20) * mm
		in := w.usable(0)
		var strips []cut.Rect
		got, end := new(big.Int), length.Length(0)
		for range 40 {
			r := cut.Rect{X: n("sx", 0, 56) * mm, Y: n("sy", 0, 22) * mm, Length: shortest + n("sl", 0, 9)*mm, Width: max(w.least, n("sw", 1, 8)*mm)}
			if !fits(w, b, show, in, r, strips) {
				continue
			}
			strips = append(strips, r)
			got.Add(got, area128(r.Length+w.p.Kerf, r.Width-w.p.Joint()))
			end = max(end, r.X+r.Length+w.p.Kerf)
		}
		y := sumUp(w.slabs(0, show, shortest))
		if most := y.to(end, big.NewInt(1)); got.Cmp(big.NewInt(most)) > 0 {
			t.Fatalf("strips %v yield %v, said are at most %v", strips, got, most)
		}
		if len(strips) > 1 {
			full++
		}
	})
	if full < 20 {
		t.Errorf("only %d boards have strips beside each other: the law is hardly tried", full)
	}
}

func fits(w *work, b cut.Board, show cut.Show, in, r cut.Rect, strips []cut.Rect) bool {
	if r.X+r.Length > in.Length || r.Y < in.Y || r.Y+r.Width > in.Y+in.Width || w.p.Strip.Most > 0 && r.Width > w.p.Strip.Most {
		return false
	}
	for _, d := range b.Defects {
		if d.Overlaps(r) && !show.Takes(d, false) && (b.Ring == cut.NoRing || !show.Takes(d, true)) {
			return false
		}
	}
	k := w.p.Kerf
	for _, s := range strips {
		if s.Overlaps(cut.Rect{X: r.X - k, Y: r.Y - k, Length: r.Length + 2*k, Width: r.Width + 2*k}) {
			return false
		}
	}
	return true
}

// Weights that are far off give a bound that is low, never one that is wrong: it is not above the boards' whole cost.
func TestAnyWeightsGiveABound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := &low{}
		all := int64(0)
		for g := range grades {
			l.need[g] = rapid.Int64Range(0, 1000).Draw(t, "need")
		}
		var most [3]int64
		for range rapid.IntRange(1, 5).Draw(t, "boards") {
			o := offer{cost: rapid.Int64Range(0, 1000).Draw(t, "cost")}
			for g := range grades {
				o.yield[g] = rapid.Int64Range(0, 600).Draw(t, "yield")
				most[g] += o.yield[g]
			}
			all += o.cost
			l.boards = append(l.boards, []offer{{}, {}, o})
		}
		l.costs = all
		for g := range grades {
			l.need[g] = min(l.need[g], most[g]) // all boards together are a layout
		}
		weights := l.weights()
		for g := range weights {
			weights[g] *= rapid.Float64Range(0, 3).Draw(t, "off")
		}
		best := l.lagrange(weights)
		for g := range grades {
			best = max(best, l.cover(g))
		}
		if best > cheapest(l) {
			t.Fatalf("bound %v, the cheapest boards cost %v", best, cheapest(l))
		}
	})
}

// cheapest tries every choice of boards.
func cheapest(l *low) int64 {
	best := l.costs
	for set := range 1 << len(l.boards) {
		var cost int64
		var got [3]int64
		for k, offers := range l.boards {
			if set>>k&1 != 0 {
				o := offers[len(offers)-1]
				cost += o.cost
				for g := range got {
					got[g] += o.yield[g]
				}
			}
		}
		if got[0] >= l.need[0] && got[1] >= l.need[1] && got[2] >= l.need[2] {
			best = min(best, cost)
		}
	}
	return best
}
