package panel

import (
	"math"
	"slices"
)

// learnPrices takes the bound's prices for choosing boards.
func (s *search) learnPrices(b *branching) {
	if len(b.open) == 0 || s.budget.Over() {
		return
	}
	price := slices.Concat(b.plain, make([]float64, len(b.p.l.rounds)))
	if s.rounds%3 == 2 {
		price = b.open[0].prices
	}
	s.lowPrice = price
	if s.best.short > 0 { // what can't be had has any price
		return
	}
	scale := s.scale()
	for t, kd := range s.m.kinds {
		if i := b.p.l.lowIndex(kd); i >= 0 {
			s.price[t] = math.Max(b.p.l.perUnit(i, price), 0.05*scale*s.price[t])
		}
	}
}

// perUnit is the price of a unit of net width with what it counts in the roundings.
func (l *low) perUnit(t int, price []float64) float64 {
	v := price[t]
	for c, r := range l.rounds {
		if r.kind == t {
			v += price[len(l.kinds)+c] * r.count() / r.need
		}
	}
	return v
}

// scale converts bare prices into money: such that all that is wanted is worth the bound.
func (s *search) scale() float64 {
	sum := 0.0
	for t, kd := range s.m.kinds {
		sum += s.price[t] * float64(kd.need)
	}
	return math.Min(s.bound, s.best.cost) / math.Max(sum, costEps)
}

// exchange takes boards out and chooses anew, until cost and bound meet or so much of the budget is spent. A layout
// that is a little dearer than the best is accepted on the way.
func (s *search) exchange(spend int) {
	cur := s.best
	until := s.budget.Left() - spend
	for round := 0; !s.budget.Over() && s.budget.Left() > until && !s.done(); round++ {
		segs := s.takeOut(cur, 1+s.dice.N(3))
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

// takeOut returns the segments of l without those of so many boards, chosen at random.
func (s *search) takeOut(l *layout, boards int) [][]segment {
	segs := make([][]segment, len(l.segments))
	var used []int
	for k, g := range l.segments {
		segs[k] = slices.Clone(g)
		if len(g) > 0 {
			used = append(used, k)
		}
	}
	for range boards {
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
