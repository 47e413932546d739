package cut_test

import (
	"context"
	"errors"
	"testing"
	"time"

	"rodwright/cut"
)

func TestADeadlineIsReadFromTheClock(t *testing.T) {
	at := time.Unix(100, 0)
	ctx := cut.Until(context.Background(), func() time.Time { return at }, time.Unix(101, 0))
	b := cut.NewBudget(ctx, cut.Limits{Nodes: cut.Endless})
	if !b.Spend(1000) || ctx.Err() != nil {
		t.Error("the search ends before its deadline")
	}
	at = time.Unix(101, 0)
	if err := ctx.Err(); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("at the deadline: %v", err)
	}
	if b.Spend(1000) || !b.Over() {
		t.Error("the search goes on behind its deadline")
	}
}

func TestASearchEndsWithWhoAskedForIt(t *testing.T) {
	parent, stop := context.WithCancel(context.Background())
	ctx := cut.Until(parent, time.Now, time.Now().Add(time.Hour))
	if ctx.Err() != nil {
		t.Error("the search is over as it begins")
	}
	stop()
	if !errors.Is(ctx.Err(), context.Canceled) {
		t.Errorf("got %v", ctx.Err())
	}
}
