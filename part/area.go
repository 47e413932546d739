package part

import (
	"math"
	"slices"

	"rodwright/length"
	"rodwright/piece"
)

// outline is what is left of a panel once it is cut out.
type outline struct {
	face   float64 // mm² of one face, through openings taken off
	edge   float64 // mm of edge all round, the walls of through openings included
	walls  float64 // mm² of the walls of pockets
	volume float64 // mm³
}

// outlineOf measures a panel. Rectangular openings that lie in one another, as a pocket that runs into a
// notch, are taken off once; round ones are taken to lie clear of all others. Edge profiles are left on:
// they take less than one part in a hundred of a board.
func outlineOf(p *piece.FlatPanel) outline {
	plan := frameOf(p).plan
	l, w, t := plan[0].MM(), plan[1].MM(), (p.Max.Z - p.Min.Z).MM()
	o := outline{face: l * w, edge: 2 * (l + w)}
	if p.Spec != nil {
		for c := piece.FrontLeft; c <= piece.BackRight; c++ {
			r := p.Spec.Corners[c].MM()
			o.face -= cornerArea(r)
			o.edge -= cornerRun(r)
		}
	}
	o.volume = o.face * t
	var cuts []opening
	for _, f := range p.Features {
		c := openingOf(f, plan, t)
		cuts = append(cuts, c)
		o.take(c, t)
	}
	face, volume := overlap(cuts, t)
	o.face, o.volume, o.edge = max(o.face+face, 0), max(o.volume+volume, 0), max(o.edge, 0)
	return o
}

// take takes one opening off.
func (o *outline) take(c opening, thick float64) {
	o.volume -= c.area * c.depth
	if c.depth < thick {
		o.walls += max(c.run, 0) * c.depth
		return
	}
	o.face -= c.area
	o.edge += c.run
}

// opening is one cut within a panel.
type opening struct {
	low, high [2]length.Length // of a rectangular one, within the panel; equal where it lies outside
	depth     float64          // mm; the thickness where it goes through
	area      float64          // mm², inside corners left rounded
	run       float64          // mm by which it lengthens the edge: a notch takes the stretch it opens to off and adds its own walls
	round     bool
}

func openingOf(f piece.Feature, plan [2]length.Length, thick float64) opening {
	c := opening{depth: thick, round: f.Round}
	if f.Depth > 0 {
		c.depth = min(f.Depth.MM(), thick)
	}
	if f.Round {
		a, b := (f.Max[0] - f.Min[0]).MM(), (f.Max[1] - f.Min[1]).MM()
		c.area, c.run = math.Pi/4*a*b, math.Pi*(a+b)/2 // exact for a circle, a = b
		return c
	}
	for k := range 2 {
		c.low[k] = min(max(f.Min[k], 0), plan[k])
		c.high[k] = max(min(f.Max[k], plan[k]), c.low[k])
	}
	a, b := (c.high[0] - c.low[0]).MM(), (c.high[1] - c.low[1]).MM()
	if a == 0 || b == 0 {
		return c
	}
	inX, inY := inside(c.low[0], c.high[0], plan[0]), inside(c.low[1], c.high[1], plan[1])
	c.run = wall(b, inX[0]) + wall(b, inX[1]) + wall(a, inY[0]) + wall(a, inY[1])
	c.area = a * b
	r := min(f.Radius.MM(), a/2, b/2)
	for _, x := range inX {
		for _, y := range inY {
			if x && y {
				c.area -= cornerArea(r)
				c.run -= cornerRun(r)
			}
		}
	}
	return c
}

// overlap returns the area in mm² and the volume in mm³ that rectangular openings lying in one another have
// in common, and that taking off each by itself counts more than once. It goes by the cells of the grid that
// their sides make.
func overlap(cuts []opening, thick float64) (face, volume float64) {
	var lines [2][]length.Length
	for _, c := range cuts {
		for k := range 2 {
			lines[k] = append(lines[k], c.low[k], c.high[k])
		}
	}
	for k := range 2 {
		slices.Sort(lines[k])
		lines[k] = slices.Compact(lines[k])
	}
	for i := 1; i < len(lines[0]); i++ {
		for j := 1; j < len(lines[1]); j++ {
			area := (lines[0][i] - lines[0][i-1]).MM() * (lines[1][j] - lines[1][j-1]).MM()
			through, deep, sum := 0, 0.0, 0.0
			for _, c := range cuts {
				if c.round || c.low[0] > lines[0][i-1] || c.high[0] < lines[0][i] || c.low[1] > lines[1][j-1] || c.high[1] < lines[1][j] {
					continue
				}
				deep, sum = max(deep, c.depth), sum+c.depth
				if c.depth >= thick {
					through++
				}
			}
			face += area * float64(max(through-1, 0))
			volume += area * (sum - deep)
		}
	}
	return face, volume
}

// inside reports for each end of a stretch whether it lies within the panel, not on its edge.
func inside(low, high, plan length.Length) [2]bool { return [2]bool{low > 0, high < plan} }

// wall returns the run that one side of an opening adds: its length inside the panel, and less its length
// where it lies on the edge and so takes that away.
func wall(l float64, inside bool) float64 {
	if inside {
		return l
	}
	return -l
}

// cornerArea is the area between a square corner and the arc of radius r that rounds it, (1 − π/4)·r².
func cornerArea(r float64) float64 { return (1 - math.Pi/4) * r * r }

// cornerRun is how much shorter the arc is than the two sides it replaces, (2 − π/2)·r.
func cornerRun(r float64) float64 { return (2 - math.Pi/2) * r }
