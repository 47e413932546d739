package fate

import (
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
)

// rect is a rectangle in a panel's own plane, its corners rounded by a radius: along the grain, then across it.
type rect struct {
	lo, hi [2]length.Length
	r      length.Length
}

// opening is a cut in a panel.
type opening struct {
	rect
	kind  string
	name  string
	depth length.Length // zero: through
	opens [2][2]bool    // by axis, at its low and its high side: it runs out over the edge there
}

// outline is a panel seen from above in its own coordinates: along the grain and across it from its datum.
type outline struct {
	size     [2]length.Length
	openings []opening
	profiles map[part.Side]journal.Profile
}

// shapeOf returns the outline of a panel that was made.
func shapeOf(s journal.Shape) outline {
	o := outline{size: [2]length.Length{length.Length(s.Size[0]), length.Length(s.Size[1])}, profiles: map[part.Side]journal.Profile{}}
	for _, c := range s.Openings {
		lo := [2]length.Length{length.Length(c.At[0]), length.Length(c.At[1])}
		hi := [2]length.Length{lo[0] + length.Length(c.Size[0]), lo[1] + length.Length(c.Size[1])}
		o.add(c.Kind, "", lo, hi, c.Round, length.Length(c.Radius), length.Length(c.Depth))
	}
	for _, p := range s.Profiles {
		o.profiles[part.Side(p.Side)] = p
	}
	return o
}

// needOf returns the outline of a panel that the plan needs.
func needOf(p *part.Part) outline {
	o := outline{size: [2]length.Length{p.Finished[0], p.Finished[1]}, profiles: map[part.Side]journal.Profile{}}
	for _, f := range p.Features {
		o.add(string(f.Kind), f.Why, f.At, [2]length.Length{f.At[0] + f.Size[0], f.At[1] + f.Size[1]}, f.Round, f.Radius, f.Depth)
	}
	for _, e := range p.Profiles {
		o.profiles[e.Side] = journal.Profile{Side: string(e.Side), Profile: e.Profile, Size: journal.MM(e.Size)}
	}
	return o
}

func (o *outline) add(kind, name string, lo, hi [2]length.Length, round bool, r, depth length.Length) {
	c := opening{rect: rect{lo, hi, r}, kind: kind, name: name, depth: depth}
	half := min(hi[0]-lo[0], hi[1]-lo[1]).Half()
	if round || c.r > half {
		c.r = half
	}
	for k := range 2 {
		c.opens[k] = [2]bool{lo[k] <= 0, hi[k] >= o.size[k]}
	}
	o.openings = append(o.openings, c)
}

// turned returns the outline turned by half a turn in its plane.
func (o outline) turned() outline {
	t := outline{size: o.size, profiles: map[part.Side]journal.Profile{}}
	for _, c := range o.openings {
		for k := range 2 {
			c.lo[k], c.hi[k] = o.size[k]-c.hi[k], o.size[k]-c.lo[k]
			c.opens[k] = [2]bool{c.opens[k][1], c.opens[k][0]}
		}
		t.openings = append(t.openings, c)
	}
	for side, p := range o.profiles {
		p.Side = string(opposite[side])
		t.profiles[opposite[side]] = p
	}
	return t
}

// quartered returns the outline turned by a quarter in its plane.
func (o outline) quartered() outline {
	t := outline{size: [2]length.Length{o.size[1], o.size[0]}, profiles: map[part.Side]journal.Profile{}}
	for _, c := range o.openings {
		c.lo, c.hi = [2]length.Length{c.lo[1], o.size[0] - c.hi[0]}, [2]length.Length{c.hi[1], o.size[0] - c.lo[0]}
		c.opens = [2][2]bool{c.opens[1], {c.opens[0][1], c.opens[0][0]}}
		t.openings = append(t.openings, c)
	}
	for side, p := range o.profiles {
		p.Side = string(quarter[side])
		t.profiles[quarter[side]] = p
	}
	return t
}

var quarter = map[part.Side]part.Side{
	part.NearEdge: part.StartEnd, part.FarEdge: part.FarEnd, part.StartEnd: part.FarEdge, part.FarEnd: part.NearEdge,
}

var opposite = map[part.Side]part.Side{
	part.StartEnd: part.FarEnd, part.FarEnd: part.StartEnd, part.NearEdge: part.FarEdge, part.FarEdge: part.NearEdge,
}

// sides of a panel by axis, low and high.
var sides = [2][2]part.Side{{part.StartEnd, part.FarEnd}, {part.NearEdge, part.FarEdge}}

// moved returns the rectangle moved.
func (a rect) moved(by [2]length.Length) rect {
	for k := range 2 {
		a.lo[k] += by[k]
		a.hi[k] += by[k]
	}
	return a
}

// grown returns the rectangle grown by as much on every side.
func (a rect) grown(by length.Length) rect {
	for k := range 2 {
		a.lo[k] -= by
		a.hi[k] += by
	}
	if a.r > 0 {
		a.r += by
	}
	return a
}

// within reports whether a lies in b. Both are the sum of a rectangle and a disc of their radius, so a lies in b just
// where each of its four corner discs does.
func (a rect) within(b rect) bool {
	for _, x := range [2]length.Length{a.lo[0] + a.r, a.hi[0] - a.r} {
		for _, y := range [2]length.Length{a.lo[1] + a.r, a.hi[1] - a.r} {
			if !b.holds([2]length.Length{x, y}, a.r) {
				return false
			}
		}
	}
	return true
}

// holds reports whether a disc lies in the rectangle: its centre lies in what is left when a margin of its radius is
// taken off.
func (b rect) holds(c [2]length.Length, r length.Length) bool {
	for k := range 2 {
		if c[k]-r < b.lo[k] || c[k]+r > b.hi[k] {
			return false
		}
	}
	if r >= b.r {
		return true
	}
	var out [2]length.Length // beyond the centres of the corners
	for k := range 2 {
		out[k] = max(b.lo[k]+b.r-c[k], c[k]-b.hi[k]+b.r, 0)
	}
	return square(out[0], out[1]) <= square(b.r-r, 0)
}

// square is x² + y² in square nanometres. Panels are below some metres, so that it is far from the range of a float's
// whole numbers only by less than what two tapes differ by.
func square(x, y length.Length) float64 { return float64(x)*float64(x) + float64(y)*float64(y) }

// clear reports whether a and b share no more than an edge. B's corners are square.
func (a rect) clear(b rect) bool {
	var gap [2]length.Length
	inside := true
	for k := range 2 {
		lo, hi := a.lo[k]+a.r, a.hi[k]-a.r
		gap[k] = max(b.lo[k]-hi, lo-b.hi[k], 0)
		inside = inside && lo < b.hi[k] && hi > b.lo[k]
	}
	if a.r == 0 {
		return !inside
	}
	return !inside && square(gap[0], gap[1]) >= square(a.r, 0)
}

// far is beyond every panel: an opening that runs out over an edge has no end there.
const far = length.Max

// endless returns the opening, moved, without an end where it runs out over the edge of its panel.
func (c opening) endless(by [2]length.Length) rect {
	a := c.moved(by)
	for k := range 2 {
		if c.opens[k][0] {
			a.lo[k] = -far
		}
		if c.opens[k][1] {
			a.hi[k] = far
		}
	}
	return a
}
