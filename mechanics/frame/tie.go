package frame

import (
	"math"
	"slices"
)

// term is one unknown and how much of it.
type term struct {
	of int
	by float64
}

// ties writes every freedom of the frame by those that are left when the panels have bound theirs: the
// movement of a bound node follows exactly from that of its panel, without any stiff spring.
//
// Freedoms are numbered node by node, six each, then panel by panel, three each: two slides and a turning.
// How a freedom moves is a sum over loose unknowns (of ≥ 0) and held freedoms (of < 0, the complement of the
// number of the hold).
type ties struct {
	loose   []int // freedom of each loose unknown
	held    []int // freedom of each hold that does not give
	follows [][]term
}

// binder eliminates one binding after another.
type binder struct {
	held    []bool
	follows map[int][]term // a bound freedom by others that were free when it was bound
	order   []int
	size    float64 // mm: what a turning is multiplied with to compare it with a slide
	panels  int     // first freedom of the panels
}

func (f Frame) ties(known names) ties {
	b := binder{follows: map[int][]term{}, panels: 6 * len(f.Nodes), size: f.size()}
	b.held = make([]bool, b.panels+3*len(f.Panels))
	for i, n := range f.Nodes {
		for j, k := range n.Hold {
			b.held[6*i+j] = math.IsInf(k, 1)
		}
	}
	for i, p := range f.Panels {
		own := b.panels + 3*i
		at := square(p.Normal)
		origin := f.Nodes[known.node[p.Nodes[0]]].At
		for _, name := range p.Nodes {
			n := known.node[name]
			off := f.Nodes[n].At.minus(origin).along(&at)
			b.bind(along(6*n, at[0], term{own, -1}, term{own + 2, off[1]}))
			b.bind(along(6*n, at[1], term{own + 1, -1}, term{own + 2, -off[0]}))
			b.bind(along(6*n+3, at[2], term{own + 2, -1}))
		}
	}
	return b.ties()
}

// along is the binding: the movement of three freedoms from first in a direction, and the terms, add to nothing.
func along(first int, d Vec, terms ...term) []term {
	for i, v := range d {
		terms = append(terms, term{first + i, v})
	}
	return terms
}

func (f Frame) size() float64 {
	far := leastLong
	for _, n := range f.Nodes {
		far = math.Max(far, n.At.minus(f.Nodes[0].At).length())
	}
	return far
}

// sameThing is how small a binding must have become, by what it was, to say nothing new. Nodes may stand off the
// plane of their panel by a tenth of it.
const sameThing = 1e-6

func (b *binder) strongest(binding []term) float64 {
	most := 0.0
	for _, t := range binding {
		most = math.Max(most, math.Abs(t.by)*b.weight(t.of))
	}
	return most
}

// bind lets one freedom of the binding follow from the others. A binding that says nothing new is passed over.
func (b *binder) bind(binding []term) {
	nothing := sameThing * b.strongest(binding)
	for i := 0; i < len(binding); i++ {
		t := binding[i]
		if expr, bound := b.follows[t.of]; bound {
			binding[i].by = 0
			for _, e := range expr {
				binding = append(binding, term{e.of, t.by * e.by})
			}
		}
	}
	binding = gather(binding)
	best := b.choose(binding, nothing)
	if best < 0 {
		return
	}
	chosen := binding[best]
	var rest []term
	for i, t := range binding {
		if i != best && math.Abs(t.by)*b.weight(t.of) > 1e-12*math.Abs(chosen.by)*b.weight(chosen.of) {
			rest = append(rest, term{t.of, -t.by / chosen.by})
		}
	}
	b.follows[chosen.of] = rest
	b.order = append(b.order, chosen.of)
}

// gather adds up terms of the same freedom, in the order of the freedoms.
func gather(terms []term) []term {
	slices.SortStableFunc(terms, func(a, b term) int { return a.of - b.of })
	var sum []term
	for _, t := range terms {
		if n := len(sum); n > 0 && sum[n-1].of == t.of {
			sum[n-1].by += t.by
			continue
		}
		sum = append(sum, t)
	}
	return sum
}

// choose picks the freedom to eliminate: one of a node rather than of a panel, so that the panel stays the
// one thing its nodes refer to, unless that would divide by a small number.
func (b *binder) choose(binding []term, nothing float64) int {
	best, bestBy, strongest := -1, 0.0, 0.0
	for i, t := range binding {
		by := math.Abs(t.by) * b.weight(t.of)
		if b.held[t.of] || by < nothing {
			continue
		}
		strongest = math.Max(strongest, by)
		if best < 0 || by > bestBy && (t.of < b.panels || binding[best].of >= b.panels) {
			best, bestBy = i, by
		}
	}
	if best < 0 || bestBy >= 0.1*strongest {
		return best
	}
	for i, t := range binding {
		if by := math.Abs(t.by) * b.weight(t.of); !b.held[t.of] && by > bestBy {
			best, bestBy = i, by
		}
	}
	return best
}

// weight makes terms comparable: a turning counts by the slide it makes over the size of the frame.
func (b *binder) weight(freedom int) float64 {
	turning := freedom%6 >= 3
	if freedom >= b.panels {
		turning = (freedom-b.panels)%3 == 2
	}
	if turning {
		return 1 / b.size
	}
	return 1
}

// ties numbers what is left and writes all the rest by it, the last bound first: a binding refers only to
// what was free when it was made.
func (b *binder) ties() ties {
	t := ties{follows: make([][]term, len(b.held))}
	for i, held := range b.held {
		if _, bound := b.follows[i]; bound {
			continue
		}
		if held {
			t.follows[i] = []term{{^len(t.held), 1}}
			t.held = append(t.held, i)
			continue
		}
		t.follows[i] = []term{{len(t.loose), 1}}
		t.loose = append(t.loose, i)
	}
	slices.Reverse(b.order)
	for _, i := range b.order {
		var sum []term
		for _, e := range b.follows[i] {
			for _, through := range t.follows[e.of] {
				sum = append(sum, term{through.of, e.by * through.by})
			}
		}
		t.follows[i] = gather(sum)
	}
	return t
}

// spread is how all freedoms move when the loose unknowns and the holds do.
func (t *ties) spread(loose, held []float64) []float64 {
	u := make([]float64, len(t.follows))
	for i, terms := range t.follows {
		for _, e := range terms {
			if e.of >= 0 {
				u[i] += e.by * loose[e.of]
			} else if held != nil {
				u[i] += e.by * held[^e.of]
			}
		}
	}
	return u
}

// gathered is what forces on all freedoms come to on the loose unknowns and on the holds.
func (t *ties) gathered(force []float64) (loose, held []float64) {
	loose, held = make([]float64, len(t.loose)), make([]float64, len(t.held))
	for i, f := range force {
		if f == 0 {
			continue
		}
		for _, e := range t.follows[i] {
			if e.of >= 0 {
				loose[e.of] += e.by * f
			} else {
				held[^e.of] += e.by * f
			}
		}
	}
	return loose, held
}
