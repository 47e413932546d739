package panel

import (
	"rodwright/cut"
)

// wander returns a way to cut board b at random that is at most `most` worse than the best at the prices that
// completions were computed for: at every place it takes any step from which that can still be kept.
func (l *low) wander(b lowBoard, most float64, dice *cut.Dice) way {
	out := l.newWay(b.cost)
	least := l.best[0] - most
	worth := 0.0
	steps := l.steps[:0]
	for i := 0; i < len(b.pos); {
		steps = steps[:0]
		if worth+l.best[i+1] >= least {
			steps = append(steps, skip)
		}
		if c := b.credit[i]; c > 0 && worth+c >= least {
			steps = append(steps, tail)
		}
		for a := b.from[i]; a < b.from[i+1]; a++ {
			if v := l.val[a]; v > 0 && worth+v+l.best[b.cuts[a].to] >= least {
				steps = append(steps, a)
			}
		}
		if len(steps) == 0 { // rounding
			break
		}
		a := steps[dice.N(len(steps))]
		if a == tail {
			out.cost -= b.credit[i]
			break
		}
		if a == skip {
			i++
			continue
		}
		worth += l.val[a]
		i = l.extend(&out, b, a)
	}
	l.steps = steps
	return out
}

// wanderings is how many ways of a board are looked for at random at once, and wanderOver how much worse than the
// best the worst of them may be, as a share of what a board costs. Of many boards there are fewer of each.
const (
	wanderings      = 150
	leastWanderings = 40
	allWanderings   = 3000
	wanderOver      = 0.25
)

// wanderAll adds ways at random to the pool of each board.
func (s *search) wanderAll(l *low, price []float64) {
	if len(price) != len(l.kinds)+len(l.rounds) {
		return
	}
	most := wanderOver * s.meanPrice()
	times := min(wanderings, max(leastWanderings, allWanderings/len(l.boards)))
	for k, b := range l.boards {
		if b.pos == nil {
			continue
		}
		l.completions(b, price)
		s.budget.Spend(len(b.pos)*len(l.lengths)/32 + times)
		if s.budget.Over() {
			return
		}
		for range times {
			u := s.dice.Share()
			w := l.wander(b, u*u*u*most, s.dice)
			if len(w.segments) == 0 {
				continue
			}
			if segs, ok := s.realised(l, k, w); ok {
				s.pools[k] = s.addOption(s.pools[k], k, segs)
			}
		}
	}
}

// meanPrice is what a board of the best layout costs.
func (s *search) meanPrice() float64 {
	n := 0
	for _, g := range s.best.segments {
		if len(g) > 0 {
			n++
		}
	}
	return s.best.cost / float64(max(n, 1))
}
