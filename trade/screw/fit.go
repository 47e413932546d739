package screw

import (
	"cmp"
	_ "embed"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed lengths.csv
var lengthsCSV string

var stockLengths = sync.OnceValue(func() []length.Length {
	var out []length.Length
	for _, r := range table.Read(lengthsCSV) {
		out = append(out, r.Inches("length_in"))
	}
	return out
})

// StockLengths returns the lengths wood screws are sold in, short before long: common practice, no source.
func StockLengths() []length.Length { return append([]length.Length(nil), stockLengths()...) }

// Skin is the wood left between a screw's point and the far face of the panel: 1/8 in, common practice, no
// source.
const Skin = length.Inch / 8

var (
	longestFormula = figure.Formula{Text: "length ≤ grip + panel − 1/8 in", Source: "common practice, no source", Range: "lengths that are sold"}
	threadFormula  = figure.Formula{Text: "thread in the wood = min(2/3 · length, length − grip)", Source: "a screw supplier's chart", Range: "wood screws, 1 in and longer; shorter ones are taken alike"}
)

// LongestFor returns the longest screw that is sold and does not come through: at most grip + panel − 1/8
// in. It reports false when even the shortest does.
func LongestFor(grip, panel length.Length) (length.Length, bool) {
	room, found := grip+panel-Skin, length.Length(0)
	for _, l := range stockLengths() {
		if l <= room && l > grip {
			found = l
		}
	}
	return found, found > 0
}

// Longest is [LongestFor] with its reason. It is an error when no screw that is sold fits.
func Longest(grip, panel length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Room("grip", grip), within.Length("panel", panel)); err != nil {
		return figure.Figure{}, err
	}
	l, ok := LongestFor(grip, panel)
	if !ok {
		return figure.Figure{}, &within.Error{
			Name: "room for a screw", Got: length.ThirtySecond.Text(grip + panel - Skin),
			Want: "at least " + length.ThirtySecond.Text(stockLengths()[0]) + " and more than the grip, the shortest screw sold; take a thicker panel, inserts or bolts",
		}
	}
	return figure.OfLength("screw length", l, &longestFormula, figure.InLength("grip", grip), figure.InLength("panel", panel)), nil
}

// Thread returns the threaded length of a wood screw, about two thirds of the whole.
func Thread(screw length.Length) length.Length { return screw.Scale(2, 3) }

// ThreadIn returns the length of thread, in mm, that holds in the wood when a screw goes through the given
// grip: two thirds of the screw, or all that reaches the wood when that is less.
func ThreadIn(screw, grip length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("screw length", screw), within.Room("grip", grip)); err != nil {
		return figure.Figure{}, err
	}
	in := max(0, min(Thread(screw), screw-grip))
	f := figure.OfLength("thread in the wood", in, &threadFormula, figure.InLength("length", screw), figure.InLength("grip", grip))
	return f.Assuming("two thirds of a screw are threaded; makers differ"), nil
}
