package beam_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/beam"
)

// Exact from the international inch and pound of 1959.
const (
	inch  = 25.4                 // mm
	lbf   = 0.45359237 * 9.80665 // N
	psi   = lbf / (inch * inch)  // MPa
	inch4 = inch * inch * inch * inch
	in    = length.Inch
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
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

func rectangle(t *testing.T, width, thickness float64) beam.Section {
	t.Helper()
	s, err := beam.Rectangle(length.FromInches(width), length.FromInches(thickness))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func tube(t *testing.T, outside, wall float64) beam.Section {
	t.Helper()
	s, err := beam.Tube(length.FromInches(outside), length.FromInches(wall))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// joist is the beam of an engineers' collection of formulas, inch example: I 285 in⁴, 6.25 in to the
// outermost fibre, 100 in long.
var joist = beam.Beam{
	Span: 100 * in, Modulus: 29_000_000 * psi,
	Section: beam.Section{Inertia: 285 * inch4, Modulus: 285 / 6.25 * inch * inch * inch},
}

// An engineers' collection of formulas, beams: printed 2741 psi and 0.016 in under 100 lb/in, 5482 psi
// under 10 000 lb in the middle; 0.0252 in computed from the printed inputs.
func TestAnEngineersInchExample(t *testing.T) {
	even, middle := 100*100*lbf, 10_000*lbf
	near(t, "stress, even", must(t)(beam.Stress(joist, even, beam.Even, beam.Resting)).Value/psi, 2741, 1)
	near(t, "sag, even", must(t)(beam.Sag(joist, even, beam.Even, beam.Resting)).Value/inch, 0.016, 0.0005)
	near(t, "stress, middle", must(t)(beam.Stress(joist, middle, beam.Middle, beam.Resting)).Value/psi, 5482, 1)
	near(t, "sag, middle", must(t)(beam.Sag(joist, middle, beam.Middle, beam.Resting)).Value/inch, 0.0252, 0.0002)
}

// The same collection's metric example: 6 N/mm over 5 m, I 81 960 000 mm⁴, 150 mm to the outermost fibre.
func TestAnEngineersMetricExample(t *testing.T) {
	b := beam.Beam{Span: 5 * length.Metre, Modulus: 200_000, Section: beam.Section{Inertia: 81_960_000, Modulus: 81_960_000 / 150.0}}
	near(t, "stress", must(t)(beam.Stress(b, 6*5000, beam.Even, beam.Resting)).Value, 34.3, 0.1)
	near(t, "sag", must(t)(beam.Sag(b, 6*5000, beam.Even, beam.Resting)).Value, 2.98, 0.01)
}

// Wood Handbook Table 9-1 (from memory): a shelf 11.25 × 0.75 × 36 in, 20 lb/ft², E 1.38e6 psi, G = E/14:
// 0.0630 in with shear; bending alone both ends held 0.0125 in.
func TestAShelfOfTheHandbook(t *testing.T) {
	s := rectangle(t, 11.25, 0.75)
	b := beam.Beam{Span: 36 * in, Modulus: 1_380_000 * psi, Section: s, Shear: 98_571 * psi, ShearArea: s.ShearArea()}
	load := 20 * 11.25 * 36 / 144 * lbf
	near(t, "with shear", must(t)(beam.Sag(b, load, beam.Even, beam.Resting)).Value/inch, 0.0630, 0.0005)
	b.Shear = 0
	near(t, "held", must(t)(beam.Sag(b, load, beam.Even, beam.Held)).Value/inch, 0.0125, 0.0003)
	b.Modulus = 1_820_000 * psi // red oak; the sag goes with the inverse of E
	near(t, "red oak", must(t)(beam.Sag(b, load, beam.Even, beam.Resting)).Value/inch, 0.0475, 0.0003)
}

// Public answer on shelf sag, recomputed: 39 × 11 × 3/4 in, E 1.58e6 psi, 20 lb a foot: 0.082 in, over the
// 0.065 in to design for and under the 0.102 in that the eye sees; lasting about 0.12.
func TestAPlainShelfUnderOrdinaryBooks(t *testing.T) {
	b := beam.Beam{Span: 39 * in, Modulus: 1_580_000 * psi, Section: rectangle(t, 11, 0.75)}
	sag := must(t)(beam.Sag(b, 20.0/12*39*lbf, beam.Even, beam.Resting))
	near(t, "sag", sag.Value/inch, 0.082, 0.005)
	first, last := must(t)(beam.ElasticLimit(b.Span)), must(t)(beam.LastingLimit(b.Span))
	near(t, "to design for", first.Value/inch, 0.065, 0.0005)
	near(t, "seen", last.Value/inch, 0.102, 0.0005)
	if sag.Value <= first.Value || sag.Value >= last.Value {
		t.Errorf("sag %.3f should lie between %.3f and %.3f mm", sag.Value, first.Value, last.Value)
	}
	near(t, "lasting", must(t)(beam.LastingSag(sag.Value, beam.Dry.Factor())).Value/inch, 0.12, 0.005)
}

// Public answer on what the eye sees, recomputed: over 36 in 3/32 in is seen, 0.06 in is designed for, time
// adds half again.
func TestWhatTheEyeSeesOverThreeFeet(t *testing.T) {
	near(t, "seen", must(t)(beam.LastingLimit(36*in)).Value/inch, 0.094, 0.002)
	near(t, "design", must(t)(beam.ElasticLimit(36*in)).Value/inch, 0.06, 0.002)
	near(t, "dry", beam.Dry.Factor(), 1.5, 0)
	near(t, "damp", beam.Damp.Factor(), 2, 0)
}

// Public answer, recomputed: a 48 × 12 × 1 in tread, supports 5 in from each end, 30 lb a foot, E 1.24e6
// psi: 0.050 in, limit 0.063; held up at its ends it would sag 0.14 in.
func TestMovingTheSupportsInStiffensAShelf(t *testing.T) {
	b := beam.Beam{Span: 38 * in, Modulus: 1_240_000 * psi, Section: rectangle(t, 12, 1)}
	load := 30.0 / 12 * 48 * lbf
	near(t, "overhung", must(t)(beam.Overhang(b, 5*in, load)).Value/inch, 0.050, 0.005)
	near(t, "limit", must(t)(beam.ElasticLimit(38*in)).Value/inch, 0.063, 0.005)
	b.Span = 48 * in
	near(t, "at its ends", must(t)(beam.Sag(b, load, beam.Even, beam.Resting)).Value/inch, 0.14, 0.005)
}

func TestWithoutAnOverhangTheOverhangFormulaIsThePlainOne(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := drawBeam(r)
		load := rapid.Float64Range(1, 1e4).Draw(r, "load")
		plain, err1 := beam.Sag(b, load, beam.Even, beam.Resting)
		over, err2 := beam.Overhang(b, 0, load)
		if err1 != nil || err2 != nil {
			r.Fatal(err1, err2)
		}
		if math.Abs(plain.Value-over.Value) > 1e-9*plain.Value {
			r.Fatalf("plain %v, overhang of nothing %v", plain.Value, over.Value)
		}
	})
}

// Any mechanics text: an overhang with hardly a span behind it is a cantilever, wa⁴/(8EI).
func TestALongOverhangIsACantilever(t *testing.T) {
	b := beam.Beam{Span: in / 100, Modulus: 10_000, Section: rectangle(t, 10, 1)}
	a, load := 40*in, 500.0
	w := load / (b.Span + 2*a).MM()
	want := w * math.Pow(a.MM(), 4) / (8 * b.Modulus * b.Section.Inertia)
	near(t, "tip", must(t)(beam.OverhangTip(b, a, load)).Value, want, 0.001*want)
}

func TestHeldEndsSagLessThanRestingOnes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := drawBeam(r)
		load := rapid.Float64Range(1, 1e4).Draw(r, "load")
		for s, ratio := range map[beam.Spread]float64{beam.Even: 5, beam.Middle: 4} {
			rest, err1 := beam.Sag(b, load, s, beam.Resting)
			held, err2 := beam.Sag(b, load, s, beam.Held)
			if err1 != nil || err2 != nil {
				r.Fatal(err1, err2)
			}
			if math.Abs(rest.Value/held.Value-ratio) > 1e-9 {
				r.Fatalf("%s: resting ÷ held is %v, want %v", s, rest.Value/held.Value, ratio)
			}
		}
	})
}

