package caster

import (
	"cmp"
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	shareFormula = figure.Formula{
		Text: "each = total ÷ 3", Source: "caster makers' advice: three of four carry, floors are uneven",
		Range: "three or four casters, the piece's own mass counted",
	}
	thirdMoreFormula = figure.Formula{
		Text: "each = 1.33 · total ÷ 4", Source: "caster makers' advice: a third more, divided by four",
		Range: "four casters, the piece's own mass counted",
	}
	rigidFormula = figure.Formula{
		Text: "each = W·(½ + min(|ex|, |ey|))", Source: "statics of a rigid body on three of four supports, any mechanics text",
		Range: "four casters at the corners of a rectangle, centre of gravity ex, ey of the wheelbase off its middle, inside it",
	}
)

// Share returns the mass in kilograms that each of three or four casters must be rated for:
//
//	total ÷ 3
//
// because three points carry on an uneven floor. Fewer do not stand; more need the statics of the piece.
func Share(totalKg float64, count int) (figure.Figure, error) {
	if err := within.Positive("total", totalKg, figure.Kg); err != nil {
		return figure.Figure{}, err
	}
	if count != 3 && count != 4 {
		return figure.Figure{}, &within.Error{
			Name: "count of casters", Got: fmt.Sprint(count),
			Want: "3 or 4; with more it depends on how stiff the piece is between them",
		}
	}
	return figure.Of("load on each caster", totalKg/3, figure.Kg, &shareFormula, figure.In("total", totalKg, figure.Kg)), nil
}

// ThirdMore returns the other advice for four casters, in kilograms: a third more, divided by four. It comes
// to the same.
func ThirdMore(totalKg float64) (figure.Figure, error) {
	if err := within.Positive("total", totalKg, figure.Kg); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("load on each caster", 1.33*totalKg/4, figure.Kg, &thirdMoreFormula, figure.In("total", totalKg, figure.Kg)), nil
}

// Rigid returns the mass in kilograms on the worst caster of a piece that does not give, rocking on one of
// its diagonals:
//
//	W·(½ + min(|ex|, |ey|))
//
// ex and ey are how far the centre of gravity lies off the middle of the casters, as shares of the distances
// between them, -½ to ½. It holds for any three of the four on which the piece can stand.
func Rigid(totalKg, ex, ey float64) (figure.Figure, error) {
	err := cmp.Or(within.Positive("total", totalKg, figure.Kg),
		within.Between("share off the middle along", ex, -0.5, 0.5, figure.Ratio),
		within.Between("share off the middle across", ey, -0.5, 0.5, figure.Ratio))
	if err != nil {
		return figure.Figure{}, err
	}
	w := totalKg * (0.5 + min(math.Abs(ex), math.Abs(ey)))
	return figure.Of("load on the worst caster", w, figure.Kg, &rigidFormula,
		figure.In("W", totalKg, figure.Kg), figure.In("ex", ex, figure.Ratio), figure.In("ey", ey, figure.Ratio)).
		Assuming("the piece does not give: it rocks on a diagonal"), nil
}

var plateFormula = figure.Formula{
	Text: "M = load · offset", Source: "statics, any mechanics text", Range: "wheel swung to one side, level floor",
}

// PlateMoment returns the moment in N·mm with which a swivelled wheel under a load in newtons pries at its
// plate's screws or its stem.
func PlateMoment(load float64, offset length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.NotNegative("load", load, figure.N), within.Room("swivel offset", offset)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("moment on the plate", load*offset.MM(), figure.NMM, &plateFormula,
		figure.In("load", load, figure.N), figure.InLength("offset", offset)), nil
}
