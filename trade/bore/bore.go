// Package bore holds what a hole in a panel must be: wide enough for the largest thing that goes through,
// and within reach of the hole saw.
//
// The words: the section of a part is the circle it needs to pass; needs is that and the clearance; the bit
// is the next size up that is sold. Start with [Section] and [Needs].
package bore

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/pipe"
	"rodwright/trade/within"
)

// Step is the step in which inch bits and hole saws are taken: 1/16 in. Metric ones go by whole millimetres.
const Step = length.Inch / 16

var (
	needsFormula = figure.Formula{Text: "needs = section + clearance", Source: "geometry; the clearance is common practice, no source"}
	bitFormula   = figure.Formula{Text: "bit = needs, up to the next step", Source: "bits as sold, common practice, no source",
		Range: "inch bits by 1/16 in, metric ones by whole millimetres"}
	bentFormula = figure.Formula{Text: "straight = 2·A²/(H + 2A) + H", Source: "geometry: the circle round the band H of one mouth and the end of an arm A square to it",
		Range: "elbows and tees carried straight through along one of their runs"}
	sidesFormula = figure.Formula{Text: "sides = 1 if depth ≥ thickness, 2 if 2·depth ≥ thickness", Source: "common practice, no source",
		Range: "pilot through first, then the saw from one face or from both"}
)

// Section returns the diameter of what must go through for the given part: the pipe itself for a bare end, the
// plate for a flange, the band of a mouth for every other fitting. The band of an elbow or a tee passes while
// its arm does not: see [Straight].
func Section(f pipe.Fitting) length.Length {
	if f.Kind == pipe.Flange {
		return f.Plate
	}
	return f.Band
}

// Bent reports whether the fitting has an arm that sticks out beside its run.
func Bent(f pipe.Fitting) bool {
	switch f.Kind {
	case pipe.Elbow90, pipe.Tee:
		return true
	}
	return false
}

// Straight returns, in mm, the diameter of the hole through which an elbow or a tee passes straight, arm and
// all: the least circle round the band H of one mouth and the end, H wide, of an arm A long square to it.
//
//	D = 2·A²/(H + 2A) + H
func Straight(f pipe.Fitting) figure.Figure {
	a, h := f.CentreToEnd.MM(), f.Band.MM()
	return figure.Of("straight", 2*a*a/(h+2*a)+h, figure.MM, &bentFormula,
		figure.InLength("A", f.CentreToEnd), figure.InLength("H", f.Band))
}

// Needs returns the least diameter of a hole through which a section passes with the given clearance on the
// diameter.
func Needs(section, clearance length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("section", section), within.Room("clearance", clearance)); err != nil {
		return figure.Figure{}, err
	}
	return figure.OfLength("needs", section+clearance, &needsFormula,
		figure.InLength("section", section), figure.InLength("clearance", clearance)), nil
}

// Bit returns the smallest bit that is no smaller than needs: in steps of 1/16 in, or of whole millimetres.
func Bit(needs length.Length, metric bool) figure.Figure {
	step := Step
	if metric {
		step = length.Millimetre
	}
	bit := (needs + step - 1) / step * step
	return figure.OfLength("bit", bit, &bitFormula, figure.InLength("needs", needs))
}

// Sides returns from how many faces a hole saw of the given depth must cut a panel: 1, or 2 where it is
// shallower than the panel. One that doesn't reach the middle is an error: the cuts would not meet.
func Sides(thickness, depth length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("thickness", thickness), within.Length("depth of the saw", depth)); err != nil {
		return figure.Figure{}, err
	}
	if 2*depth < thickness {
		return figure.Figure{}, &within.Error{Name: "depth of the saw", Got: figure.Digits(depth.MM(), 4) + " mm",
			Want: "at least half the thickness, " + figure.Digits(thickness.MM()/2, 4) + " mm: else the cuts from both faces do not meet"}
	}
	sides := math.Ceil(float64(thickness) / float64(depth))
	return figure.Of("sides", sides, figure.Count, &sidesFormula,
		figure.InLength("depth", depth), figure.InLength("thickness", thickness)), nil
}
