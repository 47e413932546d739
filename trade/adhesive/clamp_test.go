package adhesive_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/adhesive"
)

// Public answer, recomputed: a joint 3/4 × 36 in at 450 psi: 12 150 lb: 9 clamps of 1350 lb, 12 of 1050, 33
// of 370; at 250 psi 7 pipe clamps of 1050.
func TestClampsForAHardJoint(t *testing.T) {
	for _, c := range []struct{ psi, force, want float64 }{{450, 1350, 9}, {450, 1050, 12}, {450, 370, 33}, {250, 1050, 7}} {
		got, err := adhesive.Clamp(adhesive.Joint{Length: 36 * in, Thickness: 3 * in / 4, Pressure: c.psi * psi, ClampForce: c.force * lbf})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "clamps", got.Count.Value, c.want, 0)
		near(t, "force in lb", got.Force.Value/lbf, 27*c.psi, 1e-6)
	}
}

// Worked by hand: 42 × 1-3/8 in at 200 psi: 11 550 lb, 11 clamps of 1050 lb.
func TestElevenClampsExactlyAreNotTwelve(t *testing.T) {
	got, err := adhesive.Clamp(adhesive.Joint{Length: 42 * in, Thickness: 11 * in / 8, Pressure: 200 * psi, ClampForce: 1050 * lbf})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "force in lb", got.Force.Value/lbf, 11550, 1e-6)
	near(t, "clamps", got.Count.Value, 11, 0)
}

// Common practice: pressure spreads at 45° through the edge strip. A glue maker's guide: 8 to 12 in apart
// where nothing is known, the first 1-1/2 to 2 in from the end.
func TestClampsStandAsFarApartAsTheStripSpreads(t *testing.T) {
	j := adhesive.Joint{Length: 42 * in, Thickness: in, Pressure: psi, ClampForce: 1000 * lbf, Pad: in, Strip: 2 * in}
	got, err := adhesive.Clamp(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "spacing in inches", got.Spacing.Value/25.4, 5, 1e-9)
	near(t, "clamps", got.BySpacing.Value, 9, 0) // 38 in between the outer two: 8 gaps of 4-3/4
	j.Pad, j.Length = 3*in, 25*in
	if got, err = adhesive.Clamp(j); err != nil {
		t.Fatal(err)
	}
	near(t, "clamps 7 in apart", got.BySpacing.Value, 4, 0) // 21 in between the outer two
	j.Pad = 0
	if got, err = adhesive.Clamp(j); err != nil {
		t.Fatal(err)
	}
	near(t, "spacing in inches", got.Spacing.Value/25.4, 10, 1e-9)
	if len(got.Spacing.Assumed) != 1 {
		t.Errorf("a spacing nobody measured is assumed: %q", got.Spacing.Assumed)
	}
	j.Length = 3 * in
	if got, err = adhesive.Clamp(j); err != nil {
		t.Fatal(err)
	}
	near(t, "a short joint", got.BySpacing.Value, 2, 0)
}

func TestClampsRefuseWhatHasNoMeaning(t *testing.T) {
	good := adhesive.Joint{Length: in, Thickness: in, Pressure: psi, ClampForce: lbf}
	for name, change := range map[string]func(*adhesive.Joint){
		"length":         func(j *adhesive.Joint) { j.Length = 0 },
		"thickness":      func(j *adhesive.Joint) { j.Thickness = -1 },
		"pressure":       func(j *adhesive.Joint) { j.Pressure = math.NaN() },
		"clamp force":    func(j *adhesive.Joint) { j.ClampForce = 0 },
		"feeble clamp":   func(j *adhesive.Joint) { j.ClampForce = 1e-300 },
		"pad":            func(j *adhesive.Joint) { j.Pad = -1 },
		"endless strip":  func(j *adhesive.Joint) { j.Strip = length.Max + 1 },
		"endless clamps": func(j *adhesive.Joint) { j.ClampForce = math.Inf(1) },
	} {
		j := good
		change(&j)
		if got, err := adhesive.Clamp(j); err == nil {
			t.Errorf("%s: %v clamps", name, got.Count.Value)
		}
	}
}

func TestTheClampsReachThePressureAndOneLessDoesNot(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		j := adhesive.Joint{
			Length:    length.Length(rapid.Int64Range(int64(6*in), int64(96*in)).Draw(r, "length")),
			Thickness: length.Length(rapid.Int64Range(int64(in/2), int64(3*in)).Draw(r, "thickness")),
			Pressure:  rapid.Float64Range(0.5, 3).Draw(r, "pressure"), ClampForce: rapid.Float64Range(500, 10_000).Draw(r, "force"),
		}
		got, err := adhesive.Clamp(j)
		if err != nil {
			r.Fatal(err)
		}
		n, force := got.Count.Value, got.Force.Value
		if n*j.ClampForce < force*(1-1e-8) || (n-1)*j.ClampForce >= force {
			r.Fatalf("%v clamps of %v for %v", n, j.ClampForce, force)
		}
		if gaps := got.BySpacing.Value - 1; gaps*got.Spacing.Value < (j.Length-4*in).MM()*(1-1e-8) {
			r.Fatalf("%v gaps of %v for %v", gaps, got.Spacing.Value, j.Length)
		}
	})
}
