package view

import (
	"math"

	"rodwright/piece"
	"rodwright/solid"
)

// panelOf returns how a panel is seen: from above with its openings and rounded corners, from beside with what
// is open to that edge.
func panelOf(side Side, p *piece.FlatPanel) form {
	if side == Top {
		return boardOf(p)
	}
	return rimOf(side, p.Solid())
}

// board is a panel seen from above.
type board struct {
	block
	openings []opening
	pockets  []opening
	corners  []corner
}

// opening is a cut in a panel, in the piece's plan: a rectangle with rounded corners.
type opening struct {
	extent
	radius float64
}

// corner is a rounded corner: outside the quarter circle about the centre there is no wood.
type corner struct {
	centre place
	radius float64
	du, dv float64 // 1 or −1: where the corner lies from the centre
}

func boardOf(p *piece.FlatPanel) board {
	s := p.Solid()
	b := board{block: blockOf(Top, s.Min, s.Max)}
	for _, o := range s.Openings {
		e := extent{float64(o.Min[0]), float64(o.Min[1]), float64(o.Max[0]), float64(o.Max[1])}
		cut := opening{e, math.Min(float64(o.Radius), math.Min(e.u1-e.u0, e.v1-e.v0)/2)}
		if o.Depth > 0 {
			b.pockets = append(b.pockets, cut)
		} else {
			b.openings = append(b.openings, cut)
		}
	}
	if p.Spec == nil {
		return b
	}
	half := math.Min(b.hi.u-b.lo.u, b.hi.v-b.lo.v) / 2
	for _, c := range []struct {
		name   piece.Corner
		at     place
		du, dv float64
	}{
		{piece.FrontLeft, place{b.lo.u, b.lo.v, b.hi.near}, -1, -1},
		{piece.FrontRight, place{b.hi.u, b.lo.v, b.hi.near}, 1, -1},
		{piece.BackRight, place{b.hi.u, b.hi.v, b.hi.near}, 1, 1},
		{piece.BackLeft, place{b.lo.u, b.hi.v, b.hi.near}, -1, 1},
	} {
		if r := math.Min(float64(p.Spec.Corners[c.name]), half); r > 0 {
			b.corners = append(b.corners, corner{c.at.plus(place{u: c.du, v: c.dv}, -r), r, c.du, c.dv})
		}
	}
	return b
}

// off reports whether a place lies beyond the rounding of the corner, by more than slack.
func (c corner) off(u, v, slack float64) bool {
	du, dv := (u-c.centre.u)*c.du, (v-c.centre.v)*c.dv
	return du > 0 && dv > 0 && math.Hypot(du, dv) > c.radius+slack
}

// arc returns the quarter circle.
func (c corner) arc() curve {
	from := math.Atan2(c.dv, c.du) - math.Pi/4
	return arc(c.centre, c.radius, from, math.Pi/2)
}

// inside reports whether a place lies in the opening, by more than slack.
func (o opening) inside(u, v, slack float64) bool {
	if !o.holds(u, v, -slack) {
		return false
	}
	du := math.Max(o.u0+o.radius-u, u-(o.u1-o.radius))
	dv := math.Max(o.v0+o.radius-v, v-(o.v1-o.radius))
	return du <= 0 || dv <= 0 || math.Hypot(du, dv) <= o.radius-slack
}

func (b board) nearest(u, v float64) (float64, bool) {
	return b.hi.near, b.wood(u, v, -1, skin)
}

// wood reports whether there is wood at a place, apart from the opening numbered but. With slack a place on the
// edge of the board or of another opening counts as wood.
func (b board) wood(u, v float64, but int, slack float64) bool {
	if !b.extent().holds(u, v, slack) {
		return false
	}
	for i, o := range b.openings {
		if i != but && o.inside(u, v, slack) {
			return false
		}
	}
	for _, c := range b.corners {
		if c.off(u, v, slack) {
			return false
		}
	}
	return true
}

