package pipe

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
)

// Take-outs by ASME B16.3 and normal engagement (from memory), computed by hand: 14 − 2·(1.31 − 0.5625) = 12.505.
// DN by EN 10242 (from memory): its z is the take-out, 500 − 2·18 = 464.
func TestCutLengthsOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		name, size, between string
		a, b                Kind
		want                string
	}{
		{"two 3/4 tees", "3/4", "14", Tee, Tee, "12.505"},
		{"two 1 in elbows", "1", "24", Elbow90, Elbow90, "22.375"},
		{"two 1/2 in elbows", "1/2", "10", Elbow90, Elbow90, "8.76"},
		{"chain: flange to tee", "3/4", "9.125", Flange, Tee, "8.09"},
		{"chain: tee to tee", "3/4", "17", Tee, Tee, "15.505"},
		{"chain: tee to elbow", "3/4", "19.5", Tee, Elbow90, "18.005"},
		{"short rail", "3/4", "14.5", Tee, Tee, "13.005"},
		{"long rail", "3/4", "40.5", Tee, Tee, "39.005"},
		{"half a rail with a union in it", "3/4", "7.25", Tee, Union, "6.065"},
		{"cap to tee", "3/4", "10", Cap, Tee, "8.845"},
		{"bare at both ends", "3/4", "10", None, None, "10"},
		{"bare at one end", "3/4", "10", None, Tee, "9.2525"},
		{"two DN20 tees", "DN20", "500 mm", Tee, Tee, "464 mm"},
		{"two DN20 45° elbows", "DN20", "500 mm", Elbow45, Elbow45, "480 mm"},
		{"two DN20 sockets, pipe to pipe 9 mm", "DN20", "500 mm", Coupling, Coupling, "491 mm"},
		{"DN20 flange of 0.85 in, e 15 mm", "DN20", "500 mm", Flange, None, "493.41 mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := CutLength(inch(t, c.between), fitting(t, c.size, c.a), fitting(t, c.size, c.b))
			if err != nil {
				t.Fatal(err)
			}
			if got.Cut != inch(t, c.want) {
				t.Errorf("cut %v in, want %s", got.Cut.Inches(), c.want)
			}
			if got.Figure.Value != got.Cut.MM() || got.Figure.Unit != figure.MM || got.Figure.Formula == nil || got.Figure.Source == "" {
				t.Errorf("figure %+v", got.Figure)
			}
		})
	}
}

// Two 3/4 tees 14 in apart: one pitch of 1/14 in at each joint. Computed by hand: 14 ∓ 2/14 = 13.857, 14.143.
func TestBuiltDistanceVariesByAPitchAtEachThreadedJoint(t *testing.T) {
	for _, c := range []struct {
		name     string
		b        Kind
		tightest float64
		loosest  float64
	}{
		{"two tees", Tee, 13.857, 14.143},
		{"a bare end makes up nothing", None, 13.9286, 14.0714},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := CutLength(14*length.Inch, fitting(t, "3/4", Tee), fitting(t, "3/4", c.b))
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got.Tightest.Inches()-c.tightest) > 0.0005 || math.Abs(got.Loosest.Inches()-c.loosest) > 0.0005 {
				t.Errorf("%v to %v in, want %v to %v", got.Tightest.Inches(), got.Loosest.Inches(), c.tightest, c.loosest)
			}
		})
	}
}

