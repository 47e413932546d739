package stick

import (
	"math"
	"slices"

	"rodwright/cut"
)

// alike tells the kinds of parts apart: those of one length are of one kind where they also cost the same beyond what
// making them costs, or can't be bought.
type alike struct {
	size   int64
	bought bool
	beyond float64 // the price of one that is bought less what making it would cost
}

func (m *model) alike(q cut.StickPart) alike {
	a := alike{size: int64(q.Length + m.p.Kerf), bought: q.Bought.Given}
	if a.bought {
		a.beyond = q.Bought.Value - q.Making.Or(0)
	}
	return a
}

// counter adds the store that parts of a kind are bought from, and returns its index; -1 where they can't be bought.
// What is bought saves the work of making it, so its price is what it costs beyond that work, which then every part
// costs; where that is nothing or less it is bought in any case and needs no store.
func (m *model) counter(a alike) int {
	if !a.bought {
		return -1
	}
	m.stores = append(m.stores, store{room: a.size, price: a.beyond, count: -1, stock: -1})
	return len(m.stores) - 1
}

// work is what every layout of the same parts costs alike: those that are bought in any case, and the work of making
// all others, whether they are cut or bought. left are the parts that found no stock.
func (m *model) work(left []int) (sum float64) {
	for _, i := range m.ready {
		sum += float64(m.p.Parts[i].Count) * m.p.Parts[i].Bought.Value
	}
	for k, kd := range m.kinds {
		n := kd.need - left[k]
		for _, i := range kd.part {
			q := m.p.Parts[i]
			sum += float64(min(n, int(q.Count))) * q.Making.Or(0)
			n -= min(n, int(q.Count))
		}
	}
	return sum
}

// buyOrCut makes a layout cheaper where it sees how: a stick that costs more than its parts bought is not opened, and
// what is bought is cut where there is room left for it, the dearest first.
func (m *model) buyOrCut(loads []load) []load {
	if len(m.stores) == m.sold {
		return loads
	}
	var sticks []load
	bought := make([]int, len(m.kinds))
	for _, l := range loads {
		if st := m.stores[l.store]; st.only >= 0 || m.boughtFor(l) < st.price {
			for _, k := range l.kinds {
				bought[k]++
			}
			continue
		}
		sticks = append(sticks, load{l.store, slices.Clone(l.kinds)})
	}
	for _, k := range m.dearest() {
		for i := range sticks {
			for slack := m.slack(sticks[i]); bought[k] > 0 && slack >= m.kinds[k].size; slack -= m.kinds[k].size {
				sticks[i].kinds = append(sticks[i].kinds, int32(k))
				bought[k]--
			}
		}
	}
	for k, n := range bought {
		for range n {
			sticks = append(sticks, load{m.kinds[k].buys, []int32{int32(k)}})
		}
	}
	return sticks
}

// buyNone looks for a layout that cuts every part, as long as if none could be bought, so that being able to buy never
// makes a layout dearer. What found no stock is bought then where it can be. Half of the budget is kept for what follows.
func (s *search) buyNone() {
	if len(s.m.stores) == s.m.sold || s.done() || s.budget.Over() {
		return
	}
	m := *s.m
	m.stores, m.kinds = m.stores[:m.sold], slices.Clone(m.kinds)
	for k := range m.kinds {
		m.kinds[k].buys = -1
	}
	left := s.budget.Left()
	all := newSearch(&m, s.budget.Again(left))
	all.run()
	s.budget.Spend(min(left-all.budget.Left(), left/2))
	for k, n := range all.best.left {
		if buys := s.m.kinds[k].buys; buys >= 0 {
			all.best.loads = append(all.best.loads, slices.Repeat([]load{{buys, []int32{int32(k)}}}, n)...)
			all.best.left[k] = 0
		}
	}
	s.offer(all.best)
}

// boughtFor is what the parts of a stick cost when they are bought; more than any stick where one can't be.
func (m *model) boughtFor(l load) (sum float64) {
	for _, k := range l.kinds {
		s := m.kinds[k].buys
		if s < 0 {
			return math.Inf(1)
		}
		sum += m.stores[s].price
	}
	return sum
}

// dearest are the kinds that may be bought, those first that cost most beyond the work.
func (m *model) dearest() (out []int) {
	for k, kd := range m.kinds {
		if kd.buys >= 0 {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		switch pa, pb := m.stores[m.kinds[a].buys].price, m.stores[m.kinds[b].buys].price; {
		case pa > pb:
			return -1
		case pa < pb:
			return 1
		}
		return 0
	})
	return out
}
