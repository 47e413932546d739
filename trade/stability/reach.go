package stability

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var reachFormula = figure.Formula{
	Text: "reach = 20 cm + depth ÷ 2, 25 cm at least", Source: "NIOSH Applications Manual for the Revised Lifting Equation, Publication 94-110, horizontal location, from memory",
	Range: "held flat before the body, hands at or above knuckle height",
}

// Reach returns, in mm, how far in front of the ankles the middle of a thing lies that is held flat before the body and
// reaches so deep away from it.
func Reach(depth length.Length) (figure.Figure, error) {
	if err := within.Length("depth", depth); err != nil {
		return figure.Figure{}, err
	}
	return figure.OfLength("reach", max(closeReach, 200*length.Millimetre+depth.Half()), &reachFormula, figure.InLength("depth", depth)), nil
}
