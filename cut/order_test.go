package cut_test

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

func task(on string, setting length.Length, after int, makes ...string) cut.Task {
	return cut.Task{After: after, Setting: cut.Setting{On: on, Machine: cut.Crosscut, Setting: setting, Makes: makes}}
}

func TestCutsOfOneSettingAreMadeTogether(t *testing.T) {
	got := cut.Order([]cut.Task{
		task("B1", 40, -1, "A1"), task("B1", 20, 0, "A2"), task("B2", 40, -1, "A3"), task("B2", 40, 2, "A4"), task("B2", 20, 3, "A5"),
	})
	want := []cut.Setting{
		{N: 1, On: "B1", Machine: cut.Crosscut, Setting: 40, Makes: []string{"A1"}},
		{N: 2, On: "B2", Machine: cut.Crosscut, Setting: 40, Makes: []string{"A3", "A4"}},
		{N: 3, On: "B1", Machine: cut.Crosscut, Setting: 20, Makes: []string{"A2"}},
		{N: 4, On: "B2", Machine: cut.Crosscut, Setting: 20, Makes: []string{"A5"}},
	}
	if !slices.EqualFunc(got, want, func(a, b cut.Setting) bool {
		return a.N == b.N && a.On == b.On && a.Setting == b.Setting && slices.Equal(a.Makes, b.Makes)
	}) {
		t.Errorf("got %v", got)
	}
}

// Laws of the order: every cut is made once, none before the cut it comes after.
func TestNoCutComesBeforeTheOneItNeeds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 30).Draw(t, "tasks")
		tasks := make([]cut.Task, n)
		name := func(i int) string { return string(rune('a' + i)) }
		for i := range tasks {
			tasks[i] = task(name(i), length.Length(rapid.IntRange(1, 4).Draw(t, "setting")), rapid.IntRange(-1, i-1).Draw(t, "after"), name(i))
		}
		place := map[string]int{}
		for at, s := range cut.Order(tasks) {
			for _, m := range s.Makes {
				if _, twice := place[m]; twice {
					t.Fatalf("%s is made twice", m)
				}
				place[m] = at
			}
		}
		if len(place) != n {
			t.Fatalf("%d of %d cuts are made", len(place), n)
		}
		for i, task := range tasks {
			if task.After >= 0 && place[name(i)] < place[name(task.After)] {
				t.Fatalf("cut %d comes before cut %d", i, task.After)
			}
		}
	})
}

func TestABudgetEndsWithItsNodesOrItsContext(t *testing.T) {
	b := cut.NewBudget(context.Background(), cut.Limits{Nodes: 10})
	if !b.Spend(10) || b.Over() {
		t.Error("ten nodes must be enough for ten")
	}
	if b.Spend(1) || !b.Over() || b.Left() != 0 {
		t.Error("the eleventh node must end the search")
	}
	ctx, cancel := context.WithCancel(context.Background())
	c := cut.NewBudget(ctx, cut.Limits{})
	cancel()
	for range 2000 {
		c.Spend(1)
	}
	if !c.Over() {
		t.Error("a cancelled context must end the search soon")
	}
	if cut.NewBudget(context.Background(), cut.Limits{}).Left() != cut.DefaultNodes {
		t.Error("no limit must be the default one")
	}
}

func TestDiceFallTheSameEveryTime(t *testing.T) {
	a, b := cut.NewDice(7), cut.NewDice(7)
	seen := map[int]bool{}
	for range 200 {
		n := a.N(6)
		if n != b.N(6) || n < 0 || n > 5 {
			t.Fatal("dice of one seed differ or fall off the table")
		}
		seen[n] = true
		if s := a.Share(); s < 0 || s >= 1 || s != b.Share() {
			t.Fatalf("a share of %v", s)
		}
	}
	if len(seen) != 6 {
		t.Errorf("only %d faces were seen", len(seen))
	}
}
