package book

import (
	"rodwright/build"
	"rodwright/draw"
	"rodwright/draw/cutting"
	"rodwright/draw/marking"
	"rodwright/draw/view"
	"rodwright/layout"
	"rodwright/part"
)

// Plate is a drawing of a piece with its kind: view, part, cut or glue.
type Plate struct {
	Kind    string
	Drawing *draw.Drawing
}

// Drawings makes all drawings of a piece, in the book's order: the three views, the panels that are marked
// out, then for each material how it is cut and how its panels are glued up.
func Drawings(b *build.Build, st draw.Style) []Plate {
	var out []Plate
	add := func(kind string, ds ...*draw.Drawing) {
		for _, d := range ds {
			out = append(out, Plate{kind, d})
		}
	}
	add("view", views(b, st)...)
	for _, p := range marked(b) {
		add("part", marking.Of(b.Resolved, p, st))
	}
	for _, l := range b.Layout.All() {
		add("cut", cutting.Of(l, st)...)
		add("glue", glued(b, l, st)...)
	}
	return out
}

// views draws the piece from its three sides.
func views(b *build.Build, st draw.Style) (out []*draw.Drawing) {
	for _, side := range []view.Side{view.Front, view.Right, view.Top} {
		out = append(out, view.Of(b.Resolved, b.Parts, side, st))
	}
	return out
}

// marked returns the panels that must be marked out.
func marked(b *build.Build) (out []part.Part) {
	for _, p := range b.Parts.Parts {
		if marking.Needed(p) {
			out = append(out, p)
		}
	}
	return out
}

func glued(b *build.Build, l layout.Layout, st draw.Style) []*draw.Drawing {
	if l.Kind != layout.OfBoards {
		return nil
	}
	return cutting.GlueUp(l, b.Parts, st)
}
