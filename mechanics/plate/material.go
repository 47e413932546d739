package plate

import "fmt"

// Material is the elastic stiffness of a material with two directions in its face, as wood has.
type Material struct {
	EL   float64 // MPa along the grain
	ET   float64 // MPa across the grain
	NuLT float64 // how much it narrows across when stretched along
	GLT  float64 // MPa, shear in the face
}

// Even returns a material that is the same in all directions.
func Even(e, nu float64) Material {
	return Material{EL: e, ET: e, NuLT: nu, GLT: e / (2 * (1 + nu))}
}

// Stiffness is the bending stiffness of a plate in N·mm (N·mm² per mm of width). The moments are
// Mx = Dx·κx + Dxy·κy, My = Dy·κy + Dxy·κx and Mxy = 2·Dk·κxy.
type Stiffness struct{ Dx, Dy, Dxy, Dk float64 }

// Stiffness returns the stiffness of a plate of this material with the grain along x:
//
//	Dx = EL·t³ / 12(1 − νLT·νTL)    Dy = ET·t³ / 12(1 − νLT·νTL)
//	Dxy = νLT·Dy                    Dk = GLT·t³ / 12
//
// with νTL = νLT·ET/EL. Source: S. G. Lekhnitskii, Anisotropic Plates (Gordon and Breach 1968), on
// orthotropic plates; the same in S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd ed. 1959, chapter 11, where Dxy is called D1 and Dk is called Dxy.
func (m Material) Stiffness(thickness float64) (Stiffness, error) {
	if err := m.check(); err != nil {
		return Stiffness{}, err
	}
	if err := between("thickness", thickness, leastThickness, mostThickness, "mm"); err != nil {
		return Stiffness{}, err
	}
	cube := thickness * thickness * thickness / 12
	plane := 1 - m.NuLT*m.NuLT*m.ET/m.EL
	s := Stiffness{Dx: m.EL * cube / plane, Dy: m.ET * cube / plane, Dk: m.GLT * cube}
	s.Dxy = m.NuLT * s.Dy
	return s, nil
}

// turned returns the stiffness of the plate turned by a quarter.
func (s Stiffness) turned() Stiffness { return Stiffness{Dx: s.Dy, Dy: s.Dx, Dxy: s.Dxy, Dk: s.Dk} }

func (m Material) check() error {
	for _, v := range []struct {
		name  string
		value float64
	}{{"modulus along the grain", m.EL}, {"modulus across the grain", m.ET}, {"shear modulus", m.GLT}} {
		if err := between(v.name, v.value, 0.01, 1e7, "MPa"); err != nil {
			return err
		}
	}
	if err := between("Poisson ratio", m.NuLT, -0.99, 10, ""); err != nil {
		return err
	}
	// Without this the material would give energy when bent (positive definiteness, as in Lekhnitskii).
	if m.NuLT*m.NuLT*m.ET/m.EL > 0.98 {
		return fmt.Errorf("a Poisson ratio of %g does not go with moduli of %g and %g MPa: its square must stay well below their ratio", m.NuLT, m.EL, m.ET)
	}
	if r := max(m.EL, m.ET, m.GLT) / min(m.EL, m.ET, m.GLT); r > 1e4 {
		return fmt.Errorf("moduli of %g, %g and %g MPa differ by more than 10 000 to 1", m.EL, m.ET, m.GLT)
	}
	return nil
}
