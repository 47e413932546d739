package plate

import "math"

// Result is how a plate bears its load.
type Result struct {
	Field *Field
	Sag   Peak // the deepest place; 0 or less where nothing sags
	Rise  Peak // the highest place, as a number above 0 where something rises
	// BelowSupports is the largest sag below the plane through the supports that carry, which differs from Sag
	// where they give way: posts on springs.
	BelowSupports Peak

	Posts, Discs, Rails []Reaction
	Edges               [4]Reaction
	Load                float64 // N, all that presses; the reactions sum to it

	// The largest bending stress at a face of the plate, MPa, by size, along and across the grain. It is taken
	// at the corners of the cells, averaged over the cells that meet there. At a point of support and in an
	// inner corner of a notch theory knows no bound: there it grows with the mesh and tells where, not how
	// much.
	Along, Across Peak

	// Change is how much the last refinement, to half as many cells again, changed the largest movement, of 1; 1
	// when there was none. What was left to the true value is nothing to twice that, so all movements are carried on by
	// as much again, by 0.03 at most, and what is left is no more than Change either way.
	Change    float64
	Converged bool // Change is under 0.015
	Cells     int
}

// Peak is a largest value and its place.
type Peak struct{ Value, X, Y float64 }

// Reaction is what a support carries.
type Reaction struct {
	N      float64 // upwards on the plate
	Lifted bool    // it carries nothing: the plate has lifted from all of it
	Partly bool    // the plate has lifted from a part of it
}

// result reads all but the stress from a mesh that is solved.
func (l *level) result(p *Plate) *Result {
	r := &Result{Field: l.asField(), Load: l.total, Change: 1}
	for _, w := range l.wood {
		if w {
			r.Cells++
		}
	}
	r.Posts, r.Discs, r.Rails = make([]Reaction, len(p.Posts)), make([]Reaction, len(p.Discs)), make([]Reaction, len(p.Rails))
	l.react(r)
	l.peaks(r)
	return r
}

// carryOn lengthens all movements by what the last refinement changed. Sag only rises as a mesh is refined; where it fell,
// supports have lifted, and it stays. Stress stays too: it is held by the load more than by the mesh.
func (r *Result) carryOn() {
	if r.Change <= 0 || r.Change == 1 {
		return
	}
	f := 1 + min(r.Change, mostCarry)
	for _, v := range []*float64{&r.Sag.Value, &r.Rise.Value, &r.BelowSupports.Value} {
		*v *= f
	}
	for _, list := range [][]float64{r.Field.W, r.Field.raw} {
		for i := range list {
			list[i] *= f
		}
	}
}

func (l *level) react(r *Result) {
	open, all := map[owner]int{}, map[owner]int{}
	of := func(o owner) *Reaction {
		switch o.kind {
		case byPost:
			return &r.Posts[o.index]
		case byDisc:
			return &r.Discs[o.index]
		case byRail:
			return &r.Rails[o.index]
		}
		return &r.Edges[o.index]
	}
	for _, c := range l.contacts {
		of(c.owner).N += c.force
		all[c.owner]++
		if c.open {
			open[c.owner]++
		}
		of(c.owner).Lifted = open[c.owner] == all[c.owner]
		of(c.owner).Partly = open[c.owner] > 0 && open[c.owner] < all[c.owner]
	}
}

// peaks looks for the deepest and the highest place: the nodes first, then within the cells around the best.
func (l *level) peaks(r *Result) {
	high, low := l.extremes()
	none := func(x, y float64) float64 { return 0 }
	r.Sag = l.around(low, 1, none)
	r.Rise = l.around(high, -1, none)
	a, b, c := l.chord()
	if a == 0 && b == 0 && c == 0 {
		r.BelowSupports = r.Sag
		return
	}
	plane := func(x, y float64) float64 { return a + b*x + c*y }
	node, top := low, math.Inf(-1)
	for n, used := range l.used {
		x, y := l.at(n)
		if d := l.field[perNode*n+sag] - plane(x, y); used && d > top {
			node, top = n, d
		}
	}
	r.BelowSupports = l.around(node, 1, plane)
}

// around samples the cells at a node for the largest sign times the sag below a plane.
func (l *level) around(node int, sign float64, plane func(x, y float64) float64) Peak {
	const steps = 6
	i, j := l.lines(node)
	x, y := l.at(node)
	best := Peak{sign * (l.field[perNode*node+sag] - plane(x, y)), x, y}
	for _, c := range [][2]int{{i - 1, j - 1}, {i, j - 1}, {i - 1, j}, {i, j}} {
		if !l.has(c[0], c[1]) {
			continue
		}
		hx, hy := l.tx[c[0]].h, l.ty[c[1]].h
		for a := range steps + 1 {
			sx := hx * float64(a) / steps
			nx := cubics(sx, hx)
			for b := range steps + 1 {
				sy := hy * float64(b) / steps
				x, y := l.x[c[0]]+sx, l.y[c[1]]+sy
				// A hair more, so that rounding does not choose the place.
				if v := sign * (l.value(l.field, c[0], c[1], nx, cubics(sy, hy)) - plane(x, y)); v > best.Value+1e-9*math.Abs(best.Value) {
					best = Peak{v, x, y}
				}
			}
		}
	}
	return best
}
