package stick

import (
	"math"
	"slices"

	"rodwright/cut/master"
)

// effort bounds a pool: the ways, the steps in which they are listed, and the nodes of its search.
type effort struct{ ways, steps, nodes int }

var (
	quickPool = effort{4_000, 200_000, 1_000}
	largePool = effort{20_000, 4_000_000, 100_000}
)

// pool is every way to cut a stick that a plan of fewer sticks than the best could use. Give each part its weight w,
// let no stick hold more than H, and let all parts weigh W: in a plan of T sticks what the sticks lack of H adds up
// to T·H − W, so no stick may lack more. That leaves few ways when T·H − W is small, and with two weighings, by duals
// and by length, fewer. Over them the plan is searched to the end, each time with the ways that lack too much by the
// duals of what is left put aside, and where there is none, T + 1 is a bound. All of it is in whole numbers.
type pool struct {
	s      *search
	lp     *master.Master
	goal   int // sticks at most
	ways   []load
	column []int // of each way
	wayOf  []int // of each column, -1 for those that are not in the pool
	on     []bool
	have   []int
	copies [][]count // of each way: kinds and how often
	fixed  []load
	light  bool // parts that weigh nothing were left out: what is found must still find room for them
	stop   bool // the search was broken off: nothing is proven
	nodes  int  // that may still be searched
	depth  int
	kept   []*master.Basis // of each depth
}

type count struct{ kind, n int }

// byPool searches for a plan with one stick fewer than the best, or proves that there is none. It needs one kind
// of stock, as many of it as are wanted.
func (s *search) byPool(c *columns, e effort) {
	m := s.m
	if s.done() || s.budget.Over() || len(m.stores) != 1 || m.stores[0].count >= 0 || m.stores[0].price <= 0 {
		return
	}
	if math.Abs(s.rank.cost-s.bound-m.stores[0].price) > costEps {
		return
	}
	if c.aim(); !c.generateAll() {
		return
	}
	p := &pool{s: s, lp: c.lp, goal: len(s.best.loads) - 1, have: m.needs(), nodes: e.nodes}
	weights := c.weights()
	if !p.enumerate(weights, e) && !(p.lighten(weights) && p.enumerate(weights, e)) {
		return
	}
	p.open(c)
	p.dive()
	p.search()
	if !p.stop && !s.done() {
		s.bound = s.rank.cost
	}
}

// enumerate lists the ways that lack no more than all may lack together. It reports false where they are too many.
func (p *pool) enumerate(weight []int64, e effort) bool {
	m := p.s.m
	sizes := m.sizes()
	var all, length int64
	for k, n := range p.have {
		all += int64(n) * weight[k]
		length += int64(n) * sizes[k]
	}
	room := m.stores[0].room
	list := newEnumeration(m, p.have, p.s.budget, measure{weight: weight}, measure{weight: sizes})
	_, hold, sure := list.heaviest(room, 0, -1, e.steps)
	if !sure {
		return false
	}
	lack, waste := int64(p.goal)*hold-all, int64(p.goal)*room-length
	if lack < 0 || waste < 0 {
		return true // no way at all, as the bound would say too
	}
	list.by[0].least, list.by[1].least = hold-lack, room-waste
	ways, ok := list.list(0, e.ways, e.steps)
	p.ways = ways
	return ok
}

// lighten leaves the parts out that weigh next to nothing, which go on the sticks in too many ways: where the others
// can't be cut from so few sticks, all can't. It reports false where there are none.
func (p *pool) lighten(weight []int64) bool {
	for k, w := range weight {
		if w < lightest && p.have[k] > 0 {
			p.have[k], p.light = 0, true
		}
	}
	return p.light
}

// lightest is the weight below which a part is light, of weightScale that a stick holds.
const lightest = weightScale / 1000

// open sets the linear program to the ways of the pool.
func (p *pool) open(c *columns) {
	p.on, p.column, p.copies = make([]bool, len(p.ways)), make([]int, len(p.ways)), make([][]count, len(p.ways))
	for i, l := range p.ways {
		for j, k := range l.kinds {
			if n := len(p.copies[i]); j > 0 && l.kinds[j-1] == k {
				p.copies[i][n-1].n++
				continue
			}
			p.copies[i] = append(p.copies[i], count{int(k), 1})
		}
		p.column[i] = c.add(l)
		p.on[i] = true
	}
	p.wayOf = make([]int, p.lp.Columns())
	for j := range p.wayOf {
		p.wayOf[j] = -1
		p.lp.Allow(j, false)
	}
	for i, j := range p.column {
		p.wayOf[j] = i
	}
}

