// Package offcut makes use of what falls off when boards are cut into glued-up panels.
//
// The search of package panel crosscuts and then rips, and each segment serves one kind of panel. A maker looks at what
// is left: the offcut ripped from the side of a segment is crosscut again for a short panel, the knotty remainder of a
// clear segment serves a panel whose grade takes the knot, an end too short to keep gives one more strip. [Use] takes a
// layout that is finished and does the same, where the problem allows it (Recut): strips out of what falls off stand in
// for strips of other segments, until a board or the end of one is not needed any more, and for panels that no segment
// was left for. Cuts go crosscut, rip, crosscut, rip and no further.
//
// In every case it then glues with fewer strips and rips with fewer settings of the fence, as far as the segments give
// it and nothing gets dearer.
//
// # The bound
//
// The bound of package panel is true of layouts that use nothing of what falls off. A layout that does is given one
// that is true of all. Let N(x) be the greatest net width that strips a saw cut apart can have together on the line
// across a board at x, out of the ranges that hold nothing the grade forbids, where a place counts only if a strip as
// long as the shortest panel and as wide as the narrowest strip fits round it. However the board is sawn, the strips
// that meet that line are a saw cut apart, so that they have at most N(x), and the board yields at most ∫ N(x) dx of net
// area. It is a little less when every strip is taken as longer by the saw cut behind it, and so is every free place.
// No longer strips than K(e) lie one behind the other up to e, either, each with the saw cut behind it. Of strips on a
// board let one come before another where it ends, saw cut and all, before the other begins. Strips of which none comes
// before another all meet one line across, and have N at most, the greatest N(x); strips of which each comes before the next
// have K(e). So, each taken as often as its net width, they are N such rows at most (Dilworth, Annals of Mathematics 51,
// 1950, from memory), and lengths times net widths add up to no more than N·K(e): nothing comes of what is left behind a
// strip where the shortest panel is longer. The same is true where strips have any weight for their length, and K is the
// most that rows weigh: by the scales of package cover those weigh more that can't lie behind each other.
//
// Panels of grade g or stricter need D_g of that weight, and a board that is cut up to e yields V_g(e) of it for the
// price c(e). For any λ_g ≥ 0
//
//	cost ≥ Σ λ_g·D_g + Σ_k min(0, min_e c_k(e) − Σ_g λ_g·V_kg(e))
//
// (Lagrange), and not less than the cheapest whole boards with Σ_k V_kg ≥ D_g (package cover). Weights and money are
// whole numbers, yields rounded up and needs rounded down.
package offcut

import (
	"math"
	"time"

	"rodwright/cut"
)

// Nodes is the work that using what falls off may take, and as much again for fewer strips and settings: about two
// milliseconds each.
const Nodes = 20_000

// Time is what a search with a deadline leaves for it.
const Time = 10 * time.Millisecond

// mostStrips bounds the layouts that are looked at: beyond it, looking at all strips beside each other takes longer than
// these steps are worth.
const mostStrips = 1_000

// Use returns the layout a, or a better one: never dearer, with no fewer panels made. The same layout has the same
// answer, unless the budget's context ends early. Of a problem that allows recutting the bound says what it is true of.
// The cuts of what is returned are not given yet.
func Use(p *cut.PanelProblem, a *cut.Answer, b *cut.Budget) *cut.Answer {
	w := newWork(p, a, b)
	first := w.read(a)
	best, recut := first, false
	if len(first.strips) > mostStrips {
		return w.bounded(a, first, false)
	}
	if p.Recut && b.Ask() {
		best = w.makeMissing(best)
		best = w.free(best)
		recut = best != first
	}
	w.budget = b.Again(Nodes)
	if !w.budget.Over() {
		best = w.fewer(best)
	}
	out := a
	if best != first {
		out = w.answer(a, best)
	}
	return w.bounded(out, best, recut)
}

// nearly is how much less a bound may say that is true of every layout.
const nearly = 1e-3

// bounded gives an answer of a problem that allows recutting its bound: one that is true of every layout where what
// falls off is used or where it proves the layout; otherwise that of the search with what it is true of.
func (w *work) bounded(a *cut.Answer, pl *plan, recut bool) *cut.Answer {
	if !w.p.Recut {
		return a
	}
	out := *a
	low, proven := 0.0, false
	if recut || !w.budget.Over() {
		low, proven = w.bound(pl)
	}
	switch {
	case proven:
		out.Bound, out.Proven, out.Of = out.Cost, true, cut.EveryLayout
	case recut || low >= out.Bound || !out.Proven && low > out.Bound-nearly: // also where lines on the boards say as much as the search
		out.Cost, out.Bound, out.Proven = cut.Settle(out.Cost, math.Max(0, low), false)
		out.Of = cut.EveryLayout
	default:
		out.Of = cut.WithoutRecut
	}
	return &out
}
