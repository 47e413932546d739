package pipe

import (
	"fmt"
	"slices"

	"rodwright/figure"
	"rodwright/length"
)

// Cut is how long a pipe is cut to stand between two joints, and how far the built distance may come out.
type Cut struct {
	Cut      length.Length // end to end, threads included
	TakeOutA length.Length
	TakeOutB length.Length
	Tightest length.Length // built distance of this cut when each joint makes up one pitch more
	Loosest  length.Length // built distance of this cut when each joint makes up one pitch less
	Figure   figure.Figure
}

// cutFormula is what a cut length is reckoned by.
var cutFormula = figure.Formula{
	Text:   "cut = C − (A1 − e) − (A2 − e)",
	Source: "pipe fitters' take-out, common practice; fittings and make-up by their tables",
	Range:  "straight pipe between two joints; the built distance varies by about a pitch at each",
}

// CutLength returns how long a pipe is cut whose joints are to stand the given distance apart: centre to
// centre for fittings, from the face a flange is screwed to, from a cap's closed face, from a bare end:
//
//	cut = between − takeout(a) − takeout(b)
//
// exact. It is an error if the joints are of different sizes or if nothing is left. A cut that is shorter
// than the close nipple is no error here: see [LeastBetween].
func CutLength(between length.Length, a, b Fitting) (Cut, error) {
	if a.Size != b.Size {
		return Cut{}, fmt.Errorf("a pipe has one size, but its ends are %s and %s; write the same size for both, or make the step with a reducing fitting",
			sizeName(a.Size), sizeName(b.Size))
	}
	if between > length.Max {
		return Cut{}, fmt.Errorf("the distance between the joints is more than 1 km; write a length that a piece can have")
	}
	c := Cut{TakeOutA: a.TakeOut(), TakeOutB: b.TakeOut()}
	c.Cut = between - c.TakeOutA - c.TakeOutB
	if c.Cut <= 0 {
		least := LeastBetween(a, b)
		return Cut{}, fmt.Errorf("no pipe fits %s between %s and %s: their take-outs alone are %s; a close nipple needs %s",
			a.Size.show(between), a.Kind.Words(), b.Kind.Words(), a.Size.show(c.TakeOutA+c.TakeOutB), a.Size.show(least))
	}
	play := a.Size.Pitch * length.Length(threads(a)+threads(b))
	c.Tightest, c.Loosest = between-play, between+play
	c.Figure = cutFigure(c, between, a, b)
	return c, nil
}

// threads is 1 for a threaded joint and 0 for a bare end.
func threads(f Fitting) int {
	if f.Kind == None {
		return 0
	}
	return 1
}

func cutFigure(c Cut, between length.Length, a, b Fitting) figure.Figure {
	fig := figure.OfLength("cut length", c.Cut, &cutFormula,
		figure.InLength("C", between),
		figure.InLength("A1, "+a.Kind.Words(), a.CentreToEnd),
		figure.InLength("A2, "+b.Kind.Words(), b.CentreToEnd),
		figure.InLength("e", a.Size.Engagement),
	).From(sources(a, b))
	for _, f := range []Fitting{a, b} {
		if f.Kind == None {
			continue
		}
		for _, words := range []string{f.Assumed, f.Size.Assumed} {
			if words != "" && !slices.Contains(fig.Assumed, words) {
				fig = fig.Assuming(words)
			}
		}
	}
	return fig
}

// sources names the tables of both fittings, once each.
func sources(a, b Fitting) string {
	from, other := a.Source.String(), b.Source.String()
	switch {
	case b.Kind == None || from == other:
		return from
	case a.Kind == None:
		return other
	}
	return from + "; " + other
}

// Built returns the distance between two joints that a pipe of the given length gives at normal make-up: the
// inverse of [CutLength].
func Built(cut length.Length, a, b Fitting) length.Length { return cut + a.TakeOut() + b.TakeOut() }
