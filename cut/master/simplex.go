package master

import "math"

const (
	tiny    = 1e-9 // what counts as nothing in a value
	gain    = 1e-8 // a column comes in when it costs less than its duals by this, in units of its own cost
	leastBy = 1e-7 // the least pivot
	renewal = 100  // pivots after which the inverse is looked at, and made anew where it is worn

	leastNear = 1e-3 // the least step of how much above their duals columns may cost that are watched
)

// Solve brings columns in until none costs less than its duals, or the pivots are spent; it reports whether the
// solution is the best of the columns there are.
func (m *Master) Solve(pivots int) bool {
	m.prices()
	fresh := true
	for {
		in, ok := m.entering()
		if !ok {
			if fresh {
				return true
			}
			m.prices() // for columns that are not watched, and what rounding may hide
			fresh = true
			continue
		}
		if pivots--; pivots < 0 || !m.pivot(in) {
			return false
		}
		fresh = false
	}
}

// prices computes the duals from the inverse, what everything outside the basis costs above them, and begins anew
// with the weights of Devex.
func (m *Master) prices() {
	for i, s := range m.basis {
		m.way[i] = m.cost(s)
	}
	for k, column := range m.inv {
		m.dual[k] = dot(column, m.way)
	}
	m.watch()
	for i, s := range m.sense {
		m.slackBelow[i], m.slackWeight[i] = float64(s)*m.dual[i], 1
	}
}

// watch chooses the columns that pivots look at until the next prices: all that cost less than their duals, and
// those that nearly do, so that they are some times the rows.
func (m *Master) watch() {
	m.watched = m.watched[:0]
	clear(m.listed)
	near := m.near * m.dearest
	for j, d := range m.costs {
		if m.at[j] >= 0 || m.off[j] {
			continue
		}
		for e := m.start[j]; e < m.start[j+1]; e++ {
			d -= m.dual[m.rows[e]] * m.values[e]
		}
		m.below[j] = d
		if d < near {
			m.watched = append(m.watched, int32(j))
			m.weight[j], m.listed[j] = 1, true
		}
	}
	switch n := len(m.basis); {
	case len(m.watched) > 4*n:
		m.near /= 2
	case len(m.watched) < 2*n && len(m.watched) < len(m.costs)/2:
		m.near = 2*m.near + leastNear
	}
}

// entering finds the column, or slack, that costs less than its duals by most, as the weights measure it.
func (m *Master) entering() (in slot, ok bool) {
	best := 0.0
	for _, j := range m.watched {
		d := m.below[j]
		if d >= -gain || m.at[j] >= 0 || d >= -gain*(1+math.Abs(m.costs[j])) {
			continue
		}
		if v := d * d / m.weight[j]; v > best {
			best, in, ok = v, slot{col: int(j), slack: -1}, true
		}
	}
	for i, d := range m.slackBelow {
		if d >= -gain || m.slackAt[i] >= 0 {
			continue
		}
		if v := d * d / m.slackWeight[i]; v > best {
			best, in, ok = v, slot{col: -1, slack: i}, true
		}
	}
	return in, ok
}

// pivot brings a slot in for one that reaches zero first: of those that do within the rounding of values, the one
// with the largest pivot.
func (m *Master) pivot(in slot) bool {
	m.transform(in)
	step := math.Inf(1)
	for i, w := range m.way {
		if w > leastBy {
			if x := max(m.x[i], 0) + tiny; x < step*w {
				step = x / w
			}
		}
	}
	out, largest := -1, 0.0
	for i, w := range m.way {
		if w > largest && w > leastBy && max(m.x[i], 0) <= step*w {
			out, largest = i, w
		}
	}
	if out < 0 {
		return false // unbounded: no program of cutting is
	}
	m.exchange(in, out)
	return true
}

// transform writes inverse × column into way.
func (m *Master) transform(in slot) {
	clear(m.way)
	for _, e := range m.entries(in) {
		add(m.way, e.Value, m.inv[e.Row])
	}
}

