// Package adhesive holds what the trade knows of glues and resins, by class: how much a joint takes, how
// hard and how long it is clamped, and how a void is filled.
//
// The words: spread is the mass of glue on an area of joint; open time is from spreading to closing; a
// joint rests before it is stressed or surfaced; pot life is how long a mix can be poured. Start with
// [LookupGlue], [Clamp] and [Fill.Volume].
//
// The classes are generic: the can in hand wins, and what is from memory is said to be assumed.
package adhesive

import (
	_ "embed"
	"sync"

	"rodwright/figure"
	"rodwright/trade/table"
)

var (
	//go:embed adhesives.csv
	adhesivesCSV string
	//go:embed cautions.csv
	cautionsCSV string
)

// typical returns a value out of a span as a figure that says where it comes from and whose it is. A value
// at an end of the span is told with the span too.
func typical(name string, value float64, unit figure.Unit, s table.Span, of string) figure.Figure {
	f := figure.Of(name, value, unit, nil).From(s.Source.String())
	words := of + ": " + name + " " + figure.Digits(value, 3)
	if s.Low != s.High {
		words += " of " + figure.Digits(s.Low, 3) + " to " + figure.Digits(s.High, 3)
	}
	if s.Source.Memory {
		words += ", from memory"
	}
	return f.Assuming(words + "; the product's own sheet wins")
}

// property names a row of the table.
type property struct{ id, name string }

type data struct {
	names    map[string]string // class id to its words
	spans    map[property]table.Span
	cautions map[string][]string
}

// psi is one pound-force per square inch in MPa, exact from the inch and pound of 1959.
const psi = 0.45359237 * 9.80665 / (25.4 * 25.4)

var adhesives = sync.OnceValue(func() data {
	d := data{names: map[string]string{}, spans: map[property]table.Span{}, cautions: map[string][]string{}}
	scale := map[string]float64{"psi": psi, "min": 1.0 / 60, "day": 24}
	for _, r := range table.Read(adhesivesCSV) {
		k := scale[r.Text("unit")]
		if k == 0 {
			k = 1
		}
		id := r.Text("id")
		d.names[id] = r.Text("material_class")
		d.spans[property{id, r.Text("property")}] = r.Span(k)
	}
	for _, r := range table.Read(cautionsCSV) {
		id := r.Text("id")
		d.cautions[id] = append(d.cautions[id], r.Text("caution"))
	}
	return d
})

func (d data) span(id, name string) table.Span { return d.spans[property{id, name}] }
