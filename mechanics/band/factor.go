package band

import (
	"math"
)

// Factor is a factored matrix that answers loads. It may be used from several goroutines at once.
type Factor struct {
	n     int
	place []int32   // where an unknown stands in the factor
	scale []float64 // 1/√ of its own stiffness
	l     *strip
	floor float64 // the smallest pivot, of 1
}

// Every matrix is scaled to a diagonal of 1, so that these limits have no unit. Rounding moves the
// smallest eigenvalue of such a matrix by some 1e-15 (N. J. Higham, Accuracy and Stability of Numerical
// Algorithms, 2nd ed. 2002, theorem 10.3); a sound row of 20 000 springs still has one of 3e-9.
const (
	suspect = 1e-7  // a pivot this small asks for a closer look
	least   = 2e-13 // the smallest eigenvalue of a structure that stands
)

// filling returns the scaled matrix as a strip, plus lift on its diagonal.
type filling func(lift float64) *strip

// Factor factors the matrix, which stays as it is. An [*Unstable] says that something moves freely.
func (m *Matrix) Factor() (*Factor, error) {
	if m.err != nil {
		return nil, m.err
	}
	f := &Factor{n: m.n, scale: make([]float64, m.n)}
	if err := f.scaleBy(m.diagonal()); err != nil {
		return nil, err
	}
	fill, err := f.placed(m)
	if err != nil {
		return nil, err
	}
	if !f.factor(fill, 0) {
		return nil, f.unstable(fill)
	}
	if f.floor < suspect {
		if motion, stiff := f.softest(); stiff < least {
			return nil, f.named(motion)
		}
	}
	return f, nil
}

// placed finds the place of every unknown and how the matrix is filled in that order.
func (f *Factor) placed(m *Matrix) (filling, error) {
	if m.strip != nil {
		f.place = straightPlaces(m.n)
		return func(lift float64) *strip { return m.strip.scaled(f.scale, lift) }, nil
	}
	l := lower(m.rows)
	place, k := l.order()
	f.place = place
	return func(lift float64) *strip { return f.gathered(l, k, lift) }, tooWide(m.n, k)
}

// diagonal returns the entries on the diagonal.
func (m *Matrix) diagonal() []float64 {
	out := make([]float64, m.n)
	for i, row := range m.rows {
		for _, e := range row {
			if int(e.j) == i {
				out[i] = e.v
			}
		}
	}
	for i := range out {
		if m.strip != nil {
			out[i] = m.strip.row(i)[m.strip.k]
		}
	}
	return out
}

// scaleBy takes the diagonal; an unknown with nothing on it is loose on its own.
func (f *Factor) scaleBy(diagonal []float64) error {
	for i, d := range diagonal {
		// The smallest normal number: below it 1/√d is inexact.
		if !(d > 0x1p-1022) || math.IsInf(d, 0) {
			motion := make([]float64, f.n)
			motion[i] = 1
			return &Unstable{Unknown: i, Motion: motion}
		}
		f.scale[i] = 1 / math.Sqrt(d)
	}
	return nil
}

// gathered is the filling of a matrix by rows.
func (f *Factor) gathered(l lower, k int, lift float64) *strip {
	s := newStrip(f.n, k)
	for i, row := range l {
		for _, e := range row {
			j := int(e.j)
			v := e.v * f.scale[i] * f.scale[j]
			if i == j {
				v += lift
			}
			r, c := int(f.place[i]), int(f.place[j])
			if r < c {
				r, c = c, r
			}
			s.row(r)[c-r+k] = v
		}
	}
	return s
}

// scaled is the filling of a matrix that is a strip itself.
func (s *strip) scaled(scale []float64, lift float64) *strip {
	out := newStrip(s.n, s.k)
	for i := range s.n {
		from, to, lo := s.row(i), out.row(i), max(0, i-s.k)
		for m, v := range from[lo-i+s.k:] {
			to[lo-i+s.k+m] = v * scale[i] * scale[lo+m]
		}
		to[s.k] += lift
	}
	return out
}

// factor factors the scaled matrix.
func (f *Factor) factor(fill filling, lift float64) bool {
	f.l, f.floor = fill(lift), 1
	if !f.l.cholesky() {
		return false
	}
	for i := range f.n {
		d := f.l.row(i)[f.l.k]
		f.floor = min(f.floor, d*d)
	}
	return true
}

// Solve returns the unknowns under the load b, one number per unknown.
func (f *Factor) Solve(b []float64) []float64 {
	y := make([]float64, f.n)
	for i, p := range f.place {
		if i < len(b) {
			y[p] = b[i] * f.scale[i]
		}
	}
	f.l.solve(y)
	x := make([]float64, f.n)
	for i, p := range f.place {
		x[i] = y[p] * f.scale[i]
	}
	return x
}

// Release gives the room of the factor to others; it answers no more.
func (f *Factor) Release() {
	f.l.release()
	f.l = nil
}
