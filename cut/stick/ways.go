package stick

import (
	"encoding/binary"
	"math"
	"slices"
)

// ways is every way to cut a stick, or to buy a part, that a layout cheaper than the best could use. Give each part its
// weight so that no stick holds more than its price, and no part weighs more than it costs to buy: then a layout costs
// what all parts weigh, and what the price of each stick is above the weight on it. A layout cheaper than the best can't
// lose more by that, on all its sticks together, than lies between the weight of all parts and its cost. Few ways lose as
// little; all layouts of them are gone through, the longest part that is left first, and what is left to do only once
// with the same loss. Where none is cheaper, the best cost is the bound. All of it is in whole numbers. Stock of which
// there are few may hold more than its price; what all of it holds beyond that is taken off the weight of all parts.
type ways struct {
	s      *search
	weight []int64
	price  []int64 // of each store, in the unit of weights: at least what it holds
	unit   float64 // weight of one unit of money
	step   float64 // what all prices are whole multiples of
	base   int64   // no layout weighs less
	gap    int64   // what a cheaper layout loses at most
	first  [][]way // by the longest part of the way, those that lose least first
	have   []int
	avail  []int
	fixed  []load
	seen   map[string]int64 // what is left to do → the least loss it was met with
	rate   []float64        // of the kinds from each on, the most weight for its size
	steps  int              // of listing
	stop   bool             // the search was broken off: nothing is proven
}

type way struct {
	load
	lost int64
}

// holdsQuick is the number of cells up to which a table tells what sticks hold; branching tells it beyond.
const holdsQuick = 4 << 20

// statesMost bounds the states that are gone through, listMost the steps in which the ways are listed.
const (
	statesMost = 20_000
	listMost   = 200_000
)

// byWays goes through all layouts that could be cheaper than the best. It is for jobs in which parts can be bought: their
// costs are sums of many prices, which the other bounds seldom meet.
func (s *search) byWays(c *columns) {
	m := s.m
	if s.done() || s.budget.Over() || len(m.stores) == m.sold {
		return
	}
	c.aim()
	if weights := c.middle(); weights != nil {
		s.goThrough(weights, c.price)
	}
}

// goThrough goes through all layouts that could be cheaper than the best, by any weights of the parts: good ones leave few.
// most is the greatest price.
func (s *search) goThrough(weights []int64, most float64) {
	w := &ways{s: s, weight: weights, have: s.m.needs(), avail: s.m.counts(), seen: map[string]int64{}}
	if w.step = s.m.priceStep(); w.step == 0 || !w.weigh(most) || !w.list() {
		return
	}
	w.search(0)
	if !w.stop && !s.done() {
		s.bound = s.rank.cost
	}
}

// priceStep is the largest amount that every price is a whole multiple of; 0 where a millionth is not.
func (m *model) priceStep() float64 {
	step := int64(0)
	for _, st := range m.stores {
		n := math.Round(st.price * 1e6)
		if math.Abs(n-st.price*1e6) > 1e-4 || n > 1<<50 {
			return 0
		}
		step = gcd(step, int64(n))
	}
	return float64(step) / 1e6
}

// weigh makes weights and prices fit each other and works out what a cheaper layout may lose. It reports false where
// stock without limit costs nothing.
func (w *ways) weigh(most float64) bool {
	m := w.s.m
	w.unit = weightScale / most
	for _, st := range m.stores {
		w.price = append(w.price, max(0, int64(st.price*w.unit)-1))
	}
	for s, st := range m.stores[m.sold:] {
		w.weight[st.only] = min(w.weight[st.only], w.price[m.sold+s])
	}
	holds, share := w.holds(), 1.0
	for s, st := range m.stores[:m.sold] {
		if st.count < 0 && holds[s] > w.price[s] {
			share = min(share, float64(w.price[s])/float64(holds[s]))
		}
	}
	if share < 1 {
		for k, v := range w.weight {
			w.weight[k] = max(0, int64(float64(v)*share)-1)
		}
		holds = w.holds()
	}
	for k, n := range w.have {
		w.base += int64(n) * w.weight[k]
	}
	for s, st := range m.stores[:m.sold] {
		if beyond := holds[s] - w.price[s]; st.count >= 0 && beyond > 0 {
			w.price[s] += beyond
			w.base -= int64(st.count) * beyond
		}
	}
	w.close()
	return share > 0
}

