package cutting

import (
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/draw/lettering"
)

func (b *bench) sheetOf(tag string) (cut.Sheet, bool) {
	i := slices.IndexFunc(b.l.Sheets.Sheets, func(s cut.Sheet) bool { return s.Tag == tag })
	if i < 0 {
		return cut.Sheet{}, false
	}
	return b.l.Sheets.Sheets[i], true
}

// sheets draws each sheet by itself, all of a material at one scale.
func (b *bench) sheets() (out []*draw.Drawing) {
	per := int64(1)
	for _, s := range b.stacks {
		c, _ := b.sheetOf(b.l.Answer.Used[s.of[0]].Stock)
		per = max(per, draw.ScaleFor(c.Length, c.Width, b.st))
	}
	for _, s := range b.stacks {
		per, _ = lettering.Fit(b.st, per, func(per int64) []draw.Mark { return b.sheetMarks(s, per) })
	}
	for _, s := range b.stacks {
		out = append(out, &draw.Drawing{
			ID: b.id(len(out) + 1), Per: per, Marks: b.sheetMarks(s, per),
			Title: b.material() + ", " + numbered("sheet", s), Alt: b.sheetAlt(s),
		})
	}
	return out
}

func (b *bench) sheetAlt(s stack) string {
	u := b.l.Answer.Used[s.of[0]]
	c, _ := b.sheetOf(u.Stock)
	says := fmt.Sprintf("%s, %s, %s × %s.", b.material(), numbered("sheet", s), b.number(c.Length), b.text(c.Width))
	for _, p := range u.Parts {
		says += fmt.Sprintf(" %s, %s × %s;", b.name(s, p.Tag), b.number(p.Size[0]), b.text(p.Size[1]))
	}
	for k, o := range u.Left {
		says += fmt.Sprintf(" %s, %s × %s;", b.kept(s, k, "", draw.Rect{}).tag, b.number(o.Size[0]), b.text(o.Size[1]))
	}
	return says[:len(says)-1] + "."
}

// sheetMarks draws one sheet: what is placed on it, what is kept, the places that no part may hold.
func (b *bench) sheetMarks(s stack, per int64) []draw.Mark {
	f := newFigure(per)
	u := b.l.Answer.Used[s.of[0]]
	c, _ := b.sheetOf(u.Stock)
	whole := rect(0, 0, c.Length, c.Width)
	f.keepTo(b.st, c.Length, 6, 14)
	f.box(draw.Outline, draw.Waste, whole)
	for _, p := range u.Parts {
		size := b.by(p.Size)
		if p.Turned {
			size += " turned"
		}
		f.piece(caption{b.name(s, p.Tag), size, placed(p)})
	}
	for k, o := range u.Left {
		f.piece(b.kept(s, k, b.by(o.Size), rect(o.At[0], o.At[1], o.Size[0], o.Size[1])))
	}
	for _, d := range c.Defects {
		r := rect(d.X, d.Y, d.Length, d.Width)
		f.box(draw.Hidden, draw.Steel, r)
		f.room.KeepOut(r)
	}
	lines, numbers := b.stepsOf(s)
	f.saw(lines, numbers, whole)
	grain := "no grain"
	if c.Grain {
		grain = "grain along the " + b.text(c.Length)
		f.arrow(whole)
	}
	says := fmt.Sprintf("%s × %s", b.number(c.Length), b.text(c.Width))
	if from := b.from(s.of[0]); from != "" {
		says += ", " + from
	}
	b.finish(f, whole, says+", "+grain+"; "+b.unit()+"; hatched: waste; ringed: steps of the list of cuts."+blacked(c),
		b.sawWords(b.l.Sheets.Kerf, b.l.Sheets.Trim, "edge"))
	return f.marks
}

// blacked explains how the places are drawn that no part may hold.
func blacked(c cut.Sheet) string {
	if len(c.Defects) == 0 {
		return ""
	}
	return " Filled, with a dashed edge: defects, which no part holds."
}

// arrow shows the way of the grain over a sheet.
func (f *figure) arrow(whole draw.Rect) {
	y, head := whole.Max.Y+f.full(9), f.full(1.4)
	a, c := at(0, y), at(f.full(16), y)
	t := draw.Text{Words: "grain", Height: words, At: at(c.X+f.full(1.5), y-f.full(words*0.35))}
	f.put(t)
	f.line(draw.Grain, a, c)
	f.line(draw.Grain, a, at(a.X+head, y+head.Half()))
	f.line(draw.Grain, a, at(a.X+head, y-head.Half()))
	f.line(draw.Grain, c, at(c.X-head, y+head.Half()))
	f.line(draw.Grain, c, at(c.X-head, y-head.Half()))
	f.room.Keep(draw.Rect{Min: at(0, y-head), Max: at(c.X, y+head)})
}
