package panel

import "math"

// rule says which kinds a board is not cut into, and which it is cut into at least once; bits by kind of the bound.
type rule struct{ never, once uint64 }

// mostOnce bounds the kinds of one board's rule that it must be cut into: the longest path is looked for with every
// subset of them.
const mostOnce = 4

// allows reports whether a way keeps the rule.
func (r rule) allows(w way) bool {
	for t, y := range w.yields {
		bit := uint64(1) << t
		if y > 0 && r.never&bit != 0 || y <= 0 && r.once&bit != 0 {
			return false
		}
	}
	return true
}

// bits lists the kinds of a set.
func bits(set uint64) (out []int) {
	for t := 0; set != 0; t, set = t+1, set>>1 {
		if set&1 != 0 {
			out = append(out, t)
		}
	}
	return out
}

// ruled finds the longest path over board b that keeps the rule; its value is -Inf where there is none.
func (l *low) ruled(b lowBoard, price []float64, r rule) lowPath {
	once := bits(r.once)
	n, full := len(b.pos), 1<<len(once)-1
	mark := make([]int, len(l.kinds))
	for i, t := range once {
		mark[t] = 1 << i
	}
	l.tariff(b, price)
	best, step := make([]float64, (n+1)*(full+1)), make([]int, (n+1)*(full+1))
	at := func(i, have int) int { return i*(full+1) + have }
	for have := range full {
		best[at(n, have)] = math.Inf(-1)
	}
	for i := n - 1; i >= 0; i-- {
		for have := range full + 1 {
			v, way := best[at(i+1, have)], skip
			if c := b.credit[i]; c > v && have == full {
				v, way = c, tail
			}
			for t, kd := range l.kinds {
				if l.val[t][i] <= 0 && r.once>>t&1 == 0 || r.never>>t&1 != 0 {
					continue
				}
				if x := l.ruledStep(b, t, i); !math.IsInf(x, -1) {
					if x += best[at(b.next[kd.at][i], have|mark[t])]; x > v {
						v, way = x, t
					}
				}
			}
			best[at(i, have)], step[at(i, have)] = v, way
		}
	}
	out := lowPath{best[0], l.newWay(b.cost)}
	if math.IsInf(out.value, -1) {
		return out
	}
	for i, have := 0, 0; i < n; {
		t := step[at(i, have)]
		if t == skip {
			i++
			continue
		}
		if t == tail {
			out.cost -= b.credit[i]
			break
		}
		i, have = l.extend(&out.way, b, t, i), have|mark[t]
	}
	return out
}

// ruledStep is what a segment of kind t at position i is worth; -Inf where there can be none.
func (l *low) ruledStep(b lowBoard, t, i int) float64 {
	kd := l.kinds[t]
	if b.next[kd.at][i] < 0 || b.free[kd.at][i][kd.grade] <= 0 || kd.thickness > l.m.boards[b.k].Thickness {
		return math.Inf(-1)
	}
	return l.val[t][i]
}
