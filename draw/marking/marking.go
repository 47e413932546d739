// Package marking draws one panel as it is marked out: cut out exactly, seen from above, every notch, hole
// and pocket measured from one datum corner.
//
// Along the grain runs to the right and the datum corner is at the lower left, so a place on the drawing is
// the place on the panel. Measures are running: each is the distance from the datum, rounded by itself, so
// that none carries the rounding of another (superimposed running dimensions, ISO 129-1:2018, from memory).
// Start with Needed and Of; Features is the table that goes with the drawing.
package marking

import (
	"fmt"
	"strings"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// Needed reports whether a panel must be marked out: it is more than a rectangle, or something is screwed to
// it at a place of its own.
func Needed(p part.Part) bool {
	if p.Kind != part.Panel {
		return false
	}
	const slack = 1e-9 // m², rounding
	whole := p.Finished[0].MM() * p.Finished[1].MM() / 1e6
	flanged := strings.Contains(p.Sits, string(piece.OnPosts)) || strings.Contains(p.Sits, string(piece.UnderPosts))
	return len(p.Features) > 0 || len(p.Profiles) > 0 || flanged || p.FaceM2 < whole-slack
}

// flatOf returns the panel as it lies in the piece; nil where the part is not of it.
func flatOf(r *piece.Resolved, p part.Part) *piece.FlatPanel {
	if r == nil || len(p.Indexes) == 0 || p.Indexes[0] < 0 || p.Indexes[0] >= len(r.Panels) {
		return nil
	}
	return &r.Panels[p.Indexes[0]]
}

// Of draws a panel of a piece for who marks it out, at the least scale that the style has room for.
func Of(r *piece.Resolved, p part.Part, st draw.Style) *draw.Drawing {
	m := &marker{r: r, p: p, flat: flatOf(r, p), st: st}
	m.out = outlineOf(p, m.flat)
	m.fixings = fixingsOf(r, p, m.flat)
	least := draw.ScaleFor(p.Finished[0], p.Finished[1], st)
	per, marks := lettering.Fit(st, least, m.drawn)
	if !lettering.Fits(st, per, marks) { // the sizes of the features are in their table too
		m.brief = true
		per, marks = lettering.Fit(st, least, m.drawn)
	}
	return &draw.Drawing{
		ID: "part-" + strings.ToLower(p.Tag), Per: per, Marks: marks,
		Title: fmt.Sprintf("%s %s, marked out", p.Tag, p.Name), Alt: m.alt(),
	}
}

// marker draws one panel at one scale.
type marker struct {
	r       *piece.Resolved
	p       part.Part
	flat    *piece.FlatPanel
	st      draw.Style
	out     outline
	fixings []fixing
	brief   bool // the notes leave the features' sizes to the table

	per   int64
	room  *lettering.Room
	marks []draw.Mark

	nowhere []int // features whose letter found no room
}

// Sizes on paper in millimetres.
const (
	words  = 2.8 // height of measures and notes
	letter = 3.4 // height of the letters of features
	first  = 8.0 // from the panel to a row of measures
)

func (m *marker) full(mm float64) length.Length { return lettering.Full(mm, m.per) }
func (m *marker) add(marks ...draw.Mark)        { m.marks = append(m.marks, marks...) }
func (m *marker) line(p draw.Pen, a, b draw.Point) {
	m.add(draw.Line{Pen: p, A: a, B: b})
}

// kept draws a line that words keep off.
func (m *marker) kept(p draw.Pen, a, b draw.Point) {
	m.line(p, a, b)
	m.room.KeepLine(a, b)
}

// put writes words at a place that is known to be free.
func (m *marker) put(t draw.Text) {
	m.add(t)
	m.room.Keep(t.Box(m.per))
}

func at(x, y length.Length) draw.Point { return draw.Point{X: x, Y: y} }

// drawn draws everything at a scale: first what has one place only, then the words that can give way.
func (m *marker) drawn(per int64) []draw.Mark {
	m.per, m.room, m.marks, m.nowhere = per, lettering.New(per), nil, nil
	m.wood()
	m.holeCentres()
	m.drawFixings()
	m.profileLines()
	m.datum()
	m.rows()
	m.sides()
	m.letters()
	m.grain()
	m.wholes()
	m.end()
	m.notes()
	return m.marks
}

func (m *marker) alt() string {
	f := m.st.Fineness
	says := fmt.Sprintf("%s, %s × %s, seen from above with the grain to the right and the %s corner at the lower left as datum",
		m.p.Name, f.Number(m.p.Finished[0]), f.Text(m.p.Finished[1]), m.p.Datum)
	for _, g := range m.groups() {
		says += "; " + g.letters + ": " + g.says
	}
	return says + "."
}

// wood draws what is left of the panel, the pockets in its underside, and, should the edges not have closed,
// every feature by itself.
func (m *marker) wood() {
	for _, a := range m.out.areas {
		m.add(draw.Area{Pen: draw.Outline, Outer: a.outer, Holes: a.holes, Fill: draw.LongWood, Along: draw.AlongX})
		for _, p := range append([]draw.Path{a.outer}, a.holes...) {
			m.room.KeepPath(p)
		}
	}
	for _, c := range m.out.pockets {
		m.curve(draw.Hidden, c)
	}
	if !m.out.whole {
		for _, o := range append([]opening{m.out.panel}, m.out.openings...) {
			for _, c := range o.edges() {
				m.curve(draw.Outline, c)
			}
		}
	}
}

// curve draws a stretch of an edge.
func (m *marker) curve(p draw.Pen, c curve) {
	a, b := point(c.a), point(c.b)
	m.room.KeepPath(draw.Path{{Point: a, Bulge: c.bulge()}, {Point: b}})
	if c.radius == 0 {
		m.line(p, a, b)
		return
	}
	if c.sweep < 0 {
		c = c.reversed()
	}
	m.add(draw.Arc{Pen: p, Centre: point(c.centre), Radius: length.Length(c.radius), From: degrees(c.from), Sweep: degrees(c.sweep)})
}

// holeCentres crosses the middle of every round hole and of a slot's ends.
func (m *marker) holeCentres() {
	for _, f := range m.p.Features {
		if !centred(f) {
			continue
		}
		r := min(f.Size[0], f.Size[1]).Half() + m.full(1.2)
		for _, c := range centres(f) {
			m.kept(draw.Centre, at(c[0]-r, c[1]), at(c[0]+r, c[1]))
			m.kept(draw.Centre, at(c[0], c[1]-r), at(c[0], c[1]+r))
		}
	}
}

// datum marks the corner that everything is measured from with a filled triangle.
func (m *marker) datum() {
	s := m.full(2.6)
	m.add(draw.Area{Pen: draw.Outline, Fill: draw.Steel, Outer: draw.Path{{}, {Point: at(-s, 0)}, {Point: at(0, -s)}}})
	m.room.Keep(draw.Rect{Min: at(-s, -s), Max: at(0, 0)})
	m.put(draw.Text{At: at(-m.full(1.2), -m.full(6.2)), Words: "datum", Height: words, Anchor: draw.End, Strong: true})
}

// wholes measures the whole panel, above it and on its right, outside everything drawn there.
func (m *marker) wholes() {
	l, w := m.p.Finished[0], m.p.Finished[1]
	r := (&draw.Drawing{Per: m.per, Marks: m.marks}).Bounds()
	m.add(draw.Dimensions(draw.Rect{Max: at(l, r.Max.Y)}, m.per, m.st, draw.Above, 1, []draw.Station{{At: 0, Off: w}, {At: l, Off: w}})...)
	m.add(draw.Dimensions(draw.Rect{Max: at(r.Max.X, w)}, m.per, m.st, draw.RightOf, 2, []draw.Station{{At: 0, Off: l}, {At: w, Off: l}})...)
}
