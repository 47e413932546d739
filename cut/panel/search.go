package panel

import (
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// layout is which boards are cut into which segments, and the panels ripped from them.
type layout struct {
	segments [][]segment // by board
	glue     glued
	short    length.Length // net width of the panels not made
	cost     float64
	strips   int
}

// better reports whether a is the better layout: more panels, then less cost, then fewer strips.
func (a *layout) better(b *layout) bool {
	switch {
	case b == nil:
		return true
	case a.short != b.short:
		return a.short < b.short
	case math.Abs(a.cost-b.cost) > costEps:
		return a.cost < b.cost
	}
	return a.strips < b.strips
}

// costEps is below any price step and above the rounding of sums.
const costEps = 1e-7

// boundBudget is the work on the bound of what is made when not all could be.
const boundBudget = 100_000

// search holds the best layout so far.
type search struct {
	m      *model
	budget *cut.Budget
	dice   *cut.Dice
	find   pathFinder
	price  []float64 // of a unit of net width, by kind
	logs   []string  // by kind: the mate word its boards must carry; other kinds take any
	best   *layout
	bound  float64
}

func newSearch(m *model, b *cut.Budget) *search {
	return &search{m: m, budget: b, dice: cut.NewDice(1), find: pathFinder{m: m}}
}

// run finds the layout: prices first, then boards one by one, then a few of them anew.
func (s *search) run() {
	if len(s.m.kinds) == 0 {
		s.best = &layout{segments: make([][]segment, len(s.m.boards))}
		return
	}
	s.price = s.barePrices()
	s.logs = s.chooseLogs()
	s.offer(s.grow(make([][]segment, len(s.m.boards)), s.price))
	low := newBound(s.m, nil)
	s.improvePrices(low)
	s.offer(s.grow(make([][]segment, len(s.m.boards)), s.price))
	s.anneal()
	s.exchange()
	s.bound = low.value
	if s.best.short > 0 {
		made := s.best.glue.made()
		s.bound = newBound(s.m, made).improve(s.best.cost, 30, s.budget.Again(boundBudget))
	}
	s.bound = min(s.bound, s.best.cost)
}

// barePrices are prices before anything is known: strips cost by length, and what few places of the boards
// yield costs more.
func (s *search) barePrices() []float64 {
	out := make([]float64, len(s.m.kinds))
	for t, kd := range s.m.kinds {
		var all, clear float64
		for _, b := range s.m.boards {
			if r := float64(b.to - b.from); r > 0 {
				all += r
				clear += float64(b.best(t))
			}
		}
		out[t] = float64(kd.length) * math.Min(4, all/math.Max(clear, 1))
	}
	return out
}

func (s *search) offer(l *layout) {
	if l.better(s.best) {
		s.best = l
	}
}

// allowed reports which kinds board k may be cut into.
func (s *search) allowed(k int) func(int) bool {
	return func(t int) bool {
		return !s.m.kinds[t].mates || s.logs[t] == s.m.log(k)
	}
}

// grow adds boards to those that are cut already until nothing is wanted or no board helps, and rips them.
// Where ripping falls short of what the segments promised, it goes on with what is missing.
func (s *search) grow(cutUp [][]segment, price []float64) *layout {
	extra := make([]length.Length, len(s.m.kinds))
	for round := 0; ; round++ {
		s.choose(cutUp, price, extra)
		l := s.rip(cutUp)
		if l.short == 0 || round == 6 || !s.askMore(l, extra) {
			return l
		}
	}
}

// askMore raises the demand of the kinds that came out short.
func (s *search) askMore(l *layout, extra []length.Length) bool {
	more := false
	for t := range extra {
		if d := l.glue.missing[t]; d > 0 {
			extra[t] += max(d, s.m.p.Strip.Least/2)
			more = true
		}
	}
	return more
}

// choose adds boards, each time the one that yields most for its money at the given prices.
func (s *search) choose(cutUp [][]segment, price []float64, extra []length.Length) {
	rest := s.rest(cutUp, extra)
	for {
		pick, ok := s.next(cutUp, price, rest)
		if !ok {
			return
		}
		cutUp[pick.board] = pick.segments
		for _, g := range pick.segments {
			rest[g.kind] -= g.net
		}
	}
}

// rest returns the net width that is still wanted of each kind.
func (s *search) rest(cutUp [][]segment, extra []length.Length) []length.Length {
	rest := make([]length.Length, len(s.m.kinds))
	for t := range rest {
		rest[t] = s.m.kinds[t].need + extra[t]
	}
	for _, segs := range cutUp {
		for _, g := range segs {
			rest[g.kind] -= g.net
		}
	}
	return rest
}

// pick is one board as it could be cut next.
type pick struct {
	board    int
	segments []segment
	rate     float64
}

func (s *search) next(cutUp [][]segment, price []float64, rest []length.Length) (best pick, ok bool) {
	left := make([]float64, len(rest))
	total := 0.0
	for t, r := range rest {
		if r > 0 {
			left[t] = price[t]
			total += price[t] * float64(r)
		}
	}
	if total == 0 {
		return best, false
	}
	tried := map[int]bool{}
	for k := range s.m.boards {
		if len(cutUp[k]) > 0 || tried[s.m.twin[k]] {
			continue // in use, or just like a board that was tried
		}
		if ok && s.budget.Over() {
			break
		}
		tried[s.m.twin[k]] = true
		s.budget.Spend(len(s.m.boards[k].pos)/8 + 1)
		path := s.find.find(k, left, 0, s.allowed(k))
		segs := s.needed(k, path.segments, rest)
		v := s.worth(segs, left, rest)
		if v <= 0 {
			continue
		}
		c := pick{k, segs, (s.m.cost(k, segs) + total*1e-12) / v}
		if v >= total*(1-1e-9) {
			segs = s.leaner(k, segs, left, rest)
			c = pick{k, segs, s.m.cost(k, segs) / v}
		}
		if !ok || c.rate < best.rate {
			best, ok = c, true
		}
	}
	return best, ok
}

// worth is the value of segments at the given prices, no more of each kind than is wanted.
func (s *search) worth(segs []segment, price []float64, rest []length.Length) (v float64) {
	got := make([]length.Length, len(rest))
	for _, g := range segs {
		use := min(g.net, max(0, rest[g.kind]-got[g.kind]))
		v += price[g.kind] * float64(use)
		got[g.kind] += g.net
	}
	return v
}

// needed drops the segments that are beyond what is wanted, from the right, and closes up the others.
func (s *search) needed(k int, segs []segment, rest []length.Length) []segment {
	left := slices.Clone(rest)
	for _, g := range segs {
		left[g.kind] -= g.net
	}
	var out []segment
	for i := len(segs) - 1; i >= 0; i-- {
		g := segs[i]
		if left[g.kind]+g.net <= 0 {
			left[g.kind] += g.net
			continue
		}
		out = append(out, g)
	}
	slices.Reverse(out)
	if len(out) == len(segs) {
		return segs
	}
	return s.closeUp(k, out)
}

// closeUp moves segments to the left as far as each still yields as much.
func (s *search) closeUp(k int, segs []segment) []segment {
	b := s.m.boards[k]
	at := 0
	for i, g := range segs {
		for j := at; j < len(b.pos) && b.pos[j] <= g.at; j++ {
			if b.next[g.kind][j] >= 0 && b.net[g.kind][j] >= g.net {
				g.at, g.net = b.pos[j], b.net[g.kind][j]
				at = b.next[g.kind][j]
				segs[i] = g
				break
			}
		}
	}
	return segs
}

// leaner looks for a way to cut board k that yields all that is wanted and keeps a longer tail.
func (s *search) leaner(k int, segs []segment, price []float64, rest []length.Length) []segment {
	if s.m.p.Salvage == 0 {
		return segs
	}
	all := s.worth(segs, price, rest)
	best, cost := segs, s.m.cost(k, segs)
	for _, credit := range []float64{0.3, 1, 3} {
		scale := credit * all / math.Max(s.m.boards[k].cost, costEps)
		path := s.find.find(k, price, scale, s.allowed(k))
		try := s.needed(k, path.segments, rest)
		if c := s.m.cost(k, try); c < cost-costEps && s.worth(try, price, rest) >= all*(1-1e-9) {
			best, cost = try, c
		}
	}
	return best
}