// exchange puts a slot in the place of another and brings inverse, values, duals and weights up to date.
func (m *Master) exchange(in slot, out int) {
	p := m.way[out]
	for k, column := range m.inv {
		m.across[k] = column[out] / p
	}
	m.reprice(in, out, p)
	m.leave(out)
	m.basis[out] = in
	if in.col >= 0 {
		m.at[in.col] = out
	} else {
		m.slackAt[in.slack] = out
	}
	step := max(m.x[out], 0) / p
	m.way[out] = 0
	add(m.x, -step, m.way)
	m.x[out] = step
	m.turnInverse(out)
	m.Pivots++
	if m.since++; m.since >= renewal {
		m.restore()
		m.prices()
	}
}

// turnInverse puts the new row out, which is in across, into the inverse, and takes from every other row what way says
// of it.
func (m *Master) turnInverse(out int) {
	m.places = m.places[:0]
	for i, w := range m.way {
		if w != 0 {
			m.places = append(m.places, int32(i))
		}
	}
	few := 3*len(m.places) < len(m.way)
	for k, f := range m.across {
		if f == 0 {
			continue
		}
		column := m.inv[k]
		if few {
			for _, i := range m.places {
				column[i] -= f * m.way[i]
			}
		} else {
			add(column, -f, m.way)
		}
		column[out] = f
	}
}

// reprice takes the new duals, and brings what columns cost above them and their weights up to date.
func (m *Master) reprice(in slot, out int, p float64) {
	var below, weight float64
	if in.col >= 0 {
		below, weight = m.below[in.col], m.weight[in.col]
	} else {
		below, weight = m.slackBelow[in.slack], m.slackWeight[in.slack]
	}
	for _, j := range m.watched {
		if m.at[j] >= 0 {
			continue
		}
		rows := m.rows[m.start[j]:m.start[j+1]]
		values := m.values[m.start[j]:][:len(rows)]
		a := 0.0
		for e, row := range rows {
			a += m.across[row] * values[e]
		}
		if a != 0 {
			m.below[j] -= below * a
			m.weight[j] = max(m.weight[j], a*a*weight)
		}
	}
	for i, f := range m.across {
		m.dual[i] += below * f
		if f != 0 && m.slackAt[i] < 0 {
			m.slackBelow[i] = float64(m.sense[i]) * m.dual[i]
			m.slackWeight[i] = max(m.slackWeight[i], f*f*weight)
		}
	}
	m.leaving(m.basis[out], -below/p, max(weight/(p*p), 1))
}

// leaving notes cost above the duals and weight of what leaves the basis.
func (m *Master) leaving(s slot, below, weight float64) {
	switch {
	case s.col >= 0:
		m.below[s.col], m.weight[s.col] = below, weight
		if !m.off[s.col] && !m.listed[s.col] {
			m.listed[s.col] = true
			m.watched = append(m.watched, int32(s.col))
		}
	case s.slack >= 0:
		m.slackBelow[s.slack], m.slackWeight[s.slack] = below, weight
	}
}

// primal computes the values of the basis from the inverse.
func (m *Master) primal() {
	clear(m.x)
	for k, b := range m.right {
		if b != 0 {
			add(m.x, b, m.inv[k])
		}
	}
}

// add adds f times b to a.
func add(a []float64, f float64, b []float64) {
	b = b[:len(a)]
	for len(a) >= 4 {
		c, d := a[:4:4], b[:4:4]
		c[0] += f * d[0]
		c[1] += f * d[1]
		c[2] += f * d[2]
		c[3] += f * d[3]
		a, b = a[4:], b[4:]
	}
	for i, v := range b {
		a[i] += f * v
	}
}

// dot is the sum of products.
func dot(a, b []float64) (v float64) {
	b = b[:len(a)]
	for i, x := range a {
		v += x * b[i]
	}
	return v
}
