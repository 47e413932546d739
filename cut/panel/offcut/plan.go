package offcut

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// work is a problem with what is asked of it again and again.
type work struct {
	p      *cut.PanelProblem
	budget *cut.Budget
	board  map[string]int // by tag
	glued  []glued
	least  length.Length // the narrowest strip that is ripped
}

// glued is one panel, every piece for itself.
type glued struct {
	panel  int // in the problem
	length length.Length
	width  length.Length // net
	before []cut.Strip   // as the search laid it out; none when it could not be made
}

// strip is one strip where it lies on its board.
type strip struct {
	glued, board int
	cut.Rect
}

// plan is a layout: its strips, those of each panel together and in the order in which they were found. It is never
// changed once it is made.
type plan struct {
	strips []strip
	boards [][]strip            // the same by board
	ends   []length.Length      // where the last strip of each board ends; 0 where there is none
	sites  map[looking][][]site // what falls off each board in use; filled in when it is asked for
	cost   float64
}

func newWork(p *cut.PanelProblem, a *cut.Answer, b *cut.Budget) *work {
	w := &work{p: p, budget: b, board: map[string]int{}, least: max(p.Strip.Least, p.Joint()+1)}
	for k, bd := range p.Boards {
		w.board[bd.Tag] = k
	}
	panel := map[string]int{}
	for i, q := range p.Panels {
		panel[q.Tag] = i
	}
	add := func(tag string, strips []cut.Strip) {
		i := panel[tag]
		w.glued = append(w.glued, glued{i, p.BlankLength(i), p.BlankWidth(i), strips})
	}
	for _, g := range a.Panels {
		add(g.Tag, g.Strips)
	}
	for _, n := range a.NotPlaced {
		add(n.Tag, nil)
	}
	slices.SortStableFunc(w.glued, func(a, b glued) int { return cmp.Compare(a.panel, b.panel) })
	return w
}

// read turns an answer into a plan.
func (w *work) read(a *cut.Answer) *plan {
	var strips []strip
	for g := range w.glued {
		for _, s := range w.glued[g].before {
			r := cut.Rect{X: s.At[0], Y: s.At[1], Length: s.Size[0], Width: s.Size[1]}
			strips = append(strips, strip{g, w.board[s.Board], r})
		}
	}
	return w.with(strips)
}

// of returns the strips of one panel.
func (pl *plan) of(g int) (out []strip) {
	for _, s := range pl.strips {
		if s.glued == g {
			out = append(out, s)
		}
	}
	return out
}

// with returns the plan of some strips.
func (w *work) with(strips []strip) *plan {
	n := len(w.p.Boards)
	pl := &plan{strips: slices.Clone(strips), boards: make([][]strip, n), ends: make([]length.Length, n), sites: map[looking][][]site{}}
	slices.SortStableFunc(pl.strips, func(a, b strip) int { return cmp.Compare(a.glued, b.glued) })
	for _, s := range pl.strips {
		pl.boards[s.board] = append(pl.boards[s.board], s)
		pl.ends[s.board] = max(pl.ends[s.board], s.X+s.Length)
	}
	for k, end := range pl.ends {
		if end > 0 {
			pl.cost += w.costTo(k, end)
		}
	}
	return pl
}

// costTo is what board k costs when its last strip ends at end, less what its tail is worth.
func (w *work) costTo(k int, end length.Length) float64 {
	return w.p.Cost(k) - w.p.TailCredit(k, w.tail(k, end))
}

// falls lists what falls off board k; of a board not opened that is all of it.
func (w *work) falls(pl *plan, k int, at looking) []site {
	sites := pl.sites[at]
	if sites == nil {
		sites = make([][]site, len(pl.boards))
		pl.sites[at] = sites
	}
	if sites[k] == nil {
		sites[k] = w.sites(k, pl.boards[k], at)
	}
	return sites[k]
}

// tail is how much is left of board k behind the saw cut at end.
func (w *work) tail(k int, end length.Length) length.Length {
	return w.p.Boards[k].Length - end - w.p.Kerf
}

// net is the net width of a strip.
func (w *work) net(s strip) length.Length { return s.Width - w.p.Joint() }
