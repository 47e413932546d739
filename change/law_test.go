package change_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"rodwright/build"
	"rodwright/change"
	"rodwright/piece/random"
)

func randomBuild(t *rapid.T, label string) *build.Build {
	return derive(t, random.Document(rapid.Uint64Range(0, 1<<20).Draw(t, label)))
}

func TestABuildDoesNotDifferFromItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := randomBuild(t, "piece")
		if r := change.Compare(b, b); !r.Empty() {
			t.Fatalf("%+v", r)
		}
	})
}

func TestTheSameTwoBuildsGiveTheSameRipple(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomBuild(t, "from"), randomBuild(t, "to")
		first := change.Compare(a, b)
		for range 3 {
			if diff := cmp.Diff(first, change.Compare(a, b)); diff != "" {
				t.Fatal(diff)
			}
		}
	})
}

func TestTurnedRoundTheSameThingsDifferTheOtherWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomBuild(t, "from"), randomBuild(t, "to")
		there, back := plain(change.Compare(a, b)), plain(turnedRound(change.Compare(b, a)))
		if diff := cmp.Diff(there, back, cmpopts.EquateEmpty()); diff != "" {
			t.Fatal(diff)
		}
	})
}

// turnedRound exchanges before and after.
func turnedRound(r change.Ripple) change.Ripple {
	for i, c := range r.Cuts {
		r.Cuts[i].From, r.Cuts[i].To = c.To, c.From
	}
	for i, s := range r.Boards {
		r.Boards[i].From, r.Boards[i].To = s.To, s.From
	}
	for i, f := range r.Findings {
		r.Findings[i].From, r.Findings[i].To = f.To, f.From
	}
	r.Parts.Added, r.Parts.Gone = r.Parts.Gone, r.Parts.Added
	r.Money.From, r.Money.To = r.Money.To, r.Money.From
	r.Days.From, r.Days.To = r.Days.To, r.Days.From
	r.MassKg.From, r.MassKg.To = r.MassKg.To, r.MassKg.From
	return r
}

// plain tells every cut of one part by itself and without the tag and the kind's name, which are those of the later
// build, and puts lists into one order: that too is the later build's.
func plain(r change.Ripple) change.Ripple {
	var cuts []change.Cut
	for _, c := range r.Cuts {
		for range c.Count {
			cuts = append(cuts, change.Cut{What: c.What, From: c.From, To: c.To})
		}
	}
	r.Cuts = sorted(cuts)
	r.Boards, r.Findings = sorted(r.Boards), sorted(r.Findings)
	return r
}

func sorted[T any](list []T) []T {
	byWords := func(a, b T) int {
		x, y := fmt.Sprint(a), fmt.Sprint(b)
		switch {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	}
	return slices.SortedFunc(slices.Values(list), byWords)
}
