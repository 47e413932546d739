package sheet

import (
	"math"
	"slices"

	"rodwright/cut"
)

// plan is a layout: sheets, and how many parts of each kind found none.
type plan struct {
	sheets []filled
	left   []int
}

// score orders plans: the parts left over first, then the cost, then how well the leftover is gathered.
// With values only the value counts.
type score struct {
	value  float64
	left   float64 // area
	cost   float64
	spread float64 // Σ empty², negative
}

// search holds the best plan so far.
type search struct {
	m      *model
	f      *filler
	budget *cut.Budget
	dice   *cut.Dice
	orders [][]int
	best   plan
	rank   score
	found  bool
	pool   *pool

	alternation *alternation // of bounds, nil where there is none
	began       int          // nodes at the start
	raising     int          // nodes that went into the alternation
	bound       float64
	most        float64 // a plan that is built ends before it costs more
}

func newSearch(m *model, b *cut.Budget) *search {
	s := &search{m: m, f: &filler{m: m, budget: b, haste: hastyTries}, budget: b, dice: cut.NewDice(1), orders: m.orders(), most: math.Inf(1)}
	if m.valued {
		s.bound = math.Inf(1)
	}
	return s
}

// costEps is below any price step and above the rounding of sums.
const costEps = 1e-7

// run finds the plan: every rule once, then sheets emptied and filled anew.
func (s *search) run() {
	s.best.left = make([]int, len(s.m.kinds))
	if len(s.m.kinds) == 0 {
		return
	}
	s.began = s.budget.Left()
	hows := s.allManners()
	if len(s.m.kinds) > mostPatient {
		first := len(s.orders)
		s.layOut(hows[:first])
		hows = hows[first:]
	}
	s.bound = s.m.bound(s.m.needs(), s.budget)
	s.exactFill()
	s.layOut(hows)
	s.constructed()
	s.refill()
	if !s.m.valued && s.rank.left > 0 {
		s.began = s.budget.Left()
		s.bound = s.m.bound(s.placed(), s.budget.Again(boundBudget))
	}
}

// mostPatient is how many kinds there are at most where the bound comes before the first layouts.
const mostPatient = 300

// layOut offers a layout in each manner; the first is made whatever the budget.
func (s *search) layOut(hows []manner) {
	for _, how := range hows {
		if s.found && (s.done() || s.budget.Over()) {
			return
		}
		s.offer(s.build(s.m.needs(), s.m.counts(), []manner{how}))
	}
}

// allManners returns every order with every rule.
func (s *search) allManners() (out []manner) {
	for split := range splitRules {
		for fit := range fitRules {
			for _, o := range s.orders {
				out = append(out, manner{order: o, fit: fit, split: split})
			}
		}
	}
	return out
}

// exactFill offers the best filling without counts where it keeps the counts and stages anyway.
func (s *search) exactFill() {
	if !s.m.valued {
		return
	}
	if p, ok := s.m.gridPlan(s.budget); ok {
		s.offer(p)
	}
}

// constructed offers the best filling of a single sheet by construction, and takes over its bound.
func (s *search) constructed() {
	if !s.m.valued || s.done() {
		return
	}
	f, better, bound := s.m.construct(s.rank.value, s.budget)
	if better {
		left := s.m.needs()
		for _, q := range f.parts {
			left[q.kind]--
		}
		s.offer(plan{[]filled{f}, left})
	}
	s.bound = math.Min(s.bound, s.m.wholeValue(bound))
}

func (m *model) needs() []int {
	n := make([]int, len(m.kinds))
	for k := range m.kinds {
		n[k] = m.kinds[k].need
	}
	return n
}

func (m *model) counts() []int {
	n := make([]int, len(m.stores))
	for i := range m.stores {
		n[i] = m.stores[i].count
	}
	return n
}

// boundBudget is the work on the bound of what is placed when not all could be.
const boundBudget = 100_000

func (s *search) placed() []int {
	n := s.m.needs()
	for k, left := range s.best.left {
		n[k] -= left
	}
	return n
}

func (s *search) score(p plan) (r score) {
	for _, f := range p.sheets {
		r.value += s.m.trueValue(f)
	}
	for k, n := range p.left {
		r.left += float64(n) * s.m.kinds[k].l.MM() * s.m.kinds[k].w.MM()
	}
	r.cost = s.m.cost(p.sheets)
	r.spread = s.m.spread(p.sheets)
	return r
}

// trueValue is the sum of the parts' values.
func (m *model) trueValue(f filled) (v float64) {
	for _, q := range f.parts {
		v += m.p.Parts[m.kinds[q.kind].part].Value.Value
	}
	return v
}

func (m *model) cost(sheets []filled) (c float64) {
	for _, f := range sheets {
		c += m.stores[f.store].price
	}
	return c
}

func (m *model) spread(sheets []filled) (v float64) {
	for _, f := range sheets {
		e := m.empty(f)
		v -= e * e
	}
	return v
}

