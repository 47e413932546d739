package panel

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
)

// By hand: 160 wanted, segments of 100. The program alone would be content with 1.6 of them; a step of 159 asks for two.
func TestARoundingAsksForWholeSegments(t *testing.T) {
	r := rounding{step: 159, need: 160}
	if got := r.count() / r.of(100); got != 2 {
		t.Errorf("%v segments, want 2", got)
	}
}

func TestWhatIsWideEnoughCountsEnoughInEveryRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rounding{step: float64(rapid.IntRange(1, 60).Draw(t, "step")), need: float64(rapid.IntRange(1, 200).Draw(t, "need"))}
		width, count := 0.0, 0.0
		for width < r.need {
			u := float64(rapid.IntRange(1, 90).Draw(t, "width"))
			width, count = width+u, count+r.of(u)
		}
		if count < r.count() {
			t.Fatalf("%+v: segments of %v count %v, want %v", r, width, count, r.count())
		}
	})
}

// twoBoards is boards of 100 without defects for panels of two lengths.
func twoBoards() *Problem {
	return &Problem{
		Kerf: 2, Salvage: 0.5, MinTail: 30, Strip: cut.Span{Least: 10},
		Boards: []Board{{Tag: "B1", Length: 100, Width: 10, Price: cut.Priced(40)}, {Tag: "B2", Length: 100, Width: 12, Price: cut.Priced(44)}},
		Panels: []Panel{{Tag: "A1", Length: 30, Width: 30, Count: 1, Show: cut.Clear}, {Tag: "A2", Length: 45, Width: 10, Count: 1, Show: cut.Clear}},
	}
}

func always(int) bool { return true }

// By hand: a board of 100 with saw cuts of 2 yields three segments of 30 (94 + 2), two of 45 (92), or one of 45 and one
// of 30 (77) before a tail of 21, too short to keep. Fewer segments keep a tail: of one of 45, 53; of two of 30, 36; of
// one of 30, 68.
func TestAllWaysOfABoardAreListed(t *testing.T) {
	l := newBound(newModel(twoBoards()), nil)
	ways, ok := l.list(l.boards[0], []float64{1, 1}, l.needs(), math.Inf(-1), 100, rule{}, always)
	if !ok {
		t.Fatal("too many")
	}
	got := map[[2]float64]float64{}
	for _, w := range ways {
		got[[2]float64{w.yields[0], w.yields[1]}] = w.cost
	}
	want := map[[2]float64]float64{
		{30, 0}: 40, {20, 0}: 40 - 20*0.36, {10, 0}: 40 - 20*0.68, {10, 10}: 40, {0, 10}: 40 - 20*0.53,
	}
	for y, c := range want {
		if math.Abs(got[y]-c) > 1e-9 {
			t.Errorf("yields %v cost %v, want %v", y, got[y], c)
		}
	}
	for y := range got {
		if _, ok := want[y]; !ok && y != [2]float64{} {
			t.Errorf("%v is listed, though another way is as good", y)
		}
	}
}

// A path by a rule is the best of the ways that keep it.
func TestARuleIsKept(t *testing.T) {
	l := newBound(newModel(twoBoards()), nil)
	for _, c := range []struct {
		name  string
		rule  rule
		value float64
	}{
		{"none", rule{}, 30},
		{"never the short ones", rule{never: 1}, 2 * 1.2 * 10},
		{"the long ones once", rule{once: 2}, 24},
		{"both once", rule{once: 3}, 10 + 12},
	} {
		p := l.ruled(l.boards[0], []float64{1, 1.2}, c.rule)
		if math.Abs(p.value-c.value) > 1e-9 || !c.rule.allows(p.way) {
			t.Errorf("%s: %v, want %v", c.name, p.value, c.value)
		}
	}
	if p := l.ruled(l.boards[0], []float64{1, 1}, rule{never: 2, once: 2}); !math.IsInf(p.value, -1) {
		t.Errorf("a kind both never and once: %v", p.value)
	}
}

// What wanders at random stays within what it may be worse.
func TestAWayAtRandomIsLittleWorseThanTheBest(t *testing.T) {
	l := newBound(newModel(twoBoards()), nil)
	dice := cut.NewDice(7)
	rapid.Check(t, func(t *rapid.T) {
		price := []float64{float64(rapid.IntRange(1, 9).Draw(t, "p")), float64(rapid.IntRange(1, 9).Draw(t, "q"))}
		most := float64(rapid.IntRange(0, 60).Draw(t, "most"))
		b := l.boards[1]
		l.completions(b, price)
		w := l.wander(b, most, dice)
		value := b.cost - w.cost + price[0]*w.yields[0] + price[1]*w.yields[1]
		if best := l.path(b, price).value; value < best-most-1e-9 {
			t.Fatalf("worth %v, the best is %v, allowed %v less", value, best, most)
		}
	})
}

// Lagrange's bound holds at any prices, the best layout found is never below it, and the program's own is the greatest.
func TestTheBoundHoldsAtAnyPrices(t *testing.T) {
	m := newModel(twoBoards())
	s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
	s.run()
	rapid.Check(t, func(t *rapid.T) {
		p := newProgram(newBound(m, nil), s.budget.Again(100_000))
		best, _ := p.solve(p.all(), math.Inf(1))
		for i := range p.price {
			p.price[i] = rapid.Float64Range(0, 8).Draw(t, "price")
		}
		if v, _ := p.lagrange(p.all(), false); v > best+1e-6 || best > s.best.cost+1e-9 {
			t.Fatalf("bound %v at %v, the program's %v, cost %v", v, p.price, best, s.best.cost)
		}
	})
}

// By hand: strips of 10 can't be ripped narrower, so two panels of 15 take four of them, though three are as wide. One
// board yields three: the bound does not know of ripping and must stay at its price.
func TestWhatCanNotBeRippedCountsAsPossibleInTheBound(t *testing.T) {
	p := &Problem{
		Kerf: 2, Strip: cut.Span{Least: 10},
		Boards: []Board{{Tag: "B1", Length: 96, Width: 10, Price: cut.Priced(40)}, {Tag: "B2", Length: 96, Width: 10, Price: cut.Priced(41)}},
		Panels: []Panel{{Tag: "A1", Length: 30, Width: 15, Count: 2, Show: cut.Clear}},
	}
	a, err := Solve(context.Background(), p, cut.Limits{Nodes: 150_000})
	if err != nil {
		t.Fatal(err)
	}
	if a.Cost != 81 || a.Bound != 40 || a.Proven {
		t.Errorf("cost %v, bound %v, proven %v; want 81, 40 and not proven", a.Cost, a.Bound, a.Proven)
	}
}
