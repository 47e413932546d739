package panel_test

import (
	"context"
	"testing"
	"time"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/verify"
)

// However soon time ends, the layout of the better of two searches is valid, and its bound is that of one of them:
// never above what is known to be enough.
func TestWhatTimeEndsIsALayoutWithABound(t *testing.T) {
	for i, in := range glueUps(t) {
		ctx, cancel := context.WithTimeout(context.Background(), time.Duration(i)*3*time.Millisecond)
		a, err := panel.Solve(ctx, in.problem, cut.Limits{Nodes: cut.Endless})
		cancel()
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Panel(in.problem, a) {
			t.Errorf("%d: %v", in.seed, f)
		}
		if len(a.NotPlaced) == 0 && in.most > 0 && a.Bound > in.most+0.006 { // printed with two decimals
			t.Errorf("%d: bound %v above the known %v", in.seed, a.Bound, in.most)
		}
	}
}

// A proof ends the search beside it: nothing else ends this one, as its nodes and its time are without end.
func TestAProofEndsBothSearches(t *testing.T) {
	p := glueUps(t)[0].problem
	a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: cut.Endless})
	if err != nil || !a.Proven {
		t.Fatalf("proven %v, error %v", a != nil && a.Proven, err)
	}
}
