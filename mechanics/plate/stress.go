package plate

import "math"

// stress finds the largest stress at the nodes, each averaged over the cells that meet there: σ = 6M/t².
func (l *level) stress(p *Plate, r *Result) {
	n := len(l.used)
	mx, my, cells := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range l.tx {
		for j := range l.ty {
			if l.has(i, j) {
				l.moments(i, j, mx, my, cells)
			}
		}
	}
	var alongX, alongY Peak
	for node, used := range l.used {
		if !used {
			continue
		}
		x, y := l.at(node)
		f := 6 / (p.Thickness * p.Thickness * cells[node])
		alongX.raise(f*mx[node], x, y)
		alongY.raise(f*my[node], x, y)
	}
	r.Along, r.Across = alongX, alongY
	if p.GrainAlongY {
		r.Along, r.Across = alongY, alongX
	}
}

func (p *Peak) raise(v, x, y float64) {
	if v = math.Abs(v); v > p.Value*(1+1e-9) {
		*p = Peak{v, x, y}
	}
}

// moments adds the bending moments at the corners of a cell to those of its nodes.
func (l *level) moments(i, j int, mx, my, cells []float64) {
	hx, hy := l.tx[i].h, l.ty[j].h
	for k, node := range l.corners(i, j) {
		sx, sy := hx*float64(k&1), hy*float64(k>>1)
		kx := l.value(l.field, i, j, bends(sx, hx), cubics(sy, hy))
		ky := l.value(l.field, i, j, cubics(sx, hx), bends(sy, hy))
		mx[node] += l.stiff.Dx*kx + l.stiff.Dxy*ky
		my[node] += l.stiff.Dy*ky + l.stiff.Dxy*kx
		cells[node]++
	}
}
