package panel

import (
	"math"
	"slices"
)

// option is one way to cut a board.
type option struct {
	segments []segment
	yields   []float64 // net width by kind, nanometres
	cost     float64
	over     float64 // cost above what the yields are worth
}

// poolLimit is how many ways are kept for each board.
const poolLimit = 100

// collect adds ways to cut to the pools: those of the program, and for each board ways that are best at some
// prices near the bound's, with their beginnings and the rest kept as a tail. The first way of each board is
// not to cut it.
func (s *search) collect(p *program, share int) {
	if s.pools == nil {
		s.pools = make([][]option, len(s.m.boards))
		for k := range s.pools {
			s.pools[k] = []option{{yields: make([]float64, len(s.m.kinds))}}
		}
	}
	for ; s.taken < len(p.ways); s.taken++ {
		w := p.ways[s.taken]
		for _, k := range p.groups[w.group].boards {
			if segs, ok := s.realised(p.l, k, w.way); ok {
				s.pools[k] = s.addOption(s.pools[k], k, segs)
			}
		}
	}
	s.wanderAll(p.l, s.lowPrice)
	until := s.budget.Left() - share/16
	for round := 0; s.budget.Left() > until && !s.budget.Over(); round++ {
		s.collectRound(round)
	}
	for k := range s.pools {
		s.budget.Spend(len(s.pools[k]) * len(s.pools[k]) / 512)
		s.pools[k] = undominated(s.pools[k])
		s.sortOptions(s.pools[k][1:])
		s.pools[k] = s.pools[k][:min(len(s.pools[k]), s.poolLimit())]
	}
}

// poolLimit is how many ways are kept for each board: more from round to round.
func (s *search) poolLimit() int {
	return min(poolLimit+s.rounds*poolLimit/2, 4*poolLimit)
}

// sortOptions puts the ways that cost least above what they are worth first.
func (s *search) sortOptions(list []option) {
	for i := range list {
		list[i].over = list[i].cost
		for t, y := range list[i].yields {
			list[i].over -= s.price[t] * y
		}
	}
	slices.SortStableFunc(list, func(a, b option) int { return sign(a.over - b.over) })
}

// collectRound adds a way, and its beginnings, for each board at some prices.
func (s *search) collectRound(round int) {
	price := s.mood()
	if round%2 == 1 {
		price = s.wildMood()
	}
	for k := range s.pools {
		s.budget.Spend(len(s.m.boards[k].pos)/8 + 1)
		if s.m.twin[k] < k || len(s.pools[k]) >= 4*poolLimit {
			continue
		}
		path := s.find.find(k, price, float64(round%3), s.allowed(k))
		for n := range path.segments {
			s.pools[k] = s.addOption(s.pools[k], k, path.segments[:n+1])
		}
	}
}

// wildMood returns prices far off the best ones: each from a quarter to four times, some nothing.
func (s *search) wildMood() []float64 {
	out := slices.Clone(s.price)
	for t := range out {
		out[t] *= math.Exp2(4*s.dice.Share() - 2)
		if s.dice.N(6) == 0 {
			out[t] = 0
		}
	}
	return out
}

// addOption adds a way to cut board k unless it is known.
func (s *search) addOption(list []option, k int, segs []segment) []option {
	o := s.newOption(k, segs)
	if slices.ContainsFunc(list, o.same) {
		return list
	}
	return append(list, o)
}

func (s *search) newOption(k int, segs []segment) option {
	o := option{segments: slices.Clone(segs), yields: make([]float64, len(s.m.kinds)), cost: s.m.cost(k, segs)}
	for _, g := range segs {
		o.yields[g.kind] += float64(g.net)
	}
	return o
}

// same reports whether p costs and yields the same.
func (o option) same(p option) bool { return p.cost == o.cost && slices.Equal(p.yields, o.yields) }

// undominated drops the ways to cut of which another costs no more and yields no less of any kind.
func undominated(list []option) []option {
	out := list[:1:1] // not to cut the board
	for i := 1; i < len(list); i++ {
		worse := false
		for j := 1; j < len(list) && !worse; j++ {
			worse = i != j && list[j].beats(list[i]) && (j < i || !list[i].beats(list[j]))
		}
		if !worse {
			out = append(out, list[i])
		}
	}
	return out
}

// beats reports whether o costs no more than p and yields no less of any kind.
func (o option) beats(p option) bool {
	if o.cost > p.cost {
		return false
	}
	for t, y := range o.yields {
		if y < p.yields[t] {
			return false
		}
	}
	return true
}
