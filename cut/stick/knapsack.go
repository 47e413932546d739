package stick

import (
	"math"

	"rodwright/cut"
)

// tableMost bounds the cells of one table of fills: a bit each is kept.
const tableMost = 64 << 20

// tableQuick is the number of cells up to which a table is quicker than branching.
const tableQuick = 2 << 20

// table finds the most valuable fill of every room up to the longest at once, by going through the parts one
// after another (dynamic programming; each kind as bundles of 1, 2, 4 … parts). It works on lengths in steps
// of their greatest common divisor.
type table struct {
	step   int64
	best   []float64
	bundle []bundled
	taken  []uint64 // one bit for each bundle and room: whether the best fill takes the bundle
	words  int      // of one bundle
	slow   bool     // branching is tried first
}

// bundled is some parts of a kind that are taken together.
type bundled struct {
	kind, times int
	size        int
	value       float64
}

// tableFor returns a table for the kinds and rooms of m, nil where it would be too large, or where few parts go on a
// stick, so that going through the ways is quicker than a large table.
func (m *model) tableFor() *table {
	if len(m.kinds) == 0 {
		return nil
	}
	step := m.step()
	cells, n := m.longest()/step+1, int64(0)
	for k, kd := range m.kinds {
		m.bundles(k, kd.need, func(int, int64) { n++ })
	}
	slow := cells*n > tableQuick
	if cells*n > tableMost || slow && m.few() {
		return nil
	}
	t := &table{step: step, best: make([]float64, cells), words: int(cells+63) / 64, slow: slow}
	t.taken = make([]uint64, t.words*int(n))
	return t
}

// step is the greatest common divisor of all sizes.
func (m *model) step() (step int64) {
	for _, k := range m.kinds {
		step = gcd(step, k.size)
	}
	return step
}

// longest is the room of the longest stick.
func (m *model) longest() (room int64) {
	for _, st := range m.stores {
		room = max(room, st.room)
	}
	return room
}

// fewParts is how many parts a stick holds at most where few do.
const fewParts = 7

// few reports whether few parts go on a stick.
func (m *model) few() bool { return m.longest()/m.kinds[len(m.kinds)-1].size <= fewParts }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// fill computes the best fills with at most have[k] parts of each kind of positive value. It reports false where the
// budget ends first.
func (t *table) fill(m *model, have []int, value []float64, budget *cut.Budget) bool {
	t.bundle = t.bundle[:0]
	for k, n := range have {
		if value[k] > 1e-12 {
			m.bundles(k, n, func(times int, size int64) {
				t.bundle = append(t.bundle, bundled{k, times, int(size / t.step), float64(times) * value[k]})
			})
		}
	}
	clear(t.best)
	clear(t.taken[:t.words*len(t.bundle)])
	for i, b := range t.bundle {
		t.take(b, t.taken[i*t.words:(i+1)*t.words])
		if !budget.Spend(1 + len(t.best)/4/cellsPerNode) {
			return false
		}
	}
	return true
}

// take takes a bundle in.
func (t *table) take(b bundled, taken []uint64) {
	to := t.best[min(b.size, len(t.best)):]
	from := t.best[:len(to)]
	for i := len(to) - 1; i >= 0; i-- {
		if v := from[i] + b.value; v > to[i]+1e-13 {
			to[i] = v
			c := uint(i + b.size)
			taken[c>>6] |= 1 << (c & 63)
		}
	}
}

// value is the value of the best fill of a room.
func (t *table) value(room int64) float64 { return t.best[room/t.step] }

// counts is the best fill of a room.
func (t *table) counts(room int64, kinds int) []int {
	out := make([]int, kinds)
	c := int(room / t.step)
	for i := len(t.bundle) - 1; i >= 0; i-- {
		if b := t.bundle[i]; t.taken[i*t.words+c>>6]>>(c&63)&1 == 1 {
			out[b.kind] += b.times
			c -= b.size
		}
	}
	return out
}

// branchNodes bounds one fill by branching, where a table would be too large.
const branchNodes = 20_000

// bestFill finds the most valuable fill of one room by branching.
func (f *filler) bestFill(room int64, have []int, value []float64) ([]int, float64) {
	whole := make([]int64, len(value))
	for k, v := range value {
		whole[k] = int64(math.Max(0, v) * valueScale)
	}
	counts, _ := f.fillWithin(room, have, whole, branchNodes)
	v := 0.0
	for k, n := range counts {
		v += float64(n) * value[k]
	}
	return counts, v
}

// holdMost bounds the cells that are worked through for what a stick holds of some weights.
const holdMost = 4 << 20

// holdsOf returns what a stick of each store holds at most of the weights, to the last unit, and the cells it
// took; ok is false where that would take too long.
func (m *model) holdsOf(have []int, weight []int64) (holds []int64, cells int, ok bool) {
	step, longest := m.step(), m.longest()
	if step == 0 || longest/step > holdMost {
		return nil, 0, false
	}
	width := int(longest/step) + 1
	for k, n := range have {
		m.bundles(k, n, func(int, int64) { cells += width })
	}
	if cells > holdMost {
		return nil, 0, false
	}
	best := make([]int64, width)
	for k, n := range have {
		m.bundles(k, n, func(times int, size int64) { bundle(best, int(size/step), int64(times)*weight[k]) })
	}
	for _, st := range m.stores {
		holds = append(holds, best[st.room/step])
	}
	return holds, cells, true
}
