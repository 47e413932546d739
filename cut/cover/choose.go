package cover

import (
	"math"
	"slices"
)

// Offer is one way to use a piece of stock that is there once: what it yields for what it costs.
type Offer struct{ Hold, Price float64 }

// chooseSteps is the number of steps that the need is divided into. Each piece of stock chosen gains at
// most one step by rounding up, so the bound loses at most that share of it.
const chooseSteps = 8_000

// Choose returns a lower bound of the least cost of offers, at most one of each list, that together hold
// need: every hold is rounded up to a whole step of the need, and the choice is then made exactly, step by
// step (dynamic programming). It is +Inf when all together hold less.
func Choose(offers [][]Offer, need float64) float64 {
	if need <= 0 {
		return 0
	}
	best := make([]float64, chooseSteps+1) // best[r]: least cost with r steps still missing
	for r := range best {
		best[r] = math.Inf(1)
	}
	best[chooseSteps] = 0
	next := make([]float64, len(best))
	for _, list := range offers {
		copy(next, best)
		for _, o := range worthwhile(list, need) {
			relax(best, next, o.steps, o.price)
		}
		best, next = next, best
	}
	return best[0]
}

func relax(best, next []float64, steps int, price float64) {
	for r, c := range best {
		if to := max(0, r-steps); c+price < next[to] {
			next[to] = c + price
		}
	}
}

type stepOffer struct {
	steps int
	price float64
}

// maxOffers bounds the offers of one piece of stock; nearby ones are merged, to the cheaper price and the
// greater hold.
const maxOffers = 12

// worthwhile returns the offers of which no cheaper one holds as much, in steps.
func worthwhile(list []Offer, need float64) (out []stepOffer) {
	all := make([]stepOffer, 0, len(list))
	for _, o := range list {
		n := math.Ceil(o.Hold / need * chooseSteps * (1 + 1e-12))
		all = append(all, stepOffer{int(min(n, chooseSteps)), o.Price})
	}
	slices.SortFunc(all, func(a, b stepOffer) int {
		if c := cmpFloat(a.price, b.price); c != 0 {
			return c
		}
		return b.steps - a.steps
	})
	for _, o := range all {
		if n := len(out); o.steps > 0 && (n == 0 || o.steps > out[n-1].steps) {
			out = append(out, o)
		}
	}
	if len(out) <= maxOffers {
		return out
	}
	thin := make([]stepOffer, 0, maxOffers)
	for i := range maxOffers {
		from, to := i*len(out)/maxOffers, (i+1)*len(out)/maxOffers
		thin = append(thin, stepOffer{out[to-1].steps, out[from].price})
	}
	return thin
}
