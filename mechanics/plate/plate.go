// Package plate works out how a thin plate bends: how far it sags, what its supports carry and how hard its
// fibres are stressed. It knows nothing of furniture.
//
// Units throughout: millimetres, newtons, and N/mm² (MPa) for stiffness, stress and pressure; density alone
// is in kg/m³. x runs along Width, y along Depth, both from the same corner; sag, loads and their pressure
// count downwards, reactions upwards.
//
// The plate is Kirchhoff's: thin, bending little, with no shear of its own (of a solid wood plate thinner
// than a fifteenth of its span the shear left out adds some per cent at most). It is cut into rectangles by
// lines through every edge of an opening and every support, and each is an element of Bogner, Fox and
// Schmit (Proc. Conf. Matrix Methods in Structural Mechanics, AFFDL-TR-66-80, 1966): deflection bicubic,
// slopes continuous. Every mesh is a little too stiff, so that sag rises to its true value as it is refined.
package plate

// Plate is one plate, what holds it and what lies on it.
type Plate struct {
	Width, Depth, Thickness float64 // mm, along x, y and z
	Material                Material
	GrainAlongY             bool // else the grain runs along x

	Openings []Rect   // cut out: inside the plate or as notches in its edge; what lies outside is ignored
	Holes    []Circle // cut out round; worked with a stepped outline around the circle, never inside it

	Edges [4]Edge // by Left, Right, Front, Back; a notch interrupts them
	Posts []Post
	Discs []Disc
	Rails []Rail

	Load Load
}

// The edges of a plate: at x = 0, x = Width, y = 0 and y = Depth.
const (
	Left = iota
	Right
	Front
	Back
)

// Rect is a rectangle from its corner nearest the origin.
type Rect struct{ X, Y, W, H float64 }

// Circle is a circle around its middle.
type Circle struct{ X, Y, R float64 }

// Edge says how an edge of the plate is supported.
type Edge int

// The ways an edge is supported.
const (
	Free    Edge = iota // not at all
	Lying               // on a straight support from which it may lift
	Resting             // on a straight support that also holds it down; free to turn
	Held                // clamped: neither moves nor turns
)

// Post supports one point. It only pushes, unless it is two-sided: a strap, a screwed block.
type Post struct {
	X, Y     float64
	TwoSided bool
	Spring   float64 // N/mm it gives way by; 0 does not give way
}

// Disc is a round flange, supporting at eight points on its circle that do not move up or down, but let the
// plate turn. Clamped lets nothing move or turn on and inside the circle: sag is least then, so the truth
// of a flange that is screwed down lies between the two.
type Disc struct {
	X, Y, R  float64
	TwoSided bool // screwed down: also pulls
	Clamped  bool // always pulls
}

// Rail is a beam under the plate, from one end to the other along x or along y, carried at both ends and
// bending between them with EI. The plate lies on it and may lift from it, unless it is two-sided.
type Rail struct {
	FromX, FromY, ToX, ToY float64
	EI                     float64 // N·mm², modulus times second moment of area; 0 does not give way
	TwoSided               bool
	Loose                  bool // a batten: fixed to the plate, stiffens it, but nothing carries its ends
}

// Load is what presses on a plate; on an opening or beyond the edge nothing presses.
type Load struct {
	Pressure float64 // N/mm² all over
	Density  float64 // kg/m³ of the plate itself, 0 weighs nothing
	Patches  []Patch
	Points   []PointLoad
}

// Patch is an even pressure on a rectangle.
type Patch struct {
	Rect
	Pressure float64 // N/mm²
}

// PointLoad is a force at one point.
type PointLoad struct{ X, Y, N float64 }

// gravity is the standard acceleration of free fall in m/s² (3rd General Conference on Weights and Measures,
// 1901).
const gravity = 9.80665

// weight returns the plate's own weight as a pressure: kg/m³ to N/mm³, times the thickness.
func (p *Plate) weight() float64 { return p.Load.Density * gravity * 1e-9 * p.Thickness }
