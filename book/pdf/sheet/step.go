package sheet

import (
	"math"
	"strconv"

	"rodwright/book"
)

// stepIndent is how far the words of a step stand from its number.
const stepIndent = 40.0

// step sets a step, whole on a sheet where it fits: its number, a box to tick, what it takes, what to do.
func (s *setter) step(t book.Step, at column) []strip {
	at.in = &frame{in: at.in, tag: "Sect"}
	number := strconv.Itoa(t.Number)
	body := at.indent(stepIndent)
	size := math.Min(numberStyle.size, (stepIndent-8)/measure(number, 1, true))
	head := body
	head.width -= 20
	out := s.heading(t.Title, stepStyle, head, "H3", 2, "")
	out[0].in.outline = number + "  " + t.Title
	out[0].blocks = append([]Block{{X: at.x, Draw: func(p Pen, x, top float64) {
		show(p, number+" ", x, top-19, size, true, graphite)
	}}}, out[0].blocks...)
	rule := strip{hold: hard, in: at.in, blocks: []Block{{X: at.x, Tag: artifact, Draw: func(p Pen, x, top float64) {
		straight(p, x, top+5, x+at.width, top+5, 0.4, pale)
		show(p, "☐", x+at.width-11, top-12, 12, false, grey)
	}}}}
	for _, l := range [...]struct{ name, words string }{
		{"Parts", t.Parts}, {"Tool", t.Tool}, {"Time", t.Time}, {"After", t.After},
	} {
		if l.words != "" {
			out = append(out, s.labelled(l.name, l.words, body)...)
		}
	}
	in := body
	in.in = &frame{in: at.in, tag: "L"}
	for _, m := range t.Measures {
		out = append(out, s.item("●", graphite, m, bodyStyle, in)...)
	}
	for _, c := range t.Cautions {
		out = append(out, s.item("▲", warning, c, bodyStyle.in(warning), in)...)
	}
	if len(out) == 1 {
		out[0].height += 10 // the number is higher than one line
	}
	out = spaced(held(append([]strip{rule}, out...), soft), 18, 4)
	out[len(out)-1].hold = loose
	return out
}

// labelled sets words behind a word that says what they are.
func (s *setter) labelled(label, words string, at column) []strip {
	out := s.text([]span{{words: words}}, captionStyle, at.indent(36), "P")
	out[0].blocks = append([]Block{{X: at.x, Draw: func(p Pen, x, top float64) {
		l := wrap([]span{{label + " ", true}}, captionStyle.size, at.width)[0]
		setLine(p, l, x, top, at.width, captionStyle)
	}}}, out[0].blocks...)
	return out
}
