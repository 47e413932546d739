package wire

import (
	"context"
	"time"

	"rodwright/cut"
)

// A search plans its work by its nodes: it goes from the rough to the fine. So a deadline is not simply the
// end of an endless search. A first, short search tells how fast nodes go by here; the second has as many
// as the rest of the time allows.
const (
	firstNodes  = 20_000
	mostNodes   = 1 << 40
	restOfTime  = 0.8 // of what is left, for the second search
	growthBlind = 4   // without a clock: how much more each search is than the one before
)

// within solves by a deadline and returns the best answer met.
func within(ctx context.Context, solve solving, o Options) (best *cut.Answer, err error) {
	ctx, cancel := context.WithTimeout(ctx, o.Within)
	defer cancel()
	begin := o.now()
	for nodes := firstNodes; nodes < mostNodes; {
		start := o.now()
		a, err := solve(ctx, cut.Limits{Nodes: nodes})
		if err != nil {
			return nil, err
		}
		if best = better(best, a); best.Proven || ctx.Err() != nil {
			break
		}
		next := o.next(nodes, o.now().Sub(start), o.Within-o.now().Sub(begin))
		if next < nodes {
			break
		}
		nodes = next
	}
	return best, nil
}

// next returns how many nodes the time left allows, judged by a search that took so long.
func (o Options) next(nodes int, took, left time.Duration) int {
	if o.Now == nil || took <= 0 {
		return growthBlind * nodes
	}
	return int(restOfTime * float64(nodes) * float64(left) / float64(took))
}

// better returns the better of two answers to one problem: more placed, then the cost. Of two that place the
// same the closer bound is true of both.
func better(a, b *cut.Answer) *cut.Answer {
	if a == nil {
		return b
	}
	if len(a.NotPlaced) != len(b.NotPlaced) {
		if len(b.NotPlaced) < len(a.NotPlaced) {
			return b
		}
		return a
	}
	upper := a.Bound > a.Cost || b.Bound > b.Cost
	if upper && b.Cost > a.Cost || !upper && b.Cost < a.Cost {
		a, b = b, a
	}
	if len(a.NotPlaced) == 0 { // what is left out may differ, and the bound with it
		if upper {
			a.Bound = min(a.Bound, b.Bound)
		} else {
			a.Bound = max(a.Bound, b.Bound)
		}
		a.Proven = a.Bound == a.Cost
	}
	return a
}
