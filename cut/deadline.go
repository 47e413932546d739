package cut

import (
	"context"
	"math"
	"time"
)

// Endless is a number of nodes that no search spends: only its context ends it.
const Endless = math.MaxInt / 2

// Until returns a context that ends with ctx, or when the clock now reaches end: the hands of any clock, also one of
// the processor's time. It is for a search, which asks its Err, and not for one who waits: its Done and Deadline are
// those of ctx.
func Until(ctx context.Context, now func() time.Time, end time.Time) context.Context {
	return deadline{ctx, now, end}
}

type deadline struct {
	context.Context
	now func() time.Time
	end time.Time
}

// Err returns why the context has ended; nil before.
func (d deadline) Err() error {
	if err := d.Context.Err(); err != nil {
		return err
	}
	if d.now().Before(d.end) {
		return nil
	}
	return context.DeadlineExceeded
}
