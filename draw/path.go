package draw

import (
	"math"

	"rodwright/length"
)

// Quarter returns the bulge of a quarter turn to the left: tan(π/8).
func Quarter() float64 { return math.Tan(math.Pi / 8) }

// Rectangle returns the upright rectangle between two corners, anticlockwise from its lower left.
func Rectangle(min, max Point) Path {
	return Path{{Point: min}, {Point: Point{max.X, min.Y}}, {Point: max}, {Point: Point{min.X, max.Y}}}
}

// Rounded returns a rectangle whose corners are quarter circles, anticlockwise. A radius above half the
// shorter side is taken as that half, so that a far too large one makes a slot; one of 0 or less leaves the
// corners square.
func Rounded(min, max Point, radius length.Length) Path {
	r := radius
	for _, side := range []length.Length{max.X - min.X, max.Y - min.Y} {
		if r > side/2 {
			r = side / 2
		}
	}
	if r <= 0 {
		return Rectangle(min, max)
	}
	q := Quarter()
	return straightened(Path{
		{Point{min.X + r, min.Y}, 0},
		{Point{max.X - r, min.Y}, q},
		{Point{max.X, min.Y + r}, 0},
		{Point{max.X, max.Y - r}, q},
		{Point{max.X - r, max.Y}, 0},
		{Point{min.X + r, max.Y}, q},
		{Point{min.X, max.Y - r}, 0},
		{Point{min.X, min.Y + r}, q},
	})
}

// straightened returns p without edges of no length.
func straightened(p Path) (out Path) {
	for i, v := range p {
		if v.Point != p[(i+1)%len(p)].Point {
			out = append(out, v)
		}
	}
	return out
}

// Circle returns a circle as a path of two halves, anticlockwise.
func Circle(c Point, r length.Length) Path {
	return Path{{Point{c.X - r, c.Y}, 1}, {Point{c.X + r, c.Y}, 1}}
}

// bow is the part of a circle that an edge with a bulge is, in nanometres and radians.
type bow struct {
	x, y, radius float64
	from, sweep  float64 // sweep positive anticlockwise
}

// bowOf returns the circle of the edge from v to w. The edge must have a bulge and a length.
//
//	radius = chord · (1 + b²) / 4b; the centre lies on the chord's bisector, to the left of it by
//	chord · (1 − b²) / 4b
//
// from the geometry of the inscribed angle; b negative turns both to the right.
func bowOf(v Vertex, w Point) bow {
	dx, dy := float64(w.X-v.X), float64(w.Y-v.Y)
	off := (1 - v.Bulge*v.Bulge) / (4 * v.Bulge)
	x := float64(v.X) + dx/2 - dy*off
	y := float64(v.Y) + dy/2 + dx*off
	return bow{
		x: x, y: y,
		radius: math.Hypot(float64(v.X)-x, float64(v.Y)-y),
		from:   math.Atan2(float64(v.Y)-y, float64(v.X)-x),
		sweep:  4 * math.Atan(v.Bulge),
	}
}

func (b bow) at(angle float64) (x, y float64) {
	return b.x + b.radius*math.Cos(angle), b.y + b.radius*math.Sin(angle)
}

func (a Arc) bow() bow {
	rad := math.Pi / 180
	return bow{float64(a.Centre.X), float64(a.Centre.Y), float64(a.Radius), a.From * rad, a.Sweep * rad}
}

// curved reports whether the edge from v to w is an arc.
func curved(v Vertex, w Point) bool { return v.Bulge != 0 && v.Point != w }

// chords returns the corners of a path whose arcs are replaced by chords that leave them by no more than the
// sagitta, on whole nanometres.
func (p Path) chords(sagitta length.Length) (out []Point) {
	for i, v := range p {
		out = append(out, v.Point)
		w := p[(i+1)%len(p)].Point
		if !curved(v, w) {
			continue
		}
		b := bowOf(v, w)
		n := b.pieces(float64(sagitta))
		for k := 1; k < n; k++ {
			x, y := b.at(b.from + b.sweep*float64(k)/float64(n))
			out = append(out, rounded(x, y))
		}
	}
	return out
}

// pieces returns in how many chords an arc must be parted so that none leaves it by more than the sagitta.
func (b bow) pieces(sagitta float64) int {
	turn := math.Pi / 4
	if b.radius > sagitta {
		turn = min(turn, 2*math.Acos(1-sagitta/b.radius))
	}
	return max(1, min(360, int(math.Ceil(math.Abs(b.sweep)/turn))))
}

func rounded(x, y float64) Point {
	return Point{length.Length(math.Round(x)), length.Length(math.Round(y))}
}
