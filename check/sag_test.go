package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/trade/beam"
	"rodwright/trade/wood"
)

// loaded is the table with a narrow top, 8 in, and a thing of the given weight in pounds over the whole of it.
func loaded(t *testing.T, pounds string, changes ...string) *Piece {
	t.Helper()
	changes = append([]string{"width: 20.5 in", "width: 8 in", "feet: caps", "feet: caps\nholds:\n  - {name: crate, on: top, size: 40 × 8 × 10 in, weight: " + pounds + " lb}"}, changes...)
	return derive(t, table, changes...)
}

func sagOf(t *testing.T, p *Piece, place string) finding.Finding {
	t.Helper()
	for _, f := range Sag(p) {
		if f.Place == place {
			return f
		}
	}
	t.Fatalf("nothing is said of %q", place)
	return finding.Finding{}
}

// A narrow top is a beam: 40 in of white oak, 8 × 1 1/8 in, on flanges 3 in in from its ends, so that it bridges 34 in from
// axis to axis, with 3 in overhanging at both ends. By hand, with E = 1.78·10⁶ psi (Wood Handbook Table 5-3), I = 8·1.125³/12
// = 0.949 in⁴ and 100 lb evenly over 40 in, 2.5 lb/in: an even load with overhangs a gives in the middle
// q·L²·(5·L² − 24·a²) ÷ 384·E·I = 2.5·34²·(5·34² − 24·9) ÷ (384·1.78e6·0.949) = 0.0248 in (Roark's Formulas for Stress and
// Strain, beams, superposed). The top's own weight, some 9 lb, is in it too; between two rows of flanges 2 in apart it bends across a
// little. So it lies between the beam's without that weight and 5 % more than the beam's with 12 lb of it.
func TestANarrowTopSagsAsABeamDoes(t *testing.T) {
	f := sagOf(t, loaded(t, "100"), "top")
	oak, err := wood.Lookup("white-oak")
	if err != nil {
		t.Fatal(err)
	}
	section, err := beam.Rectangle(inch(8), inch(1.125))
	if err != nil {
		t.Fatal(err)
	}
	sag := func(span, pounds float64) float64 {
		q, l, a := pounds/40*lbf/25.4, span*25.4, (40-span)/2*25.4
		return q * l * l * (5*l*l - 24*a*a) / (384 * oak.MOE * section.Inertia)
	}
	if lo, hi := sag(34, 100), 1.05*sag(34, 112); f.Figure.Value < lo || f.Figure.Value > hi {
		t.Errorf("%.4f mm, by hand between %.4f and %.4f", f.Figure.Value, lo, hi)
	}
	if want := 34 * 25.4 / 600; f.Limit.Value < 0.85*want || f.Limit.Value > 1.02*want {
		t.Errorf("limit %.3f mm, span ÷ 600 is %.3f", f.Limit.Value, want)
	}
}

// A panel's sag never shrinks when the load on it grows, it gets thinner or its span longer; in the end it sags half again,
// twice where it stands in the damp.
func TestASagNeverShrinksWhenTheLoadGrowsOrThePanelGetsThinner(t *testing.T) {
	base := sagOf(t, loaded(t, "60"), "top").Figure.Value
	for name, p := range map[string]*Piece{
		"heavier": loaded(t, "90"), "thinner": loaded(t, "60", "thickness: 1 1/8 in", "thickness: 7/8 in"), "longer": loaded(t, "60", "length: 40 in", "length: 48 in"),
	} {
		if got := sagOf(t, p, "top").Figure.Value; got <= base {
			t.Errorf("%s: %.4f mm, before %.4f", name, got, base)
		}
	}
	for humidity, factor := range map[string]float64{"30–60 %": 1.5, "50–75 %": 2} {
		p := loaded(t, "60", "humidity: 30–60 %", "humidity: "+humidity)
		at, end := sagOf(t, p, "top").Figure.Value, sagOf(t, p, "top, in the end").Figure.Value
		if end < 0.999*factor*at || end > 1.001*factor*at {
			t.Errorf("%s: %.4f mm at once, %.4f in the end", humidity, at, end)
		}
	}
}

func TestATopUnderAHeavyLoadFailsAndSaysHowToMendIt(t *testing.T) {
	f := sagOf(t, loaded(t, "900"), "top")
	if f.Verdict != finding.Fails || !strings.Contains(f.Mend, "in thick instead of 1 1/8 in") || len(f.Because) == 0 {
		t.Errorf("%+v", f)
	}
}

// A tread of eastern white pine, 48 × 12 × 1 in, on pipe uprights 5 in in from its ends, 30 lb to the foot, E 1.24·10⁶ psi:
// 0.050 in against 38 ÷ 600 = 0.063, it stands; with the supports out at its ends it would be 0.14 (a question asked in
// public, recomputed). Its own weight, some 8 % of the load, comes on top. Uprights further out: it sags more.
func TestMovingFlangesInStiffensATreadOnPipe(t *testing.T) {
	tread := func(inset string) finding.Finding {
		return sagOf(t, derive(t, table, "species: white-oak", "species: white-pine", "length: 40 in", "length: 48 in", "width: 20.5 in", "width: 12 in",
			"thickness: 1 1/8 in", "thickness: 1 in", "front corners of top, inset: 3 in", "front corners of top, inset: {along: "+inset+", across: 3 in}",
			"back corners of top, inset: 3 in", "back corners of top, inset: {along: "+inset+", across: 3 in}",
			"feet: caps", "feet: caps\nholds:\n  - {name: books, on: top, size: 48 × 12 × 10 in, weight: 120 lb}"), "top")
	}
	in, out := tread("5 in"), tread("2 1/4 in")
	if got := in.Figure.Value / 25.4; got < 0.050 || got > 0.050*1.08+0.005 || in.Verdict == finding.Fails {
		t.Errorf("%v, %.4f in", in.Verdict, got)
	}
	if out.Figure.Value < 1.5*in.Figure.Value || out.Verdict != finding.Fails {
		t.Errorf("further out %.4f mm, %v; further in %.4f", out.Figure.Value, out.Verdict, in.Figure.Value)
	}
}
