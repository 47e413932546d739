package sheet

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// fitRule says which free piece a part fits best.
type fitRule int

// The fit rules: least area left, least left on the shorter side, on the longer side, or the lowest corner.
const (
	byArea fitRule = iota
	byShort
	byLong
	byCorner
	fitRules
)

// splitRule says in which direction a piece is cut first.
type splitRule int

// The split rules: the one that leaves the largest rectangle, the smallest, or always one direction.
const (
	keepLarge splitRule = iota
	keepEven
	firstX
	firstY
	splitRules
)

// manner is one way to fill a sheet.
type manner struct {
	order []int // kinds in the order they are tried
	fit   fitRule
	split splitRule

	// Filled by sections first where value is given: what a part of each kind is worth, which kinds are turned,
	// and the direction of the cuts between sections.
	value  []float64
	turned []bool
	along  direction
	dice   *cut.Dice
}

// filler fills single sheets.
type filler struct {
	m        *model
	budget   *cut.Budget
	haste    int       // places that may be tried still when the budget is spent
	patient  bool      // all places are tried, whatever the budget
	sections sectioner // its tables are used again and again
}

// hastyTries is how many places are tried still when the budget is spent: enough for any job of a shop, and a
// matter of a millisecond. What is left then is laid out in rows.
const hastyTries = 20_000

// ended reports whether a sheet must be left as it is before n more places are tried.
func (f *filler) ended(n int) bool {
	if f.patient || f.budget.Spend(n) {
		return false
	}
	f.haste -= n
	return f.haste < 0
}

// fill puts parts on an empty sheet of a store, at most have[k] of kind k.
func (f *filler) fill(s int, have []int, how manner) filled {
	st := f.m.stores[s]
	out := filled{store: s, free: []piece{{Rect: st.in}}}
	if how.value != nil && len(st.defects) == 0 && f.m.p.Stages != 1 {
		out = f.bySections(s, have, how)
		have = slices.Clone(have)
		for _, q := range out.parts {
			have[q.kind]--
		}
	}
	least := f.m.leastSide(have)
	var lost []piece
	out.free, lost = f.m.usable(out.free, least)
	l, w := longest(out.free)
	for _, k := range how.order {
		kd := f.m.kinds[k]
		for n := have[k]; n > 0; n-- {
			if f.ended(len(out.free)) {
				out.free = append(out.free, lost...)
				return out
			}
			if (kd.l > l || kd.w > w) && (!kd.turn || kd.w > l || kd.l > w) {
				break // no free piece is as long, or none as wide
			}
			at, ok := f.best(out.free, k, st, how)
			if !ok {
				break
			}
			lost = append(lost, f.place(&out, k, at, least)...)
			l, w = longest(out.free)
		}
	}
	out.free = append(out.free, lost...)
	return out
}

// place cuts a part out of a free piece and returns the pieces that hold no part any more.
func (f *filler) place(out *filled, k int, at spot, least length.Length) (lost []piece) {
	free, lost := out.free[at.piece].divide(at.at, at.first, f.m.p.Stages, f.m.p.Kerf)
	out.free = slices.Delete(out.free, at.piece, at.piece+1)
	for _, q := range free {
		if min(q.Length, q.Width) < least {
			lost = append(lost, q)
		} else {
			out.free = append(out.free, q)
		}
	}
	out.parts = append(out.parts, placed{k, at.turned, at.at})
	out.value += f.m.value(k)
	return lost
}

// longest are the greatest length and the greatest width of free pieces.
func longest(free []piece) (l, w length.Length) {
	for _, p := range free {
		l, w = max(l, p.Length), max(w, p.Width)
	}
	return l, w
}

// usable parts free pieces into those that have the least side and may be cut on, and the others.
func (m *model) usable(all []piece, least length.Length) (free, lost []piece) {
	for _, q := range all {
		if min(q.Length, q.Width) < least || m.p.Stages > 0 && q.stage > m.p.Stages {
			lost = append(lost, q)
		} else {
			free = append(free, q)
		}
	}
	return free, lost
}

// leastSide is the shortest side of all parts that are left: a piece below it holds none.
func (m *model) leastSide(have []int) length.Length {
	least := length.Max
	for k, n := range have {
		if n > 0 {
			least = min(least, m.kinds[k].l, m.kinds[k].w)
		}
	}
	return least
}

