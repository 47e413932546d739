package panel

import (
	"math"
	"slices"

	"rodwright/length"
)

// choice is a way to cut for every board, with what they yield together.
type choice struct {
	pool   [][]option
	pick   []int // by board, index in its pool
	yields []float64
	cost   float64
	need   []float64   // net width wanted, by kind
	fine   []float64   // what a unit of missing net width is charged
	flat   [][]float64 // by board: yields and cost of its ways, one after another
	over   [][]float64 // by board: what its ways cost above what they are worth at the prices, as far as they ascend; 0 first
	price  []float64
	lack   []lack // scratch
}

// set changes the way to cut board k.
func (c *choice) set(k, pick int) {
	was, is := &c.pool[k][c.pick[k]], &c.pool[k][pick]
	c.pick[k] = pick
	c.cost += is.cost - was.cost
	for t := range c.yields {
		c.yields[t] += is.yields[t] - was.yields[t]
	}
}

// charge is the cost with what is missing charged.
func (c *choice) charge() float64 {
	v := c.cost
	for t, y := range c.yields {
		if d := c.need[t] - y; d > 0 {
			v += c.fine[t] * d
		}
	}
	return v
}

// adjust raises the charge of what is missing and lowers that of what is there, within bounds of its price:
// the search then stays where just enough is there.
func (c *choice) adjust(price []float64) {
	for t, y := range c.yields {
		if c.need[t]-y >= 1 {
			c.fine[t] = min(1.03*c.fine[t], 60*price[t])
		} else {
			c.fine[t] = max(0.98*c.fine[t], 0.5*price[t])
		}
	}
}

// short reports whether something is missing; less than a nanometre is not.
func (c *choice) short() bool {
	for t, y := range c.yields {
		if c.need[t]-y >= 1 {
			return true
		}
	}
	return false
}

// segments returns the boards as they are cut.
func (c *choice) segments() [][]segment {
	out := make([][]segment, len(c.pick))
	for k, i := range c.pick {
		out[k] = slices.Clone(c.pool[k][i].segments)
	}
	return out
}

// take makes the layout the choice; ways to cut that are not in the pool are added to it.
func (s *search) take(c *choice, l *layout) {
	for k, segs := range l.segments {
		pick := 0
		if len(segs) > 0 {
			o := s.newOption(k, segs)
			if pick = slices.IndexFunc(c.pool[k], o.same); pick < 0 {
				pick = len(c.pool[k])
				c.pool[k] = append(c.pool[k], o)
				c.flat[k] = append(append(c.flat[k], o.yields...), o.cost)
			}
		}
		c.set(k, pick)
	}
}

// newChoice begins with no board cut.
func (s *search) newChoice(pool [][]option) *choice {
	n := len(s.m.kinds)
	c := &choice{pool: pool, pick: make([]int, len(pool)), yields: make([]float64, n), need: make([]float64, n), fine: make([]float64, n)}
	for t, kd := range s.m.kinds {
		c.need[t] = float64(kd.need)
		c.fine[t] = firstFine * s.price[t]
	}
	c.price = s.price
	for k := range pool {
		var flat, over []float64
		for _, o := range pool[k] {
			flat = append(append(flat, o.yields...), o.cost)
			over = append(over, o.over)
		}
		c.flat = append(c.flat, flat)
		c.over = append(c.over, over)
	}
	return c
}

// anneal chooses ways to cut for all boards at once by simulated annealing (Kirkpatrick, Gelatt and Vecchi,
// Science 220, 1983): one board's way is changed at random, or two boards' at once, and kept when the cost
// falls, or with a chance that shrinks. Where all that is wanted seems to be there for less than the best
// layout costs, the boards are ripped; what ripping falls short of is wanted more from then on.
func (s *search) anneal(p *program, share int) {
	if s.budget.Over() {
		return
	}
	s.collect(p, share)
	c := s.newChoice(s.pools)
	s.take(c, s.best)
	s.cool(c, share)
}

// firstFine is what a missing unit is charged at first, in its prices; firstHeat the heat at the beginning, in costs
// of a board, and lastHeat what is left of it at the end.
const (
	firstFine = 3
	firstHeat = 0.1
	lastHeat  = 0.01
)

// movesPerNode is how many moves count as a node.
const movesPerNode = 4

