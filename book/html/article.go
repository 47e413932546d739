package html

import (
	_ "embed" // the templates
	"fmt"
	"html/template"
	"regexp"
	"strings"

	"rodwright/book"
	"rodwright/draw/svg"
	"rodwright/draw/typeface"
)

//go:embed book.tmpl
var source string

var templates = template.Must(template.New("book").Funcs(template.FuncMap{
	"set":   set,
	"drawn": drawn,
	"wide":  wide,
}).Parse(source))

// fraction is a fraction as package typeface sets it.
var fraction = regexp.MustCompile(`[⁰¹²³⁴⁵⁶⁷⁸⁹]+⁄[₀₁₂₃₄₅₆₇₈₉]+`)

// set is words as markup, their fractions set large enough to be read at arm's length.
func set(words string) template.HTML {
	safe := template.HTMLEscapeString(typeface.Fractions(words))
	return template.HTML(fraction.ReplaceAllString(safe, `<span class="book-fraction">$0</span>`))
}

// drawn is a drawing as an element of the page.
func drawn(f book.Figure) template.HTML { return template.HTML(svg.Render(f.Drawing)) }

// wide tells the style how wide a drawing is at its scale: it is never shown larger.
func wide(f book.Figure) template.CSS {
	w, _ := f.Drawing.Size()
	return template.CSS(fmt.Sprintf("--wide:%.0fmm", w))
}

// article is what the template of an article is filled with.
type article struct {
	*book.Document
	Front    *book.Figure // beside the title; nil where nothing is drawn
	Chapters []chapter
}

type chapter struct {
	book.Section
	Parts []block
}

// block is one block of a section with what its markup needs. Exactly one field besides Box and ID is set.
type block struct {
	ID        string // of the block, unique in the page
	Box       string // what a box that scrolls is called
	Paragraph string
	Table     *table
	Figure    *book.Figure
	Note      *book.Note
	List      *book.List
	Steps     []book.Step // those that follow each other
}

func newArticle(d *book.Document) article {
	a := article{Document: d, Front: front(d)}
	for _, s := range d.Sections {
		c := chapter{Section: s}
		for _, b := range s.Blocks {
			c.add(b)
		}
		a.Chapters = append(a.Chapters, c)
	}
	return a
}

// front is the view from the front, or the first figure there is, under an id of its own.
func front(d *book.Document) (first *book.Figure) {
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			f, ok := b.(book.Figure)
			if !ok || first != nil && f.Drawing.ID != "front" {
				continue
			}
			again := *f.Drawing
			again.ID = "title-" + again.ID
			first = &book.Figure{Drawing: &again, Caption: f.Caption}
			if f.Drawing.ID == "front" {
				return first
			}
		}
	}
	return first
}

// add sets a block; steps that follow each other become one list.
func (c *chapter) add(b book.Block) {
	out := block{ID: fmt.Sprintf("%s-b%d", c.ID, len(c.Parts)+1)}
	switch b := b.(type) {
	case book.Paragraph:
		out.Paragraph = b.Words
	case book.Table:
		out.Table = newTable(b)
		out.Box = c.Title + ": " + b.Caption
	case book.Figure:
		out.Figure = &b
		out.Box = c.Title + ": " + b.Caption
	case book.Note:
		out.Note = &b
	case book.List:
		out.List = &b
	case book.Step:
		if n := len(c.Parts) - 1; n >= 0 && c.Parts[n].Steps != nil {
			c.Parts[n].Steps = append(c.Parts[n].Steps, b)
			return
		}
		out.Steps = []book.Step{b}
	}
	c.Parts = append(c.Parts, out)
}

// table is a table cell by cell.
type table struct {
	Caption string
	Head    []cell
	Rows    [][]cell
	Foot    []cell
}

// cell is words in a column. Names is set on the cell that names its row.
type cell struct {
	Words string
	Right bool
	Names bool
}

func newTable(t book.Table) *table {
	out := &table{Caption: t.Caption}
	named := -1 // the first column of words names the row
	for i, c := range t.Columns {
		out.Head = append(out.Head, cell{Words: c.Head, Right: c.Align == book.Right})
		if named < 0 && c.Align == book.Left {
			named = i
		}
	}
	cells := func(words []string) (row []cell) {
		for i, w := range words {
			right := i < len(t.Columns) && t.Columns[i].Align == book.Right
			row = append(row, cell{Words: w, Right: right, Names: i == named && strings.TrimSpace(w) != ""})
		}
		return row
	}
	for _, r := range t.Rows {
		out.Rows = append(out.Rows, cells(r))
	}
	out.Foot = cells(t.Foot)
	return out
}
