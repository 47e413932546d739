package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"rodwright/book"
	"rodwright/draw"
	"rodwright/draw/typeface"
)

// mm is one millimetre in points.
const mm = 72 / 25.4

// setter sets one book. Its lengths are points.
type setter struct {
	paper struct{ width, height float64 }
	width float64 // within the margins
	room  float64 // from the upper margin to the lower
	place string  // what is being set, for errors
	wrong error   // the first word that can't be shown
}

func newSetter(p book.Paper) *setter {
	s := &setter{}
	w, h := p.Size()
	s.paper.width, s.paper.height = w*mm, h*mm
	w, h = p.Room()
	s.width, s.room = w*mm, h*mm
	return s
}

// left and top are the margins at the left and above; those at the right and below are as wide.
func (s *setter) left() float64 { return (s.paper.width - s.width) / 2 }
func (s *setter) top() float64  { return (s.paper.height - s.room) / 2 }

// know remembers the first word that can't be shown.
func (s *setter) know(words, place string) {
	if s.wrong != nil {
		return
	}
	for _, word := range strings.FieldsFunc(words, blank) {
		if !utf8.ValidString(word) {
			s.wrong = fmt.Errorf("%s: the word %q is not valid UTF-8", place, word)
			return
		}
		for _, r := range typeface.Missing(word) {
			if !strings.ContainsRune(signs, r) {
				s.wrong = fmt.Errorf("%s: the word %q has %U (%q), which the embedded type lacks; write it in letters that it has", place, word, r, r)
				return
			}
		}
	}
}

// check says what of a document can't be set, and where.
func check(d *book.Document) error {
	if d == nil || len(d.Sections) == 0 {
		return fmt.Errorf("a book needs at least one section")
	}
	if d.Paper != book.A4 && d.Paper != book.Letter {
		return fmt.Errorf("there is no paper %q; a book is printed on %s or %s", d.Paper, book.A4, book.Letter)
	}
	seen := map[string]bool{}
	for i, sec := range d.Sections {
		if sec.ID == "" || seen[sec.ID] {
			return fmt.Errorf("section %d, %s: its id %q is empty or another section's", i+1, sec.Title, sec.ID)
		}
		seen[sec.ID] = true
		if strings.TrimSpace(sec.Title) == "" {
			return fmt.Errorf("section %d: it has no title", i+1)
		}
		for k, b := range sec.Blocks {
			if err := checkBlock(b); err != nil {
				return fmt.Errorf("section %s, block %d: %w", sec.Title, k+1, err)
			}
		}
	}
	return nil
}

func checkBlock(b book.Block) error {
	switch b := b.(type) {
	case book.Table:
		return checkTable(b)
	case book.Figure:
		return checkDrawing(b.Drawing)
	case book.Note:
		if _, ok := bars[b.Tone]; !ok {
			return fmt.Errorf("there is no tone %q of a note", b.Tone)
		}
		if b.Title == "" && len(b.Items) == 0 {
			return fmt.Errorf("the note is empty")
		}
	case book.Paragraph, book.List, book.Step:
	default:
		return fmt.Errorf("%T is no block of a book", b)
	}
	return nil
}

func checkTable(t book.Table) error {
	if len(t.Columns) == 0 {
		return fmt.Errorf("the table %q has no columns", t.Caption)
	}
	for _, c := range t.Columns {
		if !(c.Share > 0) {
			return fmt.Errorf("the table %q: column %q needs a share of the width above 0, it has %g", t.Caption, c.Head, c.Share)
		}
	}
	for i, r := range t.Rows {
		if len(r) != len(t.Columns) {
			return fmt.Errorf("the table %q: row %d has %d cells for %d columns", t.Caption, i+1, len(r), len(t.Columns))
		}
	}
	if t.Foot != nil && len(t.Foot) != len(t.Columns) {
		return fmt.Errorf("the table %q: its foot has %d cells for %d columns", t.Caption, len(t.Foot), len(t.Columns))
	}
	return nil
}

func checkDrawing(d *draw.Drawing) error {
	if d == nil {
		return fmt.Errorf("the figure has no drawing")
	}
	if w, h := d.Size(); !(w > 0 && h > 0) {
		return fmt.Errorf("the drawing %q is %g × %g mm: there is nothing to show", d.ID, w, h)
	}
	return nil
}
