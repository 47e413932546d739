package beam_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/beam"
)

// integral sums f over 0 to l by Simpson's rule, which is exact for the cubics that occur here between the
// places where a load or support stands.
func integral(from, to float64, f func(float64) float64) float64 {
	return (to - from) / 6 * (f(from) + 4*f((from+to)/2) + f(to))
}

// fine sums f over 0 to l in many short steps, so that the corners of moment lines do no harm.
func fine(l float64, f func(float64) float64) float64 {
	const steps = 4000
	sum := 0.0
	for i := range steps {
		sum += integral(l*float64(i)/steps, l*float64(i+1)/steps, f)
	}
	return sum
}

// moments returns the bending moment along a resting beam under a whole load of 1, and that of a unit load
// at mid-span: statics, any mechanics text.
func moments(s beam.Spread, l float64) (load, unit func(float64) float64) {
	unit = func(x float64) float64 { return min(x, l-x) / 2 }
	if s == beam.Middle {
		return unit, unit
	}
	return func(x float64) float64 { return x * (l - x) / (2 * l) }, unit
}

// Every case computed anew: δ = ∫ M·m/(EI) dx (any mechanics text); held ends carry
// the mean of the resting beam's moment, so that they do not turn.
func TestSagAndStressByVirtualWork(t *testing.T) {
	s := rectangle(t, 10, 1)
	b := beam.Beam{Span: 40 * in, Modulus: 11_000, Section: s}
	l := b.Span.MM()
	for _, spread := range []beam.Spread{beam.Even, beam.Middle} {
		load, unit := moments(spread, l)
		hold := fine(l, load) / l
		for ends, end := range map[beam.Ends]float64{beam.Resting: 0, beam.Held: hold} {
			m := func(x float64) float64 { return load(x) - end }
			want := 700 * fine(l, func(x float64) float64 { return m(x) * unit(x) }) / (b.Modulus * s.Inertia)
			name := string(spread) + ", " + string(ends)
			near(t, name, must(t)(beam.Sag(b, 700, spread, ends)).Value, want, 1e-5*want)
			worst := 700 * max(math.Abs(m(0)), math.Abs(m(l/2))) / s.Modulus
			near(t, name+", stress", must(t)(beam.Stress(b, 700, spread, ends)).Value, worst, 1e-5*worst)
		}
	}
}

// Any mechanics text: the shear sag is ∫ V·v/(GA') dx, half the load on each support.
func TestShearAddsItsPart(t *testing.T) {
	s := rectangle(t, 10, 1)
	near(t, "5/6 of the area", s.ShearArea(), 10*25.4*25.4*5/6, 1e-9)
	b := beam.Beam{Span: 20 * in, Modulus: 11_000, Section: s}
	with := b
	with.Shear, with.ShearArea = 800, s.ShearArea()
	l := b.Span.MM()
	shear := map[beam.Spread]func(float64) float64{
		beam.Even:   func(x float64) float64 { return math.Abs(0.5 - x/l) },
		beam.Middle: func(float64) float64 { return 0.5 },
	}
	for spread, v := range shear {
		for _, ends := range []beam.Ends{beam.Resting, beam.Held} {
			want := 700 * fine(l, func(x float64) float64 { return v(x) * 0.5 }) / (with.Shear * with.ShearArea)
			got := must(t)(beam.Sag(with, 700, spread, ends)).Value - must(t)(beam.Sag(b, 700, spread, ends)).Value
			near(t, string(spread)+", "+string(ends), got, want, 1e-5*want)
		}
	}
}

// The overhung beam by virtual work: moment -wx²/2 over the overhang, plus the support's force past it.
func TestAnOverhungBeamByVirtualWork(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := drawBeam(r)
		past := length.Length(rapid.Int64Range(0, int64(b.Span)).Draw(r, "overhang"))
		l, a := b.Span.MM(), past.MM()
		whole := l + 2*a
		w := 400 / whole
		m := func(x float64) float64 { return w*whole/2*max(0, x-a) - w*x*x/2 }
		moment := func(x float64) float64 { return m(min(x, whole-x)) }
		middle := func(x float64) float64 { return max(0, min(x, whole-x)-a) / 2 }
		tip := func(x float64) float64 { // unit load at the left end
			if x <= a {
				return -x
			}
			return -a * max(0, a+l-x) / l
		}
		check := func(name string, got float64, err error, unit func(float64) float64) {
			if err != nil {
				r.Fatal(err)
			}
			ei := b.Modulus * b.Section.Inertia
			want := fine(whole, func(x float64) float64 { return moment(x) * unit(x) }) / ei
			scale := w * whole * whole * whole * whole / ei
			if math.Abs(got-want) > 1e-5*scale {
				r.Fatalf("%s: %v, by virtual work %v", name, got, want)
			}
		}
		over, err := beam.Overhang(b, past, 400)
		check("middle", over.Value, err, middle)
		end, err := beam.OverhangTip(b, past, 400)
		check("tip", end.Value, err, tip)
	})
}

// Geometry, and ASME B36.10M from memory: the wall of an NPS 3/4 Schedule 40 pipe has 0.333 in².
func TestAreasAndModuliOfSections(t *testing.T) {
	s := rectangle(t, 12, 2)
	near(t, "area", s.Area/(25.4*25.4), 24, 1e-9)
	near(t, "section modulus", s.Modulus/(25.4*25.4*25.4), 8, 1e-9)
	near(t, "second moment", s.Inertia/inch4, 8, 1e-9)
	near(t, "pipe wall", tube(t, 1.05, 0.113).Area/(25.4*25.4), 0.333, 0.001)
}
