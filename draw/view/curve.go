package view

import "math"

// curve is a straight line or an arc of a body's edge.
type curve struct {
	a, b   place   // the ends of a straight line
	bow    float64 // of a round rim seen from beside: the middle of the line is that much nearer than its ends
	centre place   // of an arc
	radius float64 // of an arc; 0 for a straight line
	from   float64 // radians
	sweep  float64 // radians, anticlockwise; 2π for a circle
	depth  func(u, v float64) float64
	there  func(u, v float64) bool // whether the edge is there at a place; nil where it is everywhere
	kind   lineKind
}

// lineKind says what a line has to do with the body it is a line of.
type lineKind uint8

const (
	edge     lineKind = iota // on its skin
	under                    // on its far side, or in it
	axisLine                 // its axis
)

func straight(a, b place) curve { return curve{a: a, b: b} }

func arc(centre place, radius, from, sweep float64) curve {
	return curve{centre: centre, radius: radius, from: from, sweep: sweep}
}

func circle(centre place, radius float64) curve { return arc(centre, radius, 0, 2*math.Pi) }

func (c curve) length() float64 {
	if c.radius > 0 {
		return c.radius * c.sweep
	}
	return math.Hypot(c.b.u-c.a.u, c.b.v-c.a.v)
}

// at returns the place at a share of the way, from 0 to 1.
func (c curve) at(t float64) place {
	var p place
	if c.radius > 0 {
		sin, cos := math.Sincos(c.from + t*c.sweep)
		p = place{c.centre.u + c.radius*cos, c.centre.v + c.radius*sin, c.centre.near}
	} else {
		p = c.a.plus(c.b.minus(c.a), t)
	}
	if c.bow > 0 {
		x := (2*t - 1) * c.bow
		p.near += math.Sqrt(math.Max(0, c.bow*c.bow-x*x))
	}
	if c.depth != nil {
		p.near = c.depth(p.u, p.v)
	}
	return p
}

func (c curve) extent() extent {
	if c.radius > 0 {
		return extent{c.centre.u - c.radius, c.centre.v - c.radius, c.centre.u + c.radius, c.centre.v + c.radius}
	}
	return between(c.a, c.b)
}

// crossings adds to ts the shares of the way at which c meets o, as seen.
func (c curve) crossings(ts []float64, o curve) []float64 {
	switch {
	case c.radius == 0 && o.radius == 0:
		return c.meetsLine(ts, o)
	case c.radius == 0:
		return c.meetsCircle(ts, o)
	case o.radius == 0:
		for _, t := range o.meetsCircle(nil, c) {
			ts = c.shareOf(ts, o.at(t))
		}
		return ts
	default:
		return c.circlesMeet(ts, o)
	}
}

// slack is how far beyond its end, in nanometres, a line still counts as met: an end that only just reaches
// another line must part it.
const slack = 1.0

func (c curve) meetsLine(ts []float64, o curve) []float64 {
	du, dv := c.b.u-c.a.u, c.b.v-c.a.v
	eu, ev := o.b.u-o.a.u, o.b.v-o.a.v
	det := du*ev - dv*eu
	if math.Abs(det) < 1e-12*(math.Abs(du)+math.Abs(dv))*(math.Abs(eu)+math.Abs(ev)) {
		// along each other: where o begins and ends on c
		return c.shareOf(c.shareOf(ts, o.a), o.b)
	}
	au, av := o.a.u-c.a.u, o.a.v-c.a.v
	t, s := (au*ev-av*eu)/det, (au*dv-av*du)/det
	over := slack / math.Max(slack, math.Hypot(eu, ev))
	if s < -over || s > 1+over {
		return ts
	}
	return append(ts, t)
}

func (c curve) meetsCircle(ts []float64, o curve) []float64 {
	du, dv := c.b.u-c.a.u, c.b.v-c.a.v
	l2 := du*du + dv*dv
	if l2 == 0 {
		return ts
	}
	on := ((o.centre.u-c.a.u)*du + (o.centre.v-c.a.v)*dv) / l2
	off := ((o.centre.u-c.a.u)*dv - (o.centre.v-c.a.v)*du) / math.Sqrt(l2)
	if math.Abs(off) > o.radius {
		return ts
	}
	half := math.Sqrt((o.radius*o.radius - off*off) / l2)
	for _, t := range [2]float64{on - half, on + half} {
		if len(o.shareOf(nil, c.a.plus(c.b.minus(c.a), t))) > 0 {
			ts = append(ts, t)
		}
	}
	return ts
}

func (c curve) circlesMeet(ts []float64, o curve) []float64 {
	du, dv := o.centre.u-c.centre.u, o.centre.v-c.centre.v
	d := math.Hypot(du, dv)
	if d < touch {
		if math.Abs(c.radius-o.radius) < touch && o.sweep < 2*math.Pi {
			return c.shareOf(c.shareOf(ts, o.at(0)), o.at(1))
		}
		return ts
	}
	if d > c.radius+o.radius || d < math.Abs(c.radius-o.radius) {
		return ts
	}
	x := (d*d + c.radius*c.radius - o.radius*o.radius) / (2 * d)
	y := math.Sqrt(math.Max(0, c.radius*c.radius-x*x))
	for _, side := range [2]float64{y, -y} {
		p := place{u: c.centre.u + (x*du-side*dv)/d, v: c.centre.v + (x*dv+side*du)/d}
		if len(o.shareOf(nil, p)) > 0 {
			ts = c.shareOf(ts, p)
		}
	}
	return ts
}

// shareOf adds to ts the share of the way at which the place lies, if it lies on the curve.
func (c curve) shareOf(ts []float64, p place) []float64 {
	if c.radius > 0 {
		turn := math.Mod(math.Atan2(p.v-c.centre.v, p.u-c.centre.u)-c.from, 2*math.Pi)
		over := slack / c.radius
		if turn < -over {
			turn += 2 * math.Pi
		}
		if turn > c.sweep+over {
			return ts
		}
		return append(ts, turn/c.sweep)
	}
	du, dv := c.b.u-c.a.u, c.b.v-c.a.v
	l2 := du*du + dv*dv
	if l2 == 0 {
		return ts
	}
	if off := ((p.u-c.a.u)*dv - (p.v-c.a.v)*du) / math.Sqrt(l2); math.Abs(off) > touch {
		return ts
	}
	return append(ts, ((p.u-c.a.u)*du+(p.v-c.a.v)*dv)/l2)
}
