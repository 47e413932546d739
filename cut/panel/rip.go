package panel

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// piece is a range of y of a segment that strips can be ripped from.
type piece struct {
	seg  segment
	y    cut.Stretch
	void []cut.Stretch // voids of a character strip, that no rip may go through
}

// strip is one strip as it is ripped.
type strip struct {
	seg   segment
	at    length.Length // y
	width length.Length
}

// glued is the panels made and what is missing.
type glued struct {
	panels  [][]panelStrips // by kind
	missing []length.Length // net width, by kind
}

// panelStrips is one panel with its strips; none when it could not be made.
type panelStrips struct {
	made
	strips []strip
}

// made returns how much net width of whole panels was made of each kind, by panel.
func (g glued) made() [][]made {
	out := make([][]made, len(g.panels))
	for t, ps := range g.panels {
		for _, p := range ps {
			if len(p.strips) > 0 {
				out[t] = append(out[t], p.made)
			}
		}
	}
	return out
}

// rip rips the segments into the strips of panels, drops the segments that nothing was taken from, and
// reckons the layout.
func (s *search) rip(cutUp [][]segment) *layout {
	l := &layout{segments: make([][]segment, len(cutUp))}
	l.glue.panels = make([][]panelStrips, len(s.m.kinds))
	l.glue.missing = make([]length.Length, len(s.m.kinds))
	used := map[segment]bool{}
	for t := range s.m.kinds {
		s.ripKind(t, cutUp, l, used)
	}
	for k, segs := range cutUp {
		for _, g := range segs {
			if used[g] {
				l.segments[k] = append(l.segments[k], g)
			}
		}
		l.cost += s.m.cost(k, l.segments[k])
	}
	return l
}

// ripTries is how many orders of panels and pieces are tried before a kind is said to come out short.
const ripTries = 24

// ripKind glues the panels of one kind, in several orders until all are made; the order that leaves least
// undone is taken.
func (s *search) ripKind(t int, cutUp [][]segment, l *layout, used map[segment]bool) {
	pool := s.pieces(t, cutUp)
	best := s.m.glueAll(pool, s.m.kinds[t].panels)
	if best.short > 0 && len(pool) > 0 {
		lined, steps, ok := s.m.lineUp(pool, s.m.kinds[t].panels)
		if s.budget.Spend(1 + steps/8); ok {
			best = lined
		}
	}
	for range ripTries {
		if best.short == 0 || len(pool) == 0 {
			break
		}
		s.budget.Spend(1 + len(pool)*len(s.m.kinds[t].panels)/8)
		panels := slices.Clone(s.m.kinds[t].panels)
		s.shuffle(len(pool), func(i, j int) { pool[i], pool[j] = pool[j], pool[i] })
		s.shuffle(len(panels), func(i, j int) { panels[i], panels[j] = panels[j], panels[i] })
		if g := s.m.glueAll(pool, panels); g.short < best.short {
			best = g
		}
	}
	l.glue.panels[t], l.glue.missing[t] = best.panels, best.missing
	l.short += best.short
	for _, q := range best.panels {
		l.strips += len(q.strips)
		for _, st := range q.strips {
			used[st.seg] = true
		}
	}
}

// shuffle swaps n things into a random order.
func (s *search) shuffle(n int, swap func(i, j int)) {
	for i := n - 1; i > 0; i-- {
		swap(i, s.dice.N(i+1))
	}
}

// gluing is the panels of one kind, made in one order.
type gluing struct {
	panels  []panelStrips
	missing length.Length // net width that would have made the others
	short   length.Length // net width of the panels not made
}

func (m *model) glueAll(pool []piece, panels []made) (g gluing) {
	for _, q := range panels {
		strips, rest, got := m.glue(pool, q.width)
		if got < q.width {
			g.missing += q.width - got
			g.short += q.width
			strips = nil
		} else {
			pool = rest
		}
		g.panels = append(g.panels, panelStrips{q, strips})
	}
	return g
}

// pieces returns the free ranges of all segments of kind t.
func (s *search) pieces(t int, cutUp [][]segment) (pool []piece) {
	for k, segs := range cutUp {
		b := s.m.boards[k]
		for _, g := range segs {
			if g.kind != t {
				continue
			}
			void := s.m.voids(b, t, g.at)
			for _, y := range s.m.clear(b, s.m.kinds[t], g.at) {
				if s.m.netOf(y.To-y.From) > 0 {
					pool = append(pool, piece{g, y, void})
				}
			}
		}
	}
	return pool
}

