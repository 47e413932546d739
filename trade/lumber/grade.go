package lumber

import (
	_ "embed"
	"math"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

var (
	//go:embed grades.csv
	gradesCSV string
	//go:embed yields.csv
	yieldsCSV string
)

// Grade is a grade of hardwood by the NHLA rules.
type Grade struct {
	ID           string // fas, selects, no1-common …
	Name         string
	LeastWidth   length.Length // of a board
	LeastLength  length.Length
	LeastCutting string  // smallest clear cutting, inches × feet
	ClearYield   float64 // percent of the face in clear cuttings, at least
	UnitsPerSM   int     // cutting units of 1 in × 1 ft needed for each foot of surface measure
	FaceRule     string
	Source       table.Source

	BuyLow, BuyHigh float64 // yield in percent that a buyer of a small job reckons with
	BuySource       table.Source

	add, divide, most int // cuttings allowed: (SM + add) ÷ divide, at most most; divide 0: without limit
}

var grades = sync.OnceValue(func() []Grade {
	yields := map[string]table.Row{}
	for _, r := range table.Read(yieldsCSV) {
		yields[r.Text("grade")] = r
	}
	var out []Grade
	for _, r := range table.Read(gradesCSV) {
		g := Grade{
			ID: r.Text("id"), Name: r.Text("grade"), LeastWidth: r.Inches("min_board_width_in"),
			LeastLength: 12 * r.Inches("min_board_length_ft"), LeastCutting: r.Text("min_cutting_in_x_ft"),
			ClearYield: r.Float("min_clear_yield_pct"), FaceRule: r.Text("face_rule"), Source: r.Source(),
		}
		g.UnitsPerSM, _ = r.Int("cutting_units_per_sm")
		g.add, _ = r.Int("cuttings_add")
		g.divide, _ = r.Int("cuttings_divide")
		g.most, _ = r.Int("cuttings_max")
		g.BuyLow, g.BuyHigh, g.BuySource = g.ClearYield, g.ClearYield, g.Source
		if y, ok := yields[g.ID]; ok {
			g.BuyLow, g.BuyHigh, g.BuySource = y.Float("low_pct"), y.Float("high_pct"), y.Source()
		}
		out = append(out, g)
	}
	return out
})

// Grades returns every grade, best first.
func Grades() []Grade { return append([]Grade(nil), grades()...) }

// LookupGrade returns the grade with the given id. The error is a *table.UnknownError.
func LookupGrade(id string) (Grade, error) {
	var known []string
	for _, g := range grades() {
		if g.ID == id {
			return g, nil
		}
		known = append(known, g.ID)
	}
	return Grade{}, table.Unknown("grade", id, known)
}

// Cuttings returns how many clear cuttings a board of the given surface measure may take to make its
// grade; without reports that the grade sets no limit. Fractions of a cutting don't count.
func (g Grade) Cuttings(surface int) (n int, without bool) {
	if g.divide == 0 {
		return 0, true
	}
	return max(0, min((surface+g.add)/g.divide, g.most)), false
}

// Units returns the clear cutting units, of 1 in by 1 ft, that a board of the given surface measure needs.
func (g Grade) Units(surface int) int { return max(0, surface) * g.UnitsPerSM }

var gradeFormula = figure.Formula{
	Text: "buy = net ÷ yield", Source: "common practice, no source; clear yields after the NHLA grades",
	Range: "small jobs; one-off pieces and long wide parts need more, short ones less",
}

// Order returns the least and the most to order, in board feet, of a grade for a net need of board feet.
func (g Grade) Order(net float64) (least, most figure.Figure, err error) {
	if err := within.NotNegative("net", net, figure.BoardFeet); err != nil {
		return figure.Figure{}, figure.Figure{}, err
	}
	of := func(name string, yield float64) figure.Figure {
		return figure.Of(name, net*100/yield, figure.BoardFeet, &gradeFormula,
			figure.In("net", net, figure.BoardFeet), figure.In("yield", yield, figure.Percent)).
			From(g.BuySource.String()).
			Assuming("yield of " + g.Name + ": " + figure.Digits(yield, 3) + " %, until the shop's own history says otherwise")
	}
	return of("least to order", math.Max(g.BuyLow, g.BuyHigh)), of("most to order", math.Min(g.BuyLow, g.BuyHigh)), nil
}
