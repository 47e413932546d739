package band

import (
	"math"
	"sync"
)

// strip is a lower triangle of small bandwidth, row by row: row i holds the columns i−k to i, the diagonal last.
// Columns before the first are zero.
type strip struct {
	n, k int
	data []float64
}

// room holds what strips that are released leave: a plate factors dozens of them of about a megabyte one after another.
var room sync.Pool

func newStrip(n, k int) *strip {
	size := n * (k + 1)
	if old, ok := room.Get().(*[]float64); ok && cap(*old) >= size {
		data := (*old)[:size]
		clear(data)
		return &strip{n: n, k: k, data: data}
	}
	return &strip{n: n, k: k, data: make([]float64, size)}
}

// release gives a strip's room to others.
func (s *strip) release() {
	if s != nil && s.data != nil {
		data := s.data
		s.data = nil
		room.Put(&data)
	}
}

// row returns the k+1 entries of row i.
func (s *strip) row(i int) []float64 { return s.data[i*(s.k+1) : (i+1)*(s.k+1)] }

// cholesky turns the strip into its factor L, of which the strip is L·Lᵀ, and reports whether it has one (G. H. Golub,
// C. F. Van Loan, Matrix Computations, 4th ed. 2013, section 4.3, by rows). Two rows are worked at a time against two
// columns, so that every number that is read serves two products.
func (s *strip) cholesky() bool {
	i := 0
	for ; i+1 < s.n; i += 2 {
		a, b := s.row(i), s.row(i+1)
		j := max(0, i-s.k)
		if s.k > 0 && i >= s.k {
			// Row i alone reaches the column i−k.
			s.entry(a, i, j)
			j++
		}
		for ; j+1 < i; j += 2 {
			s.pairs(a, b, i, j)
		}
		for ; j < i; j++ {
			s.entry(a, i, j)
			s.entry(b, i+1, j)
		}
		if !s.pivot(a) {
			return false
		}
		if s.k > 0 {
			s.entry(b, i+1, i)
		}
		if !s.pivot(b) {
			return false
		}
	}
	return i >= s.n || s.lastRow(i)
}

// lastRow finishes a row on its own.
func (s *strip) lastRow(i int) bool {
	a := s.row(i)
	for j := max(0, i-s.k); j < i; j++ {
		s.entry(a, i, j)
	}
	return s.pivot(a)
}

// entry works out the entry of row i, whose numbers are a, in column j before the diagonal.
func (s *strip) entry(a []float64, i, j int) {
	at := j - i + s.k
	c := s.row(j)
	c = c[s.k-at:]
	sum := a[at]
	for m, v := range a[:at] {
		sum -= v * c[m]
	}
	a[at] = sum / c[at]
}

// pairs works out the columns j and j+1 of the rows i and i+1, whose numbers are a and b.
func (s *strip) pairs(a, b []float64, i, j int) {
	at := j - i + s.k // of column j in a; in b it is one less
	n := at - 1
	c, d := s.row(j), s.row(j+1)
	// What lies below is counted from the first column of row i+1, which is one after that of row i.
	x, y := a[1:][:n], b[:n]
	u, v := c[s.k-at+1:][:n], d[s.k-at:][:n]
	var ac, ad, bc, bd float64
	for m, p := range x {
		q, r, t := y[m], u[m], v[m]
		ac += p * r
		ad += p * t
		bc += q * r
		bd += q * t
	}
	// Column i−k, which row i+1 lacks.
	ac += a[0] * c[s.k-at]
	ad += a[0] * d[s.k-at-1]
	l, m, o := 1/c[s.k], d[s.k-1], 1/d[s.k]
	a[at] = (a[at] - ac) * l
	a[at+1] = (a[at+1] - ad - a[at]*m) * o
	b[at-1] = (b[at-1] - bc) * l
	b[at] = (b[at] - bd - b[at-1]*m) * o
}

// pivot finishes the diagonal of a row.
func (s *strip) pivot(a []float64) bool {
	sum := a[s.k]
	for _, v := range a[:s.k] {
		sum -= v * v
	}
	if !(sum > 0) || math.IsInf(sum, 0) {
		return false
	}
	a[s.k] = math.Sqrt(sum)
	return true
}

// solve answers L·Lᵀ·x = y in place.
func (s *strip) solve(y []float64) {
	for i := range s.n {
		a := s.row(i)
		lo := max(0, i-s.k)
		sum, part := y[i], a[lo-i+s.k:s.k]
		for m, v := range y[lo:i] {
			sum -= part[m] * v
		}
		y[i] = sum / a[s.k]
	}
	for i := s.n - 1; i >= 0; i-- {
		a := s.row(i)
		lo := max(0, i-s.k)
		x := y[i] / a[s.k]
		y[i] = x
		part, up := a[lo-i+s.k:s.k], y[lo:i]
		for m := range up {
			up[m] -= part[m] * x
		}
	}
}
