package panel

import "math"

// tariff computes what a segment of each kind is worth at each position of board b: the price of its net width, and
// that of what it counts in the roundings. Kinds that the board is too thin for are worth nothing.
func (l *low) tariff(b lowBoard, price []float64) {
	if l.val == nil {
		l.val = make([][]float64, len(l.kinds))
	}
	for t, kd := range l.kinds {
		if cap(l.val[t]) < len(b.pos) {
			l.val[t] = make([]float64, len(b.pos)+64)
		}
		l.val[t] = l.val[t][:len(b.pos)]
		clear(l.val[t])
		if kd.thickness > l.m.boards[b.k].Thickness {
			continue
		}
		free := b.free[kd.at]
		for i := range l.val[t] {
			if b.next[kd.at][i] >= 0 {
				l.val[t][i] = price[t] * free[i][kd.grade]
			}
		}
	}
	for c, r := range l.rounds {
		p := price[len(l.kinds)+c]
		kd := l.kinds[r.kind]
		if p <= 0 || kd.thickness > l.m.boards[b.k].Thickness {
			continue
		}
		free, val := b.free[kd.at], l.val[r.kind]
		for i := range val {
			if y := free[i][kd.grade]; y > 0 && b.next[kd.at][i] >= 0 {
				val[i] += p * r.of(y)
			}
		}
	}
}

// lowSegment is one segment of a way to cut a board: at a position, for a kind of the bound.
type lowSegment struct{ pos, kind int }

// way is one way to cut a board, as the bound sees it.
type way struct {
	segments []lowSegment
	yields   []float64 // net width by kind
	rounds   []float64 // what its segments count in each rounding; nil where nobody asked
	cost     float64   // of the board, less what its tail is worth
	crude    bool      // a bound of all ways, and no way itself
	cut      []segment // the same in segments of panels, where that is known already
}

// lowPath is the way to cut one board that is worth most at given prices.
type lowPath struct {
	value float64 // with the credit for a kept tail
	way
}

// path finds the longest path over board b.
func (l *low) path(b lowBoard, price []float64) lowPath {
	if b.pos == nil {
		return l.crude(b, price)
	}
	l.completions(b, price)
	return lowPath{l.best[0], l.collect(b)}
}

// completions computes the tariff, what the board is worth from each position on, and what to do there.
func (l *low) completions(b lowBoard, price []float64) {
	l.tariff(b, price)
	n := len(b.pos)
	if cap(l.best) <= n {
		l.best, l.way = make([]float64, n+64), make([]int, n+64)
	}
	l.best, l.way = l.best[:n+1], l.way[:n+1]
	l.best[n] = 0
	for i := n - 1; i >= 0; i-- {
		best, way := l.best[i+1], skip
		if c := b.credit[i]; c > best {
			best, way = c, tail
		}
		for t := range l.kinds {
			if v := l.val[t][i]; v > 0 {
				if v += l.best[b.next[l.kinds[t].at][i]]; v > best {
					best, way = v, t
				}
			}
		}
		l.best[i], l.way[i] = best, way
	}
}

// collect reads the way off the path found.
func (l *low) collect(b lowBoard) way {
	out := l.newWay(b.cost)
	for i := 0; i < len(b.pos); {
		switch t := l.way[i]; t {
		case skip:
			i++
		case tail:
			out.cost -= b.credit[i]
			return out
		default:
			i = l.extend(&out, b, t, i)
		}
	}
	return out
}

func (l *low) newWay(cost float64) way {
	return way{yields: make([]float64, len(l.kinds)), rounds: make([]float64, len(l.rounds)), cost: cost}
}

// extend adds a segment of kind t at position i to a way, and returns the position behind it.
func (l *low) extend(w *way, b lowBoard, t, i int) int {
	kd := l.kinds[t]
	y := b.free[kd.at][i][kd.grade]
	w.yields[t] += y
	for c, r := range l.rounds {
		if r.kind == t {
			w.rounds[c] += r.of(y)
		}
	}
	w.segments = append(w.segments, lowSegment{i, t})
	return b.next[kd.at][i]
}

// crude bounds the yield of a board by its whole length at the best rate: a segment of length ℓ takes at
// least ℓ + kerf of the board's length + kerf, and is nowhere wider than the usable range; all of a tail's
// worth is granted besides.
func (l *low) crude(b lowBoard, price []float64) lowPath {
	src := l.m.boards[b.k]
	out := lowPath{way: l.newWay(b.cost * (1 - l.m.p.Salvage))}
	out.crude = true
	for t, kd := range l.kinds {
		if kd.thickness > src.Thickness {
			continue
		}
		times := float64(src.Length+l.m.p.Kerf) / float64(kd.length+l.m.p.Kerf)
		v := price[t] * b.most
		for c, r := range l.rounds {
			if r.kind == t {
				v += price[len(l.kinds)+c] * r.of(b.most)
			}
		}
		if v *= times; v > out.value {
			out.value = v
			clear(out.yields)
			clear(out.rounds)
			out.yields[t] = b.most * times
			for c, r := range l.rounds {
				if r.kind == t {
					out.rounds[c] = r.of(b.most) * times
				}
			}
		}
	}
	out.value += l.m.p.Salvage * b.cost
	return out
}

// rounding is a need in whole steps: segments that are together as wide as need count together, each rounded up to
// whole steps, at least need rounded up.
type rounding struct {
	kind       int
	step, need float64
}

// of is what a net width counts.
func (r rounding) of(y float64) float64 { return math.Ceil(math.Min(y, r.need) / r.step) }

// count is what is needed.
func (r rounding) count() float64 { return math.Ceil(r.need / r.step) }
