package stick

import (
	"math"
	"slices"

	"rodwright/cut/master"
)

// poolMost bounds the ways of a pool.
const poolMost = 20_000

// pool is every way to cut a stick that a plan of fewer sticks than the best could use. Give each part its weight w,
// let no stick hold more than H, and let all parts weigh W: in a plan of T sticks what the sticks lack of H adds up
// to T·H − W, so no stick may lack more. That leaves few ways when T·H − W is small; over them the plan is searched
// to the end, and where there is none, T + 1 is a bound. All of it is in whole numbers.
type pool struct {
	s      *search
	goal   int // sticks at most
	ways   []load
	lp     *master.Master
	on     []bool
	have   []int
	copies [][]count // of each way: kinds and how often
	fixed  []load
	stop   bool // the search was broken off: nothing is proven
	nodes  int
}

type count struct{ kind, n int }

// poolNodes bounds the nodes of one search of a pool.
const poolNodes = 4000

// byPool searches for a plan with one stick fewer than the best, or proves that there is none. It needs one kind
// of stock, as many of it as are wanted.
func (s *search) byPool(c *columns) {
	m := s.m
	if s.done() || s.budget.Over() || len(m.stores) != 1 || m.stores[0].count >= 0 || m.stores[0].price <= 0 {
		return
	}
	p := &pool{s: s, goal: len(s.best.loads) - 1, have: m.needs()}
	if math.Abs(s.rank.cost-s.bound-m.stores[0].price) > costEps {
		return
	}
	c.aim()
	weights := c.middle()
	if weights == nil || !p.enumerate(weights) && !p.enumerate(m.filled(weights)) {
		return
	}
	p.open()
	p.search()
	if !p.stop && !s.done() {
		s.bound = s.rank.cost
	}
}

// enumerate lists the ways that lack no more than all may lack together. It reports false where they are too many.
func (p *pool) enumerate(weight []int64) bool {
	m := p.s.m
	holds, cells, ok := m.holdsOf(p.have, weight)
	if !ok || len(m.kinds) == 0 {
		return false
	}
	p.s.budget.Spend(cells / cellsPerNode)
	var all int64
	for k, n := range p.have {
		all += int64(n) * weight[k]
	}
	lack := int64(p.goal)*holds[0] - all
	if lack < 0 {
		return true // no way at all, as the bound would say too
	}
	e := newEnumeration(m, p.have, weight, holds[0]-lack)
	if e == nil {
		return false
	}
	p.ways = e.list(poolMost)
	p.s.budget.Spend(e.steps / 16)
	return len(p.ways) <= poolMost
}

// filled mixes weights with the sizes: where small parts weigh nothing, as large ones alone fill the sticks, a way
// must still not waste more length than all may.
func (m *model) filled(weights []int64) []int64 {
	out, room := make([]int64, len(weights)), float64(m.stores[0].room)
	for k, w := range weights {
		out[k] = w/2 + int64(float64(m.kinds[k].size)/room*weightScale/2)
	}
	return out
}

// open makes the linear program of the pool.
func (p *pool) open() {
	sense, right := make([]master.Sense, len(p.have)), make([]float64, len(p.have))
	for k, n := range p.have {
		sense[k], right[k] = master.Need, float64(n)
	}
	p.lp = master.New(sense, right, 20)
	p.on = make([]bool, len(p.ways))
	for i, l := range p.ways {
		var counts []count
		col := master.Column{Cost: 1}
		for j, k := range l.kinds {
			if n := len(counts); j > 0 && l.kinds[j-1] == k {
				counts[n-1].n++
				continue
			}
			counts = append(counts, count{int(k), 1})
		}
		for _, q := range counts {
			col.Entries = append(col.Entries, master.Entry{Row: q.kind, Value: float64(q.n)})
		}
		p.copies = append(p.copies, counts)
		p.lp.Add(col)
		p.on[i] = true
	}
}

// search looks for a plan of the ways that are on, for the parts that are left, and returns when there is none or it
// was broken off.
func (p *pool) search() {
	if p.nodes++; p.nodes > poolNodes || p.s.budget.Over() {
		p.stop = true
	}
	if p.stop || p.s.done() {
		return
	}
	if total(p.have) == 0 {
		p.s.offer(plan{cloneLoads(p.fixed), slices.Clone(p.have)})
		return
	}
	if !p.solve() || p.s.done() {
		return
	}
	if i, j, ok := p.pair(); ok {
		p.without(func(way int) bool { return p.holds(way, i) != p.holds(way, j) }, p.search)
		p.without(func(way int) bool { return p.holds(way, i) && p.holds(way, j) }, p.search)
		return
	}
	way := p.fraction()
	if way < 0 {
		p.stop = true // nothing to branch on, though it is no plan: rounding has gone wrong
		return
	}
	p.cut(way)
	p.without(func(w int) bool { return w == way }, p.search)
}

// solve reports whether a plan of few enough sticks may still be there. Only a bound in whole numbers says no.
func (p *pool) solve() bool {
	right := make([]float64, len(p.have))
	for k, n := range p.have {
		right[k] = float64(n)
	}
	for i := range p.ways {
		p.lp.Allow(i, p.on[i] && p.fits(i))
	}
	p.lp.Reset(right)
	before := p.lp.Pivots
	solved := p.lp.Solve(4000)
	p.s.budget.Spend((p.lp.Pivots-before)*(len(right)*len(right)+4*len(p.ways))/400 + len(p.ways)/8)
	if !solved {
		return true
	}
	if p.lp.Value() > float64(p.goal-len(p.fixed))+roundEps && p.refuted() {
		return false
	}
	p.round()
	return true
}

// refuted reports whether the duals as whole weights prove that the sticks left don't suffice.
func (p *pool) refuted() bool {
	dual := p.lp.Duals()
	weight := make([]int64, len(dual))
	var all, most int64
	for k, d := range dual {
		weight[k] = int64(math.Max(0, d) * weightScale)
		all += int64(p.have[k]) * weight[k]
	}
	for i := range p.ways {
		if !p.on[i] || !p.fits(i) {
			continue
		}
		var w int64
		for _, q := range p.copies[i] {
			w += int64(q.n) * weight[q.kind]
		}
		most = max(most, w)
	}
	return all > int64(p.goal-len(p.fixed))*most
}

// round offers the program's solution where it is one of whole sticks.
func (p *pool) round() {
	whole := true
	var loads []load
	p.lp.Use(func(j int, times float64) {
		n := math.Round(times)
		whole = whole && math.Abs(times-n) < roundEps
		for range int(n) {
			loads = append(loads, p.ways[j])
		}
	})
	if !whole {
		return
	}
	if plan, ok := p.s.m.assigned(append(cloneLoads(p.fixed), loads...)); ok {
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
	p.lp.Use(func(way int, times float64) {
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
	p.lp.Use(func(j int, times float64) {
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
	for _, q := range p.copies[way] {
		p.have[q.kind] -= q.n
	}
	p.fixed = append(p.fixed, p.ways[way])
	p.search()
	p.fixed = p.fixed[:len(p.fixed)-1]
	for _, q := range p.copies[way] {
		p.have[q.kind] += q.n
	}
}
