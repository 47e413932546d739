package panel

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

// A sweep goes through all ways of a few boards: the least cost that is wide enough, whether it could be ripped or not,
// is that of trying every choice.
func TestASweepMissesNoChoice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := twoBoards()
		p.Boards = nil
		for i := range rapid.IntRange(2, 4).Draw(t, "boards") {
			p.Boards = append(p.Boards, Board{
				Tag: string(rune('A' + i)), Length: length.Length(rapid.IntRange(60, 130).Draw(t, "length")),
				Width: length.Length(rapid.IntRange(10, 19).Draw(t, "width")), Price: cut.Priced(float64(rapid.IntRange(20, 60).Draw(t, "price"))),
			})
		}
		m := newModel(p)
		if len(m.kinds) < 2 {
			return
		}
		s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
		s.best = &layout{segments: make([][]segment, len(m.boards)), cost: 400}
		l := newBound(m, nil)
		st := &settling{s: s, l: l, hole: math.Inf(1), fixed: make([][]segment, len(m.boards)), need: l.needs()}
		for k, b := range l.boards {
			ways, _ := l.list(b, []float64{1, 1}, l.needs(), math.Inf(-1), 1000, rule{}, always)
			st.boards = append(st.boards, pooled{board: k, ways: ways})
		}
		st.open()
		want := cheapestChoice(st, 0, l.needs(), 0)
		if !st.sweep(1_000_000) {
			t.Fatal("broken off")
		}
		if got := math.Min(st.hole, s.best.cost); math.Abs(got-math.Min(want, 400)) > 1e-6 {
			t.Fatalf("least cost %v, want %v", got, want)
		}
	})
}

// cheapestChoice tries every choice of ways.
func cheapestChoice(st *settling, i int, left []float64, cost float64) float64 {
	if i == len(st.boards) {
		for _, d := range left {
			if d > 0 {
				return math.Inf(1)
			}
		}
		return cost
	}
	best := math.Inf(1)
	for _, w := range st.boards[i].ways {
		rest := make([]float64, len(left))
		for t := range left {
			rest[t] = left[t] - w.yields[t]
		}
		best = math.Min(best, cheapestChoice(st, i+1, rest, cost+w.cost))
	}
	return best
}
