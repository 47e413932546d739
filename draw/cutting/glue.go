package cutting

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
)

// GlueUp draws each panel that a layout glues up: its strips side by side as they lie in the clamps, good face
// up, each with the board it comes from; and in dashes the finished panel within the blank. Nothing is drawn
// of a layout of sticks or sheets.
func GlueUp(l layout.Layout, list *part.List, st draw.Style) (out []*draw.Drawing) {
	if l.Answer == nil || l.Boards == nil {
		return nil
	}
	b := &bench{l: l, st: st, names: namesOf(l)}
	for _, g := range l.Answer.Panels {
		i := slices.IndexFunc(l.Boards.Panels, func(p cut.Panel) bool { return p.Tag == g.Tag })
		if i < 0 || len(g.Strips) == 0 {
			continue
		}
		name := b.name(stack{of: []int{0}}, g.Tag)
		size := [2]length.Length{l.Boards.BlankLength(i), l.Boards.BlankWidth(i)}
		per, marks := lettering.Fit(st, draw.ScaleFor(size[0], size[1], st), func(per int64) []draw.Mark {
			return b.glued(g, i, per)
		})
		out = append(out, &draw.Drawing{
			ID: "glue-" + Slug(name), Per: per, Marks: marks,
			Title: strings.TrimSpace(name+" "+nameIn(list, g.Tag)) + ", strips as they are glued", Alt: b.gluedAlt(g, name),
		})
	}
	return out
}

// nameIn returns what a part of the list is called.
func nameIn(list *part.List, tag string) string {
	if list == nil {
		return ""
	}
	for _, p := range list.Parts {
		if slices.Contains(p.Tags, tag) || p.Tag == tag {
			return p.Name
		}
	}
	return ""
}

// boardNumber is the number of a board in the drawings of boards, 0 where it is not opened.
func (b *bench) boardNumber(tag string) int {
	return slices.IndexFunc(b.l.Answer.Used, func(u cut.Used) bool { return u.Stock == tag }) + 1
}

// stripWords tells of strip k: strip 1, board 2, rings up.
func (b *bench) stripWords(s cut.Strip, k int) string {
	says := fmt.Sprintf("strip %d, board %d", k+1, b.boardNumber(s.Board))
	if s.Ring != cut.NoRing {
		says += ", rings " + string(s.Ring)
	}
	return says
}

func (b *bench) gluedAlt(g cut.GluedPanel, name string) string {
	says := fmt.Sprintf("%s is glued of %d strips, from the near edge to the far one.", name, len(g.Strips))
	for k, s := range g.Strips {
		says += fmt.Sprintf(" %s, %s wide when jointed;", capital(b.stripWords(s, k)), b.text(s.NetWidth))
	}
	return says[:len(says)-1] + "."
}

// glued draws one panel in the clamps.
func (b *bench) glued(g cut.GluedPanel, i int, per int64) []draw.Mark {
	f := newFigure(per)
	p := b.l.Boards
	panel := p.Panels[i]
	lo := at(p.EndTrim, p.PanelEdgeTrim)
	hi := at(lo.X+panel.Length, lo.Y+panel.Width)
	f.room.KeepPath(draw.Rectangle(lo, hi))
	var y, long length.Length
	var strips []caption
	var spots []blemish
	stops := []draw.Station{{}}
	for k, s := range g.Strips {
		strips = append(strips, caption{b.stripWords(s, k), b.number(s.NetWidth) + " wide", rect(0, y, s.Size[0], s.NetWidth)})
		long = max(long, s.Size[0])
		if board, ok := b.board(s.Board); ok {
			spots = append(spots, onStrip(board, s, p.Jointing, y)...)
		}
		y += s.NetWidth
		stops = append(stops, draw.Station{At: y})
	}
	keepOut := keptOut(panel, lo)
	for _, k := range keepOut {
		f.room.KeepPath(k)
	}
	f.pieces(strips, spots)
	f.add(draw.Area{Pen: draw.Hidden, Outer: draw.Rectangle(lo, hi)})
	for _, k := range keepOut {
		f.add(draw.Area{Pen: draw.Ghost, Outer: k})
	}
	ends := f.ends(g.Strips, long)
	f.keepTo(b.st, long, 1, 26)
	left := f.captionRest()
	b.measureGlued(f, stops, long)
	f.under(0, b.noteWidth(f, long, 90), b.gluedNotes(panel, spots, ends, append(left, f.unsaid...))...)
	return f.marks
}

// keptOut returns where no knot, sap or filling may lie, of a finished panel whose near left corner is lo.
func keptOut(panel cut.Panel, lo draw.Point) (out []draw.Path) {
	for _, k := range panel.KeepOut {
		x, y := lo.X+k.X, lo.Y+k.Y
		out = append(out, draw.Rectangle(at(x, y), at(x+k.Length, y+k.Width)))
	}
	return out
}

// measureGlued dimensions the strips between their stops, and how long the longest is.
func (b *bench) measureGlued(f *figure, stops []draw.Station, long length.Length) {
	r := boundsOf(f.marks, f.per)
	chains := [][]draw.Station{stops}
	if len(stops) > 2 {
		chains = append(chains, []draw.Station{stops[0], stops[len(stops)-1]})
	}
	f.add(draw.Dimensions(draw.Rect{Min: at(r.Min.X, 0), Max: at(r.Max.X, stops[len(stops)-1].At)}, f.per, b.st, draw.LeftOf, 1, chains...)...)
	f.add(draw.Dimensions(draw.Rect{Min: at(0, r.Min.Y), Max: at(long, r.Max.Y)}, f.per, b.st, draw.Below, 1+len(chains), []draw.Station{{}, {At: long}})...)
}

// gluedNotes says below a panel in the clamps what is what; unsaid are captions that found no room.
func (b *bench) gluedNotes(panel cut.Panel, spots []blemish, ends bool, unsaid []caption) []string {
	p := b.l.Boards
	says := []string{
		fmt.Sprintf("Good face up, grain along. Dashed: the finished panel, %s × %s, %s from each end and %s from each edge; %s.",
			b.number(panel.Length), b.text(panel.Width), b.text(p.EndTrim), b.text(p.PanelEdgeTrim), b.unit()),
		fmt.Sprintf("Widths are those after jointing: rip each strip %s wider.", b.st.Fineness.Finer().Text(p.Joint())),
	}
	if ends {
		says = append(says, "On the right the ends of the strips folded out, not to scale, good face to the left: how their rings lie.")
	}
	if len(panel.KeepOut) > 0 {
		says = append(says, "Dash and two dots: round a notch or hole, where no knot, sap or filling may lie.")
	}
	if key := defectKey(spots); key != "" {
		says = append(says, key)
	}
	for _, c := range unsaid {
		says = append(says, strings.TrimSuffix(c.tag+", "+c.size, ", "))
	}
	return says
}
