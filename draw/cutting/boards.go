package cutting

import (
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

func (b *bench) board(tag string) (cut.Board, bool) {
	i := slices.IndexFunc(b.l.Boards.Boards, func(c cut.Board) bool { return c.Tag == tag })
	if i < 0 {
		return cut.Board{}, false
	}
	return b.l.Boards.Boards[i], true
}

// boards draws each board by itself, all of a material at one scale.
func (b *bench) boards() (out []*draw.Drawing) {
	per := int64(1)
	for _, s := range b.stacks {
		c, _ := b.board(b.l.Answer.Used[s.of[0]].Stock)
		per = max(per, draw.ScaleFor(c.Length, c.Width, b.st))
	}
	for _, s := range b.stacks {
		per, _ = lettering.Fit(b.st, per, func(per int64) []draw.Mark { return b.boardMarks(s, per) })
	}
	for _, s := range b.stacks {
		d := &draw.Drawing{
			ID: b.id(len(out) + 1), Per: per, Marks: b.boardMarks(s, per),
			Title: b.material() + ", " + numbered("board", s), Alt: b.boardAlt(s),
		}
		out = append(out, d)
	}
	return out
}

func (b *bench) boardAlt(s stack) string {
	u := b.l.Answer.Used[s.of[0]]
	c, _ := b.board(u.Stock)
	says := fmt.Sprintf("%s, %s, %s × %s.", b.material(), numbered("board", s), b.number(c.Length), b.text(c.Width))
	for i, p := range u.Parts {
		says += fmt.Sprintf(" %s, %s × %s;", b.strip(s, i), b.number(p.Size[0]), b.text(p.Size[1]))
	}
	for k, o := range u.Left {
		says += fmt.Sprintf(" %s, %s × %s;", b.kept(s, k, "", draw.Rect{}).tag, b.number(o.Size[0]), b.text(o.Size[1]))
	}
	return says[:len(says)-1] + "."
}

// strip names part i of the boards of a stack: A1 strip 2, or A1 strips 1 and 3 where several boards are cut
// alike.
func (b *bench) strip(s stack, i int) string {
	var numbers []string
	tag := ""
	for _, k := range s.of {
		u := b.l.Answer.Used[k]
		tag = u.Parts[i].Tag
		for _, g := range b.l.Answer.Panels {
			for n, st := range g.Strips {
				if g.Tag == tag && st.Board == u.Stock && st.At == u.Parts[i].At {
					numbers = append(numbers, fmt.Sprint(n+1))
				}
			}
		}
	}
	word := " strip "
	if len(numbers) > 1 {
		word = " strips "
	}
	if len(numbers) == 0 {
		return b.name(s, tag)
	}
	return b.name(s, tag) + word + and(numbers)
}

// boardMarks draws one board: its strips segment by segment, defects, saw cuts, what is kept.
func (b *bench) boardMarks(s stack, per int64) []draw.Mark {
	f := newFigure(per)
	u := b.l.Answer.Used[s.of[0]]
	c, _ := b.board(u.Stock)
	whole := rect(0, 0, c.Length, c.Width)
	f.keepTo(b.st, c.Length, 6, 14)
	f.add(draw.Area{Pen: draw.Outline, Fill: draw.Waste, Outer: roughBoard(c, per)})
	var captions []caption
	for i, p := range u.Parts {
		captions = append(captions, caption{b.strip(s, i), b.by(p.Size), placed(p)})
	}
	for k, o := range u.Left {
		captions = append(captions, b.kept(s, k, b.by(o.Size), rect(o.At[0], o.At[1], o.Size[0], o.Size[1])))
	}
	f.pieces(captions, defectsOf(c))
	lines, numbers := b.stepsOf(s)
	f.saw(lines, numbers, whole)
	b.finish(f, whole, b.boardNotes(s, c)...)
	return f.marks
}

func (b *bench) boardNotes(s stack, c cut.Board) (says []string) {
	one := fmt.Sprintf("%s × %s", b.number(c.Length), b.text(c.Width))
	if from := b.from(s.of[0]); from != "" {
		one += ", " + from
	}
	switch c.RoughEdges {
	case 1:
		one += ", one rough edge (the far one)"
	case 2:
		one += ", both edges rough"
	}
	if c.Ring != cut.NoRing {
		one += ", good face up its rings curve " + string(c.Ring)
	}
	trim := length.Length(0)
	if c.RoughEdges > 0 {
		trim = b.l.Boards.BoardEdgeTrim
	}
	says = []string{
		one + "; good face up, " + b.unit() + "; hatched: waste; ringed: steps of the list of cuts.",
		b.sawWords(b.l.Boards.Kerf, trim, "rough edge"),
	}
	if key := defectKey(defectsOf(c)); key != "" {
		says = append(says, key)
	}
	return says
}

// finish measures the whole piece of stock, writes the captions that found no room in their parts, and the
// notes.
func (b *bench) finish(f *figure, whole draw.Rect, says ...string) {
	f.room.KeepPath(draw.Rectangle(whole.Min, whole.Max))
	left := append(f.captionRest(), f.unsaid...)
	r := boundsOf(f.marks, f.per)
	l, w := whole.Max.X, whole.Max.Y
	f.add(draw.Dimensions(draw.Rect{Min: at(0, r.Min.Y), Max: at(l, r.Max.Y)}, f.per, b.st, draw.Below, 1, []draw.Station{{At: 0}, {At: l}})...)
	f.add(draw.Dimensions(draw.Rect{Min: at(r.Min.X, 0), Max: at(r.Max.X, w)}, f.per, b.st, draw.RightOf, 2, []draw.Station{{At: 0, Off: l}, {At: w, Off: l}})...)
	for _, c := range left {
		says = append(says, fmt.Sprintf("%s %s: at %s from the left, %s from below", c.tag, c.size, b.number(c.in.Min.X), b.number(c.in.Min.Y)))
	}
	f.under(0, b.noteWidth(f, l, 90), says...)
}

// roughBoard is a board's outline; rough edges are drawn as waves.
func roughBoard(c cut.Board, per int64) draw.Path {
	path := draw.Rectangle(at(0, 0), at(c.Length, c.Width))
	if c.RoughEdges == 0 {
		return path
	}
	var out draw.Path
	waves := max(3, int64(c.Length/full(5, per)))
	edge := func(from, to draw.Point, rough bool) {
		if !rough {
			out = append(out, draw.Vertex{Point: from})
			return
		}
		for k := range waves {
			v := draw.Vertex{Point: at(from.X+(to.X-from.X).Scale(k, waves), from.Y), Bulge: 0.12}
			if k%2 == 1 {
				v.Bulge = -0.12
			}
			out = append(out, v)
		}
	}
	edge(at(0, 0), at(c.Length, 0), c.RoughEdges > 1)
	out = append(out, draw.Vertex{Point: at(c.Length, 0)})
	edge(at(c.Length, c.Width), at(0, c.Width), true)
	return append(out, draw.Vertex{Point: at(0, c.Width)})
}
