// Package cover computes lower bounds on the cost of stock, for every kind of cutting problem.
//
// The one argument behind all of them: give each part a weight, whatever it is. If a piece of stock j can
// never hold parts of more weight than H_j, then stock that holds all parts has Σ H_j·x_j ≥ W, the weight
// of all parts, and costs at least the cheapest x with whole numbers that does so ([Least]). Sizes as
// weights give the bound by material; the scales of [Scales] give the stronger bounds for parts that can't
// share a piece of stock. H_j comes from [Most], a knapsack that is rounded up, never down.
package cover

import (
	"math"
	"slices"
)

// Stock is one kind of stock: what a piece can hold at most, what it costs, how many there are.
type Stock struct {
	Hold  int64
	Price float64
	Count int // -1 is any number
}

// nodeLimit bounds the search of Least. Where it ends early the fractional bound stands in.
const nodeLimit = 20_000

// Least returns the least cost of whole pieces of stock that together hold need, or a lower bound of it
// where finding it takes too long. It is +Inf when all stock together holds less.
func Least(stocks []Stock, need int64) float64 {
	if need <= 0 {
		return 0
	}
	free := make([]Stock, 0, len(stocks))
	for _, s := range stocks {
		switch {
		case s.Hold <= 0 || s.Count == 0:
		case s.Price <= 0 && s.Count < 0:
			return 0
		case s.Price <= 0:
			need -= mulCap(s.Hold, s.Count)
		default:
			free = append(free, s)
		}
	}
	if need <= 0 {
		return 0
	}
	slices.SortStableFunc(free, func(a, b Stock) int {
		return cmpFloat(a.Price/float64(a.Hold), b.Price/float64(b.Hold))
	})
	c := coverSearch{stocks: free, nodes: nodeLimit, best: math.Inf(1)}
	root := c.fraction(0, need)
	if math.IsInf(root, 1) {
		return root
	}
	c.search(0, need, 0)
	if c.nodes < 0 {
		return root
	}
	return c.best
}

type coverSearch struct {
	stocks []Stock
	nodes  int
	best   float64
}

// fraction returns the cost of covering need with the stocks from i on when pieces may be divided.
func (c *coverSearch) fraction(i int, need int64) float64 {
	cost := 0.0
	for ; i < len(c.stocks) && need > 0; i++ {
		s := c.stocks[i]
		if s.Count < 0 || mulCap(s.Hold, s.Count) >= need {
			return cost + s.Price*float64(need)/float64(s.Hold)
		}
		need -= mulCap(s.Hold, s.Count)
		cost += s.Price * float64(s.Count)
	}
	if need > 0 {
		return math.Inf(1)
	}
	return cost
}

func (c *coverSearch) search(i int, need int64, cost float64) {
	if need <= 0 {
		c.best = min(c.best, cost)
		return
	}
	if c.nodes--; c.nodes < 0 || i == len(c.stocks) || cost+c.fraction(i, need) >= c.best {
		return
	}
	s := c.stocks[i]
	most := (need + s.Hold - 1) / s.Hold
	if s.Count >= 0 {
		most = min(most, int64(s.Count))
	}
	for n := most; n >= 0 && c.nodes >= 0; n-- {
		c.search(i+1, need-n*s.Hold, cost+float64(n)*s.Price)
		if n < most && cost+float64(n)*s.Price+c.fraction(i+1, need-n*s.Hold) >= c.best {
			return // fewer of the cheapest kind only cost more
		}
	}
}

// mulCap returns hold × count, or a number beyond any need where that would wrap round.
func mulCap(hold int64, count int) int64 {
	if count > 0 && hold > math.MaxInt64/4/int64(count) {
		return math.MaxInt64 / 4
	}
	return hold * int64(count)
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
