package marking

import (
	"cmp"
	"math"
	"slices"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// outline is a panel cut out, exact: what is left of it seen from above, and the pockets in its underside.
type outline struct {
	panel    opening
	openings []opening // as the part's features; through and pockets
	areas    []area    // the wood; more than one where a cut parts the panel
	pockets  []curve   // the edges of pockets that are not an edge of the wood
	whole    bool      // false where the edges did not close: then each feature is drawn by itself
}

// area is an outer edge with holes.
type area struct {
	outer draw.Path
	holes []draw.Path
}

// outlineOf cuts every feature out of a panel. Features may reach past the edges and lie in one another.
//
// All edges are parted where any two of them meet. A stretch is an edge of the panel when there is wood on
// one side of it only, and the edge of a pocket when the wood is not as thick on both sides; what is left is
// joined end to end.
func outlineOf(p part.Part, flat *piece.FlatPanel) outline {
	o := outline{panel: wholePanel(p, flat)}
	for _, f := range p.Features {
		o.openings = append(o.openings, openingOf(f, o.panel))
	}
	var edge []curve
	for _, c := range o.stretches() {
		m := c.at(0.5)
		out := c.heading(0.5).left().times(beside)
		l, r := o.cutAt(m.plus(out)), o.cutAt(m.minus(out))
		switch {
		case l != through && r == through:
			edge = append(edge, c)
		case l == through && r != through:
			edge = append(edge, c.reversed())
		case l != r:
			o.pockets = append(o.pockets, c)
		}
	}
	loops, closed := joined(once(edge))
	o.whole = closed
	o.areas = areasOf(loops)
	o.pockets = once(o.pockets)
	return o
}

// through is the depth of what is cut right through, and of the air round the panel.
const through = length.Length(math.MaxInt64)

// cutAt returns how deep the panel is cut at a place.
func (o outline) cutAt(p spot) (depth length.Length) {
	if !o.panel.holds(p) {
		return through
	}
	for _, c := range o.openings {
		switch {
		case c.empty() || !c.holds(p):
		case c.depth == 0:
			return through
		default:
			depth = max(depth, c.depth)
		}
	}
	return depth
}

// stretches returns all edges, of the panel and of every opening, parted where they meet.
func (o outline) stretches() (out []curve) {
	all := o.panel.edges()
	for _, c := range o.openings {
		if !c.empty() {
			all = append(all, c.edges()...)
		}
	}
	var s places
	for _, c := range all { // corners first: they are whole nanometres
		s.of(c.a)
		s.of(c.b)
	}
	cuts := make([][]spot, len(all))
	for i, c := range all {
		for j := range i {
			for _, p := range c.meetings(all[j]) {
				p = s.of(p)
				cuts[i], cuts[j] = append(cuts[i], p), append(cuts[j], p)
			}
		}
	}
	for i, c := range all {
		out = append(out, c.parted(&s, cuts[i])...)
	}
	return out
}

// places gives places that are the same to within rounding one spot.
type places struct{ all []spot }

func (s *places) of(p spot) spot {
	for _, q := range s.all {
		if q.is(p) {
			return q
		}
	}
	s.all = append(s.all, p)
	return p
}

// parted cuts a curve at places on it.
func (c curve) parted(s *places, at []spot) (out []curve) {
	type stop struct {
		t float64
		p spot
	}
	stops := []stop{{0, s.of(c.a)}, {1, s.of(c.b)}}
	for _, p := range at {
		t, _ := c.share(p)
		stops = append(stops, stop{t, p})
	}
	slices.SortStableFunc(stops, func(a, b stop) int { return cmp.Compare(a.t, b.t) })
	for i := 1; i < len(stops); i++ {
		from, to := stops[i-1], stops[i]
		if from.p.is(to.p) {
			continue
		}
		d := c
		d.a, d.b = from.p, to.p
		d.from, d.sweep = c.from+from.t*c.sweep, (to.t-from.t)*c.sweep
		out = append(out, d)
	}
	return out
}

// once leaves out a stretch that two openings have in common: the second of two that run between the same
// places through the same middle.
func once(in []curve) (out []curve) {
	for _, c := range in {
		if !slices.ContainsFunc(out, func(d curve) bool {
			ends := c.a.is(d.a) && c.b.is(d.b) || c.a.is(d.b) && c.b.is(d.a)
			return ends && c.at(0.5).far(d.at(0.5)) <= beside
		}) {
			out = append(out, c)
		}
	}
	return out
}

// joined puts stretches end to end; closed is false when some are left over. Where two loops touch in a
// place it turns as far to the left as it can, so that they stay apart.
func joined(edge []curve) (loops [][]curve, closed bool) {
	used := make([]bool, len(edge))
	closed = true
	for i := range edge {
		if used[i] {
			continue
		}
		loop := []curve{edge[i]}
		used[i] = true
		for !loop[len(loop)-1].b.is(loop[0].a) {
			k := next(edge, used, loop[len(loop)-1])
			if k < 0 {
				return loops, false
			}
			used[k] = true
			loop = append(loop, edge[k])
		}
		loops = append(loops, loop)
	}
	return loops, closed
}

// next returns the unused stretch that goes on from the end of c, or -1.
func next(edge []curve, used []bool, c curve) int {
	best, most := -1, math.Inf(-1)
	h := c.heading(1)
	for k, d := range edge {
		if used[k] || !d.a.is(c.b) {
			continue
		}
		n := d.heading(0)
		if turn := math.Atan2(h.left().dot(n), h.dot(n)); turn > most {
			best, most = k, turn
		}
	}
	return best
}

// areasOf sorts loops into outer edges, which go round to the left, and the holes in them.
func areasOf(loops [][]curve) (out []area) {
	var holes [][]curve
	for _, l := range loops {
		if measure(l) > 0 {
			out = append(out, area{outer: pathOf(l)})
		} else {
			holes = append(holes, l)
		}
	}
	slices.SortStableFunc(out, func(a, b area) int { return cmp.Compare(span(a.outer), span(b.outer)) })
	for _, h := range holes {
		for i := range out { // the least that holds it, else the greatest
			if i == len(out)-1 || inside(out[i].outer, h[0].at(0.5)) {
				out[i].holes = append(out[i].holes, pathOf(h))
				break
			}
		}
	}
	return out
}

// measure returns the area in nm² that a loop goes round to the left.
func measure(loop []curve) (sum float64) {
	for _, c := range loop {
		sum += (c.a.x*c.b.y - c.b.x*c.a.y) / 2
		if c.radius > 0 {
			sum += c.radius * c.radius * (c.sweep - math.Sin(c.sweep)) / 2
		}
	}
	return sum
}

// pathOf writes a loop with whole nanometres, and two straight stretches of one line as one.
func pathOf(loop []curve) (out draw.Path) {
	for i, c := range loop {
		before := loop[(i+len(loop)-1)%len(loop)]
		if c.radius == 0 && before.radius == 0 && c.heading(0).dot(before.heading(1)) > 1-1e-9 {
			continue
		}
		out = append(out, draw.Vertex{Point: point(c.a), Bulge: c.bulge()})
	}
	return out
}

func point(p spot) draw.Point {
	return draw.Point{X: length.Length(math.RoundToEven(p.x)), Y: length.Length(math.RoundToEven(p.y))}
}

func span(p draw.Path) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range p {
		lo, hi = min(lo, float64(v.X)), max(hi, float64(v.X))
	}
	return hi - lo
}

// inside reports whether a place lies within the corners of a path; its arcs are taken for their chords.
func inside(path draw.Path, p spot) (in bool) {
	for i, v := range path {
		w := path[(i+1)%len(path)]
		a, b := spot{float64(v.X), float64(v.Y)}, spot{float64(w.X), float64(w.Y)}
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}
