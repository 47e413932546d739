package cover

import (
	"math"
	"slices"
)

// Offer is one way to use a piece of stock that is there once: what it yields for what it costs.
type Offer struct{ Hold, Price float64 }

// chooseStates bounds the beginnings that are kept of all choices. Where there are more, near ones are merged to the
// greater hold and the cheaper price, so that the result is still a bound.
const chooseStates = 4000

// chooseRoom is how much more than Lagrange's bound, as a share of it, a choice is first looked for; where there is none,
// it is looked for in four times as much.
const chooseRoom = 0.002

// chooseLook is the number of steps after which they are spent.
const chooseLook = 10_000

// Choose returns a lower bound of the least cost of offers, at most one of each list, that together hold need. It is +Inf
// when all together hold less.
func Choose(offers [][]Offer, need float64) float64 {
	return Cheapest(offers, need, math.Inf(1), func(int) bool { return true }).Cost
}

// Choice is the cheapest one of some offers.
type Choice struct {
	Cost  float64 // a lower bound of it
	Picks []int   // by list the index of its offer, -1 for none; nil where nothing is cheaper than what was asked
}

// Cheapest returns the cheapest choice of offers, at most one of each list, that together hold need, as far as it is
// cheaper than enough; where nothing is, that is its cost. It is +Inf when all together hold less. Work is told to
// spend step by step; where that says that it is too much, a bound is left that is found at once.
//
// The lists are gone through one after another (dynamic programming). Of all beginnings those are kept of which no
// other holds as much for less, and that may still become cheaper than enough: with a price λ of a unit of hold,
// chosen so that Σ min(0, price − λ·hold) + λ·need is greatest, a choice costs that much, and besides for each list
// what its offer is worse than the best at λ, and λ for each unit held too much (Lagrange's bound).
func Cheapest(offers [][]Offer, need, enough float64, spend func(steps int) bool) Choice {
	out := Choice{Picks: make([]int, len(offers))}
	for i := range out.Picks {
		out.Picks[i] = -1
	}
	if need <= 0 {
		return out
	}
	var lists []offered
	all := 0.0
	for i, o := range offers {
		if list := worthwhile(o, need); len(list) > 0 {
			lists = append(lists, offered{i, list})
			all += list[len(list)-1].Hold
		}
	}
	if all < need*(1-1e-12) {
		return Choice{Cost: math.Inf(1)}
	}
	c := newChoosing(lists, need)
	c.best, c.end = math.Min(enough, c.base), -1
	room := c.base * chooseRoom
	if room <= 0 {
		room = math.Inf(1)
	}
	for ; c.end < 0 && c.best < enough; room *= 4 {
		c.best = math.Min(enough, c.base+room)
		if !c.run(lists, spend) {
			c.best, c.end = math.Min(enough, c.known), -1
			break
		}
		c.known = c.best
	}
	out.Cost = c.best
	if c.end < 0 {
		out.Picks = nil
	}
	for i := c.end; i >= 0; i = c.trail[i].before {
		out.Picks[c.trail[i].list] = c.trail[i].offer
	}
	return out
}

// offered is a list of offers with its index.
type offered struct {
	list   int
	offers []ranked
}

// ranked is an offer with its index.
type ranked struct {
	Offer
	at int
}

// worthwhile returns the offers of which no cheaper one holds as much, the cheapest first; no offer holds more than need.
func worthwhile(list []Offer, need float64) (out []ranked) {
	all := make([]ranked, 0, len(list))
	for i, o := range list {
		if o.Hold > 0 {
			all = append(all, ranked{Offer{math.Min(o.Hold, need), o.Price}, i})
		}
	}
	slices.SortFunc(all, func(a, b ranked) int {
		if c := cmpFloat(a.Price, b.Price); c != 0 {
			return c
		}
		return cmpFloat(b.Hold, a.Hold)
	})
	for _, o := range all {
		if n := len(out); n == 0 || o.Hold > out[n-1].Hold {
			out = append(out, o)
		}
	}
	return out
}

// choosing is the search for the cheapest choice.
type choosing struct {
	need, all float64 // all is what the lists still to come hold at most
	rate      float64 // λ
	base      float64 // Lagrange's bound at it
	steps     int
	known     float64 // no choice costs less
	best      float64 // the least cost found
	end       int     // its last step, -1 for none
	trail     []trailed
	now, next []beginning
	part, was []beginning // scratch
}

