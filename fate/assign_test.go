package fate

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/part"
	"rodwright/shop"
)

// costs draws what up to seven things cost at up to seven needs.
func costs(t *rapid.T) *Cost {
	n, m := rapid.IntRange(0, 7).Draw(t, "things"), rapid.IntRange(0, 7).Draw(t, "needs")
	c := &Cost{Things: make([]journal.Thing, n), Needs: make([]Need, m)}
	cents := rapid.Int64Range(0, 50)
	for j := range m {
		c.Needs[j] = Need{Part: &part.Part{}, Tag: string(rune('a' + j))}
		c.Make = append(c.Make, cents.Draw(t, "make"))
	}
	for range n {
		c.Rack = append(c.Rack, -rapid.Int64Range(0, 10).Draw(t, "rack"))
		serve, rank, ways := make([]int64, m), make([]int64, m), make([][]Way, m)
		for j := range m {
			serve[j] = Never
			if rapid.IntRange(0, 2).Draw(t, "can") > 0 {
				serve[j], ways[j] = cents.Draw(t, "serve"), []Way{{Kind: AsIs}}
			}
			rank[j] = rapid.Int64Range(0, 3).Draw(t, "rank")
		}
		c.Serve, c.rank, c.Ways = append(c.Serve, serve), append(c.rank, rank), append(c.Ways, ways)
	}
	return c
}

// least tries every way to give things to needs.
func least(c *Cost, i int, taken []bool) int64 {
	if i == len(c.Things) {
		sum := int64(0)
		for j, t := range taken {
			if !t {
				sum += c.Make[j]
			}
		}
		return sum
	}
	best := c.Rack[i] + least(c, i+1, taken)
	for j := range c.Needs {
		if taken[j] || c.Serve[i][j] >= Never {
			continue
		}
		taken[j] = true
		best = min(best, c.Serve[i][j]+least(c, i+1, taken))
		taken[j] = false
	}
	return best
}

func TestTheAssignmentCostsTheLeastThereIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := costs(t)
		a := c.Assign()
		if want := shop.Cents(least(c, 0, make([]bool, len(c.Needs)))); a.Cents != want {
			t.Fatalf("%d, and %d can be: %+v", a.Cents, want, c)
		}
		used := map[*journal.Thing]int{}
		for _, ch := range a.Choices {
			if ch.Thing != nil {
				used[ch.Thing]++
			}
		}
		for i := range c.Things {
			if used[&c.Things[i]] != 1 {
				t.Fatalf("thing %d is used %d times", i, used[&c.Things[i]])
			}
		}
	})
}

func TestOfEqualCostsAPartStaysInItsPlace(t *testing.T) {
	c := &Cost{
		Things: make([]journal.Thing, 2), Needs: []Need{{Tag: "a"}, {Tag: "b"}},
		Ways: [][][]Way{{{{}}, {{}}}, {{{}}, {{}}}}, Serve: [][]int64{{5, 5}, {5, 5}}, rank: [][]int64{{2, 0}, {0, 2}}, Make: []int64{9, 9}, Rack: []int64{0, 0},
	}
	a := c.Assign()
	if a.Choices[0].Thing != &c.Things[1] || a.Choices[1].Thing != &c.Things[0] {
		t.Errorf("%+v", a.Choices)
	}
}
