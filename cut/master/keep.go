package master

// Basis is the basis of a program as it was at some moment, to come back to.
type Basis struct {
	slots []slot
	inv   []float64
	since int
}

// Keep writes the present basis into b, whose room it takes over, and returns it. A nil b is a new one.
func (m *Master) Keep(b *Basis) *Basis {
	if b == nil {
		b = &Basis{}
	}
	b.slots, b.inv, b.since = append(b.slots[:0], m.basis...), b.inv[:0], m.since
	for _, column := range m.inv {
		b.inv = append(b.inv, column...)
	}
	return b
}

// Return goes back to a basis that was kept. [Master.Reset] has to follow: values belong to needs and limits.
func (m *Master) Return(b *Basis) {
	for i := range m.basis {
		m.leave(i)
	}
	for i, s := range b.slots {
		switch m.basis[i] = s; {
		case s.col >= 0:
			m.at[s.col] = i
		case s.slack >= 0:
			m.slackAt[s.slack] = i
		}
	}
	n := len(m.basis)
	for k, column := range m.inv {
		copy(column, b.inv[k*n:])
	}
	m.since = b.since
}
