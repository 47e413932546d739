package stick_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// drawProblem draws a problem with up to the given numbers of kinds of stock, kinds of parts and pieces
// of each.
func drawProblem(t *rapid.T, stocks, kinds, pieces int) *stick.Problem {
	p := &stick.Problem{
		Unit: rapid.SampledFrom([]length.Unit{length.MM, length.In}).Draw(t, "unit"),
		Kerf: length.Length(rapid.IntRange(0, 4).Draw(t, "kerf")) * mm, Trim: length.Length(rapid.IntRange(0, 6).Draw(t, "trim")) * mm,
		Useful: length.Length(rapid.IntRange(0, 30).Draw(t, "useful")) * mm,
	}
	for i := range rapid.IntRange(1, stocks).Draw(t, "stocks") {
		s := stick.Stock{
			Tag: fmt.Sprint("S", i), Length: length.Length(rapid.IntRange(8, 120).Draw(t, "stock")) * mm,
			Count: cut.Count(rapid.IntRange(-1, 3).Draw(t, "there")),
		}
		if rapid.Bool().Draw(t, "priced") {
			s.Price = cut.Priced(float64(rapid.IntRange(0, 30).Draw(t, "price")) / 4)
		}
		p.Stock = append(p.Stock, s)
	}
	for i := range rapid.IntRange(0, kinds).Draw(t, "kinds") {
		p.Parts = append(p.Parts, stick.Part{
			Tag: fmt.Sprint("C", i), Length: length.Length(rapid.IntRange(1, 110).Draw(t, "length"))*mm + length.Length(rapid.IntRange(0, 1).Draw(t, "nm")),
			Count: cut.Count(rapid.IntRange(0, pieces).Draw(t, "count")),
		})
	}
	return p
}

func TestEveryAnswerPassesTheVerifier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 4, 8, 9)
		a, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: rapid.SampledFrom([]int{1, 300, 5000}).Draw(t, "nodes")})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Stick(p, a) {
			t.Errorf("%v", f)
		}
	})
}

// optimum is the least cost of cutting all parts, found by trying everything: each part goes on every
// stick that is open or on a new one of every stock. It is +Inf when they can't all be cut.
func optimum(p *stick.Problem) float64 {
	var parts []length.Length
	for _, q := range p.Parts {
		for range q.Count {
			parts = append(parts, q.Length)
		}
	}
	used := make([]cut.Count, len(p.Stock))
	var rooms []length.Length // left on each open stick, a saw cut included
	best := math.Inf(1)
	var put func(i int, cost float64)
	put = func(i int, cost float64) {
		if cost >= best {
			return
		}
		if i == len(parts) {
			best = cost
			return
		}
		need := parts[i] + p.Kerf
		for j := range rooms {
			if rooms[j] >= need {
				rooms[j] -= need
				put(i+1, cost)
				rooms[j] += need
			}
		}
		for s := range p.Stock {
			room := p.Stock[s].Length - 2*p.Trim + p.Kerf
			if room >= need && p.Room(s) > 0 && (p.Stock[s].Count == cut.Any || used[s] < p.Stock[s].Count) {
				used[s]++
				rooms = append(rooms, room-need)
				put(i+1, cost+p.Cost(s))
				rooms = rooms[:len(rooms)-1]
				used[s]--
			}
		}
	}
	put(0, 0)
	return best
}

func TestTheBoundIsNeverAboveTheOptimumNorTheCostBelow(t *testing.T) {
	best, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 3, 3, 2)
		want := optimum(p)
		a, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		if math.IsInf(want, 1) {
			if len(a.NotPlaced) == 0 {
				t.Fatal("all parts are cut, though that can't be")
			}
			return
		}
		all++
		if len(a.NotPlaced) == 0 && math.Abs(a.Cost-want) < 1e-6 {
			best++
		}
		if len(a.NotPlaced) == 0 && (a.Bound > want+1e-6 || a.Cost < want-1e-6) {
			t.Fatalf("bound %v, optimum %v, cost %v", a.Bound, want, a.Cost)
		}
	})
	if best*100 < all*95 {
		t.Errorf("only %d of %d tiny problems are solved to the optimum", best, all)
	}
}
