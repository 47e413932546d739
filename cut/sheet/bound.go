package sheet

import (
	"math"

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

func (b *boundary) reduce() {
	kf := b.m.p.Kerf
	b.unit = kf
	for _, k := range b.m.kinds {
		b.unit = gcd(gcd(b.unit, k.l), k.w)
	}
	for _, s := range b.m.stores {
		b.unit = gcd(gcd(b.unit, s.in.Length), s.in.Width)
	}
	b.unit = max(b.unit, 1)
}

func gcd(a, b length.Length) length.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

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
	along, across := b.scaled(st)
	for _, f := range along {
		for _, g := range across {
			if !budget.Spend(len(b.m.kinds)/8 + 1) {
				return best
			}
			best = max(best, b.product(f, g))
		}
	}
	return best
}

// scaled are the weights by scales of a kind of sheet, of length and of width.
func (b *boundary) scaled(st store) (along, across []weights) {
	roomL, roomW := b.size(st.in.Length), b.size(st.in.Width)
	var ls, ws []int64
	for _, k := range b.m.kinds {
		ls, ws = append(ls, b.size(k.l)), append(ws, b.size(k.w))
		if k.turn {
			ls, ws = append(ls, b.size(k.w)), append(ws, b.size(k.l))
		}
	}
	along = b.weighed(cover.Scales(ls, roomL, scaleLimit), roomL, true)
	across = b.weighed(cover.Scales(ws, roomW, scaleLimit), roomW, false)
	return along, across
}

// weights are what the parts weigh along one direction, as they lie and turned, and what a row of each
// kind of sheet holds.
type weights struct {
	plain, turned []int64
	hold          []int64
}

func (b *boundary) weighed(scales []cover.Scale, room int64, along bool) (out []weights) {
	for _, sc := range scales {
		var w weights
		var items []cover.Item
		for _, k := range b.m.kinds {
			l, t := b.size(k.l), b.size(k.w)
			if !along {
				l, t = t, l
			}
			w.plain = append(w.plain, shares(sc, l, room))
			w.turned = append(w.turned, shares(sc, t, room))
			items = append(items, cover.Item{Size: l, Value: shares(sc, l, room), Count: cut.MaxPieces})
			if k.turn {
				items = append(items, cover.Item{Size: t, Value: shares(sc, t, room), Count: cut.MaxPieces})
			}
		}
		for _, s := range b.m.stores {
			w.hold = append(w.hold, b.hold(items, b.across(s, along), room))
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
