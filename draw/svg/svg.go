// Package svg writes drawings as SVG: Render for a page that brings its own style, File for a file that stands
// by itself. One unit of the view box is one millimetre of paper; numbers are rounded to a hundredth of it. The
// same drawing gives the same bytes.
//
// Lines have classes after the pen, such as pen-outline, and areas after their fill; colours and weights come
// from Style, whose colours are custom properties with fallbacks: a page that sets --draw-ink, --draw-paper and
// so on sets the drawings' colours too.
package svg

import (
	"bytes"
	"fmt"
	"html"
	"math"
	"strconv"

	"rodwright/draw"
)

// margin is the room around a drawing for half a pen's width, in millimetres.
const margin = 0.5

// Render returns a drawing as an svg element for a page that holds Style: as wide as the page has room, but no
// wider than its scale asks for, with its title and description for who can't see it.
func Render(d *draw.Drawing) []byte {
	w, _ := extent(d)
	return element(d, fmt.Sprintf(`class="drawing" style="width:100%%;max-width:%smm"`, number(w)), "")
}

// File returns a drawing as an SVG file at its scale, with its own style for light and dark screens.
func File(d *draw.Drawing) []byte {
	w, h := extent(d)
	attributes := fmt.Sprintf(`class="drawing" width="%smm" height="%smm"`, number(w), number(h))
	out := []byte("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	out = append(out, element(d, attributes, "<style>"+Style+dark+"</style>\n")...)
	return append(out, '\n')
}

// extent returns the width and height of the view box.
func extent(d *draw.Drawing) (width, height float64) {
	w, h := d.Size()
	return w + 2*margin, h + 2*margin
}

// element writes the svg element with further attributes and what stands before its lines.
func element(d *draw.Drawing, attributes, head string) []byte {
	w, h := extent(d)
	c := &canvas{height: h - margin}
	name := html.EscapeString(d.ID)
	fmt.Fprintf(&c.out, `<svg xmlns="http://www.w3.org/2000/svg" %s viewBox="0 0 %s %s" role="img" aria-labelledby="%s-title %s-desc">`+"\n",
		attributes, number(w), number(h), name, name)
	fmt.Fprintf(&c.out, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n%s",
		name, escape(d.Title), name, escape(d.Alt), head)
	draw.Paint(d, c)
	c.out.WriteString("</svg>")
	return c.out.Bytes()
}

// canvas writes what is painted on it. Y runs down in SVG.
type canvas struct {
	out    bytes.Buffer
	height float64
}

// Draw writes a path.
func (c *canvas) Draw(path []draw.Segment, ink draw.Ink) {
	c.out.WriteString(`<path class="` + class(ink) + `" d="`)
	for _, s := range path {
		c.segment(s)
	}
	c.out.WriteString("\"/>\n")
}

func class(ink draw.Ink) string {
	fill := [...]string{draw.NoShade: "", draw.PaperShade: "fill-paper", draw.SteelShade: "fill-steel"}[ink.Shade]
	switch {
	case !ink.Stroked:
		return fill
	case fill == "":
		return "pen-" + ink.Pen.String()
	}
	return "pen-" + ink.Pen.String() + " " + fill
}

func (c *canvas) segment(s draw.Segment) {
	switch s.Op {
	case draw.Move:
		c.out.WriteString("M" + c.place(s.P[0]))
	case draw.LineTo:
		c.out.WriteString("L" + c.place(s.P[0]))
	case draw.CurveTo:
		c.out.WriteString("C" + c.place(s.P[0]) + " " + c.place(s.P[1]) + " " + c.place(s.P[2]))
	case draw.Close:
		c.out.WriteString("Z")
	}
}

func (c *canvas) place(p draw.XY) string { return number(p.X+margin) + " " + number(c.height-p.Y) }

// Write writes a line of words. Its length is given, so that it keeps its room in another typeface too.
func (c *canvas) Write(l draw.Label) {
	x, y := number(l.At.X+margin), number(c.height-l.At.Y)
	c.out.WriteString(`<text x="` + x + `" y="` + y + `" font-size="` + number(l.Size) + `"`)
	if l.Width > 0 {
		c.out.WriteString(` textLength="` + number(l.Width) + `" lengthAdjust="spacingAndGlyphs"`)
	}
	if a := [...]string{draw.Start: "", draw.Middle: "middle", draw.End: "end"}[l.Anchor]; a != "" {
		c.out.WriteString(` text-anchor="` + a + `"`)
	}
	if l.Turned {
		c.out.WriteString(` transform="rotate(-90 ` + x + ` ` + y + `)"`)
	}
	if l.Strong {
		c.out.WriteString(` class="strong"`)
	}
	c.out.WriteString(">" + escape(l.Words) + "</text>\n")
}

// number writes a hundredth of a millimetre at the finest, never −0.
func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64)
}

// escape writes words for XML, which knows no control characters: they become spaces.
func escape(words string) string {
	return html.EscapeString(string(bytes.Map(func(r rune) rune {
		if r < ' ' || r == 0xFFFE || r == 0xFFFF {
			return ' '
		}
		return r
	}, []byte(words))))
}
