package main

import (
	"fmt"
	"slices"
)

// glassPlan is the cuts of a layout: plates of sections of rows of cells, each cell with one pane or two. What is no
// pane is waste.
type glassPlan struct{ plates [][]glassSection }

type glassSection struct {
	x0, x1 int
	rows   []glassRow
}

type glassRow struct {
	y0, y1 int
	cells  []glassCell
}

type glassCell struct {
	pane int
	at   flaw
	over int // a second pane above the first up to the end of the row, -1 for none
	end  int // where that ends
}

// plan reads the cuts off the fronts of a search.
func (f *front) plan() glassPlan {
	var chain []*front
	for ; f.before != nil; f = f.before {
		chain = append(chain, f)
	}
	slices.Reverse(chain)
	var p glassPlan
	for _, f := range chain {
		if f.open == newPlate {
			p.plates = append(p.plates, nil)
		}
		plate := &p.plates[len(p.plates)-1]
		if f.open >= newSection {
			*plate = append(*plate, glassSection{x0: f.x0})
		}
		section := &(*plate)[len(*plate)-1]
		if f.open >= newRow {
			section.rows = append(section.rows, glassRow{y0: f.y0})
		}
		row := &section.rows[len(section.rows)-1]
		row.cells = append(row.cells, glassCell{f.pane, f.at, f.over, f.high})
		section.x1, row.y1 = f.x1, f.y1
	}
	return p
}

// waste is what the challenge counts: all plates up to the last cut of the last, without the panes.
func (g *glass) waste(p glassPlan) int {
	last := p.plates[len(p.plates)-1]
	return ((len(p.plates)-1)*plateLength+last[len(last)-1].x1)*plateWidth - g.area
}

// glassCheck holds a layout against the rules of the challenge; it knows nothing of the search.
type glassCheck struct {
	g     *glass
	flaws []flaw
	next  []int
	bad   []string
}

// faults returns what is wrong with a layout.
func (g *glass) faults(p glassPlan) []string {
	c := &glassCheck{g: g, next: make([]int, len(g.stacks))}
	for i, plate := range p.plates {
		c.flaws = g.flaws[i]
		x := 0
		for _, s := range plate {
			c.section(s, x)
			x = s.x1
		}
		c.rest(plateLength-x, "behind the last section")
	}
	for s, n := range c.next {
		if n != len(g.stacks[s]) {
			c.add("%d of %d panes of stack %d are cut", n, len(g.stacks[s]), s)
		}
	}
	return c.bad
}

func (c *glassCheck) add(format string, args ...any) {
	c.bad = append(c.bad, fmt.Sprintf(format, args...))
}

// rest checks the width of a piece of waste.
func (c *glassCheck) rest(width int, where string) {
	if width < 0 || width > 0 && width < leastWaste {
		c.add("%d wide %s", width, where)
	}
}

// cut checks that no flaw is cut through, given the cut as a rectangle without width.
func (c *glassCheck) cut(x0, y0, x1, y1 int) {
	for _, f := range c.flaws {
		along := x0 == x1 && f.x0 < x0 && x0 < f.x1 && f.y0 < y1 && y0 < f.y1
		across := y0 == y1 && f.y0 < y0 && y0 < f.y1 && f.x0 < x1 && x0 < f.x1
		if along || across {
			c.add("a cut from %d, %d to %d, %d goes through a flaw", x0, y0, x1, y1)
		}
	}
}

func (c *glassCheck) section(s glassSection, x int) {
	if s.x0 != x || s.x1-s.x0 < leastFirst || s.x1-s.x0 > mostFirst || s.x1 > plateLength {
		c.add("section from %d to %d behind %d", s.x0, s.x1, x)
	}
	c.cut(s.x1, 0, s.x1, plateWidth)
	y := 0
	for _, r := range s.rows {
		if r.y0 != y || r.y1-r.y0 < leastSecond || r.y1 > plateWidth {
			c.add("row from %d to %d behind %d", r.y0, r.y1, y)
		}
		c.cut(s.x0, r.y1, s.x1, r.y1)
		c.row(s, r)
		y = r.y1
	}
	c.rest(plateWidth-y, "above the last row")
}

func (c *glassCheck) row(s glassSection, r glassRow) {
	x := s.x0
	for _, cell := range r.cells {
		a := cell.at
		c.rest(a.x0-x, "before a pane")
		c.rest(a.y0-r.y0, "below a pane")
		if cell.over == none {
			c.rest(r.y1-a.y1, "above a pane")
		}
		c.cut(a.x0, r.y0, a.x0, r.y1)
		c.cut(a.x1, r.y0, a.x1, r.y1)
		c.cut(a.x0, a.y1, a.x1, a.y1)
		c.cut(a.x0, a.y0, a.x1, a.y0)
		c.pane(cell.pane, a)
		if cell.over != none {
			c.pane(cell.over, flaw{a.x0, a.y1, a.x1, cell.end})
		}
		if a.y0 > r.y0 && a.y1 < r.y1 || cell.over != none && cell.end < r.y1 {
			c.add("pane %d needs two trims", cell.pane)
		}
		x = a.x1
	}
	c.rest(s.x1-x, "behind the last pane")
}

// pane checks size, flaws and the turn in its stack.
func (c *glassCheck) pane(i int, a flaw) {
	p := c.g.panes[i]
	if l, w := a.x1-a.x0, a.y1-a.y0; !(l == p.l && w == p.w || l == p.w && w == p.l) {
		c.add("pane %d is %d × %d", i, l, w)
	}
	for _, f := range c.flaws {
		if f.x0 < a.x1 && a.x0 < f.x1 && f.y0 < a.y1 && a.y0 < f.y1 {
			c.add("pane %d holds a flaw", i)
		}
	}
	if stack := c.g.stacks[p.stack]; c.next[p.stack] >= len(stack) || stack[c.next[p.stack]] != i {
		c.add("pane %d is out of turn", i)
	}
	c.next[p.stack]++
}
