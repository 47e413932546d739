package panel

import (
	"math"
	"slices"
)

// renew takes a few boards out of the best layout and looks for the best way to do without them or with others,
// again and again (a large neighbourhood; Shaw, CP 1998).
func (s *search) renew(l *low, spend int) {
	ways := s.lowWays(l)
	until := s.budget.Left() - spend
	for s.budget.Left() > until && !s.budget.Over() && !s.done() {
		s.renewSome(l, ways, s.some())
	}
}

// lowWays are the ways of the pools as the bound sees them.
func (s *search) lowWays(l *low) [][]way {
	out := make([][]way, len(s.pools))
	for k, list := range s.pools {
		for _, o := range list[1:min(len(list), renewWays)] {
			w := way{cut: o.segments, cost: o.cost, yields: make([]float64, len(l.kinds))}
			for _, g := range o.segments {
				w.yields[l.lowIndex(s.m.kinds[g.kind])] += float64(g.net)
			}
			out[k] = append(out[k], w)
		}
	}
	return out
}

// renewWays bounds the ways of one board, and renewSteps the search, when boards are renewed.
const (
	renewWays  = 60
	renewSteps = 6000
)

// renewSome renews some boards.
func (s *search) renewSome(l *low, ways [][]way, some []bool) {
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
	for k := range ways {
		if some[k] && len(ways[k]) > 0 {
			st.boards = append(st.boards, pooled{board: k, ways: slices.Clone(ways[k])})
		}
	}
	st.open()
	st.sweep(renewSteps)
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
