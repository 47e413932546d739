package draw

import (
	"strings"

	"rodwright/draw/typeface"
	"rodwright/length"
)

// Heights of type on all drawings, in paper millimetres.
const (
	Lettering = 3.0 // dimensions and tags; figures are then 2.1 mm high
	Small     = 2.5 // the least that is used
)

// full returns what paper millimetres are at 1 : per.
func full(mm float64, per int64) length.Length { return length.FromMM(mm * float64(max(per, 1))) }

// Box returns the room that the words take at a scale of 1 : per, full size: their width in the embedded
// typeface with fractions set, from below the letters' tails to above their tops.
func (t Text) Box(per int64) Rect {
	width := t.width()
	x0 := -width * t.Anchor.share()
	box := func(mm float64) length.Length { return full(mm, per) }
	lo, hi := box(x0), box(x0+width)
	low, high := box(-typeface.Descent*t.Height), box(typeface.Ascent*t.Height)
	if t.Turned {
		return Rect{Point{t.At.X - high, t.At.Y + lo}, Point{t.At.X - low, t.At.Y + hi}}
	}
	return Rect{Point{t.At.X + lo, t.At.Y + low}, Point{t.At.X + hi, t.At.Y + high}}
}

// width is in paper millimetres.
func (t Text) width() float64 {
	return typeface.Width(t.set(), t.Height, t.Strong)
}

// set returns the words as they are drawn: fractions as such, and the sign of a diameter, which the typeface
// lacks, as the letter that is like it.
func (t Text) set() string {
	return strings.ReplaceAll(typeface.Fractions(t.Words), "⌀", "Ø")
}

// share is how much of the words stands before their anchor.
func (a Anchor) share() float64 { return [...]float64{Start: 0, Middle: 0.5, End: 1}[a] }

// Boxes returns the box of every text of a drawing, those of dimensions and tags included.
func Boxes(d *Drawing) (out []Rect) {
	for _, t := range d.expand(false).texts {
		out = append(out, t.Box(d.Per))
	}
	return out
}
