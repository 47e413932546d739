// Package price holds the difference between a margin, a share of the price, and a mark-up, a share of the
// cost: a mark-up of 30 % is a margin of 23.1 %.
//
// Start with [ByMargin]. The package knows money as plain numbers in one currency and no rounding; what makes
// up a cost is for the room that prices a piece.
package price

import (
	"cmp"

	"rodwright/figure"
	"rodwright/trade/within"
)

const books = "definition; any textbook of bookkeeping"

// highestMargin is the greatest margin, in percent, that is reckoned: the price grows past all bounds at 100.
const highestMargin = 99.9

var (
	marginPrice = figure.Formula{Text: "price = cost ÷ (1 − margin)", Source: books, Range: "margin from 0 to below 100 % of the price"}
	markupPrice = figure.Formula{Text: "price = cost × (1 + markup)", Source: books}
	toMargin    = figure.Formula{Text: "margin = markup ÷ (1 + markup)", Source: books}
	toMarkup    = figure.Formula{Text: "markup = margin ÷ (1 − margin)", Source: books}
)

// Price is what a thing is sold for.
type Price struct {
	Price  figure.Figure // in the currency of the cost
	Margin figure.Figure // percent of the price
	Markup figure.Figure // percent of the cost
}

// ByMargin returns the price at which the given percent of it is left over the cost. A margin of 99.9 % and more
// is an error.
func ByMargin(cost, margin float64) (Price, error) {
	if err := cmp.Or(within.NotNegative("cost", cost, figure.Money), within.Between("margin", margin, 0, highestMargin, figure.Percent)); err != nil {
		return Price{}, err
	}
	in := figure.In("margin", margin, figure.Percent)
	return Price{
		Price:  figure.Of("price", cost/(1-margin/100), figure.Money, &marginPrice, figure.In("cost", cost, figure.Money), in),
		Margin: figure.Of("margin", margin, figure.Percent, nil),
		Markup: figure.Of("markup", margin/(1-margin/100), figure.Percent, &toMarkup, in),
	}, nil
}

// ByMarkup returns the price that is the given percent over the cost.
func ByMarkup(cost, markup float64) (Price, error) {
	if err := cmp.Or(within.NotNegative("cost", cost, figure.Money), within.NotNegative("markup", markup, figure.Percent)); err != nil {
		return Price{}, err
	}
	in := figure.In("markup", markup, figure.Percent)
	return Price{
		Price:  figure.Of("price", cost*(1+markup/100), figure.Money, &markupPrice, figure.In("cost", cost, figure.Money), in),
		Margin: figure.Of("margin", markup/(1+markup/100), figure.Percent, &toMargin, in),
		Markup: figure.Of("markup", markup, figure.Percent, nil),
	}, nil
}
