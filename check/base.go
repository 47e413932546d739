package check

import (
	"cmp"
	"math"
	"slices"

	"rodwright/length"
	"rodwright/piece"
)

// side is one line about which a piece can tip: through two feet, pulled in by the swivel offset of the
// casters on it, as both can swing inward at once, or pushed out to the rims of flanges it stands on.
type side struct {
	at   [2]float64    // a point on the line, mm in plan
	out  [2]float64    // unit vector in plan, away from the piece
	in   length.Length // how far the line is pulled in; negative where it is pushed out
	feet [2]int
}

// inside returns how far, in mm, a point in plan lies inside the line.
func (s side) inside(x, y float64) float64 {
	return (s.at[0]-x)*s.out[0] + (s.at[1]-y)*s.out[1] - s.in.MM()
}

// towards says in words to which side the piece would go over.
func (s side) towards() string {
	switch {
	case math.Abs(s.out[0]) <= math.Abs(s.out[1]):
		if s.out[1] < 0 {
			return "to the front"
		}
		return "to the back"
	case s.out[0] < 0:
		return "to the left"
	}
	return "to the right"
}

// base returns the sides of the smallest convex outline round the given feet, in order round them; none
// when they stand in one line or there are fewer than three.
func (p *Piece) base(feet []int) []side {
	hull := p.outline(feet)
	if len(hull) < 3 {
		return nil
	}
	sides := make([]side, len(hull))
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		from, to := p.Feet[a], p.Feet[b]
		dx, dy := (to.At.X - from.At.X).MM(), (to.At.Y - from.At.Y).MM()
		l := math.Hypot(dx, dy)
		sides[i] = side{
			at:   [2]float64{from.At.X.MM(), from.At.Y.MM()},
			out:  [2]float64{dy / l, -dx / l}, // the outline runs counter-clockwise, x right and y back
			in:   max(p.pulledIn(from), p.pulledIn(to)),
			feet: [2]int{a, b},
		}
	}
	return sides
}

// pulledIn returns how far the floor is touched inside a foot's axis in the worst case: the swivel offset of
// a caster; of a flange its radius outside, as it goes over on its rim.
func (p *Piece) pulledIn(f piece.Foot) length.Length {
	if f.Spec.Kind == piece.FlangeFoot && f.Node >= 0 {
		return -p.Nodes[f.Node].Fitting.Plate.Half()
	}
	return f.Spec.Offset
}

// outline returns those of the feet that are corners of their convex hull, counter-clockwise (Andrew's
// monotone chain, Information Processing Letters 9 (1979) 216–219).
func (p *Piece) outline(feet []int) []int {
	order := slices.Clone(feet)
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(p.Feet[a].At.X, p.Feet[b].At.X), cmp.Compare(p.Feet[a].At.Y, p.Feet[b].At.Y), a-b)
	})
	lower := p.halfOutline(order)
	slices.Reverse(order)
	upper := p.halfOutline(order)
	if len(lower) < 2 || len(upper) < 2 {
		return lower
	}
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

func (p *Piece) halfOutline(order []int) (half []int) {
	for _, i := range order {
		for len(half) > 1 && turn(p.Feet[half[len(half)-2]].At, p.Feet[half[len(half)-1]].At, p.Feet[i].At) <= flatTurn {
			half = half[:len(half)-1]
		}
		half = append(half, i)
	}
	return half
}

// flatTurn is the turn, in mm², up to which three feet count as standing in one line: 1 µm off a line of
// 1 m. Below it a float64 may not tell.
const flatTurn = 1e-3

// turn is positive when a, b, c turn left seen from above with y to the back: twice the area between them,
// in mm².
func turn(a, b, c piece.Vec) float64 {
	return (b.X-a.X).MM()*(c.Y-a.Y).MM() - (b.Y-a.Y).MM()*(c.X-a.X).MM()
}
