package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/solid"
	"rodwright/trade/pipe"
)

// BodyKind says what of a piece a body is.
type BodyKind uint8

// The kinds of bodies; each is an index into a list of [Resolved].
const (
	PanelBody   BodyKind = iota // Panels
	StickBody                   // Sticks
	FittingBody                 // Nodes: one outlet of a fitting, or a flange's plate
	FootBody                    // Feet: what a caster sweeps as it swivels
	HeldBody                    // Held
)

// Body is one solid of a piece. A fitting has a body for each outlet.
type Body struct {
	Kind  BodyKind
	Index int // into the list of its kind
	Name  string
	Shape solid.Shape
}

// Solids returns the bodies of everything in the piece: panels with their openings, pipes between the
// fittings' mouths, the outlets of fittings, casters, and the things held. The order is that of the lists.
func (r *Resolved) Solids() []Body {
	var out []Body
	for i := range r.Panels {
		out = append(out, Body{PanelBody, i, r.Panels[i].Name, r.Panels[i].Solid()})
	}
	for i := range r.Sticks {
		s := &r.Sticks[i]
		a, b := &r.Nodes[s.A], &r.Nodes[s.B]
		out = append(out, Body{StickBody, i, s.Name, solid.Cylinder{
			A: solid.Vec(a.along(s.Dir, a.Fitting.TakeOut())), B: solid.Vec(b.along(s.Dir.minus(), b.Fitting.TakeOut())),
			Radius: a.Size.OD.Half()}})
	}
	for i := range r.Nodes {
		for _, s := range r.Nodes[i].outlets() {
			out = append(out, Body{FittingBody, i, string(r.Nodes[i].Kind) + " at " + r.Nodes[i].Place, s})
		}
	}
	for i := range r.Feet {
		if s, ok := r.Feet[i].swept(); ok {
			out = append(out, Body{FootBody, i, r.Feet[i].Name, s})
		}
	}
	for i := range r.Held {
		h := &r.Held[i]
		out = append(out, Body{HeldBody, i, h.Name, solid.Box{Min: solid.Vec(h.Min), Max: solid.Vec(h.Max)}})
	}
	return out
}

// MayMeet reports whether two bodies belong together and may fill the same space: a stick and its own
// joints, the outlets of one joint, a foot and the joint it is fixed to.
func (r *Resolved) MayMeet(a, b Body) bool {
	if a.Kind > b.Kind {
		a, b = b, a
	}
	switch {
	case a.Kind == b.Kind:
		return a.Index == b.Index
	case a.Kind == StickBody && b.Kind == FittingBody:
		return r.Sticks[a.Index].A == b.Index || r.Sticks[a.Index].B == b.Index
	case a.Kind == StickBody && b.Kind == FootBody:
		n := r.Feet[b.Index].Node
		return n >= 0 && slices.Contains(r.Nodes[n].Sticks, a.Index)
	case a.Kind == FittingBody && b.Kind == FootBody:
		return r.Feet[b.Index].Node == a.Index
	}
	return false
}

// Solid returns the panel's body with its openings and pockets.
func (p *FlatPanel) Solid() solid.Slab {
	s := solid.Slab{Min: solid.Vec(p.Min), Max: solid.Vec(p.Max)}
	for _, f := range p.Features {
		lo, hi := f.Min, f.Max
		switch f.Opens { // past the edge, so that the rounded corners stay inside
		case FrontSide:
			lo[1] -= f.Radius
		case BackSide:
			hi[1] += f.Radius
		case LeftSide:
			lo[0] -= f.Radius
		case RightSide:
			hi[0] += f.Radius
		}
		s.Openings = append(s.Openings, solid.Opening{
			Min:    [2]length.Length{p.Min.X + lo[0], p.Min.Y + lo[1]},
			Max:    [2]length.Length{p.Min.X + hi[0], p.Min.Y + hi[1]},
			Radius: f.Radius, Depth: f.Depth})
	}
	return s
}

// along returns the point a true distance from a joint in a direction.
func (n *Node) along(d Dir, l length.Length) Vec {
	t := d.steps(l)
	return Vec{n.At.X + length.Length(d.X)*t, n.At.Y + length.Length(d.Y)*t, n.At.Z + length.Length(d.Z)*t}
}

// outlets returns the bodies of a joint: a band round each outlet, and a flange's plate.
func (n *Node) outlets() (out []solid.Shape) {
	if n.Kind == pipe.None {
		return nil
	}
	for _, d := range n.Dirs {
		out = append(out, solid.Cylinder{A: solid.Vec(n.At), B: solid.Vec(n.along(d, n.Fitting.CentreToEnd)), Radius: n.Fitting.Band.Half()})
		if n.Kind == pipe.Flange {
			out = append(out, solid.Cylinder{A: solid.Vec(n.At), B: solid.Vec(n.along(d, n.Fitting.PlateThick)), Radius: n.Fitting.Plate.Half()})
		}
	}
	return out
}

// swept returns the upright cylinder that a caster fills as it swivels, or a levelling foot's place under
// its cap; feet that are themselves a joint have no body of their own.
func (f *Foot) swept() (solid.Cylinder, bool) {
	radius := f.Spec.Offset + f.Spec.Wheel.Half()
	return solid.Cylinder{A: solid.Vec{X: f.At.X, Y: f.At.Y}, B: solid.Vec(f.At), Radius: radius}, f.At.Z > 0 && radius > 0
}

// measure finds the bounding box of the piece without the things it holds. What stands on feet reaches down
// to the floor.
func (r *rod) measure() {
	first := true
	for _, b := range r.out.Solids() {
		if b.Kind == HeldBody {
			continue
		}
		lo, hi := b.Shape.Bounds()
		if first {
			r.out.Min, r.out.Max, first = Vec(lo), Vec(hi), false
			continue
		}
		r.out.Min = Vec{min(r.out.Min.X, lo.X), min(r.out.Min.Y, lo.Y), min(r.out.Min.Z, lo.Z)}
		r.out.Max = Vec{max(r.out.Max.X, hi.X), max(r.out.Max.Y, hi.Y), max(r.out.Max.Z, hi.Z)}
	}
	if len(r.out.Feet) > 0 {
		r.out.Min.Z = min(r.out.Min.Z, 0)
	}
}
