package pipe

import "math"

// The properties of pipe steel. Density after ASME B36.10M's weights; the modulus as any textbook has it.
const (
	SteelDensity = 7850.0    // kg/m³
	SteelModulus = 200_000.0 // MPa
)

// SecondMoment returns the second moment of area of the pipe in mm⁴:
//
//	I = π (D⁴ − d⁴) ÷ 64
func (s Size) SecondMoment() float64 { return secondMoment(s.OD.MM(), s.Bore.MM()) }

// SectionModulus returns the section modulus of the plain pipe in mm³: 2 I ÷ D.
func (s Size) SectionModulus() float64 { return 2 * s.SecondMoment() / s.OD.MM() }

// RootModulus returns the section modulus in mm³ at the root of the thread where the pipe leaves a fitting,
// the weakest place of a frame: the pipe's bore under the root diameter [Size.Root].
func (s Size) RootModulus() float64 {
	return 2 * secondMoment(s.Root.MM(), s.Bore.MM()) / s.Root.MM()
}

// RootModulusShare returns which part of the plain pipe's section modulus is left there: 0.50 at 3/4, 0.48 at
// 1 NPT.
func (s Size) RootModulusShare() float64 { return s.RootModulus() / s.SectionModulus() }

// SectionArea returns the area of the pipe's wall in mm²: π (D² − d²) ÷ 4.
func (s Size) SectionArea() float64 { return ring(s.OD.MM(), s.Bore.MM()) }

func secondMoment(outer, inner float64) float64 {
	return math.Pi * (math.Pow(outer, 4) - math.Pow(inner, 4)) / 64
}

func ring(outer, inner float64) float64 { return math.Pi * (outer*outer - inner*inner) / 4 }
