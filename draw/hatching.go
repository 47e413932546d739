package draw

import (
	"math"
	"slices"

	"rodwright/length"
)

// Measures of hatching, in paper millimetres.
const (
	woodLines  = 1.5  // between lines along the grain, on the average
	ringLines  = 1.4  // between growth rings, on the average
	wasteLines = 2.2  // between slanting lines, across them
	plyLines   = 0.9  // between plies, about
	clearEdge  = 0.35 // from the ends of lines to the outline
	leastLine  = 0.6  // a line shorter than this is left out
	flatness   = 0.05 // of arcs parted into chords, for cutting off lines
	mostLines  = 400  // in one area; wider areas get wider spaces
)

// hatching returns the lines or arcs that an area's fill is told by. None leaves the outline, but by the
// flatness where that is an arc.
func hatching(a Area, per int64) []Mark {
	h := region{per: per}
	for _, p := range append([]Path{a.Outer}, a.Holes...) {
		h.loops = append(h.loops, p.chords(full(flatness, per)))
	}
	if len(h.loops[0]) < 2 {
		return nil
	}
	across := func(p Point) length.Length { return p.Y }
	if a.Along == AlongY {
		across = func(p Point) length.Length { return p.X }
	}
	switch a.Fill {
	case LongWood:
		return h.stripes(across, woodLines, 0.35)
	case Plywood:
		return h.plies(across)
	case Waste:
		return h.stripes(func(p Point) length.Length { return p.Y - p.X }, wasteLines*math.Sqrt2, 0)
	case EndWood:
		return h.rings()
	}
	return nil
}

// region is an outline with holes, of straight edges, on whole nanometres.
type region struct {
	per   int64
	loops [][]Point
}

func (h region) full(mm float64) length.Length { return full(mm, h.per) }

// extent returns the least and greatest of a key over the outline.
func (h region) extent(key func(Point) length.Length) (lo, hi length.Length) {
	lo, hi = key(h.loops[0][0]), key(h.loops[0][0])
	for _, p := range h.loops[0] {
		lo, hi = min(lo, key(p)), max(hi, key(p))
	}
	return lo, hi
}

// edges calls f with every edge.
func (h region) edges(f func(a, b Point)) {
	for _, l := range h.loops {
		for i, a := range l {
			f(a, l[(i+1)%len(l)])
		}
	}
}

// uneven returns a number from −1 to 1 for a line's place in the row: it looks irregular and is always the
// same (the fractional parts of multiples of the golden ratio).
func uneven(i int) float64 {
	_, f := math.Modf(float64(i+1) * math.Phi)
	return 2*f - 1
}

// spacing widens a space so that no more than mostLines fill the stretch.
func (h region) spacing(mm float64, stretch length.Length) length.Length {
	return max(h.full(mm), stretch/mostLines, 1)
}

// stripes fills with straight lines on which the key does not change, that far apart by the key, each moved by
// up to a share of the space.
func (h region) stripes(key func(Point) length.Length, mm, share float64) (out []Mark) {
	lo, hi := h.extent(key)
	space := h.spacing(mm, hi-lo)
	for i := 0; ; i++ {
		at := lo + space/2 + length.Length(i)*space
		if at >= hi {
			return out
		}
		out = append(out, h.cut(key, at+length.FromMM(share/2*uneven(i)*space.MM()))...)
	}
}

// plies fills with an odd number of layers, three at least.
func (h region) plies(key func(Point) length.Length) (out []Mark) {
	lo, hi := h.extent(key)
	n := int(float64(hi-lo) / float64(h.full(plyLines)))
	n = max(3, min(13, n|1))
	for i := 1; i < n; i++ {
		out = append(out, h.cut(key, lo+(hi-lo).Scale(int64(i), int64(n)))...)
	}
	return out
}

