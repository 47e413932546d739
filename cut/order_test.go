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
	got := cut.Arrange([]cut.Task{
		task("B1", 40, -1, "A1"), task("B1", 20, 0, "A2"), task("B2", 40, -1, "A3"), task("B2", 40, 2, "A4"), task("B2", 20, 3, "A5"),
	})
	if want := []int{0, 2, 3, 1, 4}; !slices.Equal(got.Tasks, want) || got.Settings != 2 {
		t.Errorf("got %v with %d settings", got.Tasks, got.Settings)
	}
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

// canBeMade is the law of every order: each cut once, none before the one it comes after.
func canBeMade(t *rapid.T, tasks []cut.Task, order []int) {
	made := make([]bool, len(tasks))
	for _, i := range order {
		if made[i] {
			t.Fatalf("cut %d is made twice in %v", i, order)
		}
		if a := tasks[i].After; a >= 0 && !made[a] {
			t.Fatalf("cut %d comes before cut %d in %v", i, a, order)
		}
		made[i] = true
	}
	if len(order) != len(tasks) {
		t.Fatalf("%d of %d cuts are made", len(order), len(tasks))
	}
}

// fewest tries every order of the tasks.
func fewest(tasks []cut.Task) int {
	best := 1 << 30
	made := make([]bool, len(tasks))
	var order []int
	var try func()
	try = func() {
		s, w := cut.Changes(tasks, order)
		if s+w >= best {
			return
		}
		if len(order) == len(tasks) {
			best = s + w
			return
		}
		for i, task := range tasks {
			if made[i] || task.After >= 0 && !made[task.After] {
				continue
			}
			made[i] = true
			order = append(order, i)
			try()
			order = order[:len(order)-1]
			made[i] = false
		}
	}
	try()
	return best
}

// By hand: the saw stands at 40 once for both boards; the strips of 90 and 80 lie in turn on both, but not in
// the same turn, so that one of the two settings must be made twice.
func TestASettingIsMadeAgainWhereTheCutsAskForIt(t *testing.T) {
	rip := func(on string, setting length.Length, after int) cut.Task {
		return cut.Task{After: after, Setting: cut.Setting{On: on, Machine: cut.Rip, Setting: setting}}
	}
	got := cut.Arrange([]cut.Task{
		task("B1", 40, -1), rip("B1", 90, 0), rip("B1", 80, 1),
		task("B2", 40, -1), rip("B2", 80, 3), rip("B2", 90, 4),
	})
	if got.Settings != 4 || got.Walks != 1 || !got.Fewest() {
		t.Errorf("%d settings, %d walks, at least %d; by hand 4 and 1", got.Settings, got.Walks, got.AtLeast)
	}
}

// drawTasks draws cuts on a few pieces of stock, each cut after one made before it on its own stock.
func drawTasks(t *rapid.T, most, settings int) (tasks []cut.Task) {
	last := map[string][]int{}
	for i := range rapid.IntRange(1, most).Draw(t, "cuts") {
		on := string(rune('a' + rapid.IntRange(0, 2).Draw(t, "stock")))
		after := -1
		if n := len(last[on]); n > 0 && rapid.IntRange(0, 4).Draw(t, "free") > 0 {
			after = last[on][rapid.IntRange(max(0, n-2), n-1).Draw(t, "after")]
		}
		s := cut.Setting{On: on, Machine: cut.Crosscut, Setting: length.Length(rapid.IntRange(1, settings).Draw(t, "setting"))}
		if rapid.Bool().Draw(t, "rip") {
			s.Machine = cut.Rip
		}
		tasks = append(tasks, cut.Task{Setting: s, After: after})
		last[on] = append(last[on], i)
	}
	return tasks
}

func TestNoOrderOfFewCutsHasFewerChanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tasks := drawTasks(t, 8, 3)
		got := cut.Arrange(tasks)
		canBeMade(t, tasks, got.Tasks)
		if best := fewest(tasks); got.Settings+got.Walks != best || !got.Fewest() {
			t.Fatalf("%d settings and %d walks, at least %d; of all orders the best has %d changes: %v", got.Settings, got.Walks, got.AtLeast, best, tasks)
		}
	})
}

func TestManyCutsAreOrderedWithAnHonestBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tasks := drawTasks(t, 60, 8)
		got := cut.Arrange(tasks)
		canBeMade(t, tasks, got.Tasks)
		s, w := cut.Changes(tasks, got.Tasks)
		type stop struct {
			machine cut.Machine
			setting length.Length
		}
		different := map[stop]bool{}
		for _, q := range tasks {
			different[stop{q.Machine, q.Setting.Setting}] = true
		}
		if s != got.Settings || w != got.Walks || got.AtLeast > s+w || got.AtLeast < len(different) {
			t.Fatalf("%d settings and %d walks, said %d and %d, at least %d; %d settings differ", s, w, got.Settings, got.Walks, got.AtLeast, len(different))
		}
	})
}
