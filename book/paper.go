package book

import (
	"fmt"
	"strings"

	"rodwright/draw"
	"rodwright/length"
)

// The margins of a sheet, in millimetres: at its sides, above and below.
const (
	sideMargin = 18
	endMargin  = 20
)

// ParsePaper reads the name of a paper: a4 or letter, in any case. No name is A4.
func ParsePaper(word string) (Paper, error) {
	switch p := Paper(strings.ToLower(word)); p {
	case A4, Letter:
		return p, nil
	case "":
		return A4, nil
	}
	return "", fmt.Errorf("paper %q is not known: a4 or letter", word)
}

// Size returns the width and height of a sheet in millimetres; what is no paper is taken for A4.
func (p Paper) Size() (width, height float64) {
	if p == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

// Room returns the width and height within the margins of a sheet, in millimetres.
func (p Paper) Room() (width, height float64) {
	w, h := p.Size()
	return w - 2*sideMargin, h - 2*endMargin
}

// headRoom is what a drawing leaves on its sheet for a heading and a caption, in millimetres.
const headRoom = 30

// Style returns how drawings are made for a book on this paper: within its margins, to the fineness.
func (p Paper) Style(f length.Fineness) draw.Style {
	w, h := p.Room()
	return draw.Style{Fineness: f, Width: w, Height: h - headRoom}
}
