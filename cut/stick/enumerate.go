package stick

import "rodwright/cut"

// enumeration goes through the ways to fill a stick. No turning is taken that does not end in a way which is heavy
// enough: for each measure rest[i][c] is the most weight that the kinds from i on add in a room of c steps. Steps may
// be coarse; sizes are then rounded down to them, so that rest says too much rather than too little.
type enumeration struct {
	m      *model
	have   []int
	step   int64
	by     []measure
	budget *cut.Budget

	most  int // ways to find at most
	found []load
	store int
	kinds []int32
	left  int // steps that may still be taken

	best    int64 // climb looks for more than this, and sets it
	bestWay []int32
}

// measure is one weighing of the parts, and the least that a way must weigh by it.
type measure struct {
	weight []int64
	least  int64
	rest   [][]int64
}

// fineCells is the number of steps of a room up to which they are as fine as the sizes, and coarseCells that of
// coarse ones.
const (
	fineCells   = 1200
	coarseCells = 1000
)

// newEnumeration weighs by all measures given.
func newEnumeration(m *model, have []int, budget *cut.Budget, by ...measure) *enumeration {
	e := &enumeration{m: m, have: have, step: m.step(), by: by, budget: budget}
	longest := m.longest()
	if longest/e.step > fineCells {
		e.step = longest/coarseCells + 1
	}
	cells := int(longest/e.step) + 1
	for i := range e.by {
		e.by[i].rest = e.rest(e.by[i].weight, cells)
	}
	return e
}

func (e *enumeration) rest(weight []int64, cells int) [][]int64 {
	n := len(e.have)
	rest := make([][]int64, n+1)
	all := make([]int64, (n+1)*cells)
	rest[n] = all[n*cells:]
	for i := n - 1; i >= 0; i-- {
		rest[i] = all[i*cells : (i+1)*cells]
		copy(rest[i], rest[i+1])
		e.m.bundles(i, e.have[i], func(times int, size int64) {
			bundle(rest[i], int(size/e.step), int64(times)*weight[i])
		})
		e.budget.Spend(cells / cellsPerNode)
	}
	return rest
}

// bundles calls use for bundles of 1, 2, 4 … parts of a kind that together are as many as a stick may hold of it.
func (m *model) bundles(kind, have int, use func(times int, size int64)) {
	left := min(have, int(m.longest()/m.kinds[kind].size))
	for times := 1; left > 0; times *= 2 {
		n := min(times, left)
		left -= n
		use(n, int64(n)*m.kinds[kind].size)
	}
}

// bundle takes parts of a size and weight into a table of what rooms hold.
func bundle(best []int64, size int, weight int64) {
	if weight == 0 || size >= len(best) {
		return
	}
	to := best[size:]
	from := best[:len(to)]
	for c := len(to) - 1; c >= 0; c-- {
		if v := from[c] + weight; v > to[c] {
			to[c] = v
		}
	}
}

// list returns the ways of a store that weigh enough by all measures, and whether these are all: there are no more of
// them than most, and they were found in so many steps.
func (e *enumeration) list(store, most, steps int) ([]load, bool) {
	e.store, e.most, e.left, e.found, e.kinds = store, most, steps, nil, e.kinds[:0]
	e.walk(0, 0, e.m.stores[store].room, make([]int64, len(e.by)))
	e.budget.Spend((steps - e.left) % askWalk / stepsPerNode)
	return e.found, e.left > 0 && len(e.found) <= most
}

// askWalk is the number of steps between two looks at the budget, stepsPerNode how many take about the time of one
// node of another search.
const (
	askWalk      = 1 << 14
	stepsPerNode = 32
)

// goOn takes a step and reports whether there may be another.
func (e *enumeration) goOn() bool {
	if e.left--; e.left%askWalk == 0 && !e.budget.Spend(askWalk/stepsPerNode) {
		e.left = 0
	}
	return e.left > 0
}

// walk adds parts from kind i on, of which used are on the stick.
func (e *enumeration) walk(i, used int, room int64, weights []int64) {
	if len(e.kinds) > 0 && e.mayEnd(len(e.have), room, weights) {
		e.found = append(e.found, load{e.store, append([]int32(nil), e.kinds...)})
	}
	for ; i < len(e.have); i, used = i+1, 0 {
		if !e.goOn() || len(e.found) > e.most || !e.mayEnd(i, room, weights) {
			return
		}
		size := e.m.kinds[i].size
		if size > room || used >= e.have[i] {
			continue
		}
		for b := range e.by {
			weights[b] += e.by[b].weight[i]
		}
		if e.mayEnd(i, room-size, weights) {
			e.kinds = append(e.kinds, int32(i))
			e.walk(i, used+1, room-size, weights)
			e.kinds = e.kinds[:len(e.kinds)-1]
		}
		for b := range e.by {
			weights[b] -= e.by[b].weight[i]
		}
	}
}

// mayEnd reports whether kinds from i on may add what still lacks.
func (e *enumeration) mayEnd(i int, room int64, weights []int64) bool {
	c := room / e.step
	for b, w := range weights {
		if w+e.by[b].rest[i][c] < e.by[b].least {
			return false
		}
	}
	return true
}

// heaviest returns the kinds and the weight, by the first measure, of the heaviest way in a room, of those that weigh
// more than above and that begin with kind lead; all kinds may begin where lead is -1. Where there is none the kinds
// are nil and the weight is above. sure is false where the steps ran out before it was certain.
func (e *enumeration) heaviest(room, above int64, lead, steps int) (kinds []int32, weight int64, sure bool) {
	e.best, e.bestWay, e.left, e.kinds = above, nil, steps, e.kinds[:0]
	if lead < 0 {
		e.climb(0, 0, room, 0)
	} else if size := e.m.kinds[lead].size; size <= room && e.have[lead] > 0 {
		e.kinds = append(e.kinds, int32(lead))
		e.climb(lead, 1, room-size, e.by[0].weight[lead])
	}
	e.budget.Spend((steps - e.left) % askWalk / stepsPerNode)
	return e.bestWay, e.best, e.left > 0
}

// limit is at least the weight of every way of a room.
func (e *enumeration) limit(room int64) int64 { return e.by[0].rest[0][room/e.step] }

func (e *enumeration) climb(i, used int, room, weight int64) {
	if weight > e.best {
		e.best, e.bestWay = weight, append([]int32(nil), e.kinds...)
	}
	by := &e.by[0]
	for ; i < len(e.have); i, used = i+1, 0 {
		if !e.goOn() || weight+by.rest[i][room/e.step] <= e.best {
			return
		}
		size := e.m.kinds[i].size
		if size > room || used >= e.have[i] {
			continue
		}
		if w := weight + by.weight[i]; w+by.rest[i][(room-size)/e.step] > e.best {
			e.kinds = append(e.kinds, int32(i))
			e.climb(i, used+1, room-size, w)
			e.kinds = e.kinds[:len(e.kinds)-1]
		}
	}
}
