package stick

import (
	"context"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

// drawWeighed is one kind of stick and parts with weights. Where it is coarse, the room has more steps than the tables
// of an enumeration.
func drawWeighed(t *rapid.T) (*model, []int64) {
	unit := length.Millimetre
	room := rapid.IntRange(10, 40).Draw(t, "room")
	coarse := rapid.Bool().Draw(t, "coarse")
	if coarse {
		room = rapid.IntRange(5000, 9000).Draw(t, "long room")
	}
	p := &Problem{Unit: length.MM, Stock: []Stock{{Tag: "S", Length: length.Length(room) * unit, Count: cut.Any, Price: cut.Priced(1)}}}
	for range rapid.IntRange(1, 7).Draw(t, "kinds") {
		size := rapid.IntRange(max(1, room/6), room).Draw(t, "size")
		p.Parts = append(p.Parts, Part{Tag: "C", Length: length.Length(size) * unit, Count: cut.Count(rapid.IntRange(1, 3).Draw(t, "count"))})
	}
	m := newModel(p)
	weight := make([]int64, len(m.kinds))
	for k := range weight {
		weight[k] = int64(rapid.IntRange(0, 30).Draw(t, "weight"))
	}
	return m, weight
}

// everyWay calls visit with every way to fill a stick, by trying all counts.
func everyWay(m *model, visit func(counts []int, length, weight int64), weight []int64) {
	counts := make([]int, len(m.kinds))
	var put func(k int, length, w int64)
	put = func(k int, length, w int64) {
		if k == len(counts) {
			visit(counts, length, w)
			return
		}
		for n := 0; n <= m.kinds[k].need && length+int64(n)*m.kinds[k].size <= m.stores[0].room; n++ {
			counts[k] = n
			put(k+1, length+int64(n)*m.kinds[k].size, w+int64(n)*weight[k])
		}
		counts[k] = 0
	}
	put(0, 0, 0)
}

func endless() *cut.Budget {
	return cut.NewBudget(context.Background(), cut.Limits{Nodes: cut.Endless})
}

func TestAnEnumerationListsJustTheWaysThatWeighEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, weight := drawWeighed(t)
		sizes := make([]int64, len(m.kinds))
		for k, kd := range m.kinds {
			sizes[k] = kd.size
		}
		least := int64(rapid.IntRange(0, 60).Draw(t, "least"))
		full := m.stores[0].room * int64(rapid.IntRange(0, 10).Draw(t, "tenths")) / 10
		want := map[string]bool{}
		everyWay(m, func(counts []int, length, w int64) {
			if length > 0 && w >= least && length >= full {
				want[fmt.Sprint(listed(counts))] = true
			}
		}, weight)
		e := newEnumeration(m, m.needs(), endless(), measure{weight: weight, least: least}, measure{weight: sizes, least: full})
		got, all := e.list(0, 1<<20, 1<<30)
		if !all {
			t.Fatal("broken off")
		}
		for _, l := range got {
			if name := fmt.Sprint(l.kinds); !want[name] {
				t.Fatalf("way %v twice, or it weighs too little", name)
			} else {
				delete(want, name)
			}
		}
		if len(want) > 0 {
			t.Fatalf("missing: %v", want)
		}
	})
}

func TestTheHeaviestWayIsTheHeaviestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, weight := drawWeighed(t)
		most, led := int64(0), make([]int64, len(m.kinds))
		everyWay(m, func(counts []int, _, w int64) {
			most = max(most, w)
			for k, n := range counts {
				if n > 0 {
					led[k] = max(led[k], w)
					break
				}
			}
		}, weight)
		e := newEnumeration(m, m.needs(), endless(), measure{weight: weight})
		if _, got, sure := e.heaviest(m.stores[0].room, 0, -1, 1<<30); !sure || got != most || e.limit(m.stores[0].room) < most {
			t.Fatalf("heaviest %d, limit %d, want %d", got, e.limit(m.stores[0].room), most)
		}
		for k := range led {
			if kinds, got, _ := e.heaviest(m.stores[0].room, 0, k, 1<<30); got != led[k] || got > 0 && kinds[0] != int32(k) {
				t.Fatalf("heaviest that begins with kind %d: %d, want %d", k, got, led[k])
			}
		}
	})
}

// Whatever the nodes are, a bound must not take a stick for lighter than it may be.
func TestWhereTheNodesEndAStickHoldsRatherTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, weight := drawWeighed(t)
		most := int64(0)
		everyWay(m, func(_ []int, _, w int64) { most = max(most, w) }, weight)
		nodes := rapid.IntRange(1, 20).Draw(t, "nodes")
		if got := m.holdsByWays(m.needs(), weight, &nodes, endless()); got[0] < most {
			t.Fatalf("holds %d, but %d fits", got[0], most)
		}
	})
}

func TestTheFullestStickIsTheGreatestSumThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, weight := drawWeighed(t)
		most := int64(0)
		everyWay(m, func(_ []int, length, _ int64) { most = max(most, length) }, weight)
		if got := m.fullest(m.needs()); got[0] != most {
			t.Fatalf("fullest %d, want %d", got[0], most)
		}
	})
}

// Few long parts on a stick of many steps: going through the ways against the table over all rooms.
func BenchmarkPricing(b *testing.B) {
	d := cut.NewDice(5)
	p := &Problem{Unit: length.MM, Stock: []Stock{{Tag: "S", Length: 10_000 * length.Millimetre, Count: cut.Any, Price: cut.Priced(1)}}}
	for range 200 {
		p.Parts = append(p.Parts, Part{Tag: "C", Length: length.Length(20_000+d.N(15_000)) * length.Millimetre / 10, Count: 1})
	}
	m := newModel(p)
	value, weight := make([]float64, len(m.kinds)), make([]int64, len(m.kinds))
	for k, kd := range m.kinds {
		value[k] = float64(kd.size) / float64(m.stores[0].room) * (0.95 + 0.05*d.Share())
		weight[k] = int64(value[k] * weightScale)
	}
	b.Run("ways", func(b *testing.B) {
		for b.Loop() {
			e := newEnumeration(m, m.needs(), endless(), measure{weight: weight})
			if _, _, sure := e.heaviest(m.stores[0].room, 0, -1, 1<<30); !sure {
				b.Fatal("broken off")
			}
		}
	})
	b.Run("table", func(b *testing.B) {
		best := make([]int64, m.stores[0].room/m.step()+1)
		for b.Loop() {
			clear(best)
			for k, kd := range m.kinds {
				bundle(best, int(kd.size/m.step()), weight[k])
			}
		}
	})
}
