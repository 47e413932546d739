package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/adhesive"
)

// readVoids reads the hollows in panels of wood that are filled with resin.
func (r *reading) readVoids(n *markup.Node) {
	for _, e := range r.entries(n, "voids", "knots: {in: top, size: 3 × 1 1/2 in, depth: 1/2 in, count: 2}") {
		f, ok := r.fields(e.Value, "the voids "+e.Key, "in", "size", "depth", "count", "walls", "resin")
		if !ok {
			continue
		}
		v := Void{Name: e.Key, Pos: e.KeyPos, Walls: BowlWalls, Resin: adhesive.Resins()[0]}
		f.require("in", "the panel they are in")
		v.In, _ = f.panel("in")
		f.require("size", "3 × 1 1/2 in, long and wide at the face")
		if n := f.scalar("size"); n != nil {
			if size, ok := r.dimensions(writtenAt(n), "size", "3 × 1 1/2 in", 2); ok {
				v.Size = [2]length.Length{size[0], size[1]}
			}
		}
		f.require("depth", "1/2 in, at its deepest")
		v.Depth, _ = f.length("depth", aboveZero)
		v.Count = f.count("count", 1, maxEntries, 1)
		if word, ok := f.choice("walls", string(BowlWalls), string(StraightWalls), string(FunnelWalls)); ok {
			v.Walls = Walls(word)
		}
		if word, ok := f.choice("resin", adhesive.Resins()...); ok {
			v.Resin = word
		}
		r.checkVoid(f, v)
		r.doc.Voids = append(r.doc.Voids, v)
	}
}

// checkVoid checks a void against its panel: it is in wood, inside the panel, and no deeper than it.
func (r *reading) checkVoid(f fields, v Void) {
	i := slices.IndexFunc(r.doc.Panels, func(p Panel) bool { return p.Name == v.In })
	if i < 0 {
		return
	}
	p := r.doc.Panels[i]
	switch {
	case p.Sheet != "":
		r.fail(f.at.Entry("in").Pos, "name a panel of wood", "in: %s is of %s, which has no open knots", p.Name, p.Sheet)
	case v.Depth > p.Thickness && p.Thickness > 0:
		r.fail(f.at.Entry("depth").Pos, "write at most the thickness of "+p.Name+", which is a void right through",
			"depth: is more than %s is thick", p.Name)
	case p.Length > 0 && p.Width > 0 && (max(v.Size[0], v.Size[1]) > max(p.Length, p.Width) || min(v.Size[0], v.Size[1]) > min(p.Length, p.Width)):
		r.fail(f.at.Entry("size").Pos, "write the size of one void", "size: is larger than %s", p.Name)
	}
}
