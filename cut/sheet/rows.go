package sheet

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// A layout that must be there at once is made of rows across the sheets: the widest part left begins a row, and what
// comes next by width goes behind it (next fit and first fit by decreasing height; Coffman, Garey, Johnson and Tarjan,
// SIAM Journal on Computing 9, 1980; from memory). Rows of parts are two stages, rows of one part are one.

// rowReach is how many kinds behind the widest are tried for the rest of a row.
const rowReach = 48

// rows puts parts on one sheet after another, at most have[k] of kind k, and takes off have and avail what it uses.
func (m *model) rows(have, avail []int) (sheets []filled) {
	r := m.rowFiller(have)
	for _, st := range m.byRate() {
		r.lie(st)
		for avail[st] != 0 {
			f := r.fill(st)
			if len(f.parts) == 0 {
				break // what is left fits no better on the next of the same kind
			}
			sheets = append(sheets, f)
			take(avail, st)
		}
	}
	return sheets
}

// byRate lists the stores by price for their area, the cheapest first.
func (m *model) byRate() []int {
	out := make([]int, len(m.stores))
	for i := range out {
		out[i] = i
	}
	rate := func(i int) float64 {
		s := m.stores[i]
		return s.price / (s.in.Length.MM() * s.in.Width.MM())
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(rate(a), rate(b)) })
	return out
}

// lying is a kind as it lies on a kind of sheet.
type lying struct {
	kind   int
	l, w   length.Length
	turned bool
}

// rowFiller fills sheets by rows.
type rowFiller struct {
	m     *model
	have  []int
	every []lying // every kind as it is and turned, the widest first
	all   []lying // those of them that a sheet takes, each kind once
	skip  []int   // where the next kind begins of which some are left, or nearer
}

func (m *model) rowFiller(have []int) *rowFiller {
	r := &rowFiller{m: m, have: have}
	for k, kd := range m.kinds {
		if have[k] == 0 {
			continue
		}
		if r.every = append(r.every, lying{k, kd.l, kd.w, false}); kd.turn && kd.l != kd.w {
			r.every = append(r.every, lying{k, kd.w, kd.l, true})
		}
	}
	slices.SortFunc(r.every, func(a, b lying) int {
		return cmp.Or(cmp.Compare(b.w, a.w), cmp.Compare(b.l, a.l), cmp.Compare(a.kind, b.kind))
	})
	return r
}

// lie lays every kind along a kind of sheet, where it may be turned so.
func (r *rowFiller) lie(st int) {
	s := r.m.stores[st]
	r.all, r.skip = r.all[:0], r.skip[:0]
	r.every = slices.DeleteFunc(r.every, func(q lying) bool { return r.have[q.kind] == 0 })
	for _, q := range r.every {
		if s.takes(q.l, q.w) && q.turned == r.turns(s, r.m.kinds[q.kind]) {
			r.all = append(r.all, q)
		}
	}
	for i := range len(r.all) + 1 {
		r.skip = append(r.skip, i)
	}
}

// turns reports whether a kind is better turned: to lie along, or to fit at all.
func (r *rowFiller) turns(s store, k kind) bool {
	return k.turn && !s.grain && s.takes(k.w, k.l) && (k.w > k.l || !s.takes(k.l, k.w))
}

// from returns the first kind from i on of which some are left, len(r.all) where there is none.
func (r *rowFiller) from(i int) int {
	at := i
	for at < len(r.all) && (r.skip[at] != at || r.have[r.all[at].kind] == 0) {
		at = max(at+1, r.skip[at])
	}
	for i < at {
		i, r.skip[i] = max(i+1, r.skip[i]), at
	}
	return at
}

// fill fills one sheet.
func (r *rowFiller) fill(st int) filled {
	s := r.m.stores[st]
	out, rest := filled{store: st}, piece{Rect: s.in}
	for rest.Length > 0 && rest.Width > 0 {
		first, _ := slices.BinarySearchFunc(r.all, rest.Width, func(q lying, w length.Length) int { return cmp.Compare(w, q.w) })
		first = r.from(first)
		if first == len(r.all) {
			break
		}
		row, behind := rest.near(acrossY, r.all[first].w, r.m.p.Kerf)
		if !r.row(&out, row, first, s.defects) {
			y, ok := past(rest, s.defects)
			if !ok {
				break
			}
			row, behind = rest.near(acrossY, min(rest.Width, max(0, y-rest.Y-r.m.p.Kerf)), r.m.p.Kerf)
			behind.Y, behind.Width = y, rest.Y+rest.Width-y
			out.free = append(out.free, row)
		}
		rest = behind
	}
	out.free = append(out.free, rest)
	out.free = slices.DeleteFunc(out.free, func(q piece) bool { return q.Length <= 0 || q.Width <= 0 })
	return out
}

// past is where the first defect ends that ends above the near edge of a piece.
func past(p piece, defects []cut.Rect) (y length.Length, ok bool) {
	for _, d := range defects {
		if e := d.Y + d.Width; d.Overlaps(p.Rect) && e > p.Y && (!ok || e < y) {
			y, ok = e, true
		}
	}
	return y, ok
}

// row puts parts in a row, the kind at first and those behind it; false where none fits.
func (r *rowFiller) row(out *filled, row piece, first int, defects []cut.Rect) bool {
	placed := len(out.parts)
	for tried, i := 0, first; i < len(r.all) && tried < rowReach && row.Length > 0; tried, i = tried+1, r.from(i+1) {
		q := r.all[i]
		for r.have[q.kind] > 0 && (r.m.p.Stages != 1 || len(out.parts) == placed) {
			at, ok := clearAlong(row, q, defects)
			if !ok {
				break
			}
			row = r.place(out, row, q, at)
		}
	}
	if len(out.parts) == placed {
		return false
	}
	out.free = append(out.free, row)
	return true
}

// clearAlong is the nearest place in a row where a part meets no defect.
func clearAlong(row piece, q lying, defects []cut.Rect) (at cut.Rect, ok bool) {
	at = cut.Rect{X: row.X, Y: row.Y, Length: q.l, Width: q.w}
	for at.X+at.Length <= row.X+row.Length {
		hit := slices.IndexFunc(defects, at.Overlaps)
		if hit < 0 {
			return at, true
		}
		at.X = defects[hit].X + defects[hit].Length
	}
	return at, false
}

// place cuts a part out of a row and returns the row behind it.
func (r *rowFiller) place(out *filled, row piece, q lying, at cut.Rect) (behind piece) {
	free, spare := row.divide(at, acrossX, r.m.p.Stages, r.m.p.Kerf)
	for _, p := range append(free, spare...) {
		if p.X >= at.X+at.Length {
			behind = p
		} else {
			out.free = append(out.free, p)
		}
	}
	r.have[q.kind]--
	out.parts = append(out.parts, placed{q.kind, q.turned, at})
	out.value += r.m.value(q.kind)
	return behind
}
