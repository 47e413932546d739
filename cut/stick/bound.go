package stick

import (
	"math/big"

	"rodwright/cut"
	"rodwright/cut/cover"
)

// boundNodes is the work on all knapsacks of one bound.
const boundNodes = 200_000

// scaleLimit is how many scales are tried for the room of one stock.
const scaleLimit = 240

// bound returns a lower bound of the cost of cutting need[k] parts of each kind k; see the package
// comment for why it holds. Scales are made for the rooms of each stock in turn.
func (m *model) bound(need []int, budget *cut.Budget) float64 {
	sizes := m.sizes()
	best := 0.0
	nodes := boundNodes
	seen := map[int64]bool{}
	limit := max(24, scaleLimit/m.sold)
	for _, st := range m.stores[:m.sold] {
		if seen[st.room] || len(seen) > 0 && budget.Over() {
			continue
		}
		seen[st.room] = true
		var full []int64
		if st.room == m.longest() {
			full = m.fullest(need)
		}
		for i, sc := range cover.Scales(sizes, st.room, limit) {
			if i > 0 && !budget.Ask() {
				break
			}
			if v, ok := m.weighed(need, sizes, sc, st.room, full, &nodes, budget); ok {
				best = max(best, v)
			}
			full = nil // the first scale alone weighs by size
		}
	}
	return best
}

// fullest is the greatest sum of sizes that each store has room for; nil where that would take too long.
func (m *model) fullest(need []int) []int64 {
	step, longest := m.step(), m.longest()
	if step == 0 || longest/step > fullestMost {
		return nil
	}
	reached := big.NewInt(1) // bit i: some parts are i steps long together
	words, work := int(longest/step)/64+1, 0
	within := new(big.Int).Sub(new(big.Int).Lsh(big.NewInt(1), uint(longest/step)+1), big.NewInt(1))
	for k, n := range need {
		m.bundles(k, n, func(_ int, size int64) {
			if work += words; work <= fullestMost {
				reached.Or(reached, new(big.Int).Lsh(reached, uint(size/step)))
				reached.And(reached, within)
			}
		})
	}
	if work > fullestMost {
		return nil
	}
	out := make([]int64, len(m.stores))
	for s, st := range m.stores {
		c := st.room / step
		for c > 0 && reached.Bit(int(c)) == 0 {
			c--
		}
		out[s] = c * step
	}
	return out
}

// fullestMost bounds the words of bits that are worked through for it.
const fullestMost = 2 << 20

// weighed is the bound by one scale of one room; ok is false where the time ends first.
func (m *model) weighed(need []int, sizes []int64, sc cover.Scale, room int64, full []int64, nodes *int, budget *cut.Budget) (bound float64, ok bool) {
	items := make([]cover.Item, len(sizes))
	var weight int64
	for k, s := range sizes {
		items[k] = cover.Item{Size: s, Count: need[k]}
		if s <= room {
			items[k].Value = sc.Of(s)
		} else { // longer than this stock: as much as a full one
			items[k].Value = sc.Hold
		}
		weight += int64(need[k]) * items[k].Value
	}
	stocks := make([]cover.Stock, len(m.stores))
	bySize := sc.Hold == room
	for j, st := range m.stores {
		stocks[j] = cover.Stock{Price: st.price, Count: st.count, Hold: sc.Hold}
		if st.only >= 0 {
			stocks[j].Count, stocks[j].Hold = need[st.only], items[st.only].Value
			continue
		}
		switch {
		case full != nil:
			stocks[j].Hold = full[j]
		case st.room != room || bySize:
			if j > 0 && !budget.Ask() {
				return 0, false
			}
			share := *nodes/8 + 1
			before := share
			hold := cover.Most(items, st.room, &share)
			*nodes -= before - share
			if st.room == room {
				hold = min(hold, sc.Hold)
			}
			stocks[j].Hold = hold
		}
	}
	return cover.Least(stocks, weight), true
}

// valued is the bound by any values of the parts as weights. It spends from nodes.
func (m *model) valued(need []int, value []int64, nodes *int, budget *cut.Budget) float64 {
	var weight int64
	for k := range m.kinds {
		weight += int64(need[k]) * value[k]
	}
	holds, cells, ok := m.holdsOf(need, value)
	*nodes -= cells / cellsPerNode
	switch {
	case ok:
	case m.few():
		holds = m.holdsByWays(need, value, nodes, budget)
	default:
		holds = m.holdsByBranching(need, value, nodes)
	}
	stocks := make([]cover.Stock, len(m.stores))
	for j, st := range m.stores {
		stocks[j] = cover.Stock{Price: st.price, Count: st.count, Hold: holds[j]}
		if st.only >= 0 {
			stocks[j].Count, stocks[j].Hold = need[st.only], value[st.only]
		}
	}
	return cover.Least(stocks, weight)
}

// cellsPerNode is how many cells of a table take about the time of one node of a search.
const cellsPerNode = 64

// holdsByWays is what a stick of each store holds at most of the values, by going through the ways; rounded up where
// these are too many.
func (m *model) holdsByWays(need []int, value []int64, nodes *int, budget *cut.Budget) []int64 {
	e := newEnumeration(m, need, budget, measure{weight: value})
	holds := make([]int64, len(m.stores))
	for j, st := range m.stores {
		steps := max(1, *nodes)
		_, v, sure := e.heaviest(st.room, 0, -1, steps)
		if *nodes -= steps - e.left; !sure {
			v = e.limit(st.room)
		}
		holds[j] = v
	}
	return holds
}

// holdsByBranching is what a stick of each store holds at most of the values, rounded up where the nodes end.
func (m *model) holdsByBranching(need []int, value []int64, nodes *int) []int64 {
	items := make([]cover.Item, len(m.kinds))
	for k, kd := range m.kinds {
		items[k] = cover.Item{Size: kd.size, Value: value[k], Count: need[k]}
	}
	holds := make([]int64, len(m.stores))
	for j, st := range m.stores {
		holds[j] = cover.Most(items, st.room, nodes)
	}
	return holds
}
