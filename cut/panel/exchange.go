package panel

import (
	"math"
	"slices"
)

// boundSteps is how often the prices of the bound are improved.
const boundSteps = 80

// improvePrices improves the bound, and takes its prices for choosing boards.
func (s *search) improvePrices(l *low) {
	target := s.best.cost
	if s.best.short > 0 {
		target *= 1.5
	}
	l.improve(math.Max(target, costEps), boundSteps, s.budget)
	scale := s.scale(l)
	for t, kd := range s.m.kinds {
		if i := l.lowIndex(kd); i >= 0 {
			s.price[t] = math.Max(l.price[i], 0.05*scale*s.price[t])
		}
	}
	s.bound = l.value
}

// scale converts bare prices into money: such that all that is wanted is worth the bound.
func (s *search) scale(l *low) float64 {
	sum := 0.0
	for t, kd := range s.m.kinds {
		sum += s.price[t] * float64(kd.need)
	}
	return math.Min(l.value, s.best.cost) / math.Max(sum, costEps)
}

// exchange takes boards out and chooses anew, until cost and bound meet or the budget is spent. A layout
// that is a little dearer than the best is accepted on the way.
func (s *search) exchange() {
	cur := s.best
	for round := 0; !s.budget.Over() && (s.best.short > 0 || s.best.cost > s.bound+costEps); round++ {
		segs := s.takeOut(cur)
		l := s.grow(segs, s.mood())
		s.budget.Spend(1 + len(s.m.boards))
		s.offer(l)
		if l.short < cur.short || l.short == cur.short && l.cost <= math.Max(cur.cost, s.best.cost*1.004)+costEps {
			cur = l
		}
		if round%60 == 59 {
			cur = s.best
		}
	}
}

// takeOut returns the segments of l without those of one to three boards.
func (s *search) takeOut(l *layout) [][]segment {
	segs := make([][]segment, len(l.segments))
	var used []int
	for k, g := range l.segments {
		segs[k] = slices.Clone(g)
		if len(g) > 0 {
			used = append(used, k)
		}
	}
	for range 1 + s.dice.N(3) {
		if len(used) == 0 {
			break
		}
		i := s.dice.N(len(used))
		segs[used[i]] = nil
		used = slices.Delete(used, i, i+1)
	}
	return segs
}

// mood returns prices for one choice, somewhat off the best ones.
func (s *search) mood() []float64 {
	share := 0.5 * s.dice.Share()
	out := slices.Clone(s.price)
	for t := range out {
		out[t] *= 1 + share*(2*s.dice.Share()-1)
	}
	return out
}
