package cutting

import (
	"math"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/length"
)

// How ends of strips are drawn, in millimetres on paper: their thickness, how far from the strips, and by how much a ring
// bends.
const (
	endThick = 4.0
	endApart = 2.0
	endBend  = 1.1
)

// ends draws beside the right end of each strip, behind long, its end folded out, good face to the left, with rings that
// turn their ends to their side. It reports whether there is any: of strips whose rings nobody has looked at there is none.
func (f *figure) ends(strips []cut.Strip, long length.Length) (any bool) {
	var y length.Length
	for _, s := range strips {
		if s.Ring != cut.NoRing {
			any = true
			f.end(rect(long+f.full(endApart), y, f.full(endThick), s.NetWidth), s.Ring)
		}
		y += s.NetWidth
	}
	return any
}

// end draws the end of one strip: two rings, as wide as it has room for.
func (f *figure) end(r draw.Rect, ring cut.Ring) {
	f.blank(r)
	f.room.KeepPath(draw.Rectangle(r.Min, r.Max))
	half := float64(r.Max.Y-r.Min.Y) * 0.4
	bend := math.Min(float64(f.full(endBend)), half)
	radius := (half*half + bend*bend) / (2 * bend)
	angle := math.Asin(half/radius) * 180 / math.Pi
	middle := (r.Min.Y + r.Max.Y).Half()
	for _, share := range []int64{45, 85} { // of the thickness, where the middle of a ring lies when its ends turn left
		a := draw.Arc{Pen: draw.Grain, Radius: length.Length(radius), From: -angle, Sweep: 2 * angle}
		at := f.full(endThick).Scale(share, 100)
		if ring == cut.RingUp {
			a.Centre = draw.Point{X: r.Min.X + at - a.Radius, Y: middle}
		} else {
			a.Centre, a.From = draw.Point{X: r.Max.X - at + a.Radius, Y: middle}, 180-angle
		}
		f.add(a)
	}
}
