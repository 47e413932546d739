package tongue

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	netFormula = figure.Formula{
		Text: "A = w·d + Σ w_p·d_n·(d_n/d)²", Source: "NDS 2018 3.4.3.2, notched bending members, (d_n/d)² of the section that is left, from memory",
		Range: "w the width without openings and pockets, w_p that of the pockets in the underside, d_n the wood left over them",
	}
	netShear = figure.Formula{
		Text: "τ = 1.5·V ÷ A", Source: "rectangular section, any mechanics text", Range: "at a support, across the panel's whole width that is left",
	}
)

// Pocket is a pocket in the tension side of a section.
type Pocket struct{ Wide, Deep length.Length }

// NetArea returns, in mm², what bears shear of a section of the given whole width and depth with pockets in its
// tension side. A pocket as deep as the section bears nothing.
func NetArea(whole, depth length.Length, pockets ...Pocket) (figure.Figure, error) {
	if err := cmp.Or(within.Room("width", whole), within.Length("depth", depth)); err != nil {
		return figure.Figure{}, err
	}
	area := whole.MM() * depth.MM()
	for _, q := range pockets {
		left := max(depth-q.Deep, 0).MM()
		area += q.Wide.MM() * left * (left / depth.MM()) * (left / depth.MM())
	}
	return figure.Of("net section", area, figure.SquareMM, &netFormula, figure.InLength("w", whole), figure.InLength("d", depth)), nil
}

// NetShear returns the shear stress in MPa of a net section in mm² under a shear force. No section is an error.
func NetShear(forceN, area float64) (figure.Figure, error) {
	if err := cmp.Or(within.NotNegative("force", forceN, figure.N), within.Positive("net section", area, figure.SquareMM)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("shear at the support", 1.5*forceN/area, figure.MPa, &netShear, figure.In("V", forceN, figure.N), figure.In("A", area, figure.SquareMM)), nil
}
