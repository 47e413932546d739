package offcut

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// bin is a range of a stretch of a board that strips of one kind of panel lie in, or could.
type bin struct {
	board int
	cut.Rect
	strips []int // of the plan, from the low side up
}

// used is the width that the strips of a bin take with the saw cuts between them, when they have the given widths.
func (b *bin) used(widths []length.Length, kerf length.Length) (sum length.Length) {
	for _, i := range b.strips {
		sum += widths[i] + kerf
	}
	return sum - kerf
}

// fewer keeps rips off knots, glues the panels of a plan with fewer strips and rips them at fewer settings of the fence;
// the plan itself where that is not possible. Where the problem does not allow recutting, the cost stays.
func (w *work) fewer(pl *plan) *plan {
	best := pl
	for _, kind := range w.kinds() {
		best = w.simpler(best, w.reglue(best, kind))
	}
	all := best
	for _, kind := range w.kinds() {
		for _, g := range kind {
			if one := w.level(all, kind, g); one != nil {
				all = one
			}
		}
	}
	best = w.simpler(best, all) // one panel alone may gain nothing while others share its settings
	for _, kind := range w.kinds() {
		for _, g := range kind {
			best = w.simpler(best, w.level(best, kind, g))
		}
	}
	best = w.besideKnots(best)
	if best != pl && len(best.strips) == len(pl.strips) && w.crossed(best) == w.crossed(pl) && w.settings(best) >= w.settings(pl) {
		return pl
	}
	return best
}

// simpler returns the plan b if it costs no more than a, can be sawn, and has fewer edges through knots, or as many and
// fewer strips, or as many of those in fewer widths; otherwise a.
func (w *work) simpler(a, b *plan) *plan {
	if b == nil || b.cost > a.cost+costEps || !w.p.Recut && math.Abs(b.cost-a.cost) > costEps {
		return a
	}
	if cmp.Or(cmp.Compare(w.crossed(b), w.crossed(a)), cmp.Compare(len(b.strips), len(a.strips)), cmp.Compare(b.widths(), a.widths())) >= 0 {
		return a
	}
	most := 2
	if w.p.Recut {
		most = mostCuts
	}
	for k, strips := range b.boards {
		if len(strips) > 0 && !slices.Equal(strips, a.boards[k]) && !w.sawable(w.usable(k), strips, 1, most) {
			return a
		}
	}
	return b
}

// widths counts the widths that strips are ripped to.
func (pl *plan) widths() int {
	all := make([]length.Length, len(pl.strips))
	for i, s := range pl.strips {
		all[i] = s.Width
	}
	slices.Sort(all)
	return len(slices.Compact(all))
}

// settings counts the settings of stop and fence that a plan asks for, those for what is cut off and not used too.
func (w *work) settings(pl *plan) int {
	s := sawing{w: w, stops: map[stop]bool{}}
	for k, strips := range pl.boards {
		if len(strips) > 0 {
			s.board(k, strips)
		}
	}
	return len(s.stops)
}

// kinds groups the panels whose strips are interchangeable. One that wants mates stands alone.
func (w *work) kinds() (out [][]int) {
	same := func(g, h int) bool {
		a, b := w.p.Panels[w.glued[g].panel], w.p.Panels[w.glued[h].panel]
		return a.Length == b.Length && a.Show == b.Show && a.Thickness == b.Thickness && !a.Mates && !b.Mates &&
			slices.EqualFunc(a.KeepOut, b.KeepOut, func(r, s cut.Rect) bool { return r.X == s.X && r.Length == s.Length })
	}
	for g := range w.glued {
		if i := slices.IndexFunc(out, func(kind []int) bool { return same(kind[0], g) }); i >= 0 {
			out[i] = append(out[i], g)
		} else {
			out = append(out, []int{g})
		}
	}
	return out
}

// look spends what looking at all strips beside each other costs.
func (w *work) look(pl *plan) bool { return w.budget.Spend(1 + len(pl.strips)*len(pl.strips)/64) }

