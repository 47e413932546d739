package view

import (
	"math"

	"rodwright/draw"
	"rodwright/piece"
)

// wheel is a caster that trails to the right of the sheet. A swivel caster stands any way: each view from
// beside shows it turned so that the wheel is seen round. Only wheel, offset and height are known; the fork
// between them is drawn as a fork, at no size of its own.
type wheel struct {
	hub    place // the middle of the wheel
	radius float64
	stem   place // the top of the swivel axis
}

// casterOf returns how a caster is seen. From above it is the round that it sweeps.
func casterOf(side Side, f *piece.Foot) form {
	top := side.see(vec(f.At))
	radius := float64(f.Spec.Wheel.Half())
	if side == Top {
		return disc{top, radius + float64(f.Spec.Offset)}
	}
	return wheel{
		hub:    place{top.u + float64(f.Spec.Offset), math.Min(radius, top.v), top.near},
		radius: math.Min(radius, top.v),
		stem:   top,
	}
}

func (w wheel) extent() extent {
	e := between(place{u: w.hub.u - w.radius, v: w.hub.v - w.radius}, place{u: w.hub.u + w.radius, v: w.hub.v + w.radius})
	reach := w.crown()
	return extent{math.Min(e.u0, w.stem.u-reach), math.Min(e.v0, w.stem.v), math.Max(e.u1, w.stem.u+reach), math.Max(e.v1, w.stem.v)}
}

// crown is half the width of the fork at its top.
func (w wheel) crown() float64 { return 0.45 * w.radius }

func (w wheel) nearest(u, v float64) (float64, bool) {
	return w.hub.near, math.Hypot(u-w.hub.u, v-w.hub.v) <= w.radius
}

// edges returns tyre, hub, and the fork in front of the wheel.
func (w wheel) edges() []curve {
	hub := 0.22 * w.radius
	c, near := w.crown(), w.hub.near
	out := []curve{circle(w.hub, w.radius), circle(w.hub, hub)}
	// the legs of the fork are tangents of the hub, near enough: they run to the ends of its level diameter
	for _, x := range [2]float64{-1, 1} {
		out = append(out, straight(place{w.stem.u + x*c, w.stem.v, near}, place{w.hub.u + x*hub, w.hub.v, near}))
	}
	return append(out, straight(place{w.stem.u - c, w.stem.v, near}, place{w.stem.u + c, w.stem.v, near}))
}

// levellers draws levelling feet as ghosts: a pad and a stem, of which the height alone is known.
func (s scene) levellers() (out []stretch) {
	if s.side == Top {
		return nil
	}
	for i := range s.r.Feet {
		f := &s.r.Feet[i]
		top := s.side.see(vec(f.At))
		if f.Spec.Kind != piece.Leveller || top.v <= 0 {
			continue
		}
		for _, e := range []extent{
			{top.u - 0.5*top.v, 0, top.u + 0.5*top.v, 0.25 * top.v},
			{top.u - 0.12*top.v, 0.25 * top.v, top.u + 0.12*top.v, top.v},
		} {
			for _, c := range outline(e, top.near) {
				out = append(out, stretch{c, 0, 1, draw.Ghost, -1})
			}
		}
	}
	return out
}
