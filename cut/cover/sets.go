package cover

import "slices"

// Set is a choice of stock: how many pieces of each kind, in the order given to [Sets].
type Set struct {
	Counts []int
	Price  float64
}

// Sets lists the choices of stock that hold need and cost less than below, the cheapest first; of two
// choices one of which contains the other only the smaller. At most `most` are collected, so with more
// than that the list is not complete.
func Sets(stocks []Stock, need int64, below float64, most int) []Set {
	c := setSearch{below: below, most: most, counts: make([]int, len(stocks)), nodes: 50 * most}
	for i, s := range stocks {
		if s.Hold > 0 && s.Count != 0 {
			c.order = append(c.order, i)
		}
	}
	slices.SortStableFunc(c.order, func(a, b int) int {
		return cmpFloat(stocks[a].Price/float64(stocks[a].Hold), stocks[b].Price/float64(stocks[b].Hold))
	})
	for _, i := range c.order {
		c.cover.stocks = append(c.cover.stocks, stocks[i])
	}
	if need > 0 {
		c.search(0, need, 0)
	}
	slices.SortStableFunc(c.found, func(a, b Set) int { return cmpFloat(a.Price, b.Price) })
	return c.found
}

type setSearch struct {
	cover  coverSearch
	order  []int // index in the caller's list
	counts []int
	below  float64
	most   int
	nodes  int
	found  []Set
}

func (c *setSearch) search(i int, need int64, price float64) {
	if c.nodes--; c.nodes < 0 || len(c.found) >= c.most || price >= c.below {
		return
	}
	if need <= 0 {
		c.found = append(c.found, Set{slices.Clone(c.counts), price})
		return
	}
	if i == len(c.order) || price+c.cover.fraction(i, need) >= c.below {
		return
	}
	s := c.cover.stocks[i]
	most := (need + s.Hold - 1) / s.Hold
	if s.Count >= 0 {
		most = min(most, int64(s.Count))
	}
	for n := most; n >= 0 && c.nodes >= 0; n-- {
		c.counts[c.order[i]] = int(n)
		c.search(i+1, need-n*s.Hold, price+float64(n)*s.Price)
	}
	c.counts[c.order[i]] = 0
}
