package stick

import "slices"

// repack takes a few sticks apart and packs their parts anew, again and again, and keeps what costs less,
// or as much with what is left gathered in fewer sticks, until the bound is met or the budget is spent.
func (s *search) repack() {
	if s.done() || s.budget.Over() || s.rank.left > 0 && s.rank.left <= s.leastLeft() {
		return
	}
	cur := plan{cloneLoads(s.best.loads), slices.Clone(s.best.left)}
	avail := s.m.counts()
	for _, l := range cur.loads {
		take(avail, l.store)
	}
	reserve := s.budget.Left() / 10
	least, gained := s.rank.left, s.budget.Left()
	for !s.done() && s.budget.Left() > reserve && !s.budget.Over() {
		if s.step(&cur, avail) {
			s.offerIfCheaper(cur)
		}
		if s.rank.left < least {
			least, gained = s.rank.left, s.budget.Left()
		} else if least > 0 && gained-s.budget.Left() > patience {
			break
		}
		s.budget.Spend(1)
	}
	s.offer(cur)
}

// offerIfCheaper ranks in full only what wins anyway; what is as cheap is ranked at the end.
func (s *search) offerIfCheaper(p plan) {
	if s.m.cost(p.loads) < s.rank.cost-costEps || s.m.length(p.left) < s.rank.left {
		s.offer(p)
	}
}

func total(ns []int) (t int) {
	for _, n := range ns {
		t += n
	}
	return t
}

// step repacks one random group of sticks and reports whether cur changed.
func (s *search) step(cur *plan, avail []int) bool {
	group := s.group(cur)
	if len(group) == 0 && total(cur.left) == 0 {
		return false
	}
	j := &job{have: slices.Clone(cur.left), avail: slices.Clone(avail), lead: s.dice.N(2) == 0}
	var old []load
	for _, i := range group {
		old = append(old, cur.loads[i])
		give(j.avail, cur.loads[i].store)
		for _, k := range cur.loads[i].kinds {
			j.have[k]++
		}
	}
	j.value = s.mood()
	p := s.b.build(j)
	p.loads = s.m.buyOrCut(p.loads)
	s.m.cheapen(p.loads, s.availWithout(avail, old))
	if !s.accept(old, cur.left, p) {
		return false
	}
	for _, l := range old {
		give(avail, l.store)
	}
	for _, l := range p.loads {
		take(avail, l.store)
	}
	slices.Sort(group)
	for n := len(group) - 1; n >= 0; n-- {
		cur.loads = slices.Delete(cur.loads, group[n], group[n]+1)
	}
	cur.loads = append(cur.loads, p.loads...)
	cur.left = p.left
	return true
}

func (s *search) availWithout(avail []int, old []load) []int {
	a := slices.Clone(avail)
	for _, l := range old {
		give(a, l.store)
	}
	return a
}

// group picks sticks to take apart: one with much left, preferably, and some at random.
func (s *search) group(cur *plan) []int {
	n := len(cur.loads)
	if n == 0 {
		return nil
	}
	size := min(n, 2+s.dice.N(5))
	first := s.dice.N(n)
	for range 3 {
		other := s.dice.N(n)
		if s.m.slack(cur.loads[other]) > s.m.slack(cur.loads[first]) {
			first = other
		}
	}
	group := []int{first}
	for tries := 0; len(group) < size && tries < 4*size; tries++ {
		if i := s.dice.N(n); !slices.Contains(group, i) {
			group = append(group, i)
		}
	}
	return group
}

// mood returns values of the parts for one packing: by size, somewhat in favour of long or of random ones.
func (s *search) mood() []int64 {
	out := make([]int64, len(s.m.kinds))
	if s.dice.N(3) == 0 {
		for k := range out {
			out[k] = s.m.kinds[k].size
		}
		return out
	}
	w := newValues(s.m, 1+0.15*s.dice.Share(), 1)
	w.jitter(s.dice, 0.08*s.dice.Share())
	w.into(out)
	return out
}

// accept compares the sticks taken apart with those packed anew.
func (s *search) accept(old []load, left []int, p plan) bool {
	if a, b := s.m.length(p.left), s.m.length(left); a != b {
		return a < b
	}
	was, is := s.m.cost(old), s.m.cost(p.loads)
	if is < was-costEps || is > was+costEps {
		return is < was
	}
	return s.m.spread(p.loads) < s.m.spread(old)
}

func (m *model) length(counts []int) (l int64) {
	for k, n := range counts {
		l += int64(n) * m.kinds[k].size
	}
	return l
}
