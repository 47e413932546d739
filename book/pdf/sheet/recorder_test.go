package sheet

import (
	"math"
	"strings"
	"testing"

	"rodwright/book"
	"rodwright/draw"
	"rodwright/draw/typeface"
)

// inked is a line of words on a sheet: its box from the lower left corner of the sheet, descenders to capitals.
type inked struct {
	words                      string
	left, bottom, right, above float64
}

// recorder is a Pen that keeps where words stand.
type recorder struct {
	words  []inked
	paths  int
	matrix []([6]float64)
}

func (r *recorder) at(x, y float64) (float64, float64) {
	for i := len(r.matrix) - 1; i >= 0; i-- {
		m := r.matrix[i]
		x, y = m[0]*x+m[2]*y+m[4], m[1]*x+m[3]*y+m[5]
	}
	return x, y
}

// Words implements Pen.
func (r *recorder) Words(words string, x, y, size float64, strong bool, _ Ink) {
	trimmed := strings.TrimLeft(words, " ")
	x += typeface.Width(words[:len(words)-len(trimmed)], size, strong)
	words = strings.TrimRight(trimmed, " ")
	x1, y1 := r.at(x, y-typeface.Descent/2*size)
	x2, y2 := r.at(x+typeface.Width(words, size, strong), y+typeface.Capital*size)
	r.words = append(r.words, inked{words, math.Min(x1, x2), math.Min(y1, y2), math.Max(x1, x2), math.Max(y1, y2)})
}

// Path implements Pen.
func (r *recorder) Path([]draw.Segment, Brush) { r.paths++ }

// Within implements Pen.
func (r *recorder) Within(a, b, c, d, e, f float64, draw func()) {
	r.matrix = append(r.matrix, [6]float64{a, b, c, d, e, f})
	draw()
	r.matrix = r.matrix[:len(r.matrix)-1]
}

// drawn draws a block and what is in it.
func (r *recorder) drawn(b Block, x, top float64) {
	x, top = x+b.X, top-b.Y
	if b.Draw != nil {
		b.Draw(r, x, top)
	}
	for _, c := range b.Children {
		r.drawn(c, x, top)
	}
}

// record draws a sheet of a book.
func record(b Book, i int) *recorder {
	r := &recorder{}
	r.drawn(b.Sheets[i], 0, b.Height)
	return r
}

// set sets a document and checks what is true of every book: words stand within the margins at the sides and
// on the sheet, none on others, and no sheet is empty.
func set(t *testing.T, d *book.Document) Book {
	t.Helper()
	b, err := Of(d)
	if err != nil {
		t.Fatal(err)
	}
	side := (b.Width - newSetter(d.Paper).width) / 2
	for i := range b.Sheets {
		words := record(b, i).words
		body := 0
		for k, w := range words {
			if w.left < side-0.1 || w.right > b.Width-side+0.1 || w.bottom < 0 || w.above > b.Height {
				t.Errorf("sheet %d: %q stands at %.1f to %.1f across and %.1f to %.1f up, outside the margins", i+1, w.words, w.left, w.right, w.bottom, w.above)
			}
			if w.bottom > b.Height*0.08 {
				body++
			}
			for _, o := range words[:k] {
				if w.left < o.right-0.2 && o.left < w.right-0.2 && w.bottom < o.above-0.2 && o.bottom < w.above-0.2 {
					t.Errorf("sheet %d: %q stands on %q", i+1, w.words, o.words)
				}
			}
		}
		if body == 0 {
			t.Errorf("sheet %d of %d is empty", i+1, len(b.Sheets))
		}
	}
	return b
}

// sheetsWith returns the numbers, from 1, of the sheets on which a line of words stands just so.
func sheetsWith(b Book, words string) (out []int) {
	for i := range b.Sheets {
		for _, w := range record(b, i).words {
			if w.words == words {
				out = append(out, i+1)
				break
			}
		}
	}
	return out
}
