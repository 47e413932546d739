package panel

import "rodwright/length"

// worth is the greatest price of the kinds that strips of a length and grade, or worse, may serve, and
// which kind that is; by length and grade.
type worth struct {
	price [][3]float64
	kind  [][3]int
}

func (l *low) worth(price []float64, thickness length.Length) worth {
	w := worth{make([][3]float64, len(l.lengths)), make([][3]int, len(l.lengths))}
	for i, ln := range l.lengths {
		for g := range grades {
			w.kind[i][g] = -1
			for t, kd := range l.kinds {
				if kd.length <= ln && kd.grade >= g && kd.thickness <= thickness && price[t] > w.price[i][g] {
					w.price[i][g], w.kind[i][g] = price[t], t
				}
			}
		}
	}
	return w
}

// lowPath is the most one board can yield at given prices.
type lowPath struct {
	value  float64   // with the credit for a kept tail
	yields []float64 // net width by kind
}

// path finds the longest path over board b.
func (l *low) path(b lowBoard, price []float64) lowPath {
	src := l.m.boards[b.k]
	w := l.worth(price, src.Thickness)
	out := lowPath{yields: make([]float64, len(l.kinds))}
	if b.pos == nil {
		out.value = l.crude(b, w)
		return out
	}
	n := len(b.pos)
	best, way := make([]float64, n+1), make([]int, n+1)
	for i := n - 1; i >= 0; i-- {
		best[i], way[i] = best[i+1], skip
		if i > 0 {
			if c := l.m.p.TailCredit(b.k, src.Length-b.pos[i]); c > best[i] {
				best[i], way[i] = c, tail
			}
		}
		for j := range l.lengths {
			if to := b.next[j][i]; to >= 0 {
				if v := w.segment(j, b.free[j][i]) + best[to]; v > best[i] {
					best[i], way[i] = v, j
				}
			}
		}
	}
	out.value = best[0]
	l.collect(b, w, way, out.yields)
	return out
}

// segment is the greatest value of a segment of length j with the given free widths.
func (w worth) segment(j int, free [3]float64) float64 {
	e := w.price[j]
	return (e[0]-e[1])*free[0] + (e[1]-e[2])*free[1] + e[2]*free[2]
}

// collect adds up what the segments of the path yield, each grade for the kind it is worth most to.
func (l *low) collect(b lowBoard, w worth, way []int, yields []float64) {
	for i := 0; i < len(b.pos); {
		j := way[i]
		switch j {
		case skip:
			i++
			continue
		case tail:
			return
		}
		used := 0.0
		for g := range grades {
			if t := w.kind[j][g]; t >= 0 {
				yields[t] += b.free[j][i][g] - used
			}
			used = b.free[j][i][g]
		}
		i = b.next[j][i]
	}
}

// crude bounds the yield of a board by its whole length at the best rate: a segment of length ℓ takes at
// least ℓ + kerf of the board's length + kerf, and is nowhere wider than the usable range; all of a tail's
// worth is granted besides.
func (l *low) crude(b lowBoard, w worth) float64 {
	src := l.m.boards[b.k]
	best := 0.0
	for j, ln := range l.lengths {
		rate := w.price[j][0] * b.most / float64(ln+l.m.p.Kerf)
		best = max(best, rate*float64(src.Length+l.m.p.Kerf))
	}
	return best + l.m.p.Salvage*b.cost
}
