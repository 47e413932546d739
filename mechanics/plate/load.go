package plate

import (
	"fmt"
	"math"
)

// loads returns the forces on the unknowns, their sum, and the sum of their sizes.
func (p *Plate) loads(m *mesh) (f []float64, sum, size float64, err error) {
	f = make([]float64, perNode*len(m.used))
	all := Patch{Rect{0, 0, p.Width, p.Depth}, p.Load.Pressure + p.weight()}
	for _, l := range append([]Patch{all}, p.Load.Patches...) {
		n := m.press(f, l)
		sum, size = sum+n, size+math.Abs(n)
	}
	for k, l := range p.Load.Points {
		node, err := m.find(fmt.Sprintf("point load %d", k+1), l.X, l.Y)
		if err != nil {
			return nil, 0, 0, err
		}
		f[perNode*node+sag] += l.N
		sum, size = sum+l.N, size+math.Abs(l.N)
	}
	return f, sum, size, nil
}

// press spreads a patch of pressure over the unknowns of the cells it covers, wholly or in part, and returns
// the force that has landed on wood.
func (m *mesh) press(f []float64, l Patch) float64 {
	total := 0.0
	if l.Pressure == 0 {
		return 0
	}
	for i := range m.tx {
		x0, x1 := overlap(m.x[i], m.x[i+1], l.X, l.X+l.W)
		for j := range m.ty {
			y0, y1 := overlap(m.y[j], m.y[j+1], l.Y, l.Y+l.H)
			if x1 <= x0 || y1 <= y0 || !m.has(i, j) {
				continue
			}
			x, y := sums(x0, x1, m.tx[i].h), sums(y0, y1, m.ty[j].h)
			for u, r := range m.raw(i, j) {
				f[r] += l.Pressure * x[u>>2] * y[u&3]
			}
			total += l.Pressure * (x1 - x0) * (y1 - y0)
		}
	}
	return total
}

// overlap returns where from–to lies within lo–hi, counted from lo.
func overlap(lo, hi, from, to float64) (start, end float64) {
	return max(lo, from) - lo, min(hi, to) - lo
}
