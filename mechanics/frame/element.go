package frame

// The six strains of a member that has been freed of its movement as a whole, and the forces that go with
// them: it grows longer, it twists, and each end turns against the line between its ends about y and z.
const (
	stretch = iota
	twist
	startY
	endY
	startZ
	endZ
	strains
)

// stick is a member made ready: where its unknowns stand, how its ends' movements strain it, how it resists.
type stick struct {
	from, to int // of its nodes
	long     float64
	axes     axes
	shape    [strains][12]float64      // strains of unit movements of the ends along the axes of the frame
	stiff    [strains][strains]float64 // forces of unit strains
}

func (f Frame) stick(m Member, known names) stick {
	s := stick{from: known.node[m.From], to: known.node[m.To]}
	run := f.Nodes[s.to].At.minus(f.Nodes[s.from].At)
	s.long = run.length()
	s.axes = m.axes(run.unit())
	s.strain()
	s.resist(m)
	return s
}

// axes are the member's own.
func (m Member) axes(x Vec) axes {
	up := m.Up
	if up == (Vec{}) {
		up = Vec{0, 0, 1}
		if x[0]*x[0]+x[1]*x[1] < nearlyZero {
			up = Vec{1, 0, 0}
		}
	}
	z := up.unit().part(x).unit()
	return axes{x, z.cross(x), z}
}

// strain fills in the shape. A sideways movement v of an end turns the line between the ends by v/L; about
// own y a positive turning carries z to x, so that the line turns by −w/L.
func (s *stick) strain() {
	x, y, z := s.axes[0], s.axes[1], s.axes[2]
	s.put(stretch, x.times(-1), Vec{}, x, Vec{})
	s.put(twist, Vec{}, x.times(-1), Vec{}, x)
	lineY, lineZ := z.times(1/s.long), y.times(1/s.long)
	s.put(startY, lineY.times(-1), y, lineY, Vec{})
	s.put(endY, lineY.times(-1), Vec{}, lineY, y)
	s.put(startZ, lineZ, z, lineZ.times(-1), Vec{})
	s.put(endZ, lineZ, Vec{}, lineZ.times(-1), z)
}

func (s *stick) put(strain int, parts ...Vec) {
	for i, p := range parts {
		copy(s.shape[strain][3*i:], p[:])
	}
}

// resist fills in the stiffness: the give of the joints is added to that of the member, and the sum inverted.
func (s *stick) resist(m Member) {
	c := m.Section
	s.stiff[stretch][stretch] = c.E * c.Area / s.long
	if m.Start.Springs.Twist > 0 && m.End.Springs.Twist > 0 {
		s.stiff[twist][twist] = 1 / (s.long/(c.G*c.J) + 1/m.Start.Springs.Twist + 1/m.End.Springs.Twist)
	}
	s.bend(startY, s.long/(c.E*c.IY), shearGive(c.G*c.ShearZ*s.long), m.Start.Springs.Y, m.End.Springs.Y)
	s.bend(startZ, s.long/(c.E*c.IZ), shearGive(c.G*c.ShearY*s.long), m.Start.Springs.Z, m.End.Springs.Z)
}

// shearGive is 1/(G A L): what a unit moment at an end turns both ends by in shear.
func shearGive(rigidity float64) float64 {
	if rigidity == 0 {
		return 0
	}
	return 1 / rigidity
}

// bend fills in the bending in one plane. A beam on two rests under end moments M1, M2 turns by
// θ1 = M1 (a/3 + g + 1/k1) + M2 (g − a/6) with a = L/EI, g = 1/GAL (Przemieniecki, Theory of Matrix
// Structural Analysis, 1968, section 5.6, from memory). The determinant of the two equations is written as
// a sum of positive terms, so that nothing cancels in a short deep beam.
func (s *stick) bend(first int, a, g, spring1, spring2 float64) {
	f, across := a/3+g, g-a/6
	bare := a / 2 * (a/6 + 2*g)
	switch {
	case spring1 == 0 && spring2 == 0:
	case spring1 == 0:
		s.stiff[first+1][first+1] = 1 / (f + 1/spring2)
	case spring2 == 0:
		s.stiff[first][first] = 1 / (f + 1/spring1)
	default:
		c1, c2 := 1/spring1, 1/spring2
		whole := bare + f*(c1+c2) + c1*c2
		s.stiff[first][first] = (f + c2) / whole
		s.stiff[first+1][first+1] = (f + c1) / whole
		s.stiff[first][first+1] = -across / whole
		s.stiff[first+1][first] = -across / whole
	}
}

// forces are those that go with strains.
func (s *stick) forces(strain [strains]float64) [strains]float64 {
	var q [strains]float64
	for i := range q {
		for j := range q {
			q[i] += s.stiff[i][j] * strain[j]
		}
	}
	return q
}

// strained are the strains of movements of all nodes.
func (s *stick) strained(u []float64) [strains]float64 {
	var v [strains]float64
	a, b := u[6*s.from:6*s.from+6], u[6*s.to:6*s.to+6]
	for i := range v {
		for j := range 6 {
			v[i] += s.shape[i][j]*a[j] + s.shape[i][j+6]*b[j]
		}
	}
	return v
}

// onEnds are the forces and moments at the two ends, along the axes of the frame, that go with forces of strains.
func (s *stick) onEnds(q [strains]float64) [12]float64 {
	var f [12]float64
	for i := range q {
		for j := range f {
			f[j] += s.shape[i][j] * q[i]
		}
	}
	return f
}

// matrix is the stiffness of the ends along the axes of the frame.
func (s *stick) matrix() [12][12]float64 {
	var k [12][12]float64
	for i := range strains {
		for j := range strains {
			v := s.stiff[i][j]
			if v == 0 {
				continue
			}
			for a := range k {
				if w := v * s.shape[i][a]; w != 0 {
					for b := range k {
						k[a][b] += w * s.shape[j][b]
					}
				}
			}
		}
	}
	return k
}
