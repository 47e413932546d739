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

// letters names every feature: in its opening where the letter has room, else beside it with a leader.
func (m *marker) letters() {
	wide := m.full(200)
	within := draw.Rect{Min: at(-wide, -wide), Max: at(m.p.Finished[0]+wide, m.p.Finished[1]+wide)}
	for i, f := range m.p.Features {
		t := draw.Text{Words: Letter(i), Height: letter, Strong: true, Anchor: draw.Middle}
		var in []draw.Text
		spots := m.spots(f)
		for _, p := range spots {
			t.At = at(p.X, p.Y-m.full(letter*0.35))
			in = append(in, t)
		}
		if q, ok := m.room.Put(in...); ok {
			m.add(q)
		} else if q, l, ok := m.room.Beside(t, spots[0], within); ok {
			m.add(l, q)
		} else {
			m.nowhere = append(m.nowhere, i)
		}
	}
}

// spots are places in a feature from its middle outwards, those first where it is cut and nothing else is.
func (m *marker) spots(f part.Feature) (out []draw.Point) {
	var rest []draw.Point
	deep := f.Depth
	if deep == 0 {
		deep = through
	}
	for k := range int64(25) {
		p := at(f.At[0]+f.Size[0].Scale(3+zigzag(k%5), 6), f.At[1]+f.Size[1].Scale(3+zigzag(k/5), 6))
		if m.out.cutAt(spot{float64(p.X), float64(p.Y)}) == deep {
			out = append(out, p)
		} else {
			rest = append(rest, p)
		}
	}
	return append(out, rest...)
}

// sideWords names a side of the panel as it lies in the piece, and the shape run along it.
func (m *marker) sideWords(s part.Side) (long, short string) {
	short = string(s)
	if m.flat != nil {
		names := map[part.Side]piece.PanelSide{part.StartEnd: piece.LeftSide, part.FarEnd: piece.RightSide, part.NearEdge: piece.FrontSide, part.FarEdge: piece.BackSide}
		if !m.flat.GrainX {
			names = map[part.Side]piece.PanelSide{part.StartEnd: piece.FrontSide, part.FarEnd: piece.BackSide, part.NearEdge: piece.RightSide, part.FarEdge: piece.LeftSide}
		}
		short = string(names[s])
	}
	long = short
	for _, p := range m.p.Profiles {
		if p.Side == s {
			long += ", " + p.Profile + " " + m.st.Fineness.Finer().Text(p.Size)
		}
	}
	return long, short
}

// sides writes at each edge which side of the piece it is and how it is shaped, where there is room between
// the measures.
func (m *marker) sides() {
	l, w := m.p.Finished[0], m.p.Finished[1]
	off := m.full(1.8)
	for _, s := range []struct {
		side   part.Side
		run    length.Length
		turned bool
		base   length.Length
	}{
		{part.FarEdge, l, false, w + off},
		{part.FarEnd, w, true, l + off + m.full(words*0.75)},
		{part.NearEdge, l, false, -off - m.full(words*0.75)},
		{part.StartEnd, w, true, -off},
	} {
		long, short := m.sideWords(s.side)
		var places []draw.Text
		for _, says := range []string{long, short} {
			for k := range 39 { // from the middle outwards
				step := int64((k+1)/2) * (1 - 2*int64(k%2))
				c := s.run.Scale(20+step, 40)
				t := draw.Text{At: at(c, s.base), Words: says, Height: words, Anchor: draw.Middle}
				if s.turned {
					t.At, t.Turned = at(s.base, c), true
				}
				if b := t.Box(m.per); s.turned && b.Max.Y-b.Min.Y > s.run || !s.turned && b.Max.X-b.Min.X > s.run {
					continue
				}
				places = append(places, t)
			}
		}
		if t, ok := m.room.Put(places...); ok {
			m.add(t)
		}
	}
}

// profileLines shows on the face how far in an edge is shaped, where the edge is left by notches.
func (m *marker) profileLines() {
	l, w := m.p.Finished[0], m.p.Finished[1]
	for _, p := range m.p.Profiles {
		for _, a := range m.out.areas {
			for i, v := range a.outer {
				q := a.outer[(i+1)%len(a.outer)]
				if v.Bulge != 0 {
					continue
				}
				from, to := v.Point, q.Point
				switch {
				case p.Side == part.NearEdge && from.Y == 0 && to.Y == 0:
					from.Y, to.Y = p.Size, p.Size
				case p.Side == part.FarEdge && from.Y == w && to.Y == w:
					from.Y, to.Y = w-p.Size, w-p.Size
				case p.Side == part.StartEnd && from.X == 0 && to.X == 0:
					from.X, to.X = p.Size, p.Size
				case p.Side == part.FarEnd && from.X == l && to.X == l:
					from.X, to.X = l-p.Size, l-p.Size
				default:
					continue
				}
				m.line(draw.Grain, from, to)
			}
		}
	}
}

