package check

import (
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/trade/wood"
)

var throughYearFormula = figure.Formula{
	Text:   "change at a time = change at that end of the year · (MC − build) ÷ (end − build)",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2 and 13-3, which are both straight in MC2",
	Range:  "MC between the day the panel is made and that end of the year; the figure is the greatest less the least",
}

// knot is a moisture content, and how much the wood has changed by then.
type knot struct{ mc, change float64 }

// year is how much some wood of a panel has changed since the day it was made, at times of the year.
type year struct {
	times   []string
	changes []float64 // mm
}

// throughYear returns the change of some wood of panel i in every month, or at the driest, as built and at the
// dampest where no city is known.
func (p *Piece) throughYear(i int, s season) year {
	w := p.Panels[i].Spec.Wood
	if w == nil {
		return year{}
	}
	air := p.Air.Months
	y := year{times: []string{"driest", "as built", "dampest"}}
	if air == nil {
		air = []float64{p.Air.DryMC, w.Moisture, p.Air.WetMC}
	} else {
		months := wood.MonthNames()
		y.times = months[:]
	}
	green := w.Species.GreenPoint // wetter wood does not move
	built := knot{min(w.Moisture, green), 0}
	dry, wet := knot{reached(s.Dry, p.Air.DryMC), s.Dry.Value}, knot{reached(s.Wet, p.Air.WetMC), s.Wet.Value}
	for _, mc := range air {
		y.changes = append(y.changes, changeAt(min(mc, green), dry, built, wet))
	}
	return y
}

// reached returns the moisture up to which a change was reckoned: that of the air unless the wood stops moving, or
// its coefficients end, before.
func reached(change figure.Figure, air float64) float64 {
	for _, in := range change.Inputs {
		if in.Name == "MC2" {
			return in.Value
		}
	}
	return air
}

// changeAt returns the change at a moisture content, on straight lines from the day the wood was made to the
// driest and to the dampest; from one to the other where it was made drier or damper than both.
func changeAt(mc float64, dry, built, wet knot) float64 {
	switch {
	case built.mc <= dry.mc || built.mc >= wet.mc:
		if mc == built.mc {
			return 0
		}
		return line(mc, dry, wet)
	case mc < built.mc:
		return line(mc, dry, built)
	}
	return line(mc, built, wet)
}

// line is the straight line through two knots, level beyond them.
func line(mc float64, a, b knot) float64 {
	switch {
	case mc <= a.mc || b.mc <= a.mc:
		return a.change
	case mc >= b.mc:
		return b.change
	}
	return a.change + (b.change-a.change)*(mc-a.mc)/(b.mc-a.mc)
}

// figure tells the whole year of some wood at once: the greatest change less the least.
func (y year) figure(name string, s season) figure.Figure {
	var in []figure.Input
	least, most := 0.0, 0.0
	for n, c := range y.changes {
		in = append(in, figure.In(y.times[n], c, figure.MM))
		if n == 0 {
			least, most = c, c
		}
		least, most = min(least, c), max(most, c)
	}
	return figure.Of(name, most-least, figure.MM, &throughYearFormula, in...).From(s.Dry.Source).Assuming(s.Dry.Assumed...)
}

// line returns how a distance goes through the year that changes with the wood, or against it where sign is −1.
func (y year) line(name string, built length.Length, sign float64) finding.Line {
	l := finding.Line{Name: name}
	for _, c := range y.changes {
		l.Values = append(l.Values, built.MM()+sign*c)
	}
	return l
}

// yearOf returns a picture of lines over the year, with the least they may come to; nothing set where there is
// none.
func yearOf(y year, limit length.Length, lines ...finding.Line) finding.Picture {
	if len(y.times) == 0 || len(lines) == 0 {
		return finding.Picture{}
	}
	return finding.Picture{Year: &finding.Year{Times: y.times, Lines: lines, Limit: limit.MM()}}
}

// room pictures what is left through the year of the movement that is allowed either way, in mm.
func (y year) room(allowed float64) finding.Picture {
	l := finding.Line{Name: "room that holes and legs still give"}
	for _, c := range y.changes {
		l.Values = append(l.Values, allowed-math.Abs(c))
	}
	return yearOf(y, 0, l)
}
