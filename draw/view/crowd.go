package view

import (
	"cmp"
	"math"
	"slices"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

// crowd is what words and rings must find room among, on a drawing of scale 1 : per.
type crowd struct {
	per   int64
	limit draw.Rect   // no ring stands outside it
	hard  lines       // that no words may stand on: edges that are seen, leaders, dimension lines
	soft  lines       // that they had better not: hidden edges, axes, ghosts
	boxes []draw.Rect // of words
}

// crowdOf gathers what is drawn.
func crowdOf(d *draw.Drawing, limit draw.Rect) *crowd {
	size := lettering.Full(cell, d.Per)
	c := &crowd{per: d.Per, limit: limit, hard: linesOf(size), soft: linesOf(size), boxes: draw.Boxes(d)}
	for _, m := range d.Flat() {
		switch m := m.(type) {
		case draw.Line:
			c.line(m)
		case draw.Arc:
			c.arc(m)
		}
	}
	return c
}

func (c *crowd) line(l draw.Line) {
	switch l.Pen {
	case draw.Outline, draw.Measure:
		c.hard.add(l)
	case draw.Hidden, draw.Centre, draw.Ghost:
		c.soft.add(l)
	}
}

// chordsOfRound is the number of chords that a whole circle is taken in.
const chordsOfRound = 16

func (c *crowd) arc(a draw.Arc) {
	n := max(1, int(math.Ceil(a.Sweep/360*chordsOfRound)))
	at := func(k int) draw.Point {
		sin, cos := math.Sincos((a.From + a.Sweep*float64(k)/float64(n)) * math.Pi / 180)
		r := float64(a.Radius)
		return draw.Point{X: a.Centre.X + nm(r*cos), Y: a.Centre.Y + nm(r*sin)}
	}
	for k := range n {
		c.line(draw.Line{Pen: a.Pen, A: at(k), B: at(k + 1)})
	}
}

// free reports whether a box stands clear of words and of edges; strictly, of fainter lines too.
func (c *crowd) free(b draw.Rect, strict bool) bool {
	b = wider(b, lettering.Full(lettering.Clear, c.per))
	for _, o := range c.boxes {
		if meet(b, o) {
			return false
		}
	}
	clear := true
	look := func(l draw.Line) bool {
		clear = !runsThrough(l, b)
		return clear
	}
	c.hard.near(b, look)
	if clear && strict {
		c.soft.near(b, look)
	}
	return clear
}

func wider(b draw.Rect, by length.Length) draw.Rect {
	return draw.Rect{Min: draw.Point{X: b.Min.X - by, Y: b.Min.Y - by}, Max: draw.Point{X: b.Max.X + by, Y: b.Max.Y + by}}
}

// runsThrough reports whether a line meets a box that its own box meets: unless all corners lie on one side of it.
func runsThrough(l draw.Line, b draw.Rect) bool {
	du, dv := float64(l.B.X-l.A.X), float64(l.B.Y-l.A.Y)
	left, right := false, false
	for _, p := range [4]draw.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}} {
		side := du*float64(p.Y-l.A.Y) - dv*float64(p.X-l.A.X)
		left, right = left || side >= 0, right || side <= 0
	}
	return left && right
}

// meet reports whether two boxes share a place.
func meet(a, b draw.Rect) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

func boxOf(l draw.Line) draw.Rect {
	return draw.Rect{Min: draw.Point{X: min(l.A.X, l.B.X), Y: min(l.A.Y, l.B.Y)}, Max: draw.Point{X: max(l.A.X, l.B.X), Y: max(l.A.Y, l.B.Y)}}
}

// crossed counts the edges that a leader crosses, up to one more than most; words it must not touch at all.
func (c *crowd) crossed(a, b draw.Point, most int) int {
	l := draw.Line{A: a, B: b}
	reach, g := boxOf(l), lettering.Full(lettering.Clear, c.per)
	for _, o := range c.boxes {
		if w := wider(o, g); meet(reach, w) && runsThrough(l, w) {
			return most + 1
		}
	}
	leader, n := lineOf(l), 0
	counted := map[draw.Line]bool{}
	c.hard.near(reach, func(o draw.Line) bool {
		if !counted[o] && meets(leader, lineOf(o)) {
			counted[o] = true
			n++
		}
		return n <= most
	})
	return n
}

func meets(a, b curve) bool {
	for _, t := range a.meetsLine(nil, b) {
		if t >= 0 && t <= 1 {
			return true
		}
	}
	return false
}

func lineOf(l draw.Line) curve {
	return straight(place{u: float64(l.A.X), v: float64(l.A.Y)}, place{u: float64(l.B.X), v: float64(l.B.Y)})
}

