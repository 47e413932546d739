package check

import (
	"errors"
	"math"

	"rodwright/figure"
	"rodwright/trade/caster"
	"rodwright/trade/stability"
)

// load is what the worst of several feet bears, in kg, reckoned in the ways the trade does.
type load struct {
	count   int
	share   figure.Figure // a third of the whole; missing with more than four feet
	even    figure.Figure // on an even floor, with the worst combination of what is held
	three   figure.Figure // on the worst three feet, with everything held; missing where they can't bear it
	average figure.Figure
	moment  figure.Figure // of the share on a caster's plate or stem; missing without an offset
}

// figures returns those of the figures that apply.
func (l load) figures() (out []figure.Figure) {
	for _, f := range []figure.Figure{l.share, l.even, l.three, l.average, l.moment} {
		if !f.Missing() {
			out = append(out, f)
		}
	}
	return out
}

// errFeet says that a load can't be shared out.
var errFeet = errors.New("three feet that do not stand in one line")

// load reckons what the feet of s bear.
func (p *Piece) load(s standing, feet []int) (load, error) {
	l := load{count: len(feet)}
	own, err := stability.Centre(p.bodies(s)...)
	if err != nil {
		return l, err
	}
	own.Kg = p.ownKg(s)
	bodies := []stability.Mass{own}
	for _, h := range p.things(s) {
		bodies = append(bodies, heldMass(h))
	}
	total := 0.0
	for _, b := range bodies {
		total += b.Kg
	}
	at := p.axes(feet)
	even, ok := worstOnSprings(at, bodies)
	if !ok {
		return l, errFeet
	}
	w, n := figure.In("W", total, figure.Kg), figure.In("n", float64(l.count), figure.Count)
	l.even = figure.Of("load on the worst foot, even floor", even, figure.Kg, &evenFormula, w, n).Assuming("each thing held may be there or not")
	l.average = figure.Of("average load on a foot", total/float64(l.count), figure.Kg, &averageFormula, w, n)
	if l.count <= 4 {
		if l.share, err = caster.Share(total, l.count); err != nil {
			return l, err
		}
	}
	centre, err := stability.Centre(bodies...)
	if err != nil {
		return l, err
	}
	if share, ok := worstOfThree(at, [2]float64{centre.X.MM(), centre.Y.MM()}); ok {
		l.three = figure.Of("load on the worst foot, no give", share*total, figure.Kg, &threeFormula, w).
			Assuming("the piece does not give: it rocks on three of its feet")
	}
	if m, ok := p.plateMoment(math.Max(even, l.share.Value)); ok {
		l.moment = m
	}
	return l, nil
}

// axes returns where the feet stand, in mm.
func (p *Piece) axes(feet []int) [][2]float64 {
	out := make([][2]float64, len(feet))
	for k, i := range feet {
		out[k] = [2]float64{p.Feet[i].At.X.MM(), p.Feet[i].At.Y.MM()}
	}
	return out
}

// worstOnSprings returns the greatest load on one of several feet that are equal springs under a stiff
// piece. The first body is always there, of the others only those that add to that foot's load. It reports
// false for feet that stand in one line.
//
//	R = Σ m·(1/n + a·(x − x̄) + b·(y − ȳ))
//
// with a and b from the second moments of the feet about their middle.
func worstOnSprings(at [][2]float64, bodies []stability.Mass) (worst float64, ok bool) {
	plane, ok := sharePlane(at)
	if !ok {
		return 0, false
	}
	n := float64(len(at))
	for _, f := range at {
		a, b := plane.slopes(f)
		sum := 0.0
		for i, m := range bodies {
			share := m.Kg * (1/n + a*(m.X.MM()-plane.mid[0]) + b*(m.Y.MM()-plane.mid[1]))
			if i == 0 || share > 0 {
				sum += share
			}
		}
		worst = math.Max(worst, sum)
	}
	return worst, true
}

// shares are the feet's middle and their second moments about it, from which the load on each follows.
type shares struct {
	mid              [2]float64 // mm
	xx, yy, xy, both float64    // mm²; mm⁴
}

// sharePlane reports false for feet that stand in one line.
func sharePlane(at [][2]float64) (s shares, ok bool) {
	n := float64(len(at))
	for _, f := range at {
		s.mid[0], s.mid[1] = s.mid[0]+f[0]/n, s.mid[1]+f[1]/n
	}
	for _, f := range at {
		x, y := f[0]-s.mid[0], f[1]-s.mid[1]
		s.xx, s.yy, s.xy = s.xx+x*x, s.yy+y*y, s.xy+x*y
	}
	s.both = s.xx*s.yy - s.xy*s.xy
	return s, len(at) >= 3 && s.both > 1e-9*s.xx*s.yy
}

// slopes returns by how much the share of a foot grows with a load's place, for each mm along and front to back.
func (s shares) slopes(foot [2]float64) (a, b float64) {
	x, y := foot[0]-s.mid[0], foot[1]-s.mid[1]
	return (x*s.yy - y*s.xy) / s.both, (y*s.xx - x*s.xy) / s.both
}

// worstOfThree returns the greatest share of the whole that one foot bears when the piece stands on three of
// its feet only, over all threes on which it can stand with its centre there. It reports false when there is
// none. For four feet at the corners of a rectangle it is ½ + min(|ex|, |ey|).
func worstOfThree(at [][2]float64, centre [2]float64) (worst float64, ok bool) {
	for i := range at {
		for j := range at[:i] {
			for k := range at[:j] {
				if share, on := shareOfThree(at[i], at[j], at[k], centre); on {
					worst, ok = math.Max(worst, share), true
				}
			}
		}
	}
	return worst, ok
}

// shareOfThree returns the greatest of the shares of the centre's load on three points, and reports whether
// the centre lies between them.
func shareOfThree(a, b, c, centre [2]float64) (float64, bool) {
	area := func(p, q, r [2]float64) float64 { return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0]) }
	all := area(a, b, c)
	if math.Abs(all) <= flatTurn {
		return 0, false
	}
	shares := [3]float64{area(centre, b, c) / all, area(a, centre, c) / all, area(a, b, centre) / all}
	worst := 0.0
	for _, s := range shares {
		if s < -1e-9 {
			return 0, false
		}
		worst = math.Max(worst, s)
	}
	return worst, true
}
