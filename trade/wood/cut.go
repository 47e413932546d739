package wood

import "rodwright/trade/table"

// Cut is how a board was sawn from the log, which decides how it moves across its width.
type Cut string

// The cuts.
const (
	Flat    Cut = "flat"    // rings lie flat in the board: its width moves tangentially
	Quarter Cut = "quarter" // rings stand upright: its width moves radially
	Mixed   Cut = "mixed"   // rift, or strips of both: the mean
)

// Cuts returns every cut.
func Cuts() []Cut { return []Cut{Flat, Quarter, Mixed} }

// ParseCut reads flat, quarter or mixed; flat-sawn, plain-sawn, quarter-sawn and rift mean the same. The
// error is a *table.UnknownError.
func ParseCut(text string) (Cut, error) {
	switch normal(text) {
	case "flat", "flat-sawn", "flatsawn", "plain", "plain-sawn":
		return Flat, nil
	case "quarter", "quarter-sawn", "quartersawn":
		return Quarter, nil
	case "mixed", "rift", "rift-sawn":
		return Mixed, nil
	}
	return "", table.Unknown("cut", text, []string{string(Flat), string(Quarter), string(Mixed)})
}

// across returns the value of the cut out of a tangential and a radial one: the mean for mixed.
func (c Cut) across(tangential, radial float64) float64 {
	switch c {
	case Quarter:
		return radial
	case Mixed:
		return (tangential + radial) / 2
	}
	return tangential
}

// Thickness returns the cut by which a board's thickness moves: a flat-sawn board is as thick as a
// quarter-sawn one is wide.
func (c Cut) Thickness() Cut {
	switch c {
	case Flat:
		return Quarter
	case Quarter:
		return Flat
	}
	return Mixed
}
