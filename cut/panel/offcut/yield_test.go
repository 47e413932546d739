package offcut

import (
	"context"
	"math"
	"math/big"
	"slices"
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

// lengthsOf is the bound that weighs strips by their length, of a plan of some strips.
func lengthsOf(w *work, strips []strip) *low {
	d := w.demand(w.with(strips), 50_000_000)
	return d.low(d.weighings()[0])
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
	l := lengthsOf(w, strips)
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
	if got := lengthsOf(w, strips).cover(0); got != 50_000_000 {
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
		l := lengthsOf(w, []strip{{0, 0, cut.Rect{Length: 49 * mm, Width: 12 * mm}}})
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
	l := lengthsOf(w, []strip{{0, 0, cut.Rect{X: 40 * mm, Length: 50 * mm, Width: 12 * mm}}, {1, 0, cut.Rect{Length: 20 * mm, Width: 12 * mm}}})
	offers := l.boards[0].offers
	share := float64(offers[len(offers)-1].yield[0]) / float64(l.need[0])
	if want := 94.0 * 10 / ((52 + 22) * 10); share < want-1e-6 || share > want+1e-6 {
		t.Errorf("yields %v of what is needed, want %v", share, want)
	}
}

// onBoard is a board with strips laid on it at random: a saw cut apart, and they hold nothing that their grade forbids.
type onBoard struct {
	w        *work
	show     cut.Show
	shortest length.Length
	lengths  []weighed // of strips, with the saw cut behind them; each has any weight
	strips   []cut.Rect
	end      length.Length // of the last strip and the saw cut behind it
}

func drawOnBoard(t *rapid.T) *onBoard {
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
	o := &onBoard{w: bare(n("kerf", 0, 2), 0, n("least", 1, 4), 0, b)}
	p := o.w.p
	p.Jointing, p.BoardEdgeTrim = n("jointing", 0, 2)*mm/4, n("trim", 0, 2)*mm
	p.Strip.Most = n("most", 0, 1) * (p.Strip.Least + 4*mm)
	o.w.least = max(p.Strip.Least, p.Joint()+1)
	o.show = rapid.SampledFrom(grades).Draw(t, "show")
	o.shortest = n("shortest", 4, 20) * mm
	longer := rapid.IntRange(0, 9).Draw(t, "longer")
	for more := range longer + 1 {
		o.lengths = append(o.lengths, weighed{o.shortest + length.Length(more)*mm + p.Kerf, rapid.Int64Range(0, 9).Draw(t, "weight")})
	}
	in := o.w.usable(0)
	for range 40 {
		r := cut.Rect{X: n("sx", 0, 56) * mm, Y: n("sy", 0, 22) * mm, Length: o.shortest + n("sl", 0, longer)*mm, Width: max(o.w.least, n("sw", 1, 8)*mm)}
		if fits(o.w, b, o.show, in, r, o.strips) {
			o.strips = append(o.strips, r)
			o.end = max(o.end, r.X+r.Length+p.Kerf)
		}
	}
	return o
}

// weigh adds up what the strips weigh, each times its net width.
func (o *onBoard) weigh(of func(long length.Length) int64) *big.Int {
	sum := new(big.Int)
	for _, r := range o.strips {
		sum.Add(sum, product(of(r.Length+o.w.p.Kerf), r.Width-o.w.p.Joint()))
	}
	return sum
}

func (o *onBoard) weight(long length.Length) int64 {
	return o.lengths[(long-o.shortest-o.w.p.Kerf)/mm].weight
}

// Strips have no more net area, each a saw cut longer, than the lines across the board say up to where the last one ends;
// and however they are weighed by their length, no more than the heaviest row times the widest line.
func TestNoStripsYieldMoreThanTheirBoard(t *testing.T) {
	full := 0
	rapid.Check(t, func(t *rapid.T) {
		o := drawOnBoard(t)
		y := sumUp(o.w.slabs(0, o.show, o.shortest))
		area := o.weigh(func(long length.Length) int64 { return int64(long) })
		if most := y.to(o.end); area.Cmp(most) > 0 {
			t.Fatalf("strips %v yield %v, said are at most %v", o.strips, area, most)
		}
		rows := behind(o.lengths, o.end)
		if got, most := o.weigh(o.weight), product(rows[len(rows)-1].weight, y.widest(o.end)); got.Cmp(most) > 0 {
			t.Fatalf("strips %v weigh %v, said are at most %v", o.strips, got, most)
		}
		if len(o.strips) > 1 {
			full++
		}
	})
	if full < 20 {
		t.Errorf("only %d boards have strips beside each other: the law is hardly tried", full)
	}
}

// offering offers the board by any weights, or by the lengths themselves.
func (o *onBoard) offering(t *rapid.T) *offering {
	p, g := o.w.p, gradeOf(o.show)
	p.Salvage, p.MinTail = rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "salvage"), length.Length(rapid.IntRange(0, 20).Draw(t, "tail"))*mm
	b := &wood{long: p.Boards[0].Length + p.Kerf}
	b.across[g] = sumUp(o.w.slabs(0, o.show, o.shortest))
	of := &offering{o.w, b, &[3][]row{{{}}, {{}}, {{}}}, rapid.Bool().Draw(t, "by length"), big.NewInt(rapid.Int64Range(1, 1e9).Draw(t, "unit"))}
	if of.length {
		for i, l := range o.lengths {
			o.lengths[i].weight = int64(l.long)
		}
	}
	of.behind[g] = behind(o.lengths, b.long)
	return of
}

// stands checks that a cost and yield are no better than some mix of two offers; and that a merged one costs no more and
// yields no less.
func stands(t *rapid.T, list []offer, g int, cost, yield float64) {
	least := math.Inf(1) // on the lines between offers
	for i, a := range list {
		if float64(a.yield[g]) >= yield {
			least = min(least, float64(a.cost))
		}
		for _, b := range list[i+1:] {
			if from, to := float64(a.yield[g]), float64(b.yield[g]); from < yield && yield < to {
				least = min(least, float64(a.cost)+float64(b.cost-a.cost)*(yield-from)/(to-from))
			}
		}
	}
	if least > cost+2 {
		t.Fatalf("cost %v and yield %v: better than any between two of %v", cost, yield, list)
	}
	if m := merged(list[1:], coverOffers, g); !slices.ContainsFunc(m, func(a offer) bool { return float64(a.cost) <= cost+1 && float64(a.yield[g]) >= yield }) {
		t.Fatalf("cost %v and yield %v: better than all of %v", cost, yield, m)
	}
}

// The offers of a board stand for whatever lies on it, and for every place up to which it may be cut.
func TestABoardsOffersStandForAllThatCanLieOnIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOnBoard(t)
		of, g := o.offering(t), gradeOf(o.show)
		list := of.list()
		if len(o.strips) > 0 {
			yield, _ := new(big.Float).Quo(new(big.Float).SetInt(o.weigh(o.weight)), new(big.Float).SetInt(of.unit)).Float64()
			stands(t, list, g, float64(millionths(o.w.costTo(0, o.end-o.w.p.Kerf))), yield)
		}
		for x := mm + length.Length(rapid.IntRange(-1, 1).Draw(t, "nm")); x <= of.b.long; x += mm {
			cost := millionths(o.w.p.Cost(0) - o.w.p.TailCredit(0, o.w.p.Boards[0].Length-x))
			stands(t, list, g, float64(cost), float64(of.yield(g, x)-1)) // it is rounded up by less than 1
		}
	})
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
		steps := coverSteps
		l := &low{steps: &steps}
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
			l.boards = append(l.boards, alike{[]offer{{}, {}, o}, 1})
		}
		l.cost = all
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
	best := l.cost
	for set := range 1 << len(l.boards) {
		var cost int64
		var got [3]int64
		for k, b := range l.boards {
			if set>>k&1 != 0 {
				o := b.offers[len(b.offers)-1]
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

// Worked by hand: in 100 lie 30, 45, 30 + 30, 30 + 45, 30 + 30 + 30 and 45 + 45. The longer is worth 2, the others 1: two of 30
// are worth no more than one of 45, three no more than one of each.
func TestRowsWeighTheMostThatReachesSoFar(t *testing.T) {
	rows := behind([]weighed{{30, 1}, {45, 2}}, 100)
	if want := []row{{0, 0}, {30, 1}, {45, 2}, {75, 3}, {90, 4}}; !slices.Equal(rows, want) {
		t.Errorf("%v, want %v", rows, want)
	}
	if rows := behind([]weighed{{30, 0}, {120, 7}}, 100); len(rows) != 1 {
		t.Errorf("%v: one is worth nothing, the other too long", rows)
	}
	rows = behind([]weighed{{length.Millimetre + 1, 3}, {length.Millimetre - 7, 2}, {length.Millimetre + 13, 5}}, length.Metre)
	if last := rows[len(rows)-1]; len(rows) > mostRows+1 || last.weight < 999*5 {
		t.Errorf("%d rows, the last weighs %d", len(rows), last.weight)
	}
}

// What a row weighs at most is found by trying everything.
func TestNothingBehindEachOtherWeighsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var strips []weighed
		for range rapid.IntRange(1, 4).Draw(t, "lengths") {
			strips = append(strips, weighed{length.Length(rapid.IntRange(1, 20).Draw(t, "long")), rapid.Int64Range(0, 9).Draw(t, "weight")})
		}
		room := length.Length(rapid.IntRange(1, 60).Draw(t, "room"))
		best := make([]int64, room+1)
		for x := range best {
			for _, s := range strips {
				if int(s.long) <= x {
					best[x] = max(best[x], best[x-int(s.long)]+s.weight)
				}
			}
		}
		var want []row
		for x, v := range best {
			if x == 0 || v > best[x-1] {
				want = append(want, row{length.Length(x), v})
			}
		}
		if got := behind(strips, room); !slices.Equal(got, want) {
			t.Fatalf("%v in %d: %v, want %v", strips, room, got, want)
		}
	})
}

// Merged offers stand for all of a list, also for what lies between two that are not side by side: none of those costs
// less and yields more than any of the merged.
func TestMergedOffersStandForAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := []offer{{}}
		for range rapid.IntRange(0, 12).Draw(t, "places") {
			o := list[len(list)-1]
			o.at += length.Length(rapid.IntRange(1, 3).Draw(t, "on"))
			o.cost += rapid.Int64Range(0, 5).Draw(t, "dearer")
			o.yield[0] += rapid.Int64Range(0, 5).Draw(t, "more")
			list = append(list, o)
		}
		most := rapid.IntRange(1, 8).Draw(t, "most")
		got := merged(list, most, 0)
		if len(got) > most {
			t.Fatalf("%d offers, want %d at most", len(got), most)
		}
		for i, o := range list {
			between := offer{cost: o.cost, yield: o.yield}
			if i+1 < len(list) && list[i+1].at > o.at+1 { // up to the next it costs as little and yields as much as the two
				between.yield = list[i+1].yield
			}
			if !slices.ContainsFunc(got, func(m offer) bool { return m.cost <= between.cost && m.yield[0] >= between.yield[0] }) {
				t.Fatalf("%v does not stand for %v of %v", got, between, list)
			}
		}
	})
}