// ring is a tag and the places on its part where its leader may end.
type ring struct {
	words  string
	spots  []spot
	needed bool // drawn even where only a long leader reaches it
}

// spot is a place on a part, and the directions in which a leader may leave it, in degrees, the best first. A
// spot without directions is for a ring that stands on the part itself.
type spot struct {
	on   draw.Point
	ways []float64
}

// try is a way to look for a place.
type try struct {
	near, far float64 // from the part to the ring, on paper in millimetres
	crossed   int     // edges that the leader may cross
	strict    bool    // clear of faint lines too
}

// tries are how a ring looks for its place: near before far, clear of all lines before clear of edges alone,
// its leader across few edges before many. A leader crosses at least the edge of its own part.
var tries = []try{
	{2, 9, 1, true}, {2, 9, 1, false}, {9.5, 20, 1, false}, {2, 20, 2, false},
}

// put finds a place for a ring near its part and takes it.
func (c *crowd) put(r ring) (draw.Tag, bool) {
	at := draw.Tag{Words: r.words}
	size := c.sizeOf(at)
	for _, strict := range [2]bool{true, false} {
		for _, s := range r.spots {
			if len(s.ways) == 0 && c.take(&at, size, s.on, s.on, 0, strict) {
				return at, true
			}
		}
	}
	for _, try := range tries {
		for far := try.near; far <= try.far; far += 1.5 {
			for _, s := range r.spots {
				for _, way := range s.ways {
					if c.take(&at, size, c.led(s.on, way, far, size), s.on, try.crossed, try.strict) {
						return at, true
					}
				}
			}
		}
	}
	return at, false
}

// led returns the middle of a ring whose edge stands that far from a place, in millimetres on paper, in a
// direction in degrees.
func (c *crowd) led(on draw.Point, way, far float64, size draw.Rect) draw.Point {
	sin, cos := math.Sincos(way * math.Pi / 180)
	edge := math.Min(float64(size.Max.X)/math.Max(math.Abs(cos), 1e-9), float64(size.Max.Y)/math.Max(math.Abs(sin), 1e-9))
	reach := onPaper(far, c.per) + edge
	return draw.Point{X: on.X + nm(reach*cos), Y: on.Y + nm(reach*sin)}
}

// take sets a tag with its ring about the middle if there is room.
func (c *crowd) take(t *draw.Tag, size draw.Rect, middle, on draw.Point, most int, strict bool) bool {
	box := about(size, middle)
	if !inside(c.limit, box) || !c.free(box, strict) || middle != on && c.crossed(on, middle, most) > most {
		return false
	}
	t.At, t.Part = middle, on
	c.boxes = append(c.boxes, box)
	if middle != on {
		c.hard.add(draw.Line{Pen: draw.Measure, A: middle, B: on})
	}
	return true
}

func about(size draw.Rect, p draw.Point) draw.Rect {
	return draw.Rect{Min: draw.Point{X: p.X + size.Min.X, Y: p.Y + size.Min.Y}, Max: draw.Point{X: p.X + size.Max.X, Y: p.Y + size.Max.Y}}
}

// Steps in which places aside are tried, and how many edges a leader to there may cross.
const (
	asideStep  = 3.0 // on paper in millimetres
	asideMost  = 12
	asideSpots = 4 // on the part, that are tried
)

// aside finds the place nearest to a ring's part, wherever there is room, and takes it.
func (c *crowd) aside(r ring) (draw.Tag, bool) {
	at := draw.Tag{Words: r.words}
	size := c.sizeOf(at)
	on, step := r.spots[0].on, lettering.Full(asideStep, c.per)
	var places []draw.Point
	for y := c.limit.Min.Y - size.Min.Y; y <= c.limit.Max.Y-size.Max.Y; y += step {
		for x := c.limit.Min.X - size.Min.X; x <= c.limit.Max.X-size.Max.X; x += step {
			places = append(places, draw.Point{X: x, Y: y})
		}
	}
	far := func(p draw.Point) float64 { return math.Hypot(float64(p.X-on.X), float64(p.Y-on.Y)) }
	slices.SortStableFunc(places, func(p, q draw.Point) int { return cmp.Compare(far(p), far(q)) })
	for _, p := range places {
		for _, s := range r.spots[:min(len(r.spots), asideSpots)] {
			if c.take(&at, size, p, s.on, asideMost, false) {
				return at, true
			}
		}
	}
	return at, false
}

// sizeOf returns the box of a tag's ring about its middle.
func (c *crowd) sizeOf(t draw.Tag) draw.Rect {
	return (&draw.Drawing{Per: c.per, Marks: []draw.Mark{t}}).Bounds()
}
