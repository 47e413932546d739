// Package stability holds the closed forms that say when a piece goes over, rolls away, rocks or is too
// heavy to lift.
//
// The words: the pivot is the line through two contact points about which a piece would tip; distance is
// how far the centre of gravity lies inside that line, in plan; height is that of the centre of gravity
// above the floor. A swivel caster touches the floor its offset away from the axis, on the worst side:
// see [Pivot]. Start with [Angle] and [Push].
//
// The package knows one rigid body on a hard floor. Which contact points a piece has, and which
// combination of the things it holds is the worst, is for the check of the whole piece to find.
package stability

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Gravity is the standard acceleration of free fall, 9.80665 m/s² (3rd General Conference on Weights and
// Measures, 1901, exact by definition).
const Gravity = 9.80665

// Weight returns the weight in newtons of a mass in kilograms.
func Weight(kg float64) float64 { return kg * Gravity }

const statics = "statics of a rigid body, any mechanics text"

var (
	angleFormula = figure.Formula{Text: "α = atan(d ÷ h)", Source: statics, Range: "rigid piece that tips before it slides"}
	leastFormula = figure.Formula{Text: "d = h · tan α", Source: statics, Range: "0° < α < 90°"}
	pushFormula  = figure.Formula{Text: "F = W · d ÷ z", Source: statics, Range: "level push at height z, the piece tips before it slides"}
	edgeFormula  = figure.Formula{Text: "F = W · d ÷ a", Source: statics, Range: "load straight down at a outside the pivot"}
)

// Pivot returns the distance from the middle of the base to the pivot: half the base, measured between
// swivel axes or feet, less the swivel offset. Where two casters share an edge both can swing inward.
func Pivot(base, offset length.Length) length.Length { return base.Half() - offset }

// Angle returns the tilt, in degrees, at which a piece goes over:
//
//	α = atan(d ÷ h)
//
// A negative distance means that the centre lies outside the base; the angle is then negative too and
// the piece falls by itself.
func Angle(distance, height length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("height of the centre", height), within.Room("distance to the pivot", distance.Abs())); err != nil {
		return figure.Figure{}, err
	}
	a := math.Atan2(distance.MM(), height.MM()) * 180 / math.Pi
	return figure.Of("tipping angle", a, figure.Deg, &angleFormula,
		figure.InLength("d", distance), figure.InLength("h", height)), nil
}

// LeastDistance returns how far, in mm, the centre of gravity must lie inside the pivot for a piece to
// stand on a tilt of the given angle in degrees, 0 < angle < 90:
//
//	d = h · tan α
func LeastDistance(angle float64, height length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("height of the centre", height), within.Between("angle", angle, 0.01, 89, figure.Deg)); err != nil {
		return figure.Figure{}, err
	}
	d := height.MM() * math.Tan(angle*math.Pi/180)
	return figure.Of("least distance to the pivot", d, figure.MM, &leastFormula,
		figure.InLength("h", height), figure.In("α", angle, figure.Deg)), nil
}

// Push returns the level push in newtons, at a height above the floor, that tips a piece of the given
// mass in kilograms:
//
//	F = W · d ÷ z
func Push(kg float64, distance, at length.Length) (figure.Figure, error) {
	return lever("tipping push", &pushFormula, kg, distance, at, "z", "height of the push")
}

// EdgeLoad returns the load in newtons, straight down and the given distance outside the pivot, that
// tips a piece of the given mass in kilograms:
//
//	F = W · d ÷ a
func EdgeLoad(kg float64, distance, outside length.Length) (figure.Figure, error) {
	return lever("tipping edge load", &edgeFormula, kg, distance, outside, "a", "distance of the edge outside the base")
}

func lever(name string, f *figure.Formula, kg float64, distance, arm length.Length, letter, words string) (figure.Figure, error) {
	err := cmp.Or(within.Positive("mass", kg, figure.Kg), within.Length(words, arm), within.Room("distance to the pivot", distance.Abs()))
	if err != nil {
		return figure.Figure{}, err
	}
	w := Weight(kg)
	return figure.Of(name, w*distance.MM()/arm.MM(), figure.N, f,
		figure.In("W", w, figure.N), figure.InLength("d", distance), figure.InLength(letter, arm)), nil
}
