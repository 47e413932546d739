package panel

import (
	"container/heap"
	"math"
)

// node is a part of the choices: which groups are cut how often, and what no layout there comes below.
type node struct {
	scope
	bound  float64
	prices []float64
	counts []float64
	group  int // a board that the program cuts into a kind for a fraction of its times, -1 for none
	kind   int
}

type nodes []*node

func (h nodes) Len() int           { return len(h) }
func (h nodes) Less(i, j int) bool { return h[i].bound < h[j].bound }
func (h nodes) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *nodes) Push(x any)        { *h = append(*h, x.(*node)) }
func (h *nodes) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// branching is the search over the numbers of boards that are cut, the most promising part first (branch and
// price; Barnhart, Johnson, Nemhauser, Savelsbergh and Vance, Operations Research 46, 1998). What it leaves
// open is the bound.
type branching struct {
	s    *search
	p    *program
	root *program // without roundings
	open nodes
	hole float64 // the least cost at which boards could not be ripped as the bound would have them

	plain []float64 // prices of the whole problem without roundings

	later    nodes // parts that were too large to settle, for when there is more patience
	patience int   // nodes of one settling
}

func (s *search) newBranching(p *program) *branching {
	return &branching{s: s, p: p, root: p, hole: math.Inf(1)}
}

// atOnce is up to how many boards the roundings are made before anything else; with more they wait for the second
// round, as the program takes long with them.
const atOnce = 20

// first is a bound at prices by area, such that all that is wanted is worth the layout there is: for a search that is
// ended at once.
func (b *branching) first() {
	l, area := b.p.l, 0.0
	for _, kd := range l.kinds {
		area += kd.need * float64(kd.length)
	}
	for t, kd := range l.kinds {
		b.p.price[t] = b.s.best.cost * float64(kd.length) / area
	}
	v, _ := b.p.lagrange(b.p.all(), false)
	b.s.bound = math.Max(b.s.bound, v)
}

// begin solves the whole problem's program.
func (b *branching) begin() {
	b.first()
	if b.s.budget.Over() {
		return
	}
	var v float64
	v, b.plain = b.p.solve(b.p.all(), math.Inf(1))
	b.s.bound = math.Max(b.s.bound, v)
}

// whole looks for the bound with whole boards, and opens the search.
func (b *branching) whole() {
	if b.s.budget.Over() || len(b.plain) == 0 {
		return
	}
	b.s.bound = math.Max(b.s.bound, b.p.whole(b.p.all(), b.plain, b.enough()))
	if b.s.budget.Over() {
		return
	}
	if len(b.p.l.boards) <= atOnce {
		b.tighten()
		return
	}
	b.push(b.p.all(), b.s.bound)
	b.learn()
}

// tighten makes the program closer by roundings and begins anew with it.
func (b *branching) tighten() {
	for n, more := 0, true; n < roundsTimes && more && !b.s.budget.Over(); n++ {
		if b.p, more = b.p.tighten(); more {
			b.p.solve(b.p.all(), math.Inf(1))
		}
	}
	b.s.taken = 0
	b.open, b.later = nil, nil
	b.push(b.p.all(), b.s.bound)
	b.learn()
}

// enough is the bound from which on a part need not be looked at.
func (b *branching) enough() float64 {
	if b.s.best.short > 0 {
		return math.Inf(1)
	}
	return b.s.best.cost - costEps
}

// push bounds a part and keeps it where something better may be in it, or where time ends before that is known.
func (b *branching) push(s scope, least float64) {
	if b.s.budget.Over() {
		heap.Push(&b.open, &node{scope: s, bound: least})
		return
	}
	bound, prices := b.p.solve(s, b.enough())
	n := &node{scope: s, bound: math.Max(bound, least), prices: prices, counts: b.p.counts()}
	if n.bound < b.enough() && !b.s.budget.Over() {
		n.bound = math.Max(n.bound, b.p.whole(s, prices, b.enough()))
	}
	n.group, n.kind = b.p.halfKind(s)
	if n.bound < b.enough() {
		heap.Push(&b.open, n)
	}
}

