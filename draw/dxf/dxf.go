// Package dxf writes drawings as DXF files of release 12 (AC1009, ASCII), which every drawing program reads:
// full size, in millimetres, one layer for each pen under its own name and one, text, for words. Outlines are
// closed polylines with bulges. Coordinates are exact: whole nanometres as decimals.
//
// Hatching is left out: what is cut from such a file is cut along its lines.
package dxf

import (
	"bufio"
	"fmt"
	"io"
	"strconv"

	"rodwright/draw"
	"rodwright/draw/typeface"
	"rodwright/length"
)

// textLayer holds words.
const textLayer = "text"

// lineTypes names the line types of pens that draw dashes; other pens draw CONTINUOUS lines.
var lineTypes = map[draw.Pen]string{draw.Hidden: "DASHED", draw.Centre: "CENTRE", draw.Saw: "SAW", draw.Ghost: "GHOST"}

// colours are the numbers of the format's palette: 7 is black or white, whichever is seen.
var colours = map[draw.Pen]int{draw.Outline: 7, draw.Hidden: 8, draw.Centre: 8, draw.Saw: 1, draw.Measure: 8, draw.Grain: 9, draw.Hatching: 9, draw.Ghost: 9}

// Write writes a drawing. Dimensions and tags are drawn out as lines and words. It fails only if w does.
func Write(w io.Writer, d *draw.Drawing) error {
	f := file{w: bufio.NewWriter(w), per: max(d.Per, 1)}
	f.text(999, Plain(d.ID)+": full size, in millimetres")
	f.header(d.Bounds())
	f.tables()
	f.text(0, "SECTION")
	f.text(2, "BLOCKS")
	f.text(0, "ENDSEC")
	f.text(0, "SECTION")
	f.text(2, "ENTITIES")
	for _, m := range d.Flat() {
		f.mark(m)
	}
	f.text(0, "ENDSEC")
	f.text(0, "EOF")
	if err := f.w.Flush(); err != nil {
		return fmt.Errorf("write drawing %s: %w", d.ID, err)
	}
	return nil
}

// file writes groups: a code on one line, its value on the next. Errors are kept by w until it is flushed.
type file struct {
	w   *bufio.Writer
	per int64
}

func (f file) text(code int, value string) {
	f.w.WriteString(strconv.Itoa(code) + "\n" + value + "\n")
}

func (f file) whole(code, value int) { f.text(code, strconv.Itoa(value)) }

func (f file) real(code int, value float64) {
	f.text(code, strconv.FormatFloat(value, 'f', 12, 64))
}

func (f file) size(code int, l length.Length) { f.text(code, millimetres(l)) }

// point writes the groups code and code + 10.
func (f file) point(code int, p draw.Point) {
	f.size(code, p.X)
	f.size(code+10, p.Y)
}

// millimetres writes a length exactly.
func millimetres(l length.Length) string {
	sign := ""
	n := uint64(l)
	if l < 0 {
		sign, n = "-", -n
	}
	mm := uint64(length.Millimetre)
	return fmt.Sprintf("%s%d.%06d", sign, n/mm, n%mm)
}

func (f file) header(b draw.Rect) {
	f.text(0, "SECTION")
	f.text(2, "HEADER")
	f.text(9, "$ACADVER")
	f.text(1, "AC1009")
	for _, v := range []struct {
		name string
		at   draw.Point
	}{{"$EXTMIN", b.Min}, {"$EXTMAX", b.Max}} {
		f.text(9, v.name)
		f.point(10, v.at)
		f.text(30, "0.0")
	}
	f.text(9, "$LTSCALE")
	f.text(40, "1.0")
	f.text(0, "ENDSEC")
}

func (f file) tables() {
	f.text(0, "SECTION")
	f.text(2, "TABLES")
	f.table("LTYPE", len(lineTypes)+1)
	f.lineType("CONTINUOUS", nil)
	for _, p := range draw.Pens() {
		if name, ok := lineTypes[p]; ok {
			f.lineType(name, p.Dashes())
		}
	}
	f.text(0, "ENDTAB")
	f.table("LAYER", len(draw.Pens())+2)
	f.layer("0", 7, "CONTINUOUS")
	for _, p := range draw.Pens() {
		name, ok := lineTypes[p]
		if !ok {
			name = "CONTINUOUS"
		}
		f.layer(p.String(), colours[p], name)
	}
	f.layer(textLayer, 7, "CONTINUOUS")
	f.text(0, "ENDTAB")
	f.table("STYLE", 1)
	f.style()
	f.text(0, "ENDTAB")
	f.text(0, "ENDSEC")
}

func (f file) table(name string, entries int) {
	f.text(0, "TABLE")
	f.text(2, name)
	f.whole(70, entries)
}

// lineType writes dashes and gaps in turn, full size; gaps are negative.
func (f file) lineType(name string, dashes []float64) {
	f.text(0, "LTYPE")
	f.text(2, name)
	f.whole(70, 0)
	f.text(3, "")
	f.whole(72, 65) // aligned at both ends, the one way there is
	f.whole(73, len(dashes))
	total := 0.0
	for _, l := range dashes {
		total += l * float64(f.per)
	}
	f.real(40, total)
	for i, l := range dashes {
		f.real(49, l*float64(f.per)*float64(1-2*(i%2)))
	}
}

func (f file) layer(name string, colour int, lineType string) {
	f.text(0, "LAYER")
	f.text(2, name)
	f.whole(70, 0)
	f.whole(62, colour)
	f.text(6, lineType)
}

// style writes the one style of words: plain strokes, which every reader has.
func (f file) style() {
	f.text(0, "STYLE")
	f.text(2, "STANDARD")
	f.whole(70, 0)
	f.text(40, "0.0") // words bring their own height
	f.text(41, "1.0")
	f.text(50, "0.0")
	f.whole(71, 0)
	f.real(42, draw.Lettering*typeface.Capital*float64(f.per))
	f.text(3, "txt")
	f.text(4, "")
}
