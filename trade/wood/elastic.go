package wood

import (
	_ "embed"
	"fmt"
	"math"
	"sync"

	"rodwright/trade/table"
)

//go:embed elastic_ratios.csv
var elasticCSV string

// Ratios are the elastic constants of a species as shares of E_L, the modulus along the grain, at about 12 %
// MC: R radial, T tangential. Wood Handbook Table 5-1; its averages carry no more than two digits.
type Ratios struct {
	ET, ER   float64 // moduli across the grain
	GLR, GLT float64 // shear moduli of the faces along the grain
	NuLT     float64 // Poisson ratios
	NuLR     float64
	Source   table.Source
	Assumed  string // in words
}

// The Poisson ratios of any hardwood and softwood, Wood Handbook Table 5-2, from memory.
const (
	hardwoodNuLT, hardwoodNuLR = 0.50, 0.37
	softwoodNuLT, softwoodNuLR = 0.42, 0.37
)

var elasticTable = sync.OnceValue(func() map[string]table.Row {
	out := map[string]table.Row{}
	for _, r := range table.Read(elasticCSV) {
		out[r.Text("species")] = r
	}
	return out
})

// Elastic returns the elastic ratios of the species. A figure that Table 5-1 lacks is that of the
// species the table's row points to, else the mean of all hardwoods or softwoods that Lookup knows; Assumed
// says so.
func (s Species) Elastic() Ratios {
	out := Ratios{NuLT: hardwoodNuLT, NuLR: hardwoodNuLR, Source: table.Cite("WH-T5-1+WH-T5-2", true)}
	if !s.Hardwood {
		out.NuLT, out.NuLR = softwoodNuLT, softwoodNuLR
	}
	for _, c := range []struct {
		column string
		words  string
		to     *float64
	}{
		{"et_per_el", "E_T", &out.ET},
		{"er_per_el", "E_R", &out.ER},
		{"glr_per_el", "G_LR", &out.GLR},
		{"glt_per_el", "G_LT", &out.GLT},
	} {
		row := elasticTable()[s.Ratios]
		if *c.to = row.Float(c.column); !math.IsNaN(*c.to) {
			continue
		}
		as := "the mean of its kind"
		*c.to = meanRatio(c.column, s.Hardwood)
		if like := row.Text("like"); like != "" {
			as, *c.to = like, elasticTable()[like].Float(c.column)
		}
		out.Assumed = join(out.Assumed, fmt.Sprintf("%s: %s as %s, %.3f E_L, having no figure in Wood Handbook Table 5-1", s.ID, c.words, as, *c.to))
	}
	return out
}

// meanRatio is the mean of a column over the species of one kind that have it.
func meanRatio(column string, hardwood bool) float64 {
	sum, n := 0.0, 0.0
	for _, id := range IDs() {
		s, _ := Lookup(id)
		if v := elasticTable()[s.Ratios].Float(column); s.Hardwood == hardwood && !math.IsNaN(v) {
			sum, n = sum+v, n+1
		}
	}
	return sum / n
}
