package tongue

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/wood"
)

const mm = length.Millimetre

func close(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, want) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// By hand, M ÷ W: 250 N × 50 mm ÷ (60 × 25² ÷ 6) = 2 MPa; sideways 250 × 50 ÷ (20² × 25 ÷ 6) = 7.5 MPa is worse than
// down, 250 × 50 ÷ (20 × 25² ÷ 6) = 6 MPa. A bridge resting at both ends: P·L/4.
func TestATongueIsAShortCantilever(t *testing.T) {
	for _, c := range []struct {
		name  string
		of    Tongue
		want  float64
		shear float64
	}{
		{"broad", Tongue{Out: 50 * mm, Broad: 60 * mm, Thick: 25 * mm}, 2, 0.25},
		{"slim", Tongue{Out: 50 * mm, Broad: 20 * mm, Thick: 25 * mm}, 7.5, 0.75},
		{"very broad: 2 L bears", Tongue{Out: 50 * mm, Broad: 500 * mm, Thick: 25 * mm}, 1.2, 0.15},
		{"bridge: 250·100/4 over 40·25²/6", Tongue{Out: 100 * mm, Broad: 40 * mm, Thick: 25 * mm, AtBoth: true}, 1.5, 0.1875},
	} {
		s, err := Stress(c.of, 250)
		tau, err2 := Shear(c.of, 250)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		close(t, c.name, s.Value, c.want)
		close(t, c.name+", shear", tau.Value, c.shear)
	}
}

// Wood Handbook Table 5-3 (white oak at 12 %): 800 psi across the grain and 2,000 psi in shear, from memory.
func TestShortGrainBearsAFractionOfLongGrain(t *testing.T) {
	oak, _ := wood.Lookup("white-oak")
	const psi = 0.006894757293
	bend, shear, err := Limits(oak, true, false)
	if err != nil || math.Abs(bend.Value-800*psi/4) > 1e-3 || math.Abs(shear.Value-2000*psi*0.18/3) > 1e-3 {
		t.Errorf("%v, %v MPa, %v", bend.Value, shear.Value, err)
	}
	hand, _, _ := Limits(oak, true, true)
	long, _, _ := Limits(oak, false, false)
	if math.Abs(hand.Value/bend.Value-1.6) > 1e-9 || long.Value < 10*bend.Value {
		t.Errorf("hand %v, staying %v, along %v", hand.Value, bend.Value, long.Value)
	}
	oak.MOR = math.NaN()
	if _, _, err := Limits(oak, false, false); err == nil {
		t.Error("a strength that nobody knows")
	}
}

func TestATongueNeverGetsBetterWhenSlimmerLongerThinnerOrLoadedMore(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := func(name string) length.Length { return length.FromMM(rapid.Float64Range(1, 500).Draw(r, name)) }
		tongue := Tongue{Out: l("out"), Broad: l("broad"), Thick: l("thick"), AtBoth: rapid.Bool().Draw(r, "both")}
		load, less := rapid.Float64Range(0, 2000).Draw(r, "load"), rapid.Float64Range(0.3, 1).Draw(r, "less")
		shrunk := func(v length.Length) length.Length { return max(1, length.FromMM(v.MM()*less)) }
		was, _ := Stress(tongue, load)
		for name, worse := range map[string]Tongue{
			"slimmer": {tongue.Out, shrunk(tongue.Broad), tongue.Thick, tongue.AtBoth, false},
			"thinner": {tongue.Out, tongue.Broad, shrunk(tongue.Thick), tongue.AtBoth, false},
			"longer":  {length.FromMM(tongue.Out.MM() / less), tongue.Broad, tongue.Thick, tongue.AtBoth, false},
		} {
			if is, err := Stress(worse, load); err != nil || is.Value < was.Value*(1-1e-9) {
				r.Errorf("%s: %v MPa, was %v, %v", name, is.Value, was.Value, err)
			}
		}
		if is, _ := Stress(tongue, load/less); is.Value < was.Value*(1-1e-9) {
			r.Error("more load stresses it less")
		}
	})
}

func TestATongueOfNothingIsRefused(t *testing.T) {
	for _, of := range []Tongue{{0, 1, 1, false, false}, {1, 0, 1, false, false}, {1, 1, 0, true, true}} {
		if _, err := Stress(of, 1); err == nil {
			t.Errorf("%+v", of)
		}
		if _, err := Shear(of, math.NaN()); err == nil {
			t.Errorf("%+v", of)
		}
	}
}
