package layout

import (
	"context"

	"rodwright/cut"
)

// How a layout is looked for deeper: a search plans its work by its nodes, so each is begun anew with more of them. The
// first has several times those of a derivation.
const (
	firstDeep  = 160_000
	deeperBy   = 2
	mostDeeply = 1 << 40
)

// Deepen looks for a better layout than the one at hand, or for a closer bound, until that is proven to be the best or
// ctx ends. It returns the best met, which is the one at hand where none is better; better is told each time something
// is. The error is that of a problem that can't be.
func (t Task) Deepen(ctx context.Context, have *cut.Answer, better func(*cut.Answer)) (*cut.Answer, error) {
	best := have
	for nodes := firstDeep; nodes < mostDeeply && ctx.Err() == nil && !done(best); nodes *= deeperBy {
		l, err := t.Solve(ctx, cut.Limits{Nodes: nodes})
		if err != nil {
			return nil, err
		}
		next := cut.Better(best, l.Answer)
		gained := Gains(best, next)
		best = next
		switch {
		case gained:
			better(best)
		case best.Proven: // what found no place finds none
			return best, nil
		}
	}
	return best, nil
}

// done reports whether nothing better can be: what found no place for want of stock may find one in another layout.
func done(a *cut.Answer) bool { return a != nil && a.Proven && len(a.NotPlaced) == 0 }

// Gains reports whether the later of two answers to one problem is the better, or says more of how good it is: more
// placed, another cost or a closer bound.
func Gains(was, is *cut.Answer) bool {
	return was == nil || len(is.NotPlaced) != len(was.NotPlaced) || is.Cost != was.Cost || is.Bound != was.Bound
}