// holds is what a stick of each store holds at most of the weights.
func (w *ways) holds() []int64 {
	m := w.s.m
	if holds, cells, ok := m.holdsOf(w.have, w.weight); ok && cells < holdsQuick {
		w.s.budget.Spend(cells / cellsPerNode)
		return holds
	}
	nodes := valuedNodes
	holds := m.holdsByBranching(w.have, w.weight, &nodes)
	w.s.budget.Spend(valuedNodes - nodes)
	return holds
}

// close sets the gap to the best cost.
func (w *ways) close() {
	w.gap = int64(math.Ceil((w.s.rank.cost-w.step+costEps)*w.unit)) + 1 - w.base
}

// list lists the ways of all stock. It reports false where they are too many.
func (w *ways) list() bool {
	m := w.s.m
	w.first = make([][]way, len(m.kinds))
	w.rate = make([]float64, len(m.kinds)+1)
	for k := len(m.kinds) - 1; k >= 0; k-- {
		w.rate[k] = max(w.rate[k+1], float64(w.weight[k])/float64(m.kinds[k].size))
	}
	for s, st := range m.stores {
		if st.only >= 0 {
			w.keep(load{s, []int32{int32(st.only)}}, w.price[s]-w.weight[st.only])
		} else if st.count != 0 {
			w.walk(load{store: s}, 0, st.room, w.price[s])
		}
	}
	for _, list := range w.first {
		slices.SortStableFunc(list, func(a, b way) int { return cmpInt(a.lost, b.lost) })
	}
	w.s.budget.Spend(w.steps / 16)
	return w.steps <= listMost && !w.s.budget.Over()
}

func (w *ways) keep(l load, lost int64) {
	if lost <= w.gap {
		k := l.kinds[0]
		w.first[k] = append(w.first[k], way{load{l.store, slices.Clone(l.kinds)}, lost})
	}
}

// walk adds parts of the kinds from k on to a stick, of whose price lost is not made up for yet.
func (w *ways) walk(l load, k int, room, lost int64) {
	if w.steps++; w.steps > listMost || float64(lost)-float64(room)*w.rate[k]*(1+1e-9) > float64(w.gap)+1 {
		return
	}
	if k == len(w.have) {
		if len(l.kinds) > 0 {
			w.keep(l, lost)
		}
		return
	}
	size := w.s.m.kinds[k].size
	for n := 0; n <= w.have[k] && int64(n)*size <= room; n++ {
		if n > 0 {
			l.kinds = append(l.kinds, int32(k))
		}
		w.walk(l, k+1, room-int64(n)*size, lost-int64(n)*w.weight[k])
	}
}

// search goes through the layouts of what is left, when so much is lost already.
func (w *ways) search(lost int64) {
	k := slices.IndexFunc(w.have, func(n int) bool { return n > 0 })
	if k < 0 {
		w.s.offer(plan{cloneLoads(w.fixed), make([]int, len(w.have))})
		w.close()
		return
	}
	key := w.key()
	if least, met := w.seen[key]; met && least <= lost {
		return
	}
	w.seen[key] = lost
	if w.stop = w.stop || len(w.seen) > statesMost || !w.s.budget.Spend(2); w.stop {
		return
	}
	for _, c := range w.first[k] {
		if lost+c.lost > w.gap || w.stop {
			return
		}
		if w.avail[c.store] != 0 && w.take(c.kinds) {
			take(w.avail, c.store)
			w.fixed = append(w.fixed, c.load)
			w.search(lost + c.lost)
			w.fixed = w.fixed[:len(w.fixed)-1]
			give(w.avail, c.store)
			w.give(c.kinds)
		}
	}
}

// take takes parts from those that are left, all or none.
func (w *ways) take(kinds []int32) bool {
	for i, k := range kinds {
		if w.have[k] == 0 {
			w.give(kinds[:i])
			return false
		}
		w.have[k]--
	}
	return true
}

func (w *ways) give(kinds []int32) {
	for _, k := range kinds {
		w.have[k]++
	}
}

// key names what is left to do.
func (w *ways) key() string {
	b := make([]byte, 0, 2*len(w.have))
	for _, n := range w.have {
		b = binary.AppendUvarint(b, uint64(n))
	}
	for _, n := range w.avail {
		if n >= 0 {
			b = binary.AppendUvarint(b, uint64(n))
		}
	}
	return string(b)
}
