package band

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// Factor is a factored matrix that answers loads. It may be used from several goroutines at once.
type Factor struct {
	n     int
	place []int32   // where an unknown stands in the factor
	scale []float64 // 1/√ of its own stiffness
	upper blas64.TriangularBand
	floor float64 // the smallest pivot, of 1
}

// Every matrix is scaled to a diagonal of 1, so that these limits have no unit. Rounding moves the
// smallest eigenvalue of such a matrix by some 1e-15 (N. J. Higham, Accuracy and Stability of Numerical
// Algorithms, 2nd ed. 2002, theorem 10.3); a sound row of 20 000 springs still has one of 3e-9.
const (
	suspect = 1e-7  // a pivot this small asks for a closer look
	least   = 2e-13 // the smallest eigenvalue of a structure that stands
)

// Factor factors the matrix, which stays as it is. An [*Unstable] says that something moves freely.
func (m *Matrix) Factor() (*Factor, error) {
	if m.err != nil {
		return nil, m.err
	}
	l := lower(m.rows)
	f := &Factor{n: m.n, scale: make([]float64, m.n)}
	if err := f.scaleBy(l); err != nil {
		return nil, err
	}
	place, k := l.order()
	if m.n*(k+1) > maxBand {
		return nil, fmt.Errorf("%d unknowns with a band of %d are more than can be solved here", m.n, k)
	}
	f.place = place
	if !f.factor(l, k, 0) {
		return nil, f.unstable(l, k)
	}
	if f.floor < suspect {
		if motion, stiff := f.softest(); stiff < least {
			return nil, f.named(motion)
		}
	}
	return f, nil
}

// scaleBy reads the diagonal; an unknown with nothing on it is loose on its own.
func (f *Factor) scaleBy(l lower) error {
	diagonal := make([]float64, f.n)
	for i, row := range l {
		for _, e := range row {
			if int(e.j) == i {
				diagonal[i] = e.v
			}
		}
	}
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

// factor fills the band with the scaled matrix plus lift on its diagonal and factors it.
func (f *Factor) factor(l lower, k int, lift float64) bool {
	a := blas64.SymmetricBand{Uplo: blas.Upper, N: f.n, K: k, Stride: k + 1, Data: make([]float64, f.n*(k+1))}
	for i, row := range l {
		for _, e := range row {
			j := int(e.j)
			v := e.v * f.scale[i] * f.scale[j]
			if i == j {
				v += lift
			}
			r, c := int(f.place[i]), int(f.place[j])
			if r > c {
				r, c = c, r
			}
			a.Data[r*a.Stride+c-r] = v
		}
	}
	upper, ok := lapack64.Pbtrf(a)
	f.upper, f.floor = upper, 1
	for i := range f.n {
		d := upper.Data[i*upper.Stride]
		ok = ok && d > 0
		f.floor = min(f.floor, d*d)
	}
	return ok
}

// Solve returns the unknowns under the load b, one number per unknown.
func (f *Factor) Solve(b []float64) []float64 {
	y := make([]float64, f.n)
	for i, p := range f.place {
		if i < len(b) {
			y[p] = b[i] * f.scale[i]
		}
	}
	f.solve(y)
	x := make([]float64, f.n)
	for i, p := range f.place {
		x[i] = y[p] * f.scale[i]
	}
	return x
}

func (f *Factor) solve(y []float64) {
	lapack64.Pbtrs(f.upper, blas64.General{Rows: f.n, Cols: 1, Stride: 1, Data: y})
}
