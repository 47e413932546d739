package tongue

import (
	"errors"
	"math"

	"rodwright/figure"
	"rodwright/trade/wood"
)

// The shares of the mean strength of clear wood that a tongue may bear: a quarter across the grain, where boards of one
// species vary by 25 %, a third along it, under a load that stays for years; more under a hand's press of minutes.
const (
	acrossFactor = 4
	alongFactor  = 3
	handShare    = 1.6
	rolling      = 0.18 // of the shear strength along the grain, where the fibres roll over each other
)

var (
	acrossFormula = figure.Formula{
		Text: "limit = strength across the grain ÷ 4, × 1.6 for a hand's press", Source: "the factor 4: common practice, no source; 1.6 for ten minutes: NDS load duration factor, from memory",
		Range: "short grain, clear wood at 12 % MC",
	}
	alongFormula = figure.Formula{
		Text: "limit = strength in bending ÷ 3, × 1.6 for a hand's press", Source: "the factor 3: common practice, no source; 1.6 for ten minutes: NDS load duration factor, from memory",
		Range: "grain that runs out into the tongue, clear wood at 12 % MC",
	}
	shearLimit = figure.Formula{
		Text: "limit = shear strength ÷ 3, × 0.18 on short grain, × 1.6 for a hand's press", Source: "rolling shear is 18 to 28 % of that along the grain: Wood Handbook FPL-GTR-282 (2021) ch. 5, from memory; the factor 3: common practice, no source",
		Range: "clear wood at 12 % MC",
	}
)

// errUnknown says that the wood's table lacks a strength.
var errUnknown = errors.New("the strength of this wood")

// Limits returns the stress in bending and in shear, in MPa, that a tongue of a species may bear, under a hand's press
// or under a load that stays.
func Limits(s wood.Species, short, byHand bool) (bend, shear figure.Figure, err error) {
	share := 1.0
	if byHand {
		share = handShare
	}
	roll := 1.0
	if short {
		roll = rolling
	}
	across, ok := s.TensionAcross()
	if !ok || math.IsNaN(s.Shear) || math.IsNaN(s.MOR) {
		return bend, shear, errUnknown
	}
	bend = figure.Of("stress it may bear", share*s.MOR/alongFactor, figure.MPa, &alongFormula, figure.In("strength in bending", s.MOR, figure.MPa))
	if short {
		bend = figure.Of("stress it may bear", share*across.Value/acrossFactor, figure.MPa, &acrossFormula,
			figure.In("strength across the grain", across.Value, figure.MPa)).Assuming(across.Assumed...).From(across.Source)
	}
	shear = figure.Of("shear it may bear", share*roll*s.Shear/alongFactor, figure.MPa, &shearLimit, figure.In("shear strength", s.Shear, figure.MPa))
	return bend, shear, nil
}
