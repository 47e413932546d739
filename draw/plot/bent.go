package plot

import (
	"fmt"
	"math"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
)

// Measures of a panel's picture, in millimetres of paper.
const (
	planHigh    = 70.0 // of the map at most
	sectionHigh = 13.0 // of the deepest sag in the section
	support     = 1.6  // of the sign of a support
)

// sagLimit is the limit of a finding whose figure is the sag that its picture shows; 0 where it is not.
func sagLimit(f finding.Finding) float64 {
	if f.Picture.Bent == nil || f.Figure.Unit != figure.MM || f.Limit.Unit != figure.MM || f.Limit.Missing() || !finite(f.Figure.Value, f.Limit.Value) {
		return 0
	}
	g, ok := gridOf(*f.Picture.Bent)
	_, _, _, hi, some := g.deepest()
	if !ok || !some || math.Abs(hi-f.Figure.Value) > 0.02*math.Abs(f.Figure.Value) {
		return 0
	}
	return f.Limit.Value
}

// plan turns places on the panel into places on paper.
type plan struct{ x0, y0, scale float64 }

func (p plan) at(x, y float64) (px, py float64) { return p.x0 + x*p.scale, p.y0 + y*p.scale }

// bent draws a panel from above with lines of equal sag, and beneath it the line from left to right through the
// deepest place, sagging as many times more than it does as the key tells.
func (s *sheet) bent(b finding.Bent, limit float64) (alt string) {
	g, ok := gridOf(b)
	i, j, lo, hi, some := g.deepest()
	if !ok || !some {
		s.put(text("the sag is not known", 0, -lineHigh, draw.Start))
		return "How far it sags is not known."
	}
	scale := min((s.wide-2)/g.width, planHigh/g.depth)
	top := -lineHigh - 1
	p := plan{(s.wide - g.width*scale) / 2, top - g.depth*scale, scale}
	s.put(text("back", s.wide/2, top+1, draw.Middle))
	for _, e := range g.edges() {
		x0, y0 := p.at(e.x0, e.y0)
		x1, y1 := p.at(e.x1, e.y1)
		s.kept(draw.Outline, x0, y0, x1, y1)
	}
	levels := lengthTicks(lo, hi, 9, s.to)
	s.borne(p, g, b.Supports)
	s.deep(p, g, i, j, hi)
	s.contours(p, g, levels)
	s.put(text("front", s.wide/2, p.y0-draw.Lettering, draw.Middle))
	grown := s.section(p, g, j, hi, limit, b.Supports)
	s.bentKey(b, hi, limit, grown)
	return s.bentAlt(g, i, j, hi, limit)
}

// borne marks where the panel is borne: a small triangle under each place, at the panel's edge for one that lies
// beyond it.
func (s *sheet) borne(p plan, g grid, supports [][2]float64) {
	for _, at := range supports {
		if finite(at[0], at[1]) {
			x, y := p.at(min(max(at[0], 0), g.width), min(max(at[1], 0), g.depth))
			s.triangle(x, y+support/2)
			s.room.Keep(box(x-support/2, y-support/2, x+support/2, y+support/2))
		}
	}
}

// triangle is the sign of a support with its tip at a place.
func (s *sheet) triangle(x, y float64) {
	s.draw(draw.Area{Pen: draw.Measure, Outer: draw.Path{
		{Point: at(x, y)}, {Point: at(x-support/2, y-support)}, {Point: at(x+support/2, y-support)},
	}, Fill: draw.Steel})
}

// deep points at the deepest place.
func (s *sheet) deep(p plan, g grid, i, j int, hi float64) {
	x, y := p.at(g.x(float64(i)), g.y(float64(j)))
	s.point(x, y)
	s.lead(s.show(hi), x, y, box(0, p.y0, s.wide, p.y0+g.depth*p.scale))
}

