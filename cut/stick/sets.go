package stick

import (
	"slices"

	"rodwright/cut/cover"
)

// setLimit is how many choices of stock are tried at most.
const setLimit = 400

// bySets goes the other way round: it lists the choices of stock that could hold all parts and cost less
// than the best plan, the cheapest first, and tries to pack the parts into just those.
func (s *search) bySets() {
	if s.done() || s.rank.left > 0 || s.budget.Over() {
		return
	}
	stop := s.budget.Left() / 2
	for round := 1; round <= 3 && !s.done(); round++ {
		for _, set := range cover.Sets(s.holds(), s.m.length(s.m.needs()), s.rank.cost-costEps, setLimit) {
			if set.Price > s.rank.cost-costEps {
				break
			}
			if s.budget.Over() || s.budget.Left() < stop {
				return
			}
			s.packInto(set.Counts, 40*round*round)
		}
	}
}

// holds returns what each stock holds at most: its room, or less where no parts add up to it.
func (s *search) holds() []cover.Stock {
	items := make([]cover.Item, len(s.m.kinds))
	for k, kd := range s.m.kinds {
		items[k] = cover.Item{Size: kd.size, Value: kd.size, Count: kd.need}
	}
	out := make([]cover.Stock, len(s.m.stores))
	for j, st := range s.m.stores {
		nodes := 2000
		out[j] = cover.Stock{Hold: cover.Most(items, st.room, &nodes), Price: st.price, Count: st.count}
		if st.only >= 0 {
			out[j].Count = s.m.kinds[st.only].need
		}
	}
	return out
}

// packInto tries to pack all parts into the given sticks: a first packing, then a number of steps that
// take some sticks apart and pack them anew with what is left over.
func (s *search) packInto(avail []int, steps int) {
	cur := s.b.build(&job{have: s.m.needs(), avail: slices.Clone(avail), value: s.mood(), lead: s.dice.N(2) == 0})
	rest := slices.Clone(avail)
	for _, l := range cur.loads {
		take(rest, l.store)
	}
	for range steps {
		if total(cur.left) == 0 {
			s.offer(cur)
			return
		}
		if s.budget.Over() {
			return
		}
		s.step(&cur, rest)
	}
}
