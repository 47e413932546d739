package view

import (
	"cmp"
	"math"
	"slices"

	"rodwright/draw"
)

// span is a stretch of a carrier.
type span struct{ from, to float64 }

// carrier is the endless line or the circle that stretches lie on, to the micrometre: what lies on one carrier
// is drawn once.
type carrier struct {
	circle bool
	a, b   int64 // the direction in 10⁻⁹, or the centre in micrometres
	c      int64 // the distance from the origin, or the radius, in micrometres
}

const micro = 1000.0

// carrierOf returns what a curve lies on, its origin and direction there, and whether it runs backwards.
func carrierOf(c curve) (k carrier, u, v float64) {
	if c.radius > 0 {
		return carrier{true, round(c.centre.u / micro), round(c.centre.v / micro), round(c.radius / micro)}, 0, 0
	}
	du, dv := c.b.u-c.a.u, c.b.v-c.a.v
	h := math.Hypot(du, dv)
	du, dv = du/h, dv/h
	if du < -1e-9 || math.Abs(du) <= 1e-9 && dv < 0 {
		du, dv = -du, -dv
	}
	return carrier{false, round(du * 1e9), round(dv * 1e9), round((c.a.u*dv - c.a.v*du) / micro)}, du, dv
}

// round rounds to whole numbers, away from where sizes in inches and millimetres lie halfway between two.
func round(v float64) int64 { return int64(math.Round(v + 0.2371)) }

// layer is everything that one pen draws on one carrier.
type layer struct {
	carrier
	like  curve // one of its curves, for the exact place of the carrier
	du    float64
	dv    float64
	spans []span
}

// sheet gathers stretches by pen and carrier, in the order in which they come.
type sheet struct {
	layers map[draw.Pen]map[carrier]*layer
	order  map[draw.Pen][]*layer
}

func newSheet() *sheet {
	return &sheet{layers: map[draw.Pen]map[carrier]*layer{}, order: map[draw.Pen][]*layer{}}
}

func (s *sheet) add(t stretch) {
	k, du, dv := carrierOf(t.curve)
	if s.layers[t.pen] == nil {
		s.layers[t.pen] = map[carrier]*layer{}
	}
	l := s.layers[t.pen][k]
	if l == nil {
		l = &layer{carrier: k, like: t.curve, du: du, dv: dv}
		s.layers[t.pen][k] = l
		s.order[t.pen] = append(s.order[t.pen], l)
	}
	l.spans = append(l.spans, l.spansOf(t)...)
}

// spansOf returns where on the carrier a stretch lies: along a line in nanometres, round a circle in radians
// from 0 to 2π.
func (l *layer) spansOf(t stretch) []span {
	if !l.circle {
		a, b := t.at(t.t0), t.at(t.t1)
		from, to := a.u*l.du+a.v*l.dv, b.u*l.du+b.v*l.dv
		return []span{{math.Min(from, to), math.Max(from, to)}}
	}
	from := t.from + t.t0*t.sweep
	width := (t.t1 - t.t0) * t.sweep
	from = math.Mod(math.Mod(from, 2*math.Pi)+2*math.Pi, 2*math.Pi)
	if to := from + width; to > 2*math.Pi {
		return []span{{from, 2 * math.Pi}, {0, to - 2*math.Pi}}
	}
	return []span{{from, from + width}}
}

// slackOf is how far apart spans may be to count as one.
func (l *layer) slackOf() float64 {
	if l.circle {
		return touch / l.like.radius
	}
	return touch
}

// joined returns spans in their order, those that meet as one.
func joined(spans []span, slack float64) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var out []span
	for _, s := range spans {
		if n := len(out); n > 0 && s.from <= out[n-1].to+slack {
			out[n-1].to = math.Max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// without returns what of spans no other covers, both in order and joined; what is shorter than slack is left
// out.
func without(spans, others []span, slack float64) (out []span) {
	for _, s := range spans {
		for _, o := range others {
			if o.to <= s.from || o.from >= s.to {
				continue
			}
			if o.from-s.from > slack {
				out = append(out, span{s.from, o.from})
			}
			s.from = math.Max(s.from, o.to)
		}
		if s.to-s.from > slack {
			out = append(out, s)
		}
	}
	return out
}

// marks returns what is drawn: seen lines first to claim their carrier, hidden ones where nothing is seen, then
// the finer pens.
func (s *sheet) marks() (out []draw.Mark) {
	taken := map[carrier][]span{}
	for _, pen := range []draw.Pen{draw.Outline, draw.Hidden, draw.Ghost, draw.Centre, draw.Grain, draw.Hatching} {
		for _, l := range s.order[pen] {
			slack := l.slackOf()
			spans := joined(l.spans, slack)
			left := spans
			if pen != draw.Centre { // an axis may run on an edge that is seen behind it
				left = without(spans, taken[l.carrier], slack)
				taken[l.carrier] = joined(append(taken[l.carrier], left...), slack)
			}
			for _, p := range left {
				out = append(out, l.mark(pen, p))
			}
		}
	}
	return out
}

// mark draws one span of a layer.
func (l *layer) mark(pen draw.Pen, s span) draw.Mark {
	if l.circle {
		c := l.like.centre
		from, sweep := s.from*180/math.Pi, (s.to-s.from)*180/math.Pi
		if 360-sweep < 1e-6 {
			from, sweep = 0, 360
		}
		return draw.Arc{Pen: pen, Centre: c.point(), Radius: nm(l.like.radius), From: from, Sweep: sweep}
	}
	// the foot of the line's normal from the origin, and the span along the line from there
	off := l.like.a.u*l.dv - l.like.a.v*l.du
	at := func(t float64) draw.Point {
		return place{u: t*l.du + off*l.dv, v: t*l.dv - off*l.du}.point()
	}
	return draw.Line{Pen: pen, A: at(s.from), B: at(s.to)}
}
