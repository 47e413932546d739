package marking

import (
	"cmp"
	"slices"
	"strings"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

// stop is a place that is measured from the datum along an axis.
type stop struct {
	at   length.Length
	off  length.Length // how far the line from the measure reaches into the panel
	of   []string      // the letters of the features it belongs to, and what is screwed on there
	wall bool          // a wall of an opening, not the middle of a hole
}

// stopsOf gathers what is measured along an axis, 0 along the grain and 1 across, in ascending order: the
// walls of notches, cut-outs and pockets, the middles of holes, those of what is screwed on. What prints alike
// is one stop; an edge of the panel is none.
func (m *marker) stopsOf(axis int) (out []stop) {
	end := m.p.Finished[axis]
	add := func(at, off length.Length, of string, wall bool) {
		if at > 0 && at < end {
			out = append(out, stop{at, min(max(off, 0), m.p.Finished[1-axis]), []string{of}, wall})
		}
	}
	for i, f := range m.p.Features {
		if centred(f) {
			for _, c := range centres(f) {
				add(c[axis], c[1-axis], Letter(i), false)
			}
			continue
		}
		off := f.At[1-axis] + f.Size[1-axis]
		add(f.At[axis], off, Letter(i), true)
		add(f.At[axis]+f.Size[axis], off, Letter(i), true)
	}
	for _, x := range m.fixings {
		add(x.at[axis], x.at[1-axis], x.short(), false)
	}
	return merged(out, m.st.Fineness)
}

// merged sorts stops and makes one of those that print alike; its line reaches to the farthest of them.
func merged(in []stop, to length.Fineness) (out []stop) {
	slices.SortStableFunc(in, func(a, b stop) int { return cmp.Compare(a.at, b.at) })
	for _, s := range in {
		n := len(out) - 1
		if n < 0 || to.Round(out[n].at) != to.Round(s.at) {
			out = append(out, s)
			continue
		}
		out[n].off, out[n].wall = max(out[n].off, s.off), out[n].wall || s.wall
		if !slices.Contains(out[n].of, s.of[0]) {
			out[n].of = append(out[n].of, s.of[0])
		}
	}
	return out
}

// words are what is written at a stop: the features, then the measure.
func (s stop) words(to length.Fineness) string {
	return ranges(s.of) + ": " + to.Number(s.at)
}

// ranges lists letters, three and more that follow each other as the first and the last: a, c–f.
func ranges(letters []string) string {
	var out []string
	for i := 0; i < len(letters); {
		j := i + 1
		for j < len(letters) && len(letters[j]) == 1 && len(letters[j-1]) == 1 && letters[j][0] == letters[j-1][0]+1 {
			j++
		}
		if j-i > 2 {
			out = append(out, letters[i]+"–"+letters[j-1])
		} else {
			out = append(out, letters[i:j]...)
		}
		i = j
	}
	return strings.Join(out, ", ")
}

// lane is where a row of running measures stands: along an axis, at a place of the other, its words on the
// far side of it.
type lane struct {
	axis  int
	at    length.Length
	far   length.Length // 1 or -1: the way out from the panel
	edge  length.Length // of the panel, where the lane's own line from the datum begins
	stops []stop
}

// lanes shares the stops along an axis out: all in one lane, below or on the left, where their words have room
// side by side along the panel; else the middles of holes and fixings on the other side.
func (m *marker) lanes(axis int) []lane {
	stops := m.stopsOf(axis)
	near := lane{axis: axis, at: -m.full(first), far: -1, stops: stops}
	if len(stops) == 0 {
		return nil
	}
	room := int((m.p.Finished[axis] + m.full(12)) / m.gap())
	if len(stops)+1 <= room {
		return []lane{near}
	}
	other := lane{axis: axis, at: m.p.Finished[1-axis] + m.full(first), far: 1, edge: m.p.Finished[1-axis]}
	near.stops = nil
	for _, s := range stops {
		if s.wall {
			near.stops = append(near.stops, s)
		} else {
			other.stops = append(other.stops, s)
		}
	}
	return slices.DeleteFunc([]lane{near, other}, func(l lane) bool { return len(l.stops) == 0 })
}

// gap is how far the words of neighbouring stops stand from each other, middle to middle.
func (m *marker) gap() length.Length { return m.full(words + 1) }

// rows draws the running measures along both axes.
func (m *marker) rows() {
	for axis := range 2 {
		for _, l := range m.lanes(axis) {
			m.lane(l)
		}
	}
}

// lane draws one row: a line from the datum, a line from each stop to it, and the measures.
func (m *marker) lane(l lane) {
	m.kept(draw.Measure, l.point(0, l.at), l.point(l.stops[len(l.stops)-1].at, l.at))
	m.add(draw.Arc{Pen: draw.Measure, Centre: l.point(0, l.at), Radius: m.full(0.7), Sweep: 360})
	m.kept(draw.Measure, l.point(0, l.edge+l.far*m.full(1)), l.point(0, l.at))
	places := []length.Length{0}
	for _, s := range l.stops {
		p := l.point(s.at, l.at)
		d := m.full(0.8)
		m.kept(draw.Measure, l.point(s.at, s.off), p)
		m.line(draw.Measure, at(p.X-d, p.Y-d), at(p.X+d, p.Y+d))
		places = append(places, s.at)
	}
	for i, x := range lettering.Within(lettering.Spread(places, m.gap()), m.gap(), 0, length.Max) {
		text := "0"
		if i > 0 {
			text = l.stops[i-1].words(m.st.Fineness)
		}
		foot := l.at + l.far*m.full(2.2)
		if x != places[i] {
			m.kept(draw.Measure, l.point(places[i], l.at), l.point(x, foot))
		}
		m.put(m.measure(l, x, foot+l.far*m.full(0.5), text))
	}
}

// point is a place of a lane: along it, and off it.
func (l lane) point(along, off length.Length) draw.Point {
	if l.axis == 0 {
		return at(along, off)
	}
	return at(off, along)
}

// measure is the words of a stop, upright under a level lane.
func (m *marker) measure(l lane, along, off length.Length, text string) draw.Text {
	t := draw.Text{Words: text, Height: words, Turned: l.axis == 0, Anchor: draw.Start}
	if l.far < 0 {
		t.Anchor = draw.End
	}
	half := m.full(words * 0.35)
	if l.axis == 1 {
		half = -half
	}
	t.At = l.point(along+half, off)
	return t
}
