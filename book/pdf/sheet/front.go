package sheet

import (
	"fmt"
	"strconv"

	"rodwright/book"
)

// leastView is the least share of the title's sheet that is left to the view of the piece.
const leastView = 0.25

// front sets the title, the view of the piece from the front and the contents. Pages are the numbers of the
// sheets by anchor; nil while they are not known.
func (s *setter) front(d *book.Document, pages map[string]int) []strip {
	at := column{width: s.width, in: &frame{tag: "Sect"}}
	title := at
	title.in = &frame{in: at.in, tag: "H1"}
	out := spaced(s.text([]span{{words: d.Title}}, titleStyle, title, ""), 0, 4)
	if d.Subtitle != "" {
		out = append(out, s.text([]span{{words: d.Subtitle}}, leadStyle, at, "P")...)
	}
	if d.Units != "" {
		out = append(out, s.text([]span{{words: "Measured in " + d.Units + "."}}, captionStyle, at, "P")...)
	}
	contents := s.contents(d, at, pages)
	line := strip{height: 10, after: 18, in: at.in, blocks: []Block{{Y: 10, Tag: artifact, Draw: func(p Pen, x, top float64) {
		straight(p, x, top, x+at.width, top, 1.2, graphite)
	}}}}
	out = append(out, line)
	room := s.room - height(out) - line.after - 24 - height(contents)
	if room < leastView*s.room { // a long list of contents goes to its own sheet
		room = s.room - height(out) - line.after
		contents[0].fresh = true
	}
	if f, ok := frontView(d); ok {
		blocks, high := s.figure(book.Figure{Drawing: f.Drawing}, at, room)
		out = append(out, strip{height: high, after: 24, in: at.in, blocks: blocks})
	}
	return append(out, contents...)
}

// frontView returns the figure for the title: the view from the front, or the first there is.
func frontView(d *book.Document) (first book.Figure, ok bool) {
	for _, sec := range d.Sections {
		for _, b := range sec.Blocks {
			f, is := b.(book.Figure)
			if is && f.Drawing.ID == "front" {
				return f, true
			}
			if is && !ok {
				first, ok = f, true
			}
		}
	}
	return first, ok
}

// contents sets the list of sections with their sheets.
func (s *setter) contents(d *book.Document, at column, pages map[string]int) []strip {
	at.in = &frame{in: at.in, tag: "TOC"}
	out := held(s.text([]span{{"Contents", true}}, stepStyle, at, "P"), hard)
	out[0].after = 4
	for _, sec := range d.Sections {
		in := at
		in.in = &frame{in: at.in, tag: "TOCI", link: sec.ID}
		in.width -= 30
		entry := s.text([]span{{words: sec.Title}}, bodyStyle, in, "")
		last := &entry[len(entry)-1]
		last.blocks = append(last.blocks, number(pages[sec.ID], at))
		last.after = 1.5
		out = append(out, held(entry[:len(entry)-1], hard)...)
		out = append(out, *last)
	}
	return out
}

// number is the number of a sheet at the right of a list, a thin line under both.
func number(n int, at column) Block {
	return Block{X: at.x, Width: at.width, Height: bodyStyle.lead, Draw: func(p Pen, x, top float64) {
		straight(p, x, top-bodyStyle.lead, x+at.width, top-bodyStyle.lead, 0.25, pale)
		if n > 0 {
			words := " " + strconv.Itoa(n) // the blank is for who reads the file by its marks
			l := line{[]piece{{span: span{words: words}}}, measure(words, bodyStyle.size, false)}
			setLine(p, l, x, top, at.width, bodyStyle.flushRight())
		}
	}}
}

// artifact is the tag of what is drawn on a sheet but not read: ISO 32000-2, 14.8.2.2.
const artifact = "Artifact"

// foot sets the foot of a sheet: the title and units, and which sheet of how many.
func (s *setter) foot(d *book.Document, n, of int) Block {
	width := s.width
	right := wrap([]span{{words: fmt.Sprintf("page %d of %d", n, of)}}, captionStyle.size, width)[0]
	left := wrap([]span{{d.Title, true}, {words: "  ·  " + d.Units}}, captionStyle.size, width-right.width-20)[0]
	s.place = "the foot of the sheets"
	s.know(d.Title+" "+d.Units, s.place)
	return Block{
		X: s.left(), Y: s.top() + s.room + 18, Width: width, Height: captionStyle.lead, Tag: artifact,
		Draw: func(p Pen, x, top float64) {
			straight(p, x, top, x+width, top, 0.4, pale)
			setLine(p, left, x, top-4, width, captionStyle)
			setLine(p, right, x, top-4, width, captionStyle.flushRight())
		},
	}
}
