package frame

import "fmt"

// Mix answers sums of cases without solving each anew: the movements under every case are worked out once, with the
// feet held down, and a sum takes its movements from theirs. Where a foot would be pulled in the sum the floors let go of
// it as in [Model.Solve]. It never changes.
type Mix struct {
	model *Model
	laid  []*laid
	moves [][]float64
	push  [][]float64 // of every floor, with the feet held down
}

// Share is a case of a mix, by its number, and how many times it is taken.
type Share struct {
	Of int
	By float64
}

// Mix makes cases ready to be summed. Loads along members, and gaps under feet, are an error: what a member bears between
// its ends and how a foot comes to rest do not add up.
func (m *Model) Mix(cases ...Case) (*Mix, error) {
	for _, f := range m.floors {
		if f.gap != 0 {
			return nil, fmt.Errorf("node %q has a gap: cases of a frame with gaps do not add up", m.frame.Nodes[f.node].Name)
		}
	}
	x := &Mix{model: m}
	for _, c := range cases {
		l, err := m.lay(c)
		switch {
		case err != nil:
			return nil, err
		case len(l.burdens) > 0:
			return nil, fmt.Errorf("case %q loads a member between its ends: such cases are not mixed", c.Name)
		}
		if err := m.idleMoment(l); err != nil {
			return nil, err
		}
		u := m.move(l.force, l.ground)
		x.laid, x.moves, x.push = append(x.laid, l), append(x.moves, u), append(x.push, m.pushes(l, u))
	}
	return x, nil
}

// Solve answers a sum of the cases, with the floors moved by the shifts besides; these may only be along z under feet on
// a floor. Held down, the floors pull as well.
func (x *Mix) Solve(name string, heldDown bool, shares []Share, shifts ...Shift) (Answer, error) {
	m := x.model
	l := &laid{name: name, force: make([]float64, len(m.ties.follows)), ground: make([]float64, len(m.ties.follows))}
	u, push := make([]float64, len(m.ties.follows)), make([]float64, len(m.floors))
	for _, s := range shares {
		if s.Of < 0 || s.Of >= len(x.laid) {
			return Answer{}, fmt.Errorf("case %q takes case %d of %d", name, s.Of, len(x.laid))
		}
		add(l.force, s.By, x.laid[s.Of].force)
		add(l.ground, s.By, x.laid[s.Of].ground)
		add(u, s.By, x.moves[s.Of])
		add(push, s.By, x.push[s.Of])
	}
	for _, s := range shifts {
		i := m.floorOf(s)
		if i < 0 {
			return Answer{}, fmt.Errorf("case %q: the floor shifts under %q %s: a mix shifts floors along z", name, s.Node, s.Freedom)
		}
		l.ground[m.floors[i].freedom] += s.By
		add(u, s.By, m.lifted[i])
		add(push, s.By, m.give[i])
	}
	if heldDown {
		return m.answer(l, u, nil)
	}
	lift, err := m.settleBy(l, u, push)
	if err != nil {
		return Answer{}, err
	}
	return m.let(l, u, lift)
}

// let lets the feet lift, and answers.
func (m *Model) let(l *laid, u, lift []float64) (Answer, error) {
	for i, z := range lift {
		l.ground[m.floors[i].freedom] += z
		if z != 0 {
			add(u, z, m.lifted[i])
		}
	}
	return m.answer(l, u, lift)
}

// floorOf is the number of the floor that a shift moves, or -1.
func (m *Model) floorOf(s Shift) int {
	node, is := m.names.node[s.Node]
	for i, f := range m.floors {
		if is && f.node == node && s.Freedom == AlongZ {
			return i
		}
	}
	return -1
}

// add adds so many times of one list to another.
func add(to []float64, by float64, of []float64) {
	for i, v := range of {
		to[i] += by * v
	}
}
