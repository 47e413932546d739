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

// search holds the best layout so far.
type search struct {
	m         *model
	budget    *cut.Budget
	dice      *cut.Dice
	find      pathFinder
	price     []float64 // of a unit of net width, by kind
	lowPrice  []float64 // of a unit of net width, by kind of the bound
	logs      []string  // by kind: the mate word its boards must carry; other kinds take any
	best      *layout
	paths     map[int][]segment // by board, the best at pathPrice
	pathPrice []float64
	bound     float64
	pools     [][]option // ways to cut, by board, as far as they were collected
	rounds    int
	taken     int     // ways of the program that are among them
	sets      [][]int // of setKinds kinds those that a sweep looks at together
	setKinds  int
	unbounded bool // it looks for layouts alone and leaves the bound to the search it runs beside
}

func newSearch(m *model, b *cut.Budget) *search {
	return &search{m: m, budget: b, dice: cut.NewDice(1), find: pathFinder{m: m}}
}

// firstDives is how often the boards are laid out as the program would have them before anything else.
const firstDives = 4

// firstShare is the work of the first round; each further round has twice as much, so that a search that is
// ended early has done of everything.
const firstShare = 50_000

// closedRounds is how many rounds follow when every part was searched to its end and only what could not be ripped keeps
// the bound from the cost: ripping other choices may still gain a little.
const closedRounds = 3

// run finds the layout: simple ones, the bound with its prices, then by turns choices for all boards at once,
// parts searched to their end, and a few boards anew.
func (s *search) run() {
	if len(s.m.kinds) == 0 {
		s.best = &layout{segments: make([][]segment, len(s.m.boards))}
		return
	}
	s.price = s.barePrices()
	s.logs = s.chooseLogs()
	s.offer(s.grow(make([][]segment, len(s.m.boards)), s.price))
	low := newBound(s.m, nil)
	b := s.newBranching(newProgram(low, s.budget))
	b.begin()
	for n := range firstDives {
		s.dive(b.p, s.wanted(low, 1-float64(n%3)/2), 0.1*float64(n))
	}
	b.whole()
	s.learnPrices(b)
	if s.budget.Left() < 20*firstShare { // little work: the simple ways first
		s.offer(s.grow(make([][]segment, len(s.m.boards)), s.price))
		s.exchange(s.budget.Left() / 3)
	}
	closed := 0
	for share := min(firstShare, s.budget.Left()/4+1); closed < closedRounds && !s.budget.Over() && !s.done(); share *= 2 {
		s.round(b, share)
		if s.best.short == 0 && len(b.open)+len(b.later) == 0 || s.best.short > 0 && s.short() {
			closed++
		}
		if s.rounds++; s.rounds == 1 && len(b.p.l.rounds) == 0 && !s.budget.Over() {
			b.tighten()
		}
		s.learnPrices(b)
	}
	s.bound = min(s.bound, s.best.cost)
}

// short reports whether there is no layout with all panels: the bound is above what all boards cost; or whether so much
// was looked for one that none is likely to be found.
func (s *search) short() bool {
	all := 0.0
	for _, b := range s.m.boards {
		all += b.cost
	}
	return s.bound > all+costEps || s.rounds >= shortRounds
}

// shortRounds is how many rounds look for a layout with all panels, at least, before only those made are laid out.
const shortRounds = 3

// round does some of everything.
func (s *search) round(b *branching, share int) {
	if s.best.short > 0 {
		s.exchange(share)
		return
	}
	before := s.best
	s.anneal(b.p, int(float64(share)*s.annealed()))
	s.renew(b.p.l, int(float64(share)*(1-s.annealed())))
	s.renewFully(b.root, share/8)
	if s.unbounded {
		s.exchange(share / 8)
		return
	}
	b.patience = share / 500
	if b.search(share / 2); s.best == before {
		b.search(share) // where nothing cheaper is found, it is rather the bound that is lacking
	}
	s.exchange(share / 8)
}

// annealed is the share of a round's search for layouts that choices for all boards at once have: with many boards a few
// anew are better.
func (s *search) annealed() float64 {
	if len(s.m.boards) >= manyBoards {
		return 0.45
	}
	return 0.55
}

// manyBoards is from how many boards on a few of them are renewed rather than all chosen at once.
const manyBoards = 18

// done reports whether nothing cheaper is possible.
func (s *search) done() bool { return s.best.short == 0 && s.best.cost <= s.bound+costEps }

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
		segs := s.needed(k, s.bestPath(k, left), rest)
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

// bestPath returns the segments of board k that are worth most at the prices; as long as they stay the same, it is
// looked for once.
func (s *search) bestPath(k int, price []float64) []segment {
	if !slices.Equal(price, s.pathPrice) {
		s.pathPrice, s.paths = slices.Clone(price), map[int][]segment{}
	}
	if segs, ok := s.paths[k]; ok {
		return slices.Clone(segs)
	}
	s.budget.Spend(len(s.m.boards[k].pos)/8 + 1)
	segs := s.find.find(k, price, 0, s.allowed(k)).segments
	s.paths[k] = segs
	return slices.Clone(segs)
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
