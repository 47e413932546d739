package adhesive

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

// The specific gravities between which the handbook's pressures are laid: it names low-density and the
// highest-density woods only, so the ends are this program's choice, common practice, no source.
const (
	lightG = 0.30
	heavyG = 0.85
)

var pressureFormula = figure.Formula{
	Text:   "p = 100 psi + (G − 0.30) ÷ 0.55 · 150 psi, from 100 to 250 psi",
	Source: "Wood Handbook FPL-GTR-282 (2021) ch. 10: 100 psi for low-density, 250 psi for the densest wood, from memory",
	Range:  "glues that want pressure; not epoxy",
}

// Pressure returns the bonding pressure in MPa for a species, between the handbook's 100 psi for light and
// 250 psi for the densest wood by its specific gravity. Glue makers' advice lies about it: see [Advice].
func Pressure(s wood.Species) (figure.Figure, error) {
	if math.IsNaN(s.SG12) {
		return figure.Figure{}, &within.Error{Name: "specific gravity of " + s.Name, Got: "not in the table", Want: "known; give the pressure instead"}
	}
	if err := within.Between("specific gravity", s.SG12, 0.1, 1.3, figure.Ratio); err != nil {
		return figure.Figure{}, err
	}
	d := adhesives()
	low, high := d.span("any", "pressure low density").Low, d.span("any", "pressure high density").High
	share := min(1, max(0, (s.SG12-lightG)/(heavyG-lightG)))
	return figure.Of("bonding pressure", low+share*(high-low), figure.MPa, &pressureFormula, figure.In("G", s.SG12, figure.Ratio)).
		From(s.Source.String()).
		Assuming("pressure by specific gravity, 100 psi at 0.30 and below, 250 psi at 0.85 and above; the glue's own sheet wins"), nil
}

// Advice returns a glue maker's span of pressure in MPa for a species: softwood and light hardwood, medium,
// or dense hardwood, told apart at specific gravities of 0.45 and 0.58.
func Advice(s wood.Species) table.Span {
	d := adhesives()
	switch {
	case s.SG12 < 0.45:
		return d.span("pva", "pressure softwood")
	case s.SG12 < 0.58:
		return d.span("pva", "pressure medium")
	}
	return d.span("pva", "pressure hardwood")
}

var (
	forceFormula = figure.Formula{
		Text: "F = p · length · thickness", Source: "arithmetic",
		Range: "one joint: parallel joints are squeezed one through the other by the same clamps",
	}
	countFormula   = figure.Formula{Text: "n = ⌈F ÷ clamp force⌉", Source: "arithmetic", Range: "clamp force by hand varies by ± 40 %"}
	spacingFormula = figure.Formula{
		Text: "spacing ≤ pad + 2 · edge strip", Source: "common practice, no source",
		Range: "pressure spreads at 45° from the pad through the strip",
	}
	fieldFormula = figure.Formula{
		Text: "n = ⌈(length − 2 · 2 in) ÷ spacing⌉ + 1", Source: "a glue maker's guide: first clamp 1 1/2 to 2 in from the end",
		Range: "at least two clamps",
	}
)

// fromEnd is where the first clamp stands: 2 in from the end of the joint (a glue maker's guide).
const fromEnd = 2 * length.Inch

// Joint is one glue line to be clamped.
type Joint struct {
	Length, Thickness length.Length
	Pressure          float64       // MPa
	ClampForce        float64       // N, of one clamp
	Pad, Strip        length.Length // width of a clamp's pad and of the edge strip it bears on; zero: not known
}

// Clamping is what a joint takes.
type Clamping struct {
	Force     figure.Figure // N, on the joint
	Count     figure.Figure // clamps to reach the pressure
	Spacing   figure.Figure // mm, greatest
	BySpacing figure.Figure // clamps so that no gap is wider than that
}

// Clamp returns the clamps for one joint, or for several parallel ones in one panel: the same clamps squeeze
// them all, so the count goes by the area of one. Makers use far fewer; such a joint is under its target,
// not wrong.
func Clamp(j Joint) (Clamping, error) {
	err := cmp.Or(within.Length("length", j.Length), within.Length("thickness", j.Thickness),
		within.Positive("pressure", j.Pressure, figure.MPa), within.Positive("clamp force", j.ClampForce, figure.N),
		within.Room("pad", j.Pad), within.Room("edge strip", j.Strip))
	if err != nil {
		return Clamping{}, err
	}
	force := j.Pressure * j.Length.MM() * j.Thickness.MM()
	n, ok := within.Whole(force / j.ClampForce)
	if !ok {
		return Clamping{}, &within.Error{Name: "clamp force", Got: figure.Digits(j.ClampForce, 3) + " N", Want: "enough to need fewer than a thousand million clamps"}
	}
	spacing := j.spacing()
	return Clamping{
		Force: figure.Of("force on the joint", force, figure.N, &forceFormula, figure.In("p", j.Pressure, figure.MPa),
			figure.InLength("length", j.Length), figure.InLength("thickness", j.Thickness)),
		Count: figure.Of("clamps", float64(n), figure.Count, &countFormula,
			figure.In("F", force, figure.N), figure.In("clamp force", j.ClampForce, figure.N)),
		Spacing:   spacing,
		BySpacing: field(j.Length, spacing),
	}, nil
}

// spacing is pad + 2 · strip where both are known, else the middle of the guide's 8 to 12 in.
func (j Joint) spacing() figure.Figure {
	if j.Pad > 0 && j.Strip > 0 {
		return figure.OfLength("spacing of the clamps", j.Pad+2*j.Strip, &spacingFormula,
			figure.InLength("pad", j.Pad), figure.InLength("edge strip", j.Strip))
	}
	s := adhesives().span("pva", "spacing")
	return figure.Of("spacing of the clamps", s.Middle()*length.Inch.MM(), figure.MM, nil).From(s.Source.String()).
		Assuming("clamps 8 to 12 in apart, as pad and edge strip are not given")
}

func field(long length.Length, spacing figure.Figure) figure.Figure {
	gaps, _ := within.Whole((long - 2*fromEnd).MM() / max(1, spacing.Value)) // no pad is under 1 mm
	return figure.Of("clamps by spacing", float64(max(2, gaps+1)), figure.Count, &fieldFormula,
		figure.InLength("length", long), figure.In("spacing", spacing.Value, figure.MM))
}
