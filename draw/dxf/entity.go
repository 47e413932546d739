package dxf

import (
	"fmt"
	"math"
	"strings"

	"rodwright/draw"
	"rodwright/draw/typeface"
	"rodwright/length"
)

func (f file) entity(kind, layer string) {
	f.text(0, kind)
	f.text(8, layer)
}

func (f file) mark(m draw.Mark) {
	switch m := m.(type) {
	case draw.Line:
		if m.Pen != draw.Hatching {
			f.line(m)
		}
	case draw.Arc:
		if m.Pen != draw.Hatching {
			f.arc(m)
		}
	case draw.Area:
		f.path(m.Pen, m.Outer)
		for _, h := range m.Holes {
			f.path(m.Pen, h)
		}
	case draw.Text:
		f.words(m)
	}
}

func (f file) line(l draw.Line) {
	f.entity("LINE", l.Pen.String())
	f.point(10, l.A)
	f.point(11, l.B)
}

func (f file) arc(a draw.Arc) {
	kind := "ARC"
	if a.Sweep >= 360 {
		kind = "CIRCLE"
	}
	f.entity(kind, a.Pen.String())
	f.point(10, a.Centre)
	f.size(40, a.Radius)
	if kind == "ARC" {
		f.real(50, turn(a.From))
		f.real(51, turn(a.From+a.Sweep))
	}
}

// turn returns the same direction from 0 to 360 degrees.
func turn(degrees float64) float64 {
	return math.Mod(math.Mod(degrees, 360)+360, 360)
}

func (f file) path(pen draw.Pen, p draw.Path) {
	if len(p) < 2 {
		return
	}
	f.entity("POLYLINE", pen.String())
	f.whole(66, 1) // vertices follow
	f.text(10, "0.0")
	f.text(20, "0.0")
	f.text(30, "0.0")
	f.whole(70, 1) // closed
	for _, v := range p {
		f.entity("VERTEX", pen.String())
		f.point(10, v.Point)
		if v.Bulge != 0 {
			f.real(42, v.Bulge)
		}
	}
	f.entity("SEQEND", pen.String())
}

// words writes a line of words as high as its capitals are in a drawing.
func (f file) words(t draw.Text) {
	f.entity("TEXT", textLayer)
	f.point(10, t.At)
	f.size(40, length.FromMM(t.Height*typeface.Capital*float64(f.per)))
	f.text(1, Plain(t.Words))
	if t.Turned {
		f.text(50, "90.0")
	}
	if t.Anchor != draw.Start {
		f.whole(72, map[draw.Anchor]int{draw.Middle: 1, draw.End: 2}[t.Anchor])
		f.point(11, t.At)
	}
}

// plain says in ASCII what drawings hold beyond it; %%c, %%d, %%p and %%% are the format's own words.
var plain = strings.NewReplacer(
	"%%", "%%%%%%", "⌀", "%%c", "°", "%%d", "±", "%%p", "×", "x", "″", "\"", "′", "'", "⁄", "/", "–", "-", "—", "-", "−", "-", "·", ".",
	"≈", "~", "≤", "<=", "≥", ">=", "→", "->", "…", "...", "²", "2", "³", "3",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "½", "1/2", "¼", "1/4", "¾", "3/4",
)

// Plain returns words in ASCII as the format has them. Letters without a plain word are written by their number,
// \U+00E9, those beyond four digits as ?; control characters become spaces.
func Plain(words string) string {
	var b strings.Builder
	for _, r := range plain.Replace(words) {
		switch {
		case r < ' ' || r == 0x7f:
			b.WriteByte(' ')
		case r < 0x7f:
			b.WriteRune(r)
		case r > 0xffff: // beyond what four digits can say
			b.WriteByte('?')
		default:
			fmt.Fprintf(&b, `\U+%04X`, r)
		}
	}
	return b.String()
}
