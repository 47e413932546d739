package piece

import (
	"rodwright/piece/markup"
	"rodwright/trade/pipe"
)

// readArms reads the groups of level sticks that stand out from the wall.
func (r *reading) readArms(n *markup.Node) {
	for _, e := range r.entries(n, "arms", "brackets: {at: ends of shelf, inset: 4 in, under: shelf, bands: ridden, reach: 9 in}") {
		f, ok := r.fields(e.Value, "the arms "+e.Key, "at", "inset", "count", "level", "under", "bands", "reach", "end", "pipe")
		if !ok {
			continue
		}
		a := Arms{Name: e.Key, Pos: e.KeyPos, Section: f.section(), Finish: f.finish("end", pipe.Cap, pipe.Cap, pipe.None)}
		r.readSpread(f, &a)
		f.require("reach", "9 in, from the wall to their ends")
		a.Reach, _ = f.length("reach", aboveZero)
		height := f.height(true)
		a.Level, a.Under, a.Bands = height.level, height.under, height.bands
		r.doc.Arms = append(r.doc.Arms, a)
	}
}

// readSpread reads where arms stand along the wall: spread between the ends of a panel, or at distances
// from the left.
func (r *reading) readSpread(f fields, a *Arms) {
	f.require("at", "ends of the shelf, or [4 in, 20 in]")
	n := f.node("at")
	if n == nil {
		return
	}
	if n.Kind == markup.List {
		for _, key := range []string{"inset", "count"} {
			f.exclude("at", key)
		}
		for _, item := range n.Items[:min(len(n.Items), maxEntries)] {
			if s := r.single(item, "at"); s != nil {
				x, _ := r.lengthAt(writtenAt(s), "at", anySign)
				a.At = append(a.At, x)
			}
		}
		a.Count = len(a.At)
		return
	}
	if n = r.single(n, "at"); n == nil {
		return
	}
	panel, ok := writtenAt(n).after("ends of ")
	if !ok {
		r.fail(n.TextPos, "write ends of the shelf, or [4 in, 20 in]", "at: is %q", clipped(n.Text))
		return
	}
	if r.known(aPanel, panel.text, panel.at) {
		a.Panel = panel.text
	}
	f.require("inset", "4 in, from the panel's ends to the axes of the outer arms")
	a.Inset, _ = f.length("inset", fromZero)
	a.Count = f.count("count", 1, 50, 2)
}
