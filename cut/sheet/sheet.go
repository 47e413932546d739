// Package sheet lays out rectangles on sheets by cuts that go right across (guillotine cuts), in as many
// stages as allowed, round defects, with or against the grain.
//
// A stage is all cuts of one direction before the direction changes; a last trim that only frees a single
// part is not counted. [Solve] fills one sheet after another, in two ways: part by part, each into the free
// rectangle it fits best, which two cuts divide anew; or section by section, by tables of what rows, sections and
// the sheet are worth at most (Gilmore and Gomory, Operations Research 13, 1965). Then some sheets are emptied and
// filled anew, again and again, and what costs no more is kept. All fillings met go into a pool, whose linear
// program says what parts are worth and which sheets go together (Monaci and Toth, INFORMS Journal on Computing 18,
// 2006). A single sheet that is filled for value with counts is built up from its parts, the most promising
// rectangle first, until none promises more than the best (Viswanathan and Bagchi, Operations Research 41, 1993).
// Where the work allowed ends before every part has its place, the rest is laid out in rows, in the time that it takes
// to sort the parts (Coffman, Garey, Johnson and Tarjan, SIAM Journal on Computing 9, 1980). Titles and methods are
// cited from memory.
//
// # The bounds
//
// A part and its saw cuts take (l + kerf)·(w + kerf) of (L + kerf)·(W + kerf), L and W being the sheet
// within its trim; areas are weights in the sense of package cover. So are products f·g of a weight f of each part
// along the length and a weight g along the width (Fekete and Schepers, Mathematics of Operations Research 29,
// 2004): where no row of parts weighs more than F by f and no column more than G by g, no sheet holds more than
// F·G. By induction over the cuts: a single part weighs f·g ≤ F·g, so what stands in one column never more than F·G,
// and a cut divides a rectangle into two whose bounds for that direction add up to no more than its own. A part that
// may be turned counts with the lesser of its weights. Weights come from scales of the sizes; then f is made the best
// for g, and g for f, in turn, by linear programs of rows (Caprara, Locatelli and Monaci, IPCO 2005). Whatever those
// say, weights are rounded to whole numbers, and F and G are found anew by knapsacks of whole numbers: so the bound
// holds for any weights, and no rounding can harm it.
//
// Sheets filled for value are bounded from above by the best filling without counts and stages (Gilmore
// and Gomory, Operations Research 14, 1966: F(x, y) is the best single part or the best cut of the
// rectangle in two), by a knapsack of areas, and by what the construction of a filling still promises: the value of
// a rectangle and the most that can lie outside of it. The least counts.
package sheet

import (
	"context"
	"time"

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
	m := newModel(p)
	ctx, stop := m.early(ctx)
	defer stop()
	s := newSearch(m, cut.NewBudget(ctx, l))
	s.run()
	return s.answer(), nil
}

// Of the time to a deadline so much is kept for noticing that it is over and for writing the answer down: for each part, and
// all together at most this share.
const (
	noticing    = 2 * time.Millisecond
	writing     = 5 * time.Microsecond
	mostWriting = 0.8
)

// early ends the search so long before the deadline of ctx, if it has one, that the answer is there in time.
func (m *model) early(ctx context.Context) (context.Context, context.CancelFunc) {
	until, ok := ctx.Deadline()
	if !ok {
		return ctx, func() {}
	}
	kept := noticing
	for _, n := range m.needs() {
		kept += time.Duration(n) * writing
	}
	kept = min(kept, time.Duration(mostWriting*float64(time.Until(until))))
	return context.WithDeadline(ctx, until.Add(-max(kept, 0)))
}
