// Package plot draws what a finding shows: the tilt a piece bears in every direction, lengths over a year, how
// far a panel sags, how a frame moves.
//
// A plot has no scale of the piece: its drawing is made at 1 : 1 in millimetres of paper, and what is measured
// has axes, contours or words with units of the reader's tape. Start with Of. The package computes nothing of a
// piece; numbers that are none (NaN, infinite) are left out.
package plot

import (
	"math"

	"rodwright/draw"
	"rodwright/finding"
)

// Kind names what a picture shows: tilt, year, bent or sway; empty where there is none.
func Kind(p finding.Picture) string {
	switch {
	case p.Tilt != nil:
		return "tilt"
	case p.Year != nil:
		return "year"
	case p.Bent != nil:
		return "bent"
	case p.Sway != nil:
		return "sway"
	}
	return ""
}

// ID returns the id of the drawing of a finding's picture, from the finding's name ([finding.Names]).
func ID(name string) string { return "finding-" + name }

// mostWide is how wide a plot is drawn at most, and leastWide the least that its words need, in millimetres.
const (
	mostWide  = 130
	leastWide = 70
)

// Of draws the picture of a finding under an id, as wide as the style has room but no wider than a hand reads at
// once; nil where the finding has no picture. Promises:
//
//  1. No words stand on others, and nothing stands outside the width.
//  2. Lengths are told in the reader's units, at the fineness of reasons ([length.Fineness.Finer]).
//  3. The same finding gives the same drawing.
func Of(f finding.Finding, id string, st draw.Style) *draw.Drawing {
	s := newSheet(st)
	d := &draw.Drawing{ID: id, Per: 1}
	switch p := f.Picture; Kind(p) {
	case "tilt":
		d.Title, d.Alt = "tilt that is borne in every direction, from above", s.tilt(*p.Tilt)
	case "year":
		d.Title, d.Alt = capital(yearName(f))+" over the year", s.year(*p.Year, yearName(f))
	case "bent":
		d.Title, d.Alt = "how far it sags, from above and along the deepest line", s.bent(*p.Bent, sagLimit(f))
	case "sway":
		d.Title, d.Alt = "how the frame moves", s.sway(*p.Sway)
	default:
		return nil
	}
	d.Title = capital(d.Title)
	d.Marks = append(s.marks, s.words...)
	return d
}

// finite reports whether every value is a number that can be drawn: none of a size that only a mistake has.
func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return false
		}
	}
	return true
}
