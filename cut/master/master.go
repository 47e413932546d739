// Package master solves linear programs that grow by columns: choose how often each way of cutting a piece
// of stock is used, at the least cost, so that every part is made often enough.
//
//	minimise Σ cost_j·x_j   with   Σ a_ij·x_j ≥ b_i for needs,   Σ a_ij·x_j ≤ b_i for limits,   x ≥ 0
//
// It is the revised simplex method (Dantzig, 1953) with a dense inverse of the basis, kept up to date by
// pivots and now and then made anew. The column that comes in is chosen by the weights of Devex and the one that
// leaves by a test in two passes (both Harris, Mathematical Programming 5, 1973, from memory); pivots look at the
// columns that cost less than their duals or nearly do, and at all others only when those are done. Whoever
// generates columns asks for the duals, adds what costs less than
// its duals, and solves again (Gilmore and Gomory, Operations Research 9, 1961 and 11, 1963; from memory).
// [Master.Reset] changes needs and limits and goes on from the basis that was optimal before.
//
// Numbers are floating: nothing that is claimed may rest on them alone. A bound is made from duals by whole
// numbers elsewhere (package cover).
package master

import "math"

// Entry is one number of a column.
type Entry struct {
	Row   int
	Value float64
}

// Column is one way to use stock: what it costs and what it makes.
type Column struct {
	Cost    float64
	Entries []Entry
}

// Sense says on which side of a row's number its sum must stay.
type Sense int8

// A need is reached or passed; a limit is kept.
const (
	Need  Sense = 1
	Limit Sense = -1
)

// Master is a linear program with its present basis.
type Master struct {
	sense []Sense
	right []float64
	cols  []Column
	off   []bool // columns that may not be used

	penalty float64
	basis   []slot
	at      []int       // of each column: its place in the basis, -1 outside
	slackAt []int       // of each row's slack: its place in the basis, -1 outside
	inv     [][]float64 // the inverse by columns: inv[k][i] stands in row i and column k
	x       []float64
	dual    []float64
	since   int // pivots since the inverse was looked at
	Pivots  int // all pivots, as a measure of work

	// The entries of all columns one behind the other, those of column j from start[j] on, and their costs.
	start   []int32
	rows    []int32
	values  []float64
	costs   []float64
	dearest float64 // the greatest cost

	watched []int32 // columns that pivots look at
	listed  []bool  // of each column: whether it is watched
	near    float64 // how much above its duals a column may cost that is watched, as a share of the greatest cost

	below, slackBelow   []float64 // cost less duals, of what is outside the basis
	weight, slackWeight []float64 // of Devex

	way, across []float64 // scratch
	places      []int32   // scratch
	turned      []float64 // scratch
}

// slot is what stands in one place of the basis.
type slot struct {
	col   int // index of a column, or -1
	slack int // row whose slack or surplus it is, or -1
	fake  []Entry
}

// New returns a program without columns. A need that is not met costs penalty for each unit, which must be above
// what any column costs for a unit.
func New(sense []Sense, right []float64, penalty float64) *Master {
	n := len(sense)
	m := &Master{
		sense: sense, right: append([]float64(nil), right...), penalty: penalty,
		basis: make([]slot, n), slackAt: make([]int, n), inv: square(n), x: make([]float64, n),
		dual: make([]float64, n), start: []int32{0}, slackBelow: make([]float64, n), slackWeight: make([]float64, n),
		way: make([]float64, n), across: make([]float64, n), places: make([]int32, 0, n),
	}
	for i, s := range sense {
		m.inv[i][i] = 1
		m.slackAt[i] = -1
		if s == Limit {
			m.basis[i] = slot{col: -1, slack: i}
			m.slackAt[i] = i
		} else {
			m.basis[i] = slot{col: -1, slack: -1, fake: []Entry{{i, 1}}}
		}
	}
	m.primal()
	return m
}

