package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"rodwright/draw/typeface"
)

// The inks: graphite for words and edges, paler ones for what should stand back, one warning colour.
var (
	graphite = Ink{0.13, 0.14, 0.16}
	grey     = Ink{0.38, 0.39, 0.42}
	pale     = Ink{0.72, 0.73, 0.75}
	warning  = Ink{0.68, 0.25, 0.06}
	white    = Ink{1, 1, 1}
)

// style is how words are set: their size and the distance of lines in points.
type style struct {
	size, lead float64
	strong     bool
	ink        Ink
	right      bool // flush right
}

// The styles of the book, big before small.
var (
	titleStyle   = style{30, 36, true, graphite, false}
	numberStyle  = style{22, 24, true, graphite, false}
	sectionStyle = style{17, 22, true, graphite, false}
	stepStyle    = style{11.5, 15, true, graphite, false}
	leadStyle    = style{12, 17, false, grey, false}
	bodyStyle    = style{9.75, 13.75, false, graphite, false}
	tableStyle   = style{8.75, 11.5, false, graphite, false}
	captionStyle = style{8.5, 11.5, false, grey, false}
)

func (s style) bold() style       { s.strong = true; return s }
func (s style) in(i Ink) style    { s.ink = i; return s }
func (s style) flushRight() style { s.right = true; return s }

// span is words of one weight.
type span struct {
	words  string
	strong bool
}

// piece is a span at its place on a line.
type piece struct {
	span
	x float64
}

// line is one line of words and its width.
type line struct {
	pieces []piece
	width  float64
}

// units are words that stay with the number before them.
var units = []string{"in", "ft", "mm", "m", "lb", "kg", "h", "min", "%", "°", "×", "of"}

// wrap breaks words into lines no wider than width. A number stays with its fraction, its unit and ≈; a word
// wider than the line is broken after a mark, or where the line ends.
func wrap(spans []span, size, width float64) []line {
	var out []line
	var now line
	for _, w := range tokens(spans) {
		gap := 0.0
		if w.spaced && len(now.pieces) > 0 {
			gap = measure(" ", size, w.strong)
		}
		for {
			wide := measure(w.words, size, w.strong)
			if now.width+gap+wide <= width+1e-6 {
				now.add(w.span, gap, wide)
				break
			}
			if n := len(now.pieces); n > 0 {
				if w.spaced { // it is not seen, but who reads the file by its marks needs it
					now.pieces[n-1].words += " "
				}
				out, now, gap = append(out, now), line{}, 0
				continue
			}
			head := fitting(w.span, size, width)
			now.add(span{w.words[:head], w.strong}, 0, measure(w.words[:head], size, w.strong))
			w.words = w.words[head:]
			if w.words == "" {
				break
			}
		}
	}
	return append(out, now)
}

// add sets more words on the line.
func (l *line) add(s span, gap, wide float64) {
	if n := len(l.pieces); n > 0 && l.pieces[n-1].strong == s.strong {
		if gap > 0 {
			s.words = " " + s.words
		}
		l.pieces[n-1].words += s.words
	} else {
		if gap > 0 {
			l.pieces[n-1].words += " "
		}
		l.pieces = append(l.pieces, piece{s, l.width + gap})
	}
	l.width += gap + wide
}

// token is words that are not parted, and whether a space stands before them.
type token struct {
	span
	spaced bool
}

func tokens(spans []span) (out []token) {
	for _, s := range spans {
		words := typeface.Fractions(s.words)
		fields := strings.FieldsFunc(words, blank)
		for i, f := range fields {
			spaced := i > 0 || strings.IndexFunc(words, blank) == 0
			if n := len(out); i > 0 && n > 0 && together(out[n-1].words, f) {
				out[n-1].words += " " + f
				continue
			}
			out = append(out, token{span{f, s.strong}, spaced || len(out) > 0 && s.strong != out[len(out)-1].strong})
		}
	}
	return out
}

func blank(r rune) bool { return r == ' ' || r == '\n' || r == '\t' || r == '\r' }

// together says that a line does not end between two words: a number, and its fraction or unit or what says
// that it is rounded.
func together(a, b string) bool {
	if a == "≈" || a == "±" {
		return true
	}
	last, _ := utf8.DecodeLastRuneInString(a)
	if last < '0' || last > '9' && (last < '₀' || last > '₉') {
		return false
	}
	return strings.ContainsRune(b, '⁄') || slices.Contains(units, strings.TrimRight(b, ".,;:)"))
}

// fitting returns how many bytes of a word too wide for the line stand on it: at least one letter.
func fitting(s span, size, width float64) int {
	best, mark := 0, 0
	for i, r := range s.words {
		end := i + utf8.RuneLen(r)
		if best > 0 && measure(s.words[:end], size, s.strong) > width {
			break
		}
		best = end
		if strings.ContainsRune("-–/_.,;:", r) {
			mark = end
		}
	}
	if mark > best/2 {
		return mark
	}
	return best
}

// measure returns the width of words; size and width are in the same unit.
func measure(words string, size float64, strong bool) (width float64) {
	for len(words) > 0 {
		plain, sign, rest := cutSign(words)
		width += typeface.Width(plain, size, strong)
		if sign != 0 {
			width += signAdvance * size
		}
		words = rest
	}
	return width
}

// show writes words on the line that begins at x, y, signs drawn. Fractions are true ones already.
func show(p Pen, words string, x, y, size float64, strong bool, c Ink) {
	for len(words) > 0 {
		plain, sign, rest := cutSign(words)
		if plain != "" {
			p.Words(plain, x, y, size, strong, c)
			x += typeface.Width(plain, size, strong)
		}
		if sign != 0 {
			drawSign(p, sign, x, y, size, c)
			x += signAdvance * size
		}
		words = rest
	}
}
