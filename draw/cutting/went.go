package cutting

import (
	"strings"

	"rodwright/cut/explain"
	"rodwright/draw"
	"rodwright/layout"
	"rodwright/length"
)

// fillings tell the uses of a bar apart.
var fillings = map[explain.Use]draw.Fill{
	explain.Parts: draw.Paper, explain.Kept: draw.Paper, explain.Later: draw.Plywood, explain.SawCuts: draw.Steel,
	explain.Trimming: draw.LongWood, explain.Defects: draw.EndWood, explain.Lost: draw.Waste,
}

// Went draws where the stock of a layout goes: a bar as wide as the sheet whose parts add up to all that was
// opened. It is nil where nothing is opened.
func Went(l layout.Layout, st draw.Style) *draw.Drawing {
	if l.Answer == nil {
		return nil
	}
	shares := explain.Shares(l.Problem(), l.Answer)
	if len(shares) == 0 {
		return nil
	}
	b := &bench{l: l, st: st}
	speech := explain.Speech{Noun: l.Noun(), Length: st.Fineness.Show, Metric: st.Fineness.Unit.Metric()}
	f := newFigure(1)
	long, high := f.full(st.Width-40), f.full(bar) // what stands aside of the bar's ends needs room
	var says []string
	sum := 0.0
	for _, s := range shares {
		from := at(length.Length(sum*float64(long)), 0)
		sum += s.Of
		in := draw.Rect{Min: from, Max: at(min(long, length.Length(sum*float64(long))), high)}
		f.box(draw.Outline, fillings[s.Use], in)
		f.solid = append(f.solid, in)
		c := caption{s.Use.Name(), s.Percent(), in}
		says = append(says, c.tag+" "+speech.Amount(s.Amount)+", "+c.size)
		if fillings[s.Use] != draw.Paper || !f.inside(c) {
			f.rest = append(f.rest, c)
		}
	}
	var left []string
	for _, c := range f.captionRest() {
		left = append(left, c.tag+", "+c.size)
	}
	if left != nil {
		f.under(0, long, "from the left, too small to be named: "+strings.Join(left, "; "))
	}
	title := "Where the stock of " + b.material() + " goes"
	return &draw.Drawing{
		ID: "cut-" + Slug(l.Material) + "-went", Per: 1, Marks: f.marks, Title: title,
		Alt: title + ": of " + speech.Amount(l.Problem().Opened(l.Answer)) + " opened " + strings.Join(says, "; ") + ".",
	}
}
