package stick

import (
	"math"
	"slices"
)

// byColumns solves the linear program over ways to cut a stick, takes its duals as weights of a bound, and
// dives for whole sticks: what the program uses once or more is cut, the rest is solved again, and where the
// bound says that a dive can't end better than the best plan, it turns to the next way (limited discrepancy,
// Harvey and Ginsberg 1995; diving with column generation, Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa,
// INFORMS Journal on Computing 31, 2019; from memory).
func (s *search) byColumns() {
	if s.done() || s.rank.left > 0 || len(s.m.kinds) > mostKinds || s.budget.Over() {
		return
	}
	c := newColumns(s)
	c.seed()
	c.exchanges()
	if c.generateUntil(c.settled); !s.budget.Ask() {
		return
	}
	c.aim()
	_, end := c.generateUntil(c.settled)
	if c.lp.Short() < roundEps && s.budget.Ask() {
		s.learnColumns(c)
	}
	if !end || s.done() {
		return
	}
	s.byPool(c, quickPool)
	c.dive(nil, 0)
	s.byPool(c, largePool)
	s.byWays(c, quickWays)
	for wrong := 1; wrong <= mostWrong && !s.done() && !s.budget.Over(); wrong++ {
		c.dive(nil, wrong)
	}
	s.byWays(c, largeWays)
}

// settled reports whether rounding up the program gives no more than is known, whatever is still to come.
func (c *columns) settled(bound, v float64) bool {
	return c.same > 0 && c.whole(math.Max(bound, c.s.bound)) >= c.whole(v)
}

// mostWrong is how often a dive may turn aside from what the program likes best.
const mostWrong = 4

// learnColumns raises the bound by the duals.
func (s *search) learnColumns(c *columns) {
	nodes := 2_000_000
	s.bound = math.Max(s.bound, s.m.valued(s.m.needs(), c.weights(), &nodes, s.budget))
	s.budget.Spend((2_000_000 - nodes) / 8)
}

// below is the greatest cost that would be better than the best plan.
func (c *columns) below() float64 {
	if c.same > 0 {
		return c.s.rank.cost - c.same
	}
	return c.s.rank.cost - costEps
}

// dive fixes whole sticks until nothing is left. fixed are those taken so far; wrong is how often it may turn
// aside.
func (c *columns) dive(fixed []load, wrong int) {
	if c.s.done() || c.s.budget.Over() {
		return
	}
	if total(c.have) == 0 {
		c.s.offer(plan{cloneLoads(fixed), slices.Clone(c.have)})
		return
	}
	c.aim()
	spent := c.s.m.cost(fixed)
	bound, _ := c.generate(c.below() - spent)
	if c.s.budget.Over() || c.lp.Short() > roundEps || c.up(spent+bound) > c.below()+roundEps {
		return
	}
	if c.lp.Value()+spent > c.below()+roundEps {
		return
	}
	chosen := c.surely()
	if len(chosen) > 0 {
		c.with(chosen, func() {
			c.finish(append(slices.Clip(fixed), chosen...))
			c.dive(append(slices.Clip(fixed), chosen...), wrong)
		})
		return
	}
	tried := c.likely(wrong + 1)
	for i, l := range tried {
		if wrong-i < 0 {
			break
		}
		c.with([]load{l}, func() { c.dive(append(slices.Clip(fixed), l), wrong-i) })
	}
}

func (c *columns) up(v float64) float64 {
	if c.same > 0 {
		return c.whole(v)
	}
	return v
}

// aim sets the program to what is still wanted and keeps ways out that would make too much.
func (c *columns) aim() {
	right := make([]float64, len(c.right))
	for k, n := range c.have {
		right[k] = float64(n)
	}
	for s, row := range c.limits {
		if row >= 0 {
			right[row] = float64(c.avail[s])
		}
	}
	for j, l := range c.way {
		c.lp.Allow(j, c.fits(l))
	}
	c.lp.Reset(right)
}

// fits reports whether all parts of a way are still wanted; an exchange is no way.
func (c *columns) fits(l load) bool {
	if len(l.kinds) == 0 {
		return false
	}
	n := 0
	for i, k := range l.kinds {
		if n++; i+1 == len(l.kinds) || l.kinds[i+1] != k {
			if n > c.have[k] {
				return false
			}
			n = 0
		}
	}
	return c.avail[l.store] != 0
}

// surely are the ways that the program uses once or more, each as often as it does in whole times and as the
// parts allow.
func (c *columns) surely() (out []load) {
	have, avail := slices.Clone(c.have), slices.Clone(c.avail)
	c.lp.Use(func(j int, times float64) {
		for range int(times + 1e-6) {
			if l := c.way[j]; c.fits(l) {
				c.take(l)
				out = append(out, l)
			}
		}
	})
	c.have, c.avail = have, avail
	return out
}

// likely are the n ways that the program uses most.
func (c *columns) likely(n int) (out []load) {
	type use struct {
		way   load
		times float64
	}
	var all []use
	c.lp.Use(func(j int, times float64) {
		if c.fits(c.way[j]) {
			all = append(all, use{c.way[j], times})
		}
	})
	slices.SortStableFunc(all, func(a, b use) int {
		switch {
		case a.times > b.times:
			return -1
		case a.times < b.times:
			return 1
		}
		return 0
	})
	for _, u := range all[:min(n, len(all))] {
		out = append(out, u.way)
	}
	return out
}

func (c *columns) take(l load) {
	for _, k := range l.kinds {
		c.have[k]--
	}
	take(c.avail, l.store)
}

// with cuts the sticks, calls f and puts everything back.
func (c *columns) with(ls []load, f func()) {
	have, avail := slices.Clone(c.have), slices.Clone(c.avail)
	for _, l := range ls {
		c.take(l)
	}
	f()
	c.have, c.avail = have, avail
}

// finish packs what is left by values, some times over.
func (c *columns) finish(fixed []load) {
	for i := range 4 {
		if c.s.done() || c.s.budget.Over() {
			return
		}
		j := &job{have: slices.Clone(c.have), avail: slices.Clone(c.avail), lead: i%2 == 0, value: c.s.mood()}
		p := c.s.b.build(j)
		c.s.offerIfCheaper(plan{append(cloneLoads(fixed), p.loads...), p.left})
	}
}
