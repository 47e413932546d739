// Package plate holds what the trade knows of a panel as a plate: how stiff wood and sheet goods are in their face, how
// far a panel sags on its supports and how hard it is stressed. The mechanics are those of package mechanics/plate; a
// quick answer and a whole piece come through here.
//
// The words: a plate rests where its edge is free to turn and is held where it can't; the truth of a screwed joint lies
// between the two. Start with [Bend].
package plate

import (
	"errors"
	"fmt"
	"math"

	"rodwright/figure"
	bend "rodwright/mechanics/plate"
	"rodwright/trade/sheet"
	"rodwright/trade/wood"
)

// Stuff is what a plate is made of.
type Stuff struct {
	bend.Material
	Strength float64 // MPa, the bending stress along the grain at which clear wood breaks; NaN where it is not known
	Assumed  []string
	Source   string
}

// OfWood returns the stiffness of a panel of strips of a species, sawn so, at about 12 % MC: along the grain the
// handbook's modulus as it was measured, shear in it; across and in the face its ratios. Where the sawing is mixed or not
// known the lesser of flat-sawn (T) and quarter-sawn (R) is taken.
func OfWood(s wood.Species, cut wood.Cut) (Stuff, error) {
	if math.IsNaN(s.MOE) {
		return Stuff{}, fmt.Errorf("no modulus of elasticity is known for %s", s.Name)
	}
	r := s.Elastic()
	across, shear, nu := r.ET, r.GLT, r.NuLT
	out := Stuff{Strength: s.MOR, Source: s.Source.String() + "; " + r.Source.String()}
	out.Assumed = appendText(out.Assumed, s.Assumed, r.Assumed, "clear wood at 12 % moisture content")
	switch cut {
	case wood.Quarter:
		across, shear, nu = r.ER, r.GLR, r.NuLR
		out.Assumed = append(out.Assumed, "quarter-sawn: radial stiffness across the grain")
	case wood.Flat:
		out.Assumed = append(out.Assumed, "flat-sawn: tangential stiffness across the grain")
	default:
		across, shear = min(r.ET, r.ER), min(r.GLT, r.GLR)
		out.Assumed = append(out.Assumed, "sawn either way: the less stiff of both")
	}
	out.Material = bend.Material{EL: s.MOE, ET: across * s.MOE, GLT: shear * s.MOE, NuLT: nu}
	return out, nil
}

// Of a sheet without a measured shear modulus: the share of the mean modulus that plywood and boards have in their face,
// and their Poisson ratio. From memory.
const (
	sheetShear   = 0.07
	sheetPoisson = 0.2
	boardPoisson = 0.25
)

// OfSheet returns the stiffness of sheet goods. All of it is from memory.
func OfSheet(s sheet.Sheet) Stuff {
	out := Stuff{Strength: math.NaN(), Source: s.Source.String()}
	out.Assumed = appendText(out.Assumed, s.Assumed)
	if !s.Veneered {
		out.Material = bend.Even((s.Along+s.Across)/2, boardPoisson)
		return out
	}
	out.Assumed = append(out.Assumed, "shear in its face 0.07 of its mean modulus, from memory")
	out.Material = bend.Material{EL: s.Along, ET: s.Across, NuLT: sheetPoisson, GLT: sheetShear * math.Sqrt(s.Along*s.Across)}
	return out
}

// Even returns a material that is alike in all directions.
func Even(modulus, poisson float64) Stuff {
	return Stuff{Material: bend.Even(modulus, poisson), Strength: math.NaN()}
}

func appendText(to []string, texts ...string) []string {
	for _, t := range texts {
		if t != "" {
			to = append(to, t)
		}
	}
	return to
}

var sagFormula = figure.Formula{
	Text: "Dx·∂⁴w/∂x⁴ + 2·(Dxy + 2·Dk)·∂⁴w/∂x²∂y² + Dy·∂⁴w/∂y⁴ = q, by finite elements",
	Source: "S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, ch. 11; elements of Bogner, Fox and Schmit, 1966; " +
		"moduli by Wood Handbook FPL-GTR-282 (2021) Tables 5-1 to 5-3",
	Range: "a thin flat plate that bends little; refined until its sag changes by less than 2 %",
}

var stressFormula = figure.Formula{
	Text:   "σ = 6·M ÷ t², the largest of the plate away from its supports' edges",
	Source: "S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, ch. 11",
	Range:  "a thin flat plate that bends little",
}

// Bent is how a panel bears its load.
type Bent struct {
	*bend.Result
	Sag    figure.Figure // mm, elastic, below the plane of its supports
	Stress figure.Figure // MPa, along the grain
}

// ErrUnheld says that nothing holds a panel, or too little.
var ErrUnheld = errors.New("nothing holds it, or too little")

// Short is a short answer.
type Short struct {
	Sag    float64 // mm, elastic, below the plane of its supports
	Stress float64 // MPa, along the grain
}

// Coarse works a plate out in short, on one coarse mesh. That is too stiff: its sag is the least there can be, and good
// enough to compare two plates that differ in little.
func Coarse(p bend.Plate, s Stuff) (Short, error) {
	p.Material = s.Material
	r, err := p.SolveOnce()
	if err != nil {
		return Short{}, err
	}
	return Short{Sag: max(r.BelowSupports.Value, 0), Stress: r.Along.Value}, nil
}

// Bend works out the sag and the largest stress of a plate. The error is ErrUnheld where it falls, and says what can't be
// in any other case.
func Bend(p *bend.Plate, s Stuff, held string) (Bent, error) {
	p.Material = s.Material
	r, err := p.Solve()
	var loose *bend.Unheld
	if errors.As(err, &loose) {
		return Bent{}, fmt.Errorf("%w: %w", ErrUnheld, err)
	}
	if err != nil {
		return Bent{}, err
	}
	in := []figure.Input{
		figure.In("E along", p.Material.EL, figure.MPa), figure.In("E across", p.Material.ET, figure.MPa), figure.In("G", p.Material.GLT, figure.MPa),
		figure.In("thickness", p.Thickness, figure.MM), figure.In("load", r.Load, figure.N),
	}
	out := Bent{Result: r}
	out.Sag = figure.Of("sag", max(r.BelowSupports.Value, 0), figure.MM, &sagFormula, in...).From(s.Source).Assuming(held).Assuming(s.Assumed...)
	out.Stress = figure.Of("bending stress", r.Along.Value, figure.MPa, &stressFormula, in...).From(s.Source).Assuming(held)
	if !r.Converged {
		out.Sag = out.Sag.Assuming(fmt.Sprintf("still changing by %.0f %% when it was refined as far as it is", 100*r.Change))
	}
	return out, nil
}
