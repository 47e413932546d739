package cutting

import (
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

// figure is one piece of stock being drawn.
type figure struct {
	per   int64
	room  *lettering.Room
	marks []draw.Mark
	solid []draw.Rect // what words that belong to something else keep out of
	rest  []caption   // that had no room inside

	unsaid []caption // defects whose name found no room

	low, high length.Length // how far to the left and right words may stand beside pieces
}

// caption is what stands on a part: its tag and its size, and where it belongs.
type caption struct {
	tag, size string
	in        draw.Rect
}

func newFigure(per int64) *figure {
	far := full(1000, per)
	return &figure{per: per, room: lettering.New(per), low: -far, high: far}
}

// narrow is the width of a sheet, in millimetres, on which the pieces would become specks if the words beside them had to
// find room: there only those stand beside that the sheet has room for.
const narrow = 100

// keepTo holds words beside pieces to a narrow sheet, of which so many millimetres at its left and right are for rings and
// dimensions. long is how far the stock reaches.
func (f *figure) keepTo(st draw.Style, long length.Length, left, right float64) {
	if st.Width > 0 && st.Width < narrow {
		f.low, f.high = -f.full(left), max(long, f.full(st.Width-left-right))
	}
}

func (f *figure) full(mm float64) length.Length { return full(mm, f.per) }
func (f *figure) add(m ...draw.Mark)            { f.marks = append(f.marks, m...) }

// put writes words at a place that is known to be free.
func (f *figure) put(t draw.Text) {
	f.add(t)
	f.room.Keep(t.Box(f.per))
}

func (f *figure) box(pen draw.Pen, fill draw.Fill, r draw.Rect) {
	f.add(draw.Area{Pen: pen, Fill: fill, Outer: draw.Rectangle(r.Min, r.Max)})
}

func (f *figure) line(pen draw.Pen, a, b draw.Point) { f.add(draw.Line{Pen: pen, A: a, B: b}) }

// piece draws a part: its outline, and its caption inside where there is room.
func (f *figure) piece(c caption) {
	f.blank(c.in)
	f.caption(c)
}

// pieces draws parts with the defects that lie on them and between them.
func (f *figure) pieces(all []caption, defects []blemish) {
	for _, c := range all {
		f.blank(c.in)
	}
	f.defects(defects)
	for _, c := range all {
		f.caption(c)
	}
	for _, c := range all {
		f.room.KeepPath(draw.Rectangle(c.in.Min, c.in.Max))
	}
	f.letters(defects)
}

// blank draws the outline of a part.
func (f *figure) blank(r draw.Rect) {
	f.box(draw.Outline, draw.Paper, r)
	f.solid = append(f.solid, r)
}

// caption writes a caption inside its part: in the middle, or in a half or third that is free. That of a part
// that is too small waits for captionRest.
func (f *figure) caption(c caption) {
	whole := c.in
	l := whole.Max.X - whole.Min.X
	for _, k := range [][2]int64{{0, 6}, {0, 3}, {3, 6}, {0, 2}, {4, 6}} {
		c.in.Min.X, c.in.Max.X = whole.Min.X+l.Scale(k[0], 6), whole.Min.X+l.Scale(k[1], 6)
		if f.inside(c) {
			return
		}
	}
	c.in = whole
	f.rest = append(f.rest, c)
}

// inside writes a caption in its rectangle: tag over size, tag and size in one line, or the tag alone when the
// size would not fit; level, or turned where the rectangle stands upright.
func (f *figure) inside(c caption) bool {
	for _, turned := range []bool{false, true} {
		for _, lines := range [][]draw.Text{
			{{Words: c.tag, Height: strong, Strong: true}, {Words: c.size, Height: words}},
			{{Words: c.tag + ", " + c.size, Height: words, Strong: true}},
			{{Words: c.tag + ", " + c.size, Height: small, Strong: true}},
		} {
			if c.size == "" {
				lines = lines[:1]
				lines[0].Words = c.tag
			}
			if f.lines(c.in, turned, lines) {
				return true
			}
		}
	}
	return false
}

// lines writes lines one under the other in the middle of a rectangle, or reports that they have no room.
func (f *figure) lines(in draw.Rect, turned bool, lines []draw.Text) bool {
	height := 0.0
	for _, t := range lines {
		height += t.Height * 1.15
	}
	mid := at((in.Min.X + in.Max.X).Half(), (in.Min.Y + in.Max.Y).Half())
	down, aside, edge := height/2, f.full(0.5), f.full(0.2) // off the strokes of its outline
	if turned {
		aside, edge = edge, aside
	}
	var out []draw.Text
	for _, t := range lines {
		down -= t.Height * 1.15
		t.Anchor, t.Turned = draw.Middle, turned
		base := f.full(down + t.Height*0.25)
		if t.At = at(mid.X, mid.Y+base); turned {
			t.At = at(mid.X-base, mid.Y)
		}
		b := t.Box(f.per)
		if b.Min.X < in.Min.X+aside || b.Max.X > in.Max.X-aside || b.Min.Y < in.Min.Y+edge || b.Max.Y > in.Max.Y-edge || !f.room.Free(b) {
			return false
		}
		out = append(out, t)
	}
	for _, t := range out {
		f.put(t)
	}
	return true
}

// captionRest writes the captions that had no room inside, beside everything with a leader. What finds no
// room even there is returned.
func (f *figure) captionRest() (left []caption) {
	for _, r := range f.solid {
		f.room.KeepOut(r)
	}
	for _, c := range f.rest {
		t := draw.Text{Words: c.tag, Height: words, Strong: true}
		if c.size != "" {
			t.Words += ", " + c.size
		}
		if !f.beside(t, c.in) {
			left = append(left, c)
		}
	}
	f.rest = nil
	return left
}

// beside writes words outside a rectangle with a leader into it: to its middle, or to another place of it where
// that is covered by words.
func (f *figure) beside(t draw.Text, in draw.Rect) bool {
	far := f.full(400)
	within := draw.Rect{Min: at(max(in.Min.X-far, f.low), in.Min.Y-far), Max: at(min(in.Max.X+far, f.high), in.Max.Y+far)}
	l, w := in.Max.X-in.Min.X, in.Max.Y-in.Min.Y
	for _, k := range [][2]int64{{5, 5}, {1, 5}, {9, 5}, {5, 1}, {5, 9}, {1, 1}, {9, 1}, {9, 9}, {1, 9}} {
		if q, line, ok := f.room.Beside(t, at(in.Min.X+l.Scale(k[0], 10), in.Min.Y+w.Scale(k[1], 10)), within); ok {
			f.add(line, q)
			box, apart := q.Box(f.per), f.full(1.5) // or two captions side by side read as one
			f.room.Keep(draw.Rect{Min: at(box.Min.X-apart, box.Min.Y), Max: at(box.Max.X+apart, box.Max.Y)})
			return true
		}
	}
	return false
}

// under writes lines of words under everything drawn so far, from the left end, no wider than width.
func (f *figure) under(left, width length.Length, says ...string) {
	y := boundsOf(f.marks, f.per).Min.Y - f.full(2+words)
	for _, s := range says {
		t := draw.Text{Words: s, Height: words}
		for _, l := range lettering.Wrap(t, width, f.per) {
			t.Words, t.At = l, at(left, y)
			f.put(t)
			y -= f.full(words * 1.4)
		}
	}
}

// over writes a heading over everything drawn so far.
func (f *figure) over(left, width length.Length, says string) {
	t := draw.Text{Words: says, Height: title, Strong: true}
	lines := lettering.Wrap(t, width, f.per)
	y := boundsOf(f.marks, f.per).Max.Y + f.full(2)
	for i := range lines {
		t.Words, t.At = lines[len(lines)-1-i], at(left, y)
		f.put(t)
		y += f.full(title * 1.4)
	}
}

// moved returns a mark shifted.
func moved(m draw.Mark, by draw.Point) draw.Mark {
	p := func(q draw.Point) draw.Point { return at(q.X+by.X, q.Y+by.Y) }
	path := func(in draw.Path) draw.Path {
		out := make(draw.Path, len(in))
		for i, v := range in {
			out[i] = draw.Vertex{Point: p(v.Point), Bulge: v.Bulge}
		}
		return out
	}
	switch m := m.(type) {
	case draw.Line:
		m.A, m.B = p(m.A), p(m.B)
		return m
	case draw.Arc:
		m.Centre = p(m.Centre)
		return m
	case draw.Text:
		m.At = p(m.At)
		return m
	case draw.Tag:
		m.At, m.Part = p(m.At), p(m.Part)
		return m
	case draw.Area:
		m.Outer = path(m.Outer)
		holes := make([]draw.Path, len(m.Holes))
		for i, h := range m.Holes {
			holes[i] = path(h)
		}
		m.Holes = holes
		return m
	case draw.Dimension:
		m.From, m.To, m.Text.At = p(m.From), p(m.To), p(m.Text.At)
		if m.Line += by.Y; m.Along == draw.AlongY {
			m.Line += by.X - by.Y
		}
		if m.Leader != nil {
			m.Leader = &draw.Line{Pen: m.Leader.Pen, A: p(m.Leader.A), B: p(m.Leader.B)}
		}
		return m
	}
	return m
}
