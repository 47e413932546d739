package master

import "math"

const (
	tiny    = 1e-9 // what counts as nothing in a value
	gain    = 1e-8 // a column comes in when it costs less than its duals by this, in units of the greatest cost
	leastBy = 1e-7 // the least pivot
	renewal = 120  // pivots after which the inverse is made anew
)

// Solve brings columns in until none costs less than its duals, or the pivots are spent; it reports whether the
// solution is the best of the columns there are.
func (m *Master) Solve(pivots int) bool {
	m.prices()
	for ; pivots > 0; pivots-- {
		in, below, ok := m.entering()
		if !ok {
			return true
		}
		if !m.pivot(in, below) {
			return false
		}
	}
	return false
}

// prices computes the duals from the inverse.
func (m *Master) prices() {
	clear(m.dual)
	for i, s := range m.basis {
		if c := m.cost(s); c != 0 {
			for k, v := range m.inv[i] {
				m.dual[k] += c * v
			}
		}
	}
}

// entering finds the column, or slack, that costs least below its duals, and by how much (negative).
func (m *Master) entering() (in slot, below float64, ok bool) {
	best := -gain
	for j, c := range m.cols {
		if m.at[j] >= 0 || m.off[j] {
			continue
		}
		d := c.Cost
		for _, e := range c.Entries {
			d -= m.dual[e.Row] * e.Value
		}
		if d < best*(1+math.Abs(c.Cost)) {
			best, in, ok = d, slot{col: j, slack: -1}, true
		}
	}
	for i, s := range m.sense {
		if d := float64(s) * m.dual[i]; m.slackAt[i] < 0 && d < best {
			best, in, ok = d, slot{col: -1, slack: i}, true
		}
	}
	return in, best, ok
}

// pivot brings a slot in for the one that reaches zero first; of equals, the one that makes the largest pivot.
func (m *Master) pivot(in slot, below float64) bool {
	m.transform(in)
	out, step := -1, math.Inf(1)
	for i, w := range m.way {
		if w <= leastBy {
			continue
		}
		r := math.Max(m.x[i], 0) / w
		if r < step-tiny || r < step+tiny && (out < 0 || w > m.way[out]) {
			out, step = i, math.Min(r, step)
		}
	}
	if out < 0 {
		return false // unbounded: no program of cutting is
	}
	m.exchange(in, out, below)
	return true
}

// transform writes inverse × column into way.
func (m *Master) transform(in slot) {
	entries := m.entries(in)
	for i, row := range m.inv {
		v := 0.0
		for _, e := range entries {
			v += row[e.Row] * e.Value
		}
		m.way[i] = v
	}
}

// exchange puts a slot in the place of another and brings inverse, values and duals up to date.
func (m *Master) exchange(in slot, out int, below float64) {
	m.leave(out)
	m.basis[out] = in
	if in.col >= 0 {
		m.at[in.col] = out
	} else {
		m.slackAt[in.slack] = out
	}
	p := m.way[out]
	pivotRow := m.inv[out]
	for k := range pivotRow {
		pivotRow[k] /= p
	}
	m.x[out] = math.Max(m.x[out], 0) / p
	for i, w := range m.way {
		if i == out || w == 0 {
			continue
		}
		row := m.inv[i]
		for k, v := range pivotRow {
			row[k] -= w * v
		}
		m.x[i] -= w * m.x[out]
	}
	for k, v := range pivotRow {
		m.dual[k] += below * v
	}
	m.Pivots++
	if m.since++; m.since >= renewal {
		m.restore()
		m.prices()
	}
}

// values computes the values of the basis from the inverse.
func (m *Master) values() {
	for i, row := range m.inv {
		v := 0.0
		for k, b := range m.right {
			v += row[k] * b
		}
		m.x[i] = v
	}
}

// restore makes the inverse anew by elimination with the largest pivots, and the values from it. A basis that
// rounding has made singular keeps the inverse it has.
func (m *Master) restore() {
	m.since = 0
	if inv, ok := m.inverse(); ok {
		m.inv = inv
	}
	m.values()
}

func (m *Master) inverse() ([][]float64, bool) {
	n := len(m.basis)
	a := make([][]float64, n) // rows of the basis matrix beside the unit matrix
	for i := range a {
		a[i] = make([]float64, 2*n)
		a[i][n+i] = 1
	}
	for j, s := range m.basis {
		for _, e := range m.entries(s) {
			a[e.Row][j] = e.Value
		}
	}
	for j := range n {
		p := j
		for i := j + 1; i < n; i++ {
			if math.Abs(a[i][j]) > math.Abs(a[p][j]) {
				p = i
			}
		}
		if math.Abs(a[p][j]) < 1e-11 {
			return nil, false
		}
		a[j], a[p] = a[p], a[j]
		eliminate(a, j)
	}
	for i := range a {
		a[i] = a[i][n:]
	}
	return a, true
}

// eliminate clears column j of all rows but the j-th.
func eliminate(a [][]float64, j int) {
	row := a[j]
	p := row[j]
	for k := j; k < len(row); k++ {
		row[k] /= p
	}
	for i := range a {
		f := a[i][j]
		if i == j || f == 0 {
			continue
		}
		other := a[i]
		for k := j; k < len(row); k++ {
			if row[k] != 0 {
				other[k] -= f * row[k]
			}
		}
	}
}