// bins lists the ranges that the strips of some panels of one kind have to themselves, with the strips in them. fixed are
// the strips that lie in none, as they hold an open hole.
func (w *work) bins(pl *plan, kind []int) (out []bin) {
	type place struct {
		board int
		x     length.Length
	}
	seen := map[place]bool{}
	for _, s := range pl.strips {
		at := place{s.board, s.X}
		if !slices.Contains(kind, s.glued) || s.Length != w.glued[s.glued].length || seen[at] {
			continue
		}
		seen[at] = true
		for _, r := range w.room(pl, kind, s) {
			b := bin{board: s.board, Rect: cut.Rect{X: s.X, Y: r.From, Length: s.Length, Width: r.To - r.From}}
			for i, o := range pl.strips {
				if o.board == s.board && o.X == s.X && o.Length == s.Length && slices.Contains(kind, o.glued) && o.Y >= r.From && o.Y+o.Width <= r.To {
					b.strips = append(b.strips, i)
				}
			}
			slices.SortFunc(b.strips, func(i, j int) int { return cmp.Compare(pl.strips[i].Y, pl.strips[j].Y) })
			out = append(out, b)
		}
	}
	return out
}

// room returns the ranges of y of the stretch of strip s that hold no strip of other panels and nothing forbidden.
func (w *work) room(pl *plan, kind []int, s strip) []cut.Stretch {
	free := w.clear(w.usable(s.board), s.board, s.glued, s.X)
	kerf := w.p.Kerf
	for _, o := range pl.strips {
		own := slices.Contains(kind, o.glued) && o.X == s.X && o.Length == s.Length && !w.holey(o)
		if own || o.board != s.board || o.X >= s.X+s.Length+kerf || o.X+o.Length+kerf <= s.X {
			continue
		}
		free = cut.Without(free, cut.Stretch{From: o.Y - kerf, To: o.Y + o.Width + kerf})
	}
	return slices.DeleteFunc(free, func(f cut.Stretch) bool { return f.To-f.From < w.least })
}

// holey reports whether a strip holds an open hole: it stays where it is.
func (w *work) holey(s strip) bool {
	return slices.ContainsFunc(w.p.Boards[s.board].Defects, func(d cut.Defect) bool { return d.Kind == cut.Void && d.Overlaps(s.Rect) })
}

// glueTries is how many orders of panels are tried.
const glueTries = 12

// reglue glues the panels of one kind anew out of the ranges that their strips have; nil where that is not possible.
func (w *work) reglue(pl *plan, kind []int) *plan {
	if !w.look(pl) {
		return nil
	}
	made := slices.DeleteFunc(slices.Clone(kind), func(g int) bool { return len(pl.of(g)) == 0 })
	bins := w.bins(pl, made)
	var keep []strip
	now := 0
	for _, s := range pl.strips {
		switch {
		case !slices.Contains(made, s.glued):
			keep = append(keep, s)
		case w.holey(s) || s.Length != w.glued[s.glued].length:
			return nil
		default:
			now++
		}
	}
	if now <= len(made) {
		return nil
	}
	slices.SortStableFunc(made, func(a, b int) int { return cmp.Compare(w.glued[b].width, w.glued[a].width) })
	var best []strip
	dice := cut.NewDice(1)
	for range glueTries {
		if !w.budget.Spend(len(bins) * len(made)) {
			break
		}
		if got, ok := w.glue(bins, made); ok && len(got) < now && (best == nil || len(got) < len(best)) {
			best = got
		}
		for i := len(made) - 1; i > 0; i-- {
			j := dice.N(i + 1)
			made[i], made[j] = made[j], made[i]
		}
	}
	if best == nil {
		return nil
	}
	return w.with(append(keep, best...))
}

