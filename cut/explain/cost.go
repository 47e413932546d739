package explain

import (
	"slices"
	"strconv"

	"rodwright/cut"
)

// Cost tells what the cost of a layout is made of where it is not the price of the stock alone: of boards what is
// kept takes a share of its price off, of pipe what is bought ready made and the work on what could have been comes
// on top. Empty where there is nothing to tell, and where money is not named.
func (s Speech) Cost(p cut.Problem, a *cut.Answer) string {
	if s.Money == nil {
		return ""
	}
	beside := cut.RoundMoney(a.Cost - stockCost(p, a))
	switch {
	case p.Boards != nil && beside < -cent:
		share := strconv.FormatFloat(100*p.Boards.Salvage, 'f', -1, 64)
		return "The boards cost " + s.Money(a.Cost-beside) + "; tails kept for other work are taken off at " + share + " % of their price, " + s.Money(-beside) + "."
	case p.Sticks != nil && beside > cent:
		return "The sticks cost " + s.Money(a.Cost-beside) + s.readyMade(p.Sticks, a, beside) + "."
	}
	return ""
}

// readyMade tells what comes on top of the sticks, beside in all: what is bought ready made, and the work on pipes that could
// have been bought.
func (s Speech) readyMade(p *cut.StickProblem, a *cut.Answer, beside float64) (says string) {
	bought := 0.0
	for _, tag := range a.Bought {
		if i := slices.IndexFunc(p.Parts, func(q cut.StickPart) bool { return q.Tag == tag }); i >= 0 {
			bought += p.Parts[i].Bought.Value
		}
	}
	if len(a.Bought) > 0 {
		says += ", " + several(len(a.Bought), "part") + " bought ready made " + s.Money(bought)
	}
	if work := beside - bought; work > cent {
		says += ", the work on what is cut and could be bought " + s.Money(work)
	}
	return says
}

// stockCost is the price of all stock that is opened.
func stockCost(p cut.Problem, a *cut.Answer) (sum float64) {
	for _, u := range a.Used {
		switch {
		case p.Sticks != nil:
			if i := slices.IndexFunc(p.Sticks.Stock, func(k cut.StickStock) bool { return k.Tag == u.Stock }); i >= 0 {
				sum += p.Sticks.Cost(i)
			}
		case p.Boards != nil:
			if i := slices.IndexFunc(p.Boards.Boards, func(b cut.Board) bool { return b.Tag == u.Stock }); i >= 0 {
				sum += p.Boards.Cost(i)
			}
		case p.Sheets != nil:
			if i := slices.IndexFunc(p.Sheets.Sheets, func(k cut.Sheet) bool { return k.Tag == u.Stock }); i >= 0 {
				sum += p.Sheets.Cost(i)
			}
		}
	}
	return sum
}
