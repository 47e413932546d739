package stick_test

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// drawBuying draws a problem some of whose parts can be bought, and some of whose take work.
func drawBuying(t *rapid.T, stocks, kinds, pieces int) *stick.Problem {
	p := drawProblem(t, stocks, kinds, pieces)
	for i := range p.Parts {
		if rapid.IntRange(0, 3).Draw(t, "sold ready made") > 0 {
			p.Parts[i].Bought = cut.Priced(float64(rapid.IntRange(0, 40).Draw(t, "bought")) / 8)
		}
		if rapid.Bool().Draw(t, "work") {
			p.Parts[i].Making = cut.Priced(float64(rapid.IntRange(0, 16).Draw(t, "making")) / 8)
		}
	}
	return p
}

func TestEveryAnswerWithBoughtPartsPassesTheVerifier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBuying(t, 4, 8, 9)
		a, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: rapid.SampledFrom([]int{1, 300, 5000}).Draw(t, "nodes")})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Stick(p, a) {
			t.Errorf("%v", f)
		}
	})
}

// leastBuying is the least cost of having all parts, found by trying everything: each part is bought where it can be,
// or goes on a stick that is open or on a new one of every stock. It is +Inf when they can't all be had.
func leastBuying(p *stick.Problem) float64 {
	var parts []stick.Part
	for _, q := range p.Parts {
		for range q.Count {
			parts = append(parts, q)
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
		if parts[i].Bought.Given {
			put(i+1, cost+parts[i].Bought.Value)
		}
		need, cost := parts[i].Length+p.Kerf, cost+parts[i].Making.Value
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

func TestNoBoundLiesAboveTheLeastCostOfBuyingAndCutting(t *testing.T) {
	best, proven, all := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawBuying(t, 3, 4, 2)
		want := leastBuying(p)
		a, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		if math.IsInf(want, 1) {
			if len(a.NotPlaced) == 0 {
				t.Fatal("all parts are there, though that can't be")
			}
			return
		}
		all++
		if len(a.NotPlaced) == 0 && math.Abs(a.Cost-want) < 1e-6 {
			best++
		}
		if len(a.NotPlaced) == 0 && a.Proven {
			proven++
		}
		if len(a.NotPlaced) == 0 && (a.Bound > want+1e-6 || a.Cost < want-1e-6) {
			t.Fatalf("bound %v, optimum %v, cost %v", a.Bound, want, a.Cost)
		}
	})
	if best*100 < all*98 || proven*100 < all*90 {
		t.Errorf("of %d tiny problems %d are solved to the optimum, %d proven", all, best, proven)
	}
}

// nipple is a part that can be bought.
func nipple(tag string, l length.Length, count cut.Count, bought float64) stick.Part {
	return stick.Part{Tag: tag, Length: l, Count: count, Bought: cut.Priced(bought)}
}

// bench is sticks of 1000 mm at 10 each, without saw cuts and trim, so that a layout is reckoned in the head.
func bench(parts ...stick.Part) *stick.Problem {
	p := one(0, 0, 1000*mm, parts...)
	p.Stock[0].Price = cut.Priced(10)
	return p
}

// Worked by hand: what the sticks leave decides.
func TestShortPipesAreBoughtOrCutAsTheSticksLeaveRoom(t *testing.T) {
	long := func(l length.Length, count cut.Count) stick.Part {
		return stick.Part{Tag: "C1", Length: l * mm, Count: count}
	}
	worked := func(p stick.Part, making float64) stick.Part {
		p.Making = cut.Priced(making)
		return p
	}
	for _, c := range []struct {
		name     string
		parts    []stick.Part
		opened   int
		bought   int
		wantCost float64
	}{
		{"one more stick, 10, would be opened for a nipple of 3", []stick.Part{long(900, 1), nipple("C2", 150*mm, 1, 3)}, 1, 1, 13},
		{"it comes out of the 200 mm that are left anyway", []stick.Part{long(800, 1), nipple("C2", 150*mm, 1, 3)}, 1, 0, 10},
		{"each of two sticks leaves 300 mm for two of six; a third stick costs more than two nipples", []stick.Part{long(700, 2), nipple("C2", 140*mm, 6, 3)}, 2, 2, 26},
		{"and work of 1 on each that is cut", []stick.Part{long(700, 2), worked(nipple("C2", 140*mm, 6, 3), 1)}, 2, 2, 30},
		{"work dearer than the nipple: none is cut, though there is room", []stick.Part{long(700, 2), worked(nipple("C2", 140*mm, 6, 3), 4)}, 2, 6, 38},
		{"four nipples of 3 cost more than a stick", []stick.Part{long(1000, 1), nipple("C2", 250*mm, 4, 3)}, 2, 0, 20},
		{"three cost less", []stick.Part{long(1000, 1), nipple("C2", 250*mm, 3, 3)}, 1, 3, 19},
		{"the dearer of two goes where there is room for one", []stick.Part{long(800, 1), nipple("C2", 190*mm, 1, 3), nipple("C3", 110*mm, 1, 4)}, 1, 1, 13},
		{"of one length, one sold and one not", []stick.Part{long(800, 1), nipple("C2", 200*mm, 1, 3), {Tag: "C3", Length: 200 * mm, Count: 1}}, 1, 1, 13},
		{"a nipple longer than any stick", []stick.Part{nipple("C2", 1200*mm, 2, 3)}, 0, 2, 6},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := solve(t, bench(c.parts...))
			if len(a.Used) != c.opened || len(a.Bought) != c.bought || a.Cost != c.wantCost || !a.Proven {
				t.Errorf("%d sticks, %v bought, cost %v of at least %v; want %d, %d for %v proven", len(a.Used), a.Bought, a.Cost, a.Bound, c.opened, c.bought, c.wantCost)
			}
		})
	}
}

func TestThatPartsCanBeBoughtNeverMakesALayoutDearer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBuying(t, 3, 12, 6)
		nodes := rapid.SampledFrom([]int{5000, 20_000}).Draw(t, "nodes") // with far fewer, one is searched less than the other
		with, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: nodes})
		if err != nil {
			t.Fatal(err)
		}
		for i := range p.Parts {
			p.Parts[i].Bought = cut.Price{}
		}
		without, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: nodes})
		if err != nil {
			t.Fatal(err)
		}
		if len(without.NotPlaced) == 0 && with.Cost > without.Cost+1e-6 {
			t.Fatalf("%v when parts can be bought, %v when they can't", with.Cost, without.Cost)
		}
	})
}

func TestWhatCanOnlyBeBoughtIsBoughtWhereNoStickIsThere(t *testing.T) {
	p := bench(nipple("C2", 140*mm, 2, 3), stick.Part{Tag: "C1", Length: 500 * mm, Count: 1})
	p.Stock[0].Count = 0
	if a := solve(t, p); len(a.Bought) != 2 || len(a.NotPlaced) != 1 || a.Cost != 6 {
		t.Errorf("bought %v, not placed %v, cost %v", a.Bought, a.NotPlaced, a.Cost)
	}
}

// Two parts of one length, of which one can be bought, are two kinds and yet one setting of the stop.
func TestTheStopIsSetOnceForPartsOfOneLength(t *testing.T) {
	a := solve(t, bench(nipple("C1", 400*mm, 1, 30), stick.Part{Tag: "C2", Length: 400 * mm, Count: 1}))
	if len(a.Cuts) != 1 || len(a.Cuts[0].Makes) != 2 {
		t.Errorf("%+v", a.Cuts)
	}
}
