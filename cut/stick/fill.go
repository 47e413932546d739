package stick

import (
	"math/bits"
	"slices"

	"rodwright/cut"
)

// filler finds the most valuable parts for one stick: a bounded knapsack by branch and bound.
type filler struct {
	sizes  []int64
	order  []int // kinds, the most value for their size first
	value  []int64
	have   []int
	budget *cut.Budget

	nodes  int // of one fill
	left   int
	chosen []int // counts on the way, by place in order
	best   []int
	bestV  int64
	goal   int64
}

// fillNodes bounds one fill. Most fills meet their bound within some tens.
const fillNodes = 1500

// fill returns how many of each kind go on a stick with the given room, at most have[k] of kind k, and
// their value. A stick is never better filled than by all of its room at the best rate, so the search
// ends there.
func (f *filler) fill(room int64, have []int, value []int64) (counts []int, v int64) {
	return f.fillWithin(room, have, value, f.nodes)
}

// fillWithin is fill with a number of nodes of its own.
func (f *filler) fillWithin(room int64, have []int, value []int64, nodes int) (counts []int, v int64) {
	f.value, f.have = value, have
	f.order = f.order[:0]
	for k, n := range have {
		if n > 0 && f.sizes[k] <= room {
			f.order = append(f.order, k)
		}
	}
	slices.SortStableFunc(f.order, func(a, b int) int {
		return compareRates(value[b], f.sizes[b], value[a], f.sizes[a])
	})
	f.chosen = append(f.chosen[:0], make([]int, len(f.order))...)
	f.best = append(f.best[:0], f.chosen...)
	f.bestV, f.left = 0, nodes
	f.goal = f.limit(0, room)
	f.search(0, room, 0)
	counts = make([]int, len(have))
	for i, n := range f.best {
		counts[f.order[i]] = n
	}
	f.budget.Spend(nodes - f.left + 2*len(f.order) + 8)
	return counts, f.bestV
}

// compareRates compares the fractions a/b and c/d without wrapping round.
func compareRates(a, b, c, d int64) int {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	if h1 != h2 {
		if h1 < h2 {
			return -1
		}
		return 1
	}
	switch {
	case l1 < l2:
		return -1
	case l1 > l2:
		return 1
	}
	return 0
}

// limit returns at least the value of any choice among order[i:] for the room.
func (f *filler) limit(i int, room int64) (v int64) {
	for ; i < len(f.order); i++ {
		k := f.order[i]
		n := min(int64(f.have[k]), room/f.sizes[k])
		v += n * f.value[k]
		room -= n * f.sizes[k]
		if n < int64(f.have[k]) {
			hi, lo := bits.Mul64(uint64(room), uint64(f.value[k]))
			q, _ := bits.Div64(hi, lo, uint64(f.sizes[k]))
			return v + int64(q)
		}
	}
	return v
}

func (f *filler) search(i int, room, v int64) {
	if v > f.bestV {
		f.bestV = v
		copy(f.best, f.chosen)
		clear(f.best[i:])
	}
	for ; i < len(f.order); i++ {
		k := f.order[i]
		if f.sizes[k] > room {
			continue
		}
		if f.left--; f.left < 0 || f.bestV >= f.goal || v+f.limit(i, room) <= f.bestV {
			return
		}
		for n := int(min(int64(f.have[k]), room/f.sizes[k])); n > 0; n-- {
			f.chosen[i] = n
			f.search(i+1, room-int64(n)*f.sizes[k], v+int64(n)*f.value[k])
			if f.left < 0 || f.bestV >= f.goal {
				break
			}
		}
		f.chosen[i] = 0
		if f.left < 0 || f.bestV >= f.goal {
			return
		}
	}
}
