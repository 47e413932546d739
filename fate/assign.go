package fate

import (
	"math"
	"slices"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/shop"
	"rodwright/steps"
)

// Choice is what becomes of one thing, or how one need is met.
type Choice struct {
	Thing *journal.Thing // nil: the need is made anew
	Need  *Need          // nil: the thing goes to the rack
	Way   Way
	Cents shop.Cents // of this choice: the way and the hours still to come, or making it anew; less than nothing for what the rack gives back
	Ways  []Way      // all ways of this thing to this need, the chosen one first
}

// Assignment is the cheapest choice for all things and needs together.
type Assignment struct {
	Choices []Choice   // of every need in order, then of every thing that serves none
	Cents   shop.Cents // the sum
	Unknown []string   // what of the costs has no price
}

// Cost is what the assignment weighs: for each thing and need the cheapest way, and what a need costs to make anew.
type Cost struct {
	Things  []journal.Thing
	Needs   []Need
	Ways    [][][]Way  // by thing and need, the cheapest first; none where it can't be
	Why     [][]string // why there is no way
	Serve   [][]int64  // by thing and need, in cents, the hours still to come included; Never where there is no way
	Make    []int64    // by need, in cents
	Rack    []int64    // by thing, in cents: less than nothing, what it is worth there
	rank    [][]int64  // by thing and need: of equal costs the lesser is taken
	missing []string   // what of the hours has no price

	makeUnknown [][]string // by need, what of making it anew has no price
}

// Never is the cost of what can't be.
const Never = math.MaxInt64 / 4

// Costs works out what every thing costs at every need. Work is the whole plan that the needs are of, as if nothing
// were made: it tells what hours each part takes.
func Costs(things []journal.Thing, needs []Need, work *steps.Work, s *shop.Shop, fine length.Fineness) *Cost {
	c := &Cost{Things: things, Needs: needs}
	b := bench{s, fine}
	hours := PartHours(work)
	for i := range needs {
		material, unknown := Worth(needs[i].Part, s)
		c.makeUnknown = append(c.makeUnknown, unknown)
		c.Make = append(c.Make, int64(material)+int64(b.hours(hours.from(needs[i].Tag, journal.Planned), &c.missing)))
	}
	for _, t := range things {
		var ways [][]Way
		var why []string
		var serve, rank []int64
		for j := range needs {
			w, no := Ways(t, needs[j], s, fine)
			cost := int64(Never)
			if len(w) > 0 {
				cost = int64(b.shared(w[0], needs[j].Part.Count)) + int64(b.hours(hours.from(needs[j].Tag, t.State), &c.missing))
			}
			ways, why, serve, rank = append(ways, w), append(why, no), append(serve, cost), append(rank, preference(t, needs[j], w))
		}
		c.Ways, c.Why, c.Serve, c.rank = append(c.Ways, ways), append(c.Why, why), append(c.Serve, serve), append(c.rank, rank)
		c.Rack = append(c.Rack, b.rack(t))
	}
	return c
}

// shared is what a way costs where as many parts are put right alike and share the set-up, as the plan shares that of
// making them.
func (b bench) shared(w Way, n int) shop.Cents {
	less := 0.0
	for _, j := range w.Jobs {
		less += j.SetUpH * float64(n-1) / float64(max(n, 1))
	}
	var unknown []string
	return w.Cents - b.hours(less, &unknown)
}

// rack is what it costs to put a thing on the rack: taking it out of the piece, less what it is worth there.
func (b bench) rack(t journal.Thing) int64 {
	var w Way
	b.takeOut(&w, t)
	b.cost(&w)
	return int64(w.Cents) - int64(ThingWorth(t, b.s))
}

// merged adds the names that are not there yet.
func merged(list, more []string) []string {
	for _, name := range more {
		if !slices.Contains(list, name) {
			list = append(list[:len(list):len(list)], name)
		}
	}
	return list
}

// preference orders what costs the same: a part stays in its place, then is not touched.
func preference(t journal.Thing, n Need, ways []Way) int64 {
	p := int64(0)
	if t.Place != n.Place {
		p += 2
	}
	if len(ways) > 0 && ways[0].Kind != AsIs {
		p++
	}
	return p
}

