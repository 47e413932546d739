package wood

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
)

var ringCupFormula = figure.Formula{
	Text:   "rise = |C_T − C_R|·|MC2 − MC1|·(w/2)·atan(w/2R)",
	Source: "common practice, no source: the arc of a strip whose faces lie unlike to the rings",
	Range:  "one free flat-sawn strip, between 6 and 14 % MC",
}

var greenCupFormula = figure.Formula{
	Text:   "rise = |ε_T − ε_R|·(w/2)·atan(w/2R), ε = (MC2 − MC1)/(100·F/S − F + MC1)",
	Source: "common practice, no source, for the arc of a strip whose faces lie unlike to the rings; ε by Wood Handbook FPL-GTR-282 (2021) eq. 13-3",
	Range:  "one free flat-sawn strip, either end outside 6 to 14 % MC",
}

var faceCupFormula = figure.Formula{
	Text:   "rise = C·δMC·w²/(8t)",
	Source: "common practice, no source: the arc of a strip whose faces differ in width",
	Range:  "one free strip, small rise",
}

// Cup returns the rise in mm of the arc to which one free flat-sawn strip of the given width bends when
// its moisture content goes from fromMC to toMC, with ringRadius the radius of the rings at its middle:
//
//	rise = |C_T − C_R| · |MC2 − MC1| · (w/2) · atan(w/2R)
//
// It is hollow on the bark face when drying and grows with about the square of the width. The coefficients
// hold from 6 to 14 % MC; when either end lies outside, the shares by which both directions change go by Wood
// Handbook eq. 13-3, as in [Change].
func Cup(s Species, width, ringRadius length.Length, fromMC, toMC float64) (figure.Figure, error) {
	if err := strip(width, ringRadius, "ring radius"); err != nil {
		return figure.Figure{}, err
	}
	unlike, f, err := Unlike(s, fromMC, toMC)
	if err != nil {
		return f, err
	}
	half := width.MM() / 2
	f.Name, f.Unit, f.Value = "cup", figure.MM, unlike*half*math.Atan(half/ringRadius.MM())
	f.Inputs = append(f.Inputs, figure.InLength("w", width), figure.InLength("R", ringRadius))
	if toMC > fromMC {
		return f.Assuming("hollow on the heart face"), nil
	}
	return f.Assuming("hollow on the bark face"), nil
}

// Unlike returns by which share of its width wood changes more along its rings than across them, without a sign,
// and the figure of it.
func Unlike(s Species, fromMC, toMC float64) (float64, figure.Figure, error) {
	if err := moisture(fromMC, toMC); err != nil {
		return 0, figure.Figure{}, err
	}
	mcs := []figure.Input{figure.In("MC1", fromMC, figure.Percent), figure.In("MC2", toMC, figure.Percent)}
	if linear(fromMC) && linear(toMC) && !math.IsNaN(s.CT-s.CR) {
		unlike := math.Abs(s.CT-s.CR) * math.Abs(toMC-fromMC)
		f := figure.Of("unlike change", unlike, figure.Ratio, &ringCupFormula, append([]figure.Input{
			figure.In("C_T", s.CT, figure.PerPercent), figure.In("C_R", s.CR, figure.PerPercent)}, mcs...)...)
		return unlike, assumeMovement(f.From(s.MoveSource.String()), s), nil
	}
	st, sr := s.Shrinkage(Flat), s.Shrinkage(Quarter)
	if !(st > 0 && sr > 0) {
		return 0, figure.Figure{}, fmt.Errorf("no shrinkage of %s both ways is known; take another species, or keep within %g to %g %% MC", s.ID, LinearFrom, LinearTo)
	}
	from, to := min(fromMC, s.GreenPoint), min(toMC, s.GreenPoint)
	unlike := math.Abs(greenChange(1, st, s.GreenPoint, from, to) - greenChange(1, sr, s.GreenPoint, from, to))
	f := figure.Of("unlike change", unlike, figure.Ratio, &greenCupFormula, append([]figure.Input{
		figure.In("S_T", st, figure.Percent), figure.In("S_R", sr, figure.Percent), figure.In("F", s.GreenPoint, figure.Percent)}, mcs...)...)
	return unlike, assumeMovement(f.From(s.ShrinkFrom.String()), s), nil
}

// FlatEnough returns the greatest width of a free strip whose rise is no more than the given share of its width,
// when its wood changes unlike by unlike, with the rings' radius at its middle:
//
//	w = 2R · tan(2·share ÷ unlike)
//
// Where no width cups that much it is length.Max.
func FlatEnough(unlike, share float64, ringRadius length.Length) length.Length {
	if angle := 2 * share / unlike; unlike > 0 && angle < math.Pi/2 {
		if w := 2 * ringRadius.MM() * math.Tan(angle); w < length.Max.MM() {
			return length.FromMM(w)
		}
	}
	return length.Max
}

// FaceCup returns the rise in mm of the arc to which a free strip bends when one face is wetter than the
// other by faceMC points of MC, as when only one is coated:
//
//	rise = C · δMC · w² ÷ (8 t)
//
// The coefficients cover 6 to 14 % MC, so faces more than 8 points apart are an error.
func FaceCup(s Species, cut Cut, width, thickness length.Length, faceMC float64) (figure.Figure, error) {
	if err := strip(width, thickness, "thickness"); err != nil {
		return figure.Figure{}, err
	}
	if err := moisture(math.Abs(faceMC)); err != nil {
		return figure.Figure{}, err
	}
	if math.Abs(faceMC) > LinearTo-LinearFrom {
		return figure.Figure{}, fmt.Errorf("faces %s points of MC apart are past what the coefficients cover; write at most %g",
			figure.Digits(math.Abs(faceMC), 4), LinearTo-LinearFrom)
	}
	c := s.Coefficient(cut)
	rise := c * math.Abs(faceMC) * width.MM() * width.MM() / (8 * thickness.MM())
	f := figure.Of("cup from unlike faces", rise, figure.MM, &faceCupFormula,
		figure.In("C", c, figure.PerPercent), figure.In("δMC", math.Abs(faceMC), figure.Percent),
		figure.InLength("w", width), figure.InLength("t", thickness)).From(s.MoveSource.String())
	return assumeMovement(f, s), nil
}

func strip(width, other length.Length, name string) error {
	if width <= 0 || other <= 0 || max(width, other) > length.Max {
		return fmt.Errorf("a strip %s mm wide with a %s of %s mm can't be; write both above zero and at most 1 km",
			figure.Digits(width.MM(), 4), name, figure.Digits(other.MM(), 4))
	}
	return nil
}
