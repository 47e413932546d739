package stick

import "math"

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
	bundle []bundle
	taken  []uint64 // one bit for each bundle and room: whether the best fill takes the bundle
	words  int      // of one bundle
	slow   bool     // branching is tried first
}

type bundle struct {
	kind, times int
	size        int
	value       float64
}

// tableFor returns a table for the kinds and rooms of m, nil where it would be too large.
func (m *model) tableFor() *table {
	step, longest := int64(0), int64(0)
	for _, k := range m.kinds {
		step = gcd(step, k.size)
	}
	for _, st := range m.stores {
		longest = max(longest, st.room)
	}
	if step == 0 {
		return nil
	}
	cells := longest/step + 1
	n := int64(0)
	for _, k := range m.kinds {
		for left := min(int64(k.need), longest/k.size); left > 0; left /= 2 {
			n++
		}
	}
	if cells*n > tableMost {
		return nil
	}
	t := &table{step: step, best: make([]float64, cells), words: int(cells+63) / 64, slow: cells*n > tableQuick}
	t.taken = make([]uint64, t.words*int(n))
	return t
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// fill computes the best fills with at most have[k] parts of each kind of positive value. It returns the cells
// that were worked through.
func (t *table) fill(m *model, have []int, value []float64) int {
	t.bundle = t.bundle[:0]
	last := len(t.best) - 1
	for k, n := range have {
		size := int(m.kinds[k].size / t.step)
		n = min(n, last/size)
		if value[k] <= 1e-12 {
			continue
		}
		for times := 1; n > 0; times *= 2 {
			c := min(times, n)
			t.bundle = append(t.bundle, bundle{k, c, c * size, float64(c) * value[k]})
			n -= c
		}
	}
	clear(t.best)
	clear(t.taken[:t.words*len(t.bundle)])
	for i, b := range t.bundle {
		taken := t.taken[i*t.words : (i+1)*t.words]
		for c := last; c >= b.size; c-- {
			if v := t.best[c-b.size] + b.value; v > t.best[c]+1e-13 {
				t.best[c] = v
				taken[c>>6] |= 1 << (c & 63)
			}
		}
	}
	return len(t.bundle) * len(t.best)
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
const holdMost = 200 << 20

// holdsOf returns what a stick of each store holds at most of the weights, to the last unit, and the cells it
// took; ok is false where that would take too long.
func (m *model) holdsOf(have []int, weight []int64) (holds []int64, cells int, ok bool) {
	step, longest := int64(0), int64(0)
	for k, kd := range m.kinds {
		if have[k] > 0 {
			step = gcd(step, kd.size)
		}
	}
	for _, st := range m.stores {
		longest = max(longest, st.room)
	}
	if step == 0 || longest/step > holdMost {
		return nil, 0, false
	}
	var bundles []wholeBundle
	for k, kd := range m.kinds {
		n := min(have[k], int(longest/kd.size))
		for times := 1; n > 0 && weight[k] > 0; times *= 2 {
			c := min(times, n)
			bundles = append(bundles, wholeBundle{c * int(kd.size/step), int64(c) * weight[k]})
			n -= c
		}
	}
	width := int(longest/step) + 1
	if cells = len(bundles) * width; cells > holdMost {
		return nil, 0, false
	}
	best := make([]int64, width)
	for _, b := range bundles {
		for c := width - 1; c >= b.size; c-- {
			best[c] = max(best[c], best[c-b.size]+b.weight)
		}
	}
	for _, st := range m.stores {
		holds = append(holds, best[st.room/step])
	}
	return holds, cells, true
}

type wholeBundle struct {
	size   int
	weight int64
}
