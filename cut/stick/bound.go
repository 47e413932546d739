package stick

import (
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
	sizes := make([]int64, len(m.kinds))
	for k := range m.kinds {
		sizes[k] = m.kinds[k].size
	}
	best := 0.0
	nodes := boundNodes
	seen := map[int64]bool{}
	limit := max(24, scaleLimit/len(m.stores))
	for _, st := range m.stores {
		if seen[st.room] || len(seen) > 0 && budget.Over() {
			continue
		}
		seen[st.room] = true
		for i, sc := range cover.Scales(sizes, st.room, limit) {
			if i > 0 && budget.Over() {
				break
			}
			best = max(best, m.weighed(need, sizes, sc, st.room, &nodes))
		}
	}
	return best
}

// weighed is the bound by one scale of one room.
func (m *model) weighed(need []int, sizes []int64, sc cover.Scale, room int64, nodes *int) float64 {
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
		if st.room != room || bySize {
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
	return cover.Least(stocks, weight)
}

// valued is the bound by any values of the parts as weights. It spends from nodes.
func (m *model) valued(need []int, value []int64, nodes *int) float64 {
	var weight int64
	for k := range m.kinds {
		weight += int64(need[k]) * value[k]
	}
	holds, cells, ok := m.holdsOf(need, value)
	if *nodes -= cells / cellsPerNode; !ok {
		holds = m.holdsByBranching(need, value, nodes)
	}
	stocks := make([]cover.Stock, len(m.stores))
	for j, st := range m.stores {
		stocks[j] = cover.Stock{Price: st.price, Count: st.count, Hold: holds[j]}
	}
	return cover.Least(stocks, weight)
}

// cellsPerNode is how many cells of a table take about the time of one node of a search.
const cellsPerNode = 64

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
