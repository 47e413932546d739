package piece

import (
	"strings"

	"rodwright/length"
	"rodwright/piece/formula"
	"rodwright/piece/markup"
	"rodwright/trade/pipe"
)

// readHoles reads the openings in panels: rows and single ones.
func (r *reading) readHoles(n *markup.Node) {
	for _, e := range r.entries(n, "holes", "drains: {in: top, along: front edge, from edge: 2 in, diameter: 5/8 in, count: 5}") {
		f, ok := r.fields(e.Value, "the holes "+e.Key, "in", "kind", "along", "from edge", "count", "at", "diameter", "size", "radius", "depth", "passes")
		if !ok {
			continue
		}
		h := Holes{Name: e.Key, Pos: e.KeyPos, Kind: RoundHole}
		f.require("in", "the panel they are in")
		h.In, _ = f.panel("in")
		if word, ok := f.choice("kind", string(RoundHole), string(Slot), string(CutOut)); ok {
			h.Kind = HoleKind(word)
		}
		r.readRow(f, &h)
		r.readOpening(f, &h)
		r.readPasses(f, &h)
		r.doc.Holes = append(r.doc.Holes, h)
	}
}

// readRow reads where the openings are: in a row along an edge, or at places.
func (r *reading) readRow(f fields, h *Holes) {
	f.exclude("at", "along")
	f.exclude("at", "from edge")
	f.exclude("at", "count")
	if n := f.node("at"); n != nil {
		h.At, _ = r.points(n, "at")
		h.Count = len(h.At)
		return
	}
	if !f.has("along") {
		f.require("at", "[x, y] from the panel's left front corner, or along: front edge")
		return
	}
	if side, ok := f.choice("along", "front edge", "back edge", "left edge", "right edge"); ok {
		h.Along = strings.TrimSuffix(side, " edge")
	}
	f.require("from edge", "1 1/2 in")
	h.FromEdge, _ = f.length("from edge", aboveZero)
	h.Count = f.count("count", 1, maxEntries, 1)
}

// readOpening reads the shape of the openings.
func (r *reading) readOpening(f fields, h *Holes) {
	if h.Kind == RoundHole {
		f.require("diameter", "5/8 in")
		for _, key := range []string{"size", "radius"} {
			if n := f.at.Entry(key); n != nil {
				r.fail(n.Pos, "leave it out, or write kind: slot or kind: cut-out", "%s: is for slots and cut-outs, and %s is round", key, h.Name)
			}
		}
	} else {
		f.require("size", "4 × 1 in, along the piece and front to back")
		if n := f.at.Entry("diameter"); n != nil {
			r.fail(n.Pos, "write size: 4 × 1 in instead", "diameter: is for round holes, and %s is a %s", h.Name, h.Kind)
		}
	}
	h.Diameter, _ = f.length("diameter", aboveZero)
	h.Radius, _ = f.length("radius", fromZero)
	h.Depth, _ = f.length("depth", aboveZero)
	if n := f.scalar("size"); n != nil {
		if size, ok := r.dimensions(writtenAt(n), "size", "4 × 1 in", 2); ok {
			h.Size = [2]length.Length{size[0], size[1]}
			r.checkRadius(f, h)
		}
	}
}

func (r *reading) checkRadius(f fields, h *Holes) {
	if n := f.at.Entry("radius"); n != nil && 2*h.Radius > min(h.Size[0], h.Size[1]) {
		r.fail(n.Pos, "write at most half of its shorter side", "radius: is larger than the opening %s allows", h.Name)
	}
}

// readPasses reads what must pass through: words of the maker, which may end with the size of the largest
// part, or pipe, or a fitting of the document's pipe.
func (r *reading) readPasses(f fields, h *Holes) {
	n := f.scalar("passes")
	if n == nil {
		return
	}
	h.Passes = n.Text
	if n.Text == "pipe" {
		h.PassSize = r.doc.Pipe.OD
		return
	}
	if kind, err := pipe.ParseKind(n.Text); err == nil && kind != pipe.None && r.doc.Pipe.ID != "" {
		if fitting, err := r.doc.Pipe.Fitting(kind); err == nil {
			h.PassSize = max(fitting.Band, fitting.Plate)
			return
		}
	}
	h.PassSize = r.trailingLength(n.Text)
}

// trailingLength returns the length that a text ends with, as in plug 1 1/2 in; zero when it ends with none.
func (r *reading) trailingLength(text string) length.Length {
	for i, c := range text {
		if i > 0 && text[i-1] != ' ' || !strings.ContainsRune("0123456789.⅛¼⅜½⅝¾⅞", c) {
			continue
		}
		if l, err := formula.Eval(text[i:], r.doc.Unit); err == nil && l > 0 {
			return l
		}
	}
	return 0
}

// sides are the plan edges of a panel.
var sides = []string{string(FrontSide), string(BackSide), string(LeftSide), string(RightSide)}

// readEdges reads the profiles of panels' edges: a profile and its size, by edge or for all.
func (r *reading) readEdges(n *markup.Node) {
	for _, e := range r.entries(n, "edges", "top: {front: chamfer 3/32 in}") {
		if !r.known(aPanel, e.Key, e.KeyPos) {
			continue
		}
		f, ok := r.fields(e.Value, "the edges of "+e.Key, append([]string{"all"}, sides...)...)
		if !ok {
			continue
		}
		for _, edge := range f.at.Entries {
			if v := f.scalar(edge.Key); v != nil {
				r.readProfile(f, edge, e.Key, v)
			}
		}
	}
}

// readProfile reads one profile and puts it on its edge. An edge that is named takes its own profile before
// that of all.
func (r *reading) readProfile(f fields, edge markup.Entry, panel string, n *markup.Node) {
	profile, _, _ := strings.Cut(n.Text, " ")
	size, ok := writtenAt(n).after(profile)
	if !ok || size.text == "" || profile != "chamfer" && profile != "round-over" && profile != "bevel" {
		r.fail(n.TextPos, "write chamfer 3/32 in, round-over 1/8 in or bevel 1/4 in", "%s: is %q", edge.Key, clipped(n.Text))
		return
	}
	l, ok := r.lengthAt(size, profile, aboveZero)
	if !ok {
		return
	}
	for _, side := range sides {
		if edge.Key == side || edge.Key == "all" && !f.has(side) {
			r.doc.Edges = append(r.doc.Edges, Edge{panel, side, profile, l, edge.KeyPos})
		}
	}
}
