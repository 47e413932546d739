// Package sheet sets a book on sheets of paper: it breaks words into lines, places tables, figures, notes and
// steps, and says what stands where. It knows no file format: what it returns draws itself with a Pen.
//
// The words: a block is a rectangle of a sheet with what is drawn in it; a strip is as wide as the sheet's room
// and never parted; a frame is what several strips belong to, such as a table. Lengths are points, 1/72 in;
// places within a block are measured from its upper left corner downwards, what a Pen is told from the lower
// left corner of the sheet upwards. Start with Of.
package sheet

import (
	"rodwright/book"
	"rodwright/draw"
)

// Ink is a tone of grey or colour: red, green and blue from 0 to 1.
type Ink [3]float64

// Brush says how a path is drawn.
type Brush struct {
	Stroke, Fill *Ink // nil: no line, not filled; filled by the even-odd rule
	Width        float64
	Dashes       []float64 // nil for a solid line
	Says         string    // the character that the path stands for; empty for none
}

// Pen draws on a sheet.
type Pen interface {
	Words(words string, x, y, size float64, strong bool, c Ink) // on the line that begins at x, y
	Path(path []draw.Segment, b Brush)
	Within(a, b, c, d, e, f float64, draw func()) // x, y within draw stand at ax+cy+e, bx+dy+f
}

// Block is a rectangle of a sheet.
type Block struct {
	X, Y, Width, Height float64 // of the upper left corner from that of what it is in, Y downwards

	Tag     string // its type in ISO 32000's structure tree; empty for none; Artifact for what is not read
	Alt     string // what a figure shows
	Outline string // its name among the bookmarks; empty for none
	Level   int    // of the bookmark, from 1
	Anchor  string // its name as a place that links lead to
	Link    string // the anchor where a click leads

	Draw     func(p Pen, x, top float64) // nil where only the children draw
	Children []Block
}

// Book is a book on its sheets, each a Block of the sheet's size.
type Book struct {
	Width, Height float64
	Sheets        []Block
}

// Of sets a document. It fails when the document can't be set: no sections, a table whose rows are not as
// long as its head, a letter that the embedded type lacks; the error names the place.
func Of(d *book.Document) (Book, error) {
	if err := check(d); err != nil {
		return Book{}, err
	}
	s := newSetter(d.Paper)
	var body []strip
	for _, sec := range d.Sections {
		s.place = "section " + sec.Title
		body = append(body, s.section(sec, column{width: s.width})...)
	}
	body[0].fresh = true
	s.place = "the title"
	// The list of contents is as high with any numbers: what it is set with first does not matter.
	pages := paginate(append(s.front(d, nil), body...), s.room)
	pages = paginate(append(s.front(d, anchors(pages)), body...), s.room)
	out := Book{Width: s.paper.width, Height: s.paper.height}
	for i, p := range pages {
		out.Sheets = append(out.Sheets, s.sheet(d, p, i, len(pages)))
	}
	return out, s.wrong
}

// sheet returns one sheet with its foot.
func (s *setter) sheet(d *book.Document, p page, i, of int) Block {
	room := Block{X: s.left(), Y: s.top(), Width: s.width, Height: s.room, Children: nest(p, s.width, 0)}
	b := Block{Width: s.paper.width, Height: s.paper.height, Children: []Block{room}}
	if i > 0 {
		b.Children = append(b.Children, s.foot(d, i+1, of))
	}
	return b
}

// anchors returns the numbers of the sheets, from 1, on which the named places stand.
func anchors(pages []page) map[string]int {
	out := map[string]int{}
	for i, p := range pages {
		for _, s := range p {
			for _, f := range s.in.chain() {
				if f.anchor != "" && out[f.anchor] == 0 {
					out[f.anchor] = i + 1
				}
			}
		}
	}
	return out
}
