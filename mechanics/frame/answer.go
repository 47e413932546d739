package frame

import (
	"fmt"
	"math"
)

// Answer is how the frame stands under one case.
type Answer struct {
	Case    string
	Nodes   []Stand  // in the order of the frame
	Members []Strain // in the order of the frame
	names   names
}

// Stand is how a node stands.
type Stand struct {
	Node string
	Move [6]float64 // mm along and rad about the axes of the frame
	// Push is what the hold does to the frame: N along and N·mm about the axes.
	Push [6]float64
	Lift float64 // mm between a foot and its floor; 0 where it stands
}

// Strain is what a member bears. Start and End are the forces (N) and moments (N·mm) that the nodes put on its
// ends, along and about its own axes.
type Strain struct {
	Member     string
	Start, End [6]float64
	Axial      float64 // MPa, the larger of the two ends without bending; a pull is positive
	Bending    float64 // MPa, the largest of the whole length; 0 where the section gives no modulus
	At         float64 // mm from the start, where that is
}

// Node finds the stand of a node.
func (a *Answer) Node(name string) (Stand, bool) {
	i, is := a.names.node[name]
	if !is {
		return Stand{}, false
	}
	return a.Nodes[i], true
}

// Member finds the strain of a member.
func (a *Answer) Member(name string) (Strain, bool) {
	i, is := a.names.member[name]
	if !is {
		return Strain{}, false
	}
	return a.Members[i], true
}

// Sway is how far a node moves sideways, square to z, in mm.
func (a *Answer) Sway(name string) (float64, bool) {
	s, is := a.Node(name)
	return math.Hypot(s.Move[AlongX], s.Move[AlongY]), is
}

// answer reads everything off the movements.
func (m *Model) answer(l *laid, u, lift []float64) (Answer, error) {
	holds, out := m.reactions(l.force, u, l.ground)
	a := Answer{Case: l.name, names: m.names, Nodes: make([]Stand, 0, len(m.frame.Nodes)), Members: make([]Strain, 0, len(m.sticks))}
	for i, n := range m.frame.Nodes {
		s := Stand{Node: n.Name}
		copy(s.Move[:], u[6*i:])
		copy(s.Push[:], holds[6*i:])
		a.Nodes = append(a.Nodes, s)
	}
	for i := range lift { // none where the feet are held down
		s := &a.Nodes[m.floors[i].node]
		s.Lift = lift[i]
		if s.Lift > 0 || s.Push[AlongZ] < 0 {
			s.Push[AlongZ] = 0 // a floor does not pull; what stood there is rounding
		}
	}
	for i := range m.sticks {
		a.Members = append(a.Members, m.strain(i, l, u))
	}
	if !a.finite() || !m.balanced(a, l, out, m.rounding(u)) {
		return Answer{}, fmt.Errorf("case %q cannot be worked out: stiffnesses or loads lie too far apart", l.name)
	}
	return a, nil
}

// strain reads the ends of a member and the stress between them.
func (m *Model) strain(i int, l *laid, u []float64) Strain {
	s, member := &m.sticks[i], m.frame.Members[i]
	q := s.forces(s.strained(u))
	b := l.burdens[i]
	if b == nil {
		b = &burden{}
	}
	kept := l.kept[i]
	for k := range q {
		q[k] += kept[k]
	}
	r := Strain{Member: member.Name}
	r.Start, r.End = s.ownEnds(q, b)
	start, end := -r.Start[0]/member.Section.Area, r.End[0]/member.Section.Area
	if r.Axial = start; math.Abs(end) > math.Abs(start) {
		r.Axial = end
	}
	r.Bending, r.At = bentMost(member, s.long, r, b)
	return r
}

// ownEnds are the forces on the ends along the member's own axes.
func (s *stick) ownEnds(q [strains]float64, b *burden) (start, end [6]float64) {
	l := s.long
	start = [6]float64{-q[stretch], (q[startZ] + q[endZ]) / l, -(q[startY] + q[endY]) / l, -q[twist], q[startY], q[startZ]}
	end = [6]float64{q[stretch], -(q[startZ] + q[endZ]) / l, (q[startY] + q[endY]) / l, q[twist], q[endY], q[endZ]}
	for _, p := range b.lumps() {
		share := p.at / l
		start[0] -= p.force[0]
		for j := 1; j < 3; j++ {
			start[j] -= p.force[j] * (1 - share)
			end[j] -= p.force[j] * share
		}
	}
	return start, end
}
