package offcut

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// filling puts strips into what falls off.
type filling struct {
	w      *work
	strips [][]strip // by board; its lists are the plan's until they change
	sites  [][]site  // by board; what strips may come out of
	last   swap      // what is made needless: of its board nothing from there on is used
}

// fill begins with a plan without the strips of a swap, and takes from the boards that are open then.
func (w *work) fill(pl *plan, s swap) *filling {
	f := &filling{w: w, strips: slices.Clone(pl.boards), sites: make([][]site, len(w.p.Boards)), last: s}
	for k, strips := range pl.boards {
		switch {
		case k == s.board:
			f.strips[k] = slices.DeleteFunc(slices.Clone(strips), func(st strip) bool { return st.X >= s.from })
			if s.from > 0 {
				f.look(k)
			}
		case len(strips) > 0 || k == s.opens || s.opens == every:
			f.sites[k] = w.falls(pl, k, s.at)
		}
	}
	return f
}

// look finds what falls off board k.
func (f *filling) look(k int) {
	f.sites[k] = f.w.sites(k, f.strips[k], f.last.at)
	if k != f.last.board {
		return
	}
	for i := range f.sites[k] {
		s := &f.sites[k][i]
		s.Length = min(s.Length, f.last.from-f.w.p.Kerf-s.X)
	}
	f.sites[k] = slices.DeleteFunc(f.sites[k], func(s site) bool { return s.Length <= 0 })
}

// spot is a place in a site where strips of a panel can begin.
type spot struct {
	site  site
	x     length.Length
	clear []cut.Stretch
	net   length.Length // what it yields, no more than is missing
}

// make makes what is missing of a panel; it reports false where there is not enough, or the budget is spent.
func (f *filling) make(g int, missing length.Length) bool {
	for missing > 0 {
		s, ok := f.best(g, missing)
		if !ok {
			return false
		}
		for _, c := range f.w.rip(s, g, missing) {
			f.strips[c.board] = append(slices.Clip(f.strips[c.board]), c)
			missing -= f.w.net(c)
		}
		f.look(s.site.board)
	}
	return true
}

// best returns the spot from which all that is missing comes with the smallest piece of wood; where there is none, the
// one that yields most.
func (f *filling) best(g int, missing length.Length) (best spot, ok bool) {
	for k := range f.sites {
		if len(f.sites[k]) == 0 || !f.serves(k, g) {
			continue
		}
		for _, s := range f.sites[k] {
			xs := f.w.starts(s, g)
			if !f.w.budget.Spend(1 + len(xs)) {
				return best, false
			}
			for _, x := range xs {
				c := spot{site: s, x: x, clear: f.w.clear(s.Rect, k, g, x)}
				if c.net = f.w.yield(c.clear, missing); c.net > 0 && (!ok || c.better(best, missing)) {
					best, ok = c, true
				}
			}
		}
	}
	return best, ok
}

func (c spot) better(o spot, missing length.Length) bool {
	all, other := c.net >= missing, o.net >= missing
	switch {
	case all != other:
		return all
	case !all && c.net != o.net:
		return c.net > o.net
	}
	return c.site.wood() < o.site.wood()
}

func (s site) wood() float64 { return s.Length.MM() * s.Width.MM() }

// serves reports whether board k may give strips to a panel: it is thick enough, and of the log that a panel of mates
// has strips of already.
func (f *filling) serves(k, g int) bool {
	p := f.w.p
	q := p.Panels[f.w.glued[g].panel]
	if q.Thickness > p.Boards[k].Thickness {
		return false
	}
	if !q.Mates {
		return true
	}
	for _, strips := range f.strips {
		for _, s := range strips {
			if s.glued == g && !f.w.mates(s.board, k) {
				return false
			}
		}
	}
	return true
}

// mates reports whether two boards are of one log.
func (w *work) mates(k, l int) bool {
	word := w.p.Boards[k].Mate
	return k == l || word != "" && word == w.p.Boards[l].Mate
}

// starts lists where strips of a panel may begin in a site: at its ends and beside defects.
func (w *work) starts(s site, g int) (out []length.Length) {
	l := w.glued[g].length
	from, to := s.X, s.X+s.Length-l
	if from > to || s.cuts >= mostCuts && from != to {
		return nil
	}
	add := func(x length.Length) {
		if x >= from && x <= to && !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	add(from)
	for _, d := range w.p.Boards[s.board].Defects {
		add(d.X + d.Length)
		add(d.X - l)
		for _, r := range w.p.Panels[w.glued[g].panel].KeepOut {
			add(d.X + d.Length - w.p.EndTrim - r.X)
		}
	}
	add(to)
	return out
}

// yield is the net width that ranges give, no more than is missing unless a strip can't be so narrow.
func (w *work) yield(clear []cut.Stretch, missing length.Length) (net length.Length) {
	for _, c := range clear {
		if net >= missing {
			break
		}
		_, v := w.count(c.To-c.From, missing-net)
		net += v
	}
	return net
}

// rip rips strips of one width from a spot: from the narrowest range that gives all, otherwise from the widest on.
func (w *work) rip(s spot, g int, missing length.Length) (out []strip) {
	ranges := slices.Clone(s.clear)
	slices.SortStableFunc(ranges, func(a, b cut.Stretch) int { return cmp.Compare(b.To-b.From, a.To-a.From) })
	for missing > 0 && len(ranges) > 0 {
		pick := 0
		for i, r := range ranges {
			if _, v := w.count(r.To-r.From, missing); v >= missing {
				pick = i
			}
		}
		r := ranges[pick]
		ranges = slices.Delete(ranges, pick, pick+1)
		n, net := w.count(r.To-r.From, missing)
		y := r.From
		for _, own := range w.shares(n, net, r.To-r.From) {
			out = append(out, strip{g, s.site.board, cut.Rect{X: s.x, Y: y, Length: w.glued[g].length, Width: own}})
			y += own + w.p.Kerf
			missing -= own - w.p.Joint()
		}
	}
	return out
}

// shares divides a net width among n strips out of a range and returns their ripped widths: all alike, a nanometre
// wider together than was asked where it does not divide; where that does not fit, some a nanometre less.
func (w *work) shares(n, net, width length.Length) []length.Length {
	out := make([]length.Length, n)
	each, more := net/n+w.p.Joint(), net%n
	alike := each + min(more, 1)
	fits := n*alike+(n-1)*w.p.Kerf <= width && (w.p.Strip.Most == 0 || alike <= w.p.Strip.Most)
	for i := range n {
		switch {
		case fits:
			out[i] = alike
		case i < more:
			out[i] = each + 1
		default:
			out[i] = each
		}
	}
	return out
}
