package cut

import (
	"context"
	"time"
)

// Limits bounds the work of one search. Nodes are steps of the search and not time, so that the same
// problem has the same answer on every machine; a deadline comes with the context.
type Limits struct {
	Nodes int // 0 takes the default
}

// DefaultNodes is the work done when nothing else is asked for.
const DefaultNodes = 5_000_000

// Budget is what is left of some limits. It never refuses the first, simple layout: that costs nothing.
type Budget struct {
	ctx   context.Context
	until time.Time // of the context; the zero time where it has no deadline, and then no clock is read
	left  int
	since int
	over  bool
}

// NewBudget returns a budget for one search.
func NewBudget(ctx context.Context, l Limits) *Budget {
	n := l.Nodes
	if n <= 0 {
		n = DefaultNodes
	}
	until, _ := ctx.Deadline()
	return &Budget{ctx: ctx, until: until, left: n}
}

// askEvery is the number of nodes between two looks at the context: some tens of microseconds.
const askEvery = 512

// Spend takes n nodes from the budget and reports whether it was still enough.
func (b *Budget) Spend(n int) bool {
	if b.over {
		return false
	}
	b.left -= n
	b.since += n
	if b.since >= askEvery {
		b.since = 0
		b.over = b.ended()
	}
	b.over = b.over || b.left < 0
	return !b.over
}

// Ask looks at the context at once and reports whether the search may go on: before a step of work that is long and
// not counted in nodes.
func (b *Budget) Ask() bool {
	b.over = b.over || b.ended()
	return !b.over
}

// ended reports whether the context has ended. Of one with a deadline the clock is read: its own timer comes late
// where all cores are busy.
func (b *Budget) ended() bool {
	return b.ctx.Err() != nil || !b.until.IsZero() && !time.Now().Before(b.until)
}

// Over reports whether the search must end.
func (b *Budget) Over() bool { return b.over }

// Left returns the nodes that are left.
func (b *Budget) Left() int { return max(b.left, 0) }

// Again returns a new budget of n nodes with the same context: for the last step of a search whose own
// nodes are spent.
func (b *Budget) Again(n int) *Budget {
	return &Budget{ctx: b.ctx, until: b.until, left: n, over: b.ended()}
}

// Dice is a small generator of numbers that look random and are the same in every run (splitmix64,
// Steele, Lea and Flood, OOPSLA 2014; constants from memory).
type Dice struct{ state uint64 }

// NewDice returns dice that begin at seed.
func NewDice(seed uint64) *Dice { return &Dice{seed} }

// N returns a number from 0 to n − 1. It panics if n is not positive.
func (d *Dice) N(n int) int {
	d.state += 0x9e3779b97f4a7c15
	z := d.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return int((z ^ z>>31) >> 1 % uint64(n))
}

// Share returns a number from 0 up to, not including, 1.
func (d *Dice) Share() float64 { return float64(d.N(1<<53)) / (1 << 53) }
