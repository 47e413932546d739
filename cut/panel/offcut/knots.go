package offcut

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// crossed counts the knots that an edge of a strip goes through: a joint there would have to hold on a knot. Open holes
// are never crossed, and sap glues as well as any wood.
func (w *work) crossed(pl *plan) (n int) {
	for _, s := range pl.strips {
		for _, y := range []length.Length{s.Y, s.Y + s.Width} {
			n += w.knotsAt(s, y)
		}
	}
	return n
}

// knotsAt counts the knots of a strip's stretch that a line along it at y goes through.
func (w *work) knotsAt(s strip, y length.Length) (n int) {
	for _, d := range w.p.Boards[s.board].Defects {
		if d.Kind == cut.Knot && d.X < s.X+s.Length && d.X+d.Length > s.X && d.Y < y && y < d.Y+d.Width {
			n++
		}
	}
	return n
}

// besideKnots moves rips off knots as far as the ranges allow it: the rip between two strips of one panel, which changes
// nothing but their widths, or strips within what is left of a range.
func (w *work) besideKnots(pl *plan) *plan {
	if w.crossed(pl) == 0 {
		return pl
	}
	for _, kind := range w.kinds() {
		if !w.look(pl) {
			return pl
		}
		for _, b := range w.bins(pl, kind) {
			if len(b.strips) == 0 || !w.budget.Spend(len(b.strips)) {
				continue
			}
			pl = w.simpler(pl, w.ripBeside(pl, b))
		}
	}
	return pl
}

// ripBeside moves the rips of one bin, from its low side up; nil where that gains nothing.
func (w *work) ripBeside(pl *plan, b bin) *plan {
	strips := slices.Clone(pl.strips)
	moved := false
	for n, i := range b.strips {
		end := b.Y + b.Width // where the strip may end at most
		low := b.Y
		if n > 0 {
			before := strips[b.strips[n-1]]
			low = before.Y + before.Width + w.p.Kerf
		}
		if n+1 < len(b.strips) {
			end = strips[b.strips[n+1]].Y - w.p.Kerf
		}
		if to, ok := w.shifted(strips[i], low, end); ok {
			strips[i], moved = to, true
		}
		if n > 0 {
			j := b.strips[n-1]
			if x, y, ok := w.parted(strips[j], strips[i]); ok {
				strips[j], strips[i], moved = x, y, true
			}
		}
	}
	if !moved {
		return nil
	}
	return w.with(strips)
}

// shifted moves a strip between low and end to where its edges go through fewer knots, as little as possible.
func (w *work) shifted(s strip, low, end length.Length) (strip, bool) {
	edges := func(y length.Length) int { return w.knotsAt(s, y) + w.knotsAt(s, y+s.Width) }
	best, least := s.Y, edges(s.Y)
	for _, k := range w.besides(s) {
		for _, y := range []length.Length{k, k - s.Width} {
			if y < low || y+s.Width > end {
				continue
			}
			if n := edges(y); n < least || n == least && far(y, s.Y) < far(best, s.Y) {
				best, least = y, n
			}
		}
	}
	moved := best != s.Y
	s.Y = best
	return s, moved
}

// parted moves the rip between two strips of one panel that lie next to each other to where it goes through fewer knots.
func (w *work) parted(a, b strip) (strip, strip, bool) {
	kerf := w.p.Kerf
	at := a.Y + a.Width
	if a.glued != b.glued || b.Y != at+kerf {
		return a, b, false
	}
	edges := func(y length.Length) int { return w.knotsAt(a, y) + w.knotsAt(b, y+kerf) }
	best, least := at, edges(at)
	for _, k := range w.besides(a) {
		for _, y := range []length.Length{k, k - kerf} {
			if !w.ripped(y-a.Y) || !w.ripped(b.Y+b.Width-y-kerf) {
				continue
			}
			if n := edges(y); n < least || n == least && far(y, at) < far(best, at) {
				best, least = y, n
			}
		}
	}
	top := b.Y + b.Width
	a.Width = best - a.Y
	b.Y = best + kerf
	b.Width = top - b.Y
	return a, b, best != at
}

// ripped reports whether a strip may have this width.
func (w *work) ripped(width length.Length) bool {
	return width >= w.least && (w.p.Strip.Most == 0 || width <= w.p.Strip.Most)
}

// besides lists the sides of the knots of a strip's stretch.
func (w *work) besides(s strip) (out []length.Length) {
	for _, d := range w.p.Boards[s.board].Defects {
		if d.Kind == cut.Knot && d.X < s.X+s.Length && d.X+d.Length > s.X {
			out = append(out, d.Y, d.Y+d.Width)
		}
	}
	return out
}

func far(a, b length.Length) length.Length { return max(a-b, b-a) }
