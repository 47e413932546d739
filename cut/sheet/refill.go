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
	for !s.done() && !s.budget.Over() {
		if s.step(&cur, avail) {
			s.offer(cur)
		}
		s.budget.Spend(1)
	}
}

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
	p := s.build(have, free, s.manners(1+s.dice.N(3)))
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
	return a.spread <= b.spread
}

// group picks up to four sheets, an empty one preferred.
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
	for tries := s.dice.N(4) * 2; tries > 0; tries-- {
		if i := s.dice.N(n); !slices.Contains(group, i) && len(group) < 4 {
			group = append(group, i)
		}
	}
	return group
}

// manners returns n ways to fill a sheet, by random rules and orders shaken a little.
func (s *search) manners(n int) (out []manner) {
	for range n {
		out = append(out, manner{
			order: s.shaken(s.orders[s.dice.N(len(s.orders))], s.dice.Share()),
			fit:   fitRule(s.dice.N(int(fitRules))), split: splitRule(s.dice.N(int(splitRules))),
		})
	}
	return out
}

// shaken moves each kind up or down an order by a random distance, up to a share of its length.
func (s *search) shaken(order []int, share float64) []int {
	key := make(map[int]float64, len(order))
	for i, k := range order {
		key[k] = float64(i) + share*share*float64(len(order))*s.dice.Share()
	}
	out := slices.Clone(order)
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(key[a], key[b]) })
	return out
}
