package view

import (
	"slices"

	"rodwright/draw"
	"rodwright/part"
	"rodwright/piece"
)

// stretch is a part of a body's edge that is seen, or hidden, from end to end.
type stretch struct {
	curve
	t0, t1 float64
	pen    draw.Pen
	body   int
}

func (s stretch) length() float64 { return s.curve.length() * (s.t1 - s.t0) }

// scene is every body of a piece, and of what it holds, as it is seen from one side.
type scene struct {
	r      *piece.Resolved
	side   Side
	whole  block // round the piece, what it holds left out
	bodies []body
	edges  []stretch // of all bodies
	axes   []stretch // of pipes seen from beside
	steel  []draw.Mark
	rings  []ring

	stations int // the most of a chain
}

// sceneOf looks at a piece from a side.
func sceneOf(r *piece.Resolved, list *part.List, side Side) scene {
	s := scene{r: r, side: side, whole: blockOf(side, vec(r.Min), vec(r.Max)), bodies: seen(r, side)}
	s.edges = append(s.stretches(), s.levellers()...)
	s.axes = s.lengthwise()
	s.steel = s.pipes()
	s.rings = s.things(list)
	return s
}

// stretches parts the edges of every body where they pass behind something. What is held is drawn as a ghost
// where it is seen, and hides nothing; of casters that are hidden nothing is drawn.
func (s scene) stretches() (out []stretch) {
	for i := range s.bodies {
		near := s.around(i)
		for _, c := range s.bodies[i].edges {
			switch s.bodies[i].Kind {
			case piece.HeldBody:
				out = append(out, onlySeen(s.part(i, c, draw.Ghost, near))...)
			case piece.FootBody:
				out = append(out, onlySeen(s.part(i, c, draw.Outline, near))...)
			default:
				out = append(out, s.part(i, c, draw.Outline, near)...)
			}
		}
	}
	return out
}

// onlySeen leaves out what is hidden.
func onlySeen(all []stretch) []stretch {
	return slices.DeleteFunc(all, func(t stretch) bool { return t.pen == draw.Hidden })
}

// around returns the bodies that may hide something of a body, or hold it within.
func (s scene) around(i int) []int { return s.before(s.bodies[i].extent, s.bodies[i].far) }

// before returns the bodies within an extent that are not all farther than a depth.
func (s scene) before(e extent, far float64) (out []int) {
	for j := range s.bodies {
		if b := &s.bodies[j]; b.Kind != piece.HeldBody && b.near >= far-touch && b.extent.meets(e) {
			out = append(out, j)
		}
	}
	return out
}

// along returns those of some bodies that a line meets, as seen.
func (s scene) along(c curve, near []int) (out []int) {
	e := c.extent()
	for _, j := range near {
		if s.bodies[j].extent.meets(e) {
			out = append(out, j)
		}
	}
	return out
}

// part parts one line of body i where it meets others, and tells of each part whether it is seen. What is drawn
// of it when it is seen is drawn with the pen; what is hidden with Hidden.
func (s scene) part(i int, c curve, pen draw.Pen, near []int) (out []stretch) {
	near = s.along(c, near)
	for _, p := range s.parting(c, near) {
		switch s.state(i, c, c.at((p.from+p.to)/2), near) {
		case seenHere:
			out = append(out, stretch{c, p.from, p.to, pen, i})
		case covered:
			out = append(out, stretch{c, p.from, p.to, draw.Hidden, i})
		}
	}
	return out
}

// parting returns the shares of a line between the places at which it meets edges of other bodies.
func (s scene) parting(c curve, near []int) (out []span) {
	ts := []float64{1}
	e := c.extent()
	for _, j := range near {
		for k, o := range s.bodies[j].edges {
			if s.bodies[j].reach[k].meets(e) {
				ts = c.crossings(ts, o)
			}
		}
	}
	slices.Sort(ts)
	least := touch / max(touch, c.length())
	from := 0.0
	for _, t := range ts {
		if t = min(t, 1); t-from >= least {
			out = append(out, span{from, t})
			from = t
		}
	}
	return out
}

// state says what becomes of a line at a place.
type state uint8

const (
	seenHere state = iota
	covered        // a panel is nearer, and no other
	absent         // not drawn
)

// state tells what becomes of a line of body i at a place. What lies behind one panel tells where the frame goes
// under it, and is drawn as hidden. What lies only behind pipe, or inside a fitting, tells nothing, what lies
// behind several panels too much: that is not drawn. The frame is one body, so lines inside it are not there at
// all. An axis shines through its own pipe and joints.
func (s scene) state(i int, c curve, p place, near []int) state {
	if c.there != nil && !c.there(p.u, p.v) || c.kind == edge && s.within(i, p, near) {
		return absent
	}
	panels, frame := 0, false
	for _, j := range near {
		if s.bodies[j].near <= p.near+touch {
			continue
		}
		n, there := s.bodies[j].form.nearest(p.u, p.v)
		if !there || n <= p.near+touch {
			continue
		}
		switch own := j == i || s.r.MayMeet(s.bodies[i].Body, s.bodies[j].Body); {
		case own && c.kind == axisLine:
		case own && !(j == i && c.kind == under):
			return absent
		case s.bodies[j].Kind == piece.PanelBody:
			panels++
		default:
			frame = true
		}
	}
	switch {
	case panels == 1:
		return covered
	case panels > 1 || frame:
		return absent
	}
	return seenHere
}

// front returns the body that is nearest at a place of the sheet; -1 where there is none.
func (s scene) front(u, v float64) int {
	found, most := -1, 0.0
	for j := range s.bodies {
		b := &s.bodies[j]
		if b.Kind == piece.HeldBody || found >= 0 && b.near <= most+touch || !b.extent.holds(u, v, touch) {
			continue
		}
		if n, there := b.form.nearest(u, v); there && (found < 0 || n > most+touch) {
			found, most = j, n
		}
	}
	return found
}

// within reports whether a place on the edge of pipe or fitting i lies inside another pipe or fitting: there
// the frame is one body.
func (s scene) within(i int, p place, near []int) bool {
	if !ofFrame(s.bodies[i].Kind) {
		return false
	}
	at := s.side.back(p)
	for _, j := range near {
		b := &s.bodies[j]
		if j != i && ofFrame(b.Kind) && b.extent.holds(p.u, p.v, touch) && b.Shape.Contains(at) {
			return true
		}
	}
	return false
}

func ofFrame(k piece.BodyKind) bool { return k == piece.StickBody || k == piece.FittingBody }
