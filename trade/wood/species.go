package wood

import (
	"math"

	"rodwright/trade/table"
)

// Species is one kind of wood. Strength and hardness are those of clear wood at 12 % MC. A figure that the
// table lacks is NaN; Missing names it. Species are plain values without slices.
type Species struct {
	ID         string // as documents write it: white-oak
	Name       string // as the table has it: Oak, white
	Scientific string
	Group      string // hardwood, softwood, imported
	Hardwood   bool   // botanically, imported ones included

	SG12, SGGreen float64 // specific gravity: dry weight by the volume at 12 % MC, and green

	MOR, MOE, CompPerp, Shear float64 // MPa: bending strength, modulus, crushing across the grain, shear along it
	HardnessN                 float64 // side hardness, N

	ShrinkR, ShrinkT, ShrinkV float64 // percent from green to dry: radial, tangential, volume
	CR, CT                    float64 // change per percent MC: radial, tangential, Wood Handbook Table 13-5
	GreenPoint                float64 // MC in percent where shrinkage begins: 30, or 22

	Tannin bool // bare steel stains it black in the damp; common practice, no source

	Ratios string // the row of Wood Handbook Table 5-1 that serves; empty where none does

	Source      table.Source // of the strength figures
	MoveSource  table.Source // of the coefficients
	ShrinkFrom  table.Source // of the shrinkage
	Assumed     string       // what of it is assumed, in words, parted by "; "
	MoveAssumed string       // what of its movement is assumed, in words
	Note        string       // what the table's keeper remarked
}

// Lookup returns the species with the given id or alias: white-oak, hard-maple, and the table's own names
// (Oak, white), in any case, with spaces or hyphens. The error is a *table.UnknownError with the nearest
// ids.
func Lookup(id string) (Species, error) {
	t := speciesTable()
	if s, ok := t.byName[normal(id)]; ok {
		return s, nil
	}
	return Species{}, table.Unknown("species", id, t.names)
}

// IDs returns the id of every species in the order of the table, aliases apart.
func IDs() []string { return append([]string(nil), speciesTable().ids...) }

// Names returns every id and alias by which [Lookup] finds a species, sorted.
func Names() []string { return append([]string(nil), speciesTable().names...) }

// Coefficient returns the change across the width of a board of the given cut, as a share of the width per
// percent of MC: C_T flat-sawn, C_R quarter-sawn, their mean for mixed (Wood Handbook Table 13-5).
func (s Species) Coefficient(c Cut) float64 { return c.across(s.CT, s.CR) }

// Shrinkage returns the shrinkage in percent from green to dry across the width of a board of the given
// cut.
func (s Species) Shrinkage(c Cut) float64 { return c.across(s.ShrinkT, s.ShrinkR) }

// Density returns the density in kg/m³ of wood at the given MC in percent:
//
//	ρ = 1000 · G · (1 + MC ÷ 100)
//
// with G by the volume at 12 % MC (Wood Handbook chapter 4). At 12 % it is exact; as the volume is kept, it
// is low by about half a percent for each point below and high by as much above, less than boards of one
// species differ.
func (s Species) Density(mc float64) float64 { return 1000 * s.SG12 * (1 + mc/100) }

// Missing names the figures of s that its tables lack, in words.
func (s Species) Missing() []string {
	var out []string
	for _, f := range []struct {
		words string
		value float64
	}{
		{"bending strength", s.MOR},
		{"modulus of elasticity", s.MOE},
		{"crushing strength across the grain", s.CompPerp},
		{"shear strength", s.Shear},
		{"side hardness", s.HardnessN},
		{"specific gravity", s.SG12},
		{"movement coefficient", s.CR + s.CT},
		{"shrinkage", s.ShrinkR + s.ShrinkT},
	} {
		if math.IsNaN(f.value) {
			out = append(out, f.words)
		}
	}
	return out
}
