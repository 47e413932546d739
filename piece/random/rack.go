package random

import "strconv"

// stepped is a deep board low in front and a narrow one high at the back: the posts of the high one pass
// the deep one, which lies on their rail.
func (d *draft) stepped() {
	l, w, low := d.between(24, 44), d.between(16, 22), d.between(16, 20)
	inset, high := d.between(2, 3), low+d.between(12, 20)
	deep, top, pipe := d.name("deep"), d.name("high"), d.own()
	front, back, rail := d.name("front"), d.name("back"), d.name("rear")
	d.add("posts", front, "at", "front corners of "+deep, "inset", d.size(inset), "from", d.foot(), "to", deep, "pipe", pipe)
	d.add("posts", back, "at", "back corners of "+deep, "inset", d.size(inset), "from", d.foot(), "to", top, "pipe", pipe)
	d.add("rails", d.name("side"), "joins", front+" with "+back, "level", d.size(in(8)), "pipe", pipe)
	p := lay{name: deep, x: l, y: w, at: []step{d.x, 0}, level: low, opens: d.pick("", "auto", "hole", "back"),
		sits: []string{"on " + front + " posts", "around " + back + " posts"}}
	if !d.chance(3) { // else the posts pass the board as plain pipe
		d.add("rails", rail, "joins", back+" posts", "under", deep, "bands", d.bands(), "pipe", pipe)
		p.sits, p.rails = append(p.sits, "on "+rail+" rails"), true
	}
	d.panel(p)
	d.panel(lay{name: top, x: l - in(1), y: in(9), level: high, sits: []string{"on " + back + " posts"}})
}

// rack is a board on four posts with one to three shelves on side rails below it, each round the posts or
// between them.
func (d *draft) rack() {
	l, w, inset, shelves := d.between(24, 42), d.between(14, 20), d.between(2, 3), 1+d.rng.IntN(3)
	top, pipe := d.name("top"), d.own()
	front, back := d.name("front"), d.name("back")
	d.add("posts", front, "at", "front corners of "+top, "inset", d.size(inset), "from", d.foot(), "to", top, "pipe", pipe)
	d.add("posts", back, "at", "back corners of "+top, "inset", d.size(inset), "from", d.foot(), "to", top, "pipe", pipe)
	d.panel(lay{name: top, x: l, y: w, at: []step{d.x, 0}, level: in(14 + 12*shelves), sits: []string{"on " + front + " posts", "on " + back + " posts"}})
	for i := range shelves {
		d.shelf(i, l, w, inset, front, back, pipe)
	}
}

// shelf is one shelf of a rack on its own side rails.
func (d *draft) shelf(i int, l, w, inset step, front, back, pipe string) {
	rail, shelf := d.name("tier")+" "+strconv.Itoa(i+1), d.name("shelf")+" "+strconv.Itoa(i+1)
	level, way := in(11+12*i), d.pick("around", "between")
	p := lay{name: shelf, x: l, y: w, rails: true, sits: []string{"on " + rail + " rails", way + " " + front + " posts", way + " " + back + " posts"}}
	if way == "between" {
		p.y = w - 2*inset - in(2)
	} else {
		p.opens = d.pick("", "auto", "hole", "{"+front+": front, "+back+": back}")
	}
	height := []string{"level", d.size(level)}
	if d.chance(2) {
		p.level, height = level, []string{"under", shelf}
	}
	d.add("rails", rail, append(height, "joins", front+" with "+back, "bands", d.bands(), "pipe", pipe)...)
	d.panel(p)
}

// baseName is the board that feet under a panel are fixed to.
const baseName = "base"

// tower is a base, on legs or on its own feet, with posts on it that carry a smaller board or end in caps.
func (d *draft) tower(onFeet bool) {
	l, w := d.between(22, 40), d.between(16, 22)
	base, top, legs, risers, pipe := d.name("base"), d.name("top"), d.name("leg"), d.name("riser"), d.own()
	p := lay{name: base, x: l, y: w, at: []step{d.x, 0}, sits: []string{"under " + risers + " posts"}, thick: 8}
	if onFeet {
		p.name = baseName
		base = baseName
		p.sits = append(p.sits, "on feet")
	} else {
		p.level = d.between(12, 18)
		p.sits = append(p.sits, "on "+legs+" posts")
		d.add("posts", legs, "at", "corners of "+base, "inset", d.size(in(2)), "from", d.foot(), "to", base, "pipe", pipe)
	}
	to := top
	if d.chance(3) {
		to = "{level: " + d.size(d.between(34, 46)) + ", end: " + d.pick("cap", "bare") + "}"
	}
	corners := d.pick("corners of ", "left corners of ", "back corners of ")
	if onFeet {
		corners = "corners of " // four sticks at least, should this be the only frame
	}
	d.add("posts", risers, "at", corners+base,
		"inset", "{along: "+d.size(in(5))+", across: "+d.size(in(6))+"}", "from", base, "to", to, "pipe", pipe)
	d.panel(p)
	if to == top {
		d.panel(lay{name: top, x: l - in(2), y: w - in(3), level: d.between(34, 46), sits: []string{"on " + risers + " posts"}})
	}
	if onFeet {
		d.sticks += 4
		d.next(in(60))
	}
}