// edges returns the rim of the board where wood is, that of each opening where it cuts wood, and that of the
// pockets in its underside.
func (b board) edges() []curve {
	out := outline(b.extent(), b.hi.near)
	for _, c := range b.corners {
		out = append(out, c.arc())
	}
	for i := range out {
		out[i].there = func(u, v float64) bool { return b.wood(u, v, -1, touch) }
	}
	for i, o := range b.openings {
		there := func(u, v float64) bool {
			return b.extent().holds(u, v, -touch) && b.wood(u, v, i, touch)
		}
		for _, c := range o.rim(b.hi.near) {
			c.there = there
			out = append(out, c)
		}
	}
	for _, o := range b.pockets {
		for _, c := range o.rim(b.lo.near) {
			c.kind = under
			c.there = func(u, v float64) bool { return b.extent().holds(u, v, -touch) && b.wood(u, v, -1, 0) }
			out = append(out, c)
		}
	}
	return out
}

// rim returns the outline of an opening: straight sides and quarter circles.
func (o opening) rim(near float64) []curve {
	r := o.radius
	var out []curve
	for _, s := range [4][2]place{
		{{o.u0 + r, o.v0, near}, {o.u1 - r, o.v0, near}}, {{o.u1, o.v0 + r, near}, {o.u1, o.v1 - r, near}},
		{{o.u1 - r, o.v1, near}, {o.u0 + r, o.v1, near}}, {{o.u0, o.v1 - r, near}, {o.u0, o.v0 + r, near}},
	} {
		if s[0] != s[1] {
			out = append(out, straight(s[0], s[1]))
		}
	}
	if r == 0 {
		return out
	}
	for k, c := range [4]place{{o.u1 - r, o.v1 - r, near}, {o.u0 + r, o.v1 - r, near}, {o.u0 + r, o.v0 + r, near}, {o.u1 - r, o.v0 + r, near}} {
		out = append(out, arc(c, r, float64(k)*math.Pi/2, math.Pi/2))
	}
	return out
}

// rim is a panel seen from an edge: its openings show where they are open to that edge.
type rim struct {
	block
	cuts []cut
}

// cut is a stretch of the edge, from the underside up to a level, where an opening stands back from it.
type cut struct{ from, to, top, near float64 }

func (c cut) holds(u, v float64) bool { return u > c.from && u < c.to && v < c.top }

func rimOf(side Side, s solid.Slab) rim {
	r := rim{block: blockOf(side, s.Min, s.Max)}
	for _, o := range s.Openings {
		lo := solid.Vec{X: o.Min[0], Y: o.Min[1], Z: s.Min.Z}
		hi := solid.Vec{X: o.Max[0], Y: o.Max[1], Z: s.Max.Z}
		top := r.hi.v + touch // a place on the upper edge is within a cut that goes through
		if o.Depth > 0 && s.Min.Z+o.Depth < s.Max.Z {
			top = float64(s.Min.Z + o.Depth)
		}
		b := blockOf(side, lo, hi)
		from, to := math.Max(b.lo.u, r.lo.u), math.Min(b.hi.u, r.hi.u)
		if b.hi.near >= r.hi.near-touch && from < to {
			r.cuts = append(r.cuts, cut{from, to, top, math.Max(b.lo.near, r.lo.near)})
		}
	}
	return r
}

func (r rim) nearest(u, v float64) (float64, bool) {
	if !r.extent().holds(u, v, skin) {
		return 0, false
	}
	near := r.hi.near
	for _, c := range r.cuts {
		if c.holds(u, v) {
			near = math.Min(near, c.near)
		}
	}
	return near, near > r.lo.near+touch
}

// edges returns the outline, and the lines where a cut begins and ends within the edge.
func (r rim) edges() []curve {
	out := outline(r.extent(), r.hi.near)
	for i := range out {
		out[i].there = func(u, v float64) bool { _, wood := r.nearest(u, v); return wood }
		out[i].depth = func(u, v float64) float64 { near, _ := r.nearest(u, v); return near }
	}
	for i, c := range r.cuts {
		clear := func(u, v float64) bool {
			for k, o := range r.cuts {
				if k != i && o.holds(u, v) {
					return false
				}
			}
			return true
		}
		top := math.Min(c.top, r.hi.v)
		lines := []curve{
			straight(place{c.from, r.lo.v, r.hi.near}, place{c.from, top, r.hi.near}),
			straight(place{c.to, r.lo.v, r.hi.near}, place{c.to, top, r.hi.near}),
		}
		if c.top < r.hi.v {
			lines = append(lines, straight(place{c.from, top, r.hi.near}, place{c.to, top, r.hi.near}))
		}
		for _, l := range lines {
			l.there = clear
			out = append(out, l)
		}
	}
	return out
}