// trailed is one step of a choice, and the step before it.
type trailed struct{ before, list, offer int }

// beginning is a choice from the lists so far; over is how much worse it is than the best at λ.
type beginning struct {
	hold, price, over float64
	trail             int // its last step, -1 for none
}

func newChoosing(lists []offered, need float64) *choosing {
	c := &choosing{need: need}
	low, high := 0.0, 0.0
	for _, list := range lists {
		for _, o := range list.offers {
			high = math.Max(high, o.Price/o.Hold)
		}
		c.steps += len(list.offers)
	}
	c.steps *= 60
	for range 60 {
		c.rate = (low + high) / 2
		held := 0.0
		for _, list := range lists {
			_, hold := c.least(list.offers)
			held += hold
		}
		if held < need {
			low = c.rate
		} else {
			high = c.rate
		}
	}
	c.rate = high
	c.base = c.rate * need
	for _, list := range lists {
		v, _ := c.least(list.offers)
		c.base += v
	}
	c.known = c.base
	return c
}

// least is what the best offer of a list costs at λ, nothing where none is worth its price, and what it holds.
func (c *choosing) least(list []ranked) (least, hold float64) {
	for _, o := range list {
		if v := o.Price - c.rate*o.Hold; v < least {
			least, hold = v, o.Hold
		}
	}
	return least, hold
}

// run goes through the lists; it reports false where the work is too much.
func (c *choosing) run(lists []offered, spend func(steps int) bool) bool {
	c.trail, c.all = c.trail[:0], 0
	for _, list := range lists {
		c.all += list.offers[len(list.offers)-1].Hold
	}
	c.now = []beginning{{trail: -1}}
	for _, list := range lists {
		c.all -= list.offers[len(list.offers)-1].Hold
		least, _ := c.least(list.offers)
		c.next = c.next[:0]
		c.extend(list.list, ranked{at: -1}, least)
		for _, o := range list.offers {
			c.extend(list.list, o, least)
			if c.steps >= chooseLook {
				if !spend(c.steps) {
					return false
				}
				c.steps = 0
			}
		}
		c.now, c.next = c.next, c.now
		c.thin()
	}
	spend(c.steps)
	return true
}

// extend adds an offer, none where its index is -1, to the beginnings; least is what the best of its list costs at λ.
func (c *choosing) extend(list int, o ranked, least float64) {
	over := o.Price - c.rate*o.Hold - least
	enough := c.need * (1 - 1e-12)
	c.part = c.part[:0]
	for _, b := range c.now {
		n := beginning{b.hold + o.Hold, b.price + o.Price, b.over + over, b.trail}
		if c.base+n.over >= c.best || n.hold+c.all < enough {
			continue
		}
		if o.at >= 0 {
			n.trail = len(c.trail)
			c.trail = append(c.trail, trailed{b.trail, list, o.at})
		}
		if n.hold < enough {
			c.part = append(c.part, n)
		} else if n.price < c.best {
			c.best, c.end = n.price, n.trail
		}
	}
	c.steps += len(c.now)
	c.merge()
}

// merge merges the part into the next beginnings. Both have the fullest first, and each cheaper than the one before.
func (c *choosing) merge() {
	if len(c.next) == 0 {
		c.next = append(c.next, c.part...)
		return
	}
	if len(c.part) == 0 {
		return
	}
	c.was = append(c.was[:0], c.next...)
	a := c.was
	c.next = c.next[:0]
	c.steps += len(a)
	i, j := 0, 0
	least := math.Inf(1)
	for i < len(a) || j < len(c.part) {
		var b beginning
		if j == len(c.part) || i < len(a) && a[i].hold >= c.part[j].hold {
			b = a[i]
			i++
		} else {
			b = c.part[j]
			j++
		}
		if b.price < least {
			least = b.price
			c.next = append(c.next, b)
		}
	}
}

// thin merges neighbours where there are too many beginnings.
func (c *choosing) thin() {
	n := len(c.now)
	if n <= chooseStates {
		return
	}
	out := c.now[:0]
	for i := range chooseStates {
		from, to := i*n/chooseStates, (i+1)*n/chooseStates
		b := c.now[from]
		b.price, b.over = c.now[to-1].price, math.Inf(1)
		for _, o := range c.now[from:to] {
			b.over = math.Min(b.over, o.over)
		}
		out = append(out, b)
	}
	c.now = out
}
