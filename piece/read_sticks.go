package piece

import (
	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/pipe"
)

// readSticks reads the sticks that are placed by coordinates.
func (r *reading) readSticks(n *markup.Node) {
	for _, e := range r.entries(n, "sticks", "brace: {from: [0, 0, 8 in], to: [20 in, 0, 8 in]}") {
		f, ok := r.fields(e.Value, "the stick "+e.Key, "from", "to", "pipe")
		if !ok {
			continue
		}
		before := len(r.errs)
		s := FreeStick{Name: e.Key, Pos: e.KeyPos, Section: f.section()}
		s.A, s.FinishA = r.stickEnd(f, "from")
		s.B, s.FinishB = r.stickEnd(f, "to")
		if s.A == s.B && len(r.errs) == before {
			r.fail(e.KeyPos, "let it end elsewhere", "the stick %s ends where it begins", e.Key)
		}
		r.doc.Sticks = append(r.doc.Sticks, s)
	}
}

// stickEnd reads an end of a stick: [x, y, z], or {at: [x, y, z], end: cap}.
func (r *reading) stickEnd(f fields, key string) (at [3]length.Length, finish pipe.Kind) {
	f.require(key, "[x, y, z]")
	finish = pipe.None
	n := f.node(key)
	if n == nil {
		return at, finish
	}
	if n.Kind == markup.Map {
		g, _ := r.fields(n, key+":", "at", "end")
		g.require("at", "[x, y, z]")
		finish = g.finish("end", pipe.None, pipe.Cap, pipe.Flange, pipe.None)
		if n = g.node("at"); n == nil {
			return at, finish
		}
	}
	if p, ok := r.point(n, key, 3); ok {
		copy(at[:], p)
	}
	return at, finish
}
