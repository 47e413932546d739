package panel

import (
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/cut/cover"
	"rodwright/length"
)

// grades in the order of what their strips may serve: a clear strip serves all.
var grades = []cut.Show{cut.Clear, cut.SmallKnots, cut.Character}

// lowKind is a kind of panel as the bound sees it: without keep-outs and mates.
type lowKind struct {
	length    length.Length
	grade     int
	thickness length.Length
	need      float64 // net width, nanometres
}

// lowBoard is a board as the bound sees it.
type lowBoard struct {
	k    int
	cost float64
	pos  []length.Length // ascending; nil when there are too many, then the crude bound stands in
	next [][]int         // by length and position
	free [][][3]float64  // by length and position: net width free for each grade
	most float64         // net width of the whole usable range
}

// low is the lower bound with its prices.
type low struct {
	m       *model
	kinds   []lowKind
	lengths []length.Length // ascending
	boards  []lowBoard
	price   []float64 // the best found, by low kind
	value   float64
}

// newBound prepares the bound for the panels that were made; for nil, for all.
func newBound(m *model, only [][]made) *low {
	l := &low{m: m}
	for t, kd := range m.kinds {
		panels := kd.panels
		if only != nil {
			panels = only[t]
		}
		for _, q := range panels {
			l.add(kd, float64(q.width))
		}
	}
	for _, kd := range l.kinds {
		l.lengths = append(l.lengths, kd.length)
	}
	slices.Sort(l.lengths)
	l.lengths = slices.Compact(l.lengths)
	for k := range m.boards {
		if first := m.twin[k]; first < k {
			l.boards = append(l.boards, l.boards[first])
			continue
		}
		l.boards = append(l.boards, l.newBoard(k))
	}
	return l
}

// lowIndex returns the bound's kind for a kind of panel, -1 for none.
func (l *low) lowIndex(kd kind) int {
	g := slices.Index(grades, kd.show)
	return slices.IndexFunc(l.kinds, func(o lowKind) bool {
		return o.length == kd.length && o.grade == g && o.thickness == kd.thickness
	})
}

func (l *low) add(kd kind, width float64) {
	i := l.lowIndex(kd)
	if i < 0 {
		i = len(l.kinds)
		l.kinds = append(l.kinds, lowKind{kd.length, slices.Index(grades, kd.show), kd.thickness, 0})
	}
	l.kinds[i].need += width
}

func (l *low) newBoard(k int) lowBoard {
	m := l.m
	src := m.boards[k]
	b := lowBoard{k: k, cost: src.cost, most: float64(m.netOf(src.to - src.from))}
	starts := []length.Length{0}
	for _, d := range src.Defects {
		starts = append(starts, d.X+d.Length)
	}
	var steps []length.Length
	for _, ln := range l.lengths {
		steps = append(steps, ln+m.p.Kerf)
	}
	pos, complete := positions(src.Length, starts, steps, positionsEach(len(m.boards), len(l.lengths)))
	if !complete {
		return b
	}
	b.pos = pos
	for _, ln := range l.lengths {
		next, free := l.yields(src, pos, ln)
		b.next = append(b.next, next)
		b.free = append(b.free, free)
	}
	return b
}

// yields computes for segments of one length, by position, where the next may begin and the greatest net
// width free for each grade.
func (l *low) yields(b *board, pos []length.Length, ln length.Length) (next []int, free [][3]float64) {
	next = make([]int, len(pos))
	free = make([][3]float64, len(pos))
	for i, x := range pos {
		next[i] = -1
		if x+ln > b.Length {
			continue
		}
		next[i], _ = slices.BinarySearch(pos, x+ln+l.m.p.Kerf)
		for g := range grades {
			spans := []span{{b.from, b.to}}
			for _, d := range b.Defects {
				if d.X < x+ln && d.X+d.Length > x && never(grades[g], d, b.Ring) {
					spans = without(spans, span{d.Y, d.Y + d.Width})
				}
			}
			for _, s := range spans {
				free[i][g] += float64(l.m.netOf(s.to - s.from))
			}
			if g > 0 {
				free[i][g] = max(free[i][g], free[i][g-1])
			}
		}
	}
	return next, free
}

// never reports whether no strip of the grade may hold d, whichever face it shows.
func never(g cut.Show, d cut.Defect, ring cut.Ring) bool {
	return !g.Takes(d, false) && (ring == cut.NoRing || !g.Takes(d, true))
}

