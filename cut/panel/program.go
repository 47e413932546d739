package panel

import (
	"math"

	"rodwright/cut"
	"rodwright/cut/master"
)

// program is the linear program over ways to cut the boards: of each group of boards that are alike at least
// lo and at most hi are cut, fractions too, so that every kind is wide enough, at the least cost. Ways are
// generated as they pay (Gilmore and Gomory, Operations Research 9, 1961): the longest path at the program's
// duals is the way that pays most.
type program struct {
	l      *low
	lp     *master.Master
	groups []group
	ways   []groupWay // of each column
	right  []float64
	price  []float64 // scratch
	budget *cut.Budget
}

// group is boards that are just alike.
type group struct {
	lowBoard
	boards []int
}

// groupWay is a way to cut a board of a group.
type groupWay struct {
	group int
	way
}

// scope says how many boards of each group are cut, from lo to hi, and by which rule; rules is nil without any.
type scope struct {
	lo, hi []int
	rules  []rule
}

// rule returns the rule of a group.
func (s scope) rule(g int) rule {
	if s.rules == nil {
		return rule{}
	}
	return s.rules[g]
}

func newProgram(l *low, budget *cut.Budget) *program {
	p := &program{l: l, budget: budget, price: make([]float64, len(l.kinds)+len(l.rounds))}
	at := map[int]int{}
	for k, b := range l.boards {
		first := l.m.twin[k]
		if first == k {
			at[k] = len(p.groups)
			p.groups = append(p.groups, group{lowBoard: b})
		}
		g := &p.groups[at[first]]
		g.boards = append(g.boards, k)
	}
	n, total := p.needs(), 0.0
	sense := make([]master.Sense, n+2*len(p.groups))
	for i := range sense {
		sense[i] = master.Need
		if i >= n && i < n+len(p.groups) {
			sense[i] = master.Limit
		}
	}
	for _, b := range l.boards {
		total += b.cost
	}
	p.right = make([]float64, len(sense))
	p.aim(p.all())
	p.lp = master.New(sense, p.right, 10*math.Max(total, costEps))
	return p
}

// needs is how many rows are needs: kinds, then roundings.
func (p *program) needs() int { return len(p.l.kinds) + len(p.l.rounds) }

// needs are the net widths that are wanted at least.
func (l *low) needs() []float64 {
	out := make([]float64, len(l.kinds))
	for t, kd := range l.kinds {
		out[t] = kd.need
	}
	return out
}

// all is the scope of the whole problem.
func (p *program) all() scope {
	s := scope{lo: make([]int, len(p.groups)), hi: make([]int, len(p.groups))}
	for g := range p.groups {
		s.hi[g] = len(p.groups[g].boards)
	}
	return s
}

// aim sets the right sides: needs in units of themselves, so that all rows are of one size.
func (p *program) aim(s scope) {
	n := p.needs()
	for t := range n {
		p.right[t] = 1
	}
	for g := range p.groups {
		p.right[n+g] = float64(s.hi[g])
		p.right[n+len(p.groups)+g] = float64(s.lo[g])
	}
}

func (p *program) add(g int, w way) {
	n := p.needs()
	c := master.Column{Cost: w.cost}
	for t, y := range w.yields {
		if y > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: t, Value: y / p.l.kinds[t].need})
		}
	}
	for i, v := range w.rounds {
		if v > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: len(p.l.kinds) + i, Value: v / p.l.rounds[i].count()})
		}
	}
	c.Entries = append(c.Entries, master.Entry{Row: n + g, Value: 1}, master.Entry{Row: n + len(p.groups) + g, Value: 1})
	p.lp.Add(c)
	p.ways = append(p.ways, groupWay{g, w})
}

// lagrange is Lagrange's bound in a scope at the prices, and adds the ways that cost less than the program's
// duals say; added is how many.
func (p *program) lagrange(s scope, dual []float64) (bound float64, added int) {
	n := p.needs()
	for t, kd := range p.l.kinds {
		bound += p.price[t] * kd.need
	}
	for i, r := range p.l.rounds {
		bound += p.price[len(p.l.kinds)+i] * r.count()
	}
	for g := range p.groups {
		if s.hi[g] == 0 {
			continue
		}
		b := p.groups[g].lowBoard
		p.budget.Spend(1 + len(b.pos)*len(p.l.lengths)/16)
		q := p.path(g, s)
		r := b.cost - q.value
		if r < 0 {
			bound += float64(s.hi[g]) * r
		} else if s.lo[g] > 0 {
			bound += float64(s.lo[g]) * r
		}
		if math.IsInf(r, 1) {
			continue
		}
		if dual != nil && r < dual[n+g]+dual[n+len(p.groups)+g]-1e-7*(1+b.cost) {
			p.add(g, q.way)
			added++
		}
	}
	return bound, added
}

// path finds the way of a group that is worth most at the prices and keeps its rule.
func (p *program) path(g int, s scope) lowPath {
	b := p.groups[g].lowBoard
	if r := s.rule(g); r != (rule{}) && b.pos != nil {
		p.budget.Spend(len(b.pos) * len(p.l.kinds) << len(bits(r.once)) / 32)
		return p.l.ruled(b, p.price, r)
	}
	return p.l.path(b, p.price)
}

// lagrangeGap is the share of the program's value that its bound may lack when ways are no longer generated.
const lagrangeGap = 1e-7

// solve solves the program in a scope and returns its bound, valid whenever it ends; it ends early where the
// bound reaches enough. prices are those of the best bound.
func (p *program) solve(s scope, enough float64) (bound float64, prices []float64) {
	p.aim(s)
	for j := range p.ways {
		w := &p.ways[j]
		p.lp.Allow(j, s.rules == nil || w.crude || s.rules[w.group].allows(w.way))
	}
	p.lp.Reset(p.right)
	bound = math.Inf(-1)
	for round := 0; round == 0 || !p.budget.Over(); round++ {
		before := p.lp.Pivots
		p.lp.Solve(5000)
		p.budget.Spend(1 + (p.lp.Pivots-before)*(len(p.right)*len(p.right)+4*len(p.ways))/400)
		dual := p.lp.Duals()
		for t, kd := range p.l.kinds {
			p.price[t] = math.Max(0, dual[t]) / kd.need
		}
		for i, r := range p.l.rounds {
			at := len(p.l.kinds) + i
			p.price[at] = math.Max(0, dual[at]) / r.count()
		}
		v, added := p.lagrange(s, dual)
		if v > bound {
			bound = v
			prices = append(prices[:0], p.price...)
		}
		if added == 0 || bound >= enough || p.lp.Value()-bound <= lagrangeGap*math.Abs(bound) {
			break
		}
	}
	return bound, prices
}

// counts are how many boards of each group the present solution cuts.
func (p *program) counts() []float64 {
	z := make([]float64, len(p.groups))
	p.lp.Use(func(j int, times float64) { z[p.ways[j].group] += times })
	return z
}
