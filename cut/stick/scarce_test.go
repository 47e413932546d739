package stick

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
)

// drawScarce is a few parts for sticks of which few are there.
func drawScarce(t *rapid.T) *Problem {
	p := drawPriced(t)
	for i := range p.Stock {
		p.Stock[i].Count = cut.Count(rapid.IntRange(0, 2).Draw(t, "there"))
	}
	return p
}

// leastLeftOf is the least length, saw cuts included, that is left over, by trying everything.
func leastLeftOf(m *model) int64 {
	var parts []int
	for k, kd := range m.kinds {
		parts = append(parts, slices.Repeat([]int{k}, kd.need)...)
	}
	var slack []int64
	for _, st := range m.stores[:m.sold] {
		slack = append(slack, slices.Repeat([]int64{st.room}, st.count)...)
	}
	best := int64(math.MaxInt64)
	var put func(i int, left int64)
	put = func(i int, left int64) {
		if i == len(parts) || left >= best {
			best = min(best, left)
			return
		}
		kd := m.kinds[parts[i]]
		if kd.buys >= 0 {
			put(i+1, left)
			return
		}
		for s := range slack {
			if slack[s] >= kd.size {
				slack[s] -= kd.size
				put(i+1, left)
				slack[s] += kd.size
			}
		}
		put(i+1, left+kd.size)
	}
	put(0, 0)
	return best
}

func TestNoLessIsLeftOverThanStockCanHold(t *testing.T) {
	met, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		m := newModel(drawScarce(t))
		for s := range m.stores[:m.sold] {
			m.stores[s].count = max(m.stores[s].count, 0)
		}
		if len(m.kinds) == 0 {
			return
		}
		s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{Nodes: 50_000}))
		least, want := s.leastLeft(), leastLeftOf(m)
		if s.run(); s.rank.left < want || least > want {
			t.Fatalf("%d are left over, at least %d by what stock holds; by trying everything %d", s.rank.left, least, want)
		}
		if all++; s.rank.left == want {
			met++
		}
	})
	if met*100 < all*95 {
		t.Errorf("of %d tiny problems %d leave the least over", all, met)
	}
}

// What is placed is laid out as if nothing else had been asked for.
func TestWhatIsPlacedIsLaidOutAsWellAsByItself(t *testing.T) {
	proven, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawScarce(t)
		m := newModel(p)
		if len(m.kinds) == 0 {
			return
		}
		s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{Nodes: rapid.SampledFrom([]int{1, 50_000}).Draw(t, "nodes")}))
		if s.run(); s.rank.left == 0 {
			return
		}
		for k, n := range s.placed() {
			m.kinds[k].need = n
		}
		want := leastOf(m)
		if s.bound > want+costEps || s.rank.cost < want-costEps || math.Abs(m.cost(s.best.loads)-s.rank.cost) > costEps {
			t.Fatalf("bound %v and cost %v of %v, the least is %v", s.bound, s.rank.cost, s.best.loads, want)
		}
		if all++; s.done() || s.rank.cost <= s.bound+costEps {
			proven++
		}
	})
	if proven*100 < all*90 {
		t.Errorf("of %d tiny problems with parts left over %d are proven", all, proven)
	}
}

// The budget is for finding a layout; where the parts are longer than all stock together there is nothing to find.
func TestSearchingEndsWhereStockHoldsNoMore(t *testing.T) {
	p := &Problem{Stock: []Stock{{Tag: "S", Length: 1000, Count: 2, Price: cut.Priced(10)}}, Parts: []Part{{Tag: "C1", Length: 600, Count: 3}, {Tag: "C2", Length: 400, Count: 3}}}
	s := newSearch(newModel(p), cut.NewBudget(context.Background(), cut.Limits{}))
	if s.run(); s.rank.left != 1000 || s.bound != 20 || s.budget.Left() < cut.DefaultNodes-patience {
		t.Errorf("%d left over, bound %v, %d nodes spent", s.rank.left, s.bound, cut.DefaultNodes-s.budget.Left())
	}
}