// empty is the area of a sheet that holds no part.
func (m *model) empty(f filled) float64 {
	in := m.stores[f.store].in
	e := in.Length.MM() * in.Width.MM()
	for _, q := range f.parts {
		e -= q.Length.MM() * q.Width.MM()
	}
	return e
}

func (s *search) better(a, b score) bool {
	if s.m.valued {
		if math.Abs(a.value-b.value) > costEps {
			return a.value > b.value
		}
		return a.spread < b.spread-costEps
	}
	switch {
	case math.Abs(a.left-b.left) > 1e-3:
		return a.left < b.left
	case math.Abs(a.cost-b.cost) > costEps:
		return a.cost < b.cost
	}
	return a.spread < b.spread-costEps
}

func (s *search) offer(p plan) {
	if r := s.score(p); !s.found || s.better(r, s.rank) {
		s.best, s.rank, s.found = plan{slices.Clone(p.sheets), slices.Clone(p.left)}, r, true
	}
}

// done reports whether nothing better is possible.
func (s *search) done() bool {
	if s.m.valued {
		return s.found && s.rank.value >= s.bound-costEps
	}
	return s.found && s.rank.left < 1e-3 && s.rank.cost <= s.bound+costEps
}

// build fills sheets until no part is left or no sheet takes one. Each sheet is filled in every manner and
// the one that takes most value off for its price is kept.
func (s *search) build(have, avail []int, hows []manner) plan {
	p := plan{left: have}
	cost := 0.0
	for {
		if s.budget.Over() && !math.IsInf(s.most, 1) {
			return p // a try that may as well not be
		}
		f, ok := s.next(have, avail, hows)
		if s.f.haste < 0 {
			p.sheets = append(p.sheets, s.quick(have, avail, hows[0])...)
			return p
		}
		if cost += s.m.stores[f.store].price; !ok || cost > s.most+costEps {
			return p
		}
		for n := s.times(f, have, avail); n > 0; n-- {
			p.sheets = append(p.sheets, f)
			for _, q := range f.parts {
				have[q.kind]--
			}
			take(avail, f.store)
		}
	}
}

// quick lays out by rows, and on sheets with defects by trying every place what rows have left.
func (s *search) quick(have, avail []int, how manner) []filled {
	out := s.m.rows(have, avail)
	s.f.patient = true
	defer func() { s.f.patient = false }()
	for st := range s.m.stores {
		if len(s.m.stores[st].defects) == 0 {
			continue // rows put a part there if any fits
		}
		for avail[st] != 0 {
			f := s.f.fill(st, have, how)
			if len(f.parts) == 0 {
				break
			}
			for _, q := range f.parts {
				have[q.kind]--
			}
			take(avail, st)
			out = append(out, f)
		}
	}
	return out
}

// times returns how often a filled sheet can be repeated.
func (s *search) times(f filled, have, avail []int) int {
	counts := map[int]int{}
	for _, q := range f.parts {
		counts[q.kind]++
	}
	t := math.MaxInt
	for k, n := range counts {
		t = min(t, have[k]/n)
	}
	if a := avail[f.store]; a >= 0 {
		t = min(t, a)
	}
	return t
}

func (s *search) next(have, avail []int, hows []manner) (best filled, ok bool) {
	rate, rest := 0.0, 0.0
	for k, n := range have {
		rest += float64(n) * s.m.value(k)
	}
	var last filled
	finished := false
	for st := range s.m.stores {
		if avail[st] == 0 {
			continue
		}
		for _, how := range hows {
			if s.f.ended(0) {
				return best, ok
			}
			price := s.m.stores[st].price
			if most := s.m.holds(st); ok && !s.m.valued && most < rest && s.rate(price, most) >= rate {
				continue // full it would cost more for what it holds
			}
			f := s.f.fill(st, have, how)
			if len(f.parts) == 0 {
				continue
			}
			if f.value >= rest*(1-1e-12) && (!finished || price < s.m.stores[last.store].price) {
				last, finished = f, true
			}
			if r := s.rate(price, f.value); !ok || r < rate {
				best, rate, ok = f, r, true
			}
		}
	}
	if finished && ok && !s.m.valued {
		per := s.m.stores[best.store].price
		if s.m.stores[last.store].price <= per+per/math.Max(best.value, costEps)*math.Max(0, rest-best.value) {
			return last, true
		}
	}
	return best, ok
}

// holds is no less than the areas of parts with their saw cuts that a sheet holds.
func (m *model) holds(st int) float64 {
	in := m.stores[st].in
	return (in.Length + m.p.Kerf).MM() * (in.Width + m.p.Kerf).MM() * (1 + 1e-9)
}

// rate is what a sheet costs for the value it takes away; filled for value, sheets cost nothing.
func (s *search) rate(price, value float64) float64 {
	if s.m.valued || price == 0 {
		return -value
	}
	return price / value
}

func take(avail []int, s int) {
	if avail[s] > 0 {
		avail[s]--
	}
}

func give(avail []int, s int) {
	if avail[s] >= 0 {
		avail[s]++
	}
}
