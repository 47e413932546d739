package beam_test

import (
	"math"
	"testing"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/beam"
)

func TestBeamsRefuseWhatHasNoMeaning(t *testing.T) {
	with := func(change func(*beam.Beam)) beam.Beam {
		b := joist
		change(&b)
		return b
	}
	sag := func(b beam.Beam, load float64) func() (figure.Figure, error) {
		return func() (figure.Figure, error) { return beam.Sag(b, load, beam.Even, beam.Resting) }
	}
	cases := map[string]func() (figure.Figure, error){
		"no span":            sag(with(func(b *beam.Beam) { b.Span = 0 }), 1),
		"no modulus":         sag(with(func(b *beam.Beam) { b.Modulus = 0 }), 1),
		"modulus no number":  sag(with(func(b *beam.Beam) { b.Modulus = math.NaN() }), 1),
		"no section":         sag(with(func(b *beam.Beam) { b.Section = beam.Section{} }), 1),
		"shear without area": sag(with(func(b *beam.Beam) { b.Shear = 500 }), 1),
		"load upwards":       sag(joist, -1),
		"unknown spread":     func() (figure.Figure, error) { return beam.Sag(joist, 1, "uneven", beam.Held) },
		"unknown ends":       func() (figure.Figure, error) { return beam.Sag(joist, 1, beam.Even, "glued") },
		"stress, no modulus": func() (figure.Figure, error) {
			return beam.Stress(with(func(b *beam.Beam) { b.Section.Modulus = 0 }), 1, beam.Even, beam.Held)
		},
		"overhang with shear": func() (figure.Figure, error) {
			return beam.Overhang(with(func(b *beam.Beam) { b.Shear, b.ShearArea = 1, 1 }), in, 1)
		},
		"negative overhang":  func() (figure.Figure, error) { return beam.OverhangTip(joist, -in, 1) },
		"share above one":    func() (figure.Figure, error) { return beam.YieldLoad(in, joist.Section, 200, beam.Held, 1.1) },
		"yield, ends":        func() (figure.Figure, error) { return beam.YieldLoad(in, joist.Section, 200, "glued", 1) },
		"safety below one":   func() (figure.Figure, error) { return beam.Allowed(figure.Figure{Value: 10}, 0.9) },
		"leg, ends":          func() (figure.Figure, error) { return beam.LegStiffness(joist, "glued") },
		"cantilever upwards": func() (figure.Figure, error) { return beam.Cantilever(joist, -1) },
		"limit of nothing":   func() (figure.Figure, error) { return beam.ElasticLimit(0) },
		"shrinking with age": func() (figure.Figure, error) { return beam.LastingSag(1, 0.5) },
	}
	for name, ask := range cases {
		if f, err := ask(); err == nil {
			t.Errorf("%s: got %v, want an error", name, f.Value)
		}
	}
}

func TestSectionsRefuseWhatHasNoMeaning(t *testing.T) {
	if _, err := beam.Rectangle(0, in); err == nil {
		t.Error("a board has a width")
	}
	if _, err := beam.Tube(in, in*51/100); err == nil {
		t.Error("a wall above half the diameter leaves no pipe")
	}
	if _, _, err := beam.Restraint(joist, -length.Millimetre); err == nil {
		t.Error("movement is given without its sign")
	}
}

func TestWordsOfAnAnswerAreRead(t *testing.T) {
	for _, word := range []string{"resting", "held"} {
		if e, err := beam.ParseEnds(word); err != nil || string(e) != word {
			t.Errorf("%q: %v, %v", word, e, err)
		}
	}
	for _, word := range []string{"even", "middle"} {
		if s, err := beam.ParseSpread(word); err != nil || string(s) != word {
			t.Errorf("%q: %v, %v", word, s, err)
		}
	}
	for _, word := range []string{"dry", "damp"} {
		if l, err := beam.ParseLasting(word); err != nil || string(l) != word {
			t.Errorf("%q: %v, %v", word, l, err)
		}
	}
	for _, parse := range []func(string) error{
		func(s string) error { _, err := beam.ParseEnds(s); return err },
		func(s string) error { _, err := beam.ParseSpread(s); return err },
		func(s string) error { _, err := beam.ParseLasting(s); return err },
	} {
		if parse("wet") == nil || parse("") == nil {
			t.Error("an unknown word is an error")
		}
	}
}
