// Package view draws a piece from the front, from the right and from above: edges that are seen and edges that
// are hidden, axes of what is round, grain, the things it holds, dimension chains and the tags of its parts.
//
// Start with Of. Every body is projected along an axis of the piece, so that straight bodies come out exact to
// the nanometre. The words: u runs to the right on the sheet, v up, and near grows towards who looks.
package view

import (
	"math"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/solid"
)

// Side is where one looks from.
type Side string

// The sides, in the order of a sheet.
const (
	Front Side = "front"
	Right Side = "right" // seen from the right: the front of the piece is on the left
	Top   Side = "top"   // seen from above: the front of the piece is below
)

// Sides lists every side.
func Sides() []Side { return []Side{Front, Right, Top} }

// Title says in words where one looks from.
func (s Side) Title() string {
	switch s {
	case Right:
		return "From the right"
	case Top:
		return "From above"
	default:
		return "Front"
	}
}

// place is a point as it is seen, in nanometres.
type place struct{ u, v, near float64 }

// see projects a point of the piece.
func (s Side) see(p solid.Vec) place {
	x, y, z := float64(p.X), float64(p.Y), float64(p.Z)
	switch s {
	case Right:
		return place{y, z, x}
	case Top:
		return place{x, y, z}
	default:
		return place{x, z, -y}
	}
}

// back returns the point of the piece that is seen at a place.
func (s Side) back(p place) solid.Vec {
	u, v, near := nm(p.u), nm(p.v), nm(p.near)
	switch s {
	case Right:
		return solid.Vec{X: near, Y: u, Z: v}
	case Top:
		return solid.Vec{X: u, Y: v, Z: near}
	default:
		return solid.Vec{X: u, Y: -near, Z: v}
	}
}

func nm(v float64) length.Length { return length.Length(math.Round(v)) }

func (p place) point() draw.Point { return draw.Point{X: nm(p.u), Y: nm(p.v)} }

// touch is how deep something must lie behind another to be hidden by it: less is the same surface.
const touch = float64(10 * length.Micrometre)

// skin is how far beyond its outline a body still hides what is behind it, so that of two equal outlines one
// behind the other the further is hidden all along and not by chance.
const skin = float64(length.Micrometre)

func (p place) minus(q place) place { return place{p.u - q.u, p.v - q.v, p.near - q.near} }

func (p place) plus(q place, times float64) place {
	return place{p.u + q.u*times, p.v + q.v*times, p.near + q.near*times}
}

// extent is an upright rectangle on the sheet.
type extent struct{ u0, v0, u1, v1 float64 }

func (e extent) holds(u, v, slack float64) bool {
	return u >= e.u0-slack && u <= e.u1+slack && v >= e.v0-slack && v <= e.v1+slack
}

func (e extent) meets(o extent) bool {
	return e.u0 <= o.u1+touch && o.u0 <= e.u1+touch && e.v0 <= o.v1+touch && o.v0 <= e.v1+touch
}

func between(a, b place) extent {
	return extent{math.Min(a.u, b.u), math.Min(a.v, b.v), math.Max(a.u, b.u), math.Max(a.v, b.v)}
}
