package book

import (
	"fmt"
	"strings"

	"rodwright/draw/cutting"
	"rodwright/draw/marking"
	"rodwright/layout"
	"rodwright/part"
)

// twoCaptions is what a heading and the captions of two figures take of a sheet, in millimetres.
const twoCaptions = 40

// views shows the piece from three sides, two to a sheet so that their scales are near to each other.
func (a *author) views() []Section {
	st := a.st
	st.Height = (st.Height + headRoom - twoCaptions) / 2
	return []Section{{ID: "three-views", Title: "Three views", NewPage: true, Blocks: figures(views(a.b, st))}}
}

// markings shows each panel that is more than a plain rectangle, on a sheet of its own.
func (a *author) markings() (out []Section) {
	for _, p := range marked(a.b) {
		s := Section{ID: "mark-out-" + strings.ToLower(p.Tag), Title: fmt.Sprintf("Mark out %s, %s", p.Tag, p.Name), NewPage: true}
		s.Blocks = append(s.Blocks, Paragraph{a.markingWords(p)})
		d := marking.Of(a.b.Resolved, p, a.st)
		s.Blocks = append(s.Blocks, Figure{Drawing: d, Caption: capital(d.Title) + scale(d)})
		s.table(a.features(p))
		var edges []string
		for _, e := range p.Profiles {
			edges = append(edges, fmt.Sprintf("%s %s on the %s, %s long", e.Profile, a.w.to.Text(e.Size), e.Side, a.w.to.Text(e.Run)))
		}
		if len(edges) > 0 {
			s.Blocks = append(s.Blocks, List{Items: edges})
		}
		out = append(out, s)
	}
	return out
}

func (a *author) markingWords(p part.Part) string {
	words := fmt.Sprintf("%s of %s, %s. All measures are from one corner, the %s, along the grain and across it, with the upper face up.",
		capital(pieces(p)), a.stock(p), a.w.size(p.Finished[:]...), p.Datum)
	if len(p.Features) > 0 {
		words += " Mark each measure from the corner itself, never from the mark before it."
	}
	return words
}

// pieces counts the panels of a kind: one piece, 4 pieces.
func pieces(p part.Part) string {
	if p.Count == 1 {
		return "one piece"
	}
	return several(p.Count, "piece")
}

// features is the table of the cuts in one panel; a column in which nothing stands is left out.
func (a *author) features(p part.Part) Table {
	head, rows := marking.Features(p, a.w.to)
	t := Table{Caption: "Cuts in " + p.Tag + ", by the letters on the drawing"}
	shares := map[string]float64{"What": 1, "Size": 1.8, "Why": 2.4}
	for i, h := range head {
		used := i == 0
		for _, r := range rows {
			used = used || r[i] != ""
		}
		if !used {
			continue
		}
		c := Column{Head: h, Share: shares[h]}
		if i == 0 {
			c.Head = "Letter"
		}
		if c.Share == 0 {
			c.Share = 1
		}
		t.Columns = append(t.Columns, c)
		for k, r := range rows {
			if len(t.Rows) <= k {
				t.Rows = append(t.Rows, nil)
			}
			t.Rows[k] = append(t.Rows[k], a.w.say(r[i]))
		}
	}
	return t
}

// layouts shows how each material is cut and glued up, a section each.
func (a *author) layouts() (out []Section) {
	for _, l := range a.b.Layout.All() {
		if len(l.Answer.Used) == 0 { // what could not be laid out is told among what is not known
			continue
		}
		s := Section{ID: "layout-" + cutting.Slug(l.Material), Title: "How " + a.material(l) + " is cut", NewPage: true}
		s.Blocks = append(s.Blocks, Paragraph{a.layoutWords(l)})
		if d := cutting.Went(l, a.st); d != nil {
			s.Blocks = append(s.Blocks, Figure{Drawing: d, Caption: d.Title + "; " + a.opened(l) + " in all"})
		}
		s.Blocks = append(s.Blocks, figures(cutting.Of(l, a.st))...)
		s.Blocks = append(s.Blocks, a.atTheSaw(l)...)
		s.Blocks = append(s.Blocks, figures(glued(a.b, l, a.st))...)
		out = append(out, s)
	}
	return out
}

// material names what a layout cuts.
func (a *author) material(l layout.Layout) string {
	if l.Kind == layout.OfSticks {
		return "pipe " + l.Material
	}
	return a.w.say(l.Material)
}
