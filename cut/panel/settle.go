package panel

import (
	"math"
	"slices"
)

// label is the beginning of a way to cut a board, up to a position.
type label struct {
	worth    float64
	yields   []float64
	last     lowSegment
	end      int // position behind the last segment
	previous *label
}

// atLeast reports whether a yields no less than b of any kind.
func atLeast(a, b []float64) bool {
	for t, y := range b {
		if a[t] < y {
			return false
		}
	}
	return true
}

// listing is the search for all ways to cut a board that are little worse than the best (labels along the board, from
// one position to the next, of which those that others beat are dropped).
type listing struct {
	l     *low
	b     lowBoard
	need  []float64
	rule  rule
	least float64 // value that a way must reach
	limit int
	at    [][]*label // by position
	seen  int        // labels looked at
	out   []way
	work  int // not yet spent
	spend func(work int) bool
}

// listLook is how much work is done before it is spent.
const listLook = 30_000

// list lists all ways to cut board b of which no other costs no more and yields no less, as far as they are worth at
// least so much at the prices. It reports false where there are more than limit, or the work is too much.
func (l *low) list(b lowBoard, price, need []float64, least float64, limit int, r rule, spend func(work int) bool) ([]way, bool) {
	if b.pos == nil {
		return nil, false
	}
	l.completions(b, price)
	n := len(b.pos)
	x := listing{l: l, b: b, need: need, rule: r, least: least, limit: limit, at: make([][]*label, n+1), spend: spend}
	x.at[0] = []*label{{yields: make([]float64, len(l.kinds))}}
	for i := range n + 1 {
		for _, a := range x.at[i] {
			if x.seen++; x.seen > 60*limit || !x.worked(8) {
				return nil, false
			}
			if i < n {
				x.step(i, a)
			} else if a.worth >= x.least {
				x.out = append(x.out, a.way(b.cost))
			}
		}
		x.at[i] = nil
	}
	if len(x.out) > 8*limit {
		return nil, false
	}
	return x.lean()
}

// worked counts work and reports whether there may be more.
func (x *listing) worked(work int) bool {
	if x.work += work; x.work < listLook {
		return true
	}
	ok := x.spend(x.work)
	x.work = 0
	return ok
}

// step goes on from label a at position i: the tail is kept, a stretch skipped or a segment cut.
func (x *listing) step(i int, a *label) {
	l, b := x.l, &x.b
	if c := b.credit[i]; c > 0 && a.end == i && a.worth+c >= x.least {
		x.out = append(x.out, a.way(b.cost-c))
	}
	if a.worth+l.best[i+1] >= x.least {
		x.keep(i+1, a)
	}
	for next := b.from[i]; next < b.from[i+1]; next++ {
		c, v := &b.cuts[next], l.val[next]
		if t := c.kind; x.rule.never>>t&1 != 0 || a.yields[t] >= x.need[t] || a.worth+v+l.best[c.to] < x.least {
			continue
		}
		ys := slices.Clone(a.yields)
		ys[c.kind] = min(ys[c.kind]+c.net, x.need[c.kind])
		x.keep(c.to, &label{a.worth + v, ys, lowSegment{next, i, c.kind}, c.to, a})
	}
}

// keep adds a label at a position unless another one yields as much already, and drops those that it beats.
func (x *listing) keep(at int, a *label) {
	list := x.at[at]
	x.work += 8 + 2*len(list)*len(a.yields)
	for _, o := range list {
		if atLeast(o.yields, a.yields) {
			return
		}
	}
	list = slices.DeleteFunc(list, func(o *label) bool { return atLeast(a.yields, o.yields) })
	x.at[at] = append(list, a)
}

func (a *label) way(cost float64) way {
	out := way{yields: a.yields, cost: cost}
	for ; a.previous != nil; a = a.previous {
		out.segments = append(out.segments, a.last)
	}
	slices.Reverse(out.segments)
	return out
}

// lean drops the ways of which another costs no more and yields no less of any kind.
func (x *listing) lean() ([]way, bool) {
	slices.SortStableFunc(x.out, func(a, b way) int { return sign(a.cost - b.cost) })
	var out []way
	for _, w := range x.out {
		if !x.worked(len(out) * len(w.yields)) {
			return nil, false
		}
		if slices.ContainsFunc(out, func(o way) bool { return atLeast(o.yields, w.yields) }) {
			continue
		}
		out = slices.DeleteFunc(out, func(o way) bool { return o.cost >= w.cost && atLeast(w.yields, o.yields) })
		if out = append(out, w); len(out) > x.limit {
			return nil, false
		}
	}
	return out, x.spend(x.work)
}

// pooled is one board with the ways to cut it that are worth looking at.
type pooled struct {
	board int
	must  bool // it is cut in any case
	ways  []way
}

// settling searches a few boards to the end, over all ways to cut them that a better layout could use.
type settling struct {
	s      *search
	p      *program
	l      *low
	need   []float64
	boards []pooled
	fixed  [][]segment // boards that are cut already
	spent  float64     // what those cost
	lp     *mix
	hole   float64
}

// settleWays bounds the ways of one board.
const settleWays = 300

