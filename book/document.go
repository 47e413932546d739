// Package book holds a plan as a document value: sections of paragraphs, tables, figures, notes and steps,
// the same whether it becomes a PDF or a page. Start with Of; package pdf and package html render what it
// returns.
package book

import "rodwright/draw"

// Paper is a size of sheet.
type Paper string

// The papers: ISO 216 A4, 210 × 297 mm, and ANSI/ASME Y14.1 size A, 8 1/2 × 11 in.
const (
	A4     Paper = "a4"
	Letter Paper = "letter"
)

// Document is a whole plan.
type Document struct {
	Title    string
	Subtitle string // what it is in a line: sizes, weight
	Language string // as in BCP 47
	Paper    Paper
	Units    string // in words: inches to 1/16; millimetres
	Sections []Section
}

// Section is a chapter. ID is unique, of a–z, 0–9 and -.
type Section struct {
	ID, Title string
	NewPage   bool // begins on a new sheet
	Blocks    []Block
}

// Block is one thing in a section: a Paragraph, Table, Figure, Note, List or Step. The set is closed. Words
// are plain text; renderers turn fractions such as 3/8 into true ones.
type Block interface{ block() }

// Paragraph is running text.
type Paragraph struct{ Words string }

// Align says where a column's words stand.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Right
)

// Column is a column of a table. Share is its width relative to the others.
type Column struct {
	Head  string
	Share float64
	Align Align
}

// Table is rows of words; its head stands on every sheet it runs over.
type Table struct {
	Caption string
	Columns []Column
	Rows    [][]string // each as long as Columns
	Foot    []string   // the sums; nil where there are none
}

// Figure is a drawing with its caption.
type Figure struct {
	Drawing *draw.Drawing
	Caption string
}

// Tone says what a note is for.
type Tone string

// The tones.
const (
	Caution Tone = "caution" // someone could be hurt
	Wrong   Tone = "wrong"   // something of the piece fails or is not known
	Assumed Tone = "assumed" // taken for granted
	Remark  Tone = "remark"
)

// Note is set apart from the text.
type Note struct {
	Tone  Tone
	Title string
	Items []string
}

// List is a list of things; Ticks gives each a box to tick.
type List struct {
	Ticks bool
	Items []string
}

// Step is one thing to do, kept together on a sheet where it fits.
type Step struct {
	Number   int
	Title    string
	Parts    string   // tags of the parts, in words
	Tool     string   // and what serves instead
	Time     string   // hands and waiting
	Measures []string // what to set and mark
	Cautions []string
	After    string // the steps before it, in words; empty
}

func (Paragraph) block() {}
func (Table) block()     {}
func (Figure) block()    {}
func (Note) block()      {}
func (List) block()      {}
func (Step) block()      {}
