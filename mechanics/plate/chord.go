package plate

import "math"

// chord returns the plane a + b·x + c·y that fits the supports that carry best by least squares; where they
// stand on a line or a point it leans no other way.
func (l *level) chord() (a, b, c float64) {
	var xs, ys, ws []float64
	yields := false
	for _, t := range l.contacts {
		if t.open || t.rail >= 0 {
			continue
		}
		x, y := l.at(t.node)
		w := l.field[perNode*t.node+sag]
		xs, ys, ws = append(xs, x), append(ys, y), append(ws, w)
		yields = yields || w != 0
	}
	if !yields {
		return 0, 0, 0
	}
	return fit(xs, ys, ws)
}

// fit solves the normal equations about the middle of the points in their main directions.
func fit(xs, ys, ws []float64) (a, b, c float64) {
	mx, my, mw := mean(xs), mean(ys), mean(ws)
	var xx, xy, yy, xw, yw float64
	for k := range xs {
		x, y, w := xs[k]-mx, ys[k]-my, ws[k]-mw
		xx, xy, yy, xw, yw = xx+x*x, xy+x*y, yy+y*y, xw+x*w, yw+y*w
	}
	turn := math.Atan2(2*xy, xx-yy) / 2
	for _, t := range []float64{turn, turn + math.Pi/2} {
		dx, dy := math.Cos(t), math.Sin(t)
		spread := xx*dx*dx + 2*xy*dx*dy + yy*dy*dy
		if spread <= 1e-9*(xx+yy) {
			continue
		}
		slope := (xw*dx + yw*dy) / spread
		b, c = b+slope*dx, c+slope*dy
	}
	return mw - b*mx - c*my, b, c
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
