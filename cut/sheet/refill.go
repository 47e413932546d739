package sheet

import (
	"cmp"
	"math"
	"slices"
)

// refill empties a few sheets and fills them anew, again and again, and keeps what is no worse, until the
// bound is met or the budget is spent.
func (s *search) refill() {
	cur := plan{slices.Clone(s.best.sheets), slices.Clone(s.best.left)}
	avail := s.m.counts()
	for _, f := range cur.sheets {
		take(avail, f.store)
	}
	s.pool = newPool(s)
	s.alternation = s.m.alternation(s.budget)
	for n := 0; !s.done() && !s.budget.Over(); n++ {
		if s.step(&cur, avail) {
			s.offer(cur)
		}
		s.budget.Spend(1)
		s.raise()
		if s.pool != nil && n%pooledEvery == pooledEvery-1 {
			s.pooled(&cur, avail)
		}
	}
}

// raise follows one more start of the alternation of bounds where less of the work than its share went into it.
func (s *search) raise() {
	all := s.began - s.budget.Left()
	if s.alternation == nil || float64(s.raising) > raiseShare*float64(all) {
		return
	}
	before := s.budget.Left()
	if !s.alternation.step(s.budget) {
		s.alternation = nil
		return
	}
	s.bound = math.Max(s.bound, s.alternation.best)
	s.raising += before - s.budget.Left()
}

// raiseShare is the share of the work that goes into better bounds: beyond it layouts gain more.
const raiseShare = 0.25

// step refills one group of sheets and reports whether cur changed.
func (s *search) step(cur *plan, avail []int) bool {
	group := s.group(cur)
	have, free := slices.Clone(cur.left), slices.Clone(avail)
	var old []filled
	for _, i := range group {
		old = append(old, cur.sheets[i])
		give(free, cur.sheets[i].store)
		for _, q := range cur.sheets[i].parts {
			have[q.kind]++
		}
	}
	s.withhold(free)
	if slices.Max(append(cur.left, 0)) == 0 && !s.m.valued {
		s.most = s.m.cost(old)
	}
	p := s.build(have, free, s.manners(1+s.dice.N(3)))
	s.most = math.Inf(1)
	if s.pool != nil {
		for _, f := range p.sheets {
			s.pool.add(f)
		}
	}
	if !s.accept(plan{old, cur.left}, p) {
		return false
	}
	for _, f := range old {
		give(avail, f.store)
	}
	for _, f := range p.sheets {
		take(avail, f.store)
	}
	slices.Sort(group)
	for n := len(group) - 1; n >= 0; n-- {
		cur.sheets = slices.Delete(cur.sheets, group[n], group[n]+1)
	}
	cur.sheets = append(cur.sheets, p.sheets...)
	cur.left = p.left
	return true
}

// withhold now and then leaves kinds of sheets out by chance: what is cheapest for its area may cost more in the end than
// one sheet that takes all.
func (s *search) withhold(free []int) {
	if len(free) == 1 || s.dice.N(3) > 0 {
		return
	}
	for i := range free {
		if s.dice.N(2) == 0 {
			free[i] = 0
		}
	}
}

func (s *search) accept(old, p plan) bool {
	a, b := s.score(p), s.score(old)
	if s.m.valued {
		return a.value >= b.value-costEps
	}
	switch {
	case math.Abs(a.left-b.left) > 1e-3:
		return a.left < b.left
	case math.Abs(a.cost-b.cost) > costEps:
		return a.cost < b.cost
	}
	return a.spread <= b.spread*(1-slack*s.dice.Share()*s.dice.Share())
}

// slack is the share by which a plan of the same cost may be gathered worse and still be gone on from.
const slack = 0.008

// mostGroup is how many sheets are emptied at most.
const mostGroup = 6

// group picks up to six sheets, an empty one preferred.
func (s *search) group(cur *plan) (group []int) {
	n := len(cur.sheets)
	if n == 0 {
		return nil
	}
	first := s.dice.N(n)
	for range 2 {
		if o := s.dice.N(n); s.m.empty(cur.sheets[o]) > s.m.empty(cur.sheets[first]) {
			first = o
		}
	}
	group = []int{first}
	for tries := s.dice.N(mostGroup) * 2; tries > 0; tries-- {
		if i := s.dice.N(n); !slices.Contains(group, i) && len(group) < mostGroup {
			group = append(group, i)
		}
	}
	return group
}

// manners returns n ways to fill a sheet, by random rules and orders shaken a little.
func (s *search) manners(n int) (out []manner) {
	for range n {
		how := manner{
			order: s.shaken(s.orders[s.dice.N(len(s.orders))], s.dice.Share()),
			fit:   fitRule(s.dice.N(int(fitRules))), split: splitRule(s.dice.N(int(splitRules))),
		}
		if s.dice.N(6) > 0 {
			s.bySections(&how)
		}
		out = append(out, how)
	}
	return out
}

// mostPower is how much a value may grow beyond the area, so that large parts come first; mostShake the largest share
// by which it is shaken.
const (
	mostPower = 0.4
	mostShake = 0.1
)

// bySections lets a sheet be filled by sections, with values that follow the area more or less and are shaken.
func (s *search) bySections(how *manner) {
	how.along = acrossX
	if s.dice.N(2) == 0 {
		how.along = acrossY
	}
	power, shake := 1+mostPower*s.dice.Share(), mostShake*s.dice.Share()*s.dice.Share()
	how.value, how.turned, how.dice = make([]float64, len(s.m.kinds)), make([]bool, len(s.m.kinds)), s.dice
	for k, kd := range s.m.kinds {
		v := (kd.l + s.m.p.Kerf).MM() * (kd.w + s.m.p.Kerf).MM()
		if s.m.valued {
			v = s.m.value(k)
		}
		how.value[k] = math.Pow(v, power) * (1 + shake*s.dice.Share())
		how.turned[k] = s.dice.N(2) == 0
	}
}

// shaken moves each kind up or down an order by a random distance, up to a share of its length.
func (s *search) shaken(order []int, share float64) []int {
	key := make([]float64, len(order))
	for i, k := range order {
		key[k] = float64(i) + share*share*float64(len(order))*s.dice.Share()
	}
	out := slices.Clone(order)
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(key[a], key[b]) })
	return out
}
