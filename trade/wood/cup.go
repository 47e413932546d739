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
// hold from 6 to 14 % MC; past that there is no figure but an error.
func Cup(s Species, width, ringRadius length.Length, fromMC, toMC float64) (figure.Figure, error) {
	if err := strip(width, ringRadius, "ring radius"); err != nil {
		return figure.Figure{}, err
	}
	if err := moisture(fromMC, toMC); err != nil {
		return figure.Figure{}, err
	}
	if !linear(fromMC) || !linear(toMC) {
		return figure.Figure{}, fmt.Errorf("the cup from %s to %s %% MC is not known; write moisture contents from %g to %g %%",
			figure.Digits(fromMC, 4), figure.Digits(toMC, 4), LinearFrom, LinearTo)
	}
	half := width.MM() / 2
	rise := math.Abs(s.CT-s.CR) * math.Abs(toMC-fromMC) * half * math.Atan(half/ringRadius.MM())
	hollow := "hollow on the bark face"
	if toMC > fromMC {
		hollow = "hollow on the heart face"
	}
	f := figure.Of("cup", rise, figure.MM, &ringCupFormula,
		figure.In("C_T", s.CT, figure.PerPercent), figure.In("C_R", s.CR, figure.PerPercent),
		figure.In("MC1", fromMC, figure.Percent), figure.In("MC2", toMC, figure.Percent),
		figure.InLength("w", width), figure.InLength("R", ringRadius)).From(s.MoveSource.String())
	return assumeMovement(f, s).Assuming(hollow), nil
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