// cut returns the parts of the line key = at + ½ nm within the region. All corners are on whole nanometres, so
// that such a line meets edges in an even number of places and never a corner.
func (h region) cut(key func(Point) length.Length, at length.Length) (out []Mark) {
	level := float64(at) + 0.5
	type meeting struct{ x, y float64 }
	var ms []meeting
	h.edges(func(a, b Point) {
		ka, kb := float64(key(a)), float64(key(b))
		if (ka < level) != (kb < level) {
			t := (level - ka) / (kb - ka)
			ms = append(ms, meeting{float64(a.X) + t*float64(b.X-a.X), float64(a.Y) + t*float64(b.Y-a.Y)})
		}
	})
	slices.SortFunc(ms, func(p, q meeting) int {
		return compare(length.Length(math.Round(p.x+p.y)), length.Length(math.Round(q.x+q.y)))
	})
	for i := 0; i+1 < len(ms); i += 2 {
		p, q := ms[i], ms[i+1]
		long := math.Hypot(q.x-p.x, q.y-p.y)
		if long < float64(h.full(2*clearEdge+leastLine)) {
			continue
		}
		t := float64(h.full(clearEdge)) / long
		dx, dy := (q.x-p.x)*t, (q.y-p.y)*t
		// the half nanometre is taken off again, the same at both ends
		out = append(out, Line{Hatching, rounded(math.Floor(p.x+dx), math.Floor(p.y+dy)), rounded(math.Floor(q.x-dx), math.Floor(q.y-dy))})
	}
	return out
}

// rings fills with arcs about a pith that lies below the area, a little to one side.
func (h region) rings() (out []Mark) {
	x0, x1 := h.extent(func(p Point) length.Length { return p.X })
	y0, y1 := h.extent(func(p Point) length.Length { return p.Y })
	wide, high := float64(x1-x0), float64(y1-y0)
	pith := bow{x: float64(x0) + 0.437*wide + 0.31, y: float64(y0) - 0.137*wide - 0.618*high + 0.27}
	if high > wide {
		pith = bow{x: float64(x0) - 0.137*high - 0.618*wide + 0.31, y: float64(y0) + 0.437*high + 0.27}
	}
	far := 0.0
	for _, p := range h.loops[0] {
		far = max(far, math.Hypot(float64(p.X)-pith.x, float64(p.Y)-pith.y))
	}
	space := float64(h.spacing(ringLines, length.Length(far)))
	for i := 1; ; i++ {
		pith.radius = (float64(i) + 0.3*uneven(i)) * space
		if pith.radius > far {
			return out
		}
		out = append(out, h.ring(pith)...)
	}
}

// ring returns the parts of a circle within the region. A circle that meets no edge lies within or without as
// a whole; the pith lies outside the outline, so it lies without.
func (h region) ring(c bow) (out []Mark) {
	angles := h.meetings(c)
	for i, from := range angles {
		to := angles[(i+1)%len(angles)]
		if i == len(angles)-1 {
			to += 2 * math.Pi
		}
		trim := float64(h.full(clearEdge)) / c.radius
		if (to-from-2*trim)*c.radius < float64(h.full(leastLine)) {
			continue
		}
		if x, y := c.at((from + to) / 2); !h.holds(x, y) {
			continue
		}
		deg := 180 / math.Pi
		out = append(out, Arc{Hatching, rounded(c.x, c.y), length.Length(math.Round(c.radius)), (from + trim) * deg, (to - from - 2*trim) * deg})
	}
	return out
}

// meetings returns the directions from a circle's centre to where it meets edges, ascending.
func (h region) meetings(c bow) (out []float64) {
	h.edges(func(a, b Point) {
		ax, ay := float64(a.X)-c.x, float64(a.Y)-c.y
		dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
		// |a + t·d| = radius
		q, p, r := dx*dx+dy*dy, ax*dx+ay*dy, ax*ax+ay*ay-c.radius*c.radius
		root := p*p - q*r
		if q == 0 || root < 0 {
			return
		}
		for _, sign := range []float64{-1, 1} {
			if t := (-p + sign*math.Sqrt(root)) / q; t >= 0 && t <= 1 {
				out = append(out, math.Atan2(ay+t*dy, ax+t*dx))
			}
		}
	})
	slices.Sort(out)
	return out
}

// holds reports whether a place lies within the region, by the number of edges to its right.
func (h region) holds(x, y float64) bool {
	in := false
	h.edges(func(a, b Point) {
		ax, ay, bx, by := float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)
		if (ay <= y) != (by <= y) && x < ax+(y-ay)/(by-ay)*(bx-ax) {
			in = !in
		}
	})
	return in
}
