package stability

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/trade/within"
)

// RubberOnFloor is the friction taken between a locked wheel and a floor when none is given. From memory,
// on the low side for rubber on wood or concrete; hard plastic on a dusty floor has less.
const RubberOnFloor = 0.5

var (
	rollFormula = figure.Formula{Text: "F = W · sin α", Source: statics, Range: "free wheels, rolling resistance left out"}
	holdFormula = figure.Formula{
		Text: "α = atan(µ · share of the load on locked wheels)", Source: statics,
		Range: "the lock holds the wheel; shares as they are on the slope",
	}
)

// RollAway returns the force in newtons along a slope, in degrees, that the brakes of a piece of the given
// mass in kilograms must hold:
//
//	F = W · sin α
func RollAway(kg, slope float64) (figure.Figure, error) {
	if err := cmp.Or(within.Positive("mass", kg, figure.Kg), within.Between("slope", slope, 0, 45, figure.Deg)); err != nil {
		return figure.Figure{}, err
	}
	w := Weight(kg)
	return figure.Of("force down the slope", w*math.Sin(slope*math.Pi/180), figure.N, &rollFormula,
		figure.In("W", w, figure.N), figure.In("α", slope, figure.Deg)), nil
}

// HoldingSlope returns the slope in degrees up to which locked wheels hold a piece, from the share of the
// load that stands on them, 0 to 1, and the friction between wheel and floor. A friction of zero takes
// [RubberOnFloor] and says so.
//
//	α = atan(µ · share)
func HoldingSlope(share, friction float64) (figure.Figure, error) {
	if err := cmp.Or(within.Between("share on locked wheels", share, 0, 1, figure.Ratio), within.Between("friction", friction, 0, 2, figure.Ratio)); err != nil {
		return figure.Figure{}, err
	}
	var assumed []string
	if friction == 0 {
		friction = RubberOnFloor
		assumed = []string{"friction 0.5 between a locked wheel and the floor, from memory"}
	}
	return figure.Of("slope held by the locks", math.Atan(friction*share)*180/math.Pi, figure.Deg, &holdFormula,
		figure.In("µ", friction, figure.Ratio), figure.In("share", share, figure.Ratio)).Assuming(assumed...), nil
}
