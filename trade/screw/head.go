package screw

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

// thickOfHead is how many heads thick a layer is from which on more of it holds a head no better.
const thickOfHead = 2.5

var (
	headFormula = figure.Formula{
		Text: "head = 0.120 + 0.0265·N in", Source: "ASME B18.6.1 Wood Screws, flat heads, from memory", Range: "screw numbers 4 to 14, within 0.02 in",
	}
	throughFormula = figure.Formula{
		Text:   "H = 690·π·D·G²·min(t, 2.5·D) (lbf, in)",
		Source: "National Design Specification for Wood Construction (2018) 12.2.5, head pull-through, from memory",
		Range:  "D the head's diameter, round, t the wood under it; through steel a head does not pull",
	}
	rimOnSteel = figure.Formula{
		Text: "rim = (head − hole) ÷ 2", Source: "geometry", Range: "a head that bears on steel round a drilled hole",
	}
)

// Head returns the diameter in mm of the flat head of the wood screw with number N, 4 to 14:
//
//	0.120 in + 0.0265 in · N
func Head(gauge int) (figure.Figure, error) {
	if err := within.Counted("screw gauge", gauge, 4, 14); err != nil {
		return figure.Figure{}, err
	}
	d := length.Inch.Scale(int64(1200+265*gauge), 10000)
	return figure.OfLength("head", d, &headFormula, figure.In("N", float64(gauge), figure.Count)), nil
}

// PullThrough returns the pull in newtons to design for before a screw's head comes through a layer of wood
// of the given thickness under it, such as a batten or cleat:
//
//	H = 690·π·D·G²·t, and no more than for t = 2.5·D (lbf and inches)
//
// D is the head's diameter. Through steel a head doesn't pull.
func PullThrough(s wood.Species, gauge int, layer length.Length) (figure.Figure, error) {
	head, err := Head(gauge)
	if err = cmp.Or(err, hasGravity(s), within.Length("wood under the head", layer)); err != nil {
		return figure.Figure{}, err
	}
	d := head.Value / length.Inch.MM()
	h := 690 * math.Pi * d * s.SG12 * s.SG12 * min(layer.Inches(), thickOfHead*d) * poundForce
	return figure.Of("pull its head is designed for", h, figure.N, &throughFormula,
		figure.In("D", head.Value, figure.MM), figure.In("G", s.SG12, figure.Ratio), figure.InLength("t", layer)).From(s.Source.String()), nil
}

// Rim returns how much of a screw's head, in mm, bears on the steel round its hole; below zero the head
// slips through.
func Rim(gauge int, hole length.Length) (figure.Figure, error) {
	head, err := Head(gauge)
	if err = cmp.Or(err, within.Length("hole in the steel", hole)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("rim of the head on the steel", (head.Value-hole.MM())/2, figure.MM, &rimOnSteel,
		figure.In("head", head.Value, figure.MM), figure.InLength("hole", hole)), nil
}
