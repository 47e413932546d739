package view

import (
	"math"

	"rodwright/piece"
	"rodwright/solid"
)

// body is a solid of the piece as it is seen.
type body struct {
	piece.Body
	form   form
	extent extent
	edges  []curve
	reach  []extent // of each edge
	far    float64  // its depth, from
	near   float64  // to
}

// bodyOf gathers what is asked of a body again and again.
func bodyOf(side Side, b piece.Body, f form) body {
	lo, hi := b.Shape.Bounds()
	k := blockOf(side, lo, hi)
	out := body{Body: b, form: f, extent: f.extent(), edges: f.edges(), far: k.lo.near, near: k.hi.near}
	for _, c := range out.edges {
		out.reach = append(out.reach, c.extent())
	}
	return out
}

// form is how the outside of a solid hides what lies behind it.
type form interface {
	// nearest returns how near the solid's surface is at u, v, and reports whether the solid is there at all.
	nearest(u, v float64) (near float64, there bool)
	// edges returns the lines that are drawn of it.
	edges() []curve
	extent() extent
}

// seen returns the bodies of a piece, and of what it holds, as they are seen from a side.
func seen(r *piece.Resolved, side Side) (out []body) {
	for _, b := range r.Solids() {
		var f form
		switch b.Kind {
		case piece.PanelBody:
			f = panelOf(side, &r.Panels[b.Index])
		case piece.FootBody:
			f = casterOf(side, &r.Feet[b.Index])
		default:
			f = formOf(side, b.Shape)
		}
		out = append(out, bodyOf(side, b, f))
	}
	return out
}

// formOf returns how a straight body is seen; a board with openings is that of a panel.
func formOf(side Side, s solid.Shape) form {
	if c, ok := s.(solid.Cylinder); ok {
		return barOf(side, c)
	}
	lo, hi := s.Bounds()
	return blockOf(side, lo, hi)
}

// block is a box.
type block struct{ lo, hi place }

func blockOf(side Side, lo, hi solid.Vec) block {
	a, b := side.see(lo), side.see(hi)
	return block{
		place{math.Min(a.u, b.u), math.Min(a.v, b.v), math.Min(a.near, b.near)},
		place{math.Max(a.u, b.u), math.Max(a.v, b.v), math.Max(a.near, b.near)},
	}
}

func (b block) extent() extent { return between(b.lo, b.hi) }

func (b block) nearest(u, v float64) (float64, bool) { return b.hi.near, b.extent().holds(u, v, skin) }

func (b block) edges() []curve { return outline(b.extent(), b.hi.near) }

// outline returns the four sides of a rectangle.
func outline(e extent, near float64) []curve {
	c := [4]place{{e.u0, e.v0, near}, {e.u1, e.v0, near}, {e.u1, e.v1, near}, {e.u0, e.v1, near}}
	return []curve{straight(c[0], c[1]), straight(c[1], c[2]), straight(c[2], c[3]), straight(c[3], c[0])}
}

// disc is a bar that one looks at along its axis.
type disc struct {
	centre place // of the end that is nearer
	radius float64
}

func (d disc) extent() extent {
	return extent{d.centre.u - d.radius, d.centre.v - d.radius, d.centre.u + d.radius, d.centre.v + d.radius}
}

func (d disc) nearest(u, v float64) (float64, bool) {
	return d.centre.near, math.Hypot(u-d.centre.u, v-d.centre.v) <= d.radius+skin
}

func (d disc) edges() []curve { return []curve{circle(d.centre, d.radius)} }

// bar is a round bar that one looks at from beside; its axis may slant.
type bar struct {
	a, b   place
	radius float64
	along  place   // the axis, of length 1
	run    float64 // its length
	flat   float64 // how much of along lies in the sheet
	nu, nv float64 // the direction of the sheet square to the axis, of length 1
	whole  extent
}

