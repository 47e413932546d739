package stick

import (
	"fmt"
	"slices"

	"rodwright/cut"
)

// kind is all parts of one length.
type kind struct {
	size int64 // length + kerf
	need int
	part []int // the input's parts of this length, in order
}

// store is one kind of stock that at least one part fits on.
type store struct {
	room  int64 // length − 2·trim + kerf
	price float64
	count int // -1 is any number
	stock int // index in the problem
}

// model is a problem as bins and sizes.
type model struct {
	p      *Problem
	kinds  []kind  // the longest first
	stores []store // in the problem's order
	misfit []cut.NotPlaced
}

func newModel(p *Problem) *model {
	m := &model{p: p}
	widest := m.addStores()
	at := map[int64]int{}
	for i, q := range p.Parts {
		if q.Count == 0 {
			continue
		}
		size := int64(q.Length + p.Kerf)
		if widest < 0 || size > m.stores[widest].room {
			m.tooLong(i, widest)
			continue
		}
		k, ok := at[size]
		if !ok {
			k, at[size] = len(m.kinds), len(m.kinds)
			m.kinds = append(m.kinds, kind{size: size})
		}
		m.kinds[k].need += int(q.Count)
		m.kinds[k].part = append(m.kinds[k].part, i)
	}
	slices.SortFunc(m.kinds, func(a, b kind) int { return cmpInt(b.size, a.size) })
	return m
}

// addStores takes over the stock that has room at all and returns the index of the longest, -1 for none.
func (m *model) addStores() int {
	widest := -1
	for i, s := range m.p.Stock {
		room := int64(m.p.Room(i) + m.p.Kerf)
		if s.Count == 0 || m.p.Room(i) <= 0 {
			continue
		}
		m.stores = append(m.stores, store{room: room, price: m.p.Cost(i), count: int(s.Count), stock: i})
		if widest < 0 || room > m.stores[widest].room {
			widest = len(m.stores) - 1
		}
	}
	return widest
}

func (m *model) tooLong(part, widest int) {
	q, why := m.p.Parts[part], "no stock is there"
	if widest >= 0 {
		s := m.stores[widest].stock
		why = fmt.Sprintf("longer than any stock (%s; %s gives %s)", cut.Text(q.Length, m.p.Unit),
			m.p.Stock[s].Tag, cut.Text(m.p.Room(s), m.p.Unit))
	}
	for range q.Count {
		m.misfit = append(m.misfit, cut.NotPlaced{Tag: q.Tag, Why: why})
	}
}

func cmpInt[T int | int64](a, b T) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
