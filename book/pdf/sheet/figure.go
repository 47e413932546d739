package sheet

import (
	"fmt"
	"math"

	"rodwright/book"
	"rodwright/draw"
)

// figureGap is the least clear space between two figures side by side, in points.
const figureGap = 24.0

// underHeading is what a figure leaves of a sheet, in points, so that a heading of a line or two stands above.
const underHeading = 60.0

// size returns the size of a figure's drawing in points.
func size(f book.Figure) (w, h float64) {
	w, h = f.Drawing.Size()
	return w * mm, h * mm
}

// figureRow returns the figures at the head of blocks that stand side by side.
func figureRow(blocks []book.Block, width float64) (row []book.Figure) {
	wide := -figureGap
	for _, b := range blocks {
		f, ok := b.(book.Figure)
		if !ok {
			break
		}
		w, _ := size(f)
		wide += w + figureGap
		if wide > width && len(row) > 0 {
			break
		}
		row = append(row, f)
	}
	return row
}

// figures sets figures side by side, each with its caption below. The row is one strip.
func (s *setter) figures(row []book.Figure, at column) []strip {
	out := strip{in: at.in, before: 8, after: 16}
	var set [][]Block
	free, high := at.width, 0.0
	for _, f := range row {
		w, _ := size(f)
		free -= w
	}
	free = math.Max(0, free) / float64(len(row))
	for _, f := range row {
		w, _ := size(f)
		cell := math.Min(w+free, at.width)
		clear := 0.0
		if len(row) > 1 {
			clear = figureGap / 2
		}
		blocks, _ := s.figure(f, column{at.x, cell - clear, nil}, s.room-underHeading)
		set, high = append(set, blocks), math.Max(high, blocks[0].Height)
		at.x += cell
	}
	for _, blocks := range set { // all stand on one line
		down := high - blocks[0].Height
		for _, b := range blocks {
			b.Y += down
			out.height = math.Max(out.height, b.Y+b.Height)
			out.blocks = append(out.blocks, b)
		}
	}
	return []strip{out}
}

// figure sets a drawing in the middle of a column, its caption below, and returns how high both are. What
// would not fit is drawn smaller, and its caption says so.
func (s *setter) figure(f book.Figure, at column, room float64) ([]Block, float64) {
	w, h := size(f)
	in := at // the caption begins below the left of the drawing
	in.x += math.Max(0, (at.width-w)/2)
	in.width -= in.x - at.x
	caption := func(words string) []strip { return s.text([]span{{words: words}}, captionStyle, in, "") }
	under := caption(f.Caption)
	shrink := fit(w, h, at.width, room-6-height(under))
	if shrink < 1 && f.Caption != "" {
		under = caption(f.Caption + " (drawn smaller than its scale, to fit the sheet)")
		shrink = fit(w, h, at.width, room-6-height(under))
	}
	picture := s.picture(f.Drawing, at, w*shrink, h*shrink, shrink)
	if f.Caption == "" {
		return []Block{picture}, picture.Height
	}
	words := Block{X: in.x, Y: picture.Height + 6, Width: in.width, Height: height(under), Tag: "Caption"}
	for i, l := range under {
		b := l.blocks[0]
		b.X, b.Y = 0, float64(i)*captionStyle.lead
		words.Children = append(words.Children, b)
	}
	return []Block{picture, words}, words.Y + words.Height
}

// fit returns how much smaller a thing has to be for its room, 1 where it fits; a hair over is let pass.
func fit(w, h, width, height float64) float64 {
	if k := math.Min(width/w, height/h); k < 0.999 {
		return k
	}
	return 1
}

// picture returns a drawing as a tagged figure in the middle of a column.
func (s *setter) picture(d *draw.Drawing, at column, w, h, shrink float64) Block {
	c := &canvas{setter: s, place: fmt.Sprintf("the drawing %q", d.ID)}
	draw.Paint(d, c)
	k := mm * shrink
	return Block{
		X: at.x + math.Max(0, (at.width-w)/2), Width: w, Height: h, Tag: "Figure", Alt: d.Alt,
		Draw: func(p Pen, x, top float64) {
			p.Within(k, 0, 0, k, x, top-h, func() {
				for _, stroke := range c.strokes {
					stroke(p)
				}
			})
		},
	}
}

// canvas keeps what a drawing paints, in millimetres of paper, until its sheet is drawn.
type canvas struct {
	*setter
	place   string
	strokes []func(Pen)
}

// pens are the inks of lines; what stands back is paler.
var pens = map[draw.Pen]Ink{
	draw.Outline: graphite, draw.Hidden: graphite, draw.Centre: grey, draw.Saw: graphite, draw.Measure: grey,
	draw.Grain: pale, draw.Hatching: pale, draw.Ghost: grey,
}

// shades are what areas are filled with.
var shades = map[draw.Shade]*Ink{draw.PaperShade: &white, draw.SteelShade: {0.82, 0.83, 0.85}}

// Draw implements draw.Canvas.
func (c *canvas) Draw(path []draw.Segment, i draw.Ink) {
	b := Brush{Fill: shades[i.Shade], Width: i.Pen.Width(), Dashes: i.Pen.Dashes()}
	if i.Stroked {
		tone := pens[i.Pen]
		b.Stroke = &tone
	}
	path = append([]draw.Segment(nil), path...)
	c.strokes = append(c.strokes, func(p Pen) { p.Path(path, b) })
}

// Write implements draw.Canvas.
func (c *canvas) Write(l draw.Label) {
	c.know(l.Words, c.place)
	x := 0.0
	switch l.Anchor {
	case draw.Middle:
		x = -measure(l.Words, l.Size, l.Strong) / 2
	case draw.End:
		x = -measure(l.Words, l.Size, l.Strong)
	}
	c.strokes = append(c.strokes, func(p Pen) {
		if !l.Turned {
			show(p, l.Words, l.At.X+x, l.At.Y, l.Size, l.Strong, graphite)
			return
		}
		p.Within(0, 1, -1, 0, l.At.X, l.At.Y, func() { show(p, l.Words, x, 0, l.Size, l.Strong, graphite) })
	})
}

// straight draws a straight line on a sheet.
func straight(p Pen, x1, y1, x2, y2, width float64, c Ink) {
	o := path{size: 1}
	p.Path(o.lines(x1, y1, x2, y2).segments, Brush{Stroke: &c, Width: width})
}

// box draws a box from its lower left corner.
func box(p Pen, x, y, w, h, width float64, c Ink) {
	o := path{size: 1}
	o.lines(x, y, x+w, y, x+w, y+h, x, y+h).close()
	p.Path(o.segments, Brush{Stroke: &c, Width: width})
}
