package cut

import (
	"context"
	"time"
)

// Sooner returns a context that ends before ctx does, where that ends by a clock, so that time is left for a last step:
// an eighth of the time there is, and at most the given one. Otherwise it returns ctx.
func Sooner(ctx context.Context, most time.Duration) context.Context {
	now, end := time.Now, time.Time{}
	if d, ok := ctx.(deadline); ok {
		now, end = d.now, d.end
	}
	if at, ok := ctx.Deadline(); ok && (end.IsZero() || at.Before(end)) {
		now, end = time.Now, at
	}
	if end.IsZero() {
		return ctx
	}
	return Until(ctx, now, end.Add(-min(most, end.Sub(now())/8)))
}
