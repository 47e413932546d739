package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/piece/markup"
)

// readHolds reads the things the piece carries.
func (r *reading) readHolds(n *markup.Node) {
	if n == nil {
		return
	}
	const example = "- {name: seed trays, on: top, size: 13 × 15 × 3 in, weight: 12 lb, count: 3}"
	if n.Kind != markup.List {
		r.fail(n.Pos, "write a list: "+example, "holds: is %s", n.Kind)
		return
	}
	if len(n.Items) > maxEntries {
		r.fail(n.Items[maxEntries].Pos, "split the piece", "holds: has more than %d entries", maxEntries)
		return
	}
	for _, item := range n.Items {
		if item.Kind == markup.Empty {
			r.fail(item.Pos, "write "+example, "an entry of holds: is empty")
			continue
		}
		f, ok := r.fields(item, "a thing held", "name", "on", "size", "weight", "count", "at")
		if ok {
			r.readHold(f)
		}
	}
}

func (r *reading) readHold(f fields) {
	h := Hold{Pos: f.at.Pos}
	name, named := f.text("name", "seed trays")
	if n := f.at.Entry("name"); named {
		r.checkName(name, n.TextPos, theHeld)
		if slices.ContainsFunc(r.doc.Holds, func(o Hold) bool { return o.Name == name }) {
			r.fail(n.TextPos, "give each a name of its own", "two things held are named %q", name)
		}
		f.what = name
	}
	h.Name = name
	f.require("on", "the panel it stands on")
	h.On, _ = f.panel("on")
	f.require("size", "13 × 15 × 3 in, along the piece × front to back × high")
	if n := f.scalar("size"); n != nil {
		if size, ok := r.dimensions(writtenAt(n), "size", "13 × 15 × 3 in", 3); ok {
			h.Size = [3]length.Length(size)
		}
	}
	f.require("weight", "12 lb")
	h.MassKg, _ = f.mass("weight")
	h.Count = f.count("count", 1, maxEntries, 1)
	if n := f.node("at"); n != nil {
		if at, ok := r.point(n, "at", 2); ok {
			h.At = &[2]length.Length{at[0], at[1]}
		}
	}
	r.doc.Holds = append(r.doc.Holds, h)
}
