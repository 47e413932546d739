package frame_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/mechanics/frame"
)

// TestNowhereIsAStickBentMoreThanItIsSaidToBe cuts a loaded stick at many places and adds up the moments of what
// lies on the near side, by the statics of the cut.
func TestNowhereIsAStickBentMoreThanItIsSaidToBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rigid("ab", "a", "b")
		m.Section.Round = rapid.Bool().Draw(t, "round")
		m.Start.Springs.Y, m.End.Springs.Z = rapid.SampledFrom([]float64{0, 1e6, frame.Rigid}).Draw(t, "y"), rapid.SampledFrom([]float64{0, 1e6, frame.Rigid}).Draw(t, "z")
		f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("b", 1000, 0, 0, frame.Clamped)}, Members: []frame.Member{m}}
		c := frame.Case{Name: "any"}
		for i := range rapid.IntRange(1, 3).Draw(t, "evens") {
			from := rapid.Float64Range(0, 900).Draw(t, fmt.Sprint("from ", i))
			c.Evens = append(c.Evens, frame.Even{Member: "ab", From: from, To: rapid.Float64Range(from+50, 1000).Draw(t, "to"), PerMM: vec(t, 2)})
		}
		for range rapid.IntRange(0, 1).Draw(t, "points") {
			c.Points = append(c.Points, frame.Point{Member: "ab", At: rapid.Float64Range(0, 1000).Draw(t, "at"), Force: vec(t, 200)})
		}
		s := worked(t, f, c)[0].Members[0]
		most := 0.0
		for i := range 2001 {
			most = math.Max(most, cut(c, s, float64(i)/2, m.Section))
		}
		if most > s.Bending*(1+1e-9)+1e-12 {
			t.Fatalf("cuts show %g MPa, the stick says %g at %g mm", most, s.Bending, s.At)
		}
		if here := cut(c, s, s.At, m.Section); math.Abs(here-s.Bending) > 1e-6*(1+s.Bending) {
			t.Fatalf("at %g mm a cut shows %g MPa, not %g", s.At, here, s.Bending)
		}
	})
}

// cut is the stress at x of a stick along x: own axes are those of the frame.
func cut(c frame.Case, s frame.Strain, x float64, section frame.Section) float64 {
	my, mz := s.Start[4]+x*s.Start[2], s.Start[5]-x*s.Start[1]
	for _, p := range c.Points {
		my += math.Max(0, x-p.At) * p.Force[2]
		mz -= math.Max(0, x-p.At) * p.Force[1]
	}
	for _, e := range c.Evens {
		run := math.Max(0, math.Min(x, e.To)-e.From)
		my += run * (x - e.From - run/2) * e.PerMM[2]
		mz -= run * (x - e.From - run/2) * e.PerMM[1]
	}
	if section.Round {
		return math.Hypot(my/section.WY, mz/section.WZ)
	}
	return math.Abs(my)/section.WY + math.Abs(mz)/section.WZ
}
