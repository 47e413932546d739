// Package typeface holds the letters of all drawings and books: IBM Plex Sans, regular and semi-bold, under the
// SIL Open Font License (OFL.txt beside this file). It tells how wide words are, so that words can be placed
// before anything is drawn, and sets fractions as fractions.
//
// Sizes and widths are in one unit of the caller's choice. Kerning is left out on purpose: renderers that know
// nothing of it then set words as wide as they were measured.
package typeface

import (
	_ "embed"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

//go:embed IBMPlexSans_400Regular.ttf
var regular []byte

//go:embed IBMPlexSans_600SemiBold.ttf
var semiBold []byte

// Family is the name of the typeface, as style sheets call it.
const Family = "IBM Plex Sans"

// What letters take of their size above and below the line they stand on: every letter of ours keeps within,
// but for accents on capitals. Capital is the height of capitals and figures.
const (
	Ascent  = 0.84
	Descent = 0.22
	Capital = 0.698
)

// Regular returns the regular weight as a TrueType file. It must not be changed.
func Regular() []byte { return regular }

// SemiBold returns the semi-bold weight as a TrueType file. It must not be changed.
func SemiBold() []byte { return semiBold }

// Width returns the width of words as they stand, in the unit of size. A letter that the typeface lacks is as
// wide as the empty box that stands for it. Set fractions with [Fractions] first.
func Width(words string, size float64, strong bool) float64 {
	w := weightOf(strong)
	units := 0
	for _, r := range words {
		units += w.advance(r)
	}
	return float64(units) * size / float64(w.perEm)
}

// Missing returns the letters of words that the typeface lacks, each once, in their order.
func Missing(words string) (out []rune) {
	w := weightOf(false)
	seen := map[rune]bool{}
	for _, r := range words {
		if !seen[r] && w.glyph(r).index == 0 {
			out = append(out, r)
		}
		seen[r] = true
	}
	return out
}

// weight is one weight of the typeface, with what was asked of it before.
type weight struct {
	font  *sfnt.Font
	perEm int

	mu     sync.Mutex
	glyphs map[rune]glyph
	buffer sfnt.Buffer
}

type glyph struct {
	index   sfnt.GlyphIndex // 0: lacking
	advance int             // in font units
}

var weights = [2]func() *weight{
	sync.OnceValue(func() *weight { return parse(regular) }),
	sync.OnceValue(func() *weight { return parse(semiBold) }),
}

func weightOf(strong bool) *weight {
	if strong {
		return weights[1]()
	}
	return weights[0]()
}

// parse reads an embedded font. That it can be read is part of the build, which the tests hold.
func parse(ttf []byte) *weight {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("typeface: the embedded font can't be read: " + err.Error())
	}
	return &weight{font: f, perEm: int(f.UnitsPerEm()), glyphs: map[rune]glyph{}}
}

func (w *weight) advance(r rune) int { return w.glyph(r).advance }

func (w *weight) glyph(r rune) glyph {
	w.mu.Lock()
	defer w.mu.Unlock()
	if g, ok := w.glyphs[r]; ok {
		return g
	}
	g := w.look(r)
	w.glyphs[r] = g
	return g
}

// look reads a glyph at one pixel a font unit, so that no advance is rounded. A glyph whose index or advance
// the font does not tell counts as lacking and as wide as it is high.
func (w *weight) look(r rune) glyph {
	index, err := w.font.GlyphIndex(&w.buffer, r)
	if err != nil {
		return glyph{0, w.perEm}
	}
	adv, err := w.font.GlyphAdvance(&w.buffer, index, fixed.I(w.perEm), font.HintingNone)
	if err != nil {
		return glyph{0, w.perEm}
	}
	return glyph{index, adv.Round()}
}
