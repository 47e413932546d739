package plot

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

// Measures of a plot, in millimetres of paper.
const (
	lineHigh = 4.2  // from one line of words to the next
	sample   = 9.0  // of a line or fill in the key
	beside   = 1.4  // from words to what they stand at
	dot      = 0.55 // radius of a point that was worked out
)

// sheet is the paper of one plot. X runs from 0 to wide; Y is 0 at the top and falls.
type sheet struct {
	to    length.Fineness
	wide  float64
	foot  float64 // the least Y that is taken
	room  *lettering.Room
	marks []draw.Mark
	words []draw.Mark
}

func newSheet(st draw.Style) *sheet {
	wide := float64(mostWide)
	if st.Width > 0 {
		wide = min(wide, max(st.Width, leastWide))
	}
	return &sheet{to: st.Fineness.Finer(), wide: wide, room: lettering.New(1)}
}

func at(x, y float64) draw.Point { return draw.Point{X: length.FromMM(x), Y: length.FromMM(y)} }

func box(x0, y0, x1, y1 float64) draw.Rect {
	return draw.Rect{Min: at(min(x0, x1), min(y0, y1)), Max: at(max(x0, x1), max(y0, y1))}
}

func (s *sheet) draw(m ...draw.Mark) { s.marks = append(s.marks, m...) }

func (s *sheet) line(pen draw.Pen, x0, y0, x1, y1 float64) {
	s.draw(draw.Line{Pen: pen, A: at(x0, y0), B: at(x1, y1)})
}

// kept draws a line that words keep off.
func (s *sheet) kept(pen draw.Pen, x0, y0, x1, y1 float64) {
	s.line(pen, x0, y0, x1, y1)
	s.room.KeepLine(at(x0, y0), at(x1, y1))
}

// point draws a dot.
func (s *sheet) point(x, y float64) {
	s.draw(draw.Area{Pen: draw.Outline, Outer: draw.Circle(at(x, y), length.FromMM(dot)), Fill: draw.Paper})
}

// text is a line of words with its anchor on the line the letters stand on.
func text(words string, x, y float64, a draw.Anchor) draw.Text {
	return draw.Text{At: at(x, y), Words: words, Height: draw.Lettering, Anchor: a}
}

// level is text whose figures stand in the middle of a height.
func level(words string, x, y float64, a draw.Anchor) draw.Text {
	return text(words, x, y-draw.Lettering*0.35, a)
}

func wide(words string) float64 {
	b := text(words, 0, 0, draw.Start).Box(1)
	return (b.Max.X - b.Min.X).MM()
}

// put sets words in the first of some places that is free and keeps within the sheet's width.
func (s *sheet) put(places ...draw.Text) bool {
	for _, t := range places {
		if b := t.Box(1); b.Min.X < 0 || b.Max.X > length.FromMM(s.wide) {
			continue
		}
		if t, ok := s.room.Put(t); ok {
			s.words = append(s.words, t)
			return true
		}
	}
	return false
}

// lead sets words beside a place within a box, with a leader to it; where there is no room they are left out.
func (s *sheet) lead(words string, x, y float64, within draw.Rect) bool {
	t := text(words, 0, 0, draw.Start)
	t.Strong = true // heavier letters are wider: they are placed as they are
	t, l, ok := s.room.Beside(t, at(x, y), within)
	if !ok {
		t, l, ok = s.room.Beside(text(words, 0, 0, draw.Start), at(x, y), within)
	}
	if ok {
		s.words = append(s.words, t)
		s.draw(l)
	}
	return ok
}

// item is a row of the key: what a line or fill means. A nil sample leaves only words.
type item struct {
	sample func(x, y float64) // draws from x to x + sample in the middle of a line
	words  string
}

// lineItem is a row of the key for a pen.
func (s *sheet) lineItem(p draw.Pen, words string) item {
	return item{func(x, y float64) { s.line(p, x, y, x+sample, y) }, words}
}

// fillItem is a row of the key for a fill.
func (s *sheet) fillItem(f draw.Fill, words string) item {
	return item{func(x, y float64) {
		s.draw(draw.Area{Pen: draw.Outline, Outer: draw.Rectangle(at(x, y-1.4), at(x+sample, y+1.4)), Fill: f})
	}, words}
}

// key lists what lines and fills mean under everything else.
func (s *sheet) key(items ...item) {
	s.foot -= 1.2
	for _, it := range items {
		x := 0.0
		if it.sample != nil {
			x = sample + beside
			it.sample(0, s.foot-lineHigh/2)
		}
		for _, l := range lettering.Wrap(text(it.words, 0, 0, draw.Start), length.FromMM(s.wide-x), 1) {
			s.put(level(fitted(l, s.wide-x), x, s.foot-lineHigh/2, draw.Start))
			s.foot -= lineHigh
		}
	}
}

// fitted cuts words off that are wider than a room and have no space to be broken at.
func fitted(words string, room float64) string {
	for rs := []rune(words); wide(words) > room && len(rs) > 0; {
		rs = rs[:len(rs)-1]
		words = strings.TrimRight(string(rs), " ") + "…"
	}
	return words
}

// show tells millimetres in the reader's units.
func (s *sheet) show(mm float64) string { return shown(mm, s.to) }

// shown tells a length; one that is less than a step of the tape, in decimals.
func shown(mm float64, to length.Fineness) string {
	if l := length.FromMM(mm); l.Abs() >= to.Step || l == 0 {
		return to.Text(l)
	}
	if to.Unit.Metric() {
		return digits(mm, 2) + " mm"
	}
	return digits(mm/length.Inch.MM(), 2) + " in"
}

// capital writes words with a capital.
func capital(words string) string {
	r, n := utf8.DecodeRuneInString(words)
	if n == 0 || r == utf8.RuneError {
		return words
	}
	return string(unicode.ToUpper(r)) + words[n:]
}

func clamp(v, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, v)) }
