package finding_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/finding"
)

func ExampleJudge() {
	fmt.Println(finding.Judge(17, 20, finding.AtMost))   // a can of 17 in under 20 in of room
	fmt.Println(finding.Judge(9.5, 10, finding.AtLeast)) // goes over at 9.5°, asked 10°
	// Output:
	// tight
	// fails
}

// The bounds of tight are the project's own rule: over 0.8 of a maximum, under 1.2 of a minimum.
func TestTightIsWithinAFifthOfTheLimit(t *testing.T) {
	for _, c := range []struct {
		value, limit float64
		sense        finding.Sense
		want         finding.Verdict
	}{
		{8, 10, finding.AtMost, finding.Stands},
		{8.001, 10, finding.AtMost, finding.Tight},
		{10, 10, finding.AtMost, finding.Tight},
		{10.001, 10, finding.AtMost, finding.Fails},
		{0, 0, finding.AtMost, finding.Stands},
		{0.001, 0, finding.AtMost, finding.Fails},
		{12, 10, finding.AtLeast, finding.Stands},
		{11.999, 10, finding.AtLeast, finding.Tight},
		{10, 10, finding.AtLeast, finding.Tight},
		{9.999, 10, finding.AtLeast, finding.Fails},
		{0, 0, finding.AtLeast, finding.Stands},
		{-1, 0, finding.AtLeast, finding.Fails},
	} {
		if got := finding.Judge(c.value, c.limit, c.sense); got != c.want {
			t.Errorf("Judge(%v, %v, %v) = %v, want %v", c.value, c.limit, c.sense, got, c.want)
		}
	}
}

func TestAFigureThatMovesAwayFromItsLimitNeverGetsAWorseVerdict(t *testing.T) {
	rank := map[finding.Verdict]int{finding.Stands: 0, finding.Tight: 1, finding.Fails: 2}
	rapid.Check(t, func(t *rapid.T) {
		limit := rapid.Float64Range(0.001, 1e6).Draw(t, "limit")
		near := rapid.Float64Range(0, 2e6).Draw(t, "near")
		far := rapid.Float64Range(0, near).Draw(t, "far")
		if rank[finding.Judge(far, limit, finding.AtMost)] > rank[finding.Judge(near, limit, finding.AtMost)] {
			t.Fatal("less of what must stay below came out worse")
		}
		if rank[finding.Judge(near, limit, finding.AtLeast)] > rank[finding.Judge(far, limit, finding.AtLeast)] {
			t.Fatal("more of what must stay above came out worse")
		}
	})
}

func TestTheWorstVerdictIsThatOfThePiece(t *testing.T) {
	of := func(vs ...finding.Verdict) (fs []finding.Finding) {
		for _, v := range vs {
			fs = append(fs, finding.Finding{Verdict: v})
		}
		return fs
	}
	for _, c := range []struct {
		all  []finding.Finding
		want finding.Verdict
	}{
		{nil, finding.Stands},
		{of(finding.Stands, finding.Tight), finding.Tight},
		{of(finding.Unknown, finding.Tight), finding.Unknown},
		{of(finding.Fails, finding.Unknown), finding.Fails},
	} {
		if got := finding.Worst(c.all); got != c.want {
			t.Errorf("worst of %v is %v, want %v", c.all, got, c.want)
		}
	}
}

func TestAssumptionsAreToldOnceInOrder(t *testing.T) {
	f := finding.Finding{
		Assumed: []string{"flat-sawn"},
		Figure:  figure.Figure{Assumed: []string{"from memory", "flat-sawn"}},
		Because: []figure.Figure{{Assumed: []string{"from memory", "resting ends"}}},
	}
	if got, want := f.Assumptions(), []string{"flat-sawn", "from memory", "resting ends"}; !slices.Equal(got, want) {
		t.Errorf("assumptions %q, want %q", got, want)
	}
	if len(f.Assumed) != 1 {
		t.Error("asking for the assumptions changed the finding")
	}
}
