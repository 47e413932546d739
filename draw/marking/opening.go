package marking

import (
	"math"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// opening is a rectangle with a radius of its own at each corner, in nanometres from the datum: the panel
// itself, or a cut in it. The corners go round to the left from the one nearest to the datum.
type opening struct {
	lo, hi spot
	radius [4]float64
	depth  length.Length // zero: through
}

func spotOf(at [2]length.Length) spot { return spot{float64(at[0]), float64(at[1])} }

// wholePanel is the panel before anything is cut out of it.
func wholePanel(p part.Part, flat *piece.FlatPanel) opening {
	o := opening{hi: spot{float64(p.Finished[0]), float64(p.Finished[1])}}
	if flat == nil || flat.Spec == nil {
		return o
	}
	for i, c := range corners(flat.GrainX) {
		o.radius[i] = o.most(flat.Spec.Corners[c])
	}
	return o
}

// corners lists the corners as the panel lies in the piece, in the order of an opening's.
func corners(grainX bool) [4]piece.Corner {
	if grainX {
		return [4]piece.Corner{piece.FrontLeft, piece.FrontRight, piece.BackRight, piece.BackLeft}
	}
	return [4]piece.Corner{piece.FrontRight, piece.BackRight, piece.BackLeft, piece.FrontLeft}
}

// most returns the radius, or the greatest that the sides have room for.
func (o opening) most(r length.Length) float64 {
	return max(0, min(float64(r), (o.hi.x-o.lo.x)/2, (o.hi.y-o.lo.y)/2))
}

// openingOf is a feature as it is cut. It ends at the panel's edges, and a corner of it is rounded where it
// lies within the panel: where a notch runs out over an edge the tool runs out with it.
func openingOf(f part.Feature, panel opening) opening {
	at, size := spotOf(f.At), spotOf(f.Size)
	o := opening{lo: at, hi: at.plus(size), depth: f.Depth}
	if f.Round {
		for i := range o.radius {
			o.radius[i] = min(size.x, size.y) / 2
		}
		return o
	}
	o.lo = spot{max(o.lo.x, panel.lo.x), max(o.lo.y, panel.lo.y)}
	o.hi = spot{min(o.hi.x, panel.hi.x), min(o.hi.y, panel.hi.y)}
	inX := [2]bool{o.lo.x > panel.lo.x, o.hi.x < panel.hi.x}
	inY := [2]bool{o.lo.y > panel.lo.y, o.hi.y < panel.hi.y}
	for i, in := range [4]bool{inX[0] && inY[0], inX[1] && inY[0], inX[1] && inY[1], inX[0] && inY[1]} {
		if in {
			o.radius[i] = o.most(f.Radius)
		}
	}
	return o
}

// empty reports whether nothing of it lies in the panel.
func (o opening) empty() bool { return o.hi.x-o.lo.x <= same || o.hi.y-o.lo.y <= same }

// edges goes once round to the left.
func (o opening) edges() (out []curve) {
	at := [4]spot{o.lo, {o.hi.x, o.lo.y}, o.hi, {o.lo.x, o.hi.y}}
	along := [4]spot{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}
	for i := range 4 {
		j := (i + 1) % 4
		a := at[i].plus(along[i].times(o.radius[i]))
		b := at[j].minus(along[i].times(o.radius[j]))
		if a.far(b) > same {
			out = append(out, straight(a, b))
		}
		if r := o.radius[j]; r > 0 {
			out = append(out, arc(b.plus(along[i].left().times(r)), r, float64(i-1)*math.Pi/2, math.Pi/2))
		}
	}
	return out
}

// holds reports whether a place lies within it.
func (o opening) holds(p spot) bool {
	if p.x < o.lo.x || p.x > o.hi.x || p.y < o.lo.y || p.y > o.hi.y {
		return false
	}
	inward := [4]spot{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}
	at := [4]spot{o.lo, {o.hi.x, o.lo.y}, o.hi, {o.lo.x, o.hi.y}}
	for i, r := range o.radius {
		from := at[i].plus(inward[i].times(r)).minus(p) // from the place to the middle of the corner's arc
		if from.x*inward[i].x > 0 && from.y*inward[i].y > 0 && from.norm() > r {
			return false
		}
	}
	return true
}
