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
	price  float64 // the greatest of a stick
	same   float64 // the price of all sticks, 0 where they differ
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
		for s, st := range c.s.m.stores {
			if n := min(int64(kd.need), st.room/kd.size); n > 0 {
				c.add(load{s, slices.Repeat([]int32{int32(k)}, int(n))})
			}
		}
	}
}

// generate solves the program and adds ways as they pay, until none does, the budget is spent, or enough is
// known: that it can't come below target, or that rounding up gives the same whatever is still to come. It
// returns a lower bound of the program, as far as floating numbers go, and whether enough is known.
func (c *columns) generate(target float64) (bound float64, end bool) {
	return c.generateUntil(func(bound, v float64) bool { return bound > target+roundEps || c.whole(bound) >= c.whole(v) })
}

// generateAll solves the program to its end.
func (c *columns) generateAll() bool {
	_, end := c.generateUntil(func(bound, v float64) bool { return false })
	return end
}

func (c *columns) generateUntil(enough func(bound, v float64) bool) (bound float64, end bool) {
	for !c.s.budget.Over() {
		before := c.lp.Pivots
		c.lp.Solve(5000)
		c.s.budget.Spend((c.lp.Pivots - before) * (1 + len(c.right)*len(c.right)/400))
		v := c.lp.Value()
		ratio, added := c.priceIn()
		bound = math.Max(bound, v*ratio)
		if added == 0 {
			return v, true
		}
		if enough(bound, v) {
			return bound, true
		}
	}
	return bound, false
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

// priceIn adds the ways that cost less than their parts are worth. Where a table is slow, branching looks first
// and the table has the last word. The duals times ratio would find none: so the program's value times ratio is a
// lower bound (Farley, Operations Research 38, 1990). With limited stock ratio is 0, which says nothing.
func (c *columns) priceIn() (ratio float64, added int) {
	if c.table == nil || c.table.slow {
		if _, added = c.priceBy(c.branched); added > 0 || c.table == nil {
			return 0, added
		}
	}
	m, dual := c.s.m, c.lp.Duals()
	c.s.budget.Spend(c.table.fill(m, c.have, dual[:len(m.kinds)]) / 4 / cellsPerNode)
	return c.priceBy(c.looked)
}

// priceBy adds the ways that a filling finds.
func (c *columns) priceBy(fill func(store int) ([]int, float64)) (ratio float64, added int) {
	dual := c.lp.Duals()
	ratio = 1
	for s, st := range c.s.m.stores {
		worth := st.price
		if row := c.limits[s]; row >= 0 {
			worth -= dual[row]
			if dual[row] < -tinyDual {
				ratio = 0
			}
		}
		counts, v := fill(s)
		if v <= worth+1e-7*c.price {
			continue
		}
		ratio = math.Min(ratio, worth/v)
		known := len(c.way)
		if c.add(load{s, listed(counts)}); len(c.way) > known {
			added++
		}
	}
	return ratio, added
}

const tinyDual = 1e-9

// looked is the most valuable way to fill a stick of store s, by the table.
func (c *columns) looked(s int) ([]int, float64) {
	room := c.s.m.stores[s].room
	return c.table.counts(room, len(c.s.m.kinds)), c.table.value(room)
}

// branched is a valuable way to fill a stick of store s, by branching.
func (c *columns) branched(s int) ([]int, float64) {
	return c.s.b.f.bestFill(c.s.m.stores[s].room, c.have, c.lp.Duals()[:len(c.s.m.kinds)])
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