// settle searches a part to its end; it reports false where there are too many ways or it takes too long.
func (s *search) settle(p *program, sc scope, price []float64, b *branching) bool {
	st := &settling{s: s, p: p, l: p.l, hole: math.Inf(1), fixed: make([][]segment, len(s.m.boards))}
	if !st.gather(sc, price, settleWays) {
		return false
	}
	st.open()
	ended := st.sweep(1000 * b.patience)
	b.hole = math.Min(b.hole, st.hole)
	return ended
}

// gather lists the ways that a better layout could use. In a layout that costs less than the best, every
// board's way is worse than its best way at the prices by less than the layout's cost is above the bound
// (fixing by reduced costs). It reports false where there are more than limit for a board.
func (st *settling) gather(sc scope, price []float64, limit int) bool {
	p := st.p
	st.need = p.l.needs()
	copy(p.price, price)
	exact, _ := p.lagrange(sc, false)
	most := st.enough() - st.spent - exact
	total := 0
	for g := range p.groups {
		gr := &p.groups[g]
		if sc.hi[g] == 0 {
			continue
		}
		best := gr.cost - p.path(g, sc).value
		for n := range sc.hi[g] {
			must := n < sc.lo[g]
			slack := most
			if !must {
				slack += math.Min(0, best) - best
			}
			if slack < 0 || math.IsInf(best, 1) {
				continue
			}
			ways, ok := st.listed(g, price, gr.cost-best-slack, limit, sc.rule(g))
			if !ok {
				return false
			}
			if total += len(ways); total > 4*limit {
				return false
			}
			st.boards = append(st.boards, pooled{board: gr.boards[n], must: must, ways: ways})
		}
	}
	return true
}

// listed lists all ways of a group that keep the rule and are worth at least so much at the prices.
func (st *settling) listed(g int, price []float64, least float64, limit int, r rule) ([]way, bool) {
	ways, ok := st.l.list(st.p.groups[g].lowBoard, price, st.need, least, limit, r, func(work int) bool { return st.s.budget.Spend(work / 96) })
	return slices.DeleteFunc(ways, func(w way) bool { return !r.allows(w) }), ok
}

// enough is the cost that a layout must be below.
func (st *settling) enough() float64 {
	if st.s.best.short > 0 {
		return math.Inf(1)
	}
	return st.s.best.cost - costEps
}

// open makes the linear program of the ways. Not to cut a board is a way too, unless it must be cut.
func (st *settling) open() {
	n := len(st.need)
	total := 1.0
	ways := len(st.boards)
	for _, b := range st.boards {
		total += st.l.boards[b.board].cost
		ways += len(b.ways)
	}
	st.lp = newMix(n, len(st.boards), 20*total, st.s.budget.Ask)
	st.lp.grow(ways)
	for t := range n {
		st.lp.right[t] = math.Max(st.need[t]/st.l.kinds[t].need, 0)
	}
	a := make([]float64, n)
	for i := range st.boards {
		b := &st.boards[i]
		st.lp.room[i] = 1
		st.lp.off[st.lp.of[i][0]] = b.must
		for _, w := range b.ways {
			for t, y := range w.yields {
				a[t] = y / st.l.kinds[t].need
			}
			st.lp.add(i, w.cost, a)
		}
		if !b.must {
			b.ways = append(b.ways, way{yields: make([]float64, n)})
		}
	}
	st.lp.reset()
}

// bound solves the program of the ways that are on, and returns Lagrange's bound at its duals.
func (st *settling) bound() float64 {
	before := st.lp.pivots
	st.lp.solve(3000)
	st.s.budget.Spend(1 + (st.lp.pivots-before)*(len(st.need)*len(st.need)+len(st.lp.cost))/400 + len(st.lp.cost)/32)
	dual := st.lp.price
	v := st.spent
	for t := range st.need {
		v += math.Max(0, dual[t]) * st.need[t] / st.l.kinds[t].need
	}
	for _, b := range st.boards {
		best := math.Inf(1)
		for _, w := range b.ways {
			best = math.Min(best, st.reduced(w, dual))
		}
		v += best
	}
	return v
}

func (st *settling) reduced(w way, dual []float64) float64 {
	c := w.cost
	for t, y := range w.yields {
		c -= math.Max(0, dual[t]) * y / st.l.kinds[t].need
	}
	return c
}

// realised turns a way of the bound into segments; false where a board can't be cut like that.
func (s *search) realised(l *low, k int, w way) (out []segment, ok bool) {
	if w.cut != nil {
		out = slices.Clone(w.cut)
		for i := range out {
			out[i].board = k
		}
		return out, true
	}
	b, src := l.boards[k], s.m.boards[k]
	for _, g := range w.segments {
		t := s.kindOf(l, g.kind, k)
		if t < 0 {
			return nil, false
		}
		i, found := slices.BinarySearch(src.pos, b.pos[g.pos])
		if !found || src.next[t][i] < 0 {
			return nil, false
		}
		out = append(out, segment{board: k, kind: t, at: src.pos[i], net: src.net[t][i]})
	}
	return out, true
}

// kindOf returns a kind of panel that the bound's kind stands for and board k may be cut into.
func (s *search) kindOf(l *low, t, k int) int {
	allowed := s.allowed(k)
	for i, kd := range s.m.kinds {
		if l.lowIndex(kd) == t && allowed(i) {
			return i
		}
	}
	return -1
}
