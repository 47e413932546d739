package sheet

import (
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/cut/cover"
	"rodwright/length"
)

// scaleLimit is how many scales of length, and of width, are tried for one kind of sheet.
const scaleLimit = 28

// holdNodes is the work on all knapsacks of one bound.
const holdNodes = 200_000

// bound returns a lower bound of the cost of need[k] parts of each kind, or with values an upper bound of
// what can be cut.
func (m *model) bound(need []int, budget *cut.Budget) float64 {
	if m.valued {
		return m.valueBound(need, budget)
	}
	b := boundary{m: m, need: need, nodes: holdNodes}
	b.reduce()
	best := b.byArea()
	seen := map[[2]length.Length]bool{}
	for _, st := range m.stores {
		size := [2]length.Length{st.in.Length, st.in.Width}
		if !seen[size] && !budget.Over() {
			seen[size] = true
			best = max(best, b.byScales(st, budget))
		}
	}
	return best
}

// boundary reckons bounds in units of the greatest common divisor of all sizes, so that products of
// lengths stay within whole numbers.
type boundary struct {
	m     *model
	need  []int
	unit  length.Length
	nodes int
}

func (b *boundary) reduce() { b.unit = b.m.unit() }

// size is a length with its saw cut, in units.
func (b *boundary) size(l length.Length) int64 { return int64((l + b.m.p.Kerf) / b.unit) }

// share is one whole in weights: products of two shares, a hundred thousand times, stay within 63 bits.
const share = 1 << 22

// shares returns the weight of a size by a scale as a share of what a row holds, rounded down.
func shares(sc cover.Scale, size, room int64) int64 {
	if size > room {
		return share
	}
	return int64(math.Floor(float64(sc.Of(size)) / float64(sc.Hold) * share * (1 - 1e-15)))
}

// byArea is the bound by areas. Of the area of defects that part counts as lost that no part reaches with
// its saw cut.
func (b *boundary) byArea() float64 {
	total := 0.0
	for k, kd := range b.m.kinds {
		total += float64(b.need[k]) * float64(b.size(kd.l)) * float64(b.size(kd.w))
	}
	var whole float64
	for _, s := range b.m.stores {
		whole = math.Max(whole, float64(b.size(s.in.Length))*float64(b.size(s.in.Width)))
	}
	scale := math.Min(1, (1<<40)/whole) // exact where sheets have fewer units of area than that
	stocks := make([]cover.Stock, len(b.m.stores))
	for j, s := range b.m.stores {
		hold := float64(b.size(s.in.Length)) * float64(b.size(s.in.Width))
		hold -= b.lost(s)
		stocks[j] = cover.Stock{Hold: int64(math.Ceil(hold * scale)), Price: s.price, Count: s.count}
	}
	if total*scale > 1<<61 {
		return 0
	}
	return cover.Least(stocks, int64(math.Floor(total*scale)))
}

// lost is the area of a sheet's defects, without those that overlap one counted before.
func (b *boundary) lost(s store) (area float64) {
	kf := b.m.p.Kerf
	var counted []cut.Rect
	for _, d := range s.defects {
		x, y := max(d.X, s.in.X), max(d.Y, s.in.Y)
		r := cut.Rect{
			X: x + kf, Y: y + kf, Length: min(d.X+d.Length, s.in.X+s.in.Length) - x - kf,
			Width: min(d.Y+d.Width, s.in.Y+s.in.Width) - y - kf,
		}
		if r.Length <= 0 || r.Width <= 0 || hits(r, counted) {
			continue
		}
		counted = append(counted, r)
		u := float64(b.unit)
		area += float64(r.Length) / u * float64(r.Width) / u
	}
	return area * (1 - 1e-12)
}

// byScales is the best bound by products of scales made for one kind of sheet.
func (b *boundary) byScales(st store, budget *cut.Budget) (best float64) {
	along, across := b.scaled(st, budget)
	for _, f := range along {
		for _, g := range across {
			if !budget.Spend(len(b.m.kinds)/8 + len(b.m.stores)/2 + 1) {
				return best
			}
			best = max(best, b.product(f, g))
		}
	}
	return best
}

// scaled are the weights by scales of a kind of sheet, of length and of width; fewer where the budget ends.
func (b *boundary) scaled(st store, budget *cut.Budget) (along, across []weights) {
	for _, d := range []bool{true, false} {
		room, sizes := b.across(st, d), b.sizesOf(d)
		var all []int64
		for i, s := range sizes.all {
			for range sizes.times[i] { // thresholds are thinned by rank
				all = append(all, s)
			}
		}
		w := b.weighed(cover.Scales(all, room, scaleLimit), sizes, room, d, budget)
		if d {
			along = w
		} else {
			across = w
		}
	}
	return along, across
}

