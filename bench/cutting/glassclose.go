package main

import "slices"

// close ends row and section behind a cell as near as flaws allow and offers the front; false where they can't be
// ended. A cell with a cut inside fills its row.
func (b *glassBeam) close(n front, c cell, fills bool, flaws []flaw) bool {
	g := b.run.g
	n.cell, n.end = c, c.at.x1
	if !n.closeRow(fills, flaws) {
		return false
	}
	n.fixed = n.fixed || fills
	n.far = max(n.far, n.end)
	if !n.closeSection(flaws) {
		return false
	}
	n.take(g, c.pane)
	if c.over != none {
		n.take(g, c.over)
	}
	b.add(&n)
	return true
}

// take counts a pane as cut.
func (n *front) take(g *glass, pane int) {
	p := g.panes[pane]
	n.held += p.l * p.w
	n.count++
	n.same += g.marks[pane]
}

// closeRow finds the least upper end of the present row that its cells allow.
func (n *front) closeRow(fills bool, flaws []flaw) bool {
	row := n.y1 // as it was
	n.top = max(n.top, n.high)
	switch {
	case n.open == inRow && n.fixed && (n.top > row || fills && n.high != row), fills && n.high < n.top:
		return false
	case n.open == inRow && n.fixed:
		return n.endsRow(row, flaws)
	case fills:
		return n.endsRow(n.high, flaws)
	}
	if n.endsRow(n.top, flaws) || n.endsRow(n.top+leastWaste, flaws) {
		return true
	}
	for y := n.top; ; {
		next := 0
		for _, f := range flaws {
			if f.y1 > y && (next == 0 || f.y1 < next) {
				next = f.y1
			}
		}
		if y = next; y == 0 || y > plateWidth {
			return false
		}
		if n.endsRow(y, flaws) {
			return true
		}
	}
}

// endsRow ends the row at y where the plate and all cells of the row allow it.
func (n *front) endsRow(y int, flaws []flaw) bool {
	if y > plateWidth || plateWidth-y > 0 && plateWidth-y < leastWaste {
		return false
	}
	n.y1 = y
	for p := n; ; p = p.before {
		if !p.trimmed(n.y0, y, flaws) {
			return false
		}
		if p.open != inRow || y == p.before.y1 {
			return true // the cells before came out of a row as wide
		}
	}
}

// trimmed reports whether a cell comes out of a row by cuts that meet no flaw and leave no sliver. A row with a cell that
// is cut inside ends with it, so that such a cell leaves nothing.
func (c *cell) trimmed(y0, y1 int, flaws []flaw) bool {
	if rest := y1 - c.high; rest > 0 && (rest < leastWaste || cutsAcross(c.high, c.at.x0, c.at.x1, flaws)) {
		return false
	}
	return !cutsAlong(c.at.x0, y0, y1, flaws) && !cutsAlong(c.at.x1, y0, y1, flaws)
}

// closeSection finds the least end of the present section that its rows allow.
func (n *front) closeSection(flaws []flaw) bool {
	least := max(n.x0+leastFirst, n.far)
	if n.open < newSection && n.x1 == least { // the rows before end so already
		return n.rowEnds(n.end, n.y1, least, flaws) || n.endsSection(least+leastWaste, flaws) || n.behindFlaws(least, flaws)
	}
	return n.endsSection(least, flaws) || n.endsSection(least+leastWaste, flaws) || n.behindFlaws(least, flaws)
}

// behindFlaws ends the section behind the first flaw beyond least that allows it.
func (n *front) behindFlaws(least int, flaws []flaw) bool {
	for x := nextFlaw(least, flaws); x > 0; x = nextFlaw(x, flaws) {
		if n.endsSection(x, flaws) {
			return true
		}
	}
	return false
}

// endsSection ends the section at x where the plate and all its rows allow it.
func (n *front) endsSection(x int, flaws []flaw) bool {
	if x > plateLength || x-n.x0 > mostFirst || plateLength-x > 0 && plateLength-x < leastWaste || cutsAlong(x, 0, plateWidth, flaws) {
		return false
	}
	for r := n; r != nil; r = r.under {
		if !n.rowEnds(r.end, r.y1, x, flaws) {
			return false
		}
	}
	n.x1 = x
	return true
}

// rowEnds reports whether a row that ends at y and whose last cell ends at end comes out of a section up to x.
func (n *front) rowEnds(end, y, x int, flaws []flaw) bool {
	return (x == end || x-end >= leastWaste) && !cutsAcross(y, n.x0, x, flaws)
}

// cutsAlong reports whether a cut at x from y0 to y1 goes through a flaw, cutsAcross the same for one at y.
func cutsAlong(x, y0, y1 int, flaws []flaw) bool {
	return slices.ContainsFunc(flaws, func(f flaw) bool { return f.x0 < x && x < f.x1 && f.y0 < y1 && y0 < f.y1 })
}

func cutsAcross(y, x0, x1 int, flaws []flaw) bool {
	return slices.ContainsFunc(flaws, func(f flaw) bool { return f.y0 < y && y < f.y1 && f.x0 < x1 && x0 < f.x1 })
}
