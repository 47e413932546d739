package piece

import (
	"strings"

	"rodwright/length"
	"rodwright/piece/markup"
)

// readPanels reads the boards and sheets.
func (r *reading) readPanels(n *markup.Node) {
	for _, e := range r.entries(n, "panels", "top: {length: 42 in, width: 19 in, thickness: 1 in, level: 18 in, sits: on front posts}") {
		f, ok := r.fields(e.Value, "the panel "+e.Key, "length", "width", "thickness", "grain", "turned", "level", "at", "sits",
			"straps", "wood", "sheet", "corners", "opens", "gap", "show", "stock")
		if !ok {
			continue
		}
		p := Panel{Name: e.Key, Pos: e.KeyPos}
		r.readBody(f, &p)
		r.readLay(f, &p)
		r.readSeats(f, &p)
		r.readMaterial(f, &p)
		r.readShape(f, &p)
		r.checkLevel(f, &p)
		r.doc.Panels = append(r.doc.Panels, p)
	}
}

// readBody reads the three dimensions. The thickness of a sheet is the sheet's.
func (r *reading) readBody(f fields, p *Panel) {
	f.require("length", "42 in")
	f.require("width", "19 in")
	p.Length, _ = f.length("length", aboveZero)
	p.Width, _ = f.length("width", aboveZero)
	if !f.has("sheet") {
		f.require("thickness", "1 1/16 in")
	}
	p.Thickness, _ = f.length("thickness", aboveZero)
}

// readLay reads how the panel lies: its grain, whether it is turned, its level and its place.
func (r *reading) readLay(f fields, p *Panel) {
	p.Turned = f.yes("turned")
	word, _ := f.choice("grain", "along length", "along width")
	p.GrainX = (word != "along width") != p.Turned
	if l, ok := f.length("level", aboveZero); ok {
		p.Level = &l
	}
	if n := f.node("at"); n != nil {
		if at, ok := r.point(n, "at", 2); ok {
			p.At = &[2]length.Length{at[0], at[1]}
		}
	}
}

// readMaterial reads what the panel is made of: sheet goods, a wood of its own, or the document's wood.
func (r *reading) readMaterial(f fields, p *Panel) {
	f.exclude("sheet", "wood")
	f.exclude("sheet", "stock")
	if f.has("sheet") {
		r.readSheet(f, p)
		return
	}
	usual := &r.doc.Wood
	if usual.Species.ID == "" {
		usual = nil
	}
	switch n := f.node("wood"); {
	case n != nil:
		p.Wood = r.woodAt(n, usual)
	case usual != nil:
		p.Wood = usual
	case r.root.Entry("wood") == nil && !f.has("wood"):
		r.fail(p.Pos, "write wood: at the top of the document, or wood: or sheet: in this panel", "nothing says what the panel %s is made of", p.Name)
	}
	if n := f.scalar("stock"); n != nil {
		quarters, ok := strings.CutSuffix(n.Text, "/4")
		if !ok || strings.Trim(quarters, "0123456789") != "" || quarters == "" || len(quarters) > 2 || quarters[0] == '0' {
			r.fail(n.TextPos, "write it in quarters of an inch, for example 5/4", "stock: is %q", clipped(n.Text))
			return
		}
		p.Stock = n.Text
	}
}

// readShape reads what is said of the panel's outline and its faces.
func (r *reading) readShape(f fields, p *Panel) {
	p.Show, _ = f.choice("show", "clear", "small-knots", "character")
	if l, ok := f.length("gap", fromZero); ok {
		p.Gap = &l
	}
	if n := f.node("corners"); n != nil {
		p.Corners = r.cornerRadii(f, n)
	}
}

// cornerRadii reads one radius for all four corners, or one for each that is named.
func (r *reading) cornerRadii(f fields, n *markup.Node) map[Corner]length.Length {
	all := []Corner{FrontLeft, FrontRight, BackLeft, BackRight}
	radii := map[Corner]length.Length{}
	if n.Kind != markup.Map {
		if l, ok := f.length("corners", fromZero); ok {
			for _, c := range all {
				radii[c] = l
			}
		}
		return radii
	}
	g, _ := r.fields(n, "the corners", "front left", "front right", "back left", "back right")
	for _, c := range all {
		if l, ok := g.length(c.String(), fromZero); ok {
			radii[c] = l
		}
	}
	return radii
}

// checkLevel notes a panel whose height follows from nothing.
func (r *reading) checkLevel(f fields, p *Panel) {
	if p.Level != nil || f.has("level") || len(p.Seats) == 0 {
		return
	}
	for _, s := range p.Seats {
		if s.Kind == OnRails || s.Kind == OnFeet {
			return
		}
	}
	f.require("level", "18 in, of its top above the floor")
}
