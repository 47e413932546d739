package stability

import (
	"rodwright/figure"
	"rodwright/length"
)

var rockFormula = figure.Formula{
	Text: "rock = |(a + c) − (b + d)|", Source: "plane through three points; common practice, no source",
	Range: "four legs in order round the piece, measured on a flat reference or upside down",
}

// Rocking is what four unequal legs come to.
type Rocking struct {
	By      length.Length // how much the piece rocks at a foot
	Shorten [2]int        // the legs of the longer diagonal, 0 to 3 for a to d; shorten either by By
	Figure  figure.Figure // By, with its reason
}

// Rock returns how much a piece on four legs rocks, from their lengths in order round the piece. Only the
// twist counts, not the mean: a piece that leans does not rock. When By is zero the legs in Shorten mean
// nothing. Check the floor before the legs are blamed.
func Rock(a, b, c, d length.Length) Rocking {
	twist := (a + c) - (b + d)
	r := Rocking{By: twist.Abs(), Shorten: [2]int{0, 2}}
	if twist < 0 {
		r.Shorten = [2]int{1, 3}
	}
	r.Figure = figure.OfLength("rock", r.By, &rockFormula,
		figure.InLength("a", a), figure.InLength("b", b), figure.InLength("c", c), figure.InLength("d", d))
	return r
}
