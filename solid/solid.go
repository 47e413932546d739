// Package solid holds the few shapes a piece is made of and says where two of them fill the same space.
//
// A [Box] is a thing with six flat faces, a [Cylinder] a straight pipe or the band of a fitting in any
// direction, a [Slab] a flat board with openings and pockets. Corners are exact lengths; between them the
// package computes in millimetres as float64. Start with [Overlap].
//
// Three promises are kept:
//
//	P1  shapes that only touch do not overlap: an overlap of up to [Touch] is none;
//	P2  Overlap(a, b) and Overlap(b, a) say the same;
//	P3  the depth is the narrowest width of a convex part of what both shapes fill, so it is at most the
//	    thickness of either shape.
//
// A circle is reckoned as a polygon of [Facets] corners that lie on it, two of them on every axis and
// diagonal of its plane: in those directions it is exact, between them up to 0.0012 of the radius small.
// The package knows nothing of furniture.
package solid

import (
	"cmp"

	"rodwright/length"
)

// Touch is the depth up to which two shapes count as touching.
const Touch = length.Micrometre

// Facets is the number of corners a circle is reckoned with.
const Facets = 64

// Vec is a point of space.
type Vec struct{ X, Y, Z length.Length }

// Shape is a [Box], a [Cylinder] or a [Slab]; the set is closed.
type Shape interface {
	// Bounds returns the opposite corners of the least box along the axes that holds the shape.
	Bounds() (lo, hi Vec)
	// Contains reports whether p lies in the shape or on its skin.
	Contains(p Vec) bool

	// prisms cuts the shape into layers with a flat base each.
	prisms() []prism
	// hull is the convex body that holds the shape: the shape itself unless it has openings.
	hull() polytope
	// solid reports whether the shape is its hull.
	solid() bool
}

// Meeting is the space that two shapes both fill.
type Meeting struct {
	Depth length.Length // its narrowest width
	At    Vec           // a point in the middle of it
}

// Overlap returns where a and b fill the same space, and reports whether they do.
func Overlap(a, b Shape) (Meeting, bool) {
	if Apart(a, b) {
		return Meeting{}, false
	}
	var found []meeting
	if b.solid() {
		found = append(found, deepest(a.prisms(), b.hull()))
	}
	if a.solid() {
		found = append(found, deepest(b.prisms(), a.hull()))
	}
	if len(found) == 0 {
		found = append(found, layered(a.prisms(), b.prisms()))
	}
	m := found[0]
	if len(found) == 2 && before(found[1], m) {
		m = found[1]
	}
	if m.depth <= Touch.MM() {
		return Meeting{}, false
	}
	return Meeting{length.FromMM(m.depth), m.at.exact()}, true
}

// before orders the two ways in which a pair was reckoned, so that the answer does not depend on which
// shape is named first: the shallower one, and of two alike the one whose point comes first.
func before(a, b meeting) bool {
	return cmp.Or(cmp.Compare(a.depth, b.depth), cmp.Compare(a.at.x, b.at.x),
		cmp.Compare(a.at.y, b.at.y), cmp.Compare(a.at.z, b.at.z)) < 0
}

// Apart reports whether the boxes that hold a and b overlap by no more than [Touch], which is quick to
// know and settles most pairs.
func Apart(a, b Shape) bool {
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	return min(ahi.X, bhi.X)-max(alo.X, blo.X) <= Touch ||
		min(ahi.Y, bhi.Y)-max(alo.Y, blo.Y) <= Touch ||
		min(ahi.Z, bhi.Z)-max(alo.Z, blo.Z) <= Touch
}
