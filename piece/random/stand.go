package random

// own is the pipe a frame has of its own, empty for the document's.
func (d *draft) own() string {
	if d.chance(4) {
		return d.other
	}
	return ""
}

// bands is how a board meets the fittings of the rails it lies on.
func (d *draft) bands() string { return d.pick("relieved", "ridden", "short") }

// floorPiece makes a piece that stands on the floor, of one or several frames.
func (d *draft) floorPiece() {
	d.chooseFeet()
	if d.feet.under {
		d.tower(true)
	}
	most := 1 + d.rng.IntN(5)
	for d.frame < most || len(d.panels) == 0 || d.sticks < LeastStick {
		if !d.oneFrame() {
			return
		}
	}
}

// frames are the frames a floor piece is made of, each with the panels and the sticks it takes at most.
var frames = []struct {
	panels, sticks int
	make           func(*draft)
}{
	{1, 18, (*draft).table},
	{1, 21, (*draft).ringed},
	{2, 17, (*draft).stepped},
	{4, 30, (*draft).rack},
	{2, 12, func(d *draft) { d.tower(false) }},
	{1, 6, (*draft).hoop},
	{1, 16, (*draft).trestle},
}

// oneFrame adds one more frame and reports whether there was room for it.
func (d *draft) oneFrame() bool {
	f := frames[d.rng.IntN(len(frames))]
	if len(d.panels)+f.panels > MostPanels || d.sticks+f.sticks > MostSticks {
		return false
	}
	before := d.sticks
	f.make(d)
	d.sticks = before + f.sticks
	d.next(in(60))
	return true
}

// next moves on along the piece.
func (d *draft) next(by step) {
	d.x += by
	d.frame++
}

// table is a board on four posts, braced by rails near the floor in one of several ways, or not at all.
func (d *draft) table() {
	l, w, high, inset := d.between(22, 48), 2*d.between(7, 11), d.between(16, 36), d.between(2, 3)
	top, pipe := d.name("top"), d.own()
	front, back, side := d.name("front"), d.name("back"), d.name("side")
	for _, g := range []string{front, back} {
		where := g[:len(g)-2] + " corners of " + top
		d.add("posts", g, "at", where, "inset", d.size(inset), "from", d.foot(), "to", top, "pipe", pipe)
	}
	d.panel(lay{name: top, x: l, y: w, at: []step{d.x, 0}, level: high, sits: []string{"on " + front + " posts", "on " + back + " posts"}})
	if d.chance(5) {
		return
	}
	low := d.between(8, 9)
	d.add("rails", side, "joins", front+" with "+back, "level", d.size(low), "pipe", pipe)
	if d.chance(2) {
		d.add("rails", d.name("rear"), "joins", back+" posts", "level", d.size(low), "pipe", pipe)
	}
	switch d.rng.IntN(3) {
	case 0:
		d.add("rails", d.name("stretcher"), "joins", side+" rails", "share", d.pick("1/3", "1/2", "0.4"), "pipe", pipe)
	case 1:
		at := d.point(d.x+inset, w/2)
		d.add("posts", d.name("prop"), "at", "["+at+"]", "from", "floor", "to", side+" rail", "pipe", pipe)
	}
}

// ringed is a board on a ring of rails in which the posts end.
func (d *draft) ringed() {
	l, w, high, inset := d.between(24, 44), d.between(14, 22), d.between(18, 30), d.between(2, 3)
	top, legs, ring, pipe := d.name("top"), d.name("leg"), d.name("ring"), d.own()
	d.add("posts", legs, "at", "corners of "+top, "inset", "{along: "+d.size(inset)+", across: "+d.size(inset)+"}",
		"from", d.foot(), "to", ring+" rail", "pipe", pipe)
	l2 := lay{name: top, x: l, y: w, at: []step{d.x, 0}, sits: []string{"on " + ring + " rails"}, rails: true}
	height := []string{"level", d.size(high)}
	if d.chance(2) {
		l2.level, height = high, []string{"under", top}
	}
	d.add("rails", ring, append(height, "joins", legs+" posts", "bands", d.bands(), "union", d.pick("", "yes"), "pipe", pipe)...)
	d.panel(l2)
	if d.chance(2) {
		d.add("rails", d.name("foot rail"), "joins", legs+" posts", "level", d.size(d.between(8, 9)), "pipe", pipe)
	}
}

// trestle is a board on three posts in a row on each side, all joined by rails: its middle posts carry
// crosses and side outlets.
func (d *draft) trestle() {
	l, w, high := d.between(40, 56), d.between(14, 20), d.between(22, 32)
	top, pipe := d.name("top"), d.own()
	row := d.name("row")
	at := "[" + d.point(d.x+in(4), w/2) + ", " + d.point(d.x+l/2, w/2) + ", " + d.point(d.x+l-in(4), w/2) + "]"
	d.add("posts", row, "at", at, "from", d.foot(), "to", top, "pipe", pipe)
	d.panel(lay{name: top, x: l, y: w, at: []step{d.x, 0}, level: high, sits: []string{"on " + row + " posts"}})
	d.add("rails", d.name("long"), "joins", row+" posts", "level", d.size(d.between(8, 9)), "pipe", pipe)
	if d.chance(2) {
		d.add("rails", d.name("high"), "joins", row+" posts", "level", d.size(high-in(6)), "pipe", pipe)
	}
}
