package wire

import (
	"context"
	"testing"
	"time"

	"rodwright/cut"
)

// Of 100 ms 3 are kept for noticing that they are over; the answer of 10 000 pieces keeps 40 more, and that of 100 000 no more
// than four fifths of it.
func TestTheDeadlineHoldsForReadingAndWritingToo(t *testing.T) {
	for _, c := range []struct {
		pieces int
		search time.Duration
	}{{0, 97 * time.Millisecond}, {10_000, 57 * time.Millisecond}, {100_000, 20 * time.Millisecond}} {
		deadlineHolds(t, c.pieces, c.search)
	}
}

func deadlineHolds(t *testing.T, pieces int, search time.Duration) {
	t.Helper()
	start := time.Unix(100, 0)
	at := start.Add(3 * time.Millisecond) // reading took as long
	searches := 0
	_, err := within(context.Background(), func(ctx context.Context, l cut.Limits) (*cut.Answer, error) {
		searches++
		if l.Nodes != cut.Endless {
			t.Errorf("the search ends after %d nodes", l.Nodes)
		}
		if at = start.Add(search - 1); ctx.Err() != nil {
			t.Error("the search is over before its end")
		}
		if at = start.Add(search); ctx.Err() == nil {
			t.Error("the search is not over at its end")
		}
		return &cut.Answer{}, nil
	}, pieces, Options{Within: 100 * time.Millisecond, Now: func() time.Time { return at }}, start)
	if err != nil || searches != 1 {
		t.Errorf("%d searches, %v", searches, err)
	}
}

func TestADeadlineHoldsWithoutAClockToo(t *testing.T) {
	_, err := within(context.Background(), func(ctx context.Context, _ cut.Limits) (*cut.Answer, error) {
		if ctx.Err() != nil {
			t.Error("the search is over as it begins")
		}
		for begin := time.Now(); ctx.Err() == nil; {
			if time.Since(begin) > time.Minute {
				t.Fatal("the search never ends")
			}
		}
		return &cut.Answer{}, nil
	}, 0, Options{Within: 10 * time.Millisecond}, time.Time{})
	if err != nil {
		t.Error(err)
	}
}
