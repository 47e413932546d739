package band

import (
	"cmp"
	"slices"
)

// graph says which unknowns stand in a row together.
type graph struct {
	start []int32
	next  []int32
}

func (g graph) of(i int32) []int32   { return g.next[g.start[i]:g.start[i+1]] }
func (g graph) degree(i int32) int32 { return g.start[i+1] - g.start[i] }

func (l lower) graph() graph {
	n := len(l)
	g := graph{start: make([]int32, n+1)}
	l.pairs(func(i, j int32) { g.start[i+1]++; g.start[j+1]++ })
	for i := range n {
		g.start[i+1] += g.start[i]
	}
	g.next = make([]int32, g.start[n])
	fill := slices.Clone(g.start)
	l.pairs(func(i, j int32) {
		g.next[fill[i]], g.next[fill[j]] = j, i
		fill[i]++
		fill[j]++
	})
	return g
}

func (l lower) pairs(f func(i, j int32)) {
	for i, row := range l {
		for _, e := range row {
			if int(e.j) != i {
				f(int32(i), e.j)
			}
		}
	}
}

// order returns the place of every unknown: as they were numbered, or by reverse Cuthill and McKee (E.
// Cuthill, J. McKee, Proc. 24th Nat. Conf. ACM, 1969, p. 157) where that makes the band narrower.
func (l lower) order() (place []int32, bandwidth int) {
	n := len(l)
	place = straightPlaces(n)
	bandwidth = l.bandwidth(place)
	if bandwidth < 2 {
		return place, bandwidth
	}
	other := l.graph().cuthillMcKee()
	if k := l.bandwidth(other); k < bandwidth {
		return other, k
	}
	return place, bandwidth
}

// straightPlaces leaves every unknown where it is.
func straightPlaces(n int) []int32 {
	place := make([]int32, n)
	for i := range place {
		place[i] = int32(i)
	}
	return place
}

func (g graph) cuthillMcKee() []int32 {
	n := len(g.start) - 1
	w := walker{g: g, level: make([]int32, n), queue: make([]int32, 0, n)}
	place := make([]int32, n)
	done := 0
	for i := range int32(n) {
		if w.level[i] > 0 {
			continue
		}
		w.walk(w.farEnd(i))
		for _, u := range w.queue {
			place[u] = int32(n - 1 - done)
			done++
		}
	}
	return place
}

// walker walks a graph breadth first; level is 0 where it has not been.
type walker struct {
	g     graph
	level []int32
	queue []int32
}

// farEnd finds an unknown at the edge of the part of the graph that holds i: one as many steps away from
// another as can be found by going to and fro (A. George, J. W. H. Liu, ACM Trans. Math. Softw. 5 (1979),
// p. 284).
func (w *walker) farEnd(i int32) int32 {
	root, depth := i, w.walk(i)
	for {
		end := w.last()
		w.forget()
		d := w.walk(end)
		if d <= depth {
			w.forget()
			return root
		}
		root, depth = end, d
	}
}

// walk visits all that hangs together with root, nearest first and of the same distance those with fewer
// neighbours first, and returns the number of levels.
func (w *walker) walk(root int32) int32 {
	w.queue = append(w.queue[:0], root)
	w.level[root] = 1
	for at := 0; at < len(w.queue); at++ {
		u, first := w.queue[at], len(w.queue)
		for _, v := range w.g.of(u) {
			if w.level[v] == 0 {
				w.level[v] = w.level[u] + 1
				w.queue = append(w.queue, v)
			}
		}
		slices.SortFunc(w.queue[first:], func(a, b int32) int {
			return cmp.Or(cmp.Compare(w.g.degree(a), w.g.degree(b)), cmp.Compare(a, b))
		})
	}
	return w.level[w.queue[len(w.queue)-1]]
}

// last returns the unknown of the last level with the fewest neighbours.
func (w *walker) last() int32 {
	best := w.queue[len(w.queue)-1]
	deepest := w.level[best]
	for _, u := range slices.Backward(w.queue) {
		if w.level[u] < deepest {
			break
		}
		if w.g.degree(u) <= w.g.degree(best) {
			best = u
		}
	}
	return best
}

func (w *walker) forget() {
	for _, u := range w.queue {
		w.level[u] = 0
	}
}
