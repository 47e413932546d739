// Package panel lays out glued-up panels: boards of random width and length, with their defects, are
// crosscut into segments, segments are ripped into strips, strips of one length become a panel.
//
// [Solve] gives every width of each kind of panel a price, finds for each board the crosscuts that yield
// most at these prices (a longest path over the places where a segment may begin, so that defects fall
// between segments), takes the board that yields most for its money and goes on with what is still wanted;
// then it rips the segments into the strips of whole panels. Prices come from the bound. Afterwards ways to
// cut every board are collected and chosen among for all boards at once by simulated annealing, and a few
// boards are taken out and chosen anew, again and again.
//
// # The bound
//
// Let π be any prices, not negative, of a unit of net width of each kind t of panel, a kind being a length
// and a grade. In any layout the strips of kind t are together as wide as its panels, D_t. A strip of a
// segment serves no kind that is longer or wants a better grade than it has. So with e(g) the greatest
// price of the kinds that strips of grade g or worse may serve, and N(g) the greatest net width of strips
// in the places of the segment free for grade g, a segment is worth at most Σ (e(g) − e(g+1))·N(g); moving
// a segment to the left until it meets the cut before it or the end of a defect only frees places. Hence
// the longest path V_k over these positions is the most board k can yield, and
//
//	Σ price_k z_k ≥ Σ π_t·D_t + Σ_k min(0, price_k − V_k(π))
//
// where V_k includes what a kept tail is worth. That is Lagrange's bound; π is improved by subgradients.
// For the best π the choice of boards is then made with whole boards: the cheapest that yield Σ π_t·D_t,
// which is never less (package cover). Rings, mates, keep-outs and joints through voids are left out of the
// bound and can only make a layout dearer.
package panel

import (
	"context"

	"rodwright/cut"
)

// Problem, Board and Panel are what Solve takes; see package cut.
type (
	Problem = cut.PanelProblem
	Board   = cut.Board
	Panel   = cut.Panel
)

// Solve lays out the panels of p. The answer is the same every time unless ctx ends early, and always a
// valid layout. Panels that no board can serve, or that the boards are short of wood for, are told in
// NotPlaced and the rest is laid out; cost and bound are those of the panels that are made. An error is a
// problem that can't be.
func Solve(ctx context.Context, p *Problem, l cut.Limits) (*cut.Answer, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	m := newModel(p)
	s := newSearch(m, cut.NewBudget(ctx, l))
	s.run()
	return s.answer(), nil
}
