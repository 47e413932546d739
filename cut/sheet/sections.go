package sheet

import (
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// sectioner fills a sheet in three stages by tables: sections across the sheet, rows across a section, parts along
// a row, each with a last trim. How much a row is worth at most is a knapsack of the parts that are no wider than
// it; how much a section, a knapsack of rows; a sheet, one of sections (Gilmore and Gomory, Operations Research 13,
// 1965). As no part is there twice, only one row is taken at a time and the tables are made anew.
type sectioner struct {
	f      *filler
	st     store
	along  direction // the direction of the cuts between sections
	scale  float64   // cells for a nanometre
	long   int       // cells across all sections
	wide   int       // cells along a section
	items  []item    // by width, the narrowest first
	widths []int     // of rows, ascending
	rows   [][]float64
	table  []float64
	packed []float64
	taken  []bool
	ways   []way

	best  []float64 // of sections, for each room
	which []int
	value []float64
}

// way is the width of a row and what it is worth.
type way struct {
	w     int
	value float64
}

// item is one part, its sizes rounded up to cells.
type item struct {
	kind   int
	turned bool
	l, w   int // across the sections' cuts and along them
	value  float64
	used   bool
}

// sectionCells is the most cells of a sheet in one direction.
const sectionCells = 400

// mostItems is how many parts a sheet is filled from: of more, some are left out by chance.
const mostItems = 300

// bySections fills a sheet of store s with parts that are worth value[k] each; the direction of the sections is
// along. A kind is turned where turned says so.
func (f *filler) bySections(s int, have []int, how manner) filled {
	q := &f.sections
	q.f, q.st, q.along = f, f.m.stores[s], how.along
	q.measure(have, how)
	out := filled{store: s}
	p := piece{Rect: q.st.in}
	room := q.long
	for room > 0 && !f.budget.Over() {
		size := q.section(room, how.dice)
		if size == 0 {
			break
		}
		r, used := q.build(&out, p, size)
		if used == 0 {
			break
		}
		p, room = r, q.cells(extentOf(r.Rect, q.along)+f.m.p.Kerf)
	}
	if p.Length > 0 && p.Width > 0 {
		out.free = append(out.free, p)
	}
	return out
}

func extentOf(r cut.Rect, d direction) length.Length {
	from, to := extent(r, d)
	return to - from
}

// cells rounds a room with one saw cut down.
func (q *sectioner) cells(room length.Length) int {
	return int(math.Floor(float64(room)*q.scale + 1e-6))
}

// measure lists the parts that are there.
func (q *sectioner) measure(have []int, how manner) {
	kf := q.f.m.p.Kerf
	in := q.st.in
	q.items = q.items[:0]
	longest := max(in.Length, in.Width) + kf
	unit := q.f.m.unit()
	q.scale = 1 / float64(unit)
	if float64(longest)*q.scale > sectionCells {
		q.scale = sectionCells / float64(longest)
	}
	q.long, q.wide = q.cells(extentOf(in, q.along)+kf), q.cells(extentOf(in, other(q.along))+kf)
	for k, n := range have {
		if n == 0 {
			continue
		}
		kd := q.f.m.kinds[k]
		turned := kd.turn && !q.st.grain && how.turned[k]
		l, w := kd.l, kd.w
		if turned {
			l, w = w, l
		}
		if q.along == acrossY {
			l, w = w, l
		}
		it := item{kind: k, turned: turned, l: q.up(l + kf), w: q.up(w + kf), value: how.value[k]}
		if it.l > q.long || it.w > q.wide {
			continue
		}
		for range min(n, (q.long/it.l)*(q.wide/it.w)) {
			q.items = append(q.items, it)
		}
	}
	for len(q.items) > mostItems {
		i := how.dice.N(len(q.items))
		q.items[i] = q.items[len(q.items)-1]
		q.items = q.items[:len(q.items)-1]
	}
	slices.SortStableFunc(q.items, func(a, b item) int { return a.w - b.w })
	if n := max(q.long, q.wide) + 1; len(q.table) < n {
		q.packed, q.table, q.best, q.which = make([]float64, n), make([]float64, n), make([]float64, n), make([]int, n)
	}
}

func (q *sectioner) up(size length.Length) int { return int(math.Ceil(float64(size)*q.scale - 1e-6)) }

// tables computes what a row of each width is worth at most, in a section of every size up to room.
func (q *sectioner) tables(room int) {
	q.widths, q.rows = q.widths[:0], q.rows[:0]
	t := q.table[:room+1]
	clear(t)
	for i := range q.items {
		it := &q.items[i]
		if it.used || it.l > room {
			continue
		}
		for a := room; a >= it.l; a-- {
			if v := t[a-it.l] + it.value; v > t[a] {
				t[a] = v
			}
		}
		if n := len(q.widths); n > 0 && q.widths[n-1] == it.w {
			copy(q.rows[n-1], t)
		} else {
			q.widths = append(q.widths, it.w)
			if n < cap(q.rows) {
				q.rows = q.rows[:n+1]
				q.rows[n] = append(q.rows[n][:0], t...)
			} else {
				q.rows = append(q.rows, slices.Clone(t))
			}
		}
	}
	q.f.budget.Spend(len(q.items)*room/64 + 1)
}

// worth is what rows of a section of the given size are worth at most within a width, and the width of one of them.
func (q *sectioner) worth(size, wide int) (float64, int) {
	q.worthwhile(size, wide)
	if len(q.ways) == 0 {
		return 0, 0
	}
	t := q.packed[:wide+1]
	clear(t[:q.ways[0].w])
	for b := q.ways[0].w; b <= wide; b++ {
		best := t[b-1]
		for _, r := range q.ways {
			if r.w > b {
				break
			}
			if v := r.value + t[b-r.w]; v > best {
				best = v
			}
		}
		t[b] = best
	}
	q.f.budget.Spend(wide*len(q.ways)/64 + 1)
	return t[wide], q.widest(wide)
}

// worthwhile lists the rows of a section that are worth more than any narrower one.
func (q *sectioner) worthwhile(size, wide int) {
	q.ways = q.ways[:0]
	best := 0.0
	for i, w := range q.widths {
		if w > wide {
			break
		}
		if v := q.rows[i][size]; v > best {
			best = v
			q.ways = append(q.ways, way{w, v})
		}
	}
}

// widest is the widest row of the best filling that worth has found.
func (q *sectioner) widest(wide int) (widest int) {
	t := q.packed
	for b := wide; b >= q.ways[0].w; {
		if t[b] <= t[b-1] {
			b--
			continue
		}
		for _, r := range q.ways {
			if r.w <= b && r.value+t[b-r.w] >= t[b] {
				widest = max(widest, r.w)
				b -= r.w
				break
			}
		}
	}
	return widest
}

// section chooses the size of the next section: one of those that fill the room best.
func (q *sectioner) section(room int, dice *cut.Dice) int {
	q.tables(room)
	if len(q.widths) == 0 {
		return 0
	}
	if q.f.m.p.Stages == 2 {
		return room
	}
	sizes := q.candidates(room, dice)
	q.value = q.value[:0]
	for _, s := range sizes {
		v, _ := q.worth(s, q.wide)
		q.value = append(q.value, v)
	}
	value, best, which := q.value, q.best, q.which
	for a := 1; a <= room; a++ {
		best[a], which[a] = best[a-1], -1
		for i, s := range sizes {
			if s <= a && best[a-s]+value[i] > best[a] {
				best[a], which[a] = best[a-s]+value[i], i
			}
		}
	}
	pick, rate := 0, -1.0
	for a := room; a > 0; {
		i := which[a]
		if i < 0 {
			a--
			continue
		}
		if v := value[i] * (1 + 0.2*dice.Share()); v > rate {
			pick, rate = sizes[i], v
		}
		a -= sizes[i]
	}
	return pick
}

// mostSections is how many sizes of a section are tried.
const mostSections = 10

// candidates are sizes of sections: those of parts, of two parts, and all the room.
func (q *sectioner) candidates(room int, dice *cut.Dice) []int {
	seen := make([]bool, room+1)
	seen[room] = true
	out := []int{room}
	add := func(s int) {
		if s <= room && !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	n := len(q.items)
	for i := dice.N(n); n > 0 && len(out) < mostSections*2/3; n-- {
		i = (i + 1) % len(q.items)
		if !q.items[i].used {
			add(q.items[i].l)
		}
	}
	for range mostSections / 2 {
		a, b := q.items[dice.N(len(q.items))], q.items[dice.N(len(q.items))]
		if !a.used && !b.used && len(out) < mostSections {
			add(a.l + b.l)
		}
	}
	return out
}

// build fills one section at the near end of p, row after row. It returns what is left of p, and how many parts
// were placed.
func (q *sectioner) build(out *filled, p piece, size int) (rest piece, placed int) {
	var rows [][]int
	wide, deepest := q.wide, length.Length(0)
	for wide > 0 {
		q.tables(size)
		v, w := q.worth(size, wide)
		if v == 0 || w == 0 {
			break
		}
		row := q.row(size, w)
		if len(row) == 0 {
			break
		}
		rows = append(rows, row)
		placed += len(row)
		widest, deep := 0, length.Length(0)
		for _, i := range row {
			widest = max(widest, q.items[i].w)
			l, _ := q.true(q.items[i])
			deep += l + q.f.m.p.Kerf
		}
		deepest = max(deepest, deep-q.f.m.p.Kerf)
		wide -= widest
	}
	if placed == 0 {
		return p, 0
	}
	if q.f.m.p.Stages == 2 { // rows of parts are two stages: the section is the sheet
		deepest = extentOf(p.Rect, q.along)
	}
	section, rest := p.near(q.along, deepest, q.f.m.p.Kerf)
	for _, row := range rows {
		q.place(out, &section, row)
	}
	if section.Length > 0 && section.Width > 0 {
		out.free = append(out.free, section)
	}
	return rest, placed
}

// true is the size of a part across the sections' cuts and along them.
func (q *sectioner) true(it item) (l, w length.Length) {
	kd := q.f.m.kinds[it.kind]
	if it.turned == (q.along == acrossX) {
		return kd.w, kd.l
	}
	return kd.l, kd.w
}

// row takes the most valuable parts that lie in a row.
func (q *sectioner) row(size, wide int) (row []int) {
	t := q.table[:size+1]
	clear(t)
	if need := len(q.items) * (size + 1); len(q.taken) < need {
		q.taken = make([]bool, need)
	}
	last := 0
	for i := range q.items {
		it := &q.items[i]
		if it.w > wide {
			break
		}
		last = i + 1
		take := q.taken[i*(size+1) : (i+1)*(size+1)]
		clear(take)
		if it.used {
			continue
		}
		for a := size; a >= it.l; a-- {
			if v := t[a-it.l] + it.value; v > t[a] {
				t[a], take[a] = v, true
			}
		}
	}
	for i, a := last-1, size; i >= 0; i-- {
		if q.taken[i*(size+1)+a] {
			row = append(row, i)
			q.items[i].used = true
			a -= q.items[i].l
		}
	}
	return row
}

// place lays the parts of a row at the near end of a section and takes it off.
func (q *sectioner) place(out *filled, section *piece, row []int) {
	widest := length.Length(0)
	for _, i := range row {
		_, w := q.true(q.items[i])
		widest = max(widest, w)
	}
	var strip piece
	strip, *section = section.near(other(q.along), widest, q.f.m.p.Kerf)
	for _, i := range row {
		it := q.items[i]
		l, w := q.true(it)
		if q.along == acrossY {
			l, w = w, l
		}
		r := cut.Rect{X: strip.X, Y: strip.Y, Length: l, Width: w}
		at, _ := q.true(it)
		var own piece
		own, strip = strip.near(q.along, at, q.f.m.p.Kerf)
		free, spare := own.divide(r, other(q.along), q.f.m.p.Stages, q.f.m.p.Kerf)
		out.free = append(append(out.free, free...), spare...)
		out.parts = append(out.parts, placed{it.kind, it.turned, r})
		out.value += q.f.m.value(it.kind)
	}
	if strip.Length > 0 && strip.Width > 0 {
		out.free = append(out.free, strip)
	}
}
