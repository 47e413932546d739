package lumber

import (
	"cmp"

	"rodwright/figure"
	"rodwright/trade/within"
)

const arithmetic = "arithmetic"

var (
	buyFormula   = figure.Formula{Text: "buy = net ÷ (1 − waste)", Source: arithmetic, Range: "waste from 0 to 99 %"}
	addFormula   = figure.Formula{Text: "buy = net · (1 + added)", Source: arithmetic}
	coverFormula = figure.Formula{Text: "share = added ÷ (1 + added)", Source: arithmetic}
)

// Buy returns how much to buy, in the unit of net, when the given percentage of what is bought is lost:
//
//	buy = net ÷ (1 − waste)
func Buy(net float64, unit figure.Unit, waste float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("net", net, unit), within.Between("waste", waste, 0, 99, figure.Percent))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("to buy", net/(1-waste/100), unit, &buyFormula, figure.In("net", net, unit), figure.In("waste", waste, figure.Percent)), nil
}

// BuyAdding returns how much is bought, in the unit of net, when the given percentage is added to it.
func BuyAdding(net float64, unit figure.Unit, added float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("net", net, unit), within.Between("added", added, 0, 10_000, figure.Percent))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("to buy", net*(1+added/100), unit, &addFormula, figure.In("net", net, unit), figure.In("added", added, figure.Percent)), nil
}

// Covered returns the waste, in percent of what is bought, that adding the given percentage covers: adding
// 30 % covers 23 %.
func Covered(added float64) (figure.Figure, error) {
	if err := within.Between("added", added, 0, 10_000, figure.Percent); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("waste that is covered", 100*added/(100+added), figure.Percent, &coverFormula, figure.In("added", added, figure.Percent)), nil
}
