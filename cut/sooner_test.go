package cut_test

import (
	"context"
	"testing"
	"time"

	"rodwright/cut"
)

func TestASearchEndsSoonerToLeaveTimeForTheLastStep(t *testing.T) {
	hands := time.Unix(0, 0)
	clock := func() time.Time { return hands }
	for _, c := range []struct{ left, ends time.Duration }{
		{400 * time.Millisecond, 390 * time.Millisecond}, // 10 ms at most
		{40 * time.Millisecond, 35 * time.Millisecond},   // an eighth
	} {
		hands = time.Unix(0, 0)
		whole := cut.Until(context.Background(), clock, hands.Add(c.left))
		sooner := cut.Sooner(whole, 10*time.Millisecond)
		hands = hands.Add(c.ends - 1)
		if sooner.Err() != nil {
			t.Errorf("of %v: ended before %v", c.left, c.ends)
		}
		hands = hands.Add(1)
		if sooner.Err() == nil || whole.Err() != nil {
			t.Errorf("of %v at %v: %v, the whole %v", c.left, c.ends, sooner.Err(), whole.Err())
		}
	}
}

func TestASearchWithoutADeadlineEndsAsItDid(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	if got := cut.Sooner(ctx, time.Second); got != ctx {
		t.Error("another context")
	}
	cancel()
	timed, stop := context.WithTimeout(context.Background(), time.Hour)
	defer stop()
	if got := cut.Sooner(timed, time.Second); got == timed || got.Err() != nil {
		t.Errorf("of an hour: %v", got.Err())
	}
}
