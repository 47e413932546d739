package beam

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// PipeYield is the yield stress taken for furniture pipe when none is given, MPa: 30 000 psi, the least of
// ASTM A53 grade A. Better pipe has 35 000 psi (grade B).
const PipeYield = 206.84

var (
	restingYield = figure.Formula{Text: "P = 4Zσ/L", Source: simpleBeam, Range: "load at mid-span, ends resting; first yield of the outermost fibre"}
	heldYield    = figure.Formula{
		Text: "P = 8·Z·share·σ/L", Source: simpleBeam,
		Range: "load at mid-span, ends held in threads where the share of the section modulus is left",
	}
)

// YieldLoad returns the load in newtons at mid-span from which a beam stays bent.
//
// Resting ends carry no moment and the full section at mid-span decides: P = 4Zσ/L. Held ends take as much
// moment as the middle, at the thread root, where only the given share of the section modulus is left
// (1 for a beam without threads): P = 8·Z·share·σ/L.
func YieldLoad(span length.Length, s Section, yield float64, e Ends, share float64) (figure.Figure, error) {
	_, err := ParseEnds(string(e))
	err = cmp.Or(err, within.Length("span", span), within.Positive("section modulus", s.Modulus, figure.MM3),
		within.Positive("yield stress", yield, figure.MPa), within.Between("share left at the thread root", share, 0.1, 1, figure.Ratio))
	if err != nil {
		return figure.Figure{}, err
	}
	in := []figure.Input{figure.In("Z", s.Modulus, figure.MM3), figure.In("σ", yield, figure.MPa), figure.InLength("L", span)}
	f, p := &restingYield, 4*s.Modulus*yield/span.MM()
	if e == Held {
		f, p = &heldYield, 8*s.Modulus*share*yield/span.MM()
		in = append(in, figure.In("share", share, figure.Ratio))
	}
	return figure.Of("load from which it stays bent", p, figure.N, f, in...).Assuming(holding(e)), nil
}

var allowedFormula = figure.Formula{Text: "allowed = P ÷ safety", Source: shelfPractice, Range: "safety 1.5 to 3; 2 by default"}

// Allowed returns the load in newtons that a beam may be given: its yield load ÷ a safety of 1 or more.
func Allowed(yields figure.Figure, safety float64) (figure.Figure, error) {
	err := cmp.Or(within.Positive("yield load", yields.Value, figure.N), within.Between("safety", safety, 1, 20, figure.Ratio))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("allowed load", yields.Value/safety, figure.N, &allowedFormula,
		figure.In("P", yields.Value, figure.N), figure.In("safety", safety, figure.Ratio)).Assuming(yields.Assumed...), nil
}
