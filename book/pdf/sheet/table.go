package sheet

import (
	"math"

	"rodwright/book"
)

// Clear spaces of a table in points.
const (
	gutter   = 10.0 // between two columns
	rowSpace = 2.75 // above and below the words of a row
	mostRow  = 24   // lines of a row that are not parted
)

// grid is a table being set.
type grid struct {
	*setter
	columns []book.Column
	widths  []float64
	at      column
}

// table sets a table: its head stands on every sheet, and no row is parted unless it is very long.
func (s *setter) table(t book.Table, at column) []strip {
	g := &grid{setter: s, columns: t.Columns, widths: columnWidths(t, at.width), at: at}
	g.at.in = &frame{in: at.in, tag: "Table"}
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c.Head
	}
	var out []strip
	if t.Caption != "" {
		out = held(s.text([]span{{t.Caption, true}}, tableStyle, at, "Caption"), hard)
		out[len(out)-1].after = 3
	}
	head := g.rows(heads, tableStyle.bold().in(grey), "TH", rule{0.8, graphite})
	g.at.in.head = head
	out = append(out, held(head, hard)...)
	for i, r := range t.Rows {
		row := g.rows(r, tableStyle, "TD", rule{0.25, pale})
		if i == 0 || i == len(t.Rows)-2 || i == len(t.Rows)-1 && t.Foot != nil {
			row[len(row)-1].hold = hard
		}
		out = append(out, row...)
	}
	if t.Foot != nil {
		out = append(out, g.rows(t.Foot, tableStyle.bold(), "TD", rule{0.8, graphite})...)
	}
	last := &out[len(out)-1]
	last.hold, last.after = loose, 14
	out[0].before = 10
	return out
}

// rule is a line under a row: its width in points and its ink.
type rule struct {
	width float64
	ink   Ink
}

// rows sets one row of the table: one strip, more where the row is very long.
func (g *grid) rows(cells []string, st style, tag string, under rule) (out []strip) {
	lines := make([][]line, len(cells))
	most := 1
	for i, c := range cells {
		g.know(c, g.place)
		lines[i] = wrap([]span{{c, st.strong}}, st.size, g.widths[i])
		most = max(most, len(lines[i]))
	}
	for from := 0; from < most; from += mostRow {
		part := make([][]line, len(cells))
		for i, l := range lines {
			part[i] = l[min(from, len(l)):min(from+mostRow, len(l))]
		}
		line := rule{}
		if from+mostRow >= most {
			line = under
		}
		out = append(out, g.row(part, st, tag, line))
	}
	return out
}

func (g *grid) row(cells [][]line, st style, tag string, under rule) strip {
	most, x := 1, 0.0
	row := Block{X: g.at.x, Width: g.at.width, Tag: "TR"}
	for i, l := range cells {
		most = max(most, len(l))
		cell := st
		cell.right = g.columns[i].Align == book.Right
		row.Children = append(row.Children, Block{X: x, Y: rowSpace, Width: g.widths[i], Tag: tag, Draw: func(p Pen, x, top float64) {
			for k, line := range l {
				setLine(p, line, x, top-float64(k)*cell.lead, g.widths[i], cell)
			}
		}})
		x += g.widths[i] + gutter
	}
	height := float64(most)*st.lead + 2*rowSpace
	row.Height = height
	row.Draw = func(p Pen, x, top float64) {
		if under.width > 0 {
			straight(p, x, top-height, x+g.at.width, top-height, under.width, under.ink)
		}
	}
	return strip{height: height, in: g.at.in, blocks: []Block{row}}
}

// columnWidths shares the width out as the table asks. Then columns too narrow for their longest word take what
// they lack from those with room to spare, and columns whose words would be broken into lines what others do
// not need.
func columnWidths(t book.Table, width float64) []float64 {
	n := len(t.Columns)
	room, shares := width-gutter*float64(n-1), 0.0
	for _, c := range t.Columns {
		shares += c.Share
	}
	widths, words, lines := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, c := range t.Columns {
		widths[i] = room * c.Share / shares
		words[i], lines[i] = extents(t, i)
		words[i] = math.Min(words[i], room/2)
	}
	give(widths, words)
	give(widths, lines)
	return widths
}

// give moves width from columns wider than they need to be to those that are too narrow, in proportion.
func give(widths, needs []float64) {
	spare, lack := 0.0, 0.0
	for i, w := range widths {
		spare += math.Max(0, w-needs[i])
		lack += math.Max(0, needs[i]-w)
	}
	if spare == 0 || lack == 0 {
		return
	}
	moved := math.Min(spare, lack)
	for i, w := range widths {
		widths[i] -= moved * (math.Max(0, w-needs[i])/spare - math.Max(0, needs[i]-w)/lack)
	}
}

// extents returns the width of the longest word in a column, and of its longest cell.
func extents(t book.Table, i int) (word, cell float64) {
	look := func(words string, strong bool) {
		s := []span{{words, strong}}
		for _, w := range tokens(s) {
			word = math.Max(word, measure(w.words, tableStyle.size, strong))
		}
		cell = math.Max(cell, wrap(s, tableStyle.size, math.Inf(1))[0].width)
	}
	look(t.Columns[i].Head, true)
	for _, r := range t.Rows {
		look(r[i], false)
	}
	if t.Foot != nil {
		look(t.Foot[i], true)
	}
	return word + 0.01, cell + 0.01
}
