package abrasive_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/trade/abrasive"
	"rodwright/trade/table"
)

//go:embed grits.csv
var gritsCSV string

func TestEveryGritHasASource(t *testing.T) {
	for _, r := range table.Read(gritsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
}

// Common practice, no source: no step of more than about one and a half times.
func TestNoStepIsMoreThanOneAndAHalfTimes(t *testing.T) {
	cases := []struct {
		from, to int
		want     []int
	}{
		{80, 180, []int{80, 120, 180}},
		{60, 220, []int{60, 80, 120, 180, 220}},
		{120, 120, []int{120}},
		{100, 150, []int{100, 150}},
		{36, 400, []int{36, 50, 60, 80, 120, 180, 240, 320, 400}},
	}
	for _, c := range cases {
		got, err := abrasive.Steps(c.from, c.to)
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%d to %d: %v, %v, want %v", c.from, c.to, got, err, c.want)
		}
	}
	for _, c := range [][2]int{{180, 80}, {81, 120}, {80, 1000}, {0, 0}} {
		if got, err := abrasive.Steps(c[0], c[1]); err == nil {
			t.Errorf("%v: %v", c, got)
		}
	}
	var unknown *table.UnknownError
	if _, err := abrasive.Steps(110, 180); !errors.As(err, &unknown) || len(unknown.Near) == 0 {
		t.Errorf("%v", err)
	}
}

func TestEveryPairOfGritsHasAWay(t *testing.T) {
	grits := abrasive.Grits()
	rapid.Check(t, func(r *rapid.T) {
		i := rapid.IntRange(0, len(grits)-1).Draw(r, "from")
		j := rapid.IntRange(i, len(grits)-1).Draw(r, "to")
		steps, err := abrasive.Steps(grits[i], grits[j])
		if err != nil {
			r.Fatal(err)
		}
		if steps[0] != grits[i] || steps[len(steps)-1] != grits[j] {
			r.Fatalf("%v does not go from %d to %d", steps, grits[i], grits[j])
		}
		for k := 1; k < len(steps); k++ {
			if steps[k] <= steps[k-1] || 2*steps[k] > 3*steps[k-1] {
				r.Fatalf("%v: step to %d", steps, steps[k])
			}
		}
	})
}

// An estimator's rule told in public, recomputed: a 36 × 72 in face: 18 h.
func TestHoursForOneTableFace(t *testing.T) {
	f, err := abrasive.Hours(36 * 72 * 0.0254 * 0.0254)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(f.Value-18) > 1e-9 || len(f.Assumed) != 1 {
		t.Errorf("%v h, assumed %q", f.Value, f.Assumed)
	}
	if _, err := abrasive.Hours(-1); err == nil {
		t.Error("an area below nothing")
	}
}

func TestDiscsForATop(t *testing.T) {
	f, err := abrasive.Discs(1.2, 3, 0)
	if err != nil || f.Value != 9 || len(f.Assumed) != 1 {
		t.Errorf("%v, %q, %v", f.Value, f.Assumed, err)
	}
	f, err = abrasive.Discs(1.2, 3, 0.4)
	if err != nil || f.Value != 9 || len(f.Assumed) != 0 {
		t.Errorf("%v, %q, %v", f.Value, f.Assumed, err)
	}
	for _, c := range []struct {
		area  float64
		steps int
		life  float64
	}{{-1, 1, 1}, {1, -1, 1}, {1, 1, -1}, {1, 1, 1e-12}, {math.NaN(), 1, 1}} {
		if f, err := abrasive.Discs(c.area, c.steps, c.life); err == nil {
			t.Errorf("%+v: %v", c, f.Value)
		}
	}
}

func ExampleSteps() {
	fmt.Println(abrasive.Steps(80, 220))
	// Output: [80 120 180 220] <nil>
}
