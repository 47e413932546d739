package random

import "fmt"

// trim adds what a piece has besides its frame: holes, edges, things held and chosen screws.
func (d *draft) trim() {
	for i, p := range d.panels {
		if d.chance(2) {
			d.hole(i, p)
		}
		if d.chance(3) {
			d.edges(p)
		}
		if d.chance(2) {
			d.hold(i, p)
		}
	}
	if d.chance(4) {
		d.joints()
	}
}

// hole cuts an opening of some kind into a panel, all of it well inside.
func (d *draft) hole(i int, p board) {
	name := fmt.Sprintf("opening %d", i+1)
	middle := "[" + d.point(p.x/2, p.y/2) + ", " + d.point(p.x/2-in(4), p.y/2) + "]"
	switch d.rng.IntN(6) {
	case 0:
		d.add("holes", name, "in", p.name, "along", d.pick("front", "back")+" edge", "from edge", d.size(in(1)+4),
			"diameter", d.size(5), "count", d.pick("1", "3", "5"))
	case 1:
		d.add("holes", name, "in", p.name, "along", d.pick("left", "right")+" edge", "from edge", d.size(in(2)),
			"diameter", d.size(4), "count", "2")
	case 2:
		d.add("holes", name, "in", p.name, "at", middle, "diameter", d.size(in(2)), "passes", d.pick("pipe", "coupling", "plug 1 1/2 in", "cables"))
	case 3:
		d.add("holes", name, "in", p.name, "kind", "slot", "at", d.point(p.x/2, p.y/2), "size", d.pick("4 × 1 in", "100 × 20 mm"))
	case 4:
		d.add("holes", name, "in", p.name, "kind", "cut-out", "at", d.point(p.x/2, p.y/2), "size", "5 × 3 in", "radius", "1/2 in")
	case 5:
		d.add("holes", name, "in", p.name, "at", d.point(p.x/2, p.y/2), "diameter", "35 mm", "depth", "6 mm")
	}
}

func (d *draft) edges(p board) {
	profile := d.pick("chamfer 3/32 in", "chamfer 2 mm", "round-over 1/8 in", "bevel 1/4 in")
	if d.chance(3) {
		d.add("edges", p.name, "all", profile)
		return
	}
	d.add("edges", p.name, d.pick("front", "back"), profile, d.pick("left", "right"), d.pick("chamfer 1/16 in", "round-over 3 mm"))
}

func (d *draft) hold(i int, p board) {
	line := fmt.Sprintf("  - {name: load %d, on: %s, size: %s, weight: %s, count: %d", i+1, p.name,
		d.pick("8 × 6 × 7 in", "120 × 150 × 90 mm"), d.pick("12 lb", "4.5 kg", "900 g"), 1+d.rng.IntN(3))
	if d.chance(3) {
		line += ", at: " + d.point(in(5), p.y/2)
	}
	d.lines["holds"] = append(d.lines["holds"], line+"}")
}

func (d *draft) joints() {
	d.lines["joints"] = append(d.lines["joints"],
		"  flange: {screw: "+d.pick("10 × 3/4 in", "12", "14 × 1 in")+", slotted: "+d.pick("yes", "no")+"}",
		"  strap: "+d.pick("10", "8 × 3/4 in"),
		"  wall flange: {screw: 14 × 2 1/2 in}",
		"  caster: {screw: 14, hole: 3/8 in}")
}

// voids says of one panel of wood that it has open knots. It comes last, so that it takes no chance from
// what is drawn before it.
func (d *draft) voids() {
	for _, p := range d.panels {
		if p.sheet || !d.chance(4) {
			continue
		}
		d.add("voids", p.name+" knots", "in", p.name, "size", "2 × 1 in", "depth", d.pick("1/4 in", "6 mm"),
			"count", d.pick("1", "3"), "walls", d.pick("bowl", "straight", "funnel"), "resin", d.pick("epoxy-table-top", "epoxy-deep-pour"))
		return
	}
}

// loads says of one panel what may come upon it. Like voids it takes no chance from what is drawn before it.
func (d *draft) loads() {
	p := d.panels[d.rng.IntN(len(d.panels))]
	at := []string{"edge", d.pick("front", "back", "left", "right")}
	if d.chance(3) {
		at = []string{"at", d.point(p.x/2, p.y/2)}
	}
	if d.chance(4) {
		d.add("loads", "lean", append([]string{"on", p.name, "weight", d.pick("60 kg", "25 lb")}, at...)...)
	}
	if d.chance(4) {
		d.add("loads", "shove", append([]string{"on", p.name, "push", d.pick("100 N", "20 lb", "30 lbf", "8 kg"), "towards", d.pick("front", "back", "left", "right")}, at...)...)
	}
}
