package stability_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/stability"
)

// Public question on a rocking table, numbers recomputed: 29.00, 29.06, 29.00, 28.90 in: rocks 0.04 in.
func TestFourLegsRockByTheirTwist(t *testing.T) {
	leg := length.FromInches
	r := stability.Rock(leg(29), leg(29.06), leg(29), leg(28.9))
	near(t, "rock in inches", r.By.Inches(), 0.04, 0.005)
	if r.Shorten != [2]int{0, 2} {
		t.Errorf("shorten %v, want a or c: the longer diagonal", r.Shorten)
	}
	if r.Figure.Value != r.By.MM() {
		t.Errorf("figure %v, rock %v", r.Figure.Value, r.By.MM())
	}
	if r := stability.Rock(leg(28.9), leg(29), leg(29), leg(29.06)); r.Shorten != [2]int{1, 3} {
		t.Errorf("shorten %v, want b or d", r.Shorten)
	}
}

func TestATablethatLeansDoesNotRock(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := func(name string) length.Length {
			return length.Length(rapid.Int64Range(-int64(in), int64(in)).Draw(r, name))
		}
		base, x, y := 29*in, l("lean along"), l("lean across")
		if got := stability.Rock(base, base+x, base+x+y, base+y); got.By != 0 {
			r.Fatalf("a flat foot plane rocks by %v", got.By)
		}
	})
}

func TestShorteningALegOfTheLongerDiagonalStopsTheRocking(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var legs [4]length.Length
		for i := range legs {
			legs[i] = 29*in + length.Length(rapid.Int64Range(0, int64(in)).Draw(r, "leg"))
		}
		first := stability.Rock(legs[0], legs[1], legs[2], legs[3])
		legs[first.Shorten[rapid.IntRange(0, 1).Draw(r, "which")]] -= first.By
		if again := stability.Rock(legs[0], legs[1], legs[2], legs[3]); again.By != 0 {
			r.Fatalf("still rocks by %v", again.By)
		}
	})
}

// Statics: W·sin α; 100 kg on 5°: 980.665 · 0.08716 = 85.47 N.
func TestTheForceThatRollsAStandDownASlope(t *testing.T) {
	near(t, "force", must(t)(stability.RollAway(100, 5)).Value, 85.47, 0.01)
}

func TestLocksHoldBothWaysOfAskingAlike(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		share := rapid.Float64Range(0.05, 1).Draw(r, "share")
		mu := rapid.Float64Range(0.05, 1).Draw(r, "friction")
		hold, err := stability.HoldingSlope(share, mu)
		if err != nil {
			r.Fatal(err)
		}
		force, err := stability.RollAway(100, hold.Value)
		if err != nil {
			r.Fatal(err)
		}
		grip := mu * share * stability.Weight(100) * math.Cos(hold.Value*math.Pi/180)
		if math.Abs(force.Value-grip) > 1e-6*grip {
			r.Fatalf("rolls with %v N, grips with %v N", force.Value, grip)
		}
	})
}

func TestFrictionThatNobodyGaveIsSaid(t *testing.T) {
	f := must(t)(stability.HoldingSlope(0.5, 0))
	near(t, "slope", f.Value, math.Atan(0.25)*180/math.Pi, 1e-9)
	if len(f.Assumed) != 1 || !strings.Contains(f.Assumed[0], "from memory") {
		t.Errorf("assumed %q", f.Assumed)
	}
	if given := must(t)(stability.HoldingSlope(0.5, 0.5)); len(given.Assumed) != 0 {
		t.Errorf("a given friction is assumed: %q", given.Assumed)
	}
}

// NIOSH revised lifting equation, 1991 (load constant 23 kg, horizontal multiplier 25/H), from memory.
func TestOnePersonLiftsHalfAsMuchAtArmsLength(t *testing.T) {
	for _, c := range []struct {
		cm   length.Length
		want float64
	}{{0, 23}, {25, 23}, {50, 11.5}, {63, 23 * 25 / 63.0}} {
		near(t, "lift", must(t)(stability.LiftLimit(c.cm*length.Centimetre)).Value, c.want, 1e-9)
	}
}

func TestStandingRefusesWhatHasNoMeaning(t *testing.T) {
	if _, err := stability.LiftLimit(64 * length.Centimetre); err == nil {
		t.Error("the equation ends at 63 cm")
	}
	if _, err := stability.RollAway(10, 60); err == nil {
		t.Error("60° is no floor")
	}
	if _, err := stability.RollAway(-1, 5); err == nil {
		t.Error("a negative mass rolls nowhere")
	}
	if _, err := stability.HoldingSlope(1.2, 0.5); err == nil {
		t.Error("more than the whole load can't stand on the locks")
	}
	if _, err := stability.PushTest(0); err == nil {
		t.Error("nothing to push")
	}
}
