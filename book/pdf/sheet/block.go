package sheet

import (
	"rodwright/book"
	"rodwright/draw/typeface"
)

// column is where blocks are set: its distance from the left of the room, its width, and what it is in.
type column struct {
	x, width float64
	in       *frame
}

func (c column) indent(by float64) column { return column{c.x + by, c.width - by, c.in} }

// setLine draws a line of words whose upper edge is top.
func setLine(p Pen, l line, x, top, width float64, st style) {
	if st.right {
		x += width - l.width
	}
	baseline := top - st.lead/2 - typeface.Capital/2*st.size // the capitals stand in the middle
	for _, w := range l.pieces {
		show(p, w.words, x+w.x, baseline, st.size, w.strong, st.ink)
	}
}

// text sets words as one tagged block, a strip a line. Neither its first nor its last line stands alone.
func (s *setter) text(words []span, st style, at column, tag string) []strip {
	f := at.in
	if tag != "" {
		f = &frame{in: at.in, tag: tag}
	}
	for i := range words {
		s.know(words[i].words, s.place)
		words[i].strong = words[i].strong || st.strong
	}
	var out []strip
	for _, l := range wrap(words, st.size, at.width) {
		b := Block{X: at.x, Width: at.width, Height: st.lead, Draw: func(p Pen, x, top float64) {
			setLine(p, l, x, top, at.width, st)
		}}
		out = append(out, strip{height: st.lead, in: f, blocks: []Block{b}})
	}
	for i := range out {
		if n := len(out); n > 1 && (i == 0 || i == n-2) {
			out[i].hold = hard
		}
	}
	return out
}

// held makes every strip hold at least so firmly to the strip after it.
func held(strips []strip, h hold) []strip {
	out := append([]strip(nil), strips...)
	for i := range out {
		out[i].hold = max(out[i].hold, h)
	}
	return out
}

// spaced gives strips clear space above the first and below the last.
func spaced(strips []strip, before, after float64) []strip {
	strips[0].before, strips[len(strips)-1].after = before, after
	return strips
}

// heading sets a heading that stays with what follows, among the bookmarks at a level.
func (s *setter) heading(words string, st style, at column, tag string, level int, anchor string) []strip {
	at.in = &frame{in: at.in, tag: tag, outline: words, level: level, anchor: anchor}
	return held(s.text([]span{{words, true}}, st, at, ""), hard)
}

// section sets a section.
func (s *setter) section(sec book.Section, at column) []strip {
	at.in = &frame{tag: "Sect"}
	out := spaced(s.heading(sec.Title, sectionStyle, at, "H2", 1, sec.ID), 30, 8)
	out[0].fresh = sec.NewPage
	for i := 0; i < len(sec.Blocks); i++ {
		if _, ok := sec.Blocks[i].(book.Figure); !ok {
			out = append(out, s.set(sec.Blocks[i], at)...)
			continue
		}
		row := figureRow(sec.Blocks[i:], at.width)
		out = append(out, s.figures(row, at)...)
		i += len(row) - 1
	}
	out[len(out)-1].hold = loose
	return out
}

// set sets one block; figures are set in rows by section.
func (s *setter) set(b book.Block, at column) []strip {
	switch b := b.(type) {
	case book.Paragraph:
		return spaced(s.text([]span{{words: b.Words}}, bodyStyle, at, "P"), 4, 6)
	case book.Table:
		return s.table(b, at)
	case book.Note:
		return s.note(b, at)
	case book.List:
		return s.list(b, at)
	case book.Step:
		return s.step(b, at)
	}
	return nil // what is no block is refused by check
}

// list sets a list, with boxes to tick or dots.
func (s *setter) list(l book.List, at column) (out []strip) {
	at.in = &frame{in: at.in, tag: "L"}
	sign := "●"
	if l.Ticks {
		sign = "☐"
	}
	for _, words := range l.Items {
		out = append(out, s.item(sign, graphite, words, bodyStyle, at)...)
	}
	if len(out) == 0 {
		return nil
	}
	return spaced(out, 4, 8)
}

// item sets one item of a list behind its sign.
func (s *setter) item(sign string, c Ink, words string, st style, at column) []strip {
	at.in = &frame{in: at.in, tag: "LI"}
	size := st.size
	if sign == "●" {
		size /= 2
	}
	out := s.text([]span{{words: words}}, st, at.indent(15), "LBody")
	mark := Block{X: at.x, Width: 10, Height: st.lead, Tag: "Lbl", Draw: func(p Pen, x, top float64) {
		show(p, sign, x, top-st.lead/2-typeface.Capital/2*size, size, false, c)
	}}
	lead := strip{height: 0, hold: hard, in: at.in, before: 2, blocks: []Block{mark}}
	return append([]strip{lead}, spaced(out, 0, 2)...)
}
