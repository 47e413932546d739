package stability

import (
	_ "embed"
	"fmt"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed standards.csv
var standardsCSV string

var standards = sync.OnceValue(func() map[string]table.Row {
	rows := map[string]table.Row{}
	for _, r := range table.Read(standardsCSV) {
		rows[r.Text("id")] = r
	}
	return rows
})

// TiltLimit returns the tilt in degrees that a standing piece should survive, 10° as published for
// household appliances. No standard asks it of a shop-made stand; it is a measure to judge by.
func TiltLimit() figure.Figure {
	r, _ := LookupRequirement("iec-60335-1-tilt") // a row of the table: there is always one
	return figure.Of("tilt to survive", r.Value, figure.Deg, nil).From(r.Source.String()).
		Assuming("10° as published for household appliances; furniture has no such figure of its own")
}

var (
	pushTest = figure.Formula{Text: "F = 13 % of W, at most 250 N", Source: "IEC 62368-1, 3rd edition, stability", Range: "audio, video and IT equipment, pushed level at up to 1.5 m"}
	downTest = figure.Formula{Text: "F = 50 % of W, at most 100 N", Source: "IEC 62368-1, 3rd edition, stability", Range: "audio, video and IT equipment, pressed straight down"}
)

// PushTest returns the level test push in newtons published for equipment of the given mass in kilograms:
// 13 % of its weight, at most 250 N.
func PushTest(kg float64) (figure.Figure, error) {
	return testForce("test push", &pushTest, "iec-62368-1-push", kg)
}

// DownTest returns the downward test force in newtons published for equipment of the given mass in
// kilograms: 50 % of its weight, at most 100 N.
func DownTest(kg float64) (figure.Figure, error) {
	return testForce("test load", &downTest, "iec-62368-1-down", kg)
}

func testForce(name string, f *figure.Formula, id string, kg float64) (figure.Figure, error) {
	if err := within.Positive("mass", kg, figure.Kg); err != nil {
		return figure.Figure{}, err
	}
	r, err := LookupRequirement(id)
	return figure.Of(name, r.Force(kg), figure.N, f, figure.In("W", Weight(kg), figure.N)), err
}

// Storage is what decides whether a piece falls under the standard for clothing storage.
type Storage struct {
	Clothing bool          // made to hold clothes; not shelving, a bookcase, or entertainment, office or dining furniture
	Height   length.Length // overall
	MassKg   float64       // empty
	Litres   float64       // enclosed storage: behind doors and in drawers
}

// cubicFoot is a cubic foot in litres, 28.316846592 exactly, from the international foot of 1959.
const cubicFoot = 28.316846592

// slack lets a value at a limit count as reaching it when its unit's conversion rounded it down.
const slack = 1 - 1e-9

// pound is the international pound of 1959 in kilograms, exact.
const pound = 0.45359237

// TipOverStandard tells whether the US tip-over standard for clothing storage, ASTM F2057-23, covers a
// piece, and why or why not. A free-standing piece that it does not cover can still hurt a child: an anchor
// to the wall is the usual caution for every tall one. Local law decides.
func TipOverStandard(s Storage) (covered bool, why string) {
	rows := standards()
	height, kg, litres := rows["cs01"].Inches("value"), rows["cs02"].Float("value")*pound, rows["cs03"].Float("value")*cubicFoot
	source := rows["cs01"].Source().String()
	switch {
	case !s.Clothing:
		return false, source + " covers clothing storage; shelving, bookcases, entertainment, office and dining furniture are not covered"
	case s.Height < height:
		return false, fmt.Sprintf("%s covers pieces from %s high", source, length.Sixteenth.Text(height))
	case s.MassKg < kg*slack:
		return false, fmt.Sprintf("%s covers pieces from %s kg", source, figure.Digits(kg, 3))
	case s.Litres < litres*slack:
		return false, fmt.Sprintf("%s covers pieces with %s litres of enclosed storage and more", source, figure.Digits(litres, 3))
	}
	return true, source + ": clothing storage of this height, mass and volume is covered"
}
