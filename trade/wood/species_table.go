package wood

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"

	"rodwright/trade/table"
)

//go:embed species.csv
var speciesCSV string

type speciesRows struct {
	ids    []string // in the order of the table
	names  []string // ids and aliases, sorted
	byName map[string]Species
}

var speciesTable = sync.OnceValue(func() speciesRows {
	t := speciesRows{byName: map[string]Species{}}
	for _, r := range table.Read(speciesCSV) {
		s := species(r)
		t.ids = append(t.ids, s.ID)
		t.names = append(append(t.names, s.ID), r.List("aliases")...)
		t.byName[normal(s.Name)] = s
		for _, name := range append(r.List("aliases"), s.ID) {
			t.byName[normal(name)] = s
		}
	}
	slices.Sort(t.names)
	return t
})

// normal brings the ways a name is written to one: lower case, its words parted by hyphens.
func normal(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	return strings.Join(words, "-")
}

// The units of the inch-pound tables: 1 psi = 4.4482216152605 N ÷ (25.4 mm)², 1 lbf = 4.4482216152605 N, both
// exact by definition of pound and inch.
const (
	poundForce = 4.4482216152605
	psi        = poundForce / (25.4 * 25.4)
)

func species(r table.Row) Species {
	s := Species{
		ID: r.Text("id"), Name: r.Text("species"), Scientific: r.Text("scientific_name"),
		Group: r.Text("group"), Hardwood: r.Text("group") != "softwood",
		SG12: r.Float("sg_12pct"), SGGreen: r.Float("sg_green"),
		MOR: r.Float("mor_12pct_psi") * psi, MOE: r.Float("moe_12pct_psi") * psi,
		CompPerp: r.Float("comp_perp_12pct_psi") * psi, Shear: r.Float("shear_par_12pct_psi") * psi,
		HardnessN: r.Float("side_hardness_12pct_lbf") * poundForce,
		ShrinkR:   r.Float("shrink_radial_pct"), ShrinkT: r.Float("shrink_tangential_pct"), ShrinkV: r.Float("shrink_volumetric_pct"),
		CR: r.Float("cr_per_pct_mc"), CT: r.Float("ct_per_pct_mc"),
		GreenPoint: r.Float("green_point_pct"),
		Tannin:     r.Text("tannin") == "yes",
		Ratios:     r.Text("elastic_ratios"),
		Note:       r.Text("note"),
		Source:     r.SourceIn(strengthKey(r), "sg_12pct", "mor_12pct_psi", "moe_12pct_psi", "comp_perp_12pct_psi", "shear_par_12pct_psi"),
		MoveSource: r.SourceIn("WH-T13-5", "cr_per_pct_mc", "ct_per_pct_mc"),
		ShrinkFrom: r.SourceIn(shrinkKey(r), "shrink_radial_pct", "shrink_tangential_pct"),
	}
	assumeCoefficients(&s)
	assumeGravity(&s, r)
	return s
}

func strengthKey(r table.Row) string { return strings.Split(r.Text("source"), "+")[0] }

func shrinkKey(r table.Row) string { return strings.Split(r.Text("source"), "+")[1] }

// assumeCoefficients derives a coefficient that Table 13-5 lacks from the shrinkage, and says so:
//
//	C = (S ÷ 100 ÷ F) ÷ (1 − (S ÷ 100) (F − 10) ÷ F)
//
// with F the green point: eq. 13-3 per percent of MC, taken at 10 % MC. It gives every single domestic
// species of Table 13-5 to within 0.00002.
func assumeCoefficients(s *Species) {
	for _, d := range []struct {
		words     string
		c         *float64
		shrinkage float64
	}{{"C_R", &s.CR, s.ShrinkR}, {"C_T", &s.CT, s.ShrinkT}} {
		if math.IsNaN(*d.c) {
			*d.c = fromShrinkage(d.shrinkage, s.GreenPoint)
			s.MoveAssumed = join(s.MoveAssumed, fmt.Sprintf("%s %s: no coefficient in Wood Handbook Table 13-5, %.5f derived from its shrinkage of %g %%",
				s.ID, d.words, *d.c, d.shrinkage))
		}
	}
	if s.Group == "imported" {
		s.MoveAssumed = join(s.MoveAssumed, s.ID+": an imported wood, whose boards vary more than the table says")
	}
}

func fromShrinkage(shrinkage, greenPoint float64) float64 {
	share := shrinkage / 100
	return share / greenPoint / (1 - share*(greenPoint-10)/greenPoint)
}

// assumeGravity derives the specific gravity at 12 % MC from the green one where the table has only that,
// and says so.
func assumeGravity(s *Species, r table.Row) {
	if math.IsNaN(s.SG12) && !math.IsNaN(s.SGGreen) {
		s.SG12 = gravityAt12(s.SGGreen)
		s.Assumed = join(s.Assumed, fmt.Sprintf("%s: specific gravity %.2f at 12 %% MC reckoned from %.2f green", s.ID, s.SG12, s.SGGreen))
	}
	if s.ID == "sitka-spruce" {
		s.Assumed = join(s.Assumed, r.Text("note"))
	}
}

// gravityAt12 turns the specific gravity by green volume into that by the volume at 12 % MC:
//
//	G12 = Gb ÷ (1 − 0.265 a Gb), a = (30 − 12) ÷ 30
//
// after ASTM D2395 and Wood Handbook chapter 4, from memory.
func gravityAt12(green float64) float64 {
	const a = (30 - 12.0) / 30
	return green / (1 - 0.265*a*green)
}

func join(words, more string) string {
	if words == "" {
		return more
	}
	return words + "; " + more
}