// learn takes over the bound of what is open.
func (b *branching) learn() {
	low := math.Min(b.hole, b.s.best.cost)
	for _, list := range []nodes{b.open, b.later} {
		for _, n := range list[:min(1, len(list))] {
			low = math.Min(low, n.bound)
		}
	}
	b.s.bound = math.Max(b.s.bound, low)
}

// search divides the most promising part until nothing is open, so much of the budget is spent or time is up.
func (b *branching) search(spend int) {
	for _, n := range b.later {
		heap.Push(&b.open, n)
	}
	b.later = b.later[:0]
	until := b.s.budget.Left() - spend
	for b.s.budget.Left() > until && !b.s.budget.Over() && !b.s.done() {
		if len(b.open) == 0 {
			if len(b.later) == 0 {
				break
			}
			b.open, b.later = b.later, nil
			b.patience *= 4
		}
		n := heap.Pop(&b.open).(*node)
		if n.bound < b.enough() {
			b.divide(n)
			b.learn()
		}
	}
	b.learn()
}

// divide settles a part by listing all ways to cut its boards, or cuts it in two.
func (b *branching) divide(n *node) {
	g, whole := b.pick(n)
	if whole && b.s.settle(b.p, n.scope, n.prices, b) {
		return
	}
	if whole && n.group >= 0 {
		b.divideKind(n)
		return
	}
	if g < 0 {
		heap.Push(&b.later, n)
		return
	}
	at := int(math.Floor(n.counts[g] + 1e-6))
	at = min(max(at, n.lo[g]), n.hi[g]-1)
	for _, up := range []bool{true, false} {
		s := n.scope
		if up {
			s.lo = with(s.lo, g, at+1)
		} else {
			s.hi = with(s.hi, g, at)
		}
		b.push(s, n.bound)
		if b.s.budget.Over() {
			heap.Push(&b.later, n)
			return
		}
	}
}

// divideKind cuts a part in two by whether a board is cut into a kind.
func (b *branching) divideKind(n *node) {
	never, once := n.scope, n.scope
	never.rules, once.rules = make([]rule, len(n.lo)), make([]rule, len(n.lo))
	copy(never.rules, n.rules)
	copy(once.rules, n.rules)
	never.rules[n.group].never |= 1 << n.kind
	once.rules[n.group].once |= 1 << n.kind
	once.lo = with(once.lo, n.group, 1)
	for _, s := range []scope{never, once} {
		b.push(s, n.bound)
		if b.s.budget.Over() {
			heap.Push(&b.later, n)
			return
		}
	}
}

// halfKind returns a board, and the kind that the present solution cuts it into nearest to half of its times.
func (p *program) halfKind(s scope) (group, kind int) {
	n := len(p.l.kinds)
	use := make([]float64, len(p.groups)*n)
	p.use(func(w groupWay, times float64) {
		for t, y := range w.yields {
			if y > 0 {
				use[w.group*n+t] += times
			}
		}
	})
	best := 0.5 - 1e-6
	group, kind = -1, -1
	for i, u := range use {
		g, t := i/n, i%n
		if d := math.Abs(u - 0.5); d < best && len(p.groups[g].boards) == 1 && p.groups[g].pos != nil && n <= 64 &&
			len(bits(s.rule(g).once)) < mostOnce {
			best, group, kind = d, g, t
		}
	}
	return group, kind
}

func with(list []int, i, v int) []int {
	out := append([]int(nil), list...)
	out[i] = v
	return out
}

// pick returns the group to divide by: the one farthest from whole numbers, the dearer the better; whole says
// that all are whole, then it is the dearest that is still free, or -1.
func (b *branching) pick(n *node) (g int, whole bool) {
	best := 0.0
	g, whole = -1, true
	for i, z := range n.counts {
		if d := math.Abs(z - math.Round(z)); d > 1e-6 && n.lo[i] < n.hi[i] {
			if v := d * b.p.groups[i].cost; whole || v > best {
				best, g, whole = v, i, false
			}
		} else if whole && n.lo[i] < n.hi[i] {
			if v := b.p.groups[i].cost; g < 0 || v > best {
				best, g = v, i
			}
		}
	}
	return g, whole
}
