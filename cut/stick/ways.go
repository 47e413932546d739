package stick

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// ways is every way to cut a stick, or to buy a part, that a layout cheaper than the best could use. Give each part a
// weight, by its length and by duals. The most weight that stock holds for what a cheaper layout may cost is known; so
// what is left to do is given up where the money that is left has no stock for its weight, and a way that weighs so
// little that the rest of the money has no stock for the rest is in no cheaper layout. Few ways are left; all layouts of
// them are gone through, the longest part that is left first, and what is left to do only once for the same money. Where
// none is cheaper, the best cost is the bound. All of it is in whole numbers, money too: as steps that every price is
// a multiple of.
type ways struct {
	s     *search
	by    []*weighing
	funds funds
	most  int     // steps that a cheaper layout costs at most
	first [][]way // by the longest part of the way, those that lose least first
	have  []int
	avail []int
	holds [][]int64 // by each weighing, the most that the stock which is there holds for each number of cells
	fixed []load
	seen  map[string]int // what is left to do → the least it was met with, in steps
	left  int            // states that may still be gone through
	stop  bool           // the search was broken off: nothing is proven
}

type way struct {
	load
	weighs []int64
	lost   float64 // what the stick costs, at the rate of all parts, beyond what is on it
}

// work bounds a search through all layouts: the states, and the ways and steps in which they are listed.
type work struct{ states, ways, steps int }

var (
	quickWays = work{10_000, 10_000, 200_000}
	largeWays = work{100_000, 20_000, 4_000_000}
)

// byWays goes through all layouts that could be cheaper than the best, where there is stock of several lengths or parts
// can be bought: costs are sums of many prices then, which the other bounds seldom meet.
func (s *search) byWays(c *columns, e work) {
	m := s.m
	if s.done() || s.budget.Over() || len(m.stores) == 1 {
		return
	}
	if c.mean == nil {
		c.aim()
		c.mean = c.middle()
	}
	if c.mean != nil {
		s.goThrough(e, c.mean, m.sizes())
	}
}

// goThrough goes through all layouts that could be cheaper than the best, by any weights of the parts: good ones leave few.
func (s *search) goThrough(e work, weights ...[]int64) {
	w := &ways{s: s, have: s.m.needs(), avail: s.m.counts(), seen: map[string]int{}, left: e.states}
	if !w.funds.open(s.m) {
		return
	}
	w.close()
	if w.most < 0 || !w.funds.coarsen(s.m, w.most) {
		return
	}
	var all []int64
	for _, weight := range weights {
		w.by = append(w.by, newWeighing(s, weight))
		all = append(all, w.by[len(w.by)-1].all)
	}
	if w.look(); w.stop || !w.list(e) {
		return
	}
	w.search(0, all)
	if !w.stop && !s.done() {
		s.bound = s.rank.cost
	}
}

// close sets what a cheaper layout than the best may cost.
func (w *ways) close() {
	w.most = -1
	for _, l := range w.s.best.loads {
		w.most += w.funds.price[l.store]
	}
}

// list lists the ways of all stock. It reports false where they are too many.
func (w *ways) list(e work) bool {
	m := w.s.m
	w.first = make([][]way, len(m.kinds))
	by := make([]measure, len(w.by))
	for i := range w.by {
		by[i].weight = w.by[i].weight
	}
	list := newEnumeration(m, w.have, w.s.budget, by...)
	for s, st := range m.stores {
		if w.avail[s] == 0 || w.funds.price[s] > w.most {
			continue
		}
		for i := range w.by {
			by[i].least = w.by[i].all - w.holds[i][(w.most-w.funds.price[s])/w.funds.cell]
		}
		found := []load{{s, []int32{int32(st.only)}}}
		if st.only < 0 {
			var ok bool
			if found, ok = list.list(s, e.ways, e.steps); !ok {
				return false
			}
			e.ways, e.steps = e.ways-len(found), list.left
		}
		for _, l := range found {
			w.keep(l)
		}
	}
	for _, list := range w.first {
		slices.SortStableFunc(list, func(a, b way) int { return cmp.Compare(a.lost, b.lost) })
	}
	return true
}

func (w *ways) keep(l load) {
	weighs := make([]int64, len(w.by))
	for i := range w.by {
		for _, k := range l.kinds {
			weighs[i] += w.by[i].weight[k]
		}
	}
	rate := float64(w.by[0].all) / float64(w.most+1)
	k := l.kinds[0]
	w.first[k] = append(w.first[k], way{l, weighs, float64(w.funds.price[l.store])*rate - float64(weighs[0])})
}

// look sets what the stock that is there holds. Where that is not known in time nothing is proven.
func (w *ways) look() {
	w.holds = w.holds[:0]
	for _, by := range w.by {
		t, ok := by.holds(w.s, &w.funds, w.avail, w.most)
		w.holds, w.stop = append(w.holds, t), w.stop || !ok
	}
}

// open takes a stick, if only a bought part, of what is there.
func (w *ways) open(store int) {
	if w.avail[store] >= 0 {
		take(w.avail, store)
		w.look()
	}
}

func (w *ways) shut(store int) {
	if w.avail[store] >= 0 {
		give(w.avail, store)
		w.look()
	}
}

// may reports whether what is left of these weights without a way may be had for what is then left to spend, and sets rest.
func (w *ways) may(spent int, weights []int64, c *way, rest []int64) bool {
	if spent > w.most {
		return false
	}
	cell := (w.most - spent) / w.funds.cell
	for i, weight := range weights {
		if rest[i] = weight - c.weighs[i]; w.holds[i][cell] < rest[i] {
			return false
		}
	}
	return true
}

// search goes through the layouts of what is left, of these weights, when so much is spent already.
func (w *ways) search(spent int, weights []int64) {
	k := slices.IndexFunc(w.have, func(n int) bool { return n > 0 })
	if k < 0 {
		w.s.offer(plan{cloneLoads(w.fixed), make([]int, len(w.have))})
		w.close()
		return
	}
	if w.met(spent) || !w.goOn(len(w.first[k])) {
		return
	}
	rest := make([]int64, len(weights))
	for i := range w.first[k] {
		c := &w.first[k][i]
		if w.stop {
			return
		}
		if w.avail[c.store] == 0 {
			continue
		}
		w.open(c.store)
		if cost := spent + w.funds.price[c.store]; w.may(cost, weights, c, rest) && w.take(c.kinds) {
			w.fixed = append(w.fixed, c.load)
			w.search(cost, rest)
			w.fixed = w.fixed[:len(w.fixed)-1]
			w.give(c.kinds)
		}
		w.shut(c.store)
	}
}

// met reports whether the same was left to do before, for no more money.
func (w *ways) met(spent int) bool {
	key := w.key()
	if least, met := w.seen[key]; met && least <= spent {
		return true
	}
	w.seen[key] = spent
	return false
}

// goOn reports whether one more state may be gone through, with so many ways.
func (w *ways) goOn(ways int) bool {
	w.left--
	w.stop = w.stop || w.left < 0 || !w.s.budget.Spend(8+ways/4)
	return !w.stop
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
	return string(limited(b, w.avail))
}

// limited appends the stock that is there, where there is a limit.
func limited(b []byte, avail []int) []byte {
	for _, n := range avail {
		if n >= 0 {
			b = binary.AppendUvarint(b, uint64(n))
		}
	}
	return b
}
