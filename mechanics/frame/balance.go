package frame

import "math"

// finite reports that every number of the answer is one.
func (a *Answer) finite() bool {
	sum := 0.0 // 0 times anything finite
	for _, n := range a.Nodes {
		for j := range 6 {
			sum += 0*n.Move[j] + 0*n.Push[j]
		}
	}
	for _, r := range a.Members {
		for j := range 6 {
			sum += 0*r.Start[j] + 0*r.End[j]
		}
		sum += 0*r.Bending + 0*r.Axial
	}
	return sum == 0
}

// rounding is the force that may be left over, or missing, because movements have only so many places: a frame
// that is moved as a whole strains nothing, yet every movement is rounded.
func (m *Model) rounding(u []float64) float64 {
	far := 0.0 // squared
	for i := range m.frame.Nodes {
		v := three(u, 6*i)
		far = max(far, v.dot(v))
	}
	return 1e-12 * m.stiffest * math.Sqrt(far)
}

// balanced reports that what is left over is nothing beside what is borne.
func (m *Model) balanced(a Answer, l *laid, out []float64, noise float64) bool {
	force, moment := 1e6*noise, 0.0
	for _, r := range a.Members {
		for j := range 3 {
			force = math.Max(force, math.Max(math.Abs(r.Start[j]), math.Abs(r.End[j])))
			moment = math.Max(moment, math.Max(math.Abs(r.Start[j+3]), math.Abs(r.End[j+3])))
		}
	}
	for i, f := range l.force {
		if i%6 < 3 {
			force = math.Max(force, math.Abs(f))
		} else {
			moment = math.Max(moment, math.Abs(f))
		}
	}
	moment = math.Max(moment, force*m.frame.size())
	for i, f := range m.ties.loose {
		allowed := force
		if f >= 6*len(m.frame.Nodes) && (f-6*len(m.frame.Nodes))%3 == 2 || f < 6*len(m.frame.Nodes) && f%6 >= 3 {
			allowed = moment
		}
		if !(math.Abs(out[i]) <= 1e-6*allowed) {
			return false
		}
	}
	return true
}
