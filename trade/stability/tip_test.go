package stability_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/stability"
)

const (
	pound = 0.45359237      // kg, exact (international pound, 1959)
	lbf   = pound * 9.80665 // N, exact
	in    = length.Inch     // exact
)

func must(t *testing.T) func(figure.Figure, error) figure.Figure {
	return func(f figure.Figure, err error) figure.Figure {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

// stand is a stepped stand with trays on its high board and soil on its low one, worked by hand: masses in
// pounds, heights of their centres in inches above the floor, all on the middle line.
func stand(t *testing.T, soil bool) stability.Mass {
	t.Helper()
	bodies := []stability.Mass{
		{Kg: 99.2 * pound, Z: 22 * in},
		{Kg: 36 * pound, Z: length.FromInches(35.525)},
	}
	if soil {
		bodies = append(bodies, stability.Mass{Kg: 80 * pound, Z: length.FromInches(9.375)})
	}
	c, err := stability.Centre(bodies...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The expected angles were worked by hand from statics (any mechanics text): centre 19.57 in up with soil,
// 25.60 in without; pivots 12 in apart, swivel offset 1 3/8 in.
func TestAStandOnCastersTipsSoonerWithoutTheSoilBelow(t *testing.T) {
	d := stability.Pivot(12*in, length.FromInches(1.375))
	if want := length.FromInches(4.625); d != want {
		t.Fatalf("pivot %v, want %v", d, want)
	}
	for _, c := range []struct {
		soil bool
		want float64
	}{{true, 13.297}, {false, 10.240}} {
		f := must(t)(stability.Angle(d, stand(t, c.soil).Z))
		near(t, "angle", f.Value, c.want, 0.01)
	}
}

// Worked by hand from statics: 135.2 lb, 4.625 in inside the pivot, pushed at 52 in: 53.490 N.
func TestThePushThatTipsTheStandAtTheHeightOfAnElbow(t *testing.T) {
	c := stand(t, false)
	f := must(t)(stability.Push(c.Kg, length.FromInches(4.625), 52*in))
	near(t, "push", f.Value, 53.490, 0.005*53.490)
}

// Mechanics, any text, worked with a calculator: atan(8/30) = 14.93°; 30 in · tan 10° = 5.29 in.
func TestTippingAngleOfAThirtyInchCentre(t *testing.T) {
	near(t, "angle", must(t)(stability.Angle(8*in, 30*in)).Value, 14.93, 0.02)
	near(t, "half base", must(t)(stability.LeastDistance(10, 30*in)).Value/25.4, 5.29, 0.01)
}

// Public question and answer on a heavy table, recomputed: 500 lb, centre of mass 19 in inside the near
// foot, load 19 in outside it: 500 lb.
func TestAHeavyTableGoesOverUnderItsOwnWeightOnAnEdgeAsFarOut(t *testing.T) {
	f := must(t)(stability.EdgeLoad(500*pound, 19*in, 19*in))
	near(t, "edge load in lbf", f.Value/lbf, 500, 15)
}

// Public answer, paraphrased: 3 in wheels need more swing room behind a skirt than 2 in ones, stand further
// in and make the piece less steady. Offsets and wheels as in the trade's generic classes, from memory.
func TestSmallerWheelsNearerTheCornersStandBroader(t *testing.T) {
	distance := func(wheel, offset float64) length.Length {
		swing := offset + wheel/2 // the wheel's far side, from the swivel axis
		axes := 24*in - 2*length.FromInches(swing)
		return stability.Pivot(axes, length.FromInches(offset))
	}
	small, big := distance(2, 0.9), distance(3, 1.25)
	a, b := must(t)(stability.Angle(small, 30*in)), must(t)(stability.Angle(big, 30*in))
	if a.Value <= b.Value {
		t.Errorf("2 in wheels tip at %.2f°, 3 in wheels at %.2f°: the small ones should be steadier", a.Value, b.Value)
	}
}

func TestACentreOutsideTheBaseFallsByItself(t *testing.T) {
	near(t, "angle", must(t)(stability.Angle(-1*in, 10*in)).Value, -5.7106, 0.001)
	near(t, "push", must(t)(stability.Push(10, -1*in, 10*in)).Value, -9.80665, 1e-9)
}

func TestTippingRefusesWhatHasNoMeaning(t *testing.T) {
	cases := map[string]func() (figure.Figure, error){
		"no height":         func() (figure.Figure, error) { return stability.Angle(in, 0) },
		"distance past 1km": func() (figure.Figure, error) { return stability.Angle(2*length.Max, in) },
		"no mass":           func() (figure.Figure, error) { return stability.Push(0, in, in) },
		"mass not a number": func() (figure.Figure, error) { return stability.Push(math.NaN(), in, in) },
		"push at the floor": func() (figure.Figure, error) { return stability.Push(1, in, 0) },
		"edge on the pivot": func() (figure.Figure, error) { return stability.EdgeLoad(1, in, 0) },
		"right angle":       func() (figure.Figure, error) { return stability.LeastDistance(90, in) },
	}
	for name, ask := range cases {
		if f, err := ask(); err == nil {
			t.Errorf("%s: got %v, want an error", name, f.Value)
		}
	}
	if _, err := stability.Centre(stability.Mass{Kg: -1}); err == nil {
		t.Error("a negative mass has no centre")
	}
	if _, err := stability.Centre(); err == nil {
		t.Error("nothing has no centre")
	}
}

func TestAngleAndLeastDistanceUndoEachOther(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d := length.Length(rapid.Int64Range(int64(length.Millimetre), int64(length.Metre)).Draw(r, "distance"))
		h := length.Length(rapid.Int64Range(int64(length.Centimetre), int64(3*length.Metre)).Draw(r, "height"))
		a, err := stability.Angle(d, h)
		if err != nil {
			r.Fatal(err)
		}
		if a.Value < 0.01 || a.Value > 89 {
			return
		}
		back, err := stability.LeastDistance(a.Value, h)
		if err != nil {
			r.Fatal(err)
		}
		if math.Abs(back.Value-d.MM()) > 1e-6*d.MM() {
			r.Fatalf("%.4f mm came back as %.4f mm", d.MM(), back.Value)
		}
	})
}

func TestAPushAtTheCentresHeightIsTheSlopeOfTheAngle(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d := length.Length(rapid.Int64Range(int64(length.Millimetre), int64(length.Metre)).Draw(r, "distance"))
		h := length.Length(rapid.Int64Range(int64(length.Centimetre), int64(3*length.Metre)).Draw(r, "height"))
		a, err1 := stability.Angle(d, h)
		p, err2 := stability.Push(1, d, h)
		if err1 != nil || err2 != nil {
			r.Fatal(err1, err2)
		}
		if got, want := p.Value/stability.Gravity, math.Tan(a.Value*math.Pi/180); math.Abs(got-want) > 1e-9*want {
			r.Fatalf("F/W %.9f, tan α %.9f", got, want)
		}
	})
}

func TestTheCommonCentreLiesBetweenTheBodies(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var bodies []stability.Mass
		low, high := length.Max, -length.Max
		for range rapid.IntRange(1, 6).Draw(r, "bodies") {
			z := length.Length(rapid.Int64Range(0, int64(2*length.Metre)).Draw(r, "z"))
			bodies = append(bodies, stability.Mass{Kg: rapid.Float64Range(0.01, 200).Draw(r, "kg"), Z: z})
			low, high = min(low, z), max(high, z)
		}
		c, err := stability.Centre(bodies...)
		if err != nil {
			r.Fatal(err)
		}
		if c.Z < low-1 || c.Z > high+1 {
			r.Fatalf("centre %v outside %v to %v", c.Z, low, high)
		}
	})
}

func ExampleAngle() {
	distance := stability.Pivot(12*length.Inch, 1375*length.Inch/1000)
	f, err := stability.Angle(distance, 22*length.Inch)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Show(length.Sixteenth), "by", f.Formula.Text)
	// Output: 11.9° by α = atan(d ÷ h)
}
