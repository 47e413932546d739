// Package lumber holds what the trade knows of buying boards: thicknesses in quarters and what is left of
// them, tallies in board feet, grades, waste, and what one board or offcut still gives.
//
// The words: stock is named by its rough thickness in quarters of an inch, 5/4; surfaced on two sides (S2S)
// it is thinner; a tally is the way a yard counts board feet; surface measure is the area of one face in
// whole square feet. Start with [Lookup], [BoardFeet] and [NextStock].
//
// Layouts of parts on boards are not made here.
package lumber

import (
	_ "embed"
	"strings"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed lumber.csv
var lumberCSV string

// Stock is hardwood of one nominal thickness.
type Stock struct {
	ID       string        // 4/4, 5/4 … 16/4; 3/8, 1/2, 5/8, 3/4 for thin stock
	Rough    length.Length // nominal
	Surfaced length.Length // S2S: both faces planed
	Note     string        // how yards differ
	Source   table.Source  // of the surfaced thickness
}

const (
	hardwoodS2S       = "hardwood thickness S2S"
	softwoodBoard     = "softwood board thickness"
	softwoodDimension = "softwood dimension thickness"
	softwoodWidth     = "softwood width"
)

type stockTable struct {
	ids  []string
	byID map[string]Stock
}

var stocks = sync.OnceValue(func() stockTable {
	t := stockTable{byID: map[string]Stock{}}
	for _, r := range table.Read(lumberCSV) {
		if r.Text("kind") != hardwoodS2S {
			continue
		}
		s := Stock{
			ID: r.Text("nominal"), Rough: r.Inches("nominal_rough_in"), Surfaced: r.Inches("dressed_dry_in"),
			Note: r.Text("note"), Source: r.Source("dressed_dry_in"),
		}
		t.ids = append(t.ids, s.ID)
		t.byID[s.ID] = s
	}
	return t
})

// Lookup returns hardwood stock by its name in quarters: 5/4. The error is a *table.UnknownError.
func Lookup(id string) (Stock, error) {
	t := stocks()
	if s, ok := t.byID[strings.TrimSpace(id)]; ok {
		return s, nil
	}
	return Stock{}, table.Unknown("stock", id, t.ids)
}

// IDs returns the names of all hardwood stock, thin before thick.
func IDs() []string { return append([]string(nil), stocks().ids...) }

// Quarters returns the stock that yards keep, 4/4 to 16/4, thin before thick. Thinner stock is resawn.
func Quarters() []Stock {
	var out []Stock
	for _, id := range stocks().ids {
		if s := stocks().byID[id]; strings.HasSuffix(id, "/4") && s.Rough >= length.Inch {
			out = append(out, s)
		}
	}
	return out
}
