package panel

import (
	"math"

	"rodwright/cut"
)

// program is the linear program over ways to cut the boards: of each group of boards that are alike at least
// lo and at most hi are cut, fractions too, so that every kind is wide enough, at the least cost. Ways are
// generated as they pay (Gilmore and Gomory, Operations Research 9, 1961): the longest path at the program's
// duals is the way that pays most.
type program struct {
	l      *low
	lp     *mix
	groups []group
	ways   []groupWay
	of     []int     // by way of the mix: index in ways, -1 for not to cut
	must   []int     // by group: the set of its boards that are cut in any case, -1 where the group is one board
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
	sets, total := len(p.groups), 0.0
	p.must = make([]int, len(p.groups))
	for g := range p.groups {
		if p.must[g] = -1; len(p.groups[g].boards) > 1 {
			p.must[g] = sets
			sets++
		}
	}
	for _, b := range l.boards {
		total += b.cost
	}
	p.lp = newMix(p.needs(), sets, 10*math.Max(total, costEps), budget.Ask)
	for range sets {
		p.of = append(p.of, -1)
	}
	p.aim(p.all())
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

// aim sets the right sides: needs in units of themselves, so that all rows are of one size. Of a group of several boards
// those that are cut in any case are a set of their own.
func (p *program) aim(s scope) {
	for t := range p.lp.right {
		p.lp.right[t] = 1
	}
	for g, must := range p.must {
		p.lp.room[g] = float64(s.hi[g])
		if must < 0 {
			p.lp.off[p.lp.of[g][0]] = s.lo[g] > 0
			continue
		}
		p.lp.room[g] -= float64(s.lo[g])
		p.lp.room[must] = float64(s.lo[g])
		p.lp.off[p.lp.of[must][0]] = true
	}
	p.lp.reset()
}

// fee is what a way of a group may cost more than its yields are worth at the program's duals.
func (p *program) fee(g int) float64 {
	v := math.Inf(-1)
	if p.lp.room[g] > 0 {
		v = p.lp.fee[g]
	}
	if m := p.must[g]; m >= 0 && p.lp.room[m] > 0 {
		v = math.Max(v, p.lp.fee[m])
	}
	return v
}

func (p *program) add(g int, w way) {
	a := make([]float64, p.needs())
	for t, y := range w.yields {
		a[t] = y / p.l.kinds[t].need
	}
	for i, v := range w.rounds {
		a[len(p.l.kinds)+i] = v / p.l.rounds[i].count()
	}
	for _, set := range []int{g, p.must[g]} {
		if set >= 0 {
			p.lp.add(set, w.cost, a)
			p.of = append(p.of, len(p.ways))
		}
	}
	p.ways = append(p.ways, groupWay{g, w})
}

// use calls visit for every way that the present solution uses.
func (p *program) use(visit func(w groupWay, times float64)) {
	p.lp.use(func(j int, times float64) { visit(p.ways[p.of[j]], times) })
}

// lagrange is Lagrange's bound in a scope at the prices. Where it is to generate, it adds the ways that cost less than the
// program's duals say, and is broken off with the budget, for no bound at all; added is how many.
func (p *program) lagrange(s scope, generate bool) (bound float64, added int) {
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
		if !p.budget.Spend(1+len(b.pos)*len(p.l.lengths)/16) && generate {
			return math.Inf(-1), added
		}
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
		if generate && r < p.fee(g)-1e-7*(1+b.cost) {
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
	for j, at := range p.of {
		if at >= 0 {
			w := &p.ways[at]
			p.lp.off[j] = s.rules != nil && !w.crude && !s.rules[w.group].allows(w.way)
		}
	}
	p.aim(s)
	bound = math.Inf(-1)
	for round := 0; round == 0 || !p.budget.Over(); round++ {
		before := p.lp.pivots
		p.lp.solve(5000)
		p.budget.Spend(1 + (p.lp.pivots-before)*(p.needs()*p.needs()+4*len(p.ways))/400)
		dual := p.lp.price
		for t, kd := range p.l.kinds {
			p.price[t] = math.Max(0, dual[t]) / kd.need
		}
		for i, r := range p.l.rounds {
			at := len(p.l.kinds) + i
			p.price[at] = math.Max(0, dual[at]) / r.count()
		}
		v, added := p.lagrange(s, true)
		if v > bound || round == 0 {
			bound = v
			prices = append(prices[:0], p.price...)
		}
		if added == 0 || bound >= enough || p.lp.value()-bound <= lagrangeGap*math.Abs(bound) {
			break
		}
	}
	return bound, prices
}

// counts are how many boards of each group the present solution cuts.
func (p *program) counts() []float64 {
	z := make([]float64, len(p.groups))
	p.use(func(w groupWay, times float64) { z[w.group] += times })
	return z
}
