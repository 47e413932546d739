package solid

import (
	"cmp"
	"math"
	"slices"
)

// spot is a point of a plane, in millimetres.
type spot struct{ x, y float64 }

// polygon is a convex polygon, its corners counter-clockwise. With fewer than three it is empty.
type polygon []spot

// onLine is the distance in millimetres up to which a corner counts as lying on a cutting line.
const onLine = 1e-9

func rectangle(x0, y0, x1, y1 float64) polygon {
	if x1 <= x0 || y1 <= y0 {
		return nil
	}
	return polygon{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

func disc(x, y, r float64) polygon {
	if r <= 0 {
		return nil
	}
	return rounded(x-r, y-r, x+r, y+r, r)
}

// rounded returns a rectangle whose corners are rounded by radius r, each by a quarter of [Facets].
func rounded(x0, y0, x1, y1, r float64) polygon {
	r = min(r, (x1-x0)/2, (y1-y0)/2)
	if r <= 0 {
		return rectangle(x0, y0, x1, y1)
	}
	centres := [4]spot{{x1 - r, y1 - r}, {x0 + r, y1 - r}, {x0 + r, y0 + r}, {x1 - r, y0 + r}}
	out := make(polygon, 0, Facets+4)
	for q, c := range centres {
		for _, d := range quarters[q] {
			out = append(out, spot{c.x + r*d.x, c.y + r*d.y})
		}
	}
	out = slices.CompactFunc(out, spot.meets)
	if out[0].meets(out[len(out)-1]) { // a full circle comes back to where it began
		out = out[:len(out)-1]
	}
	return out
}

// quarters are the corners of a circle of radius 1 about the origin, by quarter, its beginning and end included.
var quarters = func() (out [4][Facets/4 + 1]spot) {
	for q := range out {
		for i := range out[q] {
			sin, cos := math.Sincos(2 * math.Pi * float64(q*(Facets/4)+i) / Facets)
			out[q][i] = spot{snap(cos), snap(sin)}
		}
	}
	return out
}()

// meets reports whether p and q are the same corner.
func (p spot) meets(q spot) bool { return math.Hypot(p.x-q.x, p.y-q.y) < onLine }

// snap takes the rounding of a sine or cosine away where it is 0 or ±1.
func snap(v float64) float64 {
	if r := math.Round(v); math.Abs(v-r) < 1e-12 {
		return r
	}
	return v
}

// line is a directed line: a corner of it and the unit normal to its left.
type line struct {
	at     spot
	nx, ny float64
}

// through returns the line from a to b, which must not be the same corner.
func through(a, b spot) line {
	dx, dy := b.x-a.x, b.y-a.y
	n := math.Sqrt(dx*dx + dy*dy)
	return line{a, -dy / n, dx / n}
}

// left returns the distance of p to the left of the line.
func (l line) left(p spot) float64 { return l.nx*(p.x-l.at.x) + l.ny*(p.y-l.at.y) }

func (l line) back() line { return line{l.at, -l.nx, -l.ny} }

// holds reports whether all of p lies to the left of the line or on it.
func (l line) holds(p polygon) bool {
	for _, c := range p {
		if l.left(c) < -onLine {
			return false
		}
	}
	return true
}

// keep returns the part of p to the left of the line.
func (p polygon) keep(l line) polygon {
	if l.holds(p) {
		return p
	}
	out := make(polygon, 0, len(p)+1)
	prev := p[len(p)-1]
	d0 := l.left(prev)
	for _, c := range p {
		d1 := l.left(c)
		if d0 > onLine && d1 < -onLine || d0 < -onLine && d1 > onLine {
			t := d0 / (d0 - d1)
			out = append(out, spot{prev.x + t*(c.x-prev.x), prev.y + t*(c.y-prev.y)})
		}
		if d1 >= -onLine {
			out = append(out, c)
		}
		prev, d0 = c, d1
	}
	if len(out) < 3 {
		return nil
	}
	return out
}

// and returns what p and q share.
func (p polygon) and(q polygon) polygon {
	if p.apart(q) {
		return nil
	}
	for i, a := range q {
		if b := q[(i+1)%len(q)]; !a.meets(b) {
			p = p.keep(through(a, b))
		}
	}
	return p
}

// without returns the convex parts of p outside q that are wider than thin.
func (p polygon) without(q polygon, thin float64) (parts []polygon) {
	if p.apart(q) {
		return []polygon{p}
	}
	for i, a := range q {
		b := q[(i+1)%len(q)]
		if a.meets(b) {
			continue
		}
		edge := through(a, b)
		if edge.holds(p) {
			continue
		}
		if out := p.keep(edge.back()); out.width() > thin {
			parts = append(parts, out)
		}
		if p = p.keep(edge); len(p) == 0 {
			break
		}
	}
	return parts
}

// apart reports whether the rectangles round p and q do not meet, or one of the two is empty.
func (p polygon) apart(q polygon) bool {
	if len(p) < 3 || len(q) < 3 {
		return true
	}
	a, b := p.extent()
	c, d := q.extent()
	return b.x <= c.x || d.x <= a.x || b.y <= c.y || d.y <= a.y
}

func (p polygon) extent() (lo, hi spot) {
	lo, hi = p[0], p[0]
	for _, c := range p[1:] {
		lo = spot{min(lo.x, c.x), min(lo.y, c.y)}
		hi = spot{max(hi.x, c.x), max(hi.y, c.y)}
	}
	return lo, hi
}

// width returns the distance of the two nearest parallel lines that hold p between them. One of them lies
// on an edge (the rotating calipers of Shamos, 1978).
func (p polygon) width() float64 {
	if len(p) < 3 {
		return 0
	}
	least := math.Inf(1)
	for i, a := range p {
		b := p[(i+1)%len(p)]
		if a.meets(b) {
			continue
		}
		far, edge := 0.0, through(a, b)
		for _, c := range p {
			far = max(far, edge.left(c))
		}
		least = min(least, far)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// middle returns the mean of p's corners, which lies in it.
func (p polygon) middle() (m spot) {
	for _, c := range p {
		m.x += c.x / float64(len(p))
		m.y += c.y / float64(len(p))
	}
	return m
}

// holds reports whether q lies inside p, not on its edge.
func (p polygon) holds(q spot) bool {
	for i, a := range p {
		if b := p[(i+1)%len(p)]; !a.meets(b) && through(a, b).left(q) <= onLine {
			return false
		}
	}
	return len(p) >= 3
}

// around returns the convex hull of the points (the monotone chain of Andrew, 1979).
func around(points []spot) polygon {
	slices.SortFunc(points, func(a, b spot) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y)) })
	points = slices.Compact(points)
	if len(points) < 3 {
		return nil
	}
	chain := func(from []spot) (half polygon) {
		for _, p := range from {
			for len(half) > 1 && turn(half[len(half)-2], half[len(half)-1], p) <= 0 {
				half = half[:len(half)-1]
			}
			half = append(half, p)
		}
		return half[:len(half)-1]
	}
	lower := chain(points)
	slices.Reverse(points)
	hull := append(lower, chain(points)...)
	if len(hull) < 3 {
		return nil
	}
	return hull
}

// turn is positive where a, b, c turn to the left.
func turn(a, b, c spot) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }
