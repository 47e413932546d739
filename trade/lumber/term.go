package lumber

import (
	_ "embed"
	"sync"

	"rodwright/trade/table"
)

//go:embed terms.csv
var termsCSV string

// Term is a word or abbreviation of the lumber yard.
type Term struct {
	Word    string // S2S
	Meaning string
	Formula string // in inches and feet; empty for a plain word
	Source  table.Source
}

var terms = sync.OnceValue(func() []Term {
	var out []Term
	for _, r := range table.Read(termsCSV) {
		out = append(out, Term{r.Text("term"), r.Text("meaning"), r.Text("formula_units_in_ft"), r.Source()})
	}
	return out
})

// Terms returns the words of the lumber yard, for a plan's reader.
func Terms() []Term { return append([]Term(nil), terms()...) }
