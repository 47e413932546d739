package marking

import (
	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
)

// leastEnd is how thick a panel must be on paper for its end to be drawn, in millimetres.
const leastEnd = 2.0

// end draws the panel's far end beside it, upper face to the left, where something shows there that the face
// does not: pockets in dashes, shaped edges, each on the upper face. A bevel's slope is the maker's.
func (m *marker) end() {
	thick, w := m.p.Finished[2], m.p.Finished[1]
	shaped := map[part.Side]part.Profile{}
	for _, p := range m.p.Profiles {
		shaped[p.Side] = p
	}
	pockets := false
	for _, f := range m.p.Features {
		pockets = pockets || f.Depth > 0
	}
	if thick.MM()/float64(m.per) < leastEnd || !pockets && len(shaped) == 0 {
		return
	}
	r := (&draw.Drawing{Per: m.per, Marks: m.marks}).Bounds()
	x := r.Max.X + m.full(8)
	path := shapedEnd(x, thick, w, shaped[part.NearEdge], shaped[part.FarEdge])
	m.add(draw.Area{Pen: draw.Outline, Fill: draw.EndWood, Outer: path})
	for _, f := range m.p.Features {
		if f.Depth > 0 {
			y0, y1 := max(f.At[1], 0), min(f.At[1]+f.Size[1], w)
			floor := x + thick - f.Depth
			m.line(draw.Hidden, at(x+thick, y0), at(floor, y0))
			m.line(draw.Hidden, at(floor, y0), at(floor, y1))
			m.line(draw.Hidden, at(floor, y1), at(x+thick, y1))
		}
	}
	m.put(draw.Text{At: at(x-m.full(1.2), w.Half()), Words: "upper face", Height: words, Turned: true, Anchor: draw.Middle})
	b := draw.Rect{Min: at(x, 0), Max: at(x+thick, w)}
	m.add(draw.Dimensions(b, m.per, m.st, draw.Above, 3, []draw.Station{{At: x, Off: w}, {At: x + thick, Off: w}})...)
}

// shapedEnd is the outline of an end, its upper face at x, with the shapes of the edges near and far.
func shapedEnd(x, thick, w length.Length, near, far part.Profile) (path draw.Path) {
	n, f := taken(near, thick, w), taken(far, thick, w)
	corner := func(s length.Length, p part.Profile, from, to draw.Point) {
		v := draw.Vertex{Point: from}
		if s > 0 && p.Profile == "round-over" {
			v.Bulge = draw.Quarter()
		}
		path = append(path, v)
		if s > 0 {
			path = append(path, draw.Vertex{Point: to})
		}
	}
	path = append(path, draw.Vertex{Point: at(x+thick, 0)}, draw.Vertex{Point: at(x+thick, w)})
	corner(f, far, at(x+f, w), at(x, w-f))
	corner(n, near, at(x, n), at(x+n, 0))
	return path
}

// taken is how far a chamfer or round-over reaches along either face of its corner.
func taken(p part.Profile, thick, w length.Length) length.Length {
	if p.Profile != "chamfer" && p.Profile != "round-over" {
		return 0
	}
	return min(p.Size, thick, w.Half())
}
