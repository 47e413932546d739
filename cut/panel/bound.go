package panel

import (
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
	at        int     // index of its length
}

// lowBoard is a board as the bound sees it.
type lowBoard struct {
	k    int
	cost float64
	pos  []length.Length // ascending; nil when there are too many, then the crude bound stands in
	next [][]int         // by length and position
	free [][][3]float64  // by length and position: net width free for each grade
	most float64         // net width of the whole usable range

	credit []float64 // by position: what a tail kept from there on is worth; 0 for none
}

// low is the lower bound with its prices.
type low struct {
	m       *model
	kinds   []lowKind
	lengths []length.Length // ascending
	boards  []lowBoard

	rounds []rounding
	val    [][]float64 // by kind and position: what a segment of the board in hand is worth
	best   []float64   // what the board in hand is worth from each position on
	way    []int       // what to do there: the kind to cut, skip or tail
	work   int         // steps of the last list
	steps  []int       // scratch
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
	for t := range l.kinds {
		l.kinds[t].at, _ = slices.BinarySearch(l.lengths, l.kinds[t].length)
	}
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
		l.kinds = append(l.kinds, lowKind{length: kd.length, grade: slices.Index(grades, kd.show), thickness: kd.thickness})
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
	b.credit = make([]float64, len(pos))
	for i, x := range pos {
		if i > 0 {
			b.credit[i] = m.p.TailCredit(k, src.Length-x)
		}
	}
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
		}
	}
	return next, free
}

// never reports whether no strip of the grade may hold d, whichever face it shows.
func never(g cut.Show, d cut.Defect, ring cut.Ring) bool {
	return !g.Takes(d, false) && (ring == cut.NoRing || !g.Takes(d, true))
}

// whole is the bound with whole boards at the given prices: each board offers what it can yield before
// each place its tail may begin, for what that costs.
func (l *low) whole(price []float64) float64 {
	need := 0.0
	for t, kd := range l.kinds {
		need += price[t] * kd.need
	}
	for c, r := range l.rounds {
		need += price[len(l.kinds)+c] * r.count()
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
	if b.pos == nil {
		credit := l.m.p.Salvage * b.cost
		return []cover.Offer{{Hold: l.crude(b, price).value - credit, Price: b.cost - credit}}
	}
	l.tariff(b, price)
	n := len(b.pos)
	before := make([]float64, n+1)
	for i := 0; i <= n; i++ {
		if i > 0 {
			before[i] = max(before[i], before[i-1])
		}
		if i == n {
			break
		}
		for t, kd := range l.kinds {
			if v := l.val[t][i]; v > 0 {
				to := b.next[kd.at][i]
				before[to] = max(before[to], before[i]+v)
			}
		}
		if c := b.credit[i]; c > 0 {
			out = append(out, cover.Offer{Hold: before[i], Price: b.cost - c})
		}
	}
	return append(out, cover.Offer{Hold: before[n], Price: b.cost})
}
