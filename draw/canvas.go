package draw

import (
	"math"

	"rodwright/length"
)

// XY is a place on paper in millimetres, Y up, from the lower left of a drawing's Bounds.
type XY struct{ X, Y float64 }

// Op is what a Segment does.
type Op uint8

// The segments of a path on paper: Move and LineTo use P[0]; CurveTo is a cubic Bézier curve with the controls
// P[0], P[1] and the end P[2]; Close uses none.
const (
	Move Op = iota
	LineTo
	CurveTo
	Close
)

// Segment is one stroke of a path on paper.
type Segment struct {
	Op Op
	P  [3]XY
}

// Shade is a solid fill.
type Shade uint8

// The shades.
const (
	NoShade Shade = iota
	PaperShade
	SteelShade
)

// Ink is how a path is drawn: filled first, stroked over it. Fills are even-odd, so that holes stay open
// whichever way they turn.
type Ink struct {
	Pen     Pen
	Stroked bool
	Shade   Shade
}

// Label is a line of words on paper, in millimetres. The fractions in Words are set as such already.
type Label struct {
	At             XY
	Words          string
	Size, Width    float64
	Anchor         Anchor
	Turned, Strong bool
}

// Canvas is what a drawing is painted on.
type Canvas interface {
	Draw(path []Segment, ink Ink)
	Write(l Label)
}

// Size returns the extent of the drawing's Bounds on paper, in millimetres.
func (d *Drawing) Size() (width, height float64) {
	b := d.Bounds()
	per := float64(max(d.Per, 1))
	return (b.Max.X - b.Min.X).MM() / per, (b.Max.Y - b.Min.Y).MM() / per
}

// Paint paints a drawing: lines and areas in their order, then every text on a patch of paper, so that no line
// runs through words. Lines of one pen that follow each other come as one path; no path is empty.
func Paint(d *Drawing, c Canvas) {
	s := sheet{origin: d.Bounds().Min, per: float64(max(d.Per, 1))}
	e := d.expand(true)
	for i := 0; i < len(e.marks); {
		if a, ok := e.marks[i].(Area); ok {
			if path := s.area(a); len(path) > 0 {
				c.Draw(path, Ink{a.Pen, true, shadeOf(a.Fill)})
			}
			i++
			continue
		}
		pen := penOf(e.marks[i])
		var path []Segment
		for ; i < len(e.marks); i++ {
			if _, ok := e.marks[i].(Area); ok || penOf(e.marks[i]) != pen {
				break
			}
			path = append(path, s.stroke(e.marks[i])...)
		}
		c.Draw(path, Ink{Pen: pen, Stroked: true})
	}
	for _, t := range e.texts {
		c.Draw(s.area(Area{Outer: Rectangle(t.Box(e.per).Min, t.Box(e.per).Max)}), Ink{Shade: PaperShade})
		c.Write(s.label(t))
	}
}

func shadeOf(f Fill) Shade {
	switch f {
	case Empty:
		return NoShade
	case Steel:
		return SteelShade
	}
	return PaperShade
}

func penOf(m Mark) Pen {
	switch m := m.(type) {
	case Line:
		return m.Pen
	case Arc:
		return m.Pen
	}
	return Outline
}

// sheet turns full size into paper millimetres.
type sheet struct {
	origin Point
	per    float64
}

func (s sheet) at(p Point) XY { return s.xy(float64(p.X), float64(p.Y)) }

func (s sheet) xy(x, y float64) XY {
	mm := float64(length.Millimetre) * s.per
	return XY{(x - float64(s.origin.X)) / mm, (y - float64(s.origin.Y)) / mm}
}

func (s sheet) label(t Text) Label {
	return Label{s.at(t.At), t.set(), t.Height, t.width(), t.Anchor, t.Turned, t.Strong}
}

func (s sheet) stroke(m Mark) []Segment {
	switch m := m.(type) {
	case Line:
		return []Segment{{Move, [3]XY{s.at(m.A)}}, {LineTo, [3]XY{s.at(m.B)}}}
	case Arc:
		b := m.bow()
		x, y := b.at(b.from)
		out := append([]Segment{{Move, [3]XY{s.xy(x, y)}}}, s.curves(b)...)
		if m.Sweep >= 360 {
			out = append(out, Segment{Op: Close})
		}
		return out
	}
	return nil
}

func (s sheet) area(a Area) (out []Segment) {
	for _, p := range append([]Path{a.Outer}, a.Holes...) {
		out = append(out, s.path(p)...)
	}
	return out
}

func (s sheet) path(p Path) (out []Segment) {
	if len(p) < 2 {
		return nil
	}
	out = append(out, Segment{Move, [3]XY{s.at(p[0].Point)}})
	for i, v := range p {
		w := p[(i+1)%len(p)].Point
		switch {
		case curved(v, w):
			out = append(out, s.curves(bowOf(v, w))...)
		case i < len(p)-1: // the last straight edge is what Close draws
			out = append(out, Segment{LineTo, [3]XY{s.at(w)}})
		}
	}
	return append(out, Segment{Op: Close})
}

// curves returns an arc as cubic Bézier curves of 60° at most, with controls at
//
//	4/3 · tan(turn/4) · radius
//
// along the tangents, which touch the arc in its ends and middle and leave it by less than 3·10⁻⁵ of its radius
// between (the usual construction, from memory; the tests measure it).
func (s sheet) curves(b bow) (out []Segment) {
	n := max(1, int(math.Ceil(math.Abs(b.sweep)/(math.Pi/3)-1e-9)))
	turn := b.sweep / float64(n)
	k := 4.0 / 3 * math.Tan(turn/4) * b.radius
	for i := range n {
		from := b.from + float64(i)*turn
		to := from + turn
		x0, y0 := b.at(from)
		x1, y1 := b.at(to)
		out = append(out, Segment{CurveTo, [3]XY{
			s.xy(x0-k*math.Sin(from), y0+k*math.Cos(from)),
			s.xy(x1+k*math.Sin(to), y1-k*math.Cos(to)),
			s.xy(x1, y1),
		}})
	}
	return out
}
