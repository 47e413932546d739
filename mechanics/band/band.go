// Package band solves sparse symmetric systems of stiffness: entries are added as elements come, the
// unknowns are put in an order of small bandwidth, and a band Cholesky factor answers any number of loads.
//
// It knows nothing of what the unknowns are. The same entries always give the same answer to the bit. A
// system in which something is free to move without resistance is an error of type [*Unstable], which
// names the unknown that moves most; no answer ever holds NaN as long as the loads are finite.
package band

import (
	"fmt"
	"math"
)

// MaxUnknowns bounds a system: far above any frame or plate of a shop, and small enough that a slip is
// answered with an error instead of an answer of gigabytes.
const MaxUnknowns = 200_000

// maxBand bounds the numbers a factor may hold (8 bytes each).
const maxBand = 60_000_000

// Matrix is a symmetric matrix being assembled.
type Matrix struct {
	n     int
	rows  [][]entry // of the lower triangle, in the order they came
	chunk []entry   // room for rows, cut off as they grow
	strip *strip    // instead of rows where the bandwidth is given
	err   error
}

type entry struct {
	j int32 // at most the row
	v float64
}

// New returns a matrix of n unknowns, all entries 0.
func New(n int) *Matrix {
	m := &Matrix{n: n}
	if n < 1 || n > MaxUnknowns {
		m.err = fmt.Errorf("a system has 1 to %d unknowns, this one %d", MaxUnknowns, n)
		return m
	}
	m.rows = make([][]entry, n)
	return m
}

// NewBanded returns a matrix of n unknowns that already stand in an order of bandwidth k: no entry lies further from
// the diagonal. It is assembled and factored in less time than that of [New], which seeks an order.
func NewBanded(n, k int) *Matrix {
	m := &Matrix{n: n}
	switch {
	case n < 1 || n > MaxUnknowns:
		return New(n)
	case k < 0 || k >= n || tooWide(n, k) != nil:
		m.err = fmt.Errorf("a system of %d unknowns has no band of %d that can be solved here", n, k)
		return m
	}
	m.strip = newStrip(n, k)
	return m
}

// tooWide reports a band of more numbers than a factor may hold.
func tooWide(n, k int) error {
	if n*(k+1) > maxBand {
		return fmt.Errorf("%d unknowns with a band of %d are more than can be solved here", n, k)
	}
	return nil
}

// Release gives the room of a matrix of [NewBanded] to others. Neither it nor what is added to it may be used again; its
// factor may.
func (m *Matrix) Release() {
	if m.strip == nil {
		return
	}
	m.strip.release()
	m.strip, m.err = nil, fmt.Errorf("the matrix was released")
}

// Unknowns returns how many unknowns the matrix has.
func (m *Matrix) Unknowns() int { return m.n }

// Add adds v to the entry of row i and column j, which is also that of row j and column i: of a symmetric
// element matrix each pair is added once, not twice ([Matrix.AddBlock] sees to that). A negative i or j
// stands for an unknown that is held: the entry is left out.
func (m *Matrix) Add(i, j int, v float64) {
	switch {
	case i < 0 || j < 0 || m.err != nil:
		return
	case i >= m.n || j >= m.n:
		m.err = fmt.Errorf("entry %d, %d lies outside a system of %d unknowns", i, j, m.n)
		return
	case math.IsNaN(v) || math.IsInf(v, 0):
		m.err = fmt.Errorf("entry %d, %d is %v: a stiffness must be a finite number", i, j, v)
		return
	}
	if i < j {
		i, j = j, i
	}
	if m.strip != nil {
		m.addNear(i, j, v)
		return
	}
	row := m.rows[i]
	for k := range row {
		if row[k].j == int32(j) {
			row[k].v += v
			return
		}
	}
	if len(row) == cap(row) {
		row = m.roomier(row)
	}
	m.rows[i] = append(row, entry{j: int32(j), v: v})
}

// addNear adds to an entry of the strip.
func (m *Matrix) addNear(i, j int, v float64) {
	if i-j > m.strip.k {
		m.err = fmt.Errorf("entry %d, %d lies outside the band of %d", i, j, m.strip.k)
		return
	}
	m.strip.data[i*(m.strip.k+1)+j-i+m.strip.k] += v
}

// roomier moves a row to where there is twice the room.
func (m *Matrix) roomier(row []entry) []entry {
	room := max(8, 2*len(row))
	if len(m.chunk) < room {
		m.chunk = make([]entry, max(4096, room))
	}
	out := append(m.chunk[:0:room], row...)
	m.chunk = m.chunk[room:]
	return out
}

// AddBlock adds the full symmetric matrix k (row by row, len(at) squared) of an element whose unknowns are
// at; only its lower triangle is read. A negative unknown is held and left out.
func (m *Matrix) AddBlock(at []int, k []float64) {
	if len(k) != len(at)*len(at) && m.err == nil {
		m.err = fmt.Errorf("an element of %d unknowns has %d entries, not %d", len(at), len(at)*len(at), len(k))
	}
	if m.err != nil {
		return
	}
	for a := range at {
		for b := 0; b <= a; b++ {
			m.Add(at[a], at[b], k[a*len(at)+b])
		}
	}
}

// Unstable says that the system moves without resistance.
type Unstable struct {
	Unknown int       // the one that moves most
	Motion  []float64 // how all unknowns move together, the largest 1 (each in the unit of its own stiffness)
}

// Error names the unknown that moves.
func (u *Unstable) Error() string {
	return fmt.Sprintf("unknown %d has no stiffness: something moves without resistance; hold or support it", u.Unknown)
}
