// Package finish holds what the trade knows of finishes, by class: how far they go, how long they take, and
// how they can hurt.
//
// The words: coverage is the area one litre covers in one coat; recoat is the wait between coats; a piece is
// in light use some time after the last coat and fully cured much later. Start with [Lookup] and [Quantity].
//
// The classes are generic: the can in hand wins, and what is from memory is said to be assumed.
package finish

import (
	"cmp"
	_ "embed"
	"strings"
	"sync"

	"rodwright/figure"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

var (
	//go:embed finishes.csv
	finishesCSV string
	//go:embed cautions.csv
	cautionsCSV string
)

// Class is a class of finish.
type Class struct {
	ID       string // hardwax-oil, film-varnish, waterborne-clear, shellac, paste-wax, decking-oil, enamel
	Name     string
	Coverage table.Span // m²/L in one coat
	Coats    int        // usual
	Recoat   table.Span // hours
	Use      table.Span // hours from the last coat to light use
	Cure     table.Span // hours to full cure
	Wipe     table.Span // hours from wiping on to wiping off or buffing
	Grit     table.Span // last sanding before it
	Film     bool       // lies on the surface as a film, which keeps water off; oil and wax do not
	OilyRags bool       // its rags can catch fire by themselves
}

type property struct{ id, name string }

type data struct {
	ids      []string
	names    map[string]string
	spans    map[property]table.Span
	cautions map[property][]string // by class and kind: rags, solvent, use
}

var finishes = sync.OnceValue(func() data {
	d := data{names: map[string]string{}, spans: map[property]table.Span{}, cautions: map[property][]string{}}
	for _, r := range table.Read(finishesCSV) {
		id, k := r.Text("id"), 1.0
		if r.Text("unit") == "min" {
			k = 1.0 / 60
		}
		if d.names[id] == "" {
			d.ids = append(d.ids, id)
		}
		d.names[id] = r.Text("material_class")
		d.spans[property{id, r.Text("property")}] = r.Span(k)
	}
	for _, r := range table.Read(cautionsCSV) {
		p := property{r.Text("id"), r.Text("kind")}
		d.cautions[p] = append(d.cautions[p], r.Text("caution"))
	}
	return d
})

// Lookup returns the class of finish with the given id. The error is a *table.UnknownError.
func Lookup(id string) (Class, error) {
	d := finishes()
	name, ok := d.names[id]
	if !ok {
		return Class{}, table.Unknown("finish", id, d.ids)
	}
	of := func(name string) table.Span { return d.spans[property{id, name}] }
	return Class{
		ID: id, Name: name, Coverage: of("coverage"), Coats: int(of("coats").Low), Recoat: of("recoat"), Use: of("use"),
		Cure: of("cure"), Wipe: of("wipe"), Grit: of("grit"), Film: of("film").Known(), OilyRags: len(d.cautions[property{id, "rags"}]) > 0,
	}, nil
}

// IDs returns the ids of all classes.
func IDs() []string { return append([]string(nil), finishes().ids...) }

// Words returns the name of a class for a sentence; an id that is none, such as a shop's own finish, is told
// with spaces for its hyphens.
func Words(id string) string {
	if c, err := Lookup(id); err == nil {
		return c.Name
	}
	return strings.ReplaceAll(id, "-", " ")
}

// Film reports whether the finish with the given id is known to lie on the surface as a film. Of a finish
// that is in no table that is not known.
func Film(id string) bool {
	c, err := Lookup(id)
	return err == nil && c.Film
}

// Cautions returns how the finish can hurt and what to do about it: its rags first, then its solvent, then
// its use. Where rags can catch fire the way to dry them is said too.
func (c Class) Cautions() []string {
	d := finishes()
	out := append([]string(nil), d.cautions[property{c.ID, "rags"}]...)
	if c.OilyRags {
		out = append(out, RagCaution())
	}
	out = append(out, d.cautions[property{c.ID, "solvent"}]...)
	return append(out, d.cautions[property{c.ID, "use"}]...)
}

// RagCaution returns what to do with rags that drying oil is on.
func RagCaution() string { return finishes().cautions[property{"rags", "rags"}][0] }

// SolventCaution returns the caution for cleaning steel or oily wood with acetone.
func SolventCaution() string { return finishes().cautions[property{"cleaning", "solvent"}][0] }

// CoverageFigure returns the coverage in m²/L of one coat, at the middle of what sources say.
func (c Class) CoverageFigure() figure.Figure {
	return c.typical("coverage", figure.M2PerL, c.Coverage, c.Coverage.Middle())
}

// RecoatTime returns the wait between coats in hours, the longest that sources say.
func (c Class) RecoatTime() figure.Figure {
	return c.typical("recoat", figure.Hours, c.Recoat, c.Recoat.High)
}

// UseTime returns the hours from the last coat to light use, the longest that sources say.
func (c Class) UseTime() figure.Figure {
	return c.typical("light use", figure.Hours, c.Use, c.Use.High)
}

// CureTime returns the hours from the last coat to full cure, the longest that sources say.
func (c Class) CureTime() figure.Figure {
	return c.typical("full cure", figure.Hours, c.Cure, c.Cure.High)
}

func (c Class) typical(name string, u figure.Unit, s table.Span, value float64) figure.Figure {
	words := c.Name + ": " + name + " " + figure.Digits(value, 3) + ", generic"
	if s.Source.Memory {
		words += " and from memory"
	}
	return figure.Of(name, value, u, nil).From(s.Source.String()).Assuming(words + "; the product's own sheet wins")
}

// maxCoats is more coats than anything gets; it keeps a mistyped number from being answered.
const maxCoats = 100

var quantityFormula = figure.Formula{
	Text: "V = area · coats ÷ coverage · (1 + spare)", Source: "arithmetic", Range: "bare wood's first coat takes more",
}

// Quantity returns the volume of finish in ml for an area in m², coats and a coverage in m²/L of one coat,
// with a spare in percent:
//
//	V = area · coats ÷ coverage · (1 + spare)
func Quantity(area float64, coats int, coverage, spare float64) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("area", area, figure.M2), within.Counted("coats", coats, 1, maxCoats),
		within.Positive("coverage", coverage, figure.M2PerL), within.Between("spare", spare, 0, 1000, figure.Percent))
	if err != nil {
		return figure.Figure{}, err
	}
	ml := area * float64(coats) / coverage * (1 + spare/100) * 1000
	if err := within.Finite("finish", ml, figure.ML); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("finish", ml, figure.ML, &quantityFormula, figure.In("area", area, figure.M2),
		figure.In("coats", float64(coats), figure.Count), figure.In("coverage", coverage, figure.M2PerL), figure.In("spare", spare, figure.Percent)), nil
}