// at returns Lagrange's bound at the given prices and its slope by kind.
func (l *low) at(price []float64) (v float64, slope []float64) {
	slope = make([]float64, len(l.kinds))
	for t, kd := range l.kinds {
		v += price[t] * kd.need
		slope[t] = kd.need
	}
	paths := make([]lowPath, len(l.boards))
	for i, b := range l.boards {
		p := paths[l.m.twin[i]]
		if l.m.twin[i] == i {
			p = l.path(b, price)
			paths[i] = p
		}
		if r := b.cost - p.value; r < 0 {
			v += r
			for t := range slope {
				slope[t] -= p.yields[t]
			}
		}
	}
	return v, slope
}

// whole is the bound with whole boards at the given prices: each board offers what it can yield before
// each place its tail may begin, for what that costs.
func (l *low) whole(price []float64) float64 {
	need := 0.0
	for t, kd := range l.kinds {
		need += price[t] * kd.need
	}
	offers := make([][]cover.Offer, len(l.boards))
	for i, b := range l.boards {
		if first := l.m.twin[i]; first < i {
			offers[i] = offers[first]
		} else {
			offers[i] = l.offers(b, price)
		}
	}
	return cover.Choose(offers, need)
}

// offers lists what board b can yield and for how much.
func (l *low) offers(b lowBoard, price []float64) (out []cover.Offer) {
	src := l.m.boards[b.k]
	w := l.worth(price, src.Thickness)
	if b.pos == nil {
		credit := l.m.p.Salvage * b.cost
		return []cover.Offer{{Hold: l.crude(b, w) - credit, Price: b.cost - credit}}
	}
	n := len(b.pos)
	before := make([]float64, n+1)
	for i := 0; i <= n; i++ {
		if i > 0 {
			before[i] = max(before[i], before[i-1])
		}
		if i == n {
			break
		}
		for j := range l.lengths {
			if to := b.next[j][i]; to >= 0 {
				before[to] = max(before[to], before[i]+w.segment(j, b.free[j][i]))
			}
		}
		if c := l.m.p.TailCredit(b.k, src.Length-b.pos[i]); i > 0 && c > 0 {
			out = append(out, cover.Offer{Hold: before[i], Price: b.cost - c})
		}
	}
	return append(out, cover.Offer{Hold: before[n], Price: b.cost})
}

// improve raises the bound by steps along the slope of Lagrange's bound (Held, Wolfe and Crowder,
// Mathematical Programming 6, 1974), aimed at the cost known, and returns it.
func (l *low) improve(target float64, steps int, budget *cut.Budget) float64 {
	if len(l.kinds) == 0 {
		return 0
	}
	price := l.start(target)
	l.price = slices.Clone(price)
	scale, since := 1.5, 0
	for i := 0; i < steps; i++ {
		v, slope := l.at(price)
		if v > l.value+1e-12 {
			l.value, l.price, since = v, slices.Clone(price), 0
		} else if since++; since >= 4 {
			scale, since = scale/2, 0
			price = slices.Clone(l.price)
		}
		if i > 0 && !l.spend(budget) || !step(price, slope, scale*(target-v)) {
			break
		}
	}
	l.value = max(l.value, l.whole(l.price))
	return l.value
}

func (l *low) spend(budget *cut.Budget) bool {
	n := 0
	for i, b := range l.boards {
		if l.m.twin[i] == i {
			n += len(b.pos) * len(l.lengths)
		}
	}
	return budget.Spend(n/16 + 1)
}

// start sets prices so that all that is wanted is worth the target, by area.
func (l *low) start(target float64) []float64 {
	area := 0.0
	for _, kd := range l.kinds {
		area += kd.need * float64(kd.length)
	}
	out := make([]float64, len(l.kinds))
	for t, kd := range l.kinds {
		out[t] = target * float64(kd.length) / area
	}
	return out
}

// step moves the prices along the slope by a step that would close the gap if the bound were linear.
func step(price, slope []float64, gap float64) bool {
	norm := 0.0
	for _, s := range slope {
		norm += s * s
	}
	if norm == 0 || gap <= 0 {
		return false
	}
	for t := range price {
		price[t] = math.Max(0, price[t]+gap/norm*slope[t])
	}
	return true
}
