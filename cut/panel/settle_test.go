package panel

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

// drawnBoards is a problem of two kinds with a few boards, some of them alike.
func drawnBoards(t *rapid.T) *Problem {
	p := twoBoards()
	p.Boards = nil
	for i := range rapid.IntRange(2, 4).Draw(t, "boards") {
		b := Board{
			Length: length.Length(rapid.IntRange(60, 130).Draw(t, "length")), Width: length.Length(rapid.IntRange(10, 19).Draw(t, "width")),
			Price: cut.Priced(float64(rapid.IntRange(20, 60).Draw(t, "price"))),
		}
		if i > 0 && rapid.IntRange(0, 3).Draw(t, "alike") == 0 {
			b = p.Boards[i-1]
		}
		b.Tag = string(rune('A' + i))
		p.Boards = append(p.Boards, b)
	}
	return p
}

// drawnScope leaves some boards out and has others cut in any case, or cut or not cut into a kind.
func drawnScope(t *rapid.T, p *program) scope {
	s := p.all()
	for g := range p.groups {
		s.hi[g] = rapid.IntRange(0, s.hi[g]).Draw(t, "hi")
		s.lo[g] = min(s.hi[g], rapid.IntRange(0, 3).Draw(t, "lo")/2)
	}
	if rapid.Bool().Draw(t, "rules") {
		s.rules = make([]rule, len(p.groups))
		for g := range p.groups {
			if len(p.groups[g].boards) > 1 {
				continue
			}
			s.rules[g].never = uint64(rapid.IntRange(0, 3).Draw(t, "never")) & uint64(rapid.IntRange(0, 3).Draw(t, "and"))
			if s.rules[g].once = uint64(rapid.IntRange(0, 3).Draw(t, "once")) &^ s.rules[g].never; s.rules[g].once != 0 {
				s.lo[g], s.hi[g] = 1, 1
			}
		}
	}
	return s
}

// choices are, of each board that is open in a scope, all ways that keep its rule, and not to cut it where that is
// allowed.
func choices(p *program, s scope) (out [][]way) {
	for g := range p.groups {
		all, _ := p.l.list(p.groups[g].lowBoard, []float64{1, 1}, p.l.needs(), math.Inf(-1), 1000, rule{}, always)
		all = slices.DeleteFunc(all, func(w way) bool { return w.yields[0]+w.yields[1] == 0 || !s.rule(g).allows(w) })
		for n := range s.hi[g] {
			ways := slices.Clone(all)
			if n >= s.lo[g] {
				ways = append(ways, way{yields: make([]float64, 2)})
			}
			out = append(out, ways)
		}
	}
	return out
}

// cheapest tries every choice of ways.
func cheapest(ways [][]way, left []float64) float64 {
	if len(ways) == 0 {
		if slices.ContainsFunc(left, func(d float64) bool { return d > 0 }) {
			return math.Inf(1)
		}
		return 0
	}
	best := math.Inf(1)
	for _, w := range ways[0] {
		rest := slices.Clone(left)
		for t, y := range w.yields {
			rest[t] -= y
		}
		best = math.Min(best, w.cost+cheapest(ways[1:], rest))
	}
	return best
}

// openSearch is a search over drawn boards, at drawn prices.
func openSearch(t *rapid.T) (*search, *program, []float64) {
	m := newModel(drawnBoards(t))
	if len(m.kinds) < 2 {
		t.Skip("a board is too short for a kind")
	}
	s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
	s.best = &layout{segments: make([][]segment, len(m.boards)), cost: 400}
	price := []float64{rapid.Float64Range(0, 4).Draw(t, "p"), rapid.Float64Range(0, 4).Draw(t, "q")}
	return s, newProgram(newBound(m, nil), s.budget), price
}

// Whatever the prices and the best layout known, settling a part finds the cheapest choice in it that is cheaper.
func TestSettlingMissesNoCheaperChoice(t *testing.T) {
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		s, p, price := openSearch(t)
		sc := drawnScope(t, p)
		want := cheapest(choices(p, sc), p.l.needs())
		s.best.cost = min(want, 400) + float64(rapid.IntRange(-5, 30).Draw(t, "above"))
		known := s.best.cost
		st := &settling{s: s, p: p, l: p.l, hole: math.Inf(1), fixed: make([][]segment, len(s.m.boards))}
		if !st.gather(sc, price, 1000) {
			t.Fatal("too many ways")
		}
		st.open()
		if !st.sweep(1_000_000) {
			t.Fatal("broken off")
		}
		if got := min(st.hole, s.best.cost); got > min(want, known)+1e-6 || st.hole < want-1e-6 { // ripping may find boards that are not needed
			t.Fatalf("least cost %v, not ripped %v, want %v, known was %v", got, st.hole, want, known)
		}
		if want < known {
			tried++
		}
	})
	if tried == 0 {
		t.Error("no cheaper choice was there to be found")
	}
}

// A part's bounds, by Lagrange and with whole boards, are at no prices above the cheapest choice in it; the one with
// whole boards is the closer one.
func TestBoundsOfAPartHoldAtAnyPrices(t *testing.T) {
	closer := 0
	rapid.Check(t, func(t *rapid.T) {
		_, p, price := openSearch(t)
		sc := drawnScope(t, p)
		sc.rules = nil
		want := cheapest(choices(p, sc), p.l.needs())
		copy(p.price, price)
		lagrange, _ := p.lagrange(sc, false)
		whole := p.whole(sc, price, 1e6)
		if lagrange > want+1e-6 || whole > want+1e-6 {
			t.Fatalf("by Lagrange %v, with whole boards %v, possible %v", lagrange, whole, want)
		}
		if whole < lagrange-1e-6 {
			t.Fatalf("with whole boards %v, by Lagrange %v", whole, lagrange)
		}
		if whole > lagrange+1 {
			closer++
		}
	})
	if closer == 0 {
		t.Error("whole boards never made the bound closer")
	}
}

