package solid

import (
	"math"
	"slices"

	"rodwright/length"
)

// Box is a body with six flat faces along the axes. Min is its corner nearest to the origin's side; a box
// whose Max does not exceed its Min fills nothing.
type Box struct{ Min, Max Vec }

// Bounds returns the box's own corners.
func (b Box) Bounds() (lo, hi Vec) { return b.Min, b.Max }

// Contains reports whether p lies in the box or on its skin.
func (b Box) Contains(p Vec) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y && p.Z >= b.Min.Z && p.Z <= b.Max.Z
}

func (b Box) solid() bool { return true }

func (b Box) hull() polytope { return brick(b.Min.point(), b.Max.point()) }

func (b Box) prisms() []prism {
	lo, hi := b.Min.point(), b.Max.point()
	return []prism{{frame: upright, base: rectangle(lo.x, lo.y, hi.x, hi.y), z0: lo.z, z1: hi.z}}
}

// Cylinder is a round bar with flat ends whose axis runs from A to B. With no length or no radius it
// fills nothing.
type Cylinder struct {
	A, B   Vec
	Radius length.Length
}

// Bounds returns the corners of the least box round the bar. The reach of a flat end across an axis is the
// radius times the sine of the angle between the bar and that axis, rounded outwards where the bar slants.
func (c Cylinder) Bounds() (lo, hi Vec) {
	d := Vec{c.B.X - c.A.X, c.B.Y - c.A.Y, c.B.Z - c.A.Z}
	r := Vec{c.reach(d.X, d.Y, d.Z), c.reach(d.Y, d.Z, d.X), c.reach(d.Z, d.X, d.Y)}
	lo = Vec{min(c.A.X, c.B.X) - r.X, min(c.A.Y, c.B.Y) - r.Y, min(c.A.Z, c.B.Z) - r.Z}
	hi = Vec{max(c.A.X, c.B.X) + r.X, max(c.A.Y, c.B.Y) + r.Y, max(c.A.Z, c.B.Z) + r.Z}
	return lo, hi
}

// reach returns how far the bar's skin lies beyond its axis along one direction, of which the bar runs
// the given way, and of the other two the others.
func (c Cylinder) reach(along, other, third length.Length) length.Length {
	switch {
	case along == 0:
		return c.Radius
	case other == 0 && third == 0:
		return 0
	}
	across := math.Hypot(other.MM(), third.MM())
	return length.Length(math.Ceil(float64(c.Radius) * across / math.Hypot(across, along.MM())))
}

// Contains reports whether p lies in the bar or on its skin, to a thousandth of [Touch].
func (c Cylinder) Contains(p Vec) bool {
	const slack = 1e-6
	w, d := c.axis(), p.point().minus(c.A.point())
	along := d.dot(w)
	across := d.minus(w.times(along))
	length := c.B.point().minus(c.A.point()).norm()
	return along >= -slack && along <= length+slack && across.norm() <= c.Radius.MM()+slack
}

func (c Cylinder) solid() bool { return true }

func (c Cylinder) axis() point {
	d := c.B.point().minus(c.A.point())
	if n := d.norm(); n > 0 {
		return d.times(1 / n)
	}
	return point{z: 1}
}

func (c Cylinder) prisms() []prism {
	f := along(c.axis())
	a, b := f.from(c.A.point()), f.from(c.B.point())
	return []prism{{frame: f, base: disc(a.x, a.y, c.Radius.MM()), z0: a.z, z1: b.z}}
}

func (c Cylinder) hull() polytope {
	f := along(c.axis())
	a, b := f.from(c.A.point()), f.from(c.B.point())
	base := disc(a.x, a.y, c.Radius.MM())
	body := pillar(base, a.z, b.z)
	for i, p := range body.corners {
		body.corners[i] = f.back(p)
	}
	return body
}

// Opening is a cut in a slab: a rectangle in plan with rounded corners. Half its width as the radius makes
// it a slot or, where it is as long as wide, a circle.
type Opening struct {
	Min, Max [2]length.Length
	Radius   length.Length
	Depth    length.Length // from the underside; zero: through
}

// Slab is a flat board along X and Y with openings. Openings may overlap one another and reach past the
// board's edges.
type Slab struct {
	Min, Max Vec
	Openings []Opening
}

// Bounds returns the corners of the board without its openings.
func (s Slab) Bounds() (lo, hi Vec) { return s.Min, s.Max }

// Contains reports whether p lies in the wood or on its skin.
func (s Slab) Contains(p Vec) bool {
	if !(Box{s.Min, s.Max}).Contains(p) {
		return false
	}
	q := spot{p.X.MM(), p.Y.MM()}
	return !slices.ContainsFunc(s.Openings, func(o Opening) bool {
		return (o.Depth == 0 || p.Z < s.Min.Z+o.Depth) && o.outline().holds(q)
	})
}

func (s Slab) solid() bool { return len(s.Openings) == 0 }

func (s Slab) hull() polytope { return Box{s.Min, s.Max}.hull() }

// prisms cuts the slab into one layer between each two depths at which an opening ends.
func (s Slab) prisms() []prism {
	levels := []length.Length{s.Min.Z, s.Max.Z}
	for _, o := range s.Openings {
		if o.Depth > 0 && o.Depth < s.Max.Z-s.Min.Z {
			levels = append(levels, s.Min.Z+o.Depth)
		}
	}
	slices.Sort(levels)
	levels = slices.Compact(levels)
	lo, hi := s.Min.point(), s.Max.point()
	base := rectangle(lo.x, lo.y, hi.x, hi.y)
	var layers []prism
	for i := 1; i < len(levels); i++ {
		layers = append(layers, prism{frame: upright, base: base, openings: s.openAt(levels[i]),
			z0: levels[i-1].MM(), z1: levels[i].MM()})
	}
	return layers
}

// openAt returns the outlines of the openings that the layer with the given top still has.
func (s Slab) openAt(top length.Length) (open []polygon) {
	for _, o := range s.Openings {
		if o.Depth == 0 || s.Min.Z+o.Depth >= top {
			open = append(open, o.outline())
		}
	}
	return open
}

// outline returns the opening as a convex polygon, its corners rounded.
func (o Opening) outline() polygon {
	return rounded(o.Min[0].MM(), o.Min[1].MM(), o.Max[0].MM(), o.Max[1].MM(), o.Radius.MM())
}
