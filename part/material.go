package part

import (
	"fmt"
	"math"

	"rodwright/piece"
	"rodwright/trade/sheet"
)

// material is what a panel is made of.
type material struct {
	id      string
	sheet   bool
	density float64 // kg/m³, wood at the moisture it is built with
	assumed []string
}

// materialOf returns a panel's material: its sheet, its own wood, or the document's.
func (t *takeOff) materialOf(spec *piece.Panel) (material, error) {
	if spec.Sheet != "" {
		s, err := sheet.Lookup(spec.Sheet)
		if err != nil {
			return material{}, t.wrong(spec.Pos, spec.Name+": "+err.Error(), "")
		}
		return material{id: s.ID, sheet: true, density: s.Density, assumed: words(s.Assumed)}, nil
	}
	w := spec.Wood
	if w == nil {
		w = &t.doc.Wood
	}
	m := material{id: w.Species.ID, density: w.Species.Density(w.Moisture)}
	if math.IsNaN(m.density) || m.density <= 0 {
		return m, t.wrong(spec.Pos, fmt.Sprintf("%s: no specific gravity of %q is known", spec.Name, w.Species.ID), "choose another wood")
	}
	m.assumed = words(append([]string{w.Species.Assumed}, w.Assumed...)...)
	return m, nil
}
