// Package panel lays out glued-up panels: boards of random width and length, with their defects, are
// crosscut into segments, segments are ripped into strips, strips of one length become a panel.
//
// [Solve] begins with a simple layout: every width of each kind of panel has a price, and the board is taken that
// yields most for its money, with the crosscuts that yield most (a longest path over the places where a segment may
// begin, so that defects fall between segments). A linear program over ways to cut the boards then gives better prices
// and a bound, and boards are laid out one after another as it would have them (dives). By turns ways that are little
// worse than the best at these prices are collected at random and chosen among for all boards at once by simulated
// annealing, a few boards are taken out and chosen anew (a large neighbourhood), and parts of all choices are bounded and
// searched to their end (branch and price), which proves small problems. Segments are ripped into the strips of whole
// panels in the end; what can't be ripped is no layout.
//
// # The bound
//
// A segment is for panels of one kind: one length, one grade, one thickness. In any layout the segments of kind t are
// together as wide as its panels, D_t, where a segment's width is the greatest net width of strips in the places free
// for its grade; moving a segment to the left until it meets the cut before it or the end of a defect only frees
// places. Let π be any prices, not negative, of a unit of net width of each kind. Then the longest path V_k over these
// positions is the most board k can yield, and
//
//	Σ price_k z_k ≥ Σ π_t·D_t + Σ_k min(0, price_k − V_k(π))
//
// where V_k includes what a kept tail is worth. That is Lagrange's bound; it holds for any π, so also for the duals of
// the linear program however they were rounded. Of boards that are just alike at least lo and at most hi are cut in a
// part of all choices: then the last sum has lo or hi times the term, whichever is less. Roundings make it closer: from
// Σ u ≥ D follows Σ ⌈u/d⌉ ≥ ⌈D/d⌉ for any step d, one more need with its own price (Chvátal 1973). For the best π
// the choice of boards is made with whole boards, too: in any layout each board that is cut makes one of its offers, what it
// can yield at most before the place where its tail begins, for its price less the tail's worth, and all together yield
// Σ π_t·D_t: so no layout costs less than the cheapest choice of offers that does (package cover). In a layout
// that costs less than c every board's way is worse than its best by no more than c less the bound: so few ways are left
// of a few boards, and all choices of them can be looked at. A choice whose boards could not be ripped into whole panels
// counts as possible all the same. Rings, mates, keep-outs and joints through voids are left out of the bound and can
// only make a layout dearer.
//
// Papers, from memory: Gilmore and Gomory, Operations Research 9, 1961 (columns); Barnhart, Johnson, Nemhauser,
// Savelsbergh and Vance, Operations Research 46, 1998 (branch and price); Dantzig and Van Slyke, Journal of Computer and
// System Sciences 1, 1967 (a program with one way of each board); Glover, Operations Research 16, 1968 (one need made of
// many: whole boards); Kirkpatrick, Gelatt and Vecchi, Science 220,
// 1983 (annealing); Shaw, CP 1998 (large neighbourhoods); Chvátal, Discrete Mathematics 4, 1973 (roundings).
package panel

import (
	"context"

	"rodwright/cut"
	"rodwright/cut/panel/offcut"
	"rodwright/cut/sawing"
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
	search := ctx
	if p.Recut {
		search = cut.Sooner(ctx, offcut.Time)
	}
	s := newSearch(m, cut.NewBudget(search, l))
	if l.Nodes == cut.Endless {
		s.runBeside(search)
	} else {
		s.run()
	}
	a := offcut.Use(p, s.made(), cut.NewBudget(ctx, cut.Limits{Nodes: offcut.Nodes}))
	return sawing.Finish(cut.Problem{Boards: p}, a), nil
}