func TestSagGoesWithTheLoadAndTheCubeOfTheSpan(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := drawBeam(r)
		load := rapid.Float64Range(1, 1e3).Draw(r, "load")
		one, _ := beam.Sag(b, load, beam.Middle, beam.Resting)
		twice, _ := beam.Sag(b, 2*load, beam.Middle, beam.Resting)
		b.Span *= 2
		longer, err := beam.Sag(b, load, beam.Middle, beam.Resting)
		if err != nil {
			r.Fatal(err)
		}
		if math.Abs(twice.Value/one.Value-2) > 1e-9 || math.Abs(longer.Value/one.Value-8) > 1e-9 {
			r.Fatalf("load twice: %v, span twice: %v", twice.Value/one.Value, longer.Value/one.Value)
		}
	})
}

func drawBeam(r *rapid.T) beam.Beam {
	s, err := beam.Rectangle(
		length.Length(rapid.Int64Range(int64(in), int64(24*in)).Draw(r, "width")),
		length.Length(rapid.Int64Range(int64(in/4), int64(3*in)).Draw(r, "thickness")))
	if err != nil {
		r.Fatal(err)
	}
	return beam.Beam{
		Span:    length.Length(rapid.Int64Range(int64(6*in), int64(120*in)).Draw(r, "span")),
		Modulus: rapid.Float64Range(500, 210_000).Draw(r, "modulus"), Section: s,
	}
}

func TestEveryFigureSaysHowTheEndsAreHeld(t *testing.T) {
	for e, word := range map[beam.Ends]string{beam.Resting: "resting", beam.Held: "held"} {
		f := must(t)(beam.Sag(joist, 1, beam.Even, e))
		if len(f.Assumed) != 1 || !strings.Contains(f.Assumed[0], word) {
			t.Errorf("%s: assumed %q", e, f.Assumed)
		}
	}
}

func ExampleSag() {
	board, err := beam.Rectangle(11*length.Inch, 3*length.Inch/4)
	if err != nil {
		fmt.Println(err)
		return
	}
	shelf := beam.Beam{Span: 36 * length.Inch, Modulus: 12_500, Section: board}
	f, err := beam.Sag(shelf, 270, beam.Even, beam.Resting)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Show(length.HalfMM), "by", f.Formula.Text)
	// Output: 1.5 mm by δ = 5WL³/(384EI) [+ WL/(8GA')]
}
