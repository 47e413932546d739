package stick

import (
	"slices"

	"rodwright/cut"
)

// kind is all parts of one length and of one price beyond that of making them.
type kind struct {
	size int64 // length + kerf
	need int
	part []int // the input's parts of this kind, in order
	buys int   // the store that one of them is bought from, -1 for none
}

// store is one kind of stock that at least one part fits on; those behind the sticks are parts bought ready made.
type store struct {
	room  int64 // length − 2·trim + kerf; of a bought part its size
	price float64
	count int // -1 is any number
	stock int // index in the problem
	only  int // the one kind that is bought from it, -1 for a stick
}

// model is a problem as bins and sizes.
type model struct {
	p      *Problem
	kinds  []kind  // the longest first
	stores []store // in the problem's order, then a store for each kind that may be bought
	sold   int     // how many of them are sticks
	ready  []int   // the input's parts that are bought whatever is cut
	misfit []cut.NotPlaced
}

func newModel(p *Problem) *model {
	m := &model{p: p}
	widest := m.addStores()
	at := map[alike]int{}
	for i, q := range p.Parts {
		if q.Count == 0 {
			continue
		}
		a := m.alike(q)
		switch fits := widest >= 0 && a.size <= m.stores[widest].room; {
		case a.bought && (!fits || a.beyond <= 0):
			m.ready = append(m.ready, i)
			continue
		case !fits:
			m.tooLong(i)
			continue
		}
		k, ok := at[a]
		if !ok {
			k, at[a] = len(m.kinds), len(m.kinds)
			m.kinds = append(m.kinds, kind{size: a.size, buys: m.counter(a)})
		}
		m.kinds[k].need += int(q.Count)
		m.kinds[k].part = append(m.kinds[k].part, i)
	}
	slices.SortStableFunc(m.kinds, func(a, b kind) int { return cmpInt(b.size, a.size) })
	for k, kd := range m.kinds {
		if kd.buys >= 0 {
			m.stores[kd.buys].only = k
		}
	}
	return m
}

// addStores takes over the stock that has room at all and returns the index of the longest, -1 for none.
func (m *model) addStores() int {
	widest, pieces := -1, 0
	for _, q := range m.p.Parts {
		pieces += int(q.Count)
	}
	for i, s := range m.p.Stock {
		room := int64(m.p.Room(i) + m.p.Kerf)
		if s.Count == 0 || m.p.Room(i) <= 0 {
			continue
		}
		count := int(s.Count)
		if count >= pieces { // no layout opens more sticks than there are parts
			count = -1
		}
		m.stores = append(m.stores, store{room: room, price: m.p.Cost(i), count: count, stock: i, only: -1})
		if widest < 0 || room > m.stores[widest].room {
			widest = len(m.stores) - 1
		}
	}
	m.sold = len(m.stores)
	return widest
}

// sizes is the length of each kind, a saw cut included.
func (m *model) sizes() []int64 {
	out := make([]int64, len(m.kinds))
	for k := range m.kinds {
		out[k] = m.kinds[k].size
	}
	return out
}

func (m *model) tooLong(part int) {
	q := m.p.Parts[part]
	for range q.Count {
		m.misfit = append(m.misfit, cut.NotPlaced{Tag: q.Tag})
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
