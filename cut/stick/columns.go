package stick

import (
	"math"
	"slices"

	"rodwright/cut/master"
)

// columns is the linear program over ways to cut a stick: each is used as often as it likes, fractions too, at
// the least cost. Ways are generated as they pay (Gilmore and Gomory, Operations Research 9, 1961).
type columns struct {
	s      *search
	lp     *master.Master
	way    []load         // of each column
	known  map[string]int // pattern → column
	limits []int          // rows of limited stores, -1 for others
	right  []float64
	have   []int // parts that are still wanted
	avail  []int // stock that is still there
	table  *table
	price  float64   // the greatest of a stick
	same   float64   // the price of all sticks, 0 where they differ
	centre []float64 // duals of the best bound of the program so far
	mean   []int64   // weights of the parts by the middle of its duals, once asked for
}

// mostKinds bounds the kinds of parts of the linear program: its inverse is a full matrix.
const mostKinds = 600

func newColumns(s *search) *columns {
	m := s.m
	c := &columns{s: s, known: map[string]int{}, have: m.needs(), avail: m.counts(), table: m.tableFor()}
	sense := make([]master.Sense, len(m.kinds))
	for k := range m.kinds {
		sense[k] = master.Need
		c.right = append(c.right, float64(m.kinds[k].need))
	}
	c.same = m.stores[0].price
	for _, st := range m.stores {
		c.price = math.Max(c.price, st.price)
		if st.price != c.same {
			c.same = 0
		}
		row := -1
		if st.count >= 0 {
			row = len(sense)
			sense = append(sense, master.Limit)
			c.right = append(c.right, float64(st.count))
		}
		c.limits = append(c.limits, row)
	}
	c.lp = master.New(sense, c.right, 20*c.price)
	return c
}

// add takes a way to cut a stick in, once.
func (c *columns) add(l load) int {
	name := pattern(l)
	if j, ok := c.known[name]; ok {
		return j
	}
	col := master.Column{Cost: c.s.m.stores[l.store].price}
	for i, k := range l.kinds {
		if n := len(col.Entries); i > 0 && l.kinds[i-1] == k {
			col.Entries[n-1].Value++
			continue
		}
		col.Entries = append(col.Entries, master.Entry{Row: int(k), Value: 1})
	}
	if row := c.limits[l.store]; row >= 0 {
		col.Entries = append(col.Entries, master.Entry{Row: row, Value: 1})
	}
	j := c.lp.Add(col)
	c.way = append(c.way, l)
	c.known[name] = j
	return j
}

// seed begins with ways of the best plan, and each kind alone on every stock.
func (c *columns) seed() {
	for _, l := range c.s.best.loads {
		slices.Sort(l.kinds)
		c.add(load{l.store, slices.Clone(l.kinds)})
	}
	for k, kd := range c.s.m.kinds {
		for s, st := range c.s.m.stores[:c.s.m.sold] {
			if n := min(int64(kd.need), st.room/kd.size); n > 0 {
				c.add(load{s, slices.Repeat([]int32{int32(k)}, int(n))})
			}
		}
		if kd.buys >= 0 {
			c.add(load{kd.buys, []int32{int32(k)}})
		}
	}
}

// exchanges adds what turns a part into the next shorter one, at no cost: a way stays one when a part of it is replaced
// by a shorter one, so that among the best duals are those in which no part is worth less than a shorter one. The
// program comes to such duals in far fewer rounds (Valério de Carvalho, INFORMS Journal on Computing 17, 2005, from
// memory). They are no ways: aim keeps them out.
func (c *columns) exchanges() {
	for k := 1; k < len(c.s.m.kinds); k++ {
		c.lp.Add(master.Column{Entries: []master.Entry{{Row: k - 1, Value: -1}, {Row: k, Value: 1}}})
		c.way = append(c.way, load{})
	}
}

// generate solves the program and adds ways as they pay, until none does, the budget is spent, or enough is
// known: that it can't come below target, or that rounding up gives the same whatever is still to come. It
// returns a lower bound of the program, as far as floating numbers go, and whether enough is known.
func (c *columns) generate(target float64) (bound float64, end bool) {
	return c.generateUntil(func(bound, v float64) bool {
		return bound > target+roundEps || c.same > 0 && c.whole(bound) >= c.whole(v)
	})
}

// generateAll solves the program to its end.
func (c *columns) generateAll() bool {
	_, end := c.generateUntil(func(bound, v float64) bool { return false })
	return end
}

// pivotsAtOnce is the number of pivots between two looks at the budget, in a program of few rows; pivotedAtOnce the
// numbers of its inverse that they change at most.
const (
	pivotsAtOnce  = 50
	pivotedAtOnce = 1 << 20
)

// solve solves the program over the ways that are known. It reports false where the budget is spent first.
func (c *columns) solve() bool {
	n := len(c.right)
	some := min(pivotsAtOnce, pivotedAtOnce/(n*n)+1)
	for range 200 * pivotsAtOnce / some {
		before := c.lp.Pivots
		solved := c.lp.Solve(some)
		if !c.s.budget.Spend((c.lp.Pivots-before)*(1+n*n/400) + len(c.way)/100) {
			return false
		}
		if solved {
			break
		}
	}
	return true
}

