package offcut

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// site is a rectangle of wood that comes off the saw with no strip in it.
type site struct {
	board int
	cut.Rect
	cuts int // by the how manieth kind of cut it comes off: 1 crosscut, 2 rip, 3 crosscut, 4 rip
}

// mostCuts is how often the direction of cuts may change: crosscut, rip, crosscut, rip.
const mostCuts = 4

// along reports whether the cuts of one kind go along the board.
func along(cuts int) bool { return cuts%2 == 0 }

// reach is the extent of r across the direction of cuts.
func reach(r cut.Rect, cuts int) (from, to length.Length) {
	if along(cuts) {
		return r.Y, r.Y + r.Width
	}
	return r.X, r.X + r.Length
}

// between is the part of r from, up to across the direction of cuts.
func between(r cut.Rect, cuts int, from, to length.Length) cut.Rect {
	if along(cuts) {
		r.Y, r.Width = from, to-from
	} else {
		r.X, r.Length = from, to-from
	}
	return r
}

// group is strips that cuts of one kind leave together.
type group struct {
	strips   []strip
	from, to length.Length
}

// groups divides strips wherever a saw cut fits between them.
func (w *work) groups(strips []strip, cuts int) (out []group) {
	all := slices.Clone(strips)
	slices.SortStableFunc(all, func(a, b strip) int {
		x, _ := reach(a.Rect, cuts)
		y, _ := reach(b.Rect, cuts)
		return cmp.Compare(x, y)
	})
	for _, s := range all {
		from, to := reach(s.Rect, cuts)
		n := len(out)
		if n == 0 || from < out[n-1].to || from < out[n-1].to+w.p.Kerf {
			if n > 0 {
				out[n-1].strips = append(out[n-1].strips, s)
				out[n-1].to = max(out[n-1].to, to)
				continue
			}
		}
		out = append(out, group{[]strip{s}, from, to})
	}
	return out
}

// usable is the part of board k that its rough edges leave.
func (w *work) usable(k int) cut.Rect {
	from, to := w.p.Usable(k)
	return cut.Rect{Y: from, Length: w.p.Boards[k].Length, Width: to - from}
}

// looking is what is looked at as falling off a board.
type looking struct {
	long  bool // the board is ripped in all its length before anything is crosscut, as far as its strips come off so
	tails bool // a tail that is worth something counts, too
}

// sites lists what falls off board k.
func (w *work) sites(k int, strips []strip, at looking) (out []site) {
	whole := w.usable(k)
	if len(strips) == 0 {
		return []site{{k, whole, 1}}
	}
	end := length.Length(0)
	for _, s := range strips {
		end = max(end, s.X+s.Length)
	}
	if !at.tails && w.p.TailCredit(k, w.tail(k, end)) > 0 {
		whole.Length = end
	}
	first := 1
	if at.long && w.sawable(whole, strips, 2, mostCuts) {
		first = 2
	}
	out = w.off(nil, k, whole, strips, first)
	return slices.DeleteFunc(out, func(s site) bool { return s.Width < w.least })
}

// off adds what falls off a piece when its strips are cut from it.
func (w *work) off(out []site, k int, piece cut.Rect, strips []strip, cuts int) []site {
	if cuts > mostCuts {
		return out
	}
	at, end := reach(piece, cuts)
	for _, g := range w.groups(strips, cuts) {
		if to := g.from - w.p.Kerf; to > at {
			out = append(out, site{k, between(piece, cuts, at, to), cuts})
		}
		out = w.off(out, k, between(piece, cuts, g.from, g.to), g.strips, cuts+1)
		at = g.to + w.p.Kerf
	}
	if at < end {
		out = append(out, site{k, between(piece, cuts, at, end), cuts})
	}
	return out
}

// sawable reports whether the strips of a board can be cut out of the piece by the kinds of cuts from cuts on to most.
func (w *work) sawable(piece cut.Rect, strips []strip, cuts, most int) bool {
	if len(strips) == 1 && strips[0].Rect == piece {
		return true
	}
	if cuts > most {
		return false
	}
	for _, g := range w.groups(strips, cuts) {
		if !w.sawable(between(piece, cuts, g.from, g.to), g.strips, cuts+1, most) {
			return false
		}
	}
	return true
}

// clear returns the ranges of y of a site in which a strip of the panel that begins at x holds nothing it may not hold,
// a saw cut apart. Open holes are kept out of every strip here, so that no joint can meet one.
func (w *work) clear(at cut.Rect, k, g int, x length.Length) []cut.Stretch {
	q := w.p.Panels[w.glued[g].panel]
	l := w.glued[g].length
	free := []cut.Stretch{at.Across()}
	for _, d := range w.p.Boards[k].Defects {
		if d.X < x+l && d.X+d.Length > x && w.forbids(q, d, x) {
			free = cut.Without(free, d.Across())
		}
	}
	for i := 1; i < len(free); i++ {
		free[i].From = max(free[i].From, free[i-1].To+w.p.Kerf)
	}
	return slices.DeleteFunc(free, func(s cut.Stretch) bool { return s.To-s.From < w.least })
}

// forbids reports whether a strip of q that begins at x may not hold d, which it meets. Where a keep-out is, no defect
// may lie in the whole width, so that strips can change places.
func (w *work) forbids(q cut.Panel, d cut.Defect, x length.Length) bool {
	if d.Kind == cut.Void || !q.Show.Takes(d, false) {
		return true
	}
	for _, r := range q.KeepOut {
		if from := x + w.p.EndTrim + r.X; d.X < from+r.Length && d.X+d.Length > from {
			return true
		}
	}
	return false
}

// count returns how many strips a range of the given width is best ripped into for the net width missing, and what
// they have together: no more than is missing, unless a strip can't be so narrow. It is 0 where no strip fits.
func (w *work) count(width, missing length.Length) (n, net length.Length) {
	most, joint, kerf := w.p.Strip.Most, w.p.Joint(), w.p.Kerf
	fit := (width + kerf) / (w.least + kerf)
	if fit < 1 {
		return 0, 0
	}
	full := length.Length(0) // strips of the greatest width
	if most > 0 {
		full = (width + kerf) / (most + kerf)
	}
	for _, c := range []length.Length{max(1, full), full + 1} { // each further one only loses kerf and joints
		if v := w.together(width, c) - c*joint; c <= fit && v > net {
			n, net = c, v
		}
	}
	if net <= missing {
		return n, net
	}
	if most > 0 {
		n = min(n, max(1, (missing+most-joint-1)/(most-joint)))
	}
	return n, max(missing, n*(w.least-joint))
}

// together is the width of n strips out of a range of the given width.
func (w *work) together(width, n length.Length) length.Length {
	r := width - (n-1)*w.p.Kerf
	if w.p.Strip.Most > 0 {
		r = min(r, n*w.p.Strip.Most)
	}
	return r
}
