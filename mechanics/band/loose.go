package band

import "math"

// unstable finds how a matrix that has no Cholesky factor moves: it is lifted until it has one, and the
// softest motion of the lifted one is that of the matrix.
func (f *Factor) unstable(fill filling) error {
	for lift := 1e-10; lift < 1e3; lift *= 100 {
		if f.factor(fill, lift) {
			motion, _ := f.softest()
			return f.named(motion)
		}
	}
	return f.named(make([]float64, f.n))
}

// softest returns the scaled motion of least stiffness and that stiffness (an eigenvalue of the scaled
// matrix, from above), by inverse iteration from a fixed start.
func (f *Factor) softest() (motion []float64, stiffness float64) {
	v := make([]float64, f.n)
	for i := range v {
		// A start that no symmetry of the structure makes orthogonal to a motion.
		v[i] = 1 + 0.5*math.Sin(float64(3*i)+0.7)
	}
	stiffness = 1
	unit(v)
	for range 4 {
		f.l.solve(v)
		length := unit(v)
		if length == 0 || math.IsInf(length, 0) || math.IsNaN(length) {
			return v, 0
		}
		stiffness = 1 / length
	}
	return v, stiffness
}

// unit brings v to length 1 and returns the length it had.
func unit(v []float64) float64 {
	top := 0.0
	for _, x := range v {
		top = max(top, math.Abs(x))
	}
	if top == 0 || math.IsInf(top, 0) {
		return top
	}
	sum := 0.0
	for _, x := range v {
		sum += (x / top) * (x / top)
	}
	length := top * math.Sqrt(sum)
	for i := range v {
		v[i] /= length
	}
	return length
}

// named turns a scaled motion into an error. The unknown named is the first of those that move most.
func (f *Factor) named(scaled []float64) *Unstable {
	u := &Unstable{Motion: make([]float64, f.n)}
	top := 0.0
	for i, p := range f.place {
		v := scaled[p]
		if math.IsNaN(v) || math.IsInf(v, 0) {
			v = 0
		}
		u.Motion[i] = v
		// A hair more, so that rounding does not choose between two that move alike.
		if math.Abs(v) > top*(1+1e-9) {
			top, u.Unknown = math.Abs(v), i
		}
	}
	for i := range u.Motion {
		if top > 0 {
			u.Motion[i] /= top
		}
	}
	return u
}
