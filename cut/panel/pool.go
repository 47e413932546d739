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
}

// poolRounds is how many sets of prices ways to cut are collected for, and poolLimit how many ways are kept
// for each board.
const (
	poolRounds = 300
	poolLimit  = 300
	poolShare  = 0.25 // of the budget
)

// roundsEach is how many sets of prices the budget has room for: a few at least.
func (s *search) roundsEach() int {
	all := 1
	for _, b := range s.m.boards {
		all += len(b.pos)/8 + 1
	}
	return max(8, min(poolRounds, int(poolShare*float64(s.budget.Left()))/all))
}

// pool collects, for each board, ways to cut it that are best at some prices near the bound's, and the
// beginnings of those with the rest kept as a tail. The first way of each board is not to cut it.
func (s *search) pool() [][]option {
	out := make([][]option, len(s.m.boards))
	rounds := s.roundsEach()
	for k := range out {
		if first := s.m.twin[k]; first < k {
			out[k] = s.ownSegments(out[first], k)
			continue
		}
		out[k] = []option{{yields: make([]float64, len(s.m.kinds))}}
		for round := 0; round < rounds && len(out[k]) < 2*poolLimit && !s.budget.Over(); round++ {
			s.budget.Spend(len(s.m.boards[k].pos)/8 + 1)
			price := s.mood()
			if round%2 == 1 {
				price = s.wildMood()
			}
			path := s.find.find(k, price, float64(round%3), s.allowed(k))
			for n := range path.segments {
				out[k] = s.addOption(out[k], k, path.segments[:n+1])
			}
		}
		out[k] = undominated(out[k])
	}
	return out
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

// ownSegments turns the ways to cut a board into those of its twin k.
func (s *search) ownSegments(list []option, k int) []option {
	out := make([]option, len(list))
	for i, o := range list {
		o.segments = slices.Clone(o.segments)
		for j := range o.segments {
			o.segments[j].board = k
		}
		out[i] = o
	}
	return out
}

// undominated drops the ways to cut of which another costs no more and yields no less of any kind, and
// keeps at most poolLimit of the others.
func undominated(list []option) []option {
	out := list[:1:1] // not to cut the board
	for i := 1; i < len(list); i++ {
		worse := false
		for j := 1; j < len(list) && !worse; j++ {
			worse = i != j && list[j].beats(list[i]) && (j < i || !list[i].beats(list[j]))
		}
		if !worse && len(out) <= poolLimit {
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
