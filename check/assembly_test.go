package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// A box of elbows and tees with right-hand threads can't be closed, and was found so half-way (a public answer): with a
// union in each of its five loops every thread can be turned, without them none of the pipes in a loop can.
func TestABoxIsPutTogetherByItsUnionsAndNotWithoutThem(t *testing.T) {
	p := derive(t, hoop)
	f := only(t, Assembly(p), "putting the frame together")
	verdict(t, f, finding.Stands)
	if o := Assemble(p); len(o.Unions) != 5 {
		t.Errorf("%d unions are drawn up, want 5", len(o.Unions))
	}
	for i := range p.Nodes { // a union that is glued up is none
		if p.Nodes[i].Kind == pipe.Union {
			p.Nodes[i].Kind = pipe.Coupling
		}
	}
	f = only(t, Assembly(p), "putting the frame together")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "put 1 union into the", "right-handed")
	for _, s := range Assemble(p).Stuck {
		if !s.Loop {
			t.Errorf("%s strikes something, but is caught in a loop", p.Sticks[s.Stick].Name)
		}
	}
}

// Two tees on neighbouring posts whose outlets reach towards each other by 1.31 in each (ASME B16.3, from memory) with
// bands of about 1.46 in: a fitting turned about its post sweeps that far, and strikes the band of one 1 1/2 in away. No
// order helps, since each is in the way of the other; 6 in apart it is.
func TestFittingsThatSweepIntoEachOtherCanBeTurnedInNoOrder(t *testing.T) {
	near := nearPosts(t, 1.5)
	f := only(t, Assembly(near), "putting the frame together")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "strikes", "farther apart")
	verdict(t, only(t, Assembly(nearPosts(t, 6)), "putting the frame together"), finding.Stands)
}

// nearPosts are two upright pipes with elbows on top that a level pipe joins, moved to stand so far apart in inches that the
// drawing would not let them.
func nearPosts(t *testing.T, apart float64) *Piece {
	p := rungs(t, "14 in")
	for i := range p.Nodes {
		if p.Nodes[i].At.X > 0 {
			p.Nodes[i].At.X = inch(apart)
		}
	}
	return p
}

// Taking apart is exact since undoing one thread never hinders another: every thread is undone once, or is stuck.
func TestAnOrderTurnsEveryThreadOnce(t *testing.T) {
	n := uint64(150)
	if testing.Short() {
		n = 30
	}
	stuck := 0
	for seed := range n {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		o := Assemble(p)
		stuck += len(o.Stuck)
		seen := map[[2]int]int{}
		for _, s := range o.Steps {
			if s.Panel < 0 {
				seen[[2]int{s.Stick, s.Node}]++
			}
		}
		for _, s := range o.Stuck {
			seen[[2]int{s.Stick, s.Node}]++
			if s.Loop {
				t.Errorf("seed %d: the %s is caught in a loop, though every loop has its union", seed, p.Sticks[s.Stick].Name)
			}
		}
		for i, s := range p.Sticks {
			for _, node := range []int{s.A, s.B} {
				want := 1
				if p.Nodes[node].Kind == pipe.None {
					want = 0
				}
				if got := seen[[2]int{i, node}]; got != want {
					t.Errorf("seed %d: the %s is turned %d times at the %s", seed, s.Name, got, p.Nodes[node].Place)
				}
			}
		}
		if len(o.Unions) != len(p.Loops) {
			t.Errorf("seed %d: %d unions are drawn up, %d loops", seed, len(o.Unions), len(p.Loops))
		}
	}
	t.Logf("%d threads of %d pieces can't be turned", stuck, n)
}
