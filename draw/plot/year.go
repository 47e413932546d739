package plot

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
)

// mostCurves is how many lengths are drawn over one year; a hand tells no more apart.
const mostCurves = 6

// pens of the curves, in turn; letters tell them apart besides.
var curvePens = []draw.Pen{draw.Outline, draw.Hidden, draw.Centre, draw.Ghost}

// curve is one length over the year, with what is drawn of it.
type curve struct {
	finding.Line
	letter string
	pen    draw.Pen
	low    int // the index of the least value
}

// yearName names what is drawn over the year.
func yearName(f finding.Finding) string {
	if f.Figure.Unit == figure.MM && f.Figure.Name != "" {
		return f.Figure.Name
	}
	return "length"
}

// chart is the field of a plot over the year.
type chart struct {
	x0, x1, y0, y1 float64 // on paper
	lo, hi         float64 // mm at y0 and y1
	times          int
}

func (c chart) x(i int) float64 {
	if c.times < 2 {
		return (c.x0 + c.x1) / 2
	}
	return c.x0 + (c.x1-c.x0)*(float64(i)+0.5)/float64(c.times)
}

func (c chart) y(mm float64) float64 { return c.y0 + (c.y1-c.y0)*(mm-c.lo)/(c.hi-c.lo) }

// year draws lengths over the times of a year, with the limit below which something binds.
func (s *sheet) year(y finding.Year, name string) (alt string) {
	curves, more := curvesOf(y)
	if len(curves) == 0 || len(y.Times) == 0 {
		s.put(text("nothing is known over the year", 0, -lineHigh, draw.Start))
		return "Nothing is known of it over the year."
	}
	lo, hi := span(curves, y.Limit)
	t := lengthTicks(lo, hi, 6, s.to)
	c := chart{
		x0: t.widest() + beside, x1: s.wide - 6, y1: -lineHigh - 2.5, lo: lo, hi: hi, times: len(y.Times),
	}
	c.y0 = c.y1 - clamp(s.wide*0.45, 36, 56)
	s.axes(c, t, y, name)
	if finite(y.Limit) {
		s.kept(draw.Saw, c.x0, c.y(y.Limit), c.x1, c.y(y.Limit))
	}
	for _, k := range curves {
		s.curve(c, k)
	}
	s.letters(c, curves)
	s.lows(c, curves)
	s.foot = c.y0 - lineHigh - beside
	s.yearKey(curves, more, y)
	return yearAlt(s, y, curves)
}

// curvesOf returns the lines that have a number for some time, those that fall lowest first if not all can be
// drawn, and how many are left out.
func curvesOf(y finding.Year) (out []curve, more int) {
	for _, l := range y.Lines {
		k := curve{Line: l, low: -1}
		k.Values = l.Values[:min(len(l.Values), len(y.Times))]
		for i, v := range k.Values {
			if finite(v) && (k.low < 0 || v < k.Values[k.low]) {
				k.low = i
			}
		}
		if k.low >= 0 {
			out = append(out, k)
		}
	}
	if len(out) > mostCurves {
		slices.SortStableFunc(out, func(a, b curve) int {
			return cmp.Compare(a.Values[a.low], b.Values[b.low])
		})
		more = len(out) - mostCurves
		out = out[:mostCurves]
	}
	for i := range out {
		out[i].letter, out[i].pen = string(rune('a'+i)), curvePens[i%len(curvePens)]
	}
	return out, more
}

