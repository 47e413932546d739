package pipe

import (
	_ "embed"
	"sync"

	"rodwright/trade/table"
)

//go:embed fittings.csv
var fittingsCSV string

//go:embed fittings_iso.csv
var fittingsISOCSV string

//go:embed flanges.csv
var flangesCSV string

//go:embed unions.csv
var unionsCSV string

//go:embed masses.csv
var massesCSV string

// anyKind stands for the rows of a dimension that all fittings of a size share: band, wall, thread.
const anyKind Kind = "all"

// dimension names one figure of one fitting: its kind, its nominal size in inches and the letter of the table.
type dimension struct {
	kind    Kind
	nominal string
	letter  string
}

// fittingRows are the rows of all tables of fittings by what they tell.
type fittingRows struct {
	npt     map[dimension]table.Row
	iso     map[dimension]table.Row
	flanges map[string]table.Row
	unions  map[string]table.Row
	masses  map[dimension]table.Row // letter is empty
}

var fittingTable = sync.OnceValue(func() fittingRows {
	t := fittingRows{
		npt: map[dimension]table.Row{}, iso: map[dimension]table.Row{}, masses: map[dimension]table.Row{},
		flanges: byNominal(flangesCSV), unions: byNominal(unionsCSV),
	}
	for _, r := range table.Read(fittingsCSV) {
		t.npt[dimension{Kind(r.Text("kind")), r.Text("nps"), r.Text("dim")}] = r
	}
	for _, r := range table.Read(fittingsISOCSV) {
		t.iso[dimension{Kind(r.Text("kind")), r.Text("thread_size"), r.Text("dim")}] = r
	}
	for _, r := range table.Read(massesCSV) {
		t.masses[dimension{Kind(r.Text("kind")), r.Text("nps"), ""}] = r
	}
	return t
})

func byNominal(text string) map[string]table.Row {
	out := map[string]table.Row{}
	for _, r := range table.Read(text) {
		out[r.Text("nps")] = r
	}
	return out
}
