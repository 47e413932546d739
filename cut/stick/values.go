package stick

import (
	"math"

	"rodwright/cut"
)

// values are what parts are worth to a stick, corrected after each: a part that went out on a badly
// filled stick is worth more the next time, so that hard parts leave while good company is still there.
type values struct {
	v     []float64
	power float64 // above 1 prefers long parts
	inert float64 // how slowly values change
}

func newValues(m *model, power, inert float64) *values {
	w := &values{v: make([]float64, len(m.kinds)), power: power, inert: inert}
	for k := range m.kinds {
		w.v[k] = w.bare(m, k)
	}
	return w
}

// bare is the value of a part that nothing is known of, as a share of the longest part's.
func (w *values) bare(m *model, k int) float64 {
	return math.Pow(float64(m.kinds[k].size)/float64(m.kinds[0].size), w.power)
}

// correct moves the values of the parts on a stick towards what the stick cost them: size, raised by the
// share of the stick that was lost.
func (w *values) correct(m *model, c choice, times int, have []int) {
	st := m.stores[c.store]
	loss := float64(st.room) / float64(max(c.fill, 1))
	for k, n := range c.counts {
		if n == 0 {
			continue
		}
		weight := float64(n * times)
		old := w.inert * float64(m.kinds[k].need+have[k])
		w.v[k] = (old*w.v[k] + weight*loss*w.bare(m, k)) / (old + weight)
	}
}

// valueScale keeps nine digits of a value.
const valueScale = 1e9

// into writes the values as whole numbers.
func (w *values) into(out []int64) {
	for k, v := range w.v {
		out[k] = max(1, int64(v*valueScale))
	}
}

// jitter multiplies every value by up to 1 ± share.
func (w *values) jitter(d *cut.Dice, share float64) {
	for k := range w.v {
		w.v[k] *= 1 + share*(2*d.Share()-1)
	}
}
