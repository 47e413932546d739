package frame

import "math"

// Section is the cross-section of a member together with what it is made of.
type Section struct {
	E, G float64 // modulus of elasticity and of shear, MPa
	Area float64 // mm²
	// J is the torsion constant, IY and IZ are the second moments about own y and z, mm⁴.
	J, IY, IZ float64
	// ShearY and ShearZ are the shear areas (mm²) against a push along own y and z. 0 takes no give in shear.
	ShearY, ShearZ float64
	// WY and WZ are the section moduli about own y and z, mm³. 0 gives no stress.
	WY, WZ float64
	// Round says that bending about y and z makes one bending about a slanting axis, as in a bar or a pipe;
	// else the two stresses add up, as at the corner of a rectangle.
	Round bool
}

// Rectangle is the section of a stick that is wide along own y and deep along own z, both in mm.
//
// The torsion constant is that of Roark's Formulas for Stress and Strain, Table 10.1 case 4 (from memory):
// J = ab³(16/3 − 3.36 b/a (1 − b⁴/12a⁴)) with a and b half the longer and the shorter side. The shear areas
// are 5/6 of the area.
func Rectangle(e, g, wide, deep float64) Section {
	a, b := math.Max(wide, deep)/2, math.Min(wide, deep)/2
	r := b / a
	area := wide * deep
	return Section{
		E: e, G: g, Area: area,
		J:      a * b * b * b * (16.0/3 - 3.36*r*(1-r*r*r*r/12)),
		IY:     wide * deep * deep * deep / 12,
		IZ:     deep * wide * wide * wide / 12,
		ShearY: area * 5 / 6, ShearZ: area * 5 / 6,
		WY: wide * deep * deep / 6, WZ: deep * wide * wide / 6,
	}
}

// Pipe is the section of a round pipe by its outer and inner diameter in mm; inner 0 is a solid bar.
//
// The shear area is that of G. R. Cowper, The Shear Coefficient in Timoshenko's Beam Theory, J. Appl. Mech.
// 33 (1966), for the hollow circle (from memory): κ = 6(1+ν)(1+m²)² / ((7+6ν)(1+m²)² + (20+12ν)m²) with
// m = inner/outer and ν = E/2G − 1.
func Pipe(e, g, outer, inner float64) Section {
	second := math.Pi / 64 * (math.Pow(outer, 4) - math.Pow(inner, 4))
	area := math.Pi / 4 * (outer*outer - inner*inner)
	nu, m := e/(2*g)-1, inner/outer
	wall := (1 + m*m) * (1 + m*m)
	shear := area * 6 * (1 + nu) * wall / ((7+6*nu)*wall + (20+12*nu)*m*m)
	return Section{
		E: e, G: g, Area: area, J: 2 * second, IY: second, IZ: second, ShearY: shear, ShearZ: shear,
		WY: 2 * second / outer, WZ: 2 * second / outer, Round: true,
	}
}
