package panel

import "math"

// renew takes a few boards out of the best layout and looks for the best way to do without them or with others,
// again and again (a large neighbourhood; Shaw, CP 1998).
func (s *search) renew(l *low, spend int) {
	price := s.pricesOf(l)
	ways := s.priced(l, price)
	until := s.budget.Left() - spend
	for s.budget.Left() > until && !s.budget.Over() && !s.done() {
		s.renewSome(l, price, ways, s.some())
	}
}

// priced is the ways of a board's pool as the bound sees them.
type priced struct {
	ways  []way
	over  []float64 // what each costs above what it is worth at the prices
	least float64   // the least of over, 0 where all cost more than they are worth
}

// priced are the ways of all pools at the given prices by kind of the bound.
func (s *search) priced(l *low, price []float64) []priced {
	out := make([]priced, len(s.pools))
	for k, list := range s.pools {
		p := &out[k]
		for _, o := range list[1:min(len(list), renewWays)] {
			w := way{cut: o.segments, cost: o.cost, yields: make([]float64, len(l.kinds))}
			over := o.cost
			for _, g := range o.segments {
				t := l.lowIndex(s.m.kinds[g.kind])
				w.yields[t] += float64(g.net)
				over -= price[t] * float64(g.net)
			}
			p.ways, p.over, p.least = append(p.ways, w), append(p.over, over), math.Min(p.least, over)
		}
	}
	return out
}

// pricesOf are the search's prices by kind of the bound.
func (s *search) pricesOf(l *low) []float64 {
	out := make([]float64, len(l.kinds))
	for t, kd := range s.m.kinds {
		if i := l.lowIndex(kd); i >= 0 {
			out[i] = s.price[t]
		}
	}
	return out
}

// renewWays bounds the ways of one board, and renewSteps the search, when boards are renewed.
const (
	renewWays  = 120
	renewSteps = 6000
)

// renewSome renews some boards with ways of the pools.
func (s *search) renewSome(l *low, price []float64, ways []priced, some []bool) {
	st := s.opened(l, some)
	room := s.best.cost - st.spent
	for t, d := range st.need {
		room -= price[t] * math.Max(0, d)
	}
	for k := range ways {
		if some[k] {
			room -= ways[k].least
		}
	}
	s.budget.Spend(4 + len(s.m.boards)/8)
	if room <= 0 {
		return
	}
	for k := range ways {
		if some[k] {
			if list := ways[k].within(room); len(list) > 0 {
				st.boards = append(st.boards, pooled{board: k, ways: list})
			}
		}
	}
	st.open()
	st.sweep(renewSteps)
}

// within are the ways that are worse than the best by no more than room. For prices π of needs D, what boards cost
// together is Σ π·D and what each of their ways costs above its worth, at least: no other way can be part of a layout
// that costs less.
func (p *priced) within(room float64) (out []way) {
	for i, w := range p.ways {
		if p.over[i]-p.least <= room {
			out = append(out, w)
		}
	}
	return out
}

// wanted is the net width that is wanted of each kind of the bound, with a share of the allowance for divided
// strips.
func (s *search) wanted(l *low, share float64) []float64 {
	out := l.needs()
	for _, kd := range s.m.kinds {
		if i := l.lowIndex(kd); i >= 0 {
			out[i] += share * float64(len(kd.panels)-1) * float64(s.m.p.Kerf+s.m.p.Joint())
		}
	}
	return out
}

// some picks boards to renew: some that are cut, and some that are not.
func (s *search) some() []bool {
	out := make([]bool, len(s.m.boards))
	var used, free []int
	for k, segs := range s.best.segments {
		if len(segs) > 0 {
			used = append(used, k)
		} else {
			free = append(free, k)
		}
	}
	for range 2 + s.dice.N(4) {
		if len(used) > 0 {
			out[used[s.dice.N(len(used))]] = true
		}
	}
	for range 3 + s.dice.N(5) {
		if len(free) > 0 {
			out[free[s.dice.N(len(free))]] = true
		}
	}
	return out
}

func sign(v float64) int {
	switch {
	case v < 0:
		return -1
	case v > 0:
		return 1
	}
	return 0
}
