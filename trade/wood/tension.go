package wood

import (
	_ "embed"
	"math"
	"sync"

	"rodwright/figure"
	"rodwright/trade/table"
)

//go:embed tension.csv
var tensionCSV string

var tensionTable = sync.OnceValue(func() map[string]table.Row {
	out := map[string]table.Row{}
	for _, r := range table.Read(tensionCSV) {
		out[r.Text("id")] = r
	}
	return out
})

var tensionFormula = figure.Formula{
	Text: "f = 10.1·G^1.30 MPa for hardwoods, 6.0·G^1.11 MPa for softwoods", Source: "Wood Handbook FPL-GTR-282 (2021) Table 5-11, from memory",
	Range: "clear wood at 12 % MC, a species without a figure of its own in Table 5-3; boards of one species vary by 25 %",
}

// TensionAcross returns the strength of clear wood in tension across the grain at 12 % MC, in MPa: that of Wood
// Handbook Table 5-3, else by the specific gravity. It reports false where neither is known.
func (s Species) TensionAcross() (figure.Figure, bool) {
	if r, ok := tensionTable()[s.ID]; ok {
		return figure.Of("strength across the grain", r.Float("psi")*psi, figure.MPa, nil).From(r.Source().String()), true
	}
	g := s.SG12
	if math.IsNaN(g) || g <= 0 {
		return figure.Figure{}, false
	}
	f := 6.0 * math.Pow(g, 1.11)
	if s.Hardwood {
		f = 10.1 * math.Pow(g, 1.30)
	}
	return figure.Of("strength across the grain", f, figure.MPa, &tensionFormula, figure.In("G", g, figure.Ratio)).
		Assuming("strength across the grain by specific gravity, as no figure of " + s.Name + " is at hand"), true
}