func TestWhatCanNotBeCutIsAnError(t *testing.T) {
	tee := fitting(t, "3/4", Tee)
	for _, c := range []struct {
		name    string
		between length.Length
		a, b    Fitting
		want    string
	}{
		{"too close", inch(t, "1.4"), tee, tee, "no pipe fits 1.4 in between tee and tee: their take-outs alone are 1.495 in; a close nipple needs 2.87 in"},
		{"nothing left", inch(t, "1.495"), tee, tee, "no pipe fits"},
		{"negative", -length.Inch, tee, tee, "no pipe fits"},
		{"no distance between bare ends", 0, fitting(t, "3/4", None), fitting(t, "3/4", None), "no pipe fits"},
		{"two sizes", 14 * length.Inch, tee, fitting(t, "1", Tee), "its ends are 3/4 and 1"},
		{"two standards", 14 * length.Inch, tee, fitting(t, "DN20", Tee), "its ends are 3/4 and DN20"},
		{"without end", length.Max + 1, tee, tee, "more than 1 km"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := CutLength(c.between, c.a, c.b)
			if err == nil || !strings.Contains(err.Error(), c.want) || got.Cut != 0 {
				t.Errorf("cut %v, error %v, want %q", got.Cut, err, c.want)
			}
		})
	}
}

func TestAShortCutIsNoErrorHere(t *testing.T) {
	tee := fitting(t, "3/4", Tee)
	got, err := CutLength(inch(t, "1.5"), tee, tee)
	if err != nil || got.Cut != inch(t, "0.005") {
		t.Errorf("%v, %v", got.Cut, err)
	}
}

func TestACutSaysWhatItAssumesOnce(t *testing.T) {
	got, err := CutLength(14*length.Inch, fitting(t, "3/4", Tee), fitting(t, "3/4", Tee))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Figure.Assumed) != 2 || got.Figure.Source != "ASME B16.3 Malleable Iron Threaded Fittings, Class 150, from memory" {
		t.Errorf("assumed %q, source %q", got.Figure.Assumed, got.Figure.Source)
	}
	bare, err := CutLength(14*length.Inch, fitting(t, "3/4", None), fitting(t, "3/4", None))
	if err != nil || len(bare.Figure.Assumed) != 0 {
		t.Errorf("bare ends assume %q", bare.Figure.Assumed)
	}
	mixed, err := CutLength(14*length.Inch, fitting(t, "3/4", Flange), fitting(t, "3/4", Tee))
	if err != nil || !strings.Contains(mixed.Figure.Source, "; ASME B16.3") {
		t.Errorf("source %q", mixed.Figure.Source)
	}
	one, err := CutLength(14*length.Inch, fitting(t, "3/4", None), fitting(t, "3/4", Tee))
	if err != nil || !strings.HasPrefix(one.Figure.Source, "ASME B16.3") {
		t.Errorf("source %q", one.Figure.Source)
	}
}

// The laws of a cut: with its take-outs it makes up the distance to the nanometre, in either order of the ends, and
// the built distance lies between tightest and loosest.
func TestCutAndTakeOutsAreTheDistanceExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := Lookup(rapid.SampledFrom(Sizes()).Draw(t, "size"))
		if err != nil {
			t.Fatal(err)
		}
		a, errA := s.Fitting(rapid.SampledFrom(Kinds()).Draw(t, "a"))
		b, errB := s.Fitting(rapid.SampledFrom(Kinds()).Draw(t, "b"))
		if errA != nil || errB != nil {
			t.Skip("not sold")
		}
		between := length.Length(rapid.Int64Range(1, int64(4*length.Metre)).Draw(t, "between"))
		c, err := CutLength(between, a, b)
		if err != nil {
			if between > a.TakeOut()+b.TakeOut() {
				t.Fatalf("%v", err)
			}
			return
		}
		if c.Cut+c.TakeOutA+c.TakeOutB != between || Built(c.Cut, a, b) != between {
			t.Fatalf("%v + %v + %v is not %v", c.Cut, c.TakeOutA, c.TakeOutB, between)
		}
		if c.Tightest > between || c.Loosest < between || between-c.Tightest != c.Loosest-between {
			t.Fatalf("built between %v and %v", c.Tightest, c.Loosest)
		}
		back, err := CutLength(between, b, a)
		if err != nil || back.Cut != c.Cut || back.TakeOutA != c.TakeOutB {
			t.Fatalf("turned round: %v, %v", back.Cut, err)
		}
	})
}
