package view

import (
	"math"

	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/part"
	"rodwright/piece"
)

// physical is one thing of the piece: a panel, a pipe, the fitting at a node, or a foot.
type physical struct {
	kind  piece.BodyKind
	index int
}

// things returns the rings of a view: of every panel that is seen, and of every kind of pipe, fitting and foot
// that is seen, wherever one of it is.
func (s scene) things(list *part.List) (out []ring) {
	bodies := map[physical][]int{}
	for i, b := range s.bodies {
		p := physical{b.Kind, b.Index}
		bodies[p] = append(bodies[p], i)
	}
	for _, p := range list.Parts {
		kind, ok := bodyKind(p)
		if !ok {
			continue
		}
		var spots []spot
		for k, index := range p.Indexes {
			var own []spot
			for _, i := range bodies[physical{kind, index}] {
				own = append(own, s.spots(i)...)
			}
			if kind == piece.PanelBody && len(own) > 0 {
				out = append(out, ring{panelTag(p, k), own, true})
				continue
			}
			spots = append(spots, own...)
		}
		if len(spots) > 0 {
			out = append(out, ring{p.Tag, spots[:min(len(spots), mostSpots)], p.Kind == part.Pipe})
		}
	}
	return out
}

// mostSpots bounds the places that are tried for one ring.
const mostSpots = 24

// panelTag is the tag of one panel; where there is one of its kind only, that of the kind.
func panelTag(p part.Part, k int) string {
	if p.Count == 1 {
		return p.Tag
	}
	return p.Tags[k]
}

// bodyKind returns which bodies a part's indexes mean. Feet that are casters are hardware.
func bodyKind(p part.Part) (piece.BodyKind, bool) {
	switch {
	case p.Kind == part.Panel:
		return piece.PanelBody, true
	case p.Kind == part.Pipe:
		return piece.StickBody, true
	case p.Kind == part.Fitting:
		return piece.FittingBody, true
	case p.Kind == part.Hardware && p.Gauge == 0 && len(p.Indexes) > 0:
		return piece.FootBody, true
	}
	return 0, false
}

// Directions of leaders, in degrees. Slanting ones come before those along the sheet's edges wherever a leader
// along an edge of the part could be taken for one.
var (
	fromLeft  = []float64{180, 150, 210}
	fromLevel = []float64{60, 120, -60, -120, 90, -90, 35, 145, -35, -145}
	fromPost  = [2][]float64{{180, 0, 150, 210, 30, -30}, {0, 180, 30, -30, 150, 210}} // on the left of the piece, on its right
	fromJoint = []float64{45, 135, -45, -135, 20, 160, -20, -160, 70, 110}
)

// spots returns the places of a body where its tag may point to: those where nothing stands before it.
func (s scene) spots(i int) (out []spot) {
	b := &s.bodies[i]
	add := func(u, v float64, ways []float64) {
		j := s.front(u, v)
		if j >= 0 && s.bodies[j].Kind == b.Kind && s.bodies[j].Index == b.Index {
			out = append(out, spot{place{u: u, v: v}.point(), ways})
		}
	}
	switch f := b.form.(type) {
	case board:
		s.onFace(b.extent, add)
	case rim:
		v := (f.lo.v + f.hi.v) / 2
		add(f.lo.u+skin, v, fromLeft)
		for _, share := range [8]float64{0.08, 0.2, 0.32, 0.44, 0.56, 0.68, 0.8, 0.92} {
			add(f.lo.u+share*(f.hi.u-f.lo.u), v, fromLevel)
		}
	case bar:
		if b.Kind == piece.FittingBody {
			p := f.a.plus(f.b.minus(f.a), 0.5)
			add(p.u, p.v, fromJoint)
			break
		}
		s.onAxis(i, add)
	case disc:
		add(f.centre.u, f.centre.v, fromJoint)
	case wheel:
		add(f.hub.u, f.hub.v-0.6*f.radius, fromJoint)
	}
	return out
}

// onAxis offers places on a pipe's axis where it is seen, the middle before the others.
func (s scene) onAxis(i int, add func(u, v float64, ways []float64)) {
	for _, t := range s.axes {
		if t.body != i {
			continue
		}
		ways := fromLevel
		if math.Abs(t.a.v-t.b.v) > math.Abs(t.a.u-t.b.u) {
			ways = fromPost[0]
			if t.a.u > (s.whole.lo.u+s.whole.hi.u)/2 {
				ways = fromPost[1]
			}
		}
		for _, share := range [7]float64{0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85} {
			p := t.at(t.t0 + share*(t.t1-t.t0))
			add(p.u, p.v, ways)
		}
	}
}

// onFace offers places over the face of a board for a ring that stands on it, the left and the front before the
// others, and then some from where a leader leads away.
func (s scene) onFace(e extent, add func(u, v float64, ways []float64)) {
	shares := [7]float64{0.12, 0.3, 0.5, 0.7, 0.88, 0.04, 0.96}
	for _, ways := range [2][]float64{nil, {180, 150, 210, 60, 120, -60, -120}} {
		for _, x := range shares {
			for _, y := range shares {
				add(e.u0+x*(e.u1-e.u0), e.v0+y*(e.v1-e.v0), ways)
			}
		}
	}
}

// tags sets the rings of a view. Of those that are needed it counts the ones that have room only far from their
// part, and the ones without room.
func (s scene) tags(c *crowd) (out []draw.Mark, far, without int) {
	for _, r := range s.rings {
		t, ok := c.put(r)
		if !ok && r.needed {
			if t, ok = c.aside(r); ok {
				far++
			} else {
				without++
			}
		}
		if ok {
			out = append(out, t)
		}
	}
	return out, far, without
}

// besides is how far beyond what is drawn rings may stand, on paper in millimetres.
const besides = 45.0

// roomOf returns where rings may stand: over what is drawn, and left of it and above it as far as the style has
// room. Below and to the right are the dimensions, which whole contains.
func roomOf(drawn, whole draw.Rect, st draw.Style, per int64) draw.Rect {
	over, below := lettering.Full(besides, per), lettering.Full(2, per)
	room := draw.Rect{Min: draw.Point{X: drawn.Min.X - over, Y: drawn.Min.Y - below}, Max: draw.Point{X: drawn.Max.X, Y: drawn.Max.Y + over}}
	if st.Width > 0 {
		room.Min.X = max(room.Min.X, whole.Max.X-lettering.Full(st.Width, per))
	}
	if st.Height > 0 {
		room.Max.Y = min(room.Max.Y, whole.Min.Y+lettering.Full(st.Height, per))
	}
	return room
}
