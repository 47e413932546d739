package stick

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

// fewest is the least number of sticks by trying everything: each part on every stick that was begun, or a new one.
func fewest(sizes []int64, room int64) int {
	best := len(sizes)
	var put func(i int, slack []int64)
	put = func(i int, slack []int64) {
		if len(slack) >= best {
			return
		}
		if i == len(sizes) {
			best = len(slack)
			return
		}
		for s := range slack {
			if slack[s] >= sizes[i] {
				slack[s] -= sizes[i]
				put(i+1, slack)
				slack[s] += sizes[i]
			}
		}
		put(i+1, append(slack, room-sizes[i]))
	}
	put(0, nil)
	return best
}

// drawTight is a few parts that nearly fill their sticks, where simple layouts often need one stick more than the
// best.
func drawTight(t *rapid.T) (*Problem, []int64) {
	room := rapid.IntRange(20, 60).Draw(t, "room")
	p := &Problem{Unit: length.MM, Stock: []Stock{{Tag: "S", Length: length.Length(room) * length.Millimetre, Count: cut.Any, Price: cut.Priced(1)}}}
	var sizes []int64
	for range rapid.IntRange(4, 10).Draw(t, "parts") {
		size := rapid.IntRange(room/6, room/2+2).Draw(t, "size")
		p.Parts = append(p.Parts, Part{Tag: "C", Length: length.Length(size) * length.Millimetre, Count: 1})
		sizes = append(sizes, int64(size))
	}
	return p, sizes
}

// tight is a problem with its sizes.
type tight struct {
	problem *Problem
	sizes   []int64
}

func TestNoBoundLiesAboveTheFewestSticks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, sizes := drawTight(t)
		want := float64(fewest(sizes, int64(p.Stock[0].Length/length.Millimetre)))
		m := newModel(p)
		s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
		s.best.left = make([]int, len(m.kinds))
		s.offer(s.m.firstFit())
		s.byColumns()
		if s.bound > want+costEps || s.rank.cost < want-costEps {
			t.Fatalf("bound %v and cost %v of a problem of %v sticks", s.bound, s.rank.cost, want)
		}
	})
}

// A pool of all ways that may serve holds a plan of fewer sticks whenever there is one.
func TestAPoolFindsThePlanOrProvesThatThereIsNone(t *testing.T) {
	found, refuted := 0, 0
	for seed := range 4000 {
		drawn := rapid.Custom(func(t *rapid.T) tight { p, sizes := drawTight(t); return tight{p, sizes} }).Example(seed)
		p, sizes := drawn.problem, drawn.sizes
		want := float64(fewest(sizes, int64(p.Stock[0].Length/length.Millimetre)))
		m := newModel(p)
		s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
		s.best.left = make([]int, len(m.kinds))
		s.offer(s.m.firstFit())
		c := newColumns(s)
		c.seed()
		s.bound = s.rank.cost - 1
		had := s.rank.cost
		s.byPool(c, largePool)
		switch {
		case s.rank.cost < had && s.rank.cost >= want:
			found++
		case had > want:
			t.Fatalf("%v sticks, %v are enough, and the pool proves %v", had, want, s.bound)
		case s.bound == had:
			refuted++
		default:
			t.Fatalf("%v sticks are the fewest, and the pool left it open", had)
		}
	}
	if found == 0 || refuted == 0 {
		t.Errorf("%d found, %d refuted: the problems are too easy", found, refuted)
	}
}
