package screw

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/trade/within"
)

// wetFrom is the moisture content in percent above which the design specification takes wood for wet.
const wetFrom = 19.0

var (
	wetFormula = figure.Formula{
		Text:   "kept = design up to 19 % MC, 0.7·design above",
		Source: "National Design Specification for Wood Construction Table 11.3.3, wet service of lag and wood screws, from memory",
		Range:  "wood seasoned when it is put together",
	}
	lastingFormula = figure.Formula{
		Text:   "kept = 0.9·design",
		Source: "National Design Specification for Wood Construction Table 2.3.2, load duration, from memory",
		Range:  "loads that stay more than ten years; shorter ones, lifting among them, are given no more than the design value here",
	}
	groupFormula = figure.Formula{
		Text:   "all = n·one",
		Source: "National Design Specification for Wood Construction 11.3.6: no group action below 1/4 in of diameter, from memory",
		Range:  "screws that pull alike, each in its own wood",
	}
	lagFormula = figure.Formula{
		Text:   "W = 1800·G^1.5·D^0.75·L (lbf, in)",
		Source: "National Design Specification for Wood Construction (2018) 12.2-1 and Table 12.2A, lag screws",
		Range:  "side grain, D 1/4 to 1 1/4 in, thread without its point",
	}
)

// Wet returns what is left in newtons of a design value where the wood gets as wet as the given moisture
// content in percent.
func Wet(design, mc float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("design value", design, figure.N), within.Between("moisture content", mc, 0, 200, figure.Percent))
	if err != nil {
		return figure.Figure{}, err
	}
	share := 1.0
	if mc > wetFrom {
		share = 0.7
	}
	return figure.Of("kept when wet", share*design, figure.N, &wetFormula,
		figure.In("design", design, figure.N), figure.In("MC", mc, figure.Percent)), nil
}

// Lasting returns what is left in newtons of a design value under a load that stays for years.
func Lasting(design float64) (figure.Figure, error) {
	if err := within.NotNegative("design value", design, figure.N); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("kept under a lasting load", 0.9*design, figure.N, &lastingFormula, figure.In("design", design, figure.N)), nil
}

// Group returns what n screws hold together in newtons when one holds the given load: n times as much, as
// screws this thin share their load evenly.
func Group(one float64, n int) (figure.Figure, error) {
	if err := cmp.Or(within.NotNegative("load on one", one, figure.N), within.Counted("screws", n, 1, 1000)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("together", one*float64(n), figure.N, &groupFormula,
		figure.In("n", float64(n), figure.Count), figure.In("one", one, figure.N)), nil
}

// Lag returns the pull in newtons to design for on a coarse thread of the given outer diameter and length in
// mm that is turned into side grain of wood with specific gravity G:
//
//	W = 1800·G^1.5·D^0.75·L (lbf and inches)
func Lag(g, diameter, thread float64) (figure.Figure, error) {
	err := cmp.Or(within.Between("specific gravity", g, leastG, mostG, figure.Ratio),
		within.Between("diameter", diameter, 0.25*25.4, 1.25*25.4, figure.MM), within.Between("thread in the wood", thread, 0, 300, figure.MM))
	if err != nil {
		return figure.Figure{}, err
	}
	w := 1800 * math.Pow(g, 1.5) * math.Pow(diameter/25.4, 0.75) * thread / 25.4 * poundForce
	return figure.Of("pull to design for", w, figure.N, &lagFormula,
		figure.In("G", g, figure.Ratio), figure.In("D", diameter, figure.MM), figure.In("L", thread, figure.MM)), nil
}

var plateFormula = figure.Formula{
	Text:   "F = M·(R + r) ÷ (n·(R² + r²/2))",
	Source: "statics, any mechanics text: screws pull as they are far from the rim about which the plate turns",
	Range:  "a stiff round plate, n screws, three or more, evenly round a circle of radius r, R the rim's",
}

// PlatePull returns the pull in newtons on the worst of n screws that hold a round plate against a moment in
// N·mm, however the plate is turned. R and r are the radii in mm of its rim and of the circle of its screws.
// Of fewer than three screws the farthest pulls alone.
func PlatePull(moment, rim, circle float64, n int) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("moment", moment, figure.NMM), within.Positive("radius of the plate", rim, figure.MM),
		within.Between("radius of the screws", circle, 0, rim, figure.MM), within.Counted("screws", n, 1, 100))
	if err != nil {
		return figure.Figure{}, err
	}
	pull := moment / (rim + circle)
	if n >= 3 {
		pull = moment * (rim + circle) / (float64(n) * (rim*rim + circle*circle/2))
	}
	return figure.Of("pull on the worst screw", pull, figure.N, &plateFormula, figure.In("M", moment, figure.NMM),
		figure.In("R", rim, figure.MM), figure.In("r", circle, figure.MM), figure.In("n", float64(n), figure.Count)), nil
}
