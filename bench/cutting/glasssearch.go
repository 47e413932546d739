package main

import (
	"cmp"
	"slices"
	"time"
)

// The search puts pane after pane behind the front: into the present row, a new row, a new section or a new plate.
// Of all fronts with the same number of panes the best by what they enclose over what they hold are kept, and the
// whole is done again with twice as many until the time is over (Libralesso and Fontan, "An anytime tree search
// algorithm for the 2018 ROADEF/EURO challenge glass cutting problem", arXiv 2004.00963: there a memory bounded A*;
// here a beam that grows).

// opening says what a pane begins.
type opening int

const (
	inRow opening = iota
	newRow
	newSection
	newPlate
)

// front is a state of the search: the panes cut so far, and where the next may come.
type front struct {
	before *front
	pane   int
	open   opening
	at     flaw // the rectangle of the pane

	plate  int
	x0, x1 int // the present section
	y0, y1 int // the present row
	end    int // of the last pane in the row
	top    int // of the highest pane in the row, or the least a row may be wide
	turn   []uint16
	held   int // area of panes
	count  int
	rank   float64
}

// glassManner is a way to compare fronts: how fine the levels of area are, and how much few, large panes count.
type glassManner struct {
	levels int // for each pane; 0 makes a level of each number of panes
	large  bool
}

var glassManners = []glassManner{{2, false}, {0, true}, {6, false}}

// search returns the best front that holds all panes; the first, narrow search is always ended.
func (g *glass) search(until time.Time) (best *front) {
	for wide := 4; wide <= 1<<20; wide *= 2 {
		for _, how := range glassManners {
			f := g.beam(wide, how, until, best == nil)
			if f != nil && (best == nil || f.total() < best.total()) {
				best = f
			}
			if time.Now().After(until) {
				return best
			}
		}
	}
	return best
}

// beam searches level by level, keeping so many fronts; a level is what holds about the same area, so that one waste
// compares with another. nil when the time is over and it may end.
func (g *glass) beam(wide int, how glassManner, until time.Time, mustEnd bool) (best *front) {
	levels := make([][]*front, (how.levels+1)*len(g.panes)+1)
	levels[0] = []*front{{plate: -1, turn: make([]uint16, len(g.stacks)), pane: -1}}
	for i, level := range levels {
		for _, f := range kept(level, wide) {
			for _, n := range g.after(f, nil) {
				if n.count == len(g.panes) {
					if best == nil || n.total() < best.total() {
						best = n
					}
					continue
				}
				at := max(i+1, n.held*how.levels*len(g.panes)/g.area)
				n.rank = n.promise(how.large)
				levels[at] = append(levels[at], n)
			}
			if !mustEnd && time.Now().After(until) {
				return best
			}
		}
		levels[i] = nil
	}
	return best
}

// kept are the best fronts, alike ones once.
func kept(all []*front, wide int) (out []*front) {
	slices.SortStableFunc(all, func(a, b *front) int { return cmp.Compare(a.rank, b.rank) })
	type place struct{ plate, x0, x1, y0, y1, end, held int }
	seen := map[place][]*front{}
	for _, f := range all {
		p := place{f.plate, f.x0, f.x1, f.y0, f.y1, f.end, f.held}
		if slices.ContainsFunc(seen[p], func(o *front) bool { return slices.Equal(o.turn, f.turn) }) {
			continue
		}
		seen[p] = append(seen[p], f)
		if out = append(out, f); len(out) == wide {
			break
		}
	}
	return out
}

// after appends the fronts that one more pane makes.
func (g *glass) after(f *front, out []*front) []*front {
	for s, stack := range g.stacks {
		if int(f.turn[s]) == len(stack) || g.twin(f, s) {
			continue
		}
		p := g.panes[stack[f.turn[s]]]
		placed := false
		for open := inRow; open <= newPlate; open++ {
			if f.plate < 0 && open != newPlate || open == newPlate && placed {
				continue
			}
			for _, size := range [][2]int{{p.l, p.w}, {p.w, p.l}} {
				if n := g.put(f, stack[f.turn[s]], s, open, size[0], size[1]); n != nil {
					out = append(out, n)
					placed = true
				}
				if p.l == p.w {
					break
				}
			}
		}
	}
	return out
}

// twin reports whether a stack before holds just the same panes still: one of them is enough to try.
func (g *glass) twin(f *front, s int) bool {
	for o := g.like[s]; o >= 0; o = g.like[o] {
		if f.turn[o] == f.turn[s] {
			return true
		}
	}
	return false
}

// put lays a pane at the first place behind the front that flaws allow, nil where there is none.
func (g *glass) put(f *front, pane, stack int, open opening, l, w int) *front {
	n := *f
	n.before, n.pane, n.open = f, pane, open
	switch open {
	case newPlate:
		n.plate, n.x0, n.y0 = f.plate+1, 0, 0
	case newSection:
		n.x0, n.y0 = f.x1, 0
	case newRow:
		n.y0 = f.y1
	}
	if open != inRow {
		n.end = n.x0
	}
	if n.y0+w > plateWidth || n.x0+l > plateLength {
		return nil
	}
	flaws := g.flaws[n.plate]
	from := n.end
	for _, x := range places(from, flaws) {
		if n.at = (flaw{x, n.y0, x + l, n.y0 + w}); x+l > plateLength || x+l-n.x0 > mostFirst {
			return nil
		}
		n.end = x + l
		if !hit(n.at, flaws) && g.closeRow(&n, flaws) && g.closeSection(&n, flaws) {
			n.turn = slices.Clone(f.turn)
			n.turn[stack]++
			n.held += l * w
			n.count++
			return &n
		}
	}
	return nil
}

