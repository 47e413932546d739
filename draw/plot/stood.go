package plot

import (
	"math"

	"rodwright/draw"
	"rodwright/finding"
	"rodwright/length"
)

// standHigh is how high the plan of what a piece stands on is drawn at most, in millimetres of paper.
const standHigh = 24

// stood draws what a piece stands on from above, its centre of gravity, and the least way from there to an edge.
// Fewer than three corners, or all of them on a line, are drawn as nothing.
func (s *sheet) stood(t finding.Tilt) {
	if !finite(append([]float64{t.Centre[0], t.Centre[1]}, flat(t.Base)...)...) || len(t.Base) < 3 {
		return
	}
	lo, hi := t.Centre, t.Centre
	for _, p := range t.Base {
		for i := range lo {
			lo[i], hi[i] = min(lo[i], p[i]), max(hi[i], p[i])
		}
	}
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	if w < 1 || h < 1 {
		return
	}
	scale := min(standHigh/h, 0.55*s.wide/w)
	s.foot -= 1.5
	place := func(p [2]float64) (x, y float64) {
		return s.wide/2 + (p[0]-lo[0]-w/2)*scale, s.foot - (hi[1]-p[1])*scale
	}
	var outer draw.Path
	for _, p := range t.Base {
		outer = append(outer, draw.Vertex{Point: at(place(p))})
	}
	s.draw(draw.Area{Pen: draw.Outline, Outer: outer, Fill: draw.Empty})
	s.room.KeepPath(outer)
	x, y := place(t.Centre)
	s.centre(x, y)
	near, far := nearest(t.Base, t.Centre)
	nx, ny := place(near)
	s.kept(draw.Measure, x, y, nx, ny)
	bounds := box(0, s.foot-h*scale-lineHigh, s.wide, s.foot+lineHigh/2)
	s.lead(s.show(far), (x+nx)/2, (y+ny)/2, bounds)
	s.foot -= h*scale + 0.6
	s.key(
		item{func(x, y float64) { s.centre(x+sample/2, y) }, "centre of gravity, over what it stands on"},
		s.lineItem(draw.Measure, "the least way from there to the edge: "+s.show(far)),
	)
}

// centre is the sign of a centre of gravity: a cross in a circle.
func (s *sheet) centre(x, y float64) {
	const r = 1.3
	s.draw(draw.Area{Pen: draw.Outline, Outer: draw.Circle(at(x, y), length.FromMM(r)), Fill: draw.Paper})
	s.line(draw.Measure, x-r, y, x+r, y)
	s.line(draw.Measure, x, y-r, x, y+r)
	s.room.Keep(box(x-r, y-r, x+r, y+r))
}

func flat(ps [][2]float64) (out []float64) {
	for _, p := range ps {
		out = append(out, p[0], p[1])
	}
	return out
}

// nearest returns the place on the edge of a base that is nearest to a point, and how far it is.
func nearest(base [][2]float64, p [2]float64) (near [2]float64, far float64) {
	far = math.Inf(1)
	for i, a := range base {
		b := base[(i+1)%len(base)]
		dx, dy := b[0]-a[0], b[1]-a[1]
		share := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			share = clamp(((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l, 0, 1)
		}
		q := [2]float64{a[0] + share*dx, a[1] + share*dy}
		if d := math.Hypot(q[0]-p[0], q[1]-p[1]); d < far {
			near, far = q, d
		}
	}
	return near, far
}
