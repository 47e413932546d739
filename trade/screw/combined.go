package screw

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/trade/within"
)

var combinedFormula = figure.Formula{
	Text:   "share = max((V²÷Z + P²÷W) ÷ √(V² + P²), V÷Z, P÷W)",
	Source: "National Design Specification for Wood Construction 12.4.1: Zα = W·Z ÷ (W·cos²α + Z·sin²α), from memory",
	Range:  "one wood or lag screw, loads at once along it and across it; 1 is all it is designed for",
}

// Combined returns which share of what one screw is designed for is used when it is pulled and pushed across
// at once: 1 is all, 2 twice too much. Loads and design values are in newtons, none below 0.
//
//	share = max((V²÷Z + P²÷W) ÷ √(V² + P²), V÷Z, P÷W)
//
// P is the pull along the screw, V the load across it, W its withdrawal and Z its lateral design value. The
// first term is R ÷ Zα of the design specification, with R = √(V² + P²) at the angle α from the wood's surface;
// by that alone a pull would relieve a screw that is weak across, so the share is held at no less than
// each load gives by itself and never falls when a load grows. Without load the share is 0. A design value
// of 0 is an error where its load is not 0: nothing may be hung there, as on a pull out of end grain.
func Combined(pull, across, withdrawal, lateral float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("pull along the screw", pull, figure.N), within.NotNegative("load across the screw", across, figure.N),
		carries("withdrawal design value", pull, withdrawal), carries("lateral design value", across, lateral))
	if err != nil {
		return figure.Figure{}, err
	}
	along, side := part(pull, withdrawal), part(across, lateral)
	share := max(along, side)
	if both := math.Hypot(pull, across); both > 0 {
		share = max(share, side*(across/both)+along*(pull/both))
	}
	return figure.Of("share of what the screw is designed for", share, figure.Ratio, &combinedFormula,
		figure.In("P", pull, figure.N), figure.In("V", across, figure.N), figure.In("W", withdrawal, figure.N), figure.In("Z", lateral, figure.N)), nil
}

// carries returns an error when there is a load and nothing to carry it.
func carries(name string, load, design float64) error {
	if load > 0 {
		return within.Positive(name, design, figure.N)
	}
	return within.NotNegative(name, design, figure.N)
}

// part is load ÷ design, and 0 without load.
func part(load, design float64) float64 {
	if load == 0 {
		return 0
	}
	return load / design
}
