// Package stick cuts parts from sticks of several lengths and prices: pipe, bar, moulding.
//
// A part of length l takes l + kerf of a stick with room Length − 2·Trim + Kerf: the last saw cut may run
// out into the trim. So every problem is one of packing bins of several sizes. [Solve] builds layouts by
// filling one stick after another, by size and by values that are corrected after each stick (sequential
// value correction, Belov and Scheithauer, European Journal of Operational Research 171, 2006, from
// memory), each fill being a knapsack. It lists the choices of stock that could hold all parts for less,
// the cheapest first, and tries to pack the parts into just those. Then it takes a few sticks apart again
// and again and packs them anew, and accepts what costs no more and gathers what is left into fewer sticks.
//
// The bound is that of package cover: for any weights of the parts, stock of kind j holds at most H_j of
// weight on one stick; sticks that hold all parts cost at least the cheapest whole numbers of sticks x
// with Σ H_j·x_j ≥ W. It is computed for the lengths themselves, for scales that know which parts can't share
// a stick, and for the corrected values; the greatest counts. Nothing else is used, so it is true of every
// layout.
//
// Searching ends when cost and bound meet, or with the nodes. Exact methods can take their place behind
// the same Solve.
package stick

import (
	"context"

	"rodwright/cut"
)

// Problem, Stock and Part are what Solve takes; see package cut.
type (
	Problem = cut.StickProblem
	Stock   = cut.StickStock
	Part    = cut.StickPart
)

// Solve lays out the parts of p. The answer is the same every time unless ctx ends early, and always a
// valid layout. Parts that no stick is long enough for, or that no stock is left for, are told in
// NotPlaced; cost and bound are those of the parts that are placed. An error is a problem that can't be.
func Solve(ctx context.Context, p *Problem, l cut.Limits) (*cut.Answer, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	m := newModel(p)
	b := cut.NewBudget(ctx, l)
	s := newSearch(m, b)
	s.run()
	return m.answer(s.best, s.bound), nil
}