// use calls visit for the ways that the program uses.
func (p *pool) use(visit func(way int, times float64)) {
	p.lp.Use(func(j int, times float64) { visit(p.wayOf[j], times) })
}

// dive looks for a plan straight on: it takes the ways that the program uses in whole, or most, until nothing is left
// or the sticks no longer suffice.
func (p *pool) dive() {
	on, have := slices.Clone(p.on), slices.Clone(p.have)
	for total(p.have) > 0 && !p.s.done() && !p.s.budget.Over() && p.solve() && !p.s.done() {
		most, way := 0.0, -1
		took := false
		p.use(func(j int, times float64) {
			for range int(times + roundEps) {
				if p.fits(j) {
					p.take(j)
					took = true
				}
			}
			if times > most && p.fits(j) {
				most, way = times, j
			}
		})
		if way < 0 && !took {
			break
		}
		if !took {
			p.take(way)
		}
		if total(p.have) == 0 {
			p.offer(p.fixed)
		}
	}
	p.on, p.have, p.fixed = on, have, nil
}

func (p *pool) take(way int) {
	for _, q := range p.copies[way] {
		p.have[q.kind] -= q.n
	}
	p.fixed = append(p.fixed, p.ways[way])
}

// search looks for a plan of the ways that are on, for the parts that are left, and returns when there is none or it
// was broken off.
func (p *pool) search() {
	if p.nodes--; p.nodes < 0 || p.s.budget.Over() {
		p.stop = true
	}
	if p.stop || p.s.done() {
		return
	}
	if total(p.have) == 0 {
		p.offer(p.fixed)
		p.stop = p.stop || !p.s.done()
		return
	}
	was := slices.Clone(p.on)
	defer func() { p.on = was }()
	if !p.solve() || p.s.done() {
		return
	}
	p.keep()
	defer func() { p.depth-- }()
	if i, j, ok := p.pair(); ok {
		p.without(func(way int) bool { return p.holds(way, i) != p.holds(way, j) }, p.search)
		p.back()
		p.without(func(way int) bool { return p.holds(way, i) && p.holds(way, j) }, p.search)
		return
	}
	way := p.fraction()
	if way < 0 {
		p.stop = true // nothing to branch on, though it is no plan: rounding has gone wrong
		return
	}
	p.cut(way)
	p.back()
	p.without(func(w int) bool { return w == way }, p.search)
}

// keptMost bounds the depths at which the program's basis is kept.
const keptMost = 64

// keep keeps the program's basis, so that the second branch begins where the first did.
func (p *pool) keep() {
	if p.depth++; p.depth <= keptMost {
		if p.depth > len(p.kept) {
			p.kept = append(p.kept, nil)
		}
		p.kept[p.depth-1] = p.lp.Keep(p.kept[p.depth-1])
	}
}

func (p *pool) back() {
	if p.depth <= keptMost {
		p.lp.Return(p.kept[p.depth-1])
	}
}

// solve reports whether a plan of few enough sticks may still be there. Only a bound in whole numbers says no.
func (p *pool) solve() bool {
	right := make([]float64, len(p.have))
	for k, n := range p.have {
		right[k] = float64(n)
	}
	for i, j := range p.column {
		p.lp.Allow(j, p.on[i] && p.fits(i))
	}
	p.lp.Reset(right)
	for range 100 {
		before := p.lp.Pivots
		solved := p.lp.Solve(pivotsAtOnce)
		p.s.budget.Spend((p.lp.Pivots-before)*(1+len(right)*len(right)/400) + len(p.wayOf)/100 + len(p.ways)/16)
		if solved || p.s.budget.Over() {
			break
		}
	}
	if p.narrow() {
		return false
	}
	p.round()
	return true
}