func (c *columns) generateUntil(enough func(bound, v float64) bool) (bound float64, end bool) {
	c.centre = c.rated()
	for c.solve() {
		v := c.lp.Value()
		b, added := c.priceIn(bound)
		bound = math.Max(bound, b)
		if added == 0 && !c.s.budget.Over() {
			return v, true
		}
		if enough(bound, v) {
			return bound, true
		}
	}
	return bound, false
}

// rated are the sizes as duals, at the price that the cheapest stock has for its room: where sticks can be cut with
// little waste the best duals lie near.
func (c *columns) rated() []float64 {
	rate := math.Inf(1)
	for _, st := range c.s.m.stores {
		rate = math.Min(rate, st.price/float64(st.room))
	}
	out := make([]float64, len(c.right))
	for k, kd := range c.s.m.kinds {
		out[k] = rate * float64(kd.size)
	}
	return out
}

// roundEps is what a sum of floating numbers may be off before it is rounded up.
const roundEps = 1e-6

// whole rounds a cost up to what whole sticks can cost, where all cost the same.
func (c *columns) whole(v float64) float64 {
	if c.same == 0 {
		return math.Inf(1) // differing prices: nothing is known of what sums they make
	}
	return math.Ceil(v/c.same-roundEps) * c.same
}

// smooth is how much of the duals that gave the best bound so far goes into those that ways are looked for with:
// the program's own leap from corner to corner (Wentges, International Transactions in Operational Research 4,
// 1997, from memory).
const smooth = 0.3

// priceIn adds ways that cost less than their parts are worth, and returns a lower bound of the program. Ways are
// looked for with smoothed duals first; only where these find none the program's own have the last word.
func (c *columns) priceIn(bound float64) (better float64, added int) {
	dual := c.lp.Duals()
	between := make([]float64, len(dual))
	for i, d := range dual {
		between[i] = smooth*c.centre[i] + (1-smooth)*d
	}
	v, added := c.priceAt(between, dual)
	if v > bound {
		c.centre, bound = between, v
	}
	if added > 0 {
		return bound, added
	}
	v, added = c.priceAt(dual, dual)
	if v > bound {
		c.centre = slices.Clone(dual)
	}
	return math.Max(v, bound), added
}

// priceAt adds ways that are worth more by the duals at than they cost, and by the program's own too. Where a table is
// slow, branching looks first. The duals times the least ratio of cost to worth would find none: so what they say of
// the parts that are wanted, times that ratio, is a lower bound (Farley, Operations Research 38, 1990). With limited
// stock that counts it is 0, which says nothing.
func (c *columns) priceAt(at, own []float64) (bound float64, added int) {
	p := pricing{c: c, at: at, own: own}
	look := p.looked
	switch {
	case c.table == nil && c.s.m.few():
		if _, added = p.all(p.climbed(climbQuick)); added > 0 && p.ratio == 0 {
			return 0, added
		} else if p.ratio == 0 {
			look = p.climbed(climbSure)
		} else {
			return c.worth(at) * p.ratio, added
		}
	case c.table == nil || c.table.slow:
		if _, added = p.all(p.branched); added > 0 || c.table == nil {
			return 0, added
		}
	}
	if c.table != nil && !c.table.fill(c.s.m, c.have, at[:len(c.s.m.kinds)], c.s.budget) {
		return 0, 0
	}
	ratio, added := p.all(look)
	return c.worth(at) * ratio, added
}

// worth is what all parts that are wanted are worth by some duals.
func (c *columns) worth(at []float64) (v float64) {
	for k, n := range c.have {
		v += float64(n) * math.Max(0, at[k])
	}
	return v
}

// weights are the duals as whole numbers, for a bound that no rounding can harm.
func (c *columns) weights() []int64 { return whole(c.lp.Duals()[:len(c.s.m.kinds)], c.price) }

func whole(dual []float64, price float64) []int64 {
	out := make([]int64, len(dual))
	for k, d := range dual {
		out[k] = int64(math.Max(0, d) / price * weightScale)
	}
	return out
}

// turnings is how many duals are taken the mean of, and turnBy how much a need is changed for each.
const (
	turnings = 6
	turnBy   = 1e-4
)

// middle is the mean of duals of the program with its needs changed a little, each time otherwise: all of them are
// the best there are, or nearly, and only a way that all of them find tight is tight for the mean. nil where the
// budget ends.
func (c *columns) middle() []int64 {
	if !c.generateAll() {
		return nil
	}
	sum := make([]float64, len(c.s.m.kinds))
	turned := make([]float64, len(c.right))
	for range turnings {
		if !c.s.budget.Ask() {
			return nil
		}
		for i, b := range c.right {
			turned[i] = b * (1 + turnBy*c.s.dice.Share())
		}
		c.lp.Reset(turned)
		if !c.generateAll() {
			return nil
		}
		for k := range sum {
			sum[k] += math.Max(0, c.lp.Duals()[k]) / turnings
		}
	}
	c.lp.Reset(c.right)
	return whole(sum, c.price)
}

// weightScale keeps weights small enough that a job's sum can't wrap round, and fine enough that rounding them
// down costs less than rounding up can forgive.
const weightScale = 1 << 36
