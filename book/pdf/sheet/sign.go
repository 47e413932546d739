package sheet

import (
	"strings"
	"unicode/utf8"

	"rodwright/draw"
)

// signs are what a plan needs and a text face seldom has; they are drawn as paths.
const signs = "⌀☐☑●○△▲"

// signAdvance is the width of a sign as a share of the type's size.
const signAdvance = 0.9

// cutSign returns the words before the first sign, the sign (0 where there is none) and what follows.
func cutSign(words string) (plain string, sign rune, rest string) {
	i := strings.IndexAny(words, signs)
	if i < 0 {
		return words, 0, ""
	}
	r, n := utf8.DecodeRuneInString(words[i:])
	return words[:i], r, words[i+n:]
}

// drawSign draws a sign that stands on the line at x, y.
func drawSign(p Pen, sign rune, x, y, size float64, c Ink) {
	o := path{x: x, y: y, size: size}
	b := Brush{Stroke: &c, Width: 0.07 * size, Says: string(sign)}
	switch sign {
	case '⌀':
		o.circle(0.42, 0.35, 0.29).lines(0.1, 0, 0.74, 0.7)
	case '●':
		o.circle(0.42, 0.35, 0.27)
		b.Stroke, b.Fill = nil, &c
	case '○':
		o.circle(0.42, 0.35, 0.27)
	case '△':
		o.lines(0.06, 0, 0.78, 0, 0.42, 0.68).close()
	case '▲': // the general sign of warning: a bar and a dot in a triangle
		o.lines(0.06, 0, 0.78, 0, 0.42, 0.68).close()
		o.lines(0.42, 0.44, 0.42, 0.24).lines(0.42, 0.165, 0.42, 0.095)
	default:
		o.lines(0.1, 0, 0.74, 0, 0.74, 0.66, 0.1, 0.66).close()
		if sign == '☑' {
			o.lines(0.22, 0.33, 0.37, 0.15, 0.64, 0.53)
		}
	}
	p.Path(o.segments, b)
}

// path is a path in shares of a size from x, y.
type path struct {
	x, y, size float64
	segments   []draw.Segment
}

func (o *path) add(op draw.Op, uv ...float64) {
	g := draw.Segment{Op: op}
	for i := 0; i+1 < len(uv); i += 2 {
		g.P[i/2] = draw.XY{X: o.x + uv[i]*o.size, Y: o.y + uv[i+1]*o.size}
	}
	o.segments = append(o.segments, g)
}

// lines adds straight lines through points, given as u, v, u, v …
func (o *path) lines(uv ...float64) *path {
	o.add(draw.Move, uv[:2]...)
	for i := 2; i < len(uv); i += 2 {
		o.add(draw.LineTo, uv[i:i+2]...)
	}
	return o
}

func (o *path) close() { o.add(draw.Close) }

// circle adds a circle of four cubic arcs; their handles are 4/3·(√2−1) of the radius long, which is within
// 0.03 % of a circle (the usual construction, common practice, no source).
func (o *path) circle(u, v, r float64) *path {
	const k = 0.5522847498307936
	h := k * r
	o.add(draw.Move, u+r, v)
	o.add(draw.CurveTo, u+r, v+h, u+h, v+r, u, v+r)
	o.add(draw.CurveTo, u-h, v+r, u-r, v+h, u-r, v)
	o.add(draw.CurveTo, u-r, v-h, u-h, v-r, u, v-r)
	o.add(draw.CurveTo, u+h, v-r, u+r, v-h, u+r, v)
	o.close()
	return o
}
