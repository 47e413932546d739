package panel

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// sawnStrip is one strip on its board.
type sawnStrip struct {
	tag string // of the panel
	cut.Rect
}

// sawn is one board as it is sawn: segments from left to right, each with its strips from the low side up.
type sawn struct {
	board    int
	segments [][]sawnStrip
}

// sawnBoards lists the boards used, in the order of the problem.
func (m *model) sawnBoards(l *layout, panels []cut.GluedPanel) (out []sawn) {
	strips := map[string][]sawnStrip{}
	for _, g := range panels {
		for _, s := range g.Strips {
			r := cut.Rect{X: s.At[0], Y: s.At[1], Length: s.Size[0], Width: s.Size[1]}
			strips[s.Board] = append(strips[s.Board], sawnStrip{g.Tag, r})
		}
	}
	for k, segs := range l.segments {
		if len(segs) == 0 {
			continue
		}
		all := strips[m.boards[k].Tag]
		slices.SortFunc(all, func(a, b sawnStrip) int {
			return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
		})
		out = append(out, sawn{k, slices.Collect(byX(all))})
	}
	return out
}

// byX groups strips, sorted, by the place of their segment.
func byX(all []sawnStrip) func(func([]sawnStrip) bool) {
	return func(yield func([]sawnStrip) bool) {
		for from := 0; from < len(all); {
			to := from
			for to < len(all) && all[to].X == all[from].X {
				to++
			}
			if !yield(all[from:to]) {
				return
			}
			from = to
		}
	}
}

// usedBoard describes one board and adds up what is lost of it.
func (m *model) usedBoard(s sawn, w *cut.Waste) cut.Used {
	b := m.boards[s.board]
	u := cut.Used{Stock: b.Tag}
	t := boardTotals{rest: b.Length.MM() * b.Width.MM()}
	x := length.Length(0)
	for _, seg := range s.segments {
		t.crosscuts(m, b, x, seg[0].X)
		x = seg[0].X + seg[0].Length
		if x < b.Length {
			t.take(&t.kerf, min(m.p.Kerf, b.Length-x), b.Width)
		}
		x = min(x+m.p.Kerf, b.Length)
		t.segment(m, b, seg, &u)
	}
	if tail := b.Length - x; tail > 0 && tail >= m.p.MinTail {
		u.Left = []cut.Offcut{{At: [2]length.Length{x}, Size: [2]length.Length{tail, b.Width}}}
		t.take(&t.useful, tail, b.Width)
	}
	t.defects(b, u)
	w.Kerf += t.kerf
	w.Trim += t.trim
	w.Defect += t.defect
	w.LeftoverUseful += t.useful
	w.LeftoverLost += t.rest
	return u
}

// boardTotals splits the area of one board; rest is what nothing else has taken.
type boardTotals struct{ kerf, trim, defect, useful, rest float64 }

func (t *boardTotals) take(from *float64, l, w length.Length) {
	a := min(l.MM()*w.MM(), t.rest)
	*from += a
	t.rest -= a
}

// crosscuts takes the saw cut at the near end of a segment where a stretch is skipped before it.
func (t *boardTotals) crosscuts(m *model, b *board, from, to length.Length) {
	if to > from {
		t.take(&t.kerf, min(m.p.Kerf, to-from), b.Width)
	}
}

// segment takes strips, rips and edge trims of one segment.
func (t *boardTotals) segment(m *model, b *board, seg []sawnStrip, u *cut.Used) {
	y := length.Length(0)
	var part float64
	trim := b.from + (b.Width - b.to)
	for _, st := range seg {
		u.Parts = append(u.Parts, cut.Placed{
			Tag: st.tag,
			At:  [2]length.Length{st.X, st.Y}, Size: [2]length.Length{st.Length, st.Width},
		})
		t.take(&part, st.Length, st.Width)
		cuts := min(m.p.Kerf, st.Y-y)
		if y > 0 {
			cuts = min(2*m.p.Kerf, st.Y-y)
		}
		t.take(&t.kerf, cuts, st.Length)
		y = st.Y + st.Width
	}
	last := min(m.p.Kerf, b.Width-y)
	t.take(&t.kerf, last, seg[0].Length)
	lost := min(trim, b.Width) - min(m.p.Kerf, b.from)
	if b.Width-y >= b.Width-b.to {
		lost -= min(last, b.Width-b.to)
	}
	t.take(&t.trim, max(0, lost), seg[0].Length)
}

// defects takes the defects that lie in what is lost.
func (t *boardTotals) defects(b *board, u cut.Used) {
	for _, d := range b.Defects {
		free := []cut.Rect{clip(d.Rect, cut.Rect{Y: b.from, Length: b.Length, Width: b.to - b.from})}
		for _, p := range u.Parts {
			free = outside(free, cut.Rect{X: p.At[0], Y: p.At[1], Length: p.Size[0], Width: p.Size[1]})
		}
		for _, o := range u.Left {
			free = outside(free, cut.Rect{X: o.At[0], Y: o.At[1], Length: o.Size[0], Width: o.Size[1]})
		}
		for _, r := range free {
			t.take(&t.defect, max(0, r.Length), max(0, r.Width))
		}
	}
}

func clip(r, in cut.Rect) cut.Rect {
	x, y := max(r.X, in.X), max(r.Y, in.Y)
	return cut.Rect{
		X: x, Y: y, Length: min(r.X+r.Length, in.X+in.Length) - x,
		Width: min(r.Y+r.Width, in.Y+in.Width) - y,
	}
}

// outside returns the parts of the rectangles that lie outside hole.
func outside(rects []cut.Rect, hole cut.Rect) (out []cut.Rect) {
	for _, r := range rects {
		if !r.Overlaps(hole) {
			out = append(out, r)
			continue
		}
		in := clip(hole, r)
		for _, p := range []cut.Rect{
			{X: r.X, Y: r.Y, Length: in.X - r.X, Width: r.Width},
			{X: in.X + in.Length, Y: r.Y, Length: r.X + r.Length - in.X - in.Length, Width: r.Width},
			{X: in.X, Y: r.Y, Length: in.Length, Width: in.Y - r.Y},
			{X: in.X, Y: in.Y + in.Width, Length: in.Length, Width: r.Y + r.Width - in.Y - in.Width},
		} {
			if p.Length > 0 && p.Width > 0 {
				out = append(out, p)
			}
		}
	}
	return out
}
