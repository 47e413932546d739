package stability_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/stability"
)

// Worked by hand from the energy of a turning body (any mechanics text): centre 25.60 in up and 4.625 in
// behind the wheels that stop: 0.454 m/s.
func TestTheStandGoesOverWhenItsWheelsStopDeadAtAWalk(t *testing.T) {
	f := must(t)(stability.GoOver(stand(t, false).Z, length.FromInches(4.625)))
	near(t, "speed", f.Value, 0.454, 0.005*0.454)
}

func TestACentreOverTheWheelsGoesOverAtOnce(t *testing.T) {
	for _, behind := range []length.Length{0, -in} {
		near(t, "speed", must(t)(stability.GoOver(20*in, behind)).Value, 0, 0)
	}
}

// Statics, worked by hand: a 4 in wheel at a 1/2 in step: √(2·2·½ − ¼) ÷ (2 − ½) = √1.75 ÷ 1.5 = 0.8819.
func TestPushOfAFourInchWheelOverAHalfInchStep(t *testing.T) {
	near(t, "F/W", must(t)(stability.StepPush(4*in, in/2)).Value, 0.8819, 0.0001)
	near(t, "no step", must(t)(stability.StepPush(4*in, 0)).Value, 0, 0)
}

// Caster makers' advice on safety factors: obstacles below 5 % of the wheel's diameter.
func TestASmallStepIsATwentiethOfTheWheel(t *testing.T) {
	near(t, "step", must(t)(stability.SmallStep(100*length.Millimetre)).Value, 5, 0)
	if _, err := stability.SmallStep(0); err == nil {
		t.Error("no wheel, no step")
	}
}

func TestAStepOfHalfTheWheelCantBeClimbed(t *testing.T) {
	for _, step := range []length.Length{2 * in, 3 * in, -in} {
		if f, err := stability.StepPush(4*in, step); err == nil {
			t.Errorf("step %v: got %v, want an error", step, f.Value)
		}
	}
	if _, err := stability.GoOver(0, in); err == nil {
		t.Error("no height, no speed")
	}
}

func TestAHigherStepNeedsMorePushAndABiggerWheelLess(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		wheel := length.Length(rapid.Int64Range(int64(2*in), int64(8*in)).Draw(r, "wheel"))
		step := length.Length(rapid.Int64Range(1000, int64(in/2)).Draw(r, "step"))
		base, err1 := stability.StepPush(wheel, step)
		higher, err2 := stability.StepPush(wheel, step+in/8)
		bigger, err3 := stability.StepPush(wheel+in, step)
		if err1 != nil || err2 != nil || err3 != nil {
			r.Fatal(err1, err2, err3)
		}
		if higher.Value <= base.Value || bigger.Value >= base.Value {
			r.Fatalf("base %v, higher step %v, bigger wheel %v", base.Value, higher.Value, bigger.Value)
		}
	})
}

func TestTheSpeedLiftsTheCentreJustOverTheWheels(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		h := length.Length(rapid.Int64Range(int64(10*length.Centimetre), int64(2*length.Metre)).Draw(r, "height"))
		d := length.Length(rapid.Int64Range(int64(length.Millimetre), int64(length.Metre)).Draw(r, "behind"))
		f, err := stability.GoOver(h, d)
		if err != nil {
			r.Fatal(err)
		}
		rise := f.Value * f.Value / (2 * stability.Gravity) * 1000
		if top := math.Hypot(h.MM(), d.MM()); math.Abs(h.MM()+rise-top) > 1e-6*top {
			r.Fatalf("rises %.6f mm from %.6f, needs to reach %.6f", rise, h.MM(), top)
		}
	})
}