// weights are what the parts weigh along one direction, as they lie and turned, and what a row of each
// kind of sheet holds.
type weights struct {
	plain, turned []int64
	hold          []int64
}

// sizesAlong are the sizes of the parts in one direction, each once: those of parts as they lie and, where they may be
// turned, as they lie then.
type sizesAlong struct {
	all           []int64 // ascending
	times         []int   // how many kinds have each
	plain, turned []int   // which is that of a kind
}

func (b *boundary) sizesOf(along bool) (s sizesAlong) {
	plain, turned := make([]int64, len(b.m.kinds)), make([]int64, len(b.m.kinds))
	for i, k := range b.m.kinds {
		plain[i], turned[i] = b.size(k.l), b.size(k.w)
		if !along {
			plain[i], turned[i] = turned[i], plain[i]
		}
		if s.all = append(s.all, plain[i]); k.turn {
			s.all = append(s.all, turned[i])
		}
	}
	slices.Sort(s.all)
	s.all = slices.Compact(s.all)
	s.times, s.plain, s.turned = make([]int, len(s.all)), make([]int, len(plain)), make([]int, len(plain))
	for i, k := range b.m.kinds {
		s.plain[i], _ = slices.BinarySearch(s.all, plain[i])
		s.times[s.plain[i]]++
		if s.turned[i] = s.plain[i]; k.turn {
			s.turned[i], _ = slices.BinarySearch(s.all, turned[i])
			s.times[s.turned[i]]++
		}
	}
	return s
}

// weighed weighs the parts by every scale until the budget ends.
func (b *boundary) weighed(scales []cover.Scale, sizes sizesAlong, room int64, along bool, budget *cut.Budget) (out []weights) {
	of, items := make([]int64, len(sizes.all)), make([]cover.Item, len(sizes.all))
	for _, sc := range scales {
		for i, s := range sizes.all {
			of[i] = shares(sc, s, room)
			items[i] = cover.Item{Size: s, Value: of[i], Count: cut.MaxPieces}
		}
		w := weights{plain: make([]int64, len(b.m.kinds)), turned: make([]int64, len(b.m.kinds))}
		for k := range b.m.kinds {
			w.plain[k], w.turned[k] = of[sizes.plain[k]], of[sizes.turned[k]]
		}
		known := map[int64]int64{}
		for _, s := range b.m.stores {
			r := b.across(s, along)
			if _, ok := known[r]; !ok {
				if !budget.Ask() {
					return out
				}
				known[r] = b.hold(items, r, room)
			}
			w.hold = append(w.hold, known[r])
		}
		out = append(out, w)
	}
	return out
}

// across is the room of a row along a sheet or across it.
func (b *boundary) across(s store, along bool) int64 {
	if along {
		return b.size(s.in.Length)
	}
	return b.size(s.in.Width)
}

// hold is what a row of length r holds at most: one share where the scale was made for it.
func (b *boundary) hold(items []cover.Item, r, room int64) int64 {
	if r == room {
		return share
	}
	part := b.nodes/16 + 1
	before := part
	v := cover.Most(items, r, &part)
	b.nodes -= before - part
	return v
}

// product is the bound by the products of weights along and across.
func (b *boundary) product(f, g weights) float64 {
	var total int64
	for k, kd := range b.m.kinds {
		w := f.plain[k] * g.plain[k]
		if kd.turn {
			plain, turned := b.m.ways(kd)
			t := f.turned[k] * g.turned[k]
			if turned && (t < w || !plain) {
				w = t
			}
		}
		total += int64(b.need[k]) * w
	}
	stocks := make([]cover.Stock, len(b.m.stores))
	for j, s := range b.m.stores {
		stocks[j] = cover.Stock{Hold: f.hold[j] * g.hold[j], Price: s.price, Count: s.count}
	}
	return cover.Least(stocks, total)
}

// ways reports whether a part fits on some sheet as it is, and turned.
func (m *model) ways(kd kind) (plain, turned bool) {
	for _, s := range m.stores {
		plain = plain || s.takes(kd.l, kd.w)
		turned = turned || kd.turn && !s.grain && s.takes(kd.w, kd.l)
	}
	return plain, turned
}
