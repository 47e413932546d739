package beam

import (
	"cmp"
	"math"

	"rodwright/length"
	"rodwright/trade/within"
)

// Section is what a cross-section gives a beam.
type Section struct {
	Inertia float64 // second moment of area, mm⁴
	Modulus float64 // section modulus, mm³
	Area    float64 // mm²
}

// Rectangle returns the section of a board lying flat, bending over its thickness:
//
//	I = b·h³/12, Z = b·h²/6
func Rectangle(width, thickness length.Length) (Section, error) {
	if err := cmp.Or(within.Length("width", width), within.Length("thickness", thickness)); err != nil {
		return Section{}, err
	}
	b, h := width.MM(), thickness.MM()
	return Section{Inertia: b * h * h * h / 12, Modulus: b * h * h / 6, Area: b * h}, nil
}

// Tube returns the section of a round pipe:
//
//	I = π/64·(D⁴ − d⁴), Z = 2I/D
//
// A wall of half the diameter is a solid bar; a thicker one is an error.
func Tube(outside, wall length.Length) (Section, error) {
	err := cmp.Or(within.Length("outside diameter", outside), within.Length("wall", wall),
		within.Room("bore", outside-2*wall))
	if err != nil {
		return Section{}, err
	}
	o, i := outside.MM(), (outside - 2*wall).MM()
	inertia := math.Pi / 64 * (o*o*o*o - i*i*i*i)
	return Section{Inertia: inertia, Modulus: 2 * inertia / o, Area: math.Pi / 4 * (o*o - i*i)}, nil
}

// ShearArea returns the area in mm² that resists shear in a rectangular section, 5/6 of the whole.
func (s Section) ShearArea() float64 { return s.Area * 5 / 6 }
