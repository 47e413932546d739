package adhesive_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/adhesive"
)

const gallon = 231 * 25.4 * 25.4 * 25.4 / 1000 // US gallon of 231 cubic inches in ml, exact

// Public answer, recomputed: a rimmed bar top 91 × 28 in filled 3/16 in deep takes 2.07 US gallons; of 2.25
// bought 0.18 are spare.
func TestResinForABarTop(t *testing.T) {
	f := adhesive.Fill{AreaMM2: 91 * 28 * 25.4 * 25.4, Depth: 3 * in / 16, Count: 1, Shape: adhesive.Straight}
	v := must(t)(f.Volume()).Value / gallon
	near(t, "gallons", v, 2.07, 0.03)
	near(t, "spare", 2.25-v, 0.18, 0.03)
	f.Spare = 9
	near(t, "with spare", must(t)(f.Volume()).Value/gallon, 1.09*v, 1e-9)
}

// Geometry: a paraboloid holds half, a cone a third of its cylinder.
func TestRoundBottomedKnotsHoldLess(t *testing.T) {
	knot := adhesive.Fill{AreaMM2: 1000, Depth: 12 * length.Millimetre, Count: 3, Shape: adhesive.Bowl}
	near(t, "bowls", must(t)(knot.Volume()).Value, 18, 1e-9)
	knot.Shape = adhesive.Funnel
	near(t, "funnels", must(t)(knot.Volume()).Value, 12, 1e-9)
}

// Arithmetic, worked by hand.
func TestADeepVoidTakesSeveralPours(t *testing.T) {
	for _, c := range []struct {
		depth, greatest length.Length
		want            float64
	}{{in, in / 2, 2}, {in, in / 3, 3}, {in + 1, in, 1}, {in + in/100, in, 2}, {in / 8, in, 1}} {
		near(t, "pours", must(t)(adhesive.Pours(c.depth, c.greatest)).Value, c.want, 0)
	}
	if _, err := adhesive.Pours(0, in); err == nil {
		t.Error("nothing to pour")
	}
	if _, err := adhesive.Pours(in, 0); err == nil {
		t.Error("a pour has a depth")
	}
}

// A resin supplier's page, printed: casting resin 2 : 1 by volume, coating 1 : 1; table-top pours of 1/8 to
// 1/2 in, deep pours of 1/2 to 1 in; full cure of a coating 7 days.
func TestResinsAsTheirSuppliersHaveThem(t *testing.T) {
	for id, want := range map[string]struct {
		ratio float64
		pour  length.Length
		cure  float64
	}{"epoxy-coating": {1, in / 16, 168}, "epoxy-table-top": {1, in / 8, 168}, "epoxy-deep-pour": {2, in / 2, 192}} {
		r, err := adhesive.LookupResin(id)
		if err != nil {
			t.Fatal(err)
		}
		if r.Ratio != [2]float64{want.ratio, 1} || r.GreatestPour() != want.pour || r.Cure().Value != want.cure {
			t.Errorf("%s: %+v", id, r)
		}
		if !r.Density.Known() || len(r.Cautions()) == 0 || r.Assumed == "" || r.Name == "" {
			t.Errorf("%s: %+v", id, r)
		}
	}
	if len(adhesive.Resins()) != 3 {
		t.Error("three resins")
	}
}

func TestTheTwoPartsAreTheWholeInTheirRatio(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		v := rapid.Float64Range(0, 1e5).Draw(r, "ml")
		a, b := rapid.Float64Range(0.5, 5).Draw(r, "a"), rapid.Float64Range(0.5, 5).Draw(r, "b")
		resin, hardener, err := adhesive.Mix(v, a, b)
		if err != nil {
			r.Fatal(err)
		}
		if math.Abs(resin.Value+hardener.Value-v) > 1e-9*v || math.Abs(resin.Value*b-hardener.Value*a) > 1e-9*v*a*b {
			r.Fatalf("%v and %v of %v by %v:%v", resin.Value, hardener.Value, v, a, b)
		}
	})
}

func TestTheMassOfAMix(t *testing.T) {
	near(t, "kg", must(t)(adhesive.Bulk(2000, 1.1)).Value, 2.2, 1e-12)
}

func TestResinRefusesWhatHasNoMeaning(t *testing.T) {
	good := adhesive.Fill{AreaMM2: 1, Depth: in, Count: 1, Shape: 1}
	for name, change := range map[string]func(*adhesive.Fill){
		"area":  func(f *adhesive.Fill) { f.AreaMM2 = 0 },
		"depth": func(f *adhesive.Fill) { f.Depth = 0 },
		"count": func(f *adhesive.Fill) { f.Count = 0 },
		"shape": func(f *adhesive.Fill) { f.Shape = 1.5 },
		"spare": func(f *adhesive.Fill) { f.Spare = -1 },
	} {
		f := good
		change(&f)
		if v, err := f.Volume(); err == nil {
			t.Errorf("%s: %v", name, v.Value)
		}
	}
	if _, _, err := adhesive.Mix(1, 0, 1); err == nil {
		t.Error("a ratio has two parts")
	}
	if _, _, err := adhesive.Mix(-1, 2, 1); err == nil {
		t.Error("a volume below nothing")
	}
	if _, err := adhesive.Bulk(1, 7850); err == nil {
		t.Error("a density in kg/m³ is not one in g/ml")
	}
}

func ExampleFill_Volume() {
	drains := adhesive.Fill{AreaMM2: 900, Depth: 20 * length.Millimetre, Count: 4, Shape: adhesive.Bowl, Spare: 15}
	f, err := drains.Volume()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(figure.Digits(f.Value, 3), f.Unit)
	// Output: 41.4 ml
}