// glue makes panels out of ranges: each from the range that gives all of it with the fewest strips, of these the
// narrowest; where none does, it begins with the range that gives most.
func (w *work) glue(bins []bin, panels []int) (out []strip, ok bool) {
	from := make([]length.Length, len(bins))
	for i := range bins {
		from[i] = bins[i].Y
	}
	for _, g := range panels {
		for missing := w.glued[g].width; missing > 0; {
			pick, best, most := -1, length.Length(0), length.Length(0)
			for i, b := range bins {
				n, net := w.count(b.Y+b.Width-from[i], missing)
				switch {
				case n == 0:
				case pick < 0, net >= missing && most < missing, net < missing && net > most,
					net >= missing && most >= missing && (n < best || n == best && b.Y+b.Width-from[i] < bins[pick].Y+bins[pick].Width-from[pick]):
					pick, best, most = i, n, net
				}
			}
			if pick < 0 {
				return nil, false
			}
			b := bins[pick]
			for _, own := range w.shares(best, most, b.Y+b.Width-from[pick]) {
				out = append(out, strip{g, b.board, cut.Rect{X: b.X, Y: from[pick], Length: b.Length, Width: own}})
				from[pick] += own + w.p.Kerf
				missing -= own - w.p.Joint()
			}
		}
	}
	return out, true
}

// level gives the strips of a panel one width, as far as the ranges that they share with others of their kind allow it;
// nil where that is not possible.
func (w *work) level(pl *plan, kind []int, g int) *plan {
	if !w.look(pl) {
		return nil
	}
	bins := w.bins(pl, kind)
	widths := make([]length.Length, len(pl.strips))
	for i, s := range pl.strips {
		widths[i] = s.Width
	}
	loose, rest := w.loose(pl, bins, g)
	if len(loose) < 2 {
		return nil
	}
	for len(loose) > 0 {
		n := length.Length(len(loose))
		each := max((rest+n-1)/n+w.p.Joint(), w.least)
		if most := w.p.Strip.Most; most > 0 && each > most {
			return nil
		}
		for i := range loose {
			widths[i] = each
		}
		tight := w.tight(bins, widths)
		if tight == nil {
			return w.restacked(pl, bins, widths)
		}
		fixed, ok := w.fix(tight, widths, loose, each)
		if !ok {
			return nil
		}
		rest -= fixed
	}
	if rest > 0 {
		return nil
	}
	return w.restacked(pl, bins, widths)
}

// loose lists the strips of a panel that lie in bins, and the net width that they have together, less what the panel has
// too much.
func (w *work) loose(pl *plan, bins []bin, g int) (loose map[int]bool, net length.Length) {
	loose = map[int]bool{}
	net = -w.spare(pl, g)
	for _, b := range bins {
		for _, i := range b.strips {
			if pl.strips[i].glued == g {
				loose[i] = true
				net += w.net(pl.strips[i])
			}
		}
	}
	return loose, net
}

// fix gives the loose strips of a bin that is too tight for so wide ones what room there is, and takes them out of the
// loose ones. It returns their net width, and false where the room is too small.
func (w *work) fix(tight *bin, widths []length.Length, loose map[int]bool, each length.Length) (net length.Length, ok bool) {
	mine := slices.DeleteFunc(slices.Clone(tight.strips), func(i int) bool { return !loose[i] })
	m := length.Length(len(mine))
	others := tight.used(widths, w.p.Kerf) - m*each
	own := (tight.Width - others) / max(1, m)
	if m == 0 || own < w.least {
		return 0, false
	}
	for _, i := range mine {
		widths[i] = own
		delete(loose, i)
		net += own - w.p.Joint()
	}
	return net, true
}

// tight returns the first bin that is too narrow for its strips; nil for none.
func (w *work) tight(bins []bin, widths []length.Length) *bin {
	for i := range bins {
		if len(bins[i].strips) > 0 && bins[i].used(widths, w.p.Kerf) > bins[i].Width {
			return &bins[i]
		}
	}
	return nil
}

// restacked is the plan with the strips of the bins in new widths, each bin's from its low side up.
func (w *work) restacked(pl *plan, bins []bin, widths []length.Length) *plan {
	strips := slices.Clone(pl.strips)
	for _, b := range bins {
		y := b.Y
		for _, i := range b.strips {
			strips[i].Y, strips[i].Width = y, widths[i]
			y += widths[i] + w.p.Kerf
		}
	}
	return w.with(strips)
}
