package plot

import (
	"fmt"
	"math"

	"rodwright/draw"
	"rodwright/finding"
	"rodwright/length"
)

// Measures of a frame's picture.
const (
	frameHigh  = 90.0 // mm of paper, at most
	depthShare = 0.5  // of a length to the back, as it is drawn
	mostGrown  = 0.22 // of the frame's greatest extent: the largest movement as it is drawn
)

// oblique projects a place: lengths along the piece and up as they are, to the back at half their length and 30°
// to the right and up (cabinet projection, at another angle; ISO 5456-3, from memory).
func oblique(p [3]float64) [2]float64 {
	sin, cos := math.Sincos(math.Pi / 6)
	return [2]float64{p[0] + depthShare*cos*p[1], p[2] + depthShare*sin*p[1]}
}

// moved is a frame on paper: each stick before and after, and where it moves most.
type moved struct {
	before, after [][][2]float64
	from, to      [2]float64
	most          float64 // mm
	tag           string
	way           [3]float64
	grown         float64
}

// sway draws a frame as it stands, thin, and as it moves, heavy, with an arrow where it moves most.
func (s *sheet) sway(w finding.Sway) (alt string) {
	m, ok := movedOf(w)
	if !ok {
		s.put(text("how it moves is not known", 0, -lineHigh, draw.Start))
		return "How the frame moves is not known."
	}
	lo, hi := m.extent()
	width, height := max(hi[0]-lo[0], 1), max(hi[1]-lo[1], 1)
	scale := min((s.wide-4)/width, min(frameHigh, s.wide)/height)
	top := -lineHigh
	place := func(p [2]float64) (x, y float64) {
		return s.wide/2 + (p[0]-lo[0]-width/2)*scale, top - (hi[1]-p[1])*scale
	}
	s.sticks(draw.Ghost, m.before, place)
	s.sticks(draw.Outline, m.after, place)
	s.foot = top - height*scale
	s.mostMoved(m, place, box(0, s.foot-lineHigh, s.wide, 0))
	s.foot -= lineHigh
	s.key(
		s.lineItem(draw.Ghost, "as it stands"),
		s.lineItem(draw.Outline, fmt.Sprintf("as it moves, drawn %s times as far", digits(m.grown, 2))),
		s.lineItem(draw.Saw, "the most: "+s.mostWords(m)),
	)
	return "The frame from the front and a little from the right. It moves most, by " + s.mostWords(m) + "."
}

// movedOf projects a frame; false where there is nothing to draw. Movement that would be drawn larger than part
// of the frame is grown less.
func movedOf(w finding.Sway) (m moved, ok bool) {
	var size float64
	var first *[3]float64
	for _, st := range w.Sticks {
		for i, at := range points(st) {
			if first == nil {
				first = &at
			}
			size = max(size, distance(at, *first))
			if d := norm(st.Move[i]); d > m.most {
				m.most, m.tag, m.way = d, st.Tag, st.Move[i]
			}
			ok = true
		}
	}
	m.grown = w.Grown
	if !finite(m.grown) || m.grown <= 0 {
		m.grown = 1
	}
	if m.most > 0 && m.most*m.grown > mostGrown*size {
		m.grown = mostGrown * size / m.most
		if m.grown > 1 {
			m.grown = rounded(m.grown)
		}
	}
	m.project(w)
	return m, ok
}

// project sets every stick on paper before and after, and finds where it moves most.
func (m *moved) project(w finding.Sway) {
	found := false
	for _, st := range w.Sticks {
		var a, b [][2]float64
		for i, at := range points(st) {
			after := at
			for k := range after {
				after[k] += m.grown * st.Move[i][k]
			}
			a, b = append(a, oblique(at)), append(b, oblique(after))
			if d := norm(st.Move[i]); !found && d == m.most && d > 0 {
				m.from, m.to, found = oblique(at), oblique(after), true
			}
		}
		m.before, m.after = append(m.before, a), append(m.after, b)
	}
}

// points returns the places of a stick that can be drawn with their movements; the rest is left out.
func points(st finding.Moved) [][3]float64 {
	n := min(len(st.At), len(st.Move))
	for i := range n {
		if !finite(append(st.At[i][:], st.Move[i][:]...)...) {
			return nil
		}
	}
	return st.At[:n]
}

func norm(v [3]float64) float64 { return math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2]) }

func distance(a, b [3]float64) float64 {
	return norm([3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]})
}

func (m moved) extent() (lo, hi [2]float64) {
	lo, hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, all := range [][][][2]float64{m.before, m.after} {
		for _, st := range all {
			for _, p := range st {
				for k := range p {
					lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
				}
			}
		}
	}
	return lo, hi
}

func (s *sheet) sticks(pen draw.Pen, sticks [][][2]float64, place func([2]float64) (x, y float64)) {
	for _, st := range sticks {
		for i := 1; i < len(st); i++ {
			x0, y0 := place(st[i-1])
			x1, y1 := place(st[i])
			s.kept(pen, x0, y0, x1, y1)
		}
	}
}

// mostMoved draws an arrow along the greatest movement and tells how far it is.
func (s *sheet) mostMoved(m moved, place func([2]float64) (x, y float64), within draw.Rect) {
	if m.most <= 0 {
		return
	}
	x0, y0 := place(m.from)
	x1, y1 := place(m.to)
	s.kept(draw.Saw, x0, y0, x1, y1)
	if l := math.Hypot(x1-x0, y1-y0); l > 1 {
		ux, uy, head := (x1-x0)/l, (y1-y0)/l, 1.8
		s.draw(draw.Area{Pen: draw.Measure, Outer: draw.Path{
			{Point: at(x1, y1)},
			{Point: at(x1-head*ux+head*0.4*uy, y1-head*uy-head*0.4*ux)},
			{Point: at(x1-head*ux-head*0.4*uy, y1-head*uy+head*0.4*ux)},
		}, Fill: draw.Steel})
	} else {
		s.draw(draw.Arc{Pen: draw.Saw, Centre: at(x1, y1), Radius: length.FromMM(1.2), Sweep: 360})
	}
	s.lead(s.show(m.most), x1, y1, within)
}

// mostWords tells the greatest movement, its direction and the stick.
func (s *sheet) mostWords(m moved) string {
	words := s.show(m.most)
	if m.most > 0 {
		words += ", " + wayWords(m.way)
	}
	if m.tag != "" && m.most > 0 {
		words += ", at " + m.tag
	}
	return words
}

// wayWords tells the axis along which something moves most.
func wayWords(v [3]float64) string {
	names := [3][2]string{{"to the left", "to the right"}, {"to the front", "to the back"}, {"down", "up"}}
	k := 0
	for i := range v {
		if math.Abs(v[i]) > math.Abs(v[k]) {
			k = i
		}
	}
	if v[k] < 0 {
		return names[k][0]
	}
	return names[k][1]
}
