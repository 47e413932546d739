package main

import (
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/length"
)

// arcFlow returns a problem of sticks as a flow along the stick: J. M. Valério de Carvalho, Exact solution of
// bin-packing problems using column generation and branch-and-bound, Annals of Operations Research 86 (1999)
// 629–659; for several lengths with prices the same, LP models for bin packing and cutting stock problems,
// European Journal of Operational Research 141 (2002) 253–273.
//
// Nodes are the positions that a saw can stand at, arcs a part from one position to another, or what is left,
// from one to the next; each length of stock is an arc from its end back to 0 that costs its price. As in the
// paper's reductions, parts lie on a stick from the longest to the shortest and no more of a kind than are
// wanted, so a position stands only if such a row ends there. A part takes its length and one saw cut, a stick
// holds one saw cut more than its room.
//
//	least Σ price(s)·z(s)
//	at every node: what flows in flows out
//	for every length: Σ arcs of it ≥ wanted
func arcFlow(name string, p *stick.Problem) *program {
	f := newFlow(p)
	out := &program{name: name}
	nodes := f.nodes()
	at := map[length.Length]int{}
	for _, x := range nodes {
		at[x] = out.condition(equal, 0)
	}
	sticks := 0.0
	for _, k := range f.kinds {
		sticks += float64(k.need)
		wanted := out.condition(atLeast, float64(k.need))
		for _, x := range k.from {
			out.unknown(0, float64(k.need), true, entry{at[x], -1}, entry{at[x+k.size], 1}, entry{wanted, 1})
		}
	}
	for i := range nodes[1:] {
		out.unknown(0, math.Inf(1), false, entry{at[nodes[i]], -1}, entry{at[nodes[i+1]], 1})
	}
	for i, s := range p.Stock {
		most := sticks
		if s.Count != cut.Any {
			most = min(most, float64(s.Count))
		}
		if end := f.room[i]; end > 0 && most > 0 {
			out.unknown(p.Cost(i), most, true, entry{at[end], -1}, entry{at[0], 1})
		}
	}
	return out
}

// flow is a problem of sticks as positions along them.
type flow struct {
	room  []length.Length // of each stock, with one saw cut; 0 for one without room
	kinds []flowKind      // the longest first
}

// flowKind is all parts of one length.
type flowKind struct {
	size length.Length // with a saw cut
	need int
	from []length.Length // where one may begin
}

func newFlow(p *stick.Problem) *flow {
	f := &flow{}
	for i := range p.Stock {
		f.room = append(f.room, max(0, p.Room(i)+p.Kerf))
	}
	need := map[length.Length]int{}
	for _, q := range p.Parts {
		need[q.Length+p.Kerf] += int(q.Count)
	}
	for size, n := range need {
		f.kinds = append(f.kinds, flowKind{size: size, need: n})
	}
	slices.SortFunc(f.kinds, func(a, b flowKind) int { return int(min(1, max(-1, b.size-a.size))) })
	f.reach()
	return f
}

// reach finds the places where a part of each length may begin: behind parts no shorter, and fewer of its own
// than are wanted.
func (f *flow) reach() {
	most := slices.Max(f.room)
	ends := []length.Length{0}
	for i := range f.kinds {
		k := &f.kinds[i]
		before := map[length.Length]int{} // the fewest parts of this length in a row that ends there
		for _, x := range ends {
			before[x] = 0
		}
		for j := 0; j < len(ends); j++ { // ends grows behind j, each end by one part of this length
			x := ends[j]
			y := x + k.size
			if before[x] == k.need || y > most {
				continue
			}
			k.from = append(k.from, x)
			if _, seen := before[y]; !seen {
				before[y] = before[x] + 1
				ends = append(ends, y)
			}
		}
		slices.Sort(ends)
	}
}

// nodes are all positions, the ends of the stock among them, in order.
func (f *flow) nodes() (out []length.Length) {
	out = append(out, 0)
	out = append(out, f.room...)
	for _, k := range f.kinds {
		for _, x := range k.from {
			out = append(out, x, x+k.size)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
