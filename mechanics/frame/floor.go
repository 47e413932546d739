package frame

import "math"

// floor is a hold that pushes and never pulls.
type floor struct {
	node, freedom int
	gap           float64
}

// standOnFloors works out, once, how the frame answers when the floor under one foot rises.
func (m *Model) standOnFloors() {
	for i, n := range m.frame.Nodes {
		if n.Floor {
			m.floors = append(m.floors, floor{i, 6*i + int(AlongZ), n.Gap})
		}
	}
	nothing := make([]float64, len(m.ties.follows))
	for _, f := range m.floors {
		ground := make([]float64, len(nothing))
		ground[f.freedom] = 1
		u := m.move(nothing, ground)
		holds, _ := m.reactions(nothing, u, ground)
		push := make([]float64, len(m.floors))
		for j, other := range m.floors {
			push[j] = holds[other.freedom]
		}
		m.lifted, m.give = append(m.lifted, u), append(m.give, push)
	}
	m.quieten()
}

// quieten sets to nothing what is rounding: on three feet a floor may rise without any force.
func (m *Model) quieten() {
	own := make([]float64, len(m.floors))
	for i, f := range m.floors {
		for _, s := range m.sticks {
			if s.from == f.node || s.to == f.node {
				own[i] += s.stiff[stretch][stretch]
			}
		}
	}
	for i := range m.give {
		for j := range i + 1 {
			v := (m.give[i][j] + m.give[j][i]) / 2
			if math.Abs(v) < 1e-11*math.Sqrt(own[i]*own[j]) {
				v = 0
			}
			m.give[i][j], m.give[j][i] = v, v
		}
	}
}

// settle finds how far every foot lifts off its floor: no floor pulls, no foot sinks in, and where there is a
// push there is no lift.
func (m *Model) settle(l *laid, u []float64) ([]float64, error) {
	if len(m.floors) == 0 {
		return nil, nil
	}
	return m.settleBy(l, u, m.pushes(l, u))
}

// pushes are those of the floors with the feet held down.
func (m *Model) pushes(l *laid, u []float64) []float64 {
	holds, _ := m.reactions(l.force, u, l.ground)
	push := make([]float64, len(m.floors))
	for i, f := range m.floors {
		push[i] = holds[f.freedom]
	}
	return push
}

// settleBy finds the lifts from the pushes of the floors with the feet held down.
func (m *Model) settleBy(l *laid, u, push []float64) ([]float64, error) {
	small := m.rounding(u)
	for i := range push {
		if math.Abs(push[i]) < small {
			push[i] = 0
		}
	}
	lift, rising, err := liftOff(m.give, push)
	if err != nil {
		return nil, err
	}
	far := 10 * m.frame.size()
	for i, z := range lift {
		if z > far+10*m.floors[i].gap { // held by rounding alone
			rising = lift
		}
	}
	if rising == nil {
		return lift, nil
	}
	return nil, m.tips(l, rising, push)
}

// tips names the feet that rise and those about which the frame turns. Where the floors together would have to
// pull, and nothing else holds the frame down, all of them rise.
func (m *Model) tips(l *laid, rising, push []float64) *Tips {
	together := 0.0
	for _, p := range push {
		together += p
	}
	if together < 0 && m.risesFreely() {
		for i := range rising {
			rising[i] = 1
		}
	}
	tips := &Tips{Case: l.name}
	top := 0.0
	for _, r := range rising {
		top = math.Max(top, r)
	}
	for i, f := range m.floors {
		name := m.frame.Nodes[f.node].Name
		if rising[i] > 1e-6*top {
			tips.Rises = append(tips.Rises, name)
		} else {
			tips.Over = append(tips.Over, name)
		}
	}
	return tips
}

// risesFreely reports that all floors may rise together without any force.
func (m *Model) risesFreely() bool {
	for _, row := range m.give {
		sum, most := 0.0, 0.0
		for _, g := range row {
			sum += g
			most = math.Max(most, math.Abs(g))
		}
		if math.Abs(sum) > 1e-6*most {
			return false
		}
	}
	return true
}