// The program's bound in a part, by its own prices, is the greatest of Lagrange's, and it holds.
func TestTheProgramOfAPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, price := openSearch(t)
		sc := drawnScope(t, p)
		want := cheapest(choices(p, sc), p.l.needs())
		p.solve(p.all(), math.Inf(1))
		best, _ := p.solve(sc, math.Inf(1))
		copy(p.price, price)
		if v, _ := p.lagrange(sc, false); best > want+1e-6 || v > best+1e-4*max(1, best) {
			t.Fatalf("the program's bound %v, at %v %v, possible %v", best, price, v, want)
		}
	})
}

// Listed are the ways that are worse than the best by no more than what is asked, except those that others beat.
func TestWaysAreListedAsFarAsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, price := openSearch(t)
		b := p.groups[0].lowBoard
		need := p.l.needs()
		most := float64(rapid.IntRange(0, 40).Draw(t, "most"))
		all, _ := p.l.list(b, price, need, math.Inf(-1), 1000, rule{}, always)
		some, ok := p.l.list(b, price, need, p.l.path(b, price).value-most, 1000, rule{}, always)
		if !ok {
			t.Fatal("too many")
		}
		best := b.cost - p.l.path(b, price).value
		for _, w := range all {
			over := w.cost - best
			for k, y := range w.yields {
				over -= price[k] * y
			}
			known := slices.ContainsFunc(some, func(o way) bool { return o.cost <= w.cost+1e-9 && atLeast(o.yields, w.yields) })
			if over < most-1e-6 && !known {
				t.Fatalf("%v for %v is %v over the best and not among %v", w.yields, w.cost, over, some)
			}
		}
		if few, ok := p.l.list(b, price, need, math.Inf(-1), len(all)-1, rule{}, always); ok && len(all) > 0 {
			t.Fatalf("%d ways of %d, told to be all", len(few), len(all))
		}
		if _, ok := p.l.list(b, price, need, math.Inf(-1), 1000, rule{}, func(int) bool { return false }); ok {
			t.Fatal("told to be all when the work was too much")
		}
	})
}

func TestARuleForbidsAndAsks(t *testing.T) {
	for _, c := range []struct {
		never, once uint64
		yields      []float64
		want        bool
	}{
		{0, 0, []float64{5, 0}, true},
		{1, 0, []float64{5, 0}, false},
		{2, 0, []float64{5, 0}, true},
		{0, 1, []float64{5, 0}, true},
		{0, 2, []float64{5, 0}, false},
		{0, 3, []float64{5, 1}, true},
		{2, 1, []float64{5, 1}, false},
		{0, 1, []float64{0, 0}, false},
	} {
		if got := (rule{c.never, c.once}).allows(way{yields: c.yields}); got != c.want {
			t.Errorf("never %b, once %b: %v is allowed %v", c.never, c.once, c.yields, got)
		}
	}
	if got := bits(0b1010); !slices.Equal(got, []int{1, 3}) {
		t.Errorf("bits %v", got)
	}
}

// The best way by a rule is the best of all ways that keep it.
func TestTheBestWayByARuleIsTheBestOfThoseThatKeepIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, price := openSearch(t)
		b := p.groups[0].lowBoard
		r := rule{never: uint64(rapid.IntRange(0, 3).Draw(t, "never")), once: uint64(rapid.IntRange(0, 3).Draw(t, "once"))}
		want := math.Inf(-1)
		if r.once == 0 {
			want = slices.Max(b.credit) // nothing is cut
		}
		all, _ := p.l.list(b, []float64{1, 1}, []float64{1e9, 1e9}, math.Inf(-1), 1000, rule{}, always)
		for _, w := range all {
			if r.allows(w) {
				want = max(want, b.cost-w.cost+price[0]*w.yields[0]+price[1]*w.yields[1])
			}
		}
		got := p.l.ruled(b, price, r)
		if got.value != want && math.Abs(got.value-want) > 1e-6 {
			t.Fatalf("rule %b %b: %v, want %v", r.never, r.once, got.value, want)
		}
		if !math.IsInf(got.value, -1) && !r.allows(got.way) {
			t.Fatalf("rule %b %b: %v", r.never, r.once, got.yields)
		}
	})
}

// Ways of which none can be part of a cheaper choice are left out, and no others.
func TestNoWayOfACheaperChoiceIsLeftOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p, price := openSearch(t)
		need := p.l.needs()
		all := choices(p, p.all())
		want := cheapest(all, need)
		if math.IsInf(want, 1) {
			return
		}
		best := want + float64(rapid.IntRange(1, 20).Draw(t, "above"))
		room := best - price[0]*need[0] - price[1]*need[1]
		lists := make([]priced, len(all))
		for k, ways := range all {
			q := &lists[k]
			for _, w := range ways {
				over := w.cost - price[0]*w.yields[0] - price[1]*w.yields[1]
				q.ways, q.over, q.least = append(q.ways, w), append(q.over, over), min(q.least, over)
			}
			room -= q.least
		}
		kept := make([][]way, len(all))
		for k := range lists {
			kept[k] = lists[k].within(room)
		}
		if got := cheapest(kept, need); got != want {
			t.Fatalf("the cheapest of those kept costs %v, of all %v", got, want)
		}
	})
}
