package frame

import "math"

// Model is a frame made ready: checked, its unknowns tied and numbered, its stiffness factored. It answers any
// number of cases and never changes.
type Model struct {
	frame  Frame
	names  names
	sticks []stick
	ties   ties
	system *system
	idle   []idle
	// stiffest is the most that a member resists being stretched, N/mm.
	stiffest float64
	floors   []floor
	lifted   [][]float64 // movement of all freedoms when the floor under one foot rises by 1 mm
	give     [][]float64 // push of every floor when that happens
}

// New makes a frame ready. A frame in which something is loose is an error of type [*Mechanism]; anything else
// that is no frame is an error that names the place.
func New(f Frame) (*Model, error) {
	known, err := f.check()
	if err != nil {
		return nil, err
	}
	m := &Model{frame: f, names: known, ties: f.ties(known), sticks: make([]stick, len(f.Members))}
	for i, member := range f.Members {
		m.sticks[i] = f.stick(member, known)
		m.stiffest = math.Max(m.stiffest, m.sticks[i].stiff[stretch][stretch])
	}
	if err := m.factor(); err != nil {
		return nil, err
	}
	m.standOnFloors()
	return m, nil
}

// factor assembles and factors the stiffness of the loose unknowns.
func (m *Model) factor() error {
	a := assembly{ties: &m.ties, nodes: len(m.frame.Nodes), turning: make([][3][3]float64, len(m.frame.Nodes))}
	for _, p := range m.frame.Panels {
		a.bound = append(a.bound, len(p.Nodes))
	}
	a.diagonal = make([]float64, len(m.ties.loose))
	a.entries = make([]entry, 0, 80*len(m.sticks)) // half of 12 by 12, with the diagonal
	for i := range m.sticks {
		a.stick(&m.sticks[i])
	}
	for i, n := range m.frame.Nodes {
		for j, k := range n.Hold {
			if k > 0 && !math.IsInf(k, 1) {
				a.couple(6*i+j, 6*i+j, k)
			}
		}
	}
	m.idle = a.settleIdle()
	system, motion, err := a.system()
	if motion != nil {
		return m.mechanism(motion)
	}
	m.system = system
	return err
}

// mechanism names what moves most in a motion of the loose unknowns. A turning counts by the slide it makes
// at the far end of the shortest member of its node, halved, so that what swings is named before what it swings about.
func (m *Model) mechanism(motion []float64) *Mechanism {
	u := m.ties.spread(motion, nil)
	reach := make([]float64, len(m.frame.Nodes))
	for _, s := range m.sticks {
		for _, n := range []int{s.from, s.to} {
			if reach[n] == 0 || s.long < reach[n] {
				reach[n] = s.long
			}
		}
	}
	found, most := &Mechanism{Node: m.frame.Nodes[0].Name}, 0.0
	for i, n := range m.frame.Nodes {
		for _, way := range []struct {
			first int
			by    float64
		}{{0, 1}, {3, math.Max(reach[i], leastLong) / 2}} {
			v := three(u, 6*i+way.first)
			if size := v.length() * way.by; size > most*(1+1e-6) {
				most = size
				found = &Mechanism{Node: n.Name, Direction: v.unit(), Freedom: Freedom(way.first) + v.most()}
			}
		}
	}
	found.tidy()
	return found
}

// most is the axis along which the vector is longest.
func (a Vec) most() Freedom {
	best := 0
	for i := range a {
		if math.Abs(a[i]) > math.Abs(a[best])*(1+1e-6) {
			best = i
		}
	}
	return Freedom(best)
}

// tidy points the direction along its axis and takes away what rounding left across it.
func (m *Mechanism) tidy() {
	d := m.Direction
	if d[m.Freedom%3] < 0 {
		d = d.times(-1)
	}
	if d[m.Freedom%3] > 1-1e-6 || d == (Vec{}) {
		d = m.Freedom.axis()
	}
	m.Direction = d
}
