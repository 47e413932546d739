package master

import "math"

// driftMost is how far basis times values may lie from the right side before the inverse is made anew.
const driftMost = 1e-7

// restore computes the values from the inverse, and makes it anew where pivots have worn it. A basis that rounding has
// made singular keeps the inverse it has.
func (m *Master) restore() {
	m.since = 0
	if m.primal(); m.drift() <= driftMost {
		return
	}
	if inv, ok := m.inverse(); ok {
		m.inv = inv
		m.primal()
	}
}

// drift is the greatest difference of basis times values from the right side.
func (m *Master) drift() (most float64) {
	rest := append([]float64(nil), m.right...)
	for i, s := range m.basis {
		for _, e := range m.entries(s) {
			rest[e.Row] -= e.Value * m.x[i]
		}
	}
	for _, r := range rest {
		most = math.Max(most, math.Abs(r))
	}
	return most
}

// inverse eliminates the basis column by column beside the unit matrix. Columns and rows with few entries come
// first, which leaves most of both empty.
func (m *Master) inverse() ([][]float64, bool) {
	n := len(m.basis)
	r := reduction{a: square(n), b: square(n), free: make([]bool, n), place: make([]int, n)}
	for j, s := range m.basis {
		for _, e := range m.entries(s) {
			r.a[e.Row][j] = e.Value
		}
	}
	for i := range n {
		r.b[i][i], r.free[i] = 1, true
	}
	for _, j := range r.order() {
		if !r.eliminate(j) {
			return nil, false
		}
	}
	inv := square(n)
	for j := range n {
		for k, v := range r.b[r.place[j]] {
			inv[k][j] = v
		}
	}
	return inv, true
}

// reduction is a matrix a on its way to the unit matrix, and what the same steps make of another, b.
type reduction struct {
	a, b  [][]float64
	free  []bool // rows that no column was made one in yet
	place []int  // of each column: the row that it was made one in
}

// order is the columns of a, those with the fewest entries first.
func (r *reduction) order() []int {
	n := len(r.a)
	by := make([][]int, n+1)
	for j := range n {
		entries := 0
		for i := range n {
			if r.a[i][j] != 0 {
				entries++
			}
		}
		by[entries] = append(by[entries], j)
	}
	out := make([]int, 0, n)
	for _, columns := range by {
		out = append(out, columns...)
	}
	return out
}

// eliminate makes column j one in a row that was not used yet and zero in all others.
func (r *reduction) eliminate(j int) bool {
	p := r.row(j)
	if p < 0 {
		return false
	}
	r.free[p], r.place[j] = false, p
	ra, rb := r.a[p], r.b[p]
	f := 1 / ra[j]
	scale(ra, f)
	scale(rb, f)
	na, nb := filled(ra), filled(rb)
	for i := range r.a {
		f := r.a[i][j]
		if i == p || f == 0 {
			continue
		}
		subtract(r.a[i], f, ra, na)
		subtract(r.b[i], f, rb, nb)
		r.a[i][j] = 0
	}
	return true
}

// row is the free row with the fewest entries, of those whose entry of column j is at least a tenth of the largest.
func (r *reduction) row(j int) int {
	largest := 1e-10
	for i, free := range r.free {
		if free {
			largest = math.Max(largest, math.Abs(r.a[i][j]))
		}
	}
	best, fewest := -1, math.MaxInt
	for i, free := range r.free {
		if !free || math.Abs(r.a[i][j]) < largest/10 {
			continue
		}
		if n := len(filled(r.a[i])); n < fewest {
			best, fewest = i, n
		}
	}
	return best
}

func scale(a []float64, f float64) {
	for i := range a {
		a[i] *= f
	}
}

// filled are the places of a that are not zero.
func filled(a []float64) (out []int32) {
	for i, v := range a {
		if v != 0 {
			out = append(out, int32(i))
		}
	}
	return out
}

// subtract takes f times b from a, at the places where b is not zero.
func subtract(a []float64, f float64, b []float64, places []int32) {
	for _, i := range places {
		a[i] -= f * b[i]
	}
}
