package check

import (
	"math"
	"slices"

	"rodwright/length"
	bend "rodwright/mechanics/plate"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// rail puts a rail under a panel, as far as it lies over it, once for each run of pipe; an arm, which is carried at the wall
// alone, counts as stiff.
func (p *Piece) rail(model *bend.Plate, flat *piece.FlatPanel, s piece.PanelSeat) {
	if s.Stick < 0 {
		return
	}
	st := p.Sticks[s.Stick]
	a, b := p.Nodes[st.A].At, p.Nodes[st.B].At
	clampTo := func(v, lo, hi length.Length) float64 { return (min(max(v, lo), hi) - lo).MM() }
	r := bend.Rail{
		FromX: clampTo(a.X, flat.Min.X, flat.Max.X), FromY: clampTo(a.Y, flat.Min.Y, flat.Max.Y),
		ToX: clampTo(b.X, flat.Min.X, flat.Max.X), ToY: clampTo(b.Y, flat.Min.Y, flat.Max.Y), TwoSided: s.Strap,
	}
	if math.Abs(r.FromX-r.ToX) < 1 && math.Abs(r.FromY-r.ToY) < 1 || slices.Contains(model.Rails, r) {
		return
	}
	if !onWood(model, r) {
		return
	}
	if st.Role != piece.ArmRole && st.Section.Pipe != nil {
		r.EI = pipe.SteelModulus * st.Section.Pipe.SecondMoment()
	}
	model.Rails = append(model.Rails, r)
}

// onWood reports whether some of a rail lies under wood, 1/20 of it at least.
func onWood(model *bend.Plate, r bend.Rail) bool {
	const parts = 20
	for k := range parts {
		t := (float64(k) + 0.5) / parts
		x, y := r.FromX+t*(r.ToX-r.FromX), r.FromY+t*(r.ToY-r.FromY)
		if !slices.ContainsFunc(model.Openings, func(o bend.Rect) bool { return x > o.X && x < o.X+o.W && y > o.Y && y < o.Y+o.H }) &&
			!slices.ContainsFunc(model.Holes, func(c bend.Circle) bool { return math.Hypot(x-c.X, y-c.Y) < c.R }) {
			return true
		}
	}
	return false
}
