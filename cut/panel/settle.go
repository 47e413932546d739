package panel

import (
	"math"
	"slices"

	"rodwright/cut/master"
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

// list lists all ways to cut board b of which no other costs no more and yields no less, as far as they are at
// most `most` worse than the best at the prices. It reports false where there are more than limit.
func (l *low) list(b lowBoard, price, need []float64, most float64, limit int, r rule) ([]way, bool) {
	if b.pos == nil {
		return nil, false
	}
	l.completions(b, price)
	n := len(b.pos)
	l.work = 0
	least := l.best[0] - most // value a way must reach
	at := make([][]*label, n+1)
	at[0] = []*label{{yields: make([]float64, len(l.kinds))}}
	var out []way
	steps := 0
	for i := 0; i <= n; i++ {
		for _, a := range at[i] {
			steps++
			if steps > 60*limit {
				return nil, false
			}
			if i == n {
				if a.worth >= least {
					out = append(out, a.way(b.cost))
				}
				continue
			}
			if c := b.credit[i]; c > 0 && a.end == i && a.worth+c >= least {
				out = append(out, a.way(b.cost-c))
			}
			if a.worth+l.best[i+1] >= least {
				at[i+1] = l.keep(at[i+1], a)
			}
			for t, kd := range l.kinds {
				v := l.ruledStep(b, t, i)
				if math.IsInf(v, -1) || r.never>>t&1 != 0 || a.yields[t] >= need[t] {
					continue
				}
				to, y := b.next[kd.at][i], b.free[kd.at][i][kd.grade]
				if a.worth+v+l.best[to] < least {
					continue
				}
				ys := slices.Clone(a.yields)
				ys[t] = min(ys[t]+y, need[t])
				at[to] = l.keep(at[to], &label{a.worth + v, ys, lowSegment{i, t}, to, a})
			}
		}
	}
	if l.work += len(out) * min(len(out), limit) * len(l.kinds); len(out) > 8*limit {
		return nil, false
	}
	out = leanWays(out)
	return out, len(out) <= limit
}

// keep adds a label unless another one yields as much already, and drops those that it beats.
func (l *low) keep(list []*label, a *label) []*label {
	l.work += 8 + 2*len(list)*len(a.yields)
	for _, o := range list {
		if atLeast(o.yields, a.yields) {
			return list
		}
	}
	list = slices.DeleteFunc(list, func(o *label) bool { return atLeast(a.yields, o.yields) })
	return append(list, a)
}

func (a *label) way(cost float64) way {
	out := way{yields: a.yields, cost: cost}
	for ; a.previous != nil; a = a.previous {
		out.segments = append(out.segments, a.last)
	}
	slices.Reverse(out.segments)
	return out
}

// leanWays drops the ways of which another costs no more and yields no less of any kind.
func leanWays(list []way) []way {
	slices.SortStableFunc(list, func(a, b way) int {
		switch {
		case a.cost < b.cost:
			return -1
		case a.cost > b.cost:
			return 1
		}
		return 0
	})
	var out []way
	for _, w := range list {
		if !slices.ContainsFunc(out, func(o way) bool { return atLeast(o.yields, w.yields) }) {
			out = slices.DeleteFunc(out, func(o way) bool { return o.cost >= w.cost && atLeast(w.yields, o.yields) })
			out = append(out, w)
		}
	}
	return out
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
	lp     *master.Master
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
	exact, _ := p.lagrange(sc, nil)
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
			ways, ok := st.listed(g, price, slack, limit, sc.rule(g))
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

// listed lists all ways of a group that keep the rule and are little enough worse than the best at the prices.
func (st *settling) listed(g int, price []float64, most float64, limit int, r rule) ([]way, bool) {
	ways, ok := st.l.list(st.p.groups[g].lowBoard, price, st.need, most, limit, r)
	st.s.budget.Spend(st.l.work / 96)
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
	n, k := len(st.need), len(st.boards)
	sense, right := make([]master.Sense, n+2*k), make([]float64, n+2*k)
	for i := range sense {
		sense[i], right[i] = master.Need, 1
		if i >= n+k {
			sense[i] = master.Limit
		}
		if i < n {
			right[i] = math.Max(st.need[i]/st.l.kinds[i].need, 0)
		}
	}
	total := 1.0
	for _, b := range st.boards {
		total += st.l.boards[b.board].cost
	}
	st.lp = master.New(sense, right, 20*total)
	for i := range st.boards {
		b := &st.boards[i]
		if !b.must {
			b.ways = append(b.ways, way{yields: make([]float64, n)})
		}
		for _, w := range b.ways {
			c := master.Column{Cost: w.cost}
			for t, y := range w.yields {
				if y > 0 {
					c.Entries = append(c.Entries, master.Entry{Row: t, Value: y / st.l.kinds[t].need})
				}
			}
			c.Entries = append(c.Entries, master.Entry{Row: n + i, Value: 1}, master.Entry{Row: n + k + i, Value: 1})
			st.lp.Add(c)
		}
	}
}

// bound solves the program of the ways that are on, and returns Lagrange's bound at its duals.
func (st *settling) bound() float64 {
	before := st.lp.Pivots
	st.lp.Solve(3000)
	rows := len(st.need) + 2*len(st.boards)
	st.s.budget.Spend(1 + (st.lp.Pivots-before)*(rows*rows+5*st.lp.Columns())/400 + st.lp.Columns()/32)
	dual := st.lp.Duals()
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
