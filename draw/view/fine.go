package view

import (
	"slices"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/piece"
)

func onPaper(mm float64, per int64) float64 { return mm * float64(per) * float64(length.Millimetre) }

// lengthwise returns the axes of pipes seen from beside, from joint to joint, where they are seen.
func (s scene) lengthwise() (out []stretch) {
	for i, b := range s.bodies {
		if _, ok := b.form.(bar); !ok || b.Kind != piece.StickBody {
			continue
		}
		stick := &s.r.Sticks[b.Index]
		c := straight(s.side.see(vec(s.r.Nodes[stick.A].At)), s.side.see(vec(s.r.Nodes[stick.B].At)))
		c.kind = axisLine
		out = append(out, onlySeen(s.part(i, c, draw.Centre, s.before(c.extent(), b.far)))...)
	}
	return out
}

// overhang is how far a cross stands out beyond what it is the middle of, on paper in millimetres.
const overhang = 1.5

// crosses returns the crosses of pipes seen on their ends: from above those of all posts, whose places are
// measured there, from beside those that are seen.
func (s scene) crosses(per int64) (out []stretch) {
	for i, b := range s.bodies {
		f, ok := b.form.(disc)
		if !ok || b.Kind != piece.StickBody {
			continue
		}
		if near := s.around(i); s.side != Top && s.state(i, curve{kind: axisLine}, f.centre, near) != seenHere {
			continue
		}
		r := f.radius + onPaper(overhang, per)
		for _, d := range [2]place{{u: r}, {v: r}} {
			out = append(out, stretch{straight(f.centre.plus(d, -1), f.centre.plus(d, 1)), 0, 1, draw.Centre, i})
		}
	}
	return out
}

// pipes returns the sides of pipes as areas of steel, where their whole breadth is seen. Their outlines are
// drawn over them.
func (s scene) pipes() (out []draw.Mark) {
	for i, b := range s.bodies {
		f, ok := b.form.(bar)
		if !ok || b.Kind != piece.StickBody {
			continue
		}
		near := s.around(i)
		axis := straight(f.a, f.b)
		// the sides are taken a little within, so that what only touches them does not count
		within := place{f.nu, f.nv, 0}
		sides := [3]curve{axis, straight(f.a.plus(within, 0.99*f.radius), f.b.plus(within, 0.99*f.radius)), straight(f.a.plus(within, -0.99*f.radius), f.b.plus(within, -0.99*f.radius))}
		var ts []float64
		for k := range sides {
			sides[k].depth = func(u, v float64) float64 { n, _ := f.nearest(u, v); return n }
			for _, p := range s.parting(sides[k], near) {
				ts = append(ts, p.to)
			}
		}
		slices.Sort(ts)
		out = append(out, s.barrels(i, f, sides, ts, near)...)
	}
	return out
}

// barrels returns the parts of a pipe between the given shares of its length whose breadth is seen.
func (s scene) barrels(i int, f bar, sides [3]curve, ts []float64, near []int) (out []draw.Mark) {
	var spans []span
	from := 0.0
	for _, t := range ts {
		if (t-from)*f.run < touch {
			continue
		}
		seen := true
		for _, c := range sides {
			seen = seen && s.state(i, c, c.at((from+t)/2), near) == seenHere
		}
		if seen {
			spans = append(spans, span{from, t})
		}
		from = t
	}
	edge := place{u: f.nu, v: f.nv}
	for _, p := range joined(spans, touch/f.run) {
		a, b := f.a.plus(f.b.minus(f.a), p.from), f.a.plus(f.b.minus(f.a), p.to)
		var path draw.Path
		for _, c := range [4]place{a.plus(edge, -f.radius), b.plus(edge, -f.radius), b.plus(edge, f.radius), a.plus(edge, f.radius)} {
			path = append(path, draw.Vertex{Point: c.point()})
		}
		out = append(out, draw.Area{Pen: draw.Hatching, Outer: path, Fill: draw.Steel})
	}
	return out
}
