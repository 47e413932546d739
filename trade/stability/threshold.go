package stability

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	stepFormula = figure.Formula{
		Text: "F/W = √(2Rs − s²) ÷ (R − s)", Source: statics,
		Range: "level push at the axle of a wheel that stands against the step, s < R",
	}
	overFormula = figure.Formula{
		Text: "v = √(2g(√(h² + d²) − h))", Source: "energy of a rigid body that turns about the wheels that stop, any mechanics text",
		Range: "wheels stopped dead; the piece's own turning inertia left out, which is on the safe side",
	}
	smallStepFormula = figure.Formula{
		Text: "s = 5 % of the wheel's diameter", Source: "caster makers' safety factors by use, floor obstacles",
		Range: "pushed by hand indoors",
	}
)

// StepPush returns the push that a wheel needs to climb a step, as a share of the load on it:
//
//	F/W = √(2Rs − s²) ÷ (R − s)
//
// with R half the wheel's diameter. A step of half the wheel or more can't be climbed: that is an error.
func StepPush(wheel, step length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("wheel diameter", wheel), within.Room("step", step)); err != nil {
		return figure.Figure{}, err
	}
	r, s := wheel.MM()/2, step.MM()
	if s >= r {
		return figure.Figure{}, &within.Error{
			Name: "step", Got: figure.Digits(s, 4) + " mm",
			Want: "below half the wheel, " + figure.Digits(r, 4) + " mm; a higher one can't be climbed at any push",
		}
	}
	return figure.Of("push over the step", math.Sqrt(s*(2*r-s))/(r-s), figure.Ratio, &stepFormula,
		figure.In("R", r, figure.MM), figure.InLength("s", step)), nil
}

// SmallStep returns, in mm, the greatest step that a wheel of the given diameter takes without trouble.
func SmallStep(wheel length.Length) (figure.Figure, error) {
	if err := within.Length("wheel diameter", wheel); err != nil {
		return figure.Figure{}, err
	}
	return figure.OfLength("step taken without trouble", wheel.Scale(5, 100), &smallStepFormula, figure.InLength("wheel", wheel)), nil
}

// GoOver returns the speed in m/s above which a piece goes over when its leading wheels stop dead:
//
//	v = √(2g(√(h² + d²) − h))
//
// with d the distance of the centre of gravity behind the wheels that stop and h its height. The speed
// lies on the safe side. It is zero when the centre is not behind the wheels.
func GoOver(height, behind length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("height of the centre", height), within.Room("distance behind the wheels", behind.Abs())); err != nil {
		return figure.Figure{}, err
	}
	h, d := height.MM()/1000, max(0, behind.MM())/1000
	// √(h²+d²) − h loses its digits for a low d; d²/(√(h²+d²)+h) is the same and does not.
	rise := d * d / (math.Hypot(h, d) + h)
	return figure.Of("speed at which it goes over", math.Sqrt(2*Gravity*rise), figure.MPerS, &overFormula,
		figure.InLength("h", height), figure.InLength("d", behind), figure.InText("g", "9.80665 m/s²")), nil
}
