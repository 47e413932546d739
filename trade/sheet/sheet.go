// Package sheet holds the sheet goods that panels may be made of: plywood, MDF and particleboard.
//
// A sheet does not move with the seasons as solid wood does; it sags more in the end than at first, by its
// creep factor. All figures are from memory, and each is an assumption until the sheet in hand is measured.
// Start with [Lookup].
package sheet

import (
	_ "embed"
	"fmt"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/beam"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed sheets.csv
var sheetsCSV string

// Sheet is a sheet good of one thickness.
type Sheet struct {
	ID        string // birch-plywood-18
	Name      string
	Thickness length.Length    // nominal
	True      [2]length.Length // thickness as found, least and most; both nominal where none is known
	Density   float64          // kg/m³
	Along     float64          // modulus of elasticity along the face grain, MPa
	Across    float64          // and across it; the same where there is no grain
	Veneered  bool             // has a face grain
	Size      [2]length.Length // of a whole sheet: along the face grain, across it
	Assumed   string           // that none of this is measured, in words
	Source    table.Source

	creep float64 // lasting ÷ first sag; 0 where that of solid wood is taken
}

type sheetTable struct {
	ids  []string
	byID map[string]Sheet
}

var sheets = sync.OnceValue(func() sheetTable {
	t := sheetTable{byID: map[string]Sheet{}}
	for _, r := range table.Read(sheetsCSV) {
		s := Sheet{
			ID: r.Text("id"), Name: r.Text("name"), Thickness: r.MM("thickness_mm"),
			Density: r.Float("density_kg_m3"), Along: r.Float("e_along_mpa"), Across: r.Float("e_across_mpa"),
			Veneered: r.Text("veneered") == "yes", Size: [2]length.Length{r.MM("length_mm"), r.MM("width_mm")}, Source: r.Source(),
		}
		s.True = [2]length.Length{s.Thickness, s.Thickness}
		if r.Has("true_low_mm") {
			s.True = [2]length.Length{r.MM("true_low_mm"), r.MM("true_high_mm")}
		}
		if r.Has("creep") {
			s.creep = r.Float("creep")
		}
		s.Assumed = fmt.Sprintf("%s: density, stiffness and sheet size from memory; measure its thickness", s.Name)
		t.ids = append(t.ids, s.ID)
		t.byID[s.ID] = s
	}
	return t
})

// Lookup returns the sheet good with the given id. The error is a *table.UnknownError.
func Lookup(id string) (Sheet, error) {
	t := sheets()
	if s, ok := t.byID[id]; ok {
		return s, nil
	}
	return Sheet{}, table.Unknown("sheet", id, t.ids)
}

// IDs returns the ids of all sheet goods.
func IDs() []string { return append([]string(nil), sheets().ids...) }

// Creep returns the sheet's lasting sag ÷ its sag at first loading: its own factor, for plywood that of
// solid wood in the given air.
func (s Sheet) Creep(air beam.Lasting) figure.Figure {
	if s.creep > 0 {
		return figure.Of("lasting factor", s.creep, figure.Ratio, nil).From(s.Source.String()).
			Assuming(fmt.Sprintf("%s: creep factor %s, from memory", s.Name, figure.Digits(s.creep, 3)))
	}
	return figure.Of("lasting factor", air.Factor(), figure.Ratio, nil).From(s.Source.String()).
		Assuming(s.Name + ": creeps as solid wood does")
}

var massFormula = figure.Formula{Text: "m = area · thickness · density", Source: "arithmetic"}

// Mass returns the mass in kg of an area of the sheet in m², at its nominal thickness.
func (s Sheet) Mass(area float64) (figure.Figure, error) {
	if err := within.NotNegative("area", area, figure.M2); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("mass", area*s.Thickness.MM()/1000*s.Density, figure.Kg, &massFormula,
		figure.In("area", area, figure.M2), figure.InLength("thickness", s.Thickness), figure.In("density", s.Density, figure.KgPerM3)).
		From(s.Source.String()).Assuming(s.Assumed), nil
}
