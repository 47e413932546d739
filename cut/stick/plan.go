package stick

import (
	"encoding/binary"
	"math"
	"slices"
)

// load is one stick with its parts: indexes of kinds, the longest part first.
type load struct {
	store int
	kinds []int32
}

// plan is a layout: sticks, and how many parts of each kind found no stock.
type plan struct {
	loads []load
	left  []int
}

// score orders plans: the parts left over first, then the cost, then what makes a good layout.
type score struct {
	left     int64   // length of the parts not placed
	cost     float64 // of the sticks
	patterns int     // different ways to cut a stick
	spread   float64 // Σ leftover², negative: few long offcuts are better than many short ones
}

func (m *model) slack(l load) int64 {
	room := m.stores[l.store].room
	for _, k := range l.kinds {
		room -= m.kinds[k].size
	}
	return room
}

func (m *model) score(p plan) score {
	var s score
	for k, n := range p.left {
		s.left += int64(n) * m.kinds[k].size
	}
	s.cost = m.cost(p.loads)
	s.patterns = m.patterns(p.loads)
	s.spread = m.spread(p.loads)
	return s
}

func (m *model) cost(loads []load) (c float64) {
	for _, l := range loads {
		c += m.stores[l.store].price
	}
	return c
}

// spread is minus the sum of squared leftovers, in the square of the longest room.
func (m *model) spread(loads []load) (v float64) {
	for _, l := range loads {
		s := float64(m.slack(l))
		v -= s * s
	}
	return v
}

func (m *model) patterns(loads []load) int {
	seen := make(map[string]bool, len(loads))
	for _, l := range loads {
		if m.stores[l.store].only < 0 {
			seen[pattern(l)] = true
		}
	}
	return len(seen)
}

// pattern names the way a stick is cut.
func pattern(l load) string {
	b := make([]byte, 0, 2*len(l.kinds)+2)
	b = binary.AppendUvarint(b, uint64(l.store))
	for _, k := range l.kinds {
		b = binary.AppendUvarint(b, uint64(k))
	}
	return string(b)
}

// costEps is below any price step and above the rounding of sums.
const costEps = 1e-7

// better reports whether a is the better layout.
func (a score) better(b score) bool {
	switch {
	case a.left != b.left:
		return a.left < b.left
	case math.Abs(a.cost-b.cost) > costEps:
		return a.cost < b.cost
	case a.patterns != b.patterns:
		return a.patterns < b.patterns
	}
	return a.spread < b.spread
}

// order sorts sticks by stock and then by their parts, the longest first and fuller sticks before emptier
// ones, so that equal ones lie side by side.
func order(loads []load) {
	for i := range loads {
		slices.Sort(loads[i].kinds)
	}
	slices.SortStableFunc(loads, func(a, b load) int {
		if c := cmpInt(a.store, b.store); c != 0 {
			return c
		}
		n := min(len(a.kinds), len(b.kinds))
		if c := slices.Compare(a.kinds[:n], b.kinds[:n]); c != 0 {
			return c
		}
		return cmpInt(len(b.kinds), len(a.kinds))
	})
}
