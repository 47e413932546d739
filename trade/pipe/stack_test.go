package pipe

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

// Public question and answer, value recomputed: two threads of 14 to the inch out in each of a leg's four joints are
// 0.57 in at worst and 0.29 in by the root of the sum of squares.
func TestALegOfFourJointsTwoThreadsOut(t *testing.T) {
	leg := Stack{}.With(fittingOf(t, "1/2", Tee).Size.MakeUp(2), 4)
	if got := leg.Worst().Inches(); math.Abs(got-0.57) > 0.005 {
		t.Errorf("worst %v in", got)
	}
	if got := leg.RootSumSquare().Inches(); math.Abs(got-0.29) > 0.005 {
		t.Errorf("root sum of squares %v in", got)
	}
}

// Variances of independent errors add: n equal ones make √n of one, and n of them at worst.
func TestEqualJointsAddByTheRootOfTheirNumber(t *testing.T) {
	for _, n := range []int{1, 2, 4, 9, 100} {
		s := Stack{}.With(length.Millimetre, n)
		if got := s.RootSumSquare().MM(); math.Abs(got-math.Sqrt(float64(n))) > 1e-6 {
			t.Errorf("%d joints: %v mm", n, got)
		}
		if s.Worst() != length.Length(n)*length.Millimetre {
			t.Errorf("%d joints at worst: %v mm", n, s.Worst().MM())
		}
	}
}

// One joint is off evenly between its limits: 95 in 100 lie within 0.95 of it. Two equal ones make a triangle:
// 2 − √(4·0.05) = 1.5528 of one. Many tend to a normal law of variance n·t²/3: 1.95996·√(n/3). The share of 2 000
// that lies within has a standard error of √(0.95·0.05/2000) = 0.0049, which is 2 % of the span in a long chain; allowed are three.
func TestTheUsualSpanAgreesWithWhatIsKnownInClosedForm(t *testing.T) {
	for _, c := range []struct {
		n    int
		want float64
	}{{1, 0.95}, {2, 2 - math.Sqrt(0.2)}, {12, 1.95996 * 2}, {48, 1.95996 * 4}, {300, 1.95996 * 10}} {
		if got := (Stack{}).With(length.Millimetre, c.n).Usual().MM(); math.Abs(got-c.want) > 0.06*c.want {
			t.Errorf("%d joints: 95 in 100 within %v mm, want %v", c.n, got, c.want)
		}
	}
}

// The same with joints that each give a little otherwise: none must follow another.
func TestUnequalJointsAreIndependent(t *testing.T) {
	s, variance := Stack{}, 0.0
	for k := range 60 {
		by := length.Millimetre + length.Length(k)
		s, variance = s.With(by, 1), variance+by.MM()*by.MM()/3
	}
	if want := 1.95996 * math.Sqrt(variance); math.Abs(s.Usual().MM()-want) > 0.06*want {
		t.Errorf("95 in 100 within %v mm, want %v", s.Usual().MM(), want)
	}
}

func TestAnEmptyChainIsOffByNothing(t *testing.T) {
	s := Stack{}.With(0, 3).With(-length.Inch, 2).With(length.Inch, 0)
	if len(s) != 0 || s.Worst() != 0 || s.RootSumSquare() != 0 || s.Usual() != 0 {
		t.Errorf("%v", s)
	}
}

func stacks() *rapid.Generator[Stack] {
	return rapid.Custom(func(t *rapid.T) (s Stack) {
		for range rapid.IntRange(1, 4).Draw(t, "kinds") {
			s = s.With(length.Length(rapid.IntRange(10_000, 5_000_000).Draw(t, "by")), rapid.IntRange(1, 5).Draw(t, "times"))
		}
		return s
	})
}

// The worst case is never less than the 95 % span or the root of squares; one more joint never makes a chain surer; the
// span of one more joint may be less by chance alone, which is less than 3 %.
func TestOneMoreJointNeverNarrowsAChain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := stacks().Draw(t, "chain")
		longer := s.With(length.Length(rapid.IntRange(10_000, 5_000_000).Draw(t, "more")), 1)
		if s.Worst() < s.Usual() || s.Worst() < s.RootSumSquare() {
			t.Fatalf("worst %v, usual %v, root %v", s.Worst(), s.Usual(), s.RootSumSquare())
		}
		if longer.Worst() <= s.Worst() || longer.RootSumSquare() < s.RootSumSquare() {
			t.Fatalf("worst %v to %v, root %v to %v", s.Worst(), longer.Worst(), s.RootSumSquare(), longer.RootSumSquare())
		}
		if longer.Usual().MM() < 0.97*s.Usual().MM() {
			t.Fatalf("usual %v to %v", s.Usual(), longer.Usual())
		}
	})
}

func TestTheOrderOfAChainDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := stacks().Draw(t, "a"), stacks().Draw(t, "b")
		if ab, ba := a.And(b), b.And(a); ab.Worst() != ba.Worst() || ab.Usual() != ba.Usual() {
			t.Fatalf("%v and %v", ab, ba)
		}
	})
}

// 3/4 in: make-up 9/16 in, hand-tight 0.339 in (ASME B1.20.1), 14 threads to the inch: (0.5625 − 0.339)·14 = 3.129 turns
// past hand-tight. Wrench-tight is 1.5 to 3.6 (common practice): 0.471 left, 1.629 fewer.
func TestTurnsLeftInAJoint(t *testing.T) {
	tighter, looser := fittingOf(t, "3/4", Cap).Size.TurnsLeft()
	if math.Abs(tighter-0.471) > 0.001 || math.Abs(looser-1.629) > 0.001 {
		t.Errorf("%v and %v turns", tighter, looser)
	}
	if a, b := (Size{}).TurnsLeft(); a != 0 || b != 0 {
		t.Errorf("no thread, but %v and %v turns", a, b)
	}
}

func BenchmarkUsual(b *testing.B) {
	s := Stack{}.With(length.Millimetre, 4).With(2*length.Millimetre, 4)
	for b.Loop() {
		s.Usual()
	}
}