// best returns the best spot for a part of kind k.
func (f *filler) best(free []piece, k int, st store, how manner) (best spot, ok bool) {
	kd := f.m.kinds[k]
	for i, p := range free {
		for _, turned := range []bool{false, true} {
			l, w := kd.l, kd.w
			if turned {
				if !kd.turn || st.grain || l == w {
					continue
				}
				l, w = w, l
			}
			if l > p.Length || w > p.Width {
				continue
			}
			at, fits := clearOf(p, l, w, st.defects)
			if !fits {
				continue
			}
			c := spot{piece: i, at: at, turned: turned, waste: how.fit.waste(p, at)}
			if c.first, fits = f.firstCut(p, at, how.split); fits && (!ok || c.waste < best.waste) {
				best, ok = c, true
			}
		}
	}
	return best, ok
}

// clearOf returns the place nearest to the corner of p where a part of the given size meets no defect:
// at the corner, or behind a defect in either direction.
func clearOf(p piece, l, w length.Length, defects []cut.Rect) (cut.Rect, bool) {
	xs, ys := []length.Length{p.X}, []length.Length{p.Y}
	for _, d := range defects {
		if d.Overlaps(p.Rect) {
			xs = append(xs, d.X+d.Length)
			ys = append(ys, d.Y+d.Width)
		}
	}
	best, found := cut.Rect{}, false
	for _, x := range xs {
		for _, y := range ys {
			r := cut.Rect{X: x, Y: y, Length: l, Width: w}
			if x+l > p.X+p.Length || y+w > p.Y+p.Width || x < p.X || y < p.Y || hits(r, defects) {
				continue
			}
			if !found || x+y < best.X+best.Y {
				best, found = r, true
			}
		}
	}
	return best, found
}

func hits(r cut.Rect, defects []cut.Rect) bool {
	return slices.ContainsFunc(defects, r.Overlaps)
}

// waste rates a place in a piece by the rule; lower is better.
func (f fitRule) waste(p piece, r cut.Rect) float64 {
	dl, dw := (p.Length - r.Length).MM(), (p.Width - r.Width).MM()
	switch f {
	case byShort:
		return min(dl, dw)
	case byLong:
		return max(dl, dw)
	case byCorner:
		return r.X.MM() + r.Y.MM()
	}
	return p.Length.MM()*p.Width.MM() - r.Length.MM()*r.Width.MM()
}

// firstCut returns the direction to cut first by the rule, among those that the stages allow.
func (f *filler) firstCut(p piece, r cut.Rect, rule splitRule) (direction, bool) {
	stages := f.m.p.Stages
	x, y := p.possible(r, acrossX, stages), p.possible(r, acrossY, stages)
	switch {
	case !x && !y:
		return uncut, false
	case !x:
		return acrossY, true
	case !y:
		return acrossX, true
	}
	switch rule {
	case firstX:
		return acrossX, true
	case firstY:
		return acrossY, true
	}
	// Cutting across x first leaves the full width behind the part and only its length above it.
	behind, above := (p.Length - r.Length).MM(), (p.Width - r.Width).MM()
	largeX := math.Max(behind*p.Width.MM(), above*r.Length.MM())
	largeY := math.Max(above*p.Length.MM(), behind*r.Width.MM())
	if (largeX >= largeY) == (rule == keepLarge) {
		return acrossX, true
	}
	return acrossY, true
}

// orders returns the kinds sorted by area, longer side, width and length, the largest first.
func (m *model) orders() (out [][]int) {
	for _, key := range []func(kind) float64{
		func(k kind) float64 { return k.l.MM() * k.w.MM() },
		func(k kind) float64 { return max(k.l, k.w).MM() },
		func(k kind) float64 { return k.w.MM()*1e6 + k.l.MM() },
		func(k kind) float64 { return k.l.MM()*1e6 + k.w.MM() },
	} {
		out = append(out, m.sortedBy(key))
	}
	if m.valued {
		out = append(out, m.sortedBy(func(k kind) float64 {
			return m.p.Parts[k.part].Value.Value / (k.l.MM() * k.w.MM())
		}))
	}
	return out
}

func (m *model) sortedBy(key func(kind) float64) []int {
	return m.ranked(func(k int) float64 { return key(m.kinds[k]) })
}

// ranked returns the kinds by a key, the greatest first.
func (m *model) ranked(key func(int) float64) []int {
	o, keys := make([]int, len(m.kinds)), make([]float64, len(m.kinds))
	for k := range o {
		o[k], keys[k] = k, key(k)
	}
	slices.SortFunc(o, func(a, b int) int { return cmp.Or(cmp.Compare(keys[b], keys[a]), a-b) })
	return o
}