// grain draws an arrow along the grain where the panel has room for it.
func (m *marker) grain() {
	long := m.full(18)
	if long > m.p.Finished[0].Scale(3, 4) {
		long = m.p.Finished[0].Half()
	}
	head := m.full(1.4)
	for k := range 81 { // over the face, from its middle outwards
		i, j := int64(k%9), int64(k/9)
		x := m.p.Finished[0].Scale(8+zigzag(i), 16)
		y := m.p.Finished[1].Scale(8+zigzag(j), 16)
		a, b := at(x-long.Half(), y), at(x+long.Half(), y)
		t := draw.Text{At: at(x, y+m.full(0.9)), Words: "grain", Height: words, Anchor: draw.Middle}
		box := t.Box(m.per)
		all := draw.Rect{Min: at(min(a.X, box.Min.X), y-head), Max: at(max(b.X, box.Max.X), box.Max.Y)}
		if !m.room.Free(all) || all.Min.X < 0 || all.Max.X > m.p.Finished[0] || all.Min.Y < 0 || all.Max.Y > m.p.Finished[1] {
			continue
		}
		m.room.Keep(all)
		m.line(draw.Grain, a, b)
		for _, s := range []length.Length{-1, 1} {
			m.line(draw.Grain, a, at(a.X+head, a.Y+s*head.Half()))
			m.line(draw.Grain, b, at(b.X-head, b.Y+s*head.Half()))
		}
		m.add(t)
		return
	}
}

// zigzag counts 0, -1, 1, -2, 2 …
func zigzag(i int64) int64 {
	if i%2 == 1 {
		return -(i + 1) / 2
	}
	return i / 2
}

// notes writes under the drawing what the drawing cannot show.
func (m *marker) notes() {
	f := m.st.Fineness
	unit := "millimetres"
	if !f.Unit.Metric() {
		unit = "inches"
	}
	says := []string{
		fmt.Sprintf("Seen from above, its upper face. Datum: its %s corner as it lies in the piece. Every measure runs from the datum, in %s to %s.", m.p.Datum, unit, f),
		fmt.Sprintf("%s thick, %s, grain along.", f.Text(m.p.Finished[2]), strings.ReplaceAll(m.p.Material, "-", " ")),
	}
	if m.brief {
		says = append(says, "The sizes of what is cut are in the table.")
	} else {
		for _, g := range m.groups() {
			says = append(says, g.letters+": "+g.says+".")
		}
	}
	for _, i := range m.nowhere {
		c := m.p.Features[i].Centre()
		says = append(says, fmt.Sprintf("%s is the %s whose middle is at %s along, %s across.", Letter(i), what(m.p.Features[i]), f.Number(c[0]), f.Number(c[1])))
	}
	if c := m.roundedCorners(); c != "" {
		says = append(says, "Corners rounded, "+c+".")
	}
	if x := m.fixingWords(); len(x) > 0 {
		says = append(says, "Fixings: "+strings.Join(x, ", ")+"; by their middles.")
	}
	says = append(says, m.shapes()...)
	says = append(says, m.voids()...)
	m.paragraph(says)
}

// paragraph writes lines under everything, as wide as the drawing is.
func (m *marker) paragraph(says []string) {
	r := (&draw.Drawing{Per: m.per, Marks: m.marks}).Bounds()
	width := max(r.Max.X-r.Min.X, m.full(140))
	if m.st.Width > 0 {
		width = min(width, m.full(m.st.Width))
	}
	y := r.Min.Y - m.full(3+words)
	for _, s := range says {
		t := draw.Text{Words: s, Height: words}
		for _, l := range lettering.Wrap(t, width, m.per) {
			t.Words, t.At = l, at(r.Min.X, y)
			m.put(t)
			y -= m.full(words * 1.4)
		}
	}
}

// gathered lists things under what is said of them, in order, each saying once.
type gathered struct {
	says []string
	of   map[string][]string
}

func (g *gathered) add(says, of string) {
	if g.of == nil {
		g.of = map[string][]string{}
	}
	if g.of[says] == nil {
		g.says = append(g.says, says)
	}
	g.of[says] = append(g.of[says], of)
}

// shapes tells which edges are shaped, those alike together.
func (m *marker) shapes() (out []string) {
	var g gathered
	for _, p := range m.p.Profiles {
		_, side := m.sideWords(p.Side)
		g.add(p.Profile+" "+m.st.Fineness.Finer().Text(p.Size), side)
	}
	for _, s := range g.says {
		out = append(out, capital(strings.Join(g.of[s], ", "))+": "+s+", after everything else is cut.")
	}
	return out
}

// roundedCorners tells which corners of the panel are rounded, those alike together.
func (m *marker) roundedCorners() string {
	if m.flat == nil || m.flat.Spec == nil {
		return ""
	}
	var g gathered
	for i, c := range corners(m.flat.GrainX) {
		if r := m.out.panel.radius[i]; r > 0 {
			g.add(m.st.Fineness.Finer().Text(length.Length(r))+" radius", c.String())
		}
	}
	var out []string
	for _, s := range g.says {
		out = append(out, s+": "+strings.Join(g.of[s], ", "))
	}
	return strings.Join(out, "; ")
}

// voids tells of the hollows that are filled; where they are the boards decide.
func (m *marker) voids() (out []string) {
	if m.r == nil || m.r.Doc == nil {
		return nil
	}
	f := m.st.Fineness
	for _, v := range m.r.Doc.Voids {
		if v.In == m.p.Name {
			out = append(out, fmt.Sprintf("Voids “%s”: %d of about %s × %s, %s deep, filled with resin where the boards have them.",
				v.Name, v.Count, f.Number(v.Size[0]), f.Text(v.Size[1]), f.Text(v.Depth)))
		}
	}
	return out
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
