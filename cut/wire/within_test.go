package wire

import (
	"context"
	"testing"
	"time"

	"rodwright/cut"
)

// clock is a clock that each search moves on by a millisecond for a thousand nodes.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

func TestTheTimeLeftDecidesTheSecondSearch(t *testing.T) {
	c := &clock{at: time.Unix(0, 0)}
	var asked []int
	a, err := within(context.Background(), func(_ context.Context, l cut.Limits) (*cut.Answer, error) {
		asked = append(asked, l.Nodes)
		c.at = c.at.Add(time.Duration(l.Nodes) * time.Microsecond)
		return &cut.Answer{Cost: 1000 / float64(len(asked)), Bound: 1}, nil
	}, Options{Within: 10 * time.Second, Now: c.now})
	if err != nil || a.Cost > 500 {
		t.Fatalf("%v, %v", a, err)
	}
	if len(asked) < 2 || asked[0] != firstNodes || asked[1] < 7_000_000 || asked[1] > 8_000_000 {
		t.Errorf("searches of %v nodes", asked)
	}
	if took := c.at.Sub(time.Unix(0, 0)); took > 10*time.Second {
		t.Errorf("took %v", took)
	}
}

func TestAProvenAnswerEndsTheSearch(t *testing.T) {
	n := 0
	_, err := within(context.Background(), func(context.Context, cut.Limits) (*cut.Answer, error) {
		n++
		return &cut.Answer{Cost: 3, Bound: 3, Proven: true}, nil
	}, Options{Within: time.Minute})
	if err != nil || n != 1 {
		t.Errorf("%d searches, %v", n, err)
	}
}

func TestTheBetterOfTwoAnswersTakesTheCloserBound(t *testing.T) {
	missing := []cut.NotPlaced{{Tag: "C1"}}
	for _, c := range []struct {
		name        string
		a, b        cut.Answer
		cost, bound float64
		proven      bool
	}{
		{"the cheaper", cut.Answer{Cost: 9, Bound: 5}, cut.Answer{Cost: 8, Bound: 4}, 8, 5, false},
		{"two halves make a proof", cut.Answer{Cost: 9, Bound: 8}, cut.Answer{Cost: 8, Bound: 4}, 8, 8, true},
		{"of values the greater", cut.Answer{Cost: 8, Bound: 12}, cut.Answer{Cost: 9, Bound: 13}, 9, 12, false},
		{"what places more", cut.Answer{Cost: 2, Bound: 1, NotPlaced: missing}, cut.Answer{Cost: 8, Bound: 4}, 8, 4, false},
		{"what places more first", cut.Answer{Cost: 8, Bound: 4}, cut.Answer{Cost: 2, Bound: 1, NotPlaced: missing}, 8, 4, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := better(&c.a, &c.b)
			if got.Cost != c.cost || got.Bound != c.bound || got.Proven != c.proven {
				t.Errorf("got %+v", got)
			}
		})
	}
}
