package stick

// firstFit is the plan that always comes first and takes no search: every part, the longest first, goes on
// the first stick with room for it, or on a new one of the stock that costs least for its length.
func (m *model) firstFit() plan {
	p := plan{left: make([]int, len(m.kinds))}
	avail := m.counts()
	var slack []int64
	for k, kd := range m.kinds {
		at := 0 // sticks before it have no room for this length
		for n := range kd.need {
			for at < len(slack) && slack[at] < kd.size {
				at++
			}
			if at == len(slack) {
				s := m.cheapest(kd.size, avail)
				if s < 0 {
					s = kd.buys
				}
				if s < 0 {
					p.left[k] = kd.need - n
					break
				}
				take(avail, s)
				p.loads = append(p.loads, load{store: s})
				slack = append(slack, m.stores[s].room)
			}
			slack[at] -= kd.size
			p.loads[at].kinds = append(p.loads[at].kinds, int32(k))
		}
	}
	return p
}

// cheapest returns the stock that is there, has room for a part of the size and costs least for its
// length; -1 for none.
func (m *model) cheapest(size int64, avail []int) int {
	best := -1
	for s, st := range m.stores[:m.sold] {
		if avail[s] == 0 || st.room < size {
			continue
		}
		if best < 0 || st.price*float64(m.stores[best].room) < m.stores[best].price*float64(st.room) {
			best = s
		}
	}
	return best
}
