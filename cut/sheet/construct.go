package sheet

import (
	"container/heap"
	"math"
	"slices"

	"rodwright/cut"
)

// constructor builds fillings of one sheet up from its parts: two rectangles are put side by side or one above
// the other, the most promising first. A rectangle promises its value and the most that can lie outside of it;
// when none promises more than the best filling found, that is the best there is (Viswanathan and Bagchi,
// Operations Research 41, 1993; from memory). The promise is an upper bound: outside values come from a
// recursion that only ever rounds a region up to what the grid says of it.
type constructor struct {
	m       *model
	g       *grid // best fillings without counts, capped by the counted knapsack of areas
	outside [][]float64
	byArea  *areaTable
	store   store
	all     []built
	open    promises
	closed  []int32
	known   map[string][]int32 // counts → rectangles that hold just these
	best    int32              // index of the most valuable that keeps the stages
	most    float64            // the value of the most valuable, stages kept or not
}

// built is a rectangle put together; sizes include one saw cut.
type built struct {
	i, j        int // indices of the grid
	value       float64
	promise     float64
	counts      []uint16
	first, then int32 // what it is made of; −1 for a single part
	dir         direction
	kind        int
	turned      bool
}

// mostBuilt and mostBuiltKinds bound the memory of a construction: a rectangle counts the parts of every kind.
const (
	mostBuilt      = 150_000
	mostBuiltKinds = 500
)

// construct looks for the best filling of the only sheet there is. It returns the filling, where one better
// than beat was found, and an upper bound of what any filling is worth.
func (m *model) construct(beat float64, budget *cut.Budget) (f filled, found bool, bound float64) {
	bound = math.Inf(1)
	if !m.single() || len(m.kinds) > mostBuiltKinds {
		return f, false, bound
	}
	g, ok := m.grid(0, budget)
	if !ok {
		return f, false, bound
	}
	c := &constructor{m: m, store: m.stores[0], known: map[string][]int32{}, best: -1}
	if c.byArea = m.areaTable(budget); c.byArea == nil {
		return f, false, bound
	}
	if c.g = g.capped(c.store, c.byArea, budget); c.g == nil || !c.outer(budget) {
		return f, false, bound
	}
	c.begin(beat)
	bound = math.Max(c.most, c.run(beat, budget)) // a smaller rectangle may stand in for one with fewer stages
	if c.best < 0 {
		return f, false, bound
	}
	f = filled{store: 0}
	c.read(&f, piece{Rect: c.store.in}, c.best)
	return f, true, bound
}

// single reports whether one sheet without defects is to be filled: what a construction is for.
func (m *model) single() bool {
	return len(m.stores) == 1 && m.stores[0].count == 1 && len(m.stores[0].defects) == 0
}

// outer computes, for every size of a rectangle, the most that a sheet holds outside of it; false where the
// budget ends.
func (c *constructor) outer(budget *cut.Budget) bool {
	g := c.g
	c.outside = make([][]float64, len(g.xs))
	for i := range c.outside {
		c.outside[i] = make([]float64, len(g.ys))
	}
	for i := len(g.xs) - 1; i >= 0; i-- {
		for j := len(g.ys) - 1; j >= 0; j-- {
			c.outside[i][j] = c.outsideOf(i, j)
			if !budget.Spend((len(g.xs)-i+len(g.ys)-j)/50 + 1) {
				return false
			}
		}
	}
	return true
}

func (c *constructor) outsideOf(i, j int) (v float64) {
	g := c.g
	endX, endY := len(g.xs)-1, len(g.ys)-1
	if i < endX {
		v = c.outside[i+1][j]
	}
	if j < endY {
		v = math.Max(v, c.outside[i][j+1])
	}
	for a, k := 1, i; a <= endX && g.xs[i]+g.xs[a] <= g.xs[endX]; a++ {
		k = ceilIndex(g.xs, k, g.xs[i]+g.xs[a])
		if k > i {
			v = math.Max(v, c.outside[k][j]+g.best[a][j])
		}
	}
	for b, k := 1, j; b <= endY && g.ys[j]+g.ys[b] <= g.ys[endY]; b++ {
		k = ceilIndex(g.ys, k, g.ys[j]+g.ys[b])
		if k > j {
			v = math.Max(v, c.outside[i][k]+g.best[i][b])
		}
	}
	return v
}

// begin puts every single part among the rectangles that are open.
func (c *constructor) begin(beat float64) {
	for k, kd := range c.m.kinds {
		for _, turned := range []bool{false, true} {
			l, w := kd.l, kd.w
			if turned {
				l, w = w, l
			}
			if turned && (!kd.turn || c.store.grain || l == w) || !c.store.takes(l, w) {
				continue
			}
			b := built{first: -1, then: -1, kind: k, turned: turned, value: c.m.value(k), counts: make([]uint16, len(c.m.kinds))}
			b.i, _ = slices.BinarySearch(c.g.xs, l+c.m.p.Kerf)
			b.j, _ = slices.BinarySearch(c.g.ys, w+c.m.p.Kerf)
			b.counts[k] = 1
			c.offer(b, &beat)
		}
	}
}

