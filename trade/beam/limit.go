package beam

import (
	"cmp"
	"fmt"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Lasting says in what air a load stays on wood for months.
type Lasting string

// The airs that a lasting load is told apart by. The first is the default of an answer.
const (
	Dry  Lasting = "dry"  // heated rooms, steady air
	Damp Lasting = "damp" // damp or swinging air
)

// ParseLasting reads dry or damp.
func ParseLasting(text string) (Lasting, error) {
	if l := Lasting(text); l == Dry || l == Damp {
		return l, nil
	}
	return "", fmt.Errorf("lasting %q is not one of dry, damp", text)
}

// Factor returns the lasting sag of solid wood ÷ its sag at first loading: 1.5 dry, 2 damp or swinging.
func (l Lasting) Factor() float64 {
	if l == Damp {
		return 2
	}
	return 1.5
}

const shelfPractice = "common practice, no source"

var (
	lastingFormula = figure.Formula{
		Text: "lasting sag = factor · elastic sag", Range: "loads that stay, well below what breaks the wood",
		Source: "Wood Handbook FPL-GTR-282 (2021) ch. 5, time under load, from memory: about half again, twice when damp",
	}
	elasticLimit = figure.Formula{Text: "limit = span ÷ 600", Source: shelfPractice, Range: "shelves, at first loading: 0.02 in a foot"}
	lastingLimit = figure.Formula{Text: "limit = span ÷ 384", Source: shelfPractice, Range: "shelves, in the end: 1/32 in a foot, what the eye sees"}
)

// LastingSag returns what an elastic sag in mm grows to under a load that stays, by a factor: that of
// [Lasting.Factor] for solid wood, the creep factor of a sheet.
func LastingSag(elastic, factor float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("elastic sag", elastic, figure.MM), within.Between("lasting factor", factor, 1, 10, figure.Ratio))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("lasting sag", elastic*factor, figure.MM, &lastingFormula,
		figure.In("factor", factor, figure.Ratio), figure.In("elastic sag", elastic, figure.MM)), nil
}

// ElasticLimit returns, in mm, the sag to design a shelf for at first loading: span ÷ 600.
func ElasticLimit(span length.Length) (figure.Figure, error) {
	return limit("limit at first loading", span, 600, &elasticLimit)
}

// LastingLimit returns, in mm, the sag that the eye begins to see and that a shelf should never reach:
// span ÷ 384.
func LastingLimit(span length.Length) (figure.Figure, error) {
	return limit("limit in the end", span, 384, &lastingLimit)
}

func limit(name string, span length.Length, divisor float64, f *figure.Formula) (figure.Figure, error) {
	if err := within.Length("span", span); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of(name, span.MM()/divisor, figure.MM, f, figure.InLength("span", span)), nil
}
