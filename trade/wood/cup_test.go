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

// Wood Handbook FPL-GTR-282 (2021) table 13-5: the coefficients are for 6 to 14 % MC. Past it a linear cup is up to a
// quarter too great, so none is given.
func TestACupPastTheCoefficientsIsRefused(t *testing.T) {
	oak := mustLookup(t, "white-oak")
	for _, mc := range [][2]float64{{20, 8}, {8, 4}, {14.01, 10}, {5.99, 10}} {
		if f, err := Cup(oak, 6*length.Inch, 4*length.Inch, mc[0], mc[1]); err == nil || !strings.Contains(err.Error(), "6 to 14 %") {
			t.Errorf("%v to %v %%: %v, %v", mc[0], mc[1], f.Value, err)
		}
	}
	if _, err := Cup(oak, 6*length.Inch, 4*length.Inch, LinearTo, LinearFrom); err != nil {
		t.Errorf("14 to 6 %%: %v", err)
	}
	if _, err := FaceCup(oak, Flat, 6*length.Inch, length.Inch, 8.01); err == nil || !strings.Contains(err.Error(), "at most 8") {
		t.Errorf("faces 8.01 points apart: %v", err)
	}
}