// offer opens a rectangle unless it promises too little or one no larger holds the same parts.
func (c *constructor) offer(b built, beat *float64) {
	x, y := c.g.xs[b.i], c.g.ys[b.j]
	rest := c.byArea.most(c.byArea.whole - c.byArea.area(x, y))
	b.promise = b.value + math.Min(c.outside[b.i][b.j], rest)
	if b.promise <= *beat+costEps && b.value <= *beat+costEps {
		return
	}
	key := countsKey(b.counts)
	for _, o := range c.known[key] {
		if c.all[o].i <= b.i && c.all[o].j <= b.j {
			return
		}
	}
	n := int32(len(c.all))
	c.known[key] = append(c.known[key], n)
	c.all = append(c.all, b)
	c.most = math.Max(c.most, b.value)
	if b.value > *beat+costEps && c.keepsStages(n) {
		*beat, c.best = b.value, n
	}
	heap.Push(&c.open, promise{n, b.promise})
}

func countsKey(counts []uint16) string {
	key := make([]byte, 0, 2*len(counts))
	for _, n := range counts {
		key = append(key, byte(n), byte(n>>8))
	}
	return string(key)
}

// keepsStages reports whether what is built is parted within the stages.
func (c *constructor) keepsStages(n int32) bool {
	if c.m.p.Stages == 0 {
		return true
	}
	f := filled{}
	c.read(&f, piece{Rect: c.store.in}, n)
	return stagesOf(c.m.boxes(f), c.m.p.Kerf) <= c.m.p.Stages
}

// run joins the most promising rectangle with all that were before it, until none promises more than beat. It
// returns an upper bound of any filling.
func (c *constructor) run(beat float64, budget *cut.Budget) float64 {
	if c.best >= 0 {
		beat = c.all[c.best].value
	}
	top := math.Inf(1)
	for len(c.open) > 0 {
		p := heap.Pop(&c.open).(promise)
		top = math.Min(top, p.of)
		if p.of <= beat+costEps {
			return beat
		}
		c.closed = append(c.closed, p.at)
		for _, q := range c.closed {
			c.join(p.at, q, &beat)
		}
		if !budget.Spend(len(c.closed)/16+1) || len(c.all) > mostBuilt {
			return math.Max(beat, top)
		}
	}
	return beat
}

// join puts two rectangles side by side and one above the other.
func (c *constructor) join(p, q int32, beat *float64) {
	a, b := &c.all[p], &c.all[q]
	wide, high := c.g.xs[a.i]+c.g.xs[b.i], c.g.ys[a.j]+c.g.ys[b.j]
	beside, above := wide <= c.g.xs[len(c.g.xs)-1], high <= c.g.ys[len(c.g.ys)-1]
	if !beside && !above {
		return
	}
	counts, ok := c.together(a.counts, b.counts)
	if !ok {
		return
	}
	n := built{value: a.value + b.value, counts: counts, first: p, then: q, kind: -1}
	i, j := max(a.i, b.i), max(a.j, b.j)
	if beside {
		n.dir, n.i, n.j = acrossX, ceilIndex(c.g.xs, i, wide), j
		c.offer(n, beat)
	}
	if above {
		n.dir, n.i, n.j = acrossY, i, ceilIndex(c.g.ys, j, high)
		c.offer(n, beat)
	}
}

func (c *constructor) together(a, b []uint16) ([]uint16, bool) {
	for k, n := range a {
		if int(n)+int(b[k]) > c.m.kinds[k].need {
			return nil, false
		}
	}
	out := slices.Clone(a)
	for k, n := range b {
		out[k] += n
	}
	return out, true
}

// read reads the parts off a rectangle that lies in the corner of p.
func (c *constructor) read(f *filled, p piece, n int32) {
	b := c.all[n]
	if b.kind >= 0 {
		c.g.place(f, p, step{kind: b.kind, turned: b.turned})
		return
	}
	near, far := p, p
	near.dir, far.dir = b.dir, b.dir
	first := c.all[b.first]
	if b.dir == acrossX {
		near.Length = c.g.xs[first.i] - c.m.p.Kerf
		far.X, far.Length = p.X+c.g.xs[first.i], p.Length-c.g.xs[first.i]
	} else {
		near.Width = c.g.ys[first.j] - c.m.p.Kerf
		far.Y, far.Width = p.Y+c.g.ys[first.j], p.Width-c.g.ys[first.j]
	}
	c.read(f, near, b.first)
	c.read(f, far, b.then)
}

// promise is a rectangle that is open, and what it promises.
type promise struct {
	at int32
	of float64
}

// promises are a heap, the greatest first; of equals the one built first.
type promises []promise

func (h promises) Len() int      { return len(h) }
func (h promises) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h promises) Less(i, j int) bool {
	return h[i].of > h[j].of || h[i].of == h[j].of && h[i].at < h[j].at
}
func (h *promises) Push(x any) { *h = append(*h, x.(promise)) }
func (h *promises) Pop() any {
	old := *h
	last := old[len(old)-1]
	*h = old[:len(old)-1]
	return last
}
