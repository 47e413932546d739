package sheet

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// grid is the best filling of every rectangle of a sheet without counts, stages and defects: the recursion
// of Gilmore and Gomory over the lengths and widths that parts and saw cuts add up to. Sizes include one
// saw cut.
type grid struct {
	m      *model
	xs, ys []length.Length
	best   [][]float64
	how    [][]step
}

// step says how a rectangle is best filled: by a single part, or by cutting it in two.
type step struct {
	kind   int // −1 where it is cut or left empty
	turned bool
	dir    direction // uncut where no cut is made
	at     int       // index of the first half's size
}

// gridWork bounds the recursion: rectangles times cuts.
const gridWork = 300_000_000

// gridPoints bounds the sizes in one direction.
const gridPoints = 1500

// grid returns the best fillings of a sheet, computed once for each size, unless that takes too long.
func (m *model) grid(s int, budget *cut.Budget) (*grid, bool) {
	st := m.stores[s]
	key := gridKey{st.in.Length, st.in.Width, st.grain}
	g, known := m.grids[key]
	if !known {
		g = m.newGrid(st, budget)
		if m.grids == nil {
			m.grids = map[gridKey]*grid{}
		}
		m.grids[key] = g
	}
	return g, g != nil
}

// gridKey tells sheets apart that are filled differently.
type gridKey struct {
	l, w  length.Length
	grain bool
}

func (m *model) newGrid(s store, budget *cut.Budget) *grid {
	g := &grid{m: m}
	var ls, ws []length.Length
	for _, k := range m.kinds {
		ls, ws = append(ls, k.l+m.p.Kerf), append(ws, k.w+m.p.Kerf)
		if k.turn && !s.grain {
			ls, ws = append(ls, k.w+m.p.Kerf), append(ws, k.l+m.p.Kerf)
		}
	}
	var ok1, ok2 bool
	g.xs, ok1 = sums(ls, s.in.Length+m.p.Kerf)
	g.ys, ok2 = sums(ws, s.in.Width+m.p.Kerf)
	work := len(g.xs) * len(g.ys) * (len(g.xs) + len(g.ys)) / 4
	if !ok1 || !ok2 || work > gridWork || budget.Over() {
		return nil
	}
	g.parts(s)
	for i := range g.xs {
		for j := range g.ys {
			g.improve(i, j)
			if !budget.Spend((i+j)/100 + 1) {
				return nil
			}
		}
	}
	return g
}

// sums returns all sums of sizes up to room, ascending, and room itself; false when they are too many.
func sums(sizes []length.Length, room length.Length) ([]length.Length, bool) {
	sizes = slices.Clone(sizes)
	slices.Sort(sizes)
	sizes = slices.Compact(sizes)
	seen := map[length.Length]bool{0: true, room: true}
	todo := []length.Length{0}
	for len(todo) > 0 {
		x := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, s := range sizes {
			if y := x + s; y <= room && !seen[y] {
				if len(seen) > gridPoints {
					return nil, false
				}
				seen[y] = true
				todo = append(todo, y)
			}
		}
	}
	out := make([]length.Length, 0, len(seen))
	for x := range seen {
		out = append(out, x)
	}
	slices.Sort(out)
	return out, true
}

// parts fills every rectangle with the most valuable single part.
func (g *grid) parts(s store) {
	g.best = make([][]float64, len(g.xs))
	g.how = make([][]step, len(g.xs))
	for i := range g.xs {
		g.best[i] = make([]float64, len(g.ys))
		g.how[i] = make([]step, len(g.ys))
		for j := range g.ys {
			g.how[i][j] = step{kind: -1}
		}
	}
	for k, kd := range g.m.kinds {
		g.single(k, kd.l, kd.w, false)
		if kd.turn && !s.grain {
			g.single(k, kd.w, kd.l, true)
		}
	}
	for i := range g.xs {
		for j := range g.ys {
			if i > 0 && g.best[i-1][j] > g.best[i][j] {
				g.best[i][j], g.how[i][j] = g.best[i-1][j], g.how[i-1][j]
			}
			if j > 0 && g.best[i][j-1] > g.best[i][j] {
				g.best[i][j], g.how[i][j] = g.best[i][j-1], g.how[i][j-1]
			}
		}
	}
}

// single offers a part to the least rectangle that holds it.
func (g *grid) single(k int, l, w length.Length, turned bool) {
	v := g.m.value(k)
	i, _ := slices.BinarySearch(g.xs, l+g.m.p.Kerf)
	j, _ := slices.BinarySearch(g.ys, w+g.m.p.Kerf)
	if i < len(g.xs) && j < len(g.ys) && v > g.best[i][j] {
		g.best[i][j], g.how[i][j] = v, step{kind: k, turned: turned}
	}
}

