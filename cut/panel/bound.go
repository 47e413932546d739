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
}

// lowBoard is a board as the bound sees it.
type lowBoard struct {
	k    int
	cost float64
	pos  []length.Length // ascending; nil when there are too many, then the crude bound stands in
	cuts []lowCut        // by position, then kind
	from []int           // by position: its first cut; behind the last position, how many there are
	of   [][]int         // by kind: its cuts
	most float64         // net width of the whole usable range

	credit []float64 // by position: what a tail kept from there on is worth; 0 for none
}

// lowCut is a segment that can be cut from a board.
type lowCut struct {
	pos, to int     // where it begins and where the next may
	kind    int     // of the bound
	net     float64 // greatest net width of its strips
}

// low is the lower bound with its prices.
type low struct {
	m       *model
	kinds   []lowKind
	lengths []length.Length // ascending
	boards  []lowBoard

	rounds []rounding
	val    []float64 // by cut: what it is worth, of the board in hand
	best   []float64 // what the board in hand is worth from each position on
	way    []int     // what to do there: the cut to take, skip or tail
	steps  []int     // scratch
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
		l.kinds = append(l.kinds, lowKind{length: kd.length, grade: slices.Index(grades, kd.show), thickness: kd.thickness})
	}
	l.kinds[i].need += width
}

func (l *low) newBoard(k int) lowBoard {
	m := l.m
	src := m.boards[k]
	b := lowBoard{k: k, cost: src.cost, most: float64(m.netOf(src.to - src.from))}
	if b.pos = l.places(src); b.pos == nil {
		return b
	}
	b.credit = make([]float64, len(b.pos))
	for i, x := range b.pos {
		if i > 0 {
			b.credit[i] = m.p.TailCredit(k, src.Length-x)
		}
	}
	b.of = make([][]int, len(l.kinds))
	nets := make([][]float64, len(l.kinds))
	for t, kd := range l.kinds {
		nets[t] = l.nets(src, b.pos, kd)
	}
	to := make([]int, len(l.kinds))
	for i, x := range b.pos {
		b.from = append(b.from, len(b.cuts))
		for t, kd := range l.kinds {
			if nets[t][i] <= 0 {
				continue
			}
			for to[t] < len(b.pos) && b.pos[to[t]] < x+kd.length+m.p.Kerf {
				to[t]++
			}
			b.of[t] = append(b.of[t], len(b.cuts))
			b.cuts = append(b.cuts, lowCut{i, to[t], t, nets[t][i]})
		}
	}
	b.from = append(b.from, len(b.cuts))
	return b
}

// places are the positions of a board; nil when there are too many.
func (l *low) places(src *board) []length.Length {
	if src.complete { // for the kinds' keep-outs there may be more than the bound needs
		return src.pos
	}
	starts := []length.Length{0}
	for _, d := range src.Defects {
		starts = append(starts, d.X+d.Length)
	}
	var steps []length.Length
	for _, ln := range l.lengths {
		steps = append(steps, ln+l.m.p.Kerf)
	}
	pos, complete := positions(src.Length, starts, steps, positionsEach(len(l.m.boards), len(l.lengths)))
	if !complete {
		return nil
	}
	return pos
}

// nets computes for segments of a kind, by position, the greatest net width; 0 where there can be none.
func (l *low) nets(b *board, pos []length.Length, kd lowKind) []float64 {
	out := make([]float64, len(pos))
	if kd.thickness > b.Thickness {
		return out
	}
	bad := make([]bool, len(b.Defects))
	for j, d := range b.Defects {
		bad[j] = never(grades[kd.grade], d, b.Ring)
	}
	sh := newShadow(l.m, b)
	for i, x := range pos {
		if x+kd.length <= b.Length {
			out[i] = float64(sh.net(x, kd.length, func(j int) bool { return bad[j] }))
		}
	}
	return out
}

// never reports whether no strip of the grade may hold d, whichever face it shows.
func never(g cut.Show, d cut.Defect, ring cut.Ring) bool {
	return !g.Takes(d, false) && (ring == cut.NoRing || !g.Takes(d, true))
}

// whole is the bound with whole boards at the given prices: each board offers what it can yield before each place its
// tail may begin, for what that costs. It is no more than enough.
func (p *program) whole(s scope, price []float64, enough float64) float64 {
	l, need, given := p.l, 0.0, 0.0
	for t, kd := range l.kinds {
		need += price[t] * kd.need
	}
	for c, r := range l.rounds {
		need += price[len(l.kinds)+c] * r.count()
	}
	var offers [][]cover.Offer
	for g := range p.groups {
		if s.hi[g] == 0 {
			continue
		}
		b := p.groups[g].lowBoard
		list := l.offers(b, price)
		p.budget.Spend(1 + len(b.cuts)/16)
		for n := range s.hi[g] {
			if n < s.lo[g] { // its cheapest offer is taken in any case
				first := slices.MinFunc(list, func(a, b cover.Offer) int { return sign(a.Price - b.Price) })
				need -= first.Hold
				given += first.Price
				offers = append(offers, beyond(list, first))
				continue
			}
			offers = append(offers, list)
		}
	}
	c := cover.Cheapest(offers, need, enough-given, func(steps int) bool { return p.budget.Spend(steps / 128) })
	return given + c.Cost
}

// beyond lists what offers hold and cost more than the first.
func beyond(list []cover.Offer, first cover.Offer) []cover.Offer {
	out := slices.Clone(list)
	for i := range out {
		out[i].Hold -= first.Hold
		out[i].Price -= first.Price
	}
	return out
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
	for i, c := range b.credit {
		if i > 0 {
			before[i] = max(before[i], before[i-1])
		}
		for a := b.from[i]; a < b.from[i+1]; a++ {
			to := b.cuts[a].to
			before[to] = max(before[to], before[i]+l.val[a])
		}
		if c > 0 {
			out = append(out, cover.Offer{Hold: before[i], Price: b.cost - c})
		}
	}
	return append(out, cover.Offer{Hold: max(before[n], before[n-1]), Price: b.cost})
}
