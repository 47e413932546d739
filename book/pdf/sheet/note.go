package sheet

import (
	"rodwright/book"
	"rodwright/draw/typeface"
)

// bars are the edges of notes by what they are for: width in points and ink.
var bars = map[book.Tone]rule{
	book.Caution: {3, warning}, book.Wrong: {3, graphite}, book.Assumed: {3, pale}, book.Remark: {1, pale},
}

// manyItems is how many items a note has that are set smaller, so that they are seen together.
const manyItems = 10

// longNote is the share of a sheet above which a note may be parted even where a whole sheet would hold it.
const longNote = 0.3

// note sets a note in a box with a bar on its left, whole on a sheet unless it is long.
func (s *setter) note(n book.Note, at column) []strip {
	bar := bars[n.Tone]
	outer := at
	at.in = &frame{in: at.in, tag: "Div", paint: func(p Pen, x, top, height float64) {
		x += outer.x
		box(p, x, top-height, outer.width, height, 0.4, pale)
		straight(p, x+bar.width/2, top, x+bar.width/2, top-height, bar.width, bar.ink)
	}}
	at = at.indent(13)
	at.width -= 10
	st, words := bodyStyle, bodyStyle
	if len(n.Items) > manyItems {
		words = tableStyle
	}
	if n.Tone == book.Caution {
		st = st.in(warning)
	}
	var out []strip
	if n.Title != "" {
		out = held(s.noteTitle(n, st, at), hard)
	}
	in := at
	in.in = &frame{in: at.in, tag: "L"}
	for _, item := range n.Items {
		if len(n.Items) == 1 {
			out = append(out, s.text([]span{{words: item}}, words, at, "P")...)
			continue
		}
		out = append(out, s.item("●", grey, item, words, in)...)
	}
	if height(out) < longNote*s.room {
		out = held(out, soft)
	}
	out[len(out)-1].hold = loose
	return spaced(padded(out, 7), 10, 10)
}

// noteTitle sets the title of a note, behind the sign of warning where it warns.
func (s *setter) noteTitle(n book.Note, st style, at column) []strip {
	title := []span{{n.Title, true}}
	if n.Tone != book.Caution && n.Tone != book.Wrong {
		return s.text(title, st, at, "P")
	}
	sign := Block{X: at.x, Tag: "Lbl", Draw: func(p Pen, x, top float64) {
		show(p, "▲", x, top-st.lead/2-typeface.Capital/2*st.size, st.size, true, st.ink)
	}}
	out := s.text(title, st, at.indent(13), "P")
	return append([]strip{{hold: hard, in: at.in, blocks: []Block{sign}}}, out...)
}

// padded gives strips clear space within what they are in, above the first and below the last.
func padded(strips []strip, pad float64) []strip {
	first, last := &strips[0], &strips[len(strips)-1]
	first.blocks = append([]Block(nil), first.blocks...)
	for i := range first.blocks {
		first.blocks[i].Y += pad
	}
	first.height += pad
	last.height += pad
	return strips
}
