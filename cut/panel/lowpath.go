package panel

import "math"

// tariff computes what each cut of board b is worth: the price of its net width, and that of what it counts in the
// roundings.
func (l *low) tariff(b lowBoard, price []float64) {
	if cap(l.val) < len(b.cuts) {
		l.val = make([]float64, len(b.cuts)+256)
	}
	l.val = l.val[:len(b.cuts)]
	for a := range b.cuts {
		l.val[a] = price[b.cuts[a].kind] * b.cuts[a].net
	}
	for c, r := range l.rounds {
		if p := price[len(l.kinds)+c]; p > 0 {
			for _, a := range b.of[r.kind] {
				l.val[a] += p * r.of(b.cuts[a].net)
			}
		}
	}
}

// lowSegment is one segment of a way to cut a board: which of its cuts, at a position, for a kind of the bound.
type lowSegment struct{ cut, pos, kind int }

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
		for a := b.from[i]; a < b.from[i+1]; a++ {
			if v := l.val[a]; v > 0 {
				if v += l.best[b.cuts[a].to]; v > best {
					best, way = v, a
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
		switch a := l.way[i]; a {
		case skip:
			i++
		case tail:
			out.cost -= b.credit[i]
			return out
		default:
			i = l.extend(&out, b, a)
		}
	}
	return out
}

func (l *low) newWay(cost float64) way {
	return way{yields: make([]float64, len(l.kinds)), rounds: make([]float64, len(l.rounds)), cost: cost}
}

// extend adds a cut to a way, and returns the position behind it.
func (l *low) extend(w *way, b lowBoard, cut int) int {
	c := b.cuts[cut]
	w.yields[c.kind] += c.net
	for i, r := range l.rounds {
		if r.kind == c.kind {
			w.rounds[i] += r.of(c.net)
		}
	}
	w.segments = append(w.segments, lowSegment{cut, c.pos, c.kind})
	return c.to
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