// improve finds the best cut of rectangle i, j into two.
func (g *grid) improve(i, j int) {
	best := g.best[i][j]
	for a := 1; a < i && 2*g.xs[a] <= g.xs[i]; a++ {
		b := floorIndex(g.xs[:i], g.xs[i]-g.xs[a])
		if v := g.best[a][j] + g.best[b][j]; v > best {
			best, g.how[i][j] = v, step{kind: -1, dir: acrossX, at: a}
		}
	}
	for a := 1; a < j && 2*g.ys[a] <= g.ys[j]; a++ {
		b := floorIndex(g.ys[:j], g.ys[j]-g.ys[a])
		if v := g.best[i][a] + g.best[i][b]; v > best {
			best, g.how[i][j] = v, step{kind: -1, dir: acrossY, at: a}
		}
	}
	g.best[i][j] = best
}

// ceilIndex returns the index, from the given one on, of the least value not below x.
func ceilIndex(xs []length.Length, from int, x length.Length) int {
	i, _ := slices.BinarySearch(xs[from:], x)
	return from + i
}

// floorIndex returns the index of the greatest value not above x.
func floorIndex(xs []length.Length, x length.Length) int {
	i, found := slices.BinarySearch(xs, x)
	if !found {
		i--
	}
	return i
}

func (g *grid) value() float64 { return g.best[len(g.xs)-1][len(g.ys)-1] }

// parted reads the parts off the best filling of a whole sheet.
func (g *grid) parted(store int) filled {
	f := filled{store: store}
	g.read(&f, piece{Rect: g.m.stores[store].in}, len(g.xs)-1, len(g.ys)-1)
	return f
}

func (g *grid) read(f *filled, p piece, i, j int) {
	h := g.how[i][j]
	kf := g.m.p.Kerf
	switch {
	case h.kind >= 0:
		g.place(f, p, h)
	case h.dir == acrossX:
		a := g.xs[h.at]
		b := floorIndex(g.xs[:i], g.xs[i]-a)
		near, far := p, p
		near.Length = a - kf
		far.X, far.Length = p.X+a, p.Length-a
		near.dir, far.dir = acrossX, acrossX
		g.read(f, near, h.at, j)
		g.read(f, far, b, j)
	case h.dir == acrossY:
		a := g.ys[h.at]
		b := floorIndex(g.ys[:j], g.ys[j]-a)
		near, far := p, p
		near.Width = a - kf
		far.Y, far.Width = p.Y+a, p.Width-a
		near.dir, far.dir = acrossY, acrossY
		g.read(f, near, i, h.at)
		g.read(f, far, i, b)
	case p.Length > 0 && p.Width > 0:
		f.free = append(f.free, p)
	}
}

// place puts a single part in the corner of p.
func (g *grid) place(f *filled, p piece, h step) {
	kd := g.m.kinds[h.kind]
	r := cut.Rect{X: p.X, Y: p.Y, Length: kd.l, Width: kd.w}
	if h.turned {
		r.Length, r.Width = kd.w, kd.l
	}
	first := acrossX
	if p.dir == acrossY {
		first = acrossY
	}
	free, _ := p.divide(r, first, 0, g.m.p.Kerf)
	f.free = append(f.free, free...)
	f.parts = append(f.parts, placed{h.kind, h.turned, r})
	f.value += g.m.value(h.kind)
}

// capped is the grid anew with no rectangle worth more than the parts that its area has room for. It says no
// longer how a rectangle is filled, and is nil where the budget ends.
func (g *grid) capped(s store, t *areaTable, budget *cut.Budget) *grid {
	c := &grid{m: g.m, xs: g.xs, ys: g.ys}
	c.parts(s)
	for i := range c.xs {
		for j := range c.ys {
			c.improve(i, j)
			c.best[i][j] = min(c.best[i][j], t.room(c.xs[i], c.ys[j]))
			if !budget.Spend((i+j)/100 + 1) {
				return nil
			}
		}
	}
	return c
}

// gridPlan fills every sheet as its grid says, and reports whether that keeps counts, stages and defects.
func (m *model) gridPlan(budget *cut.Budget) (plan, bool) {
	p := plan{left: m.needs()}
	for i, s := range m.stores {
		if len(s.defects) > 0 {
			return p, false
		}
		g, ok := m.grid(i, budget)
		if !ok {
			return p, false
		}
		f := g.parted(i)
		if m.p.Stages > 0 && stagesOf(m.boxes(f), m.p.Kerf) > m.p.Stages {
			return p, false
		}
		for range s.count {
			for _, q := range f.parts {
				if p.left[q.kind]--; p.left[q.kind] < 0 {
					return p, false
				}
			}
			p.sheets = append(p.sheets, f)
		}
	}
	return p, true
}