// promise says how good a front is; the less the better. The second form is that of Libralesso and Fontan's guide
// that prefers large panes first (from memory).
func (f *front) promise(large bool) float64 {
	wasted := 1 - float64(f.held)/float64(f.enclosed())
	if large {
		return (0.1 + wasted) * float64(f.count) / float64(f.held)
	}
	return wasted
}

// places are where a pane may begin: at the front, or behind a flaw with waste between.
func places(from int, flaws []flaw) []int {
	out := []int{from}
	for _, f := range flaws {
		if f.x1 > from {
			out = append(out, max(f.x1, from+leastWaste))
		}
	}
	slices.Sort(out[1:])
	return out
}

// closeRow finds the least upper end of the present row that its panes allow.
func (g *glass) closeRow(n *front, flaws []flaw) bool {
	top := max(n.y0+leastSecond, n.at.y1)
	if n.open == inRow {
		top = max(top, n.before.top)
	}
	n.top = top
	for _, y := range ends(top, flaws, func(f flaw) int { return f.y1 }) {
		if n.y1 = y; y > plateWidth {
			return false
		}
		if plateWidth-y > 0 && plateWidth-y < leastWaste {
			continue
		}
		if n.rowParts(flaws) {
			return true
		}
	}
	return false
}

// rowParts reports whether all panes of the present row come out of it.
func (n *front) rowParts(flaws []flaw) bool {
	for p := n; ; p = p.before {
		if !trimmed(p, n.y0, n.y1, flaws) {
			return false
		}
		if p.open != inRow || n.y1 == p.before.y1 {
			return true // the panes before came out of a row as wide
		}
	}
}

// ends are the least end, one with waste behind, and those of flaws.
func ends(least int, flaws []flaw, of func(flaw) int) []int {
	out := make([]int, 0, 16)
	out = append(out, least, least+leastWaste)
	for _, f := range flaws {
		if e := of(f); e > least {
			out = append(out, e)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// trimmed reports whether a pane comes out of a row by cuts that meet no flaw and leave no sliver.
func trimmed(p *front, y0, y1 int, flaws []flaw) bool {
	rest := y1 - p.at.y1
	if rest > 0 && rest < leastWaste {
		return false
	}
	if rest > 0 && cutsAcross(p.at.y1, p.at.x0, p.at.x1, flaws) {
		return false
	}
	return !cutsAlong(p.at.x0, y0, y1, flaws) && !cutsAlong(p.at.x1, y0, y1, flaws)
}

// closeSection finds the least end of the present section that its rows allow.
func (g *glass) closeSection(n *front, flaws []flaw) bool {
	type end struct{ x, y int }
	rows := append(make([]end, 0, 16), end{n.end, n.y1})
	for f := n; f.open == inRow || f.open == newRow; f = f.before {
		if f.open == newRow {
			rows = append(rows, end{f.before.end, f.before.y1})
		}
	}
	least := n.x0 + leastFirst
	for _, r := range rows {
		least = max(least, r.x)
	}
	for _, x := range ends(least, flaws, func(f flaw) int { return f.x1 }) {
		if x > plateLength || x-n.x0 > mostFirst || plateLength-x > 0 && plateLength-x < leastWaste || cutsAlong(x, 0, plateWidth, flaws) {
			continue
		}
		n.x1 = x
		if !slices.ContainsFunc(rows, func(r end) bool {
			return x > r.x && x-r.x < leastWaste || cutsAcross(r.y, n.x0, x, flaws)
		}) {
			return true
		}
	}
	return false
}

// enclosed is the area before the front.
func (f *front) enclosed() int {
	return (f.plate*plateLength+f.x0)*plateWidth + f.y0*(f.x1-f.x0) + (f.y1-f.y0)*(f.end-f.x0)
}

// total is the area up to the last section's end: what a layout that ends here takes.
func (f *front) total() int { return (f.plate*plateLength + f.x1) * plateWidth }

func hit(r flaw, flaws []flaw) bool {
	return slices.ContainsFunc(flaws, func(f flaw) bool { return f.x0 < r.x1 && r.x0 < f.x1 && f.y0 < r.y1 && r.y0 < f.y1 })
}

// cutsAlong reports whether a cut at x from y0 to y1 goes through a flaw, cutsAcross the same for one at y.
func cutsAlong(x, y0, y1 int, flaws []flaw) bool {
	return slices.ContainsFunc(flaws, func(f flaw) bool { return f.x0 < x && x < f.x1 && f.y0 < y1 && y0 < f.y1 })
}

func cutsAcross(y, x0, x1 int, flaws []flaw) bool {
	return slices.ContainsFunc(flaws, func(f flaw) bool { return f.y0 < y && y < f.y1 && f.x0 < x1 && x0 < f.x1 })
}
