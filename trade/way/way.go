// Package way holds whether a thing goes where it must: into an opening, and up on its feet under a ceiling.
//
// Start with [Left] for room that is left over and [StandUp] for a piece that is carried on its side.
package way

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	leftFormula  = figure.Formula{Text: "left = space − size − clearance", Source: "geometry"}
	standFormula = figure.Formula{Text: "needed = √(l² + w²)", Source: "Pythagoras", Range: "a piece carried on its side and stood up about its lower edge"}
)

// Left returns, in mm, how much room is left in a space for a thing of the given size and the clearance it
// wants. Negative: it does not fit.
func Left(space, size, clearance length.Length) figure.Figure {
	return figure.OfLength("left", space-size-clearance, &leftFormula,
		figure.InLength("space", space), figure.InLength("size", size), figure.InLength("clearance", clearance))
}

// StandUp returns, in mm, the height that a piece of the given length and width needs to be stood up from its
// side: its diagonal.
func StandUp(long, wide length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("length", long), within.Length("width", wide)); err != nil {
		return figure.Figure{}, err
	}
	return figure.OfLength("needed", length.FromMM(math.Hypot(long.MM(), wide.MM())), &standFormula,
		figure.InLength("l", long), figure.InLength("w", wide)), nil
}
