package wire

import (
	"context"
	"time"

	"rodwright/cut"
)

// writing is what the answer takes for each piece, after the search has ended: to be put together and written down.
// Measured at 2 to 3 µs.
const writing = 3 * time.Microsecond

// within solves by a deadline counted from start. One search goes on until then: begun anew with more and more nodes
// it would do its first steps again each time, and reaches less. Time to write the answer down is kept, but at most half.
func within(ctx context.Context, solve solving, pieces int, o Options, start time.Time) (*cut.Answer, error) {
	now := o.Now
	if now == nil {
		now, start = time.Now, time.Now()
	}
	end := start.Add(o.Within - min(o.Within/2, time.Duration(pieces)*writing))
	return solve(cut.Until(ctx, now, end), cut.Limits{Nodes: cut.Endless})
}

// pieces is how many parts the problem wants. Any number of one counts as one.
func pieces(p cut.Problem) (n int) {
	switch {
	case p.Sticks != nil:
		for _, q := range p.Sticks.Parts {
			n += int(q.Count)
		}
	case p.Boards != nil:
		for _, q := range p.Boards.Panels {
			n += int(q.Count)
		}
	case p.Sheets != nil:
		for _, q := range p.Sheets.Parts {
			n += max(1, int(q.Count))
		}
	}
	return n
}
