package stick

import (
	"slices"

	"rodwright/cut"
)

// search holds the best plan so far and the bound that ends the search.
type search struct {
	m      *model
	b      *builder
	budget *cut.Budget
	dice   *cut.Dice
	best   plan
	rank   score
	found  bool
	bound  float64
}

func newSearch(m *model, budget *cut.Budget) *search {
	return &search{m: m, b: newBuilder(m, budget), budget: budget, dice: cut.NewDice(1)}
}

// quickRounds is how often a plan is built by values before the linear program, and quickNodes the nodes of one fill
// then; valueRounds is how often after it.
const (
	quickRounds = 4
	quickNodes  = 200
	valueRounds = 40
)

// run finds the plan: first simple ones, then by ways that a linear program finds, then by corrected values and by
// taking sticks apart, and at the end once more by values for a plan that is easier to cut.
func (s *search) run() {
	s.best.left = make([]int, len(s.m.kinds))
	if len(s.m.kinds) == 0 {
		return
	}
	s.offer(s.m.firstFit())
	s.bound = s.m.bound(s.m.needs(), s.budget)
	s.buyNone()
	s.b.f.nodes = quickNodes
	for _, lead := range []bool{true, false} {
		if !s.done() {
			s.offer(s.b.build(s.fresh(lead)))
		}
	}
	s.byValues(quickRounds)
	s.b.f.nodes = fillNodes
	s.byColumns()
	s.byValues(valueRounds)
	s.bySets()
	s.repack()
	s.tidy()
	if s.rank.left > 0 {
		s.layPlaced()
	}
	s.bound = min(s.bound, s.rank.cost)
}

// fresh returns the whole job with sizes as values.
func (s *search) fresh(lead bool) *job {
	j := &job{have: s.m.needs(), avail: s.m.counts(), value: make([]int64, len(s.m.kinds)), lead: lead}
	for k := range s.m.kinds {
		j.value[k] = s.m.kinds[k].size
	}
	return j
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

// placed returns how many of each kind the best plan cuts.
func (s *search) placed() []int {
	n := s.m.needs()
	for k, left := range s.best.left {
		n[k] -= left
	}
	return n
}

// offer keeps p when it is better than the best so far.
func (s *search) offer(p plan) {
	p.loads = s.m.buyOrCut(p.loads)
	s.m.cheapen(p.loads, s.m.counts())
	r := s.m.score(p)
	if !s.found || r.better(s.rank) {
		s.best, s.rank, s.found = plan{cloneLoads(p.loads), slices.Clone(p.left)}, r, true
	}
}

// done reports whether nothing cheaper is possible.
func (s *search) done() bool { return s.rank.left == 0 && s.rank.cost <= s.bound+costEps }

// byValues builds plans by corrected values until the bound is met.
func (s *search) byValues(rounds int) {
	w := newValues(s.m, 1.02, 1)
	for i := 0; i < rounds && !s.done() && !s.budget.Over(); i++ {
		if i%10 == 9 {
			w = newValues(s.m, 1+0.1*s.dice.Share(), 0.2+1.5*s.dice.Share())
			w.jitter(s.dice, 0.1)
		}
		j := s.fresh(i%3 == 2)
		j.learn = w
		w.into(j.value)
		s.offer(s.b.build(j))
		s.learnBound(j.value)
	}
}

// valuedNodes bounds the knapsacks of one bound by values.
const valuedNodes = 10_000

// learnBound takes the values that building has come to as weights: with several stock lengths they weigh
// parts better than any scale made for one of them.
func (s *search) learnBound(value []int64) {
	if !s.budget.Ask() {
		return
	}
	nodes := valuedNodes
	s.bound = max(s.bound, s.m.valued(s.m.needs(), value, &nodes, s.budget))
	s.budget.Spend(valuedNodes - nodes)
}

// tidy looks for a plan of the same cost with fewer patterns.
func (s *search) tidy() {
	if s.rank.patterns <= 1 {
		return
	}
	for i := 0; i < 8 && !s.budget.Over(); i++ {
		w := newValues(s.m, 1+0.02*float64(i), 1)
		if i > 3 {
			w.jitter(s.dice, 0.05)
		}
		j := s.fresh(i%2 == 0)
		j.learn = w
		w.into(j.value)
		s.offer(s.b.build(j))
	}
}

func cloneLoads(loads []load) []load {
	out := make([]load, len(loads))
	for i, l := range loads {
		out[i] = load{l.store, slices.Clone(l.kinds)}
	}
	return out
}

// cheapen moves the parts of a stick to cheaper stock that is long enough and still there.
func (m *model) cheapen(loads []load, avail []int) {
	for _, l := range loads {
		if avail[l.store] > 0 {
			avail[l.store]--
		}
	}
	for i := range loads {
		l := &loads[i]
		used := m.stores[l.store].room - m.slack(*l)
		for s, st := range m.stores[:m.sold] {
			if l.store < m.sold && avail[s] != 0 && st.room >= used && st.price < m.stores[l.store].price-costEps {
				give(avail, l.store)
				take(avail, s)
				l.store = s
			}
		}
	}
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
