package cover_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut/cover"
)

// cheapest tries every number of every stock.
func cheapest(stocks []cover.Stock, need int64) float64 {
	if need <= 0 {
		return 0
	}
	if len(stocks) == 0 {
		return math.Inf(1)
	}
	s, best := stocks[0], math.Inf(1)
	most := 12
	if s.Count >= 0 {
		most = min(most, s.Count)
	}
	for n := 0; n <= most; n++ {
		best = min(best, float64(n)*s.Price+cheapest(stocks[1:], need-int64(n)*s.Hold))
	}
	return best
}

func drawStocks(t *rapid.T) []cover.Stock {
	out := make([]cover.Stock, rapid.IntRange(1, 3).Draw(t, "kinds"))
	for i := range out {
		out[i] = cover.Stock{
			Hold: int64(rapid.IntRange(3, 12).Draw(t, "hold")), Price: float64(rapid.IntRange(0, 9).Draw(t, "price")),
			Count: rapid.IntRange(-1, 4).Draw(t, "count"),
		}
	}
	return out
}

func TestLeastIsTheCheapestWholeStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stocks, need := drawStocks(t), int64(rapid.IntRange(0, 30).Draw(t, "need"))
		got, want := cover.Least(stocks, need), cheapest(stocks, need)
		if math.Abs(got-want) > 1e-9 && !(math.IsInf(got, 1) && math.IsInf(want, 1)) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

func TestSetsBeginWithTheCheapestAndAllHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stocks, need := drawStocks(t), int64(rapid.IntRange(1, 30).Draw(t, "need"))
		want := cheapest(stocks, need)
		sets := cover.Sets(stocks, need, want+3, 1000)
		if len(sets) == 0 {
			if !math.IsInf(want, 1) {
				t.Fatalf("no set, though %v is possible", want)
			}
			return
		}
		if math.Abs(sets[0].Price-want) > 1e-9 {
			t.Fatalf("the first set costs %v, the cheapest %v", sets[0].Price, want)
		}
		for _, s := range sets {
			var hold int64
			price := 0.0
			for i, n := range s.Counts {
				hold += int64(n) * stocks[i].Hold
				price += float64(n) * stocks[i].Price
				if stocks[i].Count >= 0 && n > stocks[i].Count {
					t.Fatalf("%d of stock %d, there are %d", n, i, stocks[i].Count)
				}
			}
			if hold < need || math.Abs(price-s.Price) > 1e-9 {
				t.Fatalf("set %v holds %d and costs %v", s, hold, price)
			}
		}
	})
}

// fullest tries every choice of items.
func fullest(items []cover.Item, room int64) int64 {
	if len(items) == 0 {
		return 0
	}
	it, best := items[0], int64(0)
	for n := 0; n <= it.Count && int64(n)*it.Size <= room; n++ {
		best = max(best, int64(n)*it.Value+fullest(items[1:], room-int64(n)*it.Size))
	}
	return best
}

func drawItems(t *rapid.T) []cover.Item {
	out := make([]cover.Item, rapid.IntRange(1, 5).Draw(t, "items"))
	for i := range out {
		out[i] = cover.Item{
			Size: int64(rapid.IntRange(1, 30).Draw(t, "size")), Value: int64(rapid.IntRange(0, 40).Draw(t, "value")),
			Count: rapid.IntRange(0, 3).Draw(t, "count"),
		}
	}
	return out
}

func TestMostIsTheBestKnapsackAndNeverLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, room := drawItems(t), int64(rapid.IntRange(0, 80).Draw(t, "room"))
		want := fullest(items, room)
		nodes := 100_000
		if got := cover.Most(items, room, &nodes); got != want {
			t.Fatalf("got %d, want %d", got, want)
		}
		few := 2
		if got := cover.Most(items, room, &few); got < want {
			t.Fatalf("with few nodes %d, which is less than the possible %d", got, want)
		}
	})
}

// Large lengths in nanometres must not wrap round: a stick of 6.4 m holds 20 parts of 317.6 mm.
func TestAKnapsackOfNanometres(t *testing.T) {
	nodes := 1000
	items := []cover.Item{{Size: 319_600_000, Value: 1 << 40, Count: 25}}
	if got := cover.Most(items, 6_392_000_000, &nodes); got != 20<<40 {
		t.Errorf("got %d", got>>40)
	}
}

