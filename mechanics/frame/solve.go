package frame

import (
	"fmt"
	"math"
	"slices"
)

// Solve works out the cases one after another with the one factor of the model. The answers stand in the order
// of the cases. A case under which the frame tips over is an error of type [*Tips].
func (m *Model) Solve(cases ...Case) ([]Answer, error) {
	answers := make([]Answer, len(cases))
	for i, c := range cases {
		a, err := m.solve(c)
		if err != nil {
			return nil, err
		}
		answers[i] = a
	}
	return answers, nil
}

// laid is a case brought into numbers: forces on the freedoms, how far the ground moves under the holds, and
// what every loaded member puts on its ends.
type laid struct {
	name    string
	force   []float64
	ground  []float64
	burdens map[int]*burden
	kept    map[int][strains]float64
}

func (m *Model) solve(c Case) (Answer, error) {
	l, err := m.lay(c)
	if err != nil {
		return Answer{}, err
	}
	if err := m.idleMoment(l); err != nil {
		return Answer{}, err
	}
	u := m.move(l.force, l.ground)
	if c.HeldDown {
		return m.answer(l, u, nil)
	}
	lift, err := m.settle(l, u)
	if err != nil {
		return Answer{}, err
	}
	return m.let(l, u, lift)
}

// lay brings the loads of a case together.
func (m *Model) lay(c Case) (*laid, error) {
	n := len(m.ties.follows)
	l := &laid{name: c.Name, force: make([]float64, n), ground: make([]float64, n), kept: map[int][strains]float64{}}
	for _, p := range c.Pushes {
		i, is := m.names.node[p.Node]
		if !is || !p.Force.within(mostLoad) || !p.Moment.within(mostLoad) {
			return nil, fmt.Errorf("case %q: push %v, %v on node %q: it must be finite and on a node of the frame", c.Name, p.Force, p.Moment, p.Node)
		}
		p.Force.addTo(l.force, 6*i)
		p.Moment.addTo(l.force, 6*i+3)
	}
	for _, f := range m.floors {
		l.ground[f.freedom] -= f.gap
	}
	for _, s := range c.Shifts {
		i, is := m.names.node[s.Node]
		if !is || s.Freedom < AlongX || s.Freedom > AboutZ || m.frame.Nodes[i].Hold[s.Freedom] == 0 || !(math.Abs(s.By) <= mostAt) {
			return nil, fmt.Errorf("case %q: the ground of node %q shifts by %g %s: it must be finite and under a hold of the frame", c.Name, s.Node, s.By, s.Freedom)
		}
		l.ground[6*i+int(s.Freedom)] += s.By
	}
	var err error
	if l.burdens, err = m.burdens(c); err != nil {
		return nil, err
	}
	for i := range m.sticks { // in order: a map has none
		if b := l.burdens[i]; b != nil {
			ends, kept := m.sticks[i].held(m.frame.Members[i], b)
			l.kept[i] = kept
			m.sticks[i].onto(l.force, ends, -1)
		}
	}
	return l, nil
}

// onto adds forces of the two ends to those of the freedoms.
func (s *stick) onto(force []float64, ends [12]float64, by float64) {
	for j := range 6 {
		force[6*s.from+j] += by * ends[j]
		force[6*s.to+j] += by * ends[j+6]
	}
}

// idleMoment refuses a moment on a node that is free to turn on its own.
func (m *Model) idleMoment(l *laid) error {
	if len(m.idle) == 0 {
		return nil
	}
	loose, _ := m.ties.gathered(l.force)
	most := 0.0
	for _, f := range loose {
		most = math.Max(most, math.Abs(f))
	}
	for _, t := range m.idle {
		moment := 0.0
		for i, u := range t.at {
			if u >= 0 {
				moment += loose[u] * t.about[i]
			}
		}
		if math.Abs(moment) > 1e-9*most {
			e := &Mechanism{Node: m.frame.Nodes[t.node].Name, Freedom: AboutX + t.about.most(), Direction: t.about, Case: l.name}
			e.tidy()
			return e
		}
	}
	return nil
}

// move is how all freedoms move under forces and under shifts of the ground. One round of improvement follows:
// what is out of balance is worked out from the strains of each member, where little cancels, and laid on again.
func (m *Model) move(force, ground []float64) []float64 {
	held := make([]float64, len(m.ties.held))
	for i, f := range m.ties.held {
		held[i] = ground[f]
	}
	loose := make([]float64, len(m.ties.loose))
	u := m.ties.spread(loose, held)
	still := !slices.ContainsFunc(ground, func(g float64) bool { return g != 0 })
	for round := range 2 {
		rest := force
		if round > 0 || !still { // a frame that has not moved resists nothing
			rest = m.resistance(u, ground)
			for i := range rest {
				rest[i] = force[i] - rest[i]
			}
		}
		out, _ := m.ties.gathered(rest)
		for i, x := range m.system.solve(out) {
			loose[i] += x
		}
		u = m.ties.spread(loose, held)
	}
	return u
}

// resistance is the force on every freedom with which members and springs answer movements.
func (m *Model) resistance(u, ground []float64) []float64 {
	r := make([]float64, len(u))
	for i := range m.sticks {
		s := &m.sticks[i]
		s.onto(r, s.onEnds(s.forces(s.strained(u))), 1)
	}
	for i, n := range m.frame.Nodes {
		for j, k := range n.Hold {
			if k > 0 && !math.IsInf(k, 1) {
				r[6*i+j] += k * (u[6*i+j] - ground[6*i+j])
			}
		}
	}
	return r
}

// reactions are the forces with which the holds act on the frame, and what is left out of balance.
func (m *Model) reactions(force, u, ground []float64) (holds, out []float64) {
	rest := m.resistance(u, ground)
	for i := range rest {
		rest[i] -= force[i]
	}
	out, fast := m.ties.gathered(rest)
	holds = make([]float64, 6*len(m.frame.Nodes))
	for i, f := range m.ties.held {
		holds[f] = fast[i]
	}
	for i, n := range m.frame.Nodes {
		for j, k := range n.Hold {
			if k > 0 && !math.IsInf(k, 1) {
				holds[6*i+j] = k * (ground[6*i+j] - u[6*i+j])
			}
		}
	}
	return holds, out
}