// square is a matrix of n × n zeros in one piece.
func square(n int) [][]float64 {
	all, out := make([]float64, n*n), make([][]float64, n)
	for i := range out {
		out[i] = all[i*n : (i+1)*n : (i+1)*n]
	}
	return out
}

// Add appends a column and returns its index.
func (m *Master) Add(c Column) int {
	m.cols = append(m.cols, c)
	m.off = append(m.off, false)
	m.at = append(m.at, -1)
	for _, e := range c.Entries {
		m.rows, m.values = append(m.rows, int32(e.Row)), append(m.values, e.Value)
	}
	m.start = append(m.start, int32(len(m.rows)))
	m.costs, m.dearest = append(m.costs, c.Cost), math.Max(m.dearest, c.Cost)
	m.below, m.weight, m.listed = append(m.below, 0), append(m.weight, 1), append(m.listed, false)
	return len(m.cols) - 1
}

// Columns returns how many columns there are.
func (m *Master) Columns() int { return len(m.cols) }

// Column returns column j; the caller must not change it.
func (m *Master) Column(j int) Column { return m.cols[j] }

// Allow says whether column j may be used. One that may not leaves the basis as what costs the penalty would.
func (m *Master) Allow(j int, may bool) { m.off[j] = !may }

// Reset sets the numbers of all rows anew. The basis stays; what became negative in it costs the penalty until
// [Master.Solve] has driven it out.
func (m *Master) Reset(right []float64) {
	copy(m.right, right)
	if m.since >= renewal {
		m.restore()
	} else {
		m.primal()
	}
	m.mend()
	for i := range m.basis {
		if m.x[i] < -tiny {
			m.turn(i)
		}
	}
}

// turn puts the opposite of a basis column in its place: all other values stay, and its own turns positive.
func (m *Master) turn(i int) {
	entries := m.entries(m.basis[i])
	fake := make([]Entry, len(entries))
	for k, e := range entries {
		fake[k] = Entry{e.Row, -e.Value}
	}
	m.leave(i)
	m.basis[i] = slot{col: -1, slack: -1, fake: fake}
	for _, column := range m.inv {
		column[i] = -column[i]
	}
	m.x[i] = -m.x[i]
}

func (m *Master) leave(i int) {
	if s := m.basis[i]; s.col >= 0 {
		m.at[s.col] = -1
	} else if s.slack >= 0 {
		m.slackAt[s.slack] = -1
	}
}

// entries returns the numbers of what stands in a slot.
func (m *Master) entries(s slot) []Entry {
	switch {
	case s.col >= 0:
		return m.cols[s.col].Entries
	case s.slack >= 0:
		return []Entry{{s.slack, -float64(m.sense[s.slack])}}
	}
	return s.fake
}

// cost is what a unit of a slot costs.
func (m *Master) cost(s slot) float64 {
	switch {
	case s.col >= 0 && !m.off[s.col]:
		return m.cols[s.col].Cost
	case s.slack >= 0:
		return 0
	}
	return m.penalty
}

// Value returns the cost of the present solution, penalties included.
func (m *Master) Value() (v float64) {
	for i, s := range m.basis {
		v += m.cost(s) * m.x[i]
	}
	return v
}

// Short returns how much of the rows is met by nothing but penalties.
func (m *Master) Short() (v float64) {
	for i, s := range m.basis {
		if s.slack < 0 && (s.col < 0 || m.off[s.col]) {
			v += math.Abs(m.x[i])
		}
	}
	return v
}

// Use calls visit for every column that the present solution uses, in the order of the basis.
func (m *Master) Use(visit func(j int, times float64)) {
	for i, s := range m.basis {
		if s.col >= 0 && !m.off[s.col] && m.x[i] > tiny {
			visit(s.col, m.x[i])
		}
	}
}

// Duals returns what one more unit of each row costs: at least 0 for needs, at most 0 for limits, when solved.
// The slice is the program's own and changes with the next solve.
func (m *Master) Duals() []float64 { return m.dual }
