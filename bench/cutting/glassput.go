package main

import "slices"

// after offers the fronts that one more cell makes.
func (b *glassBeam) after(f *front) {
	g := b.run.g
	if f.turn == nil {
		f.turn = g.turns(f)
	}
	for s := range g.stacks {
		b.next[s] = g.next(f, s, 0)
	}
	for s, i := range b.next {
		if i == none || g.twin(f, s) {
			continue
		}
		p := g.panes[i]
		b.placed = false
		for open := inRow; open <= newPlate; open++ {
			if f.plate < 0 && open != newPlate || open == newPlate && b.placed {
				continue
			}
			b.put(f, i, open, p.l, p.w)
			if p.l != p.w {
				b.put(f, i, open, p.w, p.l)
			}
		}
	}
}

// next is the pane whose turn it is in a stack when so many more are cut.
func (g *glass) next(f *front, s, more int) int {
	if t := int(f.turn[s]) + more; t < len(g.stacks[s]) {
		return g.stacks[s][t]
	}
	return none
}

// turns counts the panes of each stack that are cut.
func (g *glass) turns(f *front) []uint16 {
	turn := slices.Clone(f.before.turn)
	turn[g.panes[f.pane].stack]++
	if f.over != none {
		turn[g.panes[f.over].stack]++
	}
	return turn
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

// put offers the cells with a pane below that lies so: alone, above a flaw, and with every other pane as long above it.
func (b *glassBeam) put(f *front, pane int, open opening, l, w int) {
	n := opened(f, open)
	n.pane, n.over = pane, none
	if n.y0+w > plateWidth || n.x0+l > plateLength {
		return
	}
	flaws := b.run.g.flaws[n.plate]
	b.first(&n, l, w, flaws)
	b.pairs(f, &n, l, w, flaws)
}

// opened is a front that begins what a cell begins; the rest is as before.
func opened(f *front, open opening) front {
	n := *f
	n.before, n.open, n.turn = f, open, nil
	switch open {
	case newPlate:
		n.plate, n.x0, n.y0, n.under = f.plate+1, 0, 0, nil
	case newSection:
		n.x0, n.y0, n.under = f.x1, 0, nil
	case newRow:
		n.y0, n.under = f.y1, f
	}
	if open != inRow {
		n.end, n.fixed, n.top = n.x0, false, n.y0+leastSecond
	}
	if open >= newSection {
		n.far = n.x0
	}
	return n
}

// pairs offers the cells with a second pane above the one of n.
func (b *glassBeam) pairs(f, n *front, l, w int, flaws []flaw) {
	g := b.run.g
	own := g.panes[n.pane].stack
	for s, i := range b.next {
		if s == own {
			i = g.next(f, s, 1)
		}
		if i == none {
			continue
		}
		p := g.panes[i]
		if p.l != l && p.w != l {
			continue
		}
		if h := w + p.l + p.w - l; n.y0+h <= plateWidth {
			two := *n
			two.over = i
			b.first(&two, l, h, flaws)
		}
	}
}

// first offers a cell at the first place behind the front that flaws allow; a single pane that a flaw is in the way of
// just at the front, above the flaw too.
func (b *glassBeam) first(n *front, l, h int, flaws []flaw) {
	from := n.end
	if !b.hopeful(n, from+l, n.y0+h, l*h) {
		b.placed = true
		return
	}
	for x := from; x+l <= plateLength && x+l-n.x0 <= mostFirst; {
		behind := hindrance(flaw{x, n.y0, x + l, n.y0 + h}, flaws)
		switch {
		case behind == 0:
			c := cell{n.pane, flaw{x, n.y0, x + l, n.y0 + h}, n.over, n.y0 + h}
			if n.over != none {
				p := b.run.g.panes[n.pane]
				c.at.y1 = n.y0 + p.l + p.w - l
			}
			if b.close(*n, c, n.over != none, flaws) {
				return
			}
			behind = nextFlaw(x, flaws)
		case x == from && n.over == none:
			if y, ok := above(n.y0, x, l, h, flaws); ok {
				b.close(*n, cell{n.pane, flaw{x, y, x + l, y + h}, none, y + h}, true, flaws)
			}
		}
		if behind == 0 {
			return
		}
		x = max(behind, from+leastWaste)
	}
}

// above is how high a pane lies just above the flaws that are in its way; false where the plate ends before.
func above(y0, x, l, w int, flaws []flaw) (y int, ok bool) {
	y = y0
	for again := true; again; {
		again = false
		for _, f := range flaws {
			if f.x0 < x+l && x < f.x1 && f.y0 < y+w && y < f.y1 {
				y, again = max(f.y1, y0+leastWaste), true
			}
		}
	}
	return y, y > y0 && y+w <= plateWidth
}

// hindrance is where the farthest of the flaws ends that a rectangle meets, 0 where it meets none.
func hindrance(r flaw, flaws []flaw) (end int) {
	for _, f := range flaws {
		if f.x0 < r.x1 && r.x0 < f.x1 && f.y0 < r.y1 && r.y0 < f.y1 {
			end = max(end, f.x1)
		}
	}
	return end
}

// nextFlaw is where the next flaw ends behind x, 0 where there is none.
func nextFlaw(x int, flaws []flaw) (end int) {
	for _, f := range flaws {
		if f.x1 > x && (end == 0 || f.x1 < end) {
			end = f.x1
		}
	}
	return end
}
