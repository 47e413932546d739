package random

import "fmt"

// lay is what a frame asks of a panel.
type lay struct {
	name  string
	x, y  step     // extent along the piece and front to back
	at    []step   // left front corner; nil where its seats place it
	level step     // of its top; 0 where it follows from its seats
	sits  []string // the ways it sits
	rails bool     // it lies on rails or arms
	opens string   // how it opens round posts
	thick int      // at least so many eighths
}

// panel writes a panel in one of the ways that give the extent asked for.
func (d *draft) panel(l lay) {
	sheet := d.chance(4)
	pairs := d.body(l, sheet)
	if l.at != nil {
		pairs = append(pairs, "at", d.point(l.at...))
	}
	if l.level > 0 {
		pairs = append(pairs, "level", d.size(l.level))
	}
	pairs = append(pairs, "sits", list(l.sits...), "opens", l.opens)
	if l.rails && d.chance(2) {
		pairs = append(pairs, "straps", d.pick("none", "1", "2", "3"))
	}
	if d.chance(5) {
		pairs = append(pairs, "corners", d.corners())
	}
	if d.chance(6) {
		pairs = append(pairs, "show", d.pick("clear", "small-knots", "character"))
	}
	if l.opens != "" && d.chance(3) {
		pairs = append(pairs, "gap", d.size(1))
	}
	d.add("panels", l.name, pairs...)
	d.panels = append(d.panels, board{l.name, l.x, l.y, l.rails, sheet})
}

// body writes dimensions, grain and material. A turned panel names its length from front to back.
func (d *draft) body(l lay, sheet bool) []string {
	long, wide, turned := l.x, l.y, ""
	if d.chance(4) {
		long, wide, turned = l.y, l.x, "yes"
	}
	grain := d.pick("", "along length", "along length", "along width")
	pairs := []string{"length", d.declared(long), "width", d.size(wide), "turned", turned, "grain", grain}
	if sheet {
		kind := d.pick("birch-plywood-18", "softwood-plywood-18", "mdf-18", "particleboard-18", "birch-plywood-12")
		if l.rails { // a pocket over a band would go through a thin sheet
			kind = "birch-plywood-18"
		}
		thick := kind[len(kind)-2:] + " mm"
		return append(pairs, "thickness", thick, "sheet", kind)
	}
	pairs = append(pairs, "thickness", d.size(max(7, l.thick)+d.rng.IntN(5)))
	if d.chance(5) {
		pairs = append(pairs, "wood", d.wood())
	}
	if d.chance(6) {
		pairs = append(pairs, "stock", d.pick("5/4", "6/4", "8/4"))
	}
	return pairs
}

// declared writes a size as a formula on a declared one, now and then.
func (d *draft) declared(s step) string {
	if !d.chance(3) {
		return d.size(s)
	}
	name := fmt.Sprintf("run %d", len(d.lines["sizes"])+1)
	less := 1 + d.rng.IntN(16)
	unit := "in"
	written := fraction(s + less)
	if d.metric {
		unit, written = "mm", fmt.Sprint(3*(s+less))
	}
	d.lines["sizes"] = append(d.lines["sizes"], "  "+name+": "+written+" "+unit)
	return name + " - " + d.size(less)
}

func (d *draft) corners() string {
	if d.chance(2) {
		return d.size(4)
	}
	return "{front left: " + d.size(8) + ", back right: " + d.size(6) + "}"
}
