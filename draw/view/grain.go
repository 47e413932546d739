package view

import (
	"math"

	"rodwright/draw"
	"rodwright/piece"
)

// Distances on paper, in millimetres.
const (
	grainApart = 4.2
	leastFace  = 5.0  // what is narrower gets no grain
	ringApart  = 1.1  // between growth rings
	longStroke = 16.0 // of a line of grain, on the average
	grainGap   = 9.0  // to the next on the same line
	shortest   = 1.5
)

// grain returns lines along the grain of faces, and growth-ring arcs on the end grain, where they are seen.
func (s scene) grain(per int64) (out []stretch) {
	for i, b := range s.bodies {
		if b.Kind != piece.PanelBody || s.r.Panels[b.Index].Spec.Sheet != "" {
			continue
		}
		p := &s.r.Panels[b.Index]
		k := blockOf(s.side, vec(p.Min), vec(p.Max))
		k.lo.near = k.hi.near
		near := s.around(i)
		level := p.GrainX == (s.side != Right)
		ends := s.side != Top && !level
		lines := along(k.lo, k.hi, level, per)
		if ends {
			lines = rings(k.lo, k.hi, per)
		}
		for n, c := range lines {
			c.there = func(u, v float64) bool {
				_, wood := b.form.nearest(u, v)
				return wood && b.extent.holds(u, v, -touch)
			}
			if f, ok := b.form.(rim); ok && len(f.cuts) > 0 {
				c.depth = func(u, v float64) float64 { near, _ := f.nearest(u, v); return near }
			}
			parts := onlySeen(s.part(i, c, draw.Hatching, near))
			if !ends {
				parts = strokes(parts, n+i, per)
			}
			out = append(out, parts...)
		}
	}
	return out
}

// uneven returns a number from 0 to 1 for a place in a row: it looks irregular and is always the same (the
// fractional parts of multiples of the golden ratio).
func uneven(i int) float64 {
	_, f := math.Modf(float64(i+1) * math.Phi)
	return f
}

// strokes breaks lines into strokes of uneven lengths, as a pencil draws grain.
func strokes(lines []stretch, row int, per int64) (out []stretch) {
	for _, t := range lines {
		full := t.curve.length()
		from := t.t0*full - onPaper(uneven(row)*(longStroke+grainGap), per)
		for k := row; from < t.t1*full; k++ {
			to := from + onPaper(longStroke*(0.5+uneven(3*k)), per)
			a, b := math.Max(from, t.t0*full+onPaper(0.5, per)), math.Min(to, t.t1*full-onPaper(0.5, per))
			if b-a > onPaper(shortest, per) {
				out = append(out, stretch{t.curve, a / full, b / full, t.pen, t.body})
			}
			from = to + onPaper(grainGap*(0.5+uneven(5*k+1)), per)
		}
	}
	return out
}

// along returns lines along the grain, near enough evenly spaced to be quiet and uneven enough to be wood.
func along(lo, hi place, level bool, per int64) (out []curve) {
	width := hi.v - lo.v
	if !level {
		width = hi.u - lo.u
	}
	if width < onPaper(leastFace, per) {
		return nil
	}
	n := math.Max(2, math.Floor(width/onPaper(grainApart, per)))
	for k := 0.0; k < n; k++ {
		at := (k + 0.2 + 0.6*uneven(int(k))) / n * width
		if level {
			out = append(out, straight(place{lo.u, lo.v + at, lo.near}, place{hi.u, lo.v + at, lo.near}))
		} else {
			out = append(out, straight(place{lo.u + at, lo.v, lo.near}, place{lo.u + at, hi.v, lo.near}))
		}
	}
	return out
}

// rings returns arcs about a pith below the face, one row for each strip's width of about three thicknesses.
func rings(lo, hi place, per int64) (out []curve) {
	thick, width := hi.v-lo.v, hi.u-lo.u
	if thick < onPaper(1, per) || width < thick {
		return nil
	}
	strips := math.Max(1, math.Round(width/(3*thick)))
	strip := width / strips
	for k := 0.0; k < strips; k++ {
		pith := place{lo.u + (k+0.5)*strip, lo.v - thick/2, lo.near}
		for r := 0.7 * thick; r < math.Hypot(strip/2, 1.5*thick); r += onPaper(ringApart, per) {
			// kept within its strip: the angle at which the arc leaves it
			half := math.Asin(math.Min(1, strip/2/r))
			out = append(out, arc(pith, r, math.Pi/2-half, 2*half))
		}
	}
	return out
}
