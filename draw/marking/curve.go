package marking

import "math"

// spot is a place on a panel in nanometres from its datum. Whole nanometres are exact in it; where an arc is
// cut, the place is as good as a float64, far below a nanometre.
type spot struct{ x, y float64 }

func (p spot) plus(q spot) spot       { return spot{p.x + q.x, p.y + q.y} }
func (p spot) minus(q spot) spot      { return spot{p.x - q.x, p.y - q.y} }
func (p spot) times(k float64) spot   { return spot{p.x * k, p.y * k} }
func (p spot) dot(q spot) float64     { return p.x*q.x + p.y*q.y }
func (p spot) norm() float64          { return math.Hypot(p.x, p.y) }
func (p spot) far(q spot) float64     { return p.minus(q).norm() }
func (p spot) left() spot             { return spot{-p.y, p.x} }
func onCircle(angle float64) spot     { return spot{math.Cos(angle), math.Sin(angle)} }
func near(a, b float64) bool          { return math.Abs(a-b) <= same }
func (p spot) is(q spot) bool         { return near(p.x, q.x) && near(p.y, q.y) }
func clamp(v, lo, hi float64) float64 { return max(lo, min(hi, v)) }

// Two places nearer than same are one; a place is tried for wood a step of beside to either side of an edge.
// Both are far below what a tool can make and far above what rounding errs by.
const (
	same   = 20.0  // nm
	beside = 100.0 // nm
)

// curve is a straight edge, radius 0, or an arc that begins at angle from and turns through sweep radians,
// positive to the left.
type curve struct {
	a, b        spot
	centre      spot
	radius      float64
	from, sweep float64
}

func straight(a, b spot) curve { return curve{a: a, b: b} }

func arc(centre spot, radius, from, sweep float64) curve {
	c := curve{centre: centre, radius: radius, from: from, sweep: sweep}
	c.a, c.b = c.at(0), c.at(1)
	return c
}

// at returns the place at a share of the way from a to b.
func (c curve) at(t float64) spot {
	if c.radius == 0 {
		return c.a.plus(c.b.minus(c.a).times(t))
	}
	return c.centre.plus(onCircle(c.from + t*c.sweep).times(c.radius))
}

// heading returns the direction of travel at a share of the way, of length 1.
func (c curve) heading(t float64) spot {
	if c.radius == 0 {
		d := c.b.minus(c.a)
		return d.times(1 / d.norm())
	}
	return onCircle(c.from + t*c.sweep).left().times(math.Copysign(1, c.sweep))
}

func (c curve) reversed() curve {
	c.a, c.b = c.b, c.a
	c.from, c.sweep = c.from+c.sweep, -c.sweep
	return c
}

// bulge is the tangent of a quarter of the angle the curve turns through.
func (c curve) bulge() float64 {
	if c.radius == 0 {
		return 0
	}
	return math.Tan(c.sweep / 4)
}

// share returns how far along the curve a place lies that is on its line or circle, and whether it is on it.
func (c curve) share(p spot) (t float64, on bool) {
	long := c.radius * math.Abs(c.sweep)
	if c.radius == 0 {
		d := c.b.minus(c.a)
		long = d.norm()
		t = p.minus(c.a).dot(d) / (long * long)
	} else {
		d := p.minus(c.centre)
		t = math.Remainder(math.Atan2(d.y, d.x)-c.from-c.sweep/2, 2*math.Pi)/c.sweep + 0.5
	}
	slack := same / long
	return clamp(t, 0, 1), t >= -slack && t <= 1+slack
}

// meetings returns the places where two curves cross or touch. Where they run on each other these are the
// ends of the stretch.
func (c curve) meetings(d curve) (out []spot) {
	for _, p := range c.lineMeetings(d) {
		if _, on := c.share(p); !on {
			continue
		}
		if _, on := d.share(p); on {
			out = append(out, p)
		}
	}
	return out
}

// lineMeetings returns where the whole lines or circles of two curves meet.
func (c curve) lineMeetings(d curve) []spot {
	switch {
	case c.radius == 0 && d.radius == 0:
		return lineWithLine(c, d)
	case c.radius == 0:
		return lineWithCircle(c, d)
	case d.radius == 0:
		return lineWithCircle(d, c)
	}
	return circleWithCircle(c, d)
}

func lineWithLine(c, d curve) []spot {
	u, v := c.heading(0), d.heading(0)
	turn := u.dot(v.left())
	if math.Abs(turn) < 1e-9 { // parallel; all straight edges here are upright or level
		if math.Abs(d.a.minus(c.a).dot(u.left())) > same {
			return nil
		}
		return []spot{c.a, c.b, d.a, d.b}
	}
	return []spot{c.a.plus(u.times(d.a.minus(c.a).dot(v.left()) / turn))}
}

func lineWithCircle(l, c curve) []spot {
	u := l.heading(0)
	foot := l.a.plus(u.times(c.centre.minus(l.a).dot(u)))
	off := foot.far(c.centre)
	switch {
	case off > c.radius+same:
		return nil
	case off >= c.radius:
		return []spot{foot}
	}
	half := u.times(math.Sqrt(c.radius*c.radius - off*off))
	return []spot{foot.plus(half), foot.minus(half)}
}

func circleWithCircle(c, d curve) []spot {
	w := d.centre.minus(c.centre)
	far := w.norm()
	if far <= same {
		if !near(c.radius, d.radius) {
			return nil
		}
		return []spot{c.a, c.b, d.a, d.b}
	}
	if far > c.radius+d.radius+same || far < math.Abs(c.radius-d.radius)-same {
		return nil
	}
	along := (far*far + c.radius*c.radius - d.radius*d.radius) / (2 * far)
	half := math.Sqrt(max(0, c.radius*c.radius-along*along))
	u := w.times(1 / far)
	foot := c.centre.plus(u.times(along))
	return []spot{foot.plus(u.left().times(half)), foot.minus(u.left().times(half))}
}
