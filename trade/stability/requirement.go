package stability

import (
	_ "embed"
	"fmt"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed requirements.csv
var requirementsCSV string

// RequirementKind is what a published requirement asks of a piece.
type RequirementKind string

// The kinds of requirements. Of [StorageRequirement] and [TestRequirement] only the scope is known here.
const (
	TiltRequirement    RequirementKind = "tilt"    // it stands on a plane at Value degrees
	PushRequirement    RequirementKind = "push"    // it stands a level push of Value percent of its weight, at most Most, at up to UpTo
	DownRequirement    RequirementKind = "down"    // it stands Value percent of its weight, at most Most, straight down
	StorageRequirement RequirementKind = "storage" // see [TipOverStandard]
	TestRequirement    RequirementKind = "test"    // its forces are not known here
)

// Requirement is one published requirement on how a thing stands. None is published for shop-made pieces on
// pipe: a maker who names one asks it of a piece by choice.
type Requirement struct {
	ID          string // our own, spelled from the publication's number
	Kind        RequirementKind
	Value       float64       // degrees, or percent of the weight
	Most        float64       // N; zero where there is no bound
	UpTo        length.Length // greatest height of a push; zero where there is none
	LeastKg     float64       // covered from this mass, or from LeastHeight; zero where any is
	LeastHeight length.Length
	Title       string // of the publication
	Scope       string // what it is published for
	Words       string // what it asks
	Source      table.Source
}

var requirements = sync.OnceValue(func() (out []Requirement) {
	number := func(r table.Row, column string) float64 {
		if !r.Has(column) {
			return 0
		}
		return r.Float(column)
	}
	for _, r := range table.Read(requirementsCSV) {
		out = append(out, Requirement{
			ID: r.Text("id"), Kind: RequirementKind(r.Text("kind")), Value: number(r, "value"), Most: number(r, "most_n"),
			UpTo: length.FromMM(1000 * number(r, "up_to_m")), LeastKg: number(r, "least_kg"), LeastHeight: length.FromMM(1000 * number(r, "least_m")),
			Title: r.Text("title"), Scope: r.Text("scope"), Words: r.Text("words"), Source: r.Source(),
		})
	}
	return out
})

// LookupRequirement returns the requirement with the given id. The error is a *table.UnknownError.
func LookupRequirement(id string) (Requirement, error) {
	for _, r := range requirements() {
		if r.ID == id {
			return r, nil
		}
	}
	return Requirement{}, table.Unknown("standard", id, RequirementIDs())
}

// RequirementIDs returns the ids of all requirements, tilts first.
func RequirementIDs() (ids []string) {
	for _, r := range requirements() {
		ids = append(ids, r.ID)
	}
	return ids
}

// Covers reports whether a thing of the given mass in kilograms and overall height is large enough for the
// requirement, and what is covered where it is not.
func (r Requirement) Covers(kg float64, height length.Length) (bool, string) {
	heavy := r.LeastKg > 0 && kg >= r.LeastKg*slack
	tall := r.LeastHeight > 0 && height >= r.LeastHeight
	switch {
	case r.LeastKg == 0 && r.LeastHeight == 0 || heavy || tall:
		return true, ""
	case r.LeastHeight == 0:
		return false, fmt.Sprintf("%s covers what has %s kg and more", r.Title, figure.Digits(r.LeastKg, 3))
	}
	return false, fmt.Sprintf("%s covers what has %s kg and more, or is %s m high and more", r.Title, figure.Digits(r.LeastKg, 3), figure.Digits(r.LeastHeight.MM()/1000, 3))
}

// Force returns the test force in newtons of a push or a load straight down, from the thing's mass in
// kilograms: the requirement's percentage of the weight, at most its bound.
func (r Requirement) Force(kg float64) float64 {
	f := Weight(kg) * r.Value / 100
	if r.Most > 0 {
		f = min(f, r.Most)
	}
	return f
}
