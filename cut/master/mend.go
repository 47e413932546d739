package master

import "math"

// mendMost bounds the exchanges of one mending: Reset asks nobody whether there is time.
const mendMost = 100

// mend drives out of the basis what may not stay there after needs, limits or columns have changed: values below zero,
// and columns that may no longer be used. It is the dual simplex method (Lemke, Naval Research Logistics Quarterly 1,
// 1954, from memory), which keeps the duals good while it goes; what it can't drive out costs the penalty.
func (m *Master) mend() {
	if m.worst() < 0 {
		return
	}
	m.trueDuals()
	for range mendMost {
		out := m.worst()
		if out < 0 {
			return
		}
		in, ok := m.replacing(out)
		if !ok {
			return
		}
		m.transform(in)
		p := m.way[out]
		if math.Abs(p) < leastBy {
			return
		}
		m.replace(in, out, p)
	}
}

// wrong is by how much the value of a place of the basis is wrong.
func (m *Master) wrong(i int) float64 {
	if s := m.basis[i]; m.x[i] > 0 && (s.col < 0 || !m.off[s.col]) {
		return 0
	}
	return math.Abs(m.x[i])
}

// worst is the place of the basis whose value is wrong by most, -1 for none.
func (m *Master) worst() int {
	worst, by := -1, 1e-7
	for i := range m.basis {
		if w := m.wrong(i); w > by {
			worst, by = i, w
		}
	}
	return worst
}

// trueDuals computes what everything outside the basis costs above duals in which columns that may no longer be used
// cost what they did.
func (m *Master) trueDuals() {
	for i, s := range m.basis {
		if m.way[i] = m.cost(s); s.col >= 0 {
			m.way[i] = m.costs[s.col]
		}
	}
	for k, column := range m.inv {
		m.dual[k] = dot(column, m.way)
	}
	for j, d := range m.costs {
		if m.at[j] < 0 && !m.off[j] {
			m.below[j] = max(0, d-m.worthBy(m.dual, j))
		}
	}
	for i, s := range m.sense {
		m.slackBelow[i] = max(0, float64(s)*m.dual[i])
	}
}

// worthBy is the sum over a column's entries of what a row is worth.
func (m *Master) worthBy(row []float64, j int) (v float64) {
	rows := m.rows[m.start[j]:m.start[j+1]]
	values := m.values[m.start[j]:][:len(rows)]
	for e, r := range rows {
		v += row[r] * values[e]
	}
	return v
}

// replacing finds what comes into the basis for a place whose value is wrong: what moves it the right way and costs
// least above its duals for that. The row of the place is left in across, what it says of columns in turned.
func (m *Master) replacing(out int) (in slot, ok bool) {
	sign := 1.0
	if m.x[out] < 0 {
		sign = -1
	}
	for k, column := range m.inv {
		m.across[k] = sign * column[out]
	}
	m.turned = append(m.turned[:0], make([]float64, len(m.costs))...)
	least, largest := math.Inf(1), 0.0
	take := func(s slot, d, a float64) {
		if a <= 1e-6 || d > least*a+tiny || d > (least-tiny)*a && a < largest {
			return
		}
		least, largest, in, ok = min(least, d/a), a, s, true
	}
	for j := range m.costs {
		if m.at[j] < 0 && !m.off[j] {
			m.turned[j] = m.worthBy(m.across, j)
			take(slot{col: j, slack: -1}, m.below[j], m.turned[j])
		}
	}
	for i, s := range m.sense {
		if m.slackAt[i] < 0 {
			take(slot{col: -1, slack: i}, m.slackBelow[i], -float64(s)*m.across[i])
		}
	}
	return in, ok
}

// replace makes the exchange that replacing found.
func (m *Master) replace(in slot, out int, p float64) {
	below, sign := 0.0, 1.0
	if in.col >= 0 {
		below = m.below[in.col]
	} else {
		below = m.slackBelow[in.slack]
	}
	if m.x[out] < 0 {
		sign = -1
	}
	rate := below / (sign * p)
	for j, a := range m.turned {
		if a != 0 {
			m.below[j] = max(0, m.below[j]-rate*a)
		}
	}
	for i, s := range m.sense {
		if m.slackAt[i] < 0 {
			m.slackBelow[i] = max(0, m.slackBelow[i]+rate*float64(s)*m.across[i])
		}
	}
	old := m.basis[out]
	m.leave(out)
	if m.basis[out] = in; in.col >= 0 {
		m.at[in.col] = out
	} else {
		m.slackAt[in.slack] = out
	}
	if old.slack >= 0 {
		m.slackBelow[old.slack] = rate
	} else if old.col >= 0 {
		m.below[old.col] = rate
	}
	step := m.x[out] / p
	m.way[out] = 0
	add(m.x, -step, m.way)
	m.x[out] = step
	for k := range m.across {
		m.across[k] *= sign / p
	}
	m.turnInverse(out)
	m.Pivots++
	m.since++
}