// voids returns the ranges of y that rips of a segment must keep off.
func (m *model) voids(b *board, t int, x length.Length) (out []cut.Stretch) {
	kd := m.kinds[t]
	if kd.show != cut.Character {
		return nil
	}
	for _, d := range b.Defects {
		if d.Kind == cut.Void && d.X < x+kd.length && d.X+d.Length > x && !m.forbids(kd, d, x) {
			out = append(out, d.Across())
		}
	}
	slices.SortFunc(out, func(a, b cut.Stretch) int { return cmp.Compare(a.From, b.From) })
	return merged(out)
}

// glue takes strips for one panel from the pool, until what is missing can come from one range: then from
// the range that loses least by it. It returns the pool without what was taken.
func (m *model) glue(pool []piece, want length.Length) (strips []strip, rest []piece, got length.Length) {
	rest = slices.Clone(pool)
	for got < want && len(rest) > 0 {
		i := m.pickPiece(rest, want-got)
		pc := rest[i]
		rest = slices.Delete(rest, i, i+1)
		taken, end, net := m.ripPiece(pc, want-got)
		strips = append(strips, taken...)
		got += net
		if pc.y.From = end; m.netOf(pc.y.To-pc.y.From) > 0 {
			rest = append(rest, pc)
		}
	}
	return strips, rest, got
}

// pickPiece returns the range that loses least when what is missing comes from it; where none is wide
// enough, the first one.
func (m *model) pickPiece(pool []piece, missing length.Length) int {
	best, lost := 0, length.Length(-1)
	for i, pc := range pool {
		net := m.netOf(pc.y.To - pc.y.From)
		if net < missing {
			continue
		}
		if v := m.lostBy(pc, net, missing); lost < 0 || v < lost {
			best, lost = i, v
		}
	}
	return best
}

// lostBy is the net width that is lost when a range that yields net is ripped for less: what is left of it
// yields the rest, less a saw cut and a joint, or nothing where it is too narrow.
func (m *model) lostBy(pc piece, net, missing length.Length) length.Length {
	n := length.Length(1)
	if most := m.p.Strip.Most; most > 0 {
		n = max(1, (missing+most-m.p.Joint()-1)/(most-m.p.Joint()))
	}
	taken := max(missing+n*m.p.Joint(), n*m.p.Strip.Least) + n*m.p.Kerf
	return net - missing - m.netOf(pc.y.To-pc.y.From-taken)
}

// ripPiece rips strips of at most the missing net width from a range, from its low side, and returns
// where the rest begins and the net width gained, which may be more when a strip can't be narrower.
func (m *model) ripPiece(pc piece, missing length.Length) (out []strip, end, net length.Length) {
	p := m.p
	allowed := cut.Span{Least: max(p.Strip.Least, p.Joint()+1), Most: p.Strip.Most}
	y := pc.y.From
	for net < missing {
		n, most := m.strips(pc.y.To - y)
		if n == 0 {
			return out, pc.y.To, net
		}
		width := m.nextWidth(pc.y.To-y, n, most, missing-net)
		at, w := offVoids(pc.void, y, width, pc.y.To, allowed)
		if w == 0 {
			y = at
			continue
		}
		out = append(out, strip{pc.seg, at, w})
		net += w - p.Joint()
		y = at + w + p.Kerf
	}
	return out, min(y, pc.y.To), net
}

// nextWidth returns the ripped width of the next strip out of a range that n strips could yield the net
// width most of: strips share what is missing evenly, or the whole range where it yields less.
func (m *model) nextWidth(width, n, most, missing length.Length) length.Length {
	p := m.p
	all := most + n*p.Joint()
	if missing < most {
		n = 1
		if p.Strip.Most > 0 {
			n = (missing + p.Strip.Most - p.Joint() - 1) / (p.Strip.Most - p.Joint())
		}
		all = missing + n*p.Joint()
	}
	w := max((all+n-1)/n, p.Strip.Least)
	if p.Strip.Most > 0 {
		w = min(w, p.Strip.Most)
	}
	return min(w, width)
}

// offVoids shifts or changes a strip at y of width w so that no void lies across its edges. A width of 0
// says that nothing fits at y; at is then where to go on. Voids are apart from each other and ascending.
func offVoids(voids []cut.Stretch, y, w, to length.Length, allowed cut.Span) (at, width length.Length) {
	for _, v := range voids {
		if v.From < y && v.To > y {
			return v.To, 0
		}
		if v.From >= y+w || v.To <= y+w {
			continue
		}
		switch grown := v.To - y; {
		case v.To <= to && (allowed.Most == 0 || grown <= allowed.Most):
			return offVoids(voids, y, grown, to, allowed)
		case v.From-y >= allowed.Least && v.From > y:
			return y, v.From - y
		default:
			return max(v.From, y+1), 0
		}
	}
	return y, w
}

// merged joins spans that touch or overlap; they must be ascending.
func merged(spans []cut.Stretch) (out []cut.Stretch) {
	for _, s := range spans {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}
