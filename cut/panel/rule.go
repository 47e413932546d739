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

// ruledTable is what board b is worth from each position on with each part of the kinds that it must be cut into cut
// already, and what to do there: the cut to take, skip or tail.
type ruledTable struct {
	b    lowBoard
	once []int // kinds that it must be cut into
	mark []int // by kind: its bit among them
	best []float64
	step []int
}

// at is the index of a position with a set of kinds cut already.
func (r *ruledTable) at(i, have int) int { return i<<len(r.once) + have }

// ruled finds the longest path over board b that keeps the rule; its value is -Inf where there is none.
func (l *low) ruled(b lowBoard, price []float64, r rule) lowPath {
	l.tariff(b, price)
	return l.ruledWay(l.ruledTable(b, r))
}

func (l *low) ruledTable(b lowBoard, r rule) *ruledTable {
	t := &ruledTable{b: b, once: bits(r.once), mark: make([]int, len(l.kinds))}
	n, full := len(b.pos), 1<<len(t.once)-1
	for i, kind := range t.once {
		t.mark[kind] = 1 << i
	}
	t.best, t.step = make([]float64, (n+1)*(full+1)), make([]int, (n+1)*(full+1))
	for have := range full {
		t.best[t.at(n, have)] = math.Inf(-1)
	}
	for i := n - 1; i >= 0; i-- {
		for have := range full + 1 {
			v, way := t.best[t.at(i+1, have)], skip
			if c := b.credit[i]; c > v && have == full {
				v, way = c, tail
			}
			for a := b.from[i]; a < b.from[i+1]; a++ {
				c := &b.cuts[a]
				if r.never>>c.kind&1 != 0 {
					continue
				}
				if x := l.val[a] + t.best[t.at(c.to, have|t.mark[c.kind])]; x > v {
					v, way = x, a
				}
			}
			t.best[t.at(i, have)], t.step[t.at(i, have)] = v, way
		}
	}
	return t
}

// ruledWay reads the way off a table.
func (l *low) ruledWay(t *ruledTable) lowPath {
	out := lowPath{t.best[0], l.newWay(t.b.cost)}
	if math.IsInf(out.value, -1) {
		return out
	}
	for i, have := 0, 0; i < len(t.b.pos); {
		switch a := t.step[t.at(i, have)]; a {
		case skip:
			i++
		case tail:
			out.cost -= t.b.credit[i]
			return out
		default:
			i, have = l.extend(&out.way, t.b, a), have|t.mark[t.b.cuts[a].kind]
		}
	}
	return out
}
