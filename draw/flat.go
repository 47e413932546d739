package draw

import (
	"math"

	"rodwright/draw/typeface"
	"rodwright/length"
)

// Measures of tags and dimension lines, in paper millimetres.
const (
	ringRadius = 2.5 // of a tag with few letters
	ringSide   = 1.2 // from the words of a tag to the ends of its ring
	dotRadius  = 0.3 // where a tag's line ends on its part
	overshoot  = 1.5 // of an extension line beyond the dimension line
	shortOf    = 0.8 // from what is measured to its extension line
	tick       = 0.9 // of the slanting stroke at an end, each way and each axis
)

// Flat returns what is drawn in the plainest marks: Lines, Arcs, Areas and Texts, in the order of painting.
// Dimensions, tags and hatching are drawn out; the fill of an area is then Empty, Paper or Steel. Texts come
// last, so that nothing runs over words.
func (d *Drawing) Flat() []Mark {
	e := d.expand(true)
	for _, t := range e.texts {
		e.marks = append(e.marks, t)
	}
	return e.marks
}

// expansion gathers the plain marks of a drawing.
type expansion struct {
	per   int64
	hatch bool
	marks []Mark
	texts []Text
	drawn map[Line]bool // lines of dimensions; neighbours share extension lines
}

func (d *Drawing) expand(hatch bool) *expansion {
	e := &expansion{per: max(d.Per, 1), hatch: hatch, drawn: map[Line]bool{}}
	for _, m := range d.Marks {
		switch m := m.(type) {
		case Line, Arc:
			e.marks = append(e.marks, m)
		case Text:
			e.texts = append(e.texts, m)
		case Area:
			e.area(m)
		case Dimension:
			e.dimension(m)
		case Tag:
			e.tag(m)
		}
	}
	return e
}

func (e *expansion) area(a Area) {
	plain := a
	if a.Fill != Empty && a.Fill != Steel {
		plain.Fill = Paper
	}
	e.marks = append(e.marks, plain)
	if e.hatch && a.Fill != plain.Fill {
		e.marks = append(e.marks, hatching(a, e.per)...)
	}
}

// once adds a line of a dimension that is not there yet.
func (e *expansion) once(l Line) {
	if l.A != l.B && !e.drawn[l] {
		e.drawn[l] = true
		e.marks = append(e.marks, l)
	}
}

func (e *expansion) dimension(m Dimension) {
	for _, p := range []Point{m.From, m.To} {
		e.once(e.extension(m, p))
	}
	a, b := m.onLine(m.From), m.onLine(m.To)
	e.once(Line{Measure, a, b})
	t := full(tick, e.per)
	for _, p := range []Point{a, b} {
		e.once(Line{Measure, Point{p.X - t, p.Y - t}, Point{p.X + t, p.Y + t}})
	}
	if m.Leader != nil {
		e.once(*m.Leader)
	}
	e.texts = append(e.texts, m.Text)
}

// onLine returns the place on the dimension line that a measured place stands at.
func (m Dimension) onLine(p Point) Point {
	if m.Along == AlongX {
		return Point{p.X, m.Line}
	}
	return Point{m.Line, p.Y}
}

// extension runs from a little beside what is measured to a little beyond the dimension line.
func (e *expansion) extension(m Dimension, p Point) Line {
	end := m.onLine(p)
	step := func(from, to length.Length) (start, beyond length.Length) {
		switch gap := min(full(shortOf, e.per), (to - from).Abs()); {
		case to > from:
			return from + gap, to + full(overshoot, e.per)
		default:
			return from - gap, to - full(overshoot, e.per)
		}
	}
	if m.Along == AlongX {
		from, to := step(p.Y, end.Y)
		return Line{Measure, Point{p.X, from}, Point{p.X, to}}
	}
	from, to := step(p.X, end.X)
	return Line{Measure, Point{from, p.Y}, Point{to, p.Y}}
}

// tag draws a line from the part to the ring, the ring over it, and the words within.
func (e *expansion) tag(t Tag) {
	words := t.text(e.per)
	side := ringRadius
	if w := words.width()/2 + ringSide; w > side {
		side = w
	}
	rx, ry := full(side, e.per), full(ringRadius, e.per)
	if (t.Part.X-t.At.X).Abs() > rx || (t.Part.Y-t.At.Y).Abs() > ry {
		e.marks = append(e.marks,
			Line{Measure, t.At, t.Part},
			Arc{Outline, t.Part, full(dotRadius, e.per), 0, 360})
	}
	ring := Rounded(Point{t.At.X - rx, t.At.Y - ry}, Point{t.At.X + rx, t.At.Y + ry}, ry)
	e.marks = append(e.marks, Area{Pen: Measure, Outer: ring, Fill: Paper})
	e.texts = append(e.texts, words)
}

// text returns the words of a tag, standing in the middle of its ring.
func (t Tag) text(per int64) Text {
	at := Point{t.At.X, t.At.Y - full(Lettering*typeface.Capital/2, per)}
	return Text{At: at, Words: t.Words, Height: Lettering, Anchor: Middle, Strong: true}
}

// Bounds returns the upright rectangle around everything drawn, boxes of texts included, full size. The width
// of pens is left out. It is zero when nothing is drawn.
func (d *Drawing) Bounds() Rect {
	e := d.expand(false)
	var b around
	for _, m := range e.marks {
		b.mark(m)
	}
	for _, t := range e.texts {
		box := t.Box(e.per)
		b.point(box.Min)
		b.point(box.Max)
	}
	return b.rect
}

// around grows with what it is given.
type around struct {
	rect Rect
	any  bool
}

func (b *around) point(p Point) {
	if !b.any {
		b.rect, b.any = Rect{p, p}, true
		return
	}
	b.rect.Min = Point{min(b.rect.Min.X, p.X), min(b.rect.Min.Y, p.Y)}
	b.rect.Max = Point{max(b.rect.Max.X, p.X), max(b.rect.Max.Y, p.Y)}
}

func (b *around) mark(m Mark) {
	switch m := m.(type) {
	case Line:
		b.point(m.A)
		b.point(m.B)
	case Arc:
		b.bow(m.bow())
	case Area:
		for i, v := range m.Outer {
			b.point(v.Point)
			if w := m.Outer[(i+1)%len(m.Outer)].Point; curved(v, w) {
				b.bow(bowOf(v, w))
			}
		}
	}
}

// bow takes in the ends of an arc and the places where it turns back between them.
func (b *around) bow(a bow) {
	lo, hi := min(a.from, a.from+a.sweep), max(a.from, a.from+a.sweep)
	b.point(rounded(a.at(lo)))
	b.point(rounded(a.at(hi)))
	for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 <= hi; k++ {
		b.point(rounded(a.at(k * math.Pi / 2)))
	}
}