// span is the stretch of lengths to draw: every value and the limit, and nothing at all where that is near.
func span(curves []curve, limit float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	take := func(v float64) {
		if finite(v) {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	take(limit)
	for _, k := range curves {
		for _, v := range k.Values {
			take(v)
		}
	}
	if lo > 0 && lo < 0.6*hi {
		lo = 0
	}
	pad := max((hi-lo)*0.06, 0.05)
	if lo != 0 {
		lo -= pad
	}
	return lo, hi + pad
}

// axes draws the frame, the levels of length and the names of the times.
func (s *sheet) axes(c chart, t ticks, y finding.Year, name string) {
	s.draw(draw.Area{Pen: draw.Measure, Outer: draw.Rectangle(at(c.x0, c.y0), at(c.x1, c.y1)), Fill: draw.Paper})
	s.put(text(fitted(name+", "+t.unit, s.wide), 0, c.y1+2, draw.Start))
	for i, v := range t.at {
		s.line(draw.Hatching, c.x0, c.y(v), c.x1, c.y(v))
		s.put(level(t.words[i], c.x0-beside, c.y(v), draw.End))
	}
	words, every := timeWords(y.Times, (c.x1-c.x0)/float64(c.times))
	for i, w := range words {
		s.line(draw.Measure, c.x(i), c.y0, c.x(i), c.y0+0.9)
		if i%every == 0 {
			s.put(text(fitted(w, float64(every)*(c.x1-c.x0)/float64(c.times)-1), c.x(i), c.y0-beside-draw.Lettering*0.8, draw.Middle))
		}
	}
}

// timeWords returns the names of times as they fit into a width each, and at which of them they stand: whole, or
// cut to three letters, or every second, third or further one.
func timeWords(times []string, each float64) (words []string, every int) {
	widest := func(ws []string) (w float64) {
		for _, t := range ws {
			w = max(w, wide(t)+1.5)
		}
		return w
	}
	if len(times) < 12 && widest(times) <= each*float64((len(times)+2)/3) {
		return times, max(1, int(math.Ceil(widest(times)/each)))
	}
	for _, t := range times {
		rs := []rune(t)
		words = append(words, string(rs[:min(3, len(rs))]))
	}
	if widest(times) <= each {
		return times, 1
	}
	return words, max(1, int(math.Ceil(widest(words)/each)))
}

// curve draws one length over the year with a point for each time; a time that is not known leaves a gap.
func (s *sheet) curve(c chart, k curve) {
	for i := 1; i < len(k.Values); i++ {
		if a, b := k.Values[i-1], k.Values[i]; finite(a, b) {
			s.kept(k.pen, c.x(i-1), c.y(a), c.x(i), c.y(b))
		}
	}
	for i, v := range k.Values {
		if finite(v) {
			s.point(c.x(i), c.y(v))
		}
	}
}

// letters stand at the right end of the curves, moved apart where they would meet.
func (s *sheet) letters(c chart, curves []curve) {
	if len(curves) < 2 {
		return
	}
	type end struct {
		letter string
		y      float64
	}
	var ends []end
	for _, k := range curves {
		for i := len(k.Values) - 1; i >= 0; i-- {
			if finite(k.Values[i]) {
				ends = append(ends, end{k.letter, c.y(k.Values[i])})
				break
			}
		}
	}
	slices.SortStableFunc(ends, func(a, b end) int { return cmp.Compare(a.y, b.y) })
	var ys []length.Length
	for _, e := range ends {
		ys = append(ys, length.FromMM(e.y))
	}
	for i, y := range lettering.Spread(ys, length.FromMM(lineHigh)) {
		t := level(ends[i].letter, c.x1+beside, y.MM(), draw.Start)
		t.Strong = true
		s.put(t)
	}
}

// lows tells the least value of each curve under its place, or over it or beside; the key tells it where there is
// no room.
func (s *sheet) lows(c chart, curves []curve) {
	for _, k := range curves {
		x, y := c.x(k.low), c.y(k.Values[k.low])
		words, far := s.show(k.Values[k.low]), dot+beside
		var places []draw.Text
		for _, t := range []draw.Text{
			text(words, x, y-far-draw.Lettering*0.7, draw.Middle), text(words, x, y+far, draw.Middle),
			level(words, x+far, y, draw.Start), level(words, x-far, y, draw.End),
		} {
			t.Strong = true
			if b := t.Box(1); b.Min.Y > length.FromMM(c.y0) && b.Min.X > length.FromMM(c.x0) && b.Max.X < length.FromMM(c.x1) {
				places = append(places, t)
			}
		}
		s.put(places...)
	}
}

func (s *sheet) yearKey(curves []curve, more int, y finding.Year) {
	var items []item
	for _, k := range curves {
		words := k.Name
		if len(curves) > 1 {
			words = k.letter + ": " + words
		}
		items = append(items, s.lineItem(k.pen, fmt.Sprintf("%s: least %s, %s", words, s.show(k.Values[k.low]), y.Times[k.low])))
	}
	if finite(y.Limit) {
		items = append(items, s.lineItem(draw.Saw, "must stay above "+s.show(y.Limit)))
	}
	if more > 0 {
		items = append(items, item{nil, fmt.Sprintf("%d more are left out: none of them falls lower", more)})
	}
	s.key(items...)
}

func yearAlt(s *sheet, y finding.Year, curves []curve) string {
	alt := "Lengths over the year."
	for _, k := range curves {
		alt += fmt.Sprintf(" %s: least %s, %s.", capital(k.Name), s.show(k.Values[k.low]), y.Times[k.low])
	}
	if finite(y.Limit) {
		alt += fmt.Sprintf(" The least that is needed is %s.", s.show(y.Limit))
	}
	return alt
}
