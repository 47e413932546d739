package lumber

import (
	"cmp"
	"fmt"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Keep says which edge of a part that is cut down stays as it is, because a hole, a profile or a figure is
// measured from it.
type Keep string

// The edges. The first is the default of an answer.
const (
	KeepLeft  Keep = "left"
	KeepRight Keep = "right"
	KeepNone  Keep = "none" // as much off both, so that the middle stays the middle
)

// Keeps returns every choice, the default first.
func Keeps() []Keep { return []Keep{KeepLeft, KeepRight, KeepNone} }

var offFormula = figure.Formula{Text: "off = made − wanted", Source: "geometry", Range: "all off the other edge, or half off each"}

// CutDown returns what comes off the left and the right edge of a part that was made too large. Wood can only
// be taken off: a part smaller than wanted is an error. An odd nanometre goes to the right.
func CutDown(made, wanted length.Length, keep Keep) (left, right figure.Figure, err error) {
	if err := cmp.Or(within.Length("made", made), within.Length("wanted", wanted)); err != nil {
		return left, right, err
	}
	if made < wanted {
		return left, right, &within.Error{
			Name: "wanted", Got: figure.Digits(wanted.MM(), 7) + " mm",
			Want: "no more than what was made, " + figure.Digits(made.MM(), 7) + " mm: wood is only taken off; glue an edge strip on or make it again",
		}
	}
	off := made - wanted
	var l length.Length
	switch keep {
	case KeepLeft:
	case KeepRight:
		l = off
	case KeepNone:
		l = off.Half()
	default:
		return left, right, fmt.Errorf("keep %q is not one of left, right, none", keep)
	}
	in := []figure.Input{figure.InLength("made", made), figure.InLength("wanted", wanted), figure.InText("keep", string(keep))}
	return figure.OfLength("off the left edge", l, &offFormula, in...), figure.OfLength("off the right edge", off-l, &offFormula, in...), nil
}
