package offcut

import (
	"cmp"
	"slices"

	"rodwright/length"
)

// costEps is below any price step and above the rounding of sums.
const costEps = 1e-7

// order sorts panels by what is hard to find wood for: the longest first, then those of strict grades, then the widest;
// or, by turns, strict grades first.
func (w *work) order(panels []int, strictFirst bool) {
	slices.Sort(panels)
	grade := func(g int) int { return gradeOf(w.p.Panels[w.glued[g].panel].Show) }
	slices.SortStableFunc(panels, func(a, b int) int {
		x, y := w.glued[a], w.glued[b]
		long, strict := cmp.Compare(y.length, x.length), cmp.Compare(grade(a), grade(b))
		if strictFirst {
			long, strict = strict, long
		}
		return cmp.Or(long, strict, cmp.Compare(y.width, x.width))
	})
}

// makeMissing makes panels that the search had no segment for out of what falls off and of boards not opened yet.
func (w *work) makeMissing(pl *plan) *plan {
	for g := range w.glued {
		if len(w.glued[g].before) > 0 || w.budget.Over() {
			continue
		}
		for _, at := range w.lookings() {
			f := w.fill(pl, swap{board: -1, opens: every, at: at})
			if f.make(g, w.glued[g].width) {
				pl = w.with(slices.Concat(f.strips...))
				break
			}
		}
	}
	return pl
}

// swap is strips that may become needless: those of a board from a place on.
type swap struct {
	board  int
	from   length.Length
	opens  int     // a board that is opened instead; none or every
	saving float64 // what is saved at most
	at     looking // at the other boards
}

// Instead of the number of a board.
const (
	none  = -1
	every = -2
)

// free makes boards, and ends of boards that are worth keeping, needless one after the other: what saves most first.
func (w *work) free(pl *plan) *plan {
	for {
		better := w.freeOne(pl)
		if better == nil {
			return pl
		}
		pl = better
	}
}

// lookings lists the ways to look at boards, the simplest first. Where no tail is worth anything all of them count anyway.
func (w *work) lookings() []looking {
	if w.p.Salvage == 0 {
		return []looking{{}, {long: true}}
	}
	return []looking{{}, {tails: true}, {long: true}, {long: true, tails: true}}
}

func (w *work) freeOne(pl *plan) *plan {
	swaps := w.swaps(pl)
	for _, at := range w.lookings() {
		for _, strictFirst := range []bool{false, true} {
			for _, s := range swaps {
				if w.budget.Over() {
					return nil
				}
				s.at = at
				if to := w.without(pl, s, strictFirst); to != nil && to.cost < pl.cost-costEps {
					return to
				}
			}
		}
	}
	return nil
}

// swaps lists what could be saved, the most first.
func (w *work) swaps(pl *plan) (out []swap) {
	instead := w.instead(pl)
	for k, end := range pl.ends {
		if end == 0 {
			continue
		}
		now := w.costTo(k, end)
		out = append(out, swap{board: k, opens: none, saving: now})
		for _, l := range instead[:min(len(instead), mostInstead)] {
			out = append(out, swap{board: k, opens: l, saving: now - w.p.Cost(l)*(1-w.p.Salvage)})
		}
		if w.p.Salvage == 0 {
			continue
		}
		groups := w.groups(pl.boards[k], 1)
		for i := 1; i < len(groups); i++ {
			out = append(out, swap{board: k, from: groups[i].from, opens: none, saving: now - w.costTo(k, groups[i-1].to)})
		}
	}
	out = slices.DeleteFunc(out, func(s swap) bool { return s.saving <= costEps })
	slices.SortStableFunc(out, func(a, b swap) int { return cmp.Compare(b.saving, a.saving) })
	return out
}

// mostInstead bounds the boards that are tried instead of one.
const mostInstead = 6

// instead lists boards not opened yet, the cheapest first, no two alike.
func (w *work) instead(pl *plan) (out []int) {
	for l := range w.p.Boards {
		if pl.ends[l] == 0 {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(w.p.Cost(a), w.p.Cost(b)) })
	return slices.CompactFunc(out, func(k, l int) bool {
		return sameWood(w.p.Boards[k], w.p.Boards[l]) && w.p.Boards[k].Mate == w.p.Boards[l].Mate
	})
}

// without finds other wood for the strips that a swap makes needless; nil where there is not enough.
func (w *work) without(pl *plan, s swap, strictFirst bool) *plan {
	if !w.budget.Spend(1 + (len(pl.boards)+len(pl.strips))/8) {
		return nil
	}
	lost := map[int]length.Length{} // net width, by panel
	var panels []int
	for _, st := range pl.boards[s.board] {
		if st.X < s.from {
			continue
		}
		if lost[st.glued] == 0 {
			panels = append(panels, st.glued)
		}
		lost[st.glued] += w.net(st)
	}
	for g, net := range lost {
		lost[g] = net - w.spare(pl, g)
	}
	w.order(panels, strictFirst)
	f := w.fill(pl, s)
	for _, g := range panels {
		if !f.make(g, lost[g]) {
			return nil
		}
	}
	return w.with(slices.Concat(f.strips...))
}

// spare is by how much a panel is wider than it must be.
func (w *work) spare(pl *plan, g int) length.Length {
	d := -w.glued[g].width
	for _, s := range pl.strips {
		if s.glued == g {
			d += w.net(s)
		}
	}
	return d
}
