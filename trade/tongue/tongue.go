// Package tongue holds the strength of the wood that stands free beside a notch or a hole at an edge.
//
// The words: a tongue stands out from its root beside a notch, so far as the notch is deep; a bridge is held at both
// its ends, beside a hole. Its breadth is from the opening's wall to the edge or to the next opening. Where the
// breadth lies along the grain the grain of the tongue is short: it breaks along the grain at its root. Start with [Stress].
package tongue

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Tongue is wood that stands free.
type Tongue struct {
	Out     length.Length // how far it stands out from its root; of a bridge, from end to end
	Broad   length.Length // its breadth at the root
	Thick   length.Length
	AtBoth  bool // a bridge
	IsShort bool // its grain runs across it
}

var (
	stressFormula = figure.Formula{
		Text:   "σ = 6·P·L ÷ (b·t²), b = min(breadth, 2·L), or 6·P·L ÷ (breadth²·t) where that is more",
		Source: "cantilever, any mechanics text; that a load on the free edge of a plate is borne by twice its arm, 0.509 P a unit of width: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, infinite cantilever plate, from memory",
		Range:  "pressed down or sideways at its tip; a bridge is two tongues of half its length, each with half the load",
	}
	shearFormula = figure.Formula{
		Text: "τ = 1.5·P ÷ (b·t), b = min(breadth, 2·L)", Source: "rectangular section, any mechanics text", Range: "at the root of a tongue",
	}
)

// arm returns the arm and the load of one tongue; a bridge is two of half its length and load.
func (t Tongue) arm(loadN float64) (arm, load float64) {
	if t.AtBoth {
		return t.Out.MM() / 2, loadN / 2
	}
	return t.Out.MM(), loadN
}

func (t Tongue) within(loadN float64) error {
	return cmp.Or(within.Length("length of the tongue", t.Out), within.Length("breadth of the tongue", t.Broad),
		within.Length("thickness", t.Thick), within.NotNegative("load", loadN, figure.N))
}

// Stress returns the bending stress in MPa at the root of a tongue that a load presses at its tip, down or sideways,
// whichever is worse. A size of zero is an error.
func Stress(t Tongue, loadN float64) (figure.Figure, error) {
	if err := t.within(loadN); err != nil {
		return figure.Figure{}, err
	}
	arm, load := t.arm(loadN)
	w, thick := t.Broad.MM(), t.Thick.MM()
	stress := 6 * load * arm * max(1/(min(w, 2*arm)*thick*thick), 1/(w*w*thick))
	return figure.Of("stress at the root", stress, figure.MPa, &stressFormula, t.inputs(arm, load)...), nil
}

// Shear returns the shear stress in MPa at the root of the same tongue.
func Shear(t Tongue, loadN float64) (figure.Figure, error) {
	if err := t.within(loadN); err != nil {
		return figure.Figure{}, err
	}
	arm, load := t.arm(loadN)
	return figure.Of("shear at the root", 1.5*load/(min(t.Broad.MM(), 2*arm)*t.Thick.MM()), figure.MPa, &shearFormula, t.inputs(arm, load)...), nil
}

func (t Tongue) inputs(arm, load float64) []figure.Input {
	return []figure.Input{figure.In("P", load, figure.N), figure.In("L", arm, figure.MM), figure.InLength("breadth", t.Broad), figure.InLength("t", t.Thick)}
}
