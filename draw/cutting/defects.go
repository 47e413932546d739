package cutting

import (
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/length"
)

// look is how a kind of defect is drawn: by a letter and a filling of its own, so that a drawing without colours
// tells it too.
type look struct {
	kind   cut.DefectKind
	letter string
	fill   draw.Fill
}

var looks = []look{
	{cut.Knot, "K", draw.EndWood},
	{cut.Split, "S", draw.Empty},
	{cut.Wane, "W", draw.Plywood},
	{cut.Sap, "P", draw.LongWood},
	{cut.Void, "V", draw.Steel},
}

// blemish is one defect where it lies in a drawing.
type blemish struct {
	kind cut.DefectKind
	back bool // it does not show on the face that is up
	in   draw.Rect
}

// defectsOf are the defects of a board as it lies, good face up.
func defectsOf(c cut.Board) (out []blemish) {
	for _, d := range c.Defects {
		out = append(out, blemish{d.Kind, d.Face == cut.BackFace, rect(d.X, d.Y, d.Length, d.Width)})
	}
	return out
}

// defects draws blemishes over the pieces that may hold them; captions keep off them.
func (f *figure) defects(all []blemish) {
	for _, d := range all {
		path := draw.Rectangle(d.in.Min, d.in.Max)
		l, w := d.in.Max.X-d.in.Min.X, d.in.Max.Y-d.in.Min.Y
		if d.kind == cut.Knot {
			path = draw.Rounded(d.in.Min, d.in.Max, min(l, w).Half())
		}
		pen := draw.Outline
		if d.back {
			pen = draw.Hidden
		}
		f.add(draw.Area{Pen: pen, Fill: lookOf(d.kind).fill, Outer: path})
		if d.kind == cut.Split {
			f.crack(pen, d.in)
		}
		f.room.KeepOut(d.in)
	}
}

// letters writes the letter of each blemish beside it.
func (f *figure) letters(all []blemish) {
	for _, d := range all {
		letter := lookOf(d.kind).letter
		if !f.beside(draw.Text{Words: letter, Height: small, Strong: true}, d.in) {
			f.unsaid = append(f.unsaid, caption{letter, "", d.in})
		}
	}
}

func lookOf(k cut.DefectKind) look {
	for _, l := range looks {
		if l.kind == k {
			return l
		}
	}
	return look{kind: k, letter: "?"}
}

// crack draws a split: a jagged line from end to end of its place.
func (f *figure) crack(pen draw.Pen, in draw.Rect) {
	const jags = 6
	l, w := in.Max.X-in.Min.X, in.Max.Y-in.Min.Y
	point := func(k int64) draw.Point {
		y := in.Min.Y + w.Half()
		if k > 0 && k < jags {
			y += w.Scale(1-2*(k%2), 4)
		}
		return at(in.Min.X+l.Scale(k, jags), y)
	}
	for k := range int64(jags) {
		f.line(pen, point(k), point(k+1))
	}
}

// defectKey explains the letters of the blemishes in a drawing.
func defectKey(all []blemish) string {
	var says []string
	back := false
	for _, k := range looks {
		if slices.ContainsFunc(all, func(d blemish) bool { return d.kind == k.kind }) {
			says = append(says, k.letter+" "+string(k.kind))
		}
	}
	for _, d := range all {
		back = back || d.back
	}
	if says == nil {
		return ""
	}
	key := "Defects: " + strings.Join(says, ", ")
	if back {
		key += "; dashed: on the face that lies down"
	}
	return key + "."
}

// onStrip are the defects of a board that lie on a strip, where the strip lies in its panel: from the strip's
// near end, and from across on, what jointing takes off its edges gone. A strip that was turned over shows
// its far edge first and its other face.
func onStrip(c cut.Board, s cut.Strip, jointing, across length.Length) (out []blemish) {
	turned := s.Ring != cut.NoRing && c.Ring != cut.NoRing && s.Ring != c.Ring
	for _, d := range c.Defects {
		x, y := d.X-s.At[0], d.Y-s.At[1]
		if turned {
			y = s.Size[1] - y - d.Width
		}
		r := rect(x, y-jointing, d.Length, d.Width)
		r.Min = at(max(0, r.Min.X), max(0, r.Min.Y))
		r.Max = at(min(s.Size[0], r.Max.X), min(s.NetWidth, r.Max.Y))
		if r.Min.X >= r.Max.X || r.Min.Y >= r.Max.Y {
			continue
		}
		hidden := d.Face == cut.BackFace
		if turned {
			hidden = d.Face == cut.GoodFace
		}
		r.Min.Y += across
		r.Max.Y += across
		out = append(out, blemish{d.Kind, hidden, r})
	}
	return out
}
