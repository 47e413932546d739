// Package abrasive holds the sander's rules: which grits to go through, and how long a face takes.
//
// Sanding dust harms lungs and burns: extraction and a mask are the usual caution. Start with [Steps].
package abrasive

import (
	"cmp"
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"sync"

	"rodwright/figure"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed grits.csv
var gritsCSV string

// Caution is what to say wherever wood is sanded.
const Caution = "wood dust harms the lungs and burns in the air: extraction, a mask, and no piles of dust near sparks"

var grits = sync.OnceValue(func() []int {
	var out []int
	for _, r := range table.Read(gritsCSV) {
		g, _ := r.Int("grit")
		out = append(out, g)
	}
	return out
})

// Grits returns the grits that are sold, coarse before fine: common practice, no source.
func Grits() []int { return append([]int(nil), grits()...) }

// Steps returns the grits to go through from one to another, both included: as few as can be with no step
// of more than one and a half times (common practice, no source). Each takes out the scratches of the one
// before. A grit that is not sold is an error with the nearest ones.
func Steps(from, to int) ([]int, error) {
	if err := cmp.Or(sold(from), sold(to)); err != nil {
		return nil, err
	}
	if to < from {
		return nil, fmt.Errorf("from grit %d to %d goes coarser; the last grit must be finer than the first", from, to)
	}
	out := []int{from}
	for at := from; at != to; {
		next := at
		for _, g := range grits() {
			if g > at && 2*g <= 3*at && g <= to {
				next = g
			}
		}
		out = append(out, next)
		at = next
	}
	return out, nil
}

// sold returns an error when no such grit is sold. The list has no gap of more than one and a half times,
// so that Steps always gets on.
func sold(grit int) error {
	if slices.Contains(grits(), grit) {
		return nil
	}
	var known []string
	for _, g := range grits() {
		known = append(known, strconv.Itoa(g))
	}
	return table.Unknown("grit", strconv.Itoa(grit), known)
}

// squareFoot is a square foot in m², exact from the international foot of 1959.
const squareFoot = 0.3048 * 0.3048

var hoursFormula = figure.Formula{
	Text: "t = 1 h for each square foot", Source: "common practice, no source: an estimator's rule for one table face, prepared and polished",
	Range: "until the shop's own records say otherwise",
}

// Hours returns the time in hours to prepare and polish a face of the given area in m², by an estimator's
// rule of one hour a square foot. It includes sanding and finishing; about 30 % of all hours of a piece.
func Hours(area float64) (figure.Figure, error) {
	if err := within.NotNegative("area", area, figure.M2); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("sanding and polishing", area/squareFoot, figure.Hours, &hoursFormula, figure.In("area", area, figure.M2)).
		Assuming("an hour for each square foot, an estimator's rule; the shop's own records win"), nil
}

// DiscLife is the area in m² that one sanding disc does at one grit before it is dull: from memory, until
// the shop's own records say otherwise.
const DiscLife = 0.5

var discFormula = figure.Formula{Text: "discs = ⌈area ÷ life⌉ at each grit", Source: "common practice, no source"}

// Discs returns how many discs sanding an area in m² through a number of grits takes, at a life of one disc
// in m²; a life of zero takes [DiscLife] and says so.
func Discs(area float64, steps int, life float64) (figure.Figure, error) {
	err := cmp.Or(within.Between("area", area, 0, 1e6, figure.M2), within.Counted("grits", steps, 0, len(grits())), within.Between("life of a disc", life, 0, 1000, figure.M2))
	if err != nil {
		return figure.Figure{}, err
	}
	var assumed []string
	if life == 0 {
		life = DiscLife
		assumed = []string{"a disc does 0.5 m², from memory; the shop's own records win"}
	}
	n, ok := within.Whole(area / life)
	if !ok {
		return figure.Figure{}, &within.Error{Name: "life of a disc", Got: figure.Digits(life, 3) + " m²", Want: "more than nothing"}
	}
	return figure.Of("discs", float64(n*steps), figure.Count, &discFormula, figure.In("area", area, figure.M2),
		figure.In("grits", float64(steps), figure.Count), figure.In("life", life, figure.M2)).Assuming(assumed...), nil
}
