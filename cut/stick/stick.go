// Package stick cuts parts from sticks of several lengths and prices: pipe, bar, moulding.
//
// A part of length l takes l + kerf of a stick with room Length − 2·Trim + Kerf: the last saw cut may run
// out into the trim. So every problem is one of packing bins of several sizes. [Solve] fills one stick after
// another, by size and by values that are corrected after each stick (sequential value correction, Belov and
// Scheithauer, European Journal of Operational Research 171, 2006), each fill being a knapsack. Then it solves the
// linear program over ways to cut a stick (column generation, Gilmore and Gomory, Operations Research 9, 1961), with
// exchanges of parts for shorter ones (Valério de Carvalho, INFORMS Journal on Computing 17, 2005), smoothed duals
// (Wentges, International Transactions in Operational Research 4, 1997) and Farley's bound (Operations Research 38,
// 1990). It dives for whole sticks (Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa, INFORMS Journal on Computing 31,
// 2019). With one kind of stock it lists the ways that a plan of one stick fewer could use, puts aside what the duals
// of a node rule out, and searches them to the end, by pairs of parts that lie together or apart (Ryan and Foster,
// 1981). With several, or where parts can be bought, it lists the ways that a cheaper plan could use, goes through all
// layouts of them, and gives up what the money that is left has no stock for; and it lists the choices of stock that could
// hold all parts for less and packs into just those.
// Last it takes a few sticks apart again and again and packs them anew, and accepts what costs no more and gathers
// what is left into fewer sticks. All papers from memory.
//
// The bound is that of package cover: give each kind k of part a weight w_k ≥ 0, whatever it is. Let H_j be the most
// that one stick of stock j holds of it, and W what all parts weigh. A layout of x_j sticks of each stock has all parts
// on them, so Σ H_j·x_j ≥ W, and costs at least the cheapest whole numbers x that do. Weights are the lengths
// themselves, scales that know which parts can't share a stick, corrected values, and the duals of the linear program
// as whole numbers; the greatest bound counts. H_j is exact, by a table over all rooms or by going through the ways,
// or more than exact where that is broken off. A plan of T equal sticks lacks T·H − W in all, so each of its sticks
// lacks no more: where no plan of ways that lack so little is found by a search to its end, T + 1 is a bound. With several
// stocks what a cheaper layout may cost holds so much at most, whatever is opened for it; a stick and what the rest of the
// money holds must make up W, and where all layouts of the ways that do are gone through, the best cost is a bound. Nothing
// else is used, and no floating number, so it is true of every layout.
//
// A part that can be bought has a store of its own that holds it and nothing else, at its price less the work of cutting
// one, which every part bears; in the bound it is one more kind of stock, of which no more are had than are wanted. What
// costs no more than that work is always bought.
//
// Searching ends when cost and bound meet, or with the nodes.
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
