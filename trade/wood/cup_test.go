package wood

import (
	"math"
	"strings"
	"testing"

	"rodwright/length"
)

// By hand: |0.00365 − 0.0018| · 4 · 3 · atan(6/8) = 0.01429 in.
func TestAStripCupsByItsRings(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	f, err := Cup(oak, 6*length.Inch, 4*length.Inch, 8, 12)
	if err != nil || math.Abs(f.Value/25.4-0.0143) > 0.0003 {
		t.Errorf("%v in, %v", f.Value/25.4, err)
	}
	if math.Abs(f.Value/25.4-0.0222*math.Atan(0.75)) > 1e-9 {
		t.Errorf("%v in", f.Value/25.4)
	}
	for _, c := range []struct {
		from, to float64
		want     string
	}{{12, 8, "bark face"}, {8, 12, "heart face"}} {
		f, err := Cup(oak, 6*length.Inch, 4*length.Inch, c.from, c.to)
		if err != nil || !strings.Contains(strings.Join(f.Assumed, ";"), c.want) {
			t.Errorf("%v to %v %%: %q, want hollow on the %s", c.from, c.to, f.Assumed, c.want)
		}
	}
}

func TestCupGoesWithAboutTheSquareOfTheWidth(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	narrow, errA := Cup(oak, 2*length.Inch, 20*length.Inch, 8, 12)
	wide, errB := Cup(oak, 4*length.Inch, 20*length.Inch, 8, 12)
	if share := wide.Value / narrow.Value; errA != nil || errB != nil || math.Abs(share-4) > 0.05 {
		t.Errorf("twice as wide cups %v times as much", share)
	}
}

// By hand: 0.00365 · 2 · 36 ÷ (8 · 0.75) = 0.0438 in.
func TestAStripCupsWhenItsFacesDiffer(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	for _, points := range []float64{2, -2} {
		f, err := FaceCup(oak, Flat, 6*length.Inch, 3*length.Inch/4, points)
		if err != nil || math.Abs(f.Value/25.4-0.0438) > 1e-9 {
			t.Errorf("%v points: %v in, %v", points, f.Value/25.4, err)
		}
	}
}

func TestWhatIsNoStripIsRefused(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	for _, c := range []struct {
		name string
		err  error
		want string
	}{
		{"no width", second(Cup(oak, 0, length.Inch, 8, 9)), "strip"},
		{"no radius", second(Cup(oak, length.Inch, 0, 8, 9)), "ring radius"},
		{"endless radius", second(Cup(oak, length.Inch, length.Max+1, 8, 9)), "ring radius"},
		{"no moisture", second(Cup(oak, length.Inch, length.Inch, math.NaN(), 9)), "moisture"},
		{"no thickness", second(FaceCup(oak, Flat, length.Inch, 0, 1)), "thickness"},
		{"no difference", second(FaceCup(oak, Flat, length.Inch, length.Inch, math.NaN())), "moisture"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, c.err, c.want)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// By hand, white oak with S_T 10.5 and S_R 5.6 % (Wood Handbook FPL-GTR-282 (2021) table 4-3), F 30 %, from 8 to
// 17.895 %: by eq. 13-3 9.895 ÷ (285.714 − 22) = 0.037522 and 9.895 ÷ (535.714 − 22) = 0.019262; the rise is
// 0.018260 · 3 · atan(0.75) = 0.03525 in. The coefficients alone would say 0.00185 · 9.895 · 3 · 0.6435 = 0.03534.
func TestACupPastTheCoefficientsGoesByTheShrinkage(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	f, err := Cup(oak, 6*length.Inch, 4*length.Inch, 8, 17.895)
	if err != nil || math.Abs(f.Value/25.4-0.03525) > 0.00003 || f.Formula != &greenCupFormula {
		t.Errorf("%.5f in, %v", f.Value/25.4, err)
	}
	if f, err := Cup(oak, 6*length.Inch, 4*length.Inch, LinearTo, LinearFrom); err != nil || f.Formula != &ringCupFormula {
		t.Errorf("14 to 6 %%: %v", err)
	}
	above, errA := Cup(oak, 6*length.Inch, 4*length.Inch, 8, 30)
	green, errB := Cup(oak, 6*length.Inch, 4*length.Inch, 8, 60)
	if errA != nil || errB != nil || above.Value != green.Value {
		t.Errorf("wetter than green it cups on: %v, %v", above.Value, green.Value)
	}
}

func TestFacesTooFarApartAreRefused(t *testing.T) {
	if _, err := FaceCup(mustLookup(t, "white-oak"), Flat, 6*length.Inch, length.Inch, 8.01); err == nil || !strings.Contains(err.Error(), "at most 8") {
		t.Errorf("faces 8.01 points apart: %v", err)
	}
}

// The width is worked back through the cup itself, in every species and on either side of the coefficients' range.
func TestStripsOfTheGreatestWidthAreJustFlatEnough(t *testing.T) {
	const share = 1.0 / 384
	for _, id := range IDs() {
		s := mustLookup(t, id)
		for _, to := range []float64{4, 7, 12, 18} {
			unlike, _, err := Unlike(s, 8, to)
			if err != nil {
				t.Fatal(err)
			}
			w := FlatEnough(unlike, share, 4*length.Inch)
			if w == length.Max {
				continue
			}
			if f, err := Cup(s, w, 4*length.Inch, 8, to); err != nil || math.Abs(f.Value-w.MM()*share) > 1e-6 {
				t.Errorf("%s to %v %%: %v wide rises %v mm, %v", id, to, w.MM(), f.Value, err)
			}
		}
	}
	if FlatEnough(0, share, length.Inch) != length.Max || FlatEnough(1e-9, share, length.Inch) != length.Max {
		t.Error("a strip that does not cup has a greatest width")
	}
}