// cool makes one run from warm to cold, at first for no more than is wanted.
func (s *search) cool(c *choice, nodes int) {
	for t, kd := range s.m.kinds {
		c.need[t] = float64(kd.need)
	}
	warm := firstHeat * s.best.cost / float64(len(s.m.boards))
	charge, heat := c.charge(), warm
	chances := chances()
	next := 0
	for n := 0; n < nodes; n++ {
		if !s.budget.Spend(1) {
			return
		}
		if n >= next {
			next = n + heatSteps
			heat = warm * math.Pow(lastHeat, float64(n)/float64(nodes))
			c.adjust(s.price)
			charge = c.charge()
		}
		looked := 0
		for range movesPerNode {
			after, more := s.move(c, charge, heat*chances[s.dice.N(len(chances))])
			looked += more
			if charge = after; c.cost < s.best.cost-costEps && !c.short() {
				s.ripChoice(c)
				charge = c.charge()
			}
		}
		s.budget.Spend(looked * len(c.need) / 128)
		n += looked * len(c.need) / 128
	}
}

// move changes the way of one board at random, or besides another's to the best response, and takes it back where the
// charge rises by more than most. It returns the charge and how many ways it looked at.
func (s *search) move(c *choice, charge, most float64) (after float64, looked int) {
	a, b := s.dice.N(len(c.pick)), -1
	wasA, wasB := c.pick[a], 0
	c.set(a, s.pickFor(c, a))
	if s.dice.N(2) == 0 && len(c.pick) > 1 {
		b = s.dice.N(len(c.pick))
		wasB = c.pick[b]
		var to int
		to, looked = c.response(b)
		c.set(b, to)
	}
	if after = c.charge(); after-charge <= most {
		return after, looked
	}
	if b >= 0 {
		c.set(b, wasB)
	}
	c.set(a, wasA)
	return charge, looked
}

// response is the way to cut board k that costs least, what is then missing charged. With what a unit is charged, but no
// more than its price, a way can't cost less than it is over its worth and what is missing now is charged: as the ways
// ascend in that, few are looked at.
func (c *choice) response(k int) (at, looked int) {
	was := c.pool[k][c.pick[k]].yields
	c.lack = c.lack[:0]
	none, least := 0.0, 0.0
	for t, y := range c.yields {
		if d := c.need[t] - y + was[t]; d > 0 {
			c.lack = append(c.lack, lack{t, d, c.fine[t]})
			none += c.fine[t] * d
			least += min(c.fine[t], c.price[t]) * d
		}
	}
	best := none
	flat, n := c.flat[k], len(c.yields)+1
	for i := 1; i < len(c.pool[k]); i++ {
		if i < len(c.over[k]) && c.over[k][i]+least >= best {
			i = len(c.over[k]) - 1 // those added since do not ascend
			continue
		}
		looked++
		o := flat[i*n : i*n+n]
		v := o[n-1]
		for _, q := range c.lack {
			if v >= best {
				break
			}
			if d := q.width - o[q.kind]; d > 0 {
				v += q.fine * d
			}
		}
		if v < best {
			best, at = v, i
		}
	}
	return at, looked
}

// lack is a kind that something is missing of.
type lack struct {
	kind        int
	width, fine float64
}

// heatSteps is the number of nodes between two changes of the heat.
const heatSteps = 64

// chances are −ln u for numbers u spread evenly from 0 to 1: a rise below heat·(−ln u) is taken, which
// happens with the chance exp(−rise ÷ heat).
func chances() (out [1024]float64) {
	for i := range out {
		out[i] = -math.Log((float64(i) + 0.5) / float64(len(out)))
	}
	return out
}

// pickFor returns a random way to cut board k, the better ones more often, in one of three cases none.
func (s *search) pickFor(c *choice, k int) int {
	if c.pick[k] != 0 && s.dice.N(3) == 0 {
		return 0
	}
	u := s.dice.Share()
	return int(float64(len(c.pool[k])) * u * u)
}

// ripChoice rips the boards of a choice. What comes out short is wanted more from then on.
func (s *search) ripChoice(c *choice) {
	l := s.rip(c.segments())
	s.budget.Spend(len(s.m.boards))
	s.offer(l)
	for t, d := range l.glue.missing {
		if d > 0 {
			c.need[t] += float64(max(d, length.Millimetre))
		}
	}
}