func barOf(side Side, c solid.Cylinder) form {
	b := bar{a: side.see(c.A), b: side.see(c.B), radius: float64(c.Radius)}
	d := b.b.minus(b.a)
	b.run = math.Sqrt(d.u*d.u + d.v*d.v + d.near*d.near)
	if b.run > 0 {
		b.along = place{}.plus(d, 1/b.run)
	}
	if math.Hypot(d.u, d.v) < touch {
		nearer := b.a
		if b.b.near > b.a.near {
			nearer = b.b
		}
		return disc{nearer, b.radius}
	}
	b.flat = math.Hypot(b.along.u, b.along.v)
	b.nu, b.nv = -b.along.v/b.flat, b.along.u/b.flat
	e := between(b.a, b.b)
	// the reach of a flat end along a direction is the radius times the sine of its angle with the axis
	ru := b.radius * math.Sqrt(math.Max(0, 1-b.along.u*b.along.u))
	rv := b.radius * math.Sqrt(math.Max(0, 1-b.along.v*b.along.v))
	b.whole = extent{e.u0 - ru, e.v0 - rv, e.u1 + ru, e.v1 + rv}
	return b
}

func (b bar) extent() extent { return b.whole }

// nearest meets the line of sight with the bar: |p − (p·d)d|² = r² with p = (u, v, near) from a point of the axis
// d is a quadratic equation in near; the flat ends cut it off.
func (b bar) nearest(u, v float64) (float64, bool) {
	off := (u-b.a.u)*b.nu + (v-b.a.v)*b.nv // from the axis, as seen
	if math.Abs(off) > b.radius+skin {
		return 0, false
	}
	h := math.Hypot(b.along.u, b.along.v)                 // how much of the axis lies in the sheet
	on := ((u-b.a.u)*b.along.u + (v-b.a.v)*b.along.v) / h // along the axis, as seen
	half := math.Sqrt(math.Max(0, b.radius*b.radius-off*off))
	// In the plane of axis and sight the bar is a strip of half-width half about a line of slope along.near/h.
	near := b.a.near + (on*b.along.near+half)/h
	far := b.a.near + (on*b.along.near-half)/h
	return b.between(on, h, near, far)
}

// between cuts the stretch of a line of sight inside the endless bar off at the flat ends, and returns its
// nearer end.
func (b bar) between(on, h, near, far float64) (float64, bool) {
	at := func(n float64) float64 { return on*h + (n-b.a.near)*b.along.near } // along the axis, from a
	if math.Abs(b.along.near) < 1e-12 {
		return near, at(near) >= -skin && at(near) <= b.run+skin
	}
	lo, hi := b.a.near+(0-on*h)/b.along.near, b.a.near+(b.run-on*h)/b.along.near
	if lo > hi {
		lo, hi = hi, lo
	}
	near, far = math.Min(near, hi), math.Max(far, lo)
	return near, far <= near
}

// edges returns the two sides of the bar and its ends.
func (b bar) edges() []curve {
	side := place{b.nu * b.radius, b.nv * b.radius, 0}
	out := []curve{
		straight(b.a.plus(side, 1), b.b.plus(side, 1)),
		straight(b.a.plus(side, -1), b.b.plus(side, -1)),
	}
	for _, end := range []place{b.a, b.b} {
		out = append(out, b.end(end)...)
	}
	return out
}

// facets is the number of straight pieces that half of a slanting end is drawn with; where it is seen square
// from beside, one is exact.
const facets = 24

// end returns the rim of a flat end: seen from beside a straight line, the nearer half of the rim; slanting,
// an ellipse.
func (b bar) end(c place) []curve {
	nu, nv, h := b.nu, b.nv, b.flat
	if math.Abs(b.along.near) < 1e-9 {
		return []curve{{a: c.plus(place{nu, nv, 0}, -b.radius), b: c.plus(place{nu, nv, 0}, b.radius), bow: b.radius}}
	}
	other := place{-b.along.near * b.along.u / h, -b.along.near * b.along.v / h, h} // square to axis and across
	rim := func(k int) place {
		t := float64(k) * math.Pi / facets
		p := c.plus(place{nu, nv, 0}, b.radius*math.Cos(t))
		return p.plus(other, b.radius*math.Sin(t))
	}
	var out []curve
	for k := range 2 * facets {
		out = append(out, straight(rim(k), rim(k+1)))
	}
	return out
}
