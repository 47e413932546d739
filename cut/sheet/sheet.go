// Package sheet lays out rectangles on sheets by cuts that go right across (guillotine cuts), in as many
// stages as allowed, round defects, with or against the grain.
//
// A stage is all cuts of one direction before the direction changes; a last trim that only frees a single
// part is not counted. [Solve] fills one sheet after another. A sheet is filled part by part: each goes
// into the free rectangle it fits best, which two cuts divide anew, in the order of cuts that a rule
// chooses; many orders and rules are tried and the most valuable filling is taken. Then some sheets are
// emptied and filled anew, again and again, and what costs no more is kept.
//
// # The bounds
//
// A part and its saw cuts take (l + kerf)·(w + kerf) of (L + kerf)·(W + kerf), L and W being the sheet
// within its trim; areas are weights in the sense of package cover. So are products f(l)·g(w) of scales of
// length and width (Fekete and Schepers, Mathematics of Operations Research 29, 2004): where no row of parts
// weighs more than F by f and no column more than G by g, no sheet holds more than F·G. By induction over
// the cuts: a single part weighs f(l)·g(w), and a cut divides a rectangle into two whose bounds for that
// direction add up to no more than its own. A part that may be turned counts with the lesser of its weights.
//
// Sheets filled for value are bounded from above by the best filling without counts and stages (Gilmore
// and Gomory, Operations Research 14, 1966: F(x, y) is the best single part or the best cut of the
// rectangle in two), and by a knapsack of areas; the lesser counts.
package sheet

import (
	"context"

	"rodwright/cut"
)

// Problem, Sheet and Part are what Solve takes; see package cut.
type (
	Problem = cut.SheetProblem
	Sheet   = cut.Sheet
	Part    = cut.SheetPart
)

// Solve lays out the parts of p. The answer is the same every time unless ctx ends early, and always a
// valid layout. Parts that no sheet is large enough for, or that no sheet is left for, are told in
// NotPlaced; cost and bound are those of the parts that are placed. With values Cost is the value cut,
// Bound an upper bound of it, and parts that are left out are not told. An error is a problem that can't
// be.
func Solve(ctx context.Context, p *Problem, l cut.Limits) (*cut.Answer, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	s := newSearch(newModel(p), cut.NewBudget(ctx, l))
	s.run()
	return s.answer(), nil
}
