package stick

import "math"

// pricing looks for ways that pay, by some duals, and adds those that do by the program's own as well.
type pricing struct {
	c       *columns
	at, own []float64
	added   int
	ratio   float64 // the least of what a stick costs to what it is worth, 0 where that says nothing
}

const tinyDual = 1e-9

// all looks at every stick. look calls add for ways to fill a stick of a store; the first must be the most valuable.
func (p *pricing) all(look func(store int, pays float64, add func(counts []int))) (ratio float64, added int) {
	p.ratio, p.added = 1, 0
	m := p.c.s.m
	for s, st := range m.stores[:m.sold] {
		worth, pays := st.price, st.price
		if row := p.c.limits[s]; row >= 0 {
			worth, pays = worth-p.at[row], pays-p.own[row]
			if p.at[row] < -tinyDual {
				p.ratio = 0
			}
		}
		look(s, worth, func(counts []int) { p.add(s, counts, worth, pays) })
	}
	return p.ratio, p.added
}

func (p *pricing) add(s int, counts []int, worth, pays float64) {
	var v, w float64
	for k, n := range counts {
		v += float64(n) * p.at[k]
		w += float64(n) * p.own[k]
	}
	if v > worth {
		p.ratio = math.Min(p.ratio, worth/v)
	}
	if w <= pays+1e-7*p.c.price {
		return
	}
	known := len(p.c.way)
	if p.c.add(load{s, listed(counts)}); len(p.c.way) > known {
		p.added++
	}
}

// looked are the most valuable way to fill a stick of store s, by the table, and the most valuable ones that begin
// with a part of each kind, so that one round brings ways for all parts.
func (p *pricing) looked(s int, worth float64, add func(counts []int)) {
	c, m := p.c, p.c.s.m
	room := m.stores[s].room
	add(c.table.counts(room, len(m.kinds)))
	for k, kd := range m.kinds {
		if c.have[k] == 0 || kd.size > room || p.at[k]+c.table.value(room-kd.size) <= worth {
			continue
		}
		if !c.s.budget.Spend(1 + len(c.table.bundle)/cellsPerNode) {
			return
		}
		counts := c.table.counts(room-kd.size, len(m.kinds))
		if counts[k]++; counts[k] <= c.have[k] {
			add(counts)
		}
	}
}

// branched is a valuable way to fill a stick of store s, by branching.
func (p *pricing) branched(s int, _ float64, add func(counts []int)) {
	m := p.c.s.m
	counts, _ := p.c.s.b.f.bestFill(m.stores[s].room, p.c.have, p.at[:len(m.kinds)])
	add(counts)
}

// climbQuick bounds the search for the ways that begin with one kind where any that pays will do, climbSure where it
// must be certain that none does.
const (
	climbQuick = 3_000
	climbSure  = 100_000
)

// climbed goes through the ways with a coarse table of what rooms are worth. It finds the most valuable way that
// begins with each kind, or where the steps run out the most valuable until then.
func (p *pricing) climbed(steps int) func(s int, worth float64, add func(counts []int)) {
	c, m := p.c, p.c.s.m
	e := newEnumeration(m, c.have, c.s.budget, measure{weight: whole(p.at[:len(m.kinds)], c.price)})
	return func(s int, worth float64, add func(counts []int)) {
		pays := int64(worth / c.price * weightScale * (1 + 1e-9))
		for k := range m.kinds {
			kinds, _, sure := e.heaviest(m.stores[s].room, pays, k, steps)
			if !sure {
				p.ratio = 0
			}
			if kinds == nil {
				continue
			}
			counts := make([]int, len(m.kinds))
			for _, k := range kinds {
				counts[k]++
			}
			add(counts)
		}
	}
}
