package panel

import (
	"math"
	"slices"
)

// opened is the best layout without some boards, as what is left to settle.
func (s *search) opened(l *low, some []bool) *settling {
	st := &settling{s: s, l: l, hole: math.Inf(1), fixed: make([][]segment, len(s.m.boards))}
	st.need = s.wanted(l, 0.5*float64(s.dice.N(3)))
	for k, segs := range s.best.segments {
		if len(segs) > 0 && !some[k] {
			st.fixed[k] = segs
			st.spent += s.m.cost(k, segs)
			for _, g := range segs {
				st.need[l.lowIndex(s.m.kinds[g.kind])] -= float64(g.net)
			}
		}
	}
	return st
}

// renewFully takes a few boards out of the best layout, and looks for the best way to cut them, or others instead, among
// all ways that a better layout could use.
func (s *search) renewFully(p *program, spend int) {
	until := s.budget.Left() - spend
	for s.budget.Left() > until && !s.budget.Over() && !s.done() {
		s.budget.Spend(8)
		some := s.some()
		st := s.opened(p.l, some)
		st.p = p
		d := &dive{s: s, p: p, scope: p.only(some), left: st.need}
		d.solve()
		if st.gatherLeft(d.scope) {
			st.open()
			st.sweep(renewSteps)
		}
	}
}

// only is the scope of some boards.
func (p *program) only(some []bool) scope {
	s := p.all()
	for g := range p.groups {
		s.hi[g] = 0
		for _, k := range p.groups[g].boards {
			if some[k] {
				s.hi[g]++
			}
		}
	}
	return s
}

// gatherLeft lists the ways of the boards that are open which a better layout could use, at the prices of what is left.
func (st *settling) gatherLeft(sc scope) bool {
	p := st.p
	room := st.enough() - st.spent
	for t, w := range st.need {
		room -= p.price[t] * math.Max(0, w)
	}
	best := make([]float64, len(p.groups)) // what a board costs at least above its worth
	for g := range p.groups {
		if sc.hi[g] > 0 {
			best[g] = p.groups[g].cost - p.path(g, sc).value
			room -= float64(sc.hi[g]) * math.Min(0, best[g])
		}
	}
	if room <= 0 {
		return false
	}
	price := slices.Clone(p.price)
	for g := range p.groups {
		slack := room - math.Max(0, best[g])
		if sc.hi[g] == 0 || slack < 0 {
			continue
		}
		ways, ok := st.listed(g, price, p.groups[g].cost-best[g]-slack, settleWays, rule{})
		if !ok {
			return false
		}
		for _, k := range p.groups[g].boards[:sc.hi[g]] {
			st.boards = append(st.boards, pooled{board: k, ways: slices.Clone(ways)})
		}
	}
	return true
}
