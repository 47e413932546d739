package beam

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/trade/within"
)

var eulerFormula = figure.Formula{
	Text: "P = π²EI/(K·L)²", Source: "L. Euler, 1744; any mechanics text",
	Range: "a straight elastic leg loaded along its axis; K = 1 ends that turn and stay in line, 2 a leg that is held at one end alone, 0.5 ends that can't turn; stocky legs yield first",
}

// BucklingLoad returns the load in newtons along a leg at which it bends out by itself:
//
//	P = π² E I ÷ (K·L)²
//
// K is the effective length over the length: 1 where both ends turn and stay in line, 2 for a leg held at one end and free
// at the other, which is the least that holds up a piece that sways, 0.5 where neither end turns. The span of the beam is
// the leg's length. A stocky leg yields before, at its area times the yield stress: the least of both counts.
func BucklingLoad(b Beam, k float64) (figure.Figure, error) {
	if err := cmp.Or(b.check(), within.Between("effective length over length", k, 0.5, 10, figure.Ratio)); err != nil {
		return figure.Figure{}, err
	}
	l := k * b.Span.MM()
	return finite(figure.Of("load at which it buckles", math.Pi*math.Pi*b.Modulus*b.Section.Inertia/(l*l), figure.N, &eulerFormula,
		figure.In("E", b.Modulus, figure.MPa), figure.In("I", b.Section.Inertia, figure.MM4), figure.In("K", k, figure.Ratio), figure.InLength("L", b.Span)))
}
