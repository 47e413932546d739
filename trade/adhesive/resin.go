package adhesive

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

// Resin is a class of filling resin.
type Resin struct {
	ID       string // epoxy-table-top, epoxy-deep-pour, epoxy-coating
	Name     string
	Ratio    [2]float64 // resin to hardener by volume, the usual one
	Depth    table.Span // inches, greatest depth of one pour
	Density  table.Span // g/ml, mixed
	TackFree table.Span // hours
	Cured    table.Span // hours
	Open     table.Span // hours until it gels in a layer
	Assumed  string     // what of it is generic, in words
}

func resinIDs() []string { return []string{"epoxy-table-top", "epoxy-deep-pour", "epoxy-coating"} }

// Resins returns the ids of all resins, the default first.
func Resins() []string { return resinIDs() }

// LookupResin returns the resin with the given id. The error is a *table.UnknownError.
func LookupResin(id string) (Resin, error) {
	for _, known := range resinIDs() {
		if id == known {
			return resin(id), nil
		}
	}
	return Resin{}, table.Unknown("resin", id, resinIDs())
}

func resin(id string) Resin {
	d := adhesives()
	r := Resin{
		ID: id, Name: d.names[id], Ratio: [2]float64{d.span(id, "ratio").Low, 1}, Depth: d.span(id, "pour depth"),
		Density: d.span(id, "density"), TackFree: d.span(id, "tack-free"), Cured: d.span(id, "full cure"), Open: d.span(id, "open"),
	}
	r.Assumed = r.Name + ": generic class; ratio, pour depth and times of the product in hand win"
	return r
}

// Cautions returns what can go wrong or hurt with the resin, in words.
func (r Resin) Cautions() []string { return append([]string(nil), adhesives().cautions[r.ID]...) }

// GreatestPour returns the depth of one pour, at the shallow end of what sources allow.
func (r Resin) GreatestPour() length.Length { return length.FromInches(r.Depth.Low) }

// Cure returns the time in hours until resin can be sanded: full cure.
func (r Resin) Cure() figure.Figure {
	return typical("full cure", r.Cured.High, figure.Hours, r.Cured, r.Name)
}

// Shapes of voids: the share of area × depth that they hold, from geometry.
const (
	Straight = 1.0       // walls straight down
	Bowl     = 0.5       // a paraboloid, round-bottomed as knots are
	Funnel   = 1.0 / 3.0 // a cone
)

// Fill is a number of equal voids to be filled.
type Fill struct {
	AreaMM2 float64       // of one, at the face
	Depth   length.Length // at its deepest
	Count   int
	Shape   float64 // share of area × depth that it holds: [Straight], [Bowl], [Funnel] or between
	Spare   float64 // percent more for soak-in, drips and what stays in the cup
}

var (
	fillFormula = figure.Formula{
		Text: "V = count · area · depth · shape · (1 + spare)", Source: "geometry",
		Range: "the level drops as resin soaks in: keep some for a top-up",
	}
	poursFormula = figure.Formula{Text: "pours = ⌈depth ÷ greatest pour⌉", Source: "arithmetic", Range: "each on the last while it is tacky, or sanded after its cure"}
	mixFormula   = figure.Formula{Text: "part = V · share ÷ (a + b)", Source: "arithmetic", Range: "ratio by volume; a mix 2 to 5 % off does not cure"}
	bulkFormula  = figure.Formula{Text: "m = V · density", Source: "arithmetic"}
)

// Volume returns the volume of resin in ml:
//
//	V = count · area · depth · shape · (1 + spare)
func (f Fill) Volume() (figure.Figure, error) {
	err := cmp.Or(within.Positive("area", f.AreaMM2, figure.SquareMM), within.Length("depth", f.Depth), within.Counted("count", f.Count, 1, 100_000),
		within.Between("shape", f.Shape, 0.05, 1, figure.Ratio), within.Between("spare", f.Spare, 0, 1000, figure.Percent))
	if err != nil {
		return figure.Figure{}, err
	}
	ml := float64(f.Count) * f.AreaMM2 * f.Depth.MM() * f.Shape * (1 + f.Spare/100) / 1000
	return figure.Of("resin", ml, figure.ML, &fillFormula, figure.In("count", float64(f.Count), figure.Count),
		figure.In("area", f.AreaMM2, figure.SquareMM), figure.InLength("depth", f.Depth),
		figure.In("shape", f.Shape, figure.Ratio), figure.In("spare", f.Spare, figure.Percent)), nil
}

// Pours returns how many pours a depth takes when no pour may be deeper than greatest.
func Pours(depth, greatest length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("depth", depth), within.Between("greatest pour", greatest.MM(), 0.1, length.Max.MM(), figure.MM)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("pours", float64(within.Cover(depth, greatest)), figure.Count, &poursFormula,
		figure.InLength("depth", depth), figure.InLength("greatest pour", greatest)), nil
}

// Mix splits a volume in ml into resin and hardener by a ratio a : b by volume.
func Mix(ml, a, b float64) (partA, partB figure.Figure, err error) {
	err = cmp.Or(within.NotNegative("volume", ml, figure.ML), within.Between("resin's part", a, 0.01, 1000, figure.Ratio), within.Between("hardener's part", b, 0.01, 1000, figure.Ratio))
	if err != nil {
		return figure.Figure{}, figure.Figure{}, err
	}
	in := []figure.Input{figure.In("V", ml, figure.ML), figure.InText("ratio", figure.Digits(a, 3)+":"+figure.Digits(b, 3))}
	return figure.Of("resin", ml*a/(a+b), figure.ML, &mixFormula, in...), figure.Of("hardener", ml*b/(a+b), figure.ML, &mixFormula, in...), nil
}

// Bulk returns the mass in kg of a volume of resin in ml at a density in g/ml. Pot life shrinks with it.
func Bulk(ml, density float64) (figure.Figure, error) {
	if err := cmp.Or(within.NotNegative("volume", ml, figure.ML), within.Between("density", density, 0.5, 3, figure.Ratio)); err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("mass", ml*density/1000, figure.Kg, &bulkFormula, figure.In("V", ml, figure.ML), figure.InText("density", figure.Digits(density, 3)+" g/ml")), nil
}