// The definition of a dual feasible function: whatever fits a room weighs no more than the room holds.
func TestWhatFitsARoomNeverWeighsMoreThanItHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := int64(rapid.IntRange(4, 60).Draw(t, "room"))
		var sizes []int64
		for left := room; left > 0; {
			s := int64(rapid.IntRange(1, int(left)).Draw(t, "size"))
			sizes = append(sizes, s)
			left -= s
		}
		other := []int64{int64(rapid.IntRange(1, int(room)).Draw(t, "threshold")), room/2 + 1}
		for i, sc := range cover.Scales(append(other, sizes...), room, 200) {
			var w int64
			for _, s := range sizes {
				w += sc.Of(s)
			}
			if w > sc.Hold {
				t.Fatalf("by scale %d parts %v weigh %d, the room %d holds %d", i, sizes, w, room, sc.Hold)
			}
		}
	})
}

// Martello and Toth's example of why material is not enough: parts above half the room can't share it.
func TestPartsAboveHalfTheRoomNeedOneEach(t *testing.T) {
	best := 0.0
	for _, sc := range cover.Scales([]int64{60}, 100, 100) {
		best = max(best, cover.Least([]cover.Stock{{Hold: sc.Hold, Price: 1, Count: -1}}, 5*sc.Of(60)))
	}
	if best != 5 {
		t.Errorf("five parts of 60 need %v rooms of 100, want 5", best)
	}
}

// choose tries every offer of every list.
func choose(offers [][]cover.Offer, need float64) float64 {
	if need <= 1e-9 {
		return 0
	}
	if len(offers) == 0 {
		return math.Inf(1)
	}
	best := choose(offers[1:], need)
	for _, o := range offers[0] {
		best = min(best, o.Price+choose(offers[1:], need-o.Hold))
	}
	return best
}

func always(int) bool { return true }

func TestTheChoiceOfBoardsIsTheCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		offers := make([][]cover.Offer, rapid.IntRange(1, 4).Draw(t, "boards"))
		for i := range offers {
			for range rapid.IntRange(1, 14).Draw(t, "offers") {
				offers[i] = append(offers[i], cover.Offer{
					Hold: float64(rapid.IntRange(0, 50).Draw(t, "hold")), Price: float64(rapid.IntRange(0, 40).Draw(t, "price")),
				})
			}
		}
		need := float64(rapid.IntRange(1, 120).Draw(t, "need"))
		enough := rapid.SampledFrom([]float64{10, 40, math.Inf(1)}).Draw(t, "enough")
		got, want := cover.Cheapest(offers, need, enough, always), choose(offers, need)
		if !math.IsInf(want, 1) {
			want = min(enough, want)
		}
		if got.Cost != want && !(math.Abs(got.Cost-want) <= 1e-9) {
			t.Fatalf("cost %v, want %v", got.Cost, want)
		}
		if got.Picks == nil {
			return
		}
		hold, price := 0.0, 0.0
		for i, o := range got.Picks {
			if o >= 0 {
				hold, price = hold+offers[i][o].Hold, price+offers[i][o].Price
			}
		}
		if hold < need*(1-1e-9) || math.Abs(price-got.Cost) > 1e-9 {
			t.Fatalf("picks %v hold %v of %v for %v, told %v", got.Picks, hold, need, price, got.Cost)
		}
	})
}

func TestAChoiceOfFewOffersIsExact(t *testing.T) {
	offers := [][]cover.Offer{{{Hold: 5, Price: 3}, {Hold: 8, Price: 7}}, {{Hold: 5, Price: 4}}, {{Hold: 4, Price: 1}}}
	for _, c := range []struct{ need, want float64 }{{4, 1}, {9, 4}, {10, 7}, {14, 8}, {17, 12}, {18, math.Inf(1)}, {0, 0}} {
		if got := cover.Choose(offers, c.need); got != c.want {
			t.Errorf("need %v: got %v, want %v", c.need, got, c.want)
		}
	}
}

func ExampleLeast() {
	stocks := []cover.Stock{{Hold: 252, Price: 52, Count: -1}, {Hold: 120, Price: 28, Count: -1}}
	fmt.Println(cover.Least(stocks, 370), cover.Least(stocks, 200))
	// Output: 80 52
}