// Assign chooses for every thing a need or the rack, and for every need a thing or to be made, so that the sum of all
// costs is the least there is; of equal sums one that moves the fewest parts.
//
// The problem is the assignment problem: things and "made anew" against needs and "to the rack", solved by the
// Hungarian method (H. W. Kuhn, The Hungarian Method for the Assignment Problem, 1955) with shortest augmenting
// paths, in the cube of the number of parts.
func (c *Cost) Assign() Assignment {
	n, m := len(c.Things), len(c.Needs)
	size := n + m
	big := int64(3*size + 1) // so that the order of equal costs never outweighs a cent
	at := func(i, j int) int64 {
		switch {
		case i < n && j < m:
			if c.Serve[i][j] >= Never {
				return Never
			}
			return c.Serve[i][j]*big + c.rank[i][j]
		case i < n:
			return c.Rack[i]*big + 2 // a place in the plan goes before the rack
		case j < m:
			if i-n != j {
				return Never
			}
			return c.Make[j] * big
		}
		return 0
	}
	to := hungarian(size, at)
	return c.gather(to)
}

// Stay leaves every thing in its place, whatever it costs.
func (c *Cost) Stay() Assignment {
	n, m := len(c.Things), len(c.Needs)
	to := make([]int, n+m)
	for i := range to {
		to[i] = m
	}
	for j, need := range c.Needs {
		to[n+j] = j
		for i, t := range c.Things {
			if t.Place == need.Place && len(c.Ways[i][j]) > 0 {
				to[i], to[n+j] = j, m
				break
			}
		}
	}
	return c.gather(to)
}

// gather writes down what was chosen: to tells for each row its column.
func (c *Cost) gather(to []int) Assignment {
	n, m := len(c.Things), len(c.Needs)
	out := Assignment{Unknown: c.missing}
	by := make([]int, m)
	for i, j := range to {
		if j < m {
			by[j] = i
		}
	}
	for j := range c.Needs {
		ch := Choice{Need: &c.Needs[j], Cents: shop.Cents(c.Make[j]), Way: Way{Kind: Again, Words: "make it again"}}
		if i := by[j]; i >= n && j < len(c.makeUnknown) {
			ch.Way.Unknown = c.makeUnknown[j]
		}
		if i := by[j]; i < n {
			ch.Thing, ch.Ways, ch.Way, ch.Cents = &c.Things[i], c.Ways[i][j], c.Ways[i][j][0], shop.Cents(c.Serve[i][j])
		}
		out.Choices = append(out.Choices, ch)
		out.Cents += ch.Cents
		out.Unknown = merged(out.Unknown, ch.Way.Unknown)
	}
	for i := range c.Things {
		if to[i] >= m {
			out.Choices = append(out.Choices, Choice{Thing: &c.Things[i], Cents: shop.Cents(c.Rack[i]), Way: Way{Kind: Rack, Words: "put it on the rack"}})
			out.Cents += shop.Cents(c.Rack[i])
		}
	}
	return out
}

// hungarian returns for each row of a square matrix the column of a least-cost assignment.
func hungarian(n int, cost func(i, j int) int64) []int {
	// u and v are the potentials of rows and columns, p the row of each column, all counted from 1.
	u, v, p := make([]int64, n+1), make([]int64, n+1), make([]int, n+1)
	way := make([]int, n+1)
	for i := 1; i <= n; i++ {
		p[0] = i
		j0 := 0
		least := make([]int64, n+1)
		used := make([]bool, n+1)
		for j := range least {
			least[j] = math.MaxInt64
		}
		for {
			used[j0] = true
			i0, delta, j1 := p[j0], int64(math.MaxInt64), 0
			for j := 1; j <= n; j++ {
				if used[j] {
					continue
				}
				if cur := cost(i0-1, j-1) - u[i0] - v[j]; cur < least[j] {
					least[j], way[j] = cur, j0
				}
				if least[j] < delta {
					delta, j1 = least[j], j
				}
			}
			for j := 0; j <= n; j++ {
				if used[j] {
					u[p[j]] += delta
					v[j] -= delta
				} else {
					least[j] -= delta
				}
			}
			if j0 = j1; p[j0] == 0 {
				break
			}
		}
		for j0 != 0 {
			p[j0], j0 = p[way[j0]], way[j0]
		}
	}
	out := make([]int, n)
	for j := 1; j <= n; j++ {
		out[p[j]-1] = j - 1
	}
	return out
}
