package stick

import (
	"math"

	"rodwright/cut"
)

// builder makes plans by filling one stick after another.
type builder struct {
	m *model
	f *filler
}

func newBuilder(m *model, b *cut.Budget) *builder {
	return &builder{m: m, f: &filler{budget: b, nodes: fillNodes, sizes: m.sizes()}}
}

// job is what is to be cut and what is there for it. Both are used up by building.
type job struct {
	have  []int   // parts wanted, by kind
	avail []int   // sticks there, by store; -1 is any number
	value []int64 // what a part of each kind is worth to a stick
	lead  bool    // every stick takes the longest part that is left
	learn *values // corrected after every stick, when given
}

// choice is one stick as it could be filled next.
type choice struct {
	store  int
	counts []int
	rate   float64 // price for what it takes away
	fill   int64
	all    bool // nothing is left after it
}

// build fills sticks until no part is left or no stock, or the budget is spent.
func (b *builder) build(j *job) plan {
	p := plan{left: j.have}
	for !b.f.budget.Over() {
		c, ok := b.next(j)
		if !ok {
			return p
		}
		times := b.times(j, c)
		for range times {
			p.loads = append(p.loads, load{c.store, listed(c.counts)})
		}
		for k, n := range c.counts {
			j.have[k] -= n * times
		}
		if j.avail[c.store] > 0 {
			j.avail[c.store] -= times
		}
		if j.learn != nil {
			j.learn.correct(b.m, c, times, j.have)
			j.learn.into(j.value)
		}
	}
	return p
}

// times returns how often the choice can be repeated.
func (b *builder) times(j *job, c choice) int {
	t := math.MaxInt
	for k, n := range c.counts {
		if n > 0 {
			t = min(t, j.have[k]/n)
		}
	}
	if a := j.avail[c.store]; a >= 0 {
		t = min(t, a)
	}
	return max(t, 1)
}

// next returns the stick that takes most value off for its price; where one stick holds all the rest and
// going on would cost at least as much, that one.
func (b *builder) next(j *job) (best choice, ok bool) {
	rest := int64(0)
	for k, n := range j.have {
		rest += int64(n) * b.f.sizes[k]
	}
	if rest == 0 {
		return best, false
	}
	var last choice
	finished := false
	for s := range b.m.stores {
		if j.avail[s] == 0 {
			continue
		}
		c, filled := b.oneOf(j, s)
		if !filled {
			continue
		}
		if c.all = c.fill == rest; c.all && (!finished || b.m.stores[s].price < b.m.stores[last.store].price) {
			last, finished = c, true
		}
		if !ok || c.rate < best.rate || c.rate == best.rate && c.fill > best.fill {
			best, ok = c, true
		}
	}
	if finished && !best.all {
		perLength := b.m.stores[best.store].price / float64(max(best.fill, 1))
		if b.m.stores[last.store].price <= b.m.stores[best.store].price+perLength*float64(rest-best.fill) {
			return last, true
		}
	}
	return best, ok
}

// oneOf is one piece of store s: a stick as it could be filled, or a part that is bought, unless another one leads.
func (b *builder) oneOf(j *job, s int) (choice, bool) {
	k := b.m.stores[s].only
	if k < 0 {
		return b.try(j, s)
	}
	if j.have[k] == 0 || j.lead && total(j.have[:k]) > 0 {
		return choice{}, false
	}
	counts := make([]int, len(j.have))
	counts[k] = 1
	return choice{store: s, counts: counts, fill: b.f.sizes[k], rate: b.m.stores[s].price / float64(max(j.value[k], 1))}, true
}

// try fills a stick of store s.
func (b *builder) try(j *job, s int) (choice, bool) {
	st := b.m.stores[s]
	lead := -1
	room := st.room
	if j.lead {
		for k, n := range j.have {
			if n > 0 && b.f.sizes[k] <= room {
				lead = k
				break
			}
		}
		if lead < 0 {
			return choice{}, false
		}
		room -= b.f.sizes[lead]
		j.have[lead]--
	}
	counts, v := b.f.fill(room, j.have, j.value)
	if lead >= 0 {
		j.have[lead]++
		counts[lead]++
		v += j.value[lead]
	}
	c := choice{store: s, counts: counts}
	for k, n := range counts {
		c.fill += int64(n) * b.f.sizes[k]
	}
	c.rate = st.price / float64(max(v, 1))
	if st.price == 0 {
		c.rate = -float64(v)
	}
	return c, c.fill > 0
}

// listed turns counts into a list of kinds.
func listed(counts []int) (kinds []int32) {
	for k, n := range counts {
		for range n {
			kinds = append(kinds, int32(k))
		}
	}
	return kinds
}
