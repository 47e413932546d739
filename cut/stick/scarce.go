package stick

import "slices"

// Where not all parts could be placed.
const (
	patience   = 500_000   // nodes without gain after which no less is looked for to be left over
	placedMost = 1_000_000 // nodes for the layout of what is placed
)

// leastLeft is the least length of parts that is left over whatever is done: what all stock with limits holds is less.
func (s *search) leastLeft() int64 {
	m := s.m
	full := m.fullest(m.needs())
	left := m.length(m.needs())
	for i, st := range m.stores {
		switch {
		case st.only >= 0:
			left -= int64(m.kinds[st.only].need) * st.room
		case st.count < 0:
			return 0
		case full != nil:
			left -= int64(st.count) * full[i]
		default:
			left -= int64(st.count) * st.room
		}
	}
	return max(0, left)
}

// layPlaced lays the parts that are placed out anew by themselves, as well as they can be: cost and bound are theirs.
func (s *search) layPlaced() {
	m := *s.m
	m.kinds = slices.Clone(m.kinds)
	for k, n := range s.placed() {
		m.kinds[k].need = n
	}
	nodes := max(boundBudget, min(s.budget.Left(), placedMost))
	some := newSearch(&m, s.budget.Again(nodes))
	some.offer(plan{s.best.loads, make([]int, len(m.kinds))})
	some.run()
	s.budget.Spend(nodes - some.budget.Left())
	s.best.loads, s.rank.cost, s.bound = some.best.loads, some.rank.cost, some.bound
}
