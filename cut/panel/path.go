package panel

import (
	"slices"

	"rodwright/length"
)

// path is a way to crosscut one board: its segments from left to right, and what they are worth.
type path struct {
	segments []segment
	value    float64
}

// pathFinder finds the crosscuts of a board that are worth most; its slices are used again and again.
type pathFinder struct {
	m     *model
	kinds []int
	best  []float64
	way   []int // kind to cut at the position; -1 goes on to the next position, -2 keeps the tail
}

const (
	skip = -1
	tail = -2
)

// find returns the path of greatest value over board k, where a unit of net width of kind t is worth
// price[t] and a kept tail counts credit times what it takes off the cost. allowed says which kinds may be
// cut at all.
func (f *pathFinder) find(k int, price []float64, credit float64, allowed func(kind int) bool) path {
	b := f.m.boards[k]
	n := len(b.pos)
	f.best, f.way = slices.Grow(f.best[:0], n+1)[:n+1], slices.Grow(f.way[:0], n+1)[:n+1]
	f.best[n], f.way[n] = 0, skip
	kinds := f.kinds[:0]
	for t := range f.m.kinds {
		if price[t] > 0 && allowed(t) {
			kinds = append(kinds, t)
		}
	}
	f.kinds = kinds
	perLength := credit * f.m.p.Salvage * b.cost / float64(b.Length)
	for i := n - 1; i >= 0; i-- {
		best, way := f.best[i+1], skip
		if left := b.Length - b.pos[i]; i > 0 && perLength > 0 && left >= f.m.p.MinTail {
			if c := perLength * float64(left); c > best {
				best, way = c, tail
			}
		}
		for _, t := range kinds {
			to := b.next[t][i]
			if to < 0 {
				continue
			}
			if v := price[t]*float64(b.net[t][i]) + f.best[to]; v > best {
				best, way = v, t
			}
		}
		f.best[i], f.way[i] = best, way
	}
	return path{f.walk(k), f.best[0]}
}

// walk reads the segments off the path found.
func (f *pathFinder) walk(k int) (out []segment) {
	b := f.m.boards[k]
	for i := 0; i < len(b.pos); {
		switch t := f.way[i]; t {
		case skip:
			i++
		case tail:
			return out
		default:
			out = append(out, segment{board: k, kind: t, at: b.pos[i], net: b.net[t][i]})
			i = b.next[t][i]
		}
	}
	return out
}

// end returns where the tail of a board begins behind its last segment.
func (m *model) end(segments []segment) (x length.Length) {
	for _, s := range segments {
		x = max(x, s.at+m.kinds[s.kind].length+m.p.Kerf)
	}
	return x
}

// cost returns what a board costs when it is cut into the segments.
func (m *model) cost(k int, segments []segment) float64 {
	if len(segments) == 0 {
		return 0
	}
	b := m.boards[k]
	return b.cost - m.p.TailCredit(k, b.Length-m.end(segments))
}
