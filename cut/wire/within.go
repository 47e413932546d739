package wire

import (
	"context"
	"time"

	"rodwright/cut"
)

// Of the time to a deadline this is kept. Writing is what the answer takes for each piece after the search has ended, to be put
// together, its cuts ordered and written down: measured at 3 to 4 µs. Noticing is how late a search on a shared machine finds
// that its time is over.
const (
	writing  = 4 * time.Microsecond
	noticing = 3 * time.Millisecond
)

// within solves by a deadline counted from start. One search goes on until then: begun anew with more and more nodes
// it would do its first steps again each time, and reaches less. Time to write the answer down is kept, but at most four fifths.
func within(ctx context.Context, solve solving, pieces int, o Options, start time.Time) (*cut.Answer, error) {
	now := o.Now
	if now == nil {
		now, start = time.Now, time.Now()
	}
	end := start.Add(o.Within - min(o.Within*4/5, noticing+time.Duration(pieces)*writing))
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