// contours draws the lines of equal sag and tells the sag of each on it, where no other line runs through the
// words.
func (s *sheet) contours(p plan, g grid, levels ticks) {
	lines := make([][]piece, len(levels.at))
	for k, lvl := range levels.at {
		for _, c := range g.contour(lvl) {
			x0, y0 := p.at(c.x0, c.y0)
			x1, y1 := p.at(c.x1, c.y1)
			lines[k] = append(lines[k], piece{x0, y0, x1, y1})
			s.line(draw.Grain, x0, y0, x1, y1)
		}
	}
	for k, words := range levels.words {
		others := lettering.New(1)
		for n, line := range lines {
			for _, c := range line {
				if n != k {
					others.KeepLine(at(c.x0, c.y0), at(c.x1, c.y1))
				}
			}
		}
		s.contourWords(words, lines[k], others)
	}
}

// contourWords sets the words of a contour on the first piece of it, from the middle of the line outwards, that
// has room.
func (s *sheet) contourWords(words string, line []piece, others *lettering.Room) {
	n := len(line)
	for k := range n {
		i := n/2 + (k+1)/2
		if k%2 == 1 {
			i = n/2 - (k+1)/2
		}
		c := line[clampIndex(i, n)]
		t := level(words, (c.x0+c.x1)/2, (c.y0+c.y1)/2, draw.Middle)
		t.Height = draw.Small
		if others.Free(t.Box(1)) && s.put(t) {
			return
		}
	}
}

func clampIndex(i, n int) int { return max(0, min(n-1, i)) }

// section draws the line through the deepest place from the front, and returns how many times it is grown.
func (s *sheet) section(p plan, g grid, j int, hi, limit float64, supports [][2]float64) (grown float64) {
	s.foot = p.y0 - draw.Lettering - 2.5
	_, _, lo, _, _ := g.deepest()
	most := max(hi, -lo, limit, 1e-6) // a panel may rise beyond its supports as well
	grown = math.Max(1, rounded(sectionHigh/most/p.scale))
	down := sectionHigh / most
	zero := s.foot - support
	left, _ := p.at(0, 0)
	right, _ := p.at(g.width, 0)
	s.line(draw.Ghost, left, zero, right, zero)
	for i := 1; i < g.columns; i++ {
		a, b := g.at(i-1, j), g.at(i, j)
		if finite(a, b) {
			x0, _ := p.at(g.x(float64(i-1)), 0)
			x1, _ := p.at(g.x(float64(i)), 0)
			s.kept(draw.Outline, x0, zero-a*down, x1, zero-b*down)
		}
	}
	near := g.depth / float64(g.rows-1)
	for _, at := range supports {
		if finite(at[0], at[1]) && math.Abs(at[1]-g.y(float64(j))) <= near {
			x, _ := p.at(min(max(at[0], 0), g.width), 0)
			s.triangle(x, zero-0.3)
		}
	}
	if limit > 0 {
		s.kept(draw.Saw, left, zero-limit*down, right, zero-limit*down)
	}
	s.foot = zero - max(most*down, support) - 1
	return grown
}

// rounded returns one significant digit of a number, or two from ten on.
func rounded(v float64) float64 {
	if !finite(v) || v <= 0 {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(v)))
	return math.Round(v/ten) * ten
}

func (s *sheet) bentKey(b finding.Bent, hi, limit, grown float64) {
	items := []item{
		s.lineItem(draw.Grain, "lines of equal sag, "+unitWord(s.to)),
		s.lineItem(draw.Outline, fmt.Sprintf("beneath: along the deepest line, sag drawn about %s times as large; deepest %s", digits(grown, 2), s.show(hi))),
		s.lineItem(draw.Ghost, "as it lies without load"),
	}
	if len(b.Supports) > 0 {
		items = append(items, item{func(x, y float64) { s.triangle(x+sample/2, y+support/2) }, "borne here"})
	}
	if limit > 0 {
		items = append(items, s.lineItem(draw.Saw, "may sag "+s.show(limit)))
	}
	s.key(items...)
}

func unitWord(to length.Fineness) string {
	if to.Unit.Metric() {
		return "mm"
	}
	return "in"
}

func (s *sheet) bentAlt(g grid, i, j int, hi, limit float64) string {
	alt := fmt.Sprintf("A panel of %s by %s seen from above. It sags most, by %s, at %s from the left and %s from the front",
		s.show(g.width), s.show(g.depth), s.show(hi), s.show(g.x(float64(i))), s.show(g.y(float64(j))))
	if limit > 0 {
		alt += "; it may sag " + s.show(limit)
	}
	return alt + "."
}
