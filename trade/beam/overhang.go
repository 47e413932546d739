package beam

import (
	"cmp"
	"fmt"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

const overhangSource = "Roark's Formulas for Stress and Strain, beams with equal overhangs, from memory"

var (
	overhangFormula = figure.Formula{
		Text: "δ = wL²(5L² − 24a²)/(384EI)", Source: overhangSource,
		Range: "uniform load over the whole length, equal overhangs a beyond two supports L apart",
	}
	tipFormula = figure.Formula{
		Text: "δ = wa(3a³ + 6a²L − L³)/(24EI)", Source: overhangSource,
		Range: "as above, at the free end; negative: the end rises",
	}
)

// Overhang returns the sag in mm halfway between two supports of a beam that reaches the given distance
// past each of them, under a whole load in newtons spread over all of its length:
//
//	δ = w·L²·(5L² − 24a²)/(384·E·I), w = W/(L + 2a)
//
// Past a = L·√(5/24) the middle rises and the figure is negative.
func Overhang(b Beam, past length.Length, load float64) (figure.Figure, error) {
	w, in, err := overhung(b, past, load)
	if err != nil {
		return figure.Figure{}, err
	}
	l, a := b.Span.MM(), past.MM()
	v := w * l * l * (5*l*l - 24*a*a) / (384 * b.Modulus * b.Section.Inertia)
	return finite(figure.Of("sag between the supports", v, figure.MM, &overhangFormula, in...))
}

// OverhangTip returns the sag in mm of the free ends of the same beam, negative where they rise:
//
//	δ = w·a·(3a³ + 6a²L − L³)/(24·E·I)
func OverhangTip(b Beam, past length.Length, load float64) (figure.Figure, error) {
	w, in, err := overhung(b, past, load)
	if err != nil {
		return figure.Figure{}, err
	}
	l, a := b.Span.MM(), past.MM()
	v := w * a * (3*a*a*a + 6*a*a*l - l*l*l) / (24 * b.Modulus * b.Section.Inertia)
	return finite(figure.Of("sag of the free ends", v, figure.MM, &tipFormula, in...))
}

func overhung(b Beam, past length.Length, load float64) (perMM float64, in []figure.Input, err error) {
	err = cmp.Or(b.check(), within.Room("overhang", past), within.NotNegative("load", load, figure.N))
	if err != nil {
		return 0, nil, err
	}
	if b.Shear > 0 {
		return 0, nil, fmt.Errorf("the overhang formula leaves shear out; a beam without a shear modulus is right")
	}
	w := load / (b.Span + 2*past).MM()
	return w, []figure.Input{
		figure.In("w", w, figure.NPerMM), figure.InLength("L", b.Span), figure.InLength("a", past),
		figure.In("E", b.Modulus, figure.MPa), figure.In("I", b.Section.Inertia, figure.MM4),
	}, nil
}
