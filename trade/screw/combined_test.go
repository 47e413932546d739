package screw_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/trade/screw"
)

// National Design Specification 12.4.1, from memory: Zα = W·Z ÷ (W·cos²α + Z·sin²α). Worked by hand: W 200, Z
// 100 lb, a load of 60 lb at 45°: Zα = 200·100 ÷ (100 + 50) = 133.3 lb, a share of 0.45. Each load is 42.43 lb:
// alone across it is a share of 0.424, so that the equation decides.
func TestPullAndLoadAcrossTogetherAreWeighedByTheirAngle(t *testing.T) {
	f, err := screw.Combined(42.4264, 42.4264, 200, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "share", f.Value, 0.45, 1e-4)
}

// By hand, as above: 30 lb along, 40 lb across: (40²/100 + 30²/200) ÷ 50 = 0.41; across alone 0.40.
func TestTheSteeperLoadIsWeighedByItsOwnDesignValue(t *testing.T) {
	f, err := screw.Combined(30, 40, 200, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "share", f.Value, 0.41, 1e-12)
}

func TestOneLoadAloneIsItsShareOfItsDesignValue(t *testing.T) {
	for _, c := range [][5]float64{{50, 0, 200, 100, 0.25}, {0, 50, 200, 100, 0.5}, {0, 0, 0, 0, 0}, {0, 50, 0, 100, 0.5}} {
		f, err := screw.Combined(c[0], c[1], c[2], c[3])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "share", f.Value, c[4], 1e-12)
	}
}

func TestNothingHangsOnAScrewDesignedForNothing(t *testing.T) {
	for _, c := range [][4]float64{{1, 0, 0, 100}, {0, 1, 100, 0}, {-1, 0, 1, 1}, {0, math.NaN(), 1, 1}, {math.Inf(1), 0, 1, 1}, {0, 0, -1, 1}} {
		if f, err := screw.Combined(c[0], c[1], c[2], c[3]); err == nil {
			t.Errorf("%v: %v", c, f.Value)
		}
	}
}

func TestNoShareFallsWhenALoadGrowsOrRisesWithStrength(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		load := rapid.Float64Range(0, 2000)
		design := rapid.Float64Range(1, 2000)
		p, v, w, z := load.Draw(r, "pull"), load.Draw(r, "across"), design.Draw(r, "withdrawal"), design.Draw(r, "lateral")
		more := rapid.Float64Range(0, 500).Draw(r, "more")
		share := func(p, v, w, z float64) float64 {
			f, err := screw.Combined(p, v, w, z)
			if err != nil {
				r.Fatal(err)
			}
			return f.Value
		}
		one := share(p, v, w, z) - 1e-9
		if share(p+more, v, w, z) < one || share(p, v+more, w, z) < one {
			r.Fatal("a greater load uses less of the screw")
		}
		if share(p, v, w+more, z) > one+2e-9 || share(p, v, w, z+more) > one+2e-9 {
			r.Fatal("a stronger screw is used more")
		}
	})
}
