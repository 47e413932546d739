package random

import "strconv"

// wallPiece makes shelves on arms from the wall: one to eight, each on arms at given places or spread under
// it.
func (d *draft) wallPiece() {
	reach, pipe := d.between(8, 12), d.own()
	shelves := 1 + d.rng.IntN(MostPanels)
	for i := range shelves {
		count := 2 + d.rng.IntN(3)
		if shelves == 1 {
			count = LeastStick
		}
		d.wallShelf(i, count, reach, pipe)
		d.sticks += count
		d.frame++
	}
}

// wallShelf is one shelf on its arms, which are placed by coordinates; those of the first may follow from
// their shelf instead.
func (d *draft) wallShelf(i, count int, reach step, pipe string) {
	bracket, shelf := d.name("bracket"), d.name("shelf")
	level, gap := in(40+14*i), in(10)
	p := lay{name: shelf, x: step(count) * gap, y: reach, sits: []string{"on " + bracket + " arms"}, rails: true}
	at := "["
	for k := range count {
		if k > 0 {
			at += ", "
		}
		at += d.size(in(5) + step(k)*gap)
	}
	pairs := []string{"at", at + "]"}
	if i == 0 && d.chance(2) { // the arms follow from the shelf, which then stands at 0, 0
		pairs = []string{"at", "ends of " + shelf, "inset", d.size(in(4)), "count", strconv.Itoa(count)}
		p.at = []step{0, 0}
	}
	if d.chance(2) {
		p.level = level
		pairs = append(pairs, "under", shelf)
	} else {
		pairs = append(pairs, "level", d.size(level))
	}
	pairs = append(pairs, "bands", d.bands(), "reach", d.size(reach), "end", d.pick("", "cap", "bare"), "pipe", pipe)
	d.add("arms", bracket, pairs...)
	d.panel(p)
}

// hoop is a gate of free sticks, square or with slanting shoulders, and a board beside it placed by
// coordinates.
func (d *draft) hoop() {
	high, wide, pipe := d.between(24, 40), d.between(20, 40), d.own()
	s, y := in(8), in(6)
	left, right := d.x, d.x+wide+2*s
	up := func(name string, x step) {
		d.add("sticks", name, "from", "{at: "+d.point(x, y, 0)+", end: "+d.pick("flange", "cap", "bare")+"}", "to", d.point(x, y, high), "pipe", pipe)
	}
	run := func(name string, a, b []step) {
		d.add("sticks", name, "from", d.point(a...), "to", d.point(b...), "pipe", pipe)
	}
	up(d.name("near"), left)
	up(d.name("far"), right)
	shoulder := step(0)
	if d.chance(2) {
		shoulder = s
		run(d.name("near shoulder"), []step{left, y, high}, []step{left + s, y, high + s})
		run(d.name("far shoulder"), []step{right, y, high}, []step{right - s, y, high + s})
	}
	a, b := []step{left + shoulder, y, high + shoulder}, []step{right - shoulder, y, high + shoulder}
	mid := []step{(a[0] + b[0]) / 2, y, high + shoulder}
	run(d.name("bar"), a, mid)
	run(d.name("bar end"), mid, b)
	d.panel(lay{name: d.name("board"), x: d.between(20, 30), y: d.between(8, 12), at: []step{d.x, in(12)}, level: d.between(10, 20), sits: []string{"by place"}})
}