// narrow takes the duals as whole weights, puts the ways aside that lack more of the most than all sticks left may lack
// together, and reports whether even the fullest sticks don't suffice.
func (p *pool) narrow() (refuted bool) {
	weight := whole(p.lp.Duals(), p.s.m.stores[0].price)
	var all, most int64
	for k, w := range weight {
		all += int64(p.have[k]) * w
	}
	weighs := make([]int64, len(p.ways))
	for i := range p.ways {
		if p.on[i] = p.on[i] && p.fits(i); !p.on[i] {
			continue
		}
		for _, q := range p.copies[i] {
			weighs[i] += int64(q.n) * weight[q.kind]
		}
		most = max(most, weighs[i])
	}
	lack := int64(p.goal-len(p.fixed))*most - all
	for i, w := range weighs {
		p.on[i] = p.on[i] && w >= most-lack
	}
	return lack < 0
}

// round offers the program's solution where it is one of whole sticks.
func (p *pool) round() {
	whole := true
	loads := slices.Clone(p.fixed)
	p.use(func(way int, times float64) {
		n := math.Round(times)
		whole = whole && math.Abs(times-n) < roundEps
		for range int(n) {
			loads = append(loads, p.ways[way])
		}
	})
	if whole {
		p.offer(loads)
	}
}

// offer offers sticks as a plan, where they leave room for the parts that were left out as light, too.
func (p *pool) offer(sticks []load) {
	m := p.s.m
	plan, ok := m.assigned(sticks)
	for i := 0; !ok && p.light && i < len(plan.loads); i++ {
		slack := m.slack(plan.loads[i])
		for k, n := range plan.left {
			for ; n > 0 && m.kinds[k].size <= slack; n-- {
				slack -= m.kinds[k].size
				plan.loads[i].kinds = append(plan.loads[i].kinds, int32(k))
				plan.left[k]--
			}
		}
		ok = total(plan.left) == 0
	}
	if ok {
		p.s.offer(plan)
	}
}

// assigned is a plan of the loads in which no part is cut more often than it is wanted; ok is false where one is
// cut too seldom.
func (m *model) assigned(loads []load) (plan, bool) {
	left := m.needs()
	out := plan{left: left}
	for _, l := range loads {
		var kinds []int32
		for _, k := range l.kinds {
			if left[k] > 0 {
				left[k]--
				kinds = append(kinds, k)
			}
		}
		if len(kinds) > 0 {
			out.loads = append(out.loads, load{l.store, kinds})
		}
	}
	return out, total(left) == 0
}

func (p *pool) fits(way int) bool {
	for _, q := range p.copies[way] {
		if q.n > p.have[q.kind] {
			return false
		}
	}
	return true
}

func (p *pool) holds(way, kind int) bool {
	for _, q := range p.copies[way] {
		if q.kind == kind {
			return true
		}
	}
	return false
}

// pair finds two single parts that the solution puts on one stick for about half of its times: together or apart
// divides the plans well (Ryan and Foster, 1981; from memory).
func (p *pool) pair() (i, j int, ok bool) {
	sum := map[[2]int]float64{}
	var order [][2]int
	p.use(func(way int, times float64) {
		for a, q := range p.copies[way] {
			for _, r := range p.copies[way][a+1:] {
				if p.have[q.kind] != 1 || p.have[r.kind] != 1 {
					continue
				}
				key := [2]int{q.kind, r.kind}
				if _, seen := sum[key]; !seen {
					order = append(order, key)
				}
				sum[key] += times
			}
		}
	})
	best := 0.5 - 1e-4
	for _, key := range order {
		if d := math.Abs(sum[key] - 0.6); d < best && sum[key] < 1-1e-4 {
			best, i, j, ok = d, key[0], key[1], true
		}
	}
	return i, j, ok
}

// fraction is the way whose times are farthest from whole.
func (p *pool) fraction() int {
	best, way := 1e-5, -1
	p.use(func(j int, times float64) {
		if d := math.Abs(times - math.Round(times)); d > best && p.fits(j) {
			best, way = d, j
		}
	})
	return way
}

// without searches with some ways off.
func (p *pool) without(off func(way int) bool, then func()) {
	was := slices.Clone(p.on)
	for i := range p.on {
		if p.on[i] && off(i) {
			p.on[i] = false
		}
	}
	then()
	p.on = was
}

// cut searches with one stick cut in a way.
func (p *pool) cut(way int) {
	p.take(way)
	p.search()
	p.fixed = p.fixed[:len(p.fixed)-1]
	for _, q := range p.copies[way] {
		p.have[q.kind] += q.n
	}
}
