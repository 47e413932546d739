// Package gap holds how much room steel needs in or beside wood that moves over the year: the hole round a
// screw and the walls of a notch round a post.
//
// The words: dry and wet are the changes of the wood, in mm across the grain, from the day it is built to
// the driest and to the dampest air it will see; shrinking is negative. The held line is where the panel
// can't move against the frame; the inner wall of a notch lies on its side, the outer wall beyond the post.
// Start with [Hole] and [Notch]. The package does not know how much wood moves; that is package wood's.
package gap

import (
	"math"

	"rodwright/figure"
	"rodwright/length"
)

const practice = "common practice, no source"

var (
	holeFormula = figure.Formula{
		Text: "hole = shank + 2·max(|dry|, |wet|)", Source: "geometry of a screw that is centred in its hole; " + practice,
		Range: "screw set in the middle of its hole on the day it is built",
	}
	innerFormula   = figure.Formula{Text: "inner = max(0, wet) + band + gap", Source: practice, Range: "wall of a notch on the side of the held line"}
	outerFormula   = figure.Formula{Text: "outer = max(0, −dry) + band + gap", Source: practice, Range: "wall of a notch beyond the post"}
	openingFormula = figure.Formula{Text: "opening = inner + post + outer", Source: practice, Range: "across the grain; walls along the grain need band + gap only"}
)

// Hole returns the diameter in mm of the hole, in the steel or the strap, in which a screw with the given
// shank lets the wood move:
//
//	hole = shank + 2 · max(|dry|, |wet|)
func Hole(shank length.Length, dry, wet float64) figure.Figure {
	d := shank.MM() + 2*math.Max(math.Abs(dry), math.Abs(wet))
	return figure.Of("hole", d, figure.MM, &holeFormula,
		figure.InLength("shank", shank), figure.In("dry", dry, figure.MM), figure.In("wet", wet, figure.MM))
}

// Walls are the clearances of a notch round a post, in mm, and the whole opening across the grain.
type Walls struct{ Inner, Outer, Opening figure.Figure }

// Notch returns the clearances round a post of the given largest section within the panel's thickness. The
// wood between the held line and the post changes by dry and wet; band is how far the built frame may stand
// off at that joint, working the room a maker wants besides:
//
//	inner = max(0, wet) + band + gap
//	outer = max(0, −dry) + band + gap
//	opening = inner + post + outer
//
// Wood that never grows past the day it is built still needs band and gap: a negative movement takes
// nothing off.
func Notch(post length.Length, dry, wet float64, band, working length.Length) Walls {
	inner := wall("inner", &innerFormula, "wet", wet, math.Max(0, wet), band, working)
	outer := wall("outer", &outerFormula, "dry", dry, math.Max(0, -dry), band, working)
	return Walls{inner, outer, figure.Of("opening", inner.Value+post.MM()+outer.Value, figure.MM, &openingFormula,
		figure.In("inner", inner.Value, figure.MM), figure.InLength("post", post), figure.In("outer", outer.Value, figure.MM))}
}

func wall(name string, f *figure.Formula, season string, change, moves float64, band, working length.Length) figure.Figure {
	return figure.Of(name, moves+band.MM()+working.MM(), figure.MM, f,
		figure.In(season, change, figure.MM), figure.InLength("band", band), figure.InLength("gap", working))
}
