package plate

// table holds the integrals over one span of products of the four cubics of a beam: value and slope at its
// start, value and slope at its end. The first number is the derivative of the first factor, the second that
// of the second: m02[a][b] = ∫ Na·Nb″.
type table struct {
	h                  float64
	m00, m11, m22, m02 [4][4]float64
}

func tableOf(h float64) table {
	t := table{h: h}
	t.m00 = times(h/420, [4][4]float64{
		{156, 22 * h, 54, -13 * h},
		{22 * h, 4 * h * h, 13 * h, -3 * h * h},
		{54, 13 * h, 156, -22 * h},
		{-13 * h, -3 * h * h, -22 * h, 4 * h * h},
	})
	t.m11 = times(1/(30*h), [4][4]float64{
		{36, 3 * h, -36, 3 * h},
		{3 * h, 4 * h * h, -3 * h, -h * h},
		{-36, -3 * h, 36, -3 * h},
		{3 * h, -h * h, -3 * h, 4 * h * h},
	})
	t.m22 = beamTable(h)
	// By parts: ∫ N·N″ = [N·N′] − ∫ N′·N′.
	t.m02 = times(-1, t.m11)
	t.m02[0][1]--
	t.m02[2][3]++
	return t
}

// beamTable is the stiffness of a beam of EI = 1 and length h.
func beamTable(h float64) [4][4]float64 {
	return times(1/(h*h*h), [4][4]float64{
		{12, 6 * h, -12, 6 * h},
		{6 * h, 4 * h * h, -6 * h, 2 * h * h},
		{-12, -6 * h, 12, -6 * h},
		{6 * h, 2 * h * h, -6 * h, 4 * h * h},
	})
}

func times(f float64, m [4][4]float64) [4][4]float64 {
	for a := range m {
		for b := range m[a] {
			m[a][b] *= f
		}
	}
	return m
}

// cubics returns the four cubics at s, 0 to h from the start of the span.
func cubics(s, h float64) [4]float64 {
	u := s / h
	return [4]float64{1 - 3*u*u + 2*u*u*u, s * (1 - u) * (1 - u), u * u * (3 - 2*u), s * u * (u - 1)}
}

// bends returns their second derivatives.
func bends(s, h float64) [4]float64 {
	u := s / h
	return [4]float64{(12*u - 6) / (h * h), (6*u - 4) / h, (6 - 12*u) / (h * h), (6*u - 2) / h}
}

// sums returns their integrals from s0 to s1.
func sums(s0, s1, h float64) [4]float64 {
	a, b := sumTo(s0, h), sumTo(s1, h)
	for i := range b {
		b[i] -= a[i]
	}
	return b
}

func sumTo(s, h float64) [4]float64 {
	u := s / h
	u2, u3, u4 := u*u, u*u*u, u*u*u*u
	return [4]float64{
		h * (u - u3 + u4/2), h * h * (u2/2 - 2*u3/3 + u4/4),
		h * (u3 - u4/2), h * h * (u4/4 - u3/3),
	}
}
