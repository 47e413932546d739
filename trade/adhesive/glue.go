package adhesive

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

// Glue is a class of wood glue.
type Glue struct {
	ID           string // pva, polyurethane, epoxy
	Name         string
	SpreadSpan   table.Span // g/m² of glue line
	Open         table.Span // hours from spreading to closing
	Clamped      table.Span // hours in the clamps
	ClampedBent  table.Span // hours in the clamps for a joint under stress
	Rested       table.Span // hours before stressing or surfacing
	Moisture     table.Span // percent, of the wood
	Acclimatised table.Span // hours that boards lie in the shop first
	LowestF      table.Span // degrees Fahrenheit, of use
	ContactOnly  bool       // wants no clamping force, only contact
}

// glueIDs lists the glues, the default first.
func glueIDs() []string { return []string{"pva", "polyurethane", "epoxy"} }

// Glues returns the ids of all glues, the default first.
func Glues() []string { return glueIDs() }

// LookupGlue returns the glue with the given id. The error is a *table.UnknownError.
func LookupGlue(id string) (Glue, error) {
	for _, known := range glueIDs() {
		if id == known {
			return glue(id), nil
		}
	}
	return Glue{}, table.Unknown("glue", id, glueIDs())
}

func glue(id string) Glue {
	d := adhesives()
	return Glue{
		ID: id, Name: d.names[id], ContactOnly: id == "epoxy",
		SpreadSpan: d.span(id, "spread"), Open: d.span(id, "open"), Clamped: d.span(id, "clamp"), ClampedBent: d.span(id, "clamp stressed"),
		Rested: d.span(id, "rest"), Moisture: d.span(id, "moisture"), Acclimatised: d.span(id, "acclimatise"), LowestF: d.span(id, "lowest temperature"),
	}
}

// Cautions returns what can go wrong or hurt with the glue, in words.
func (g Glue) Cautions() []string { return append([]string(nil), adhesives().cautions[g.ID]...) }

// Spread returns the mass of glue on a joint, in g/m², at the middle of what sources say.
func (g Glue) Spread() figure.Figure {
	return typical("spread", g.SpreadSpan.Middle(), figure.GramPerM2, g.SpreadSpan, g.Name)
}

// OpenTime returns the time from spreading to closing in hours, the least that sources say: work to it.
func (g Glue) OpenTime() figure.Figure {
	return typical("open time", g.Open.Low, figure.Hours, g.Open, g.Name)
}

// ClampTime returns the time in the clamps in hours, the longest that sources say for an unstressed joint.
func (g Glue) ClampTime() figure.Figure {
	return typical("clamp time", g.Clamped.High, figure.Hours, g.Clamped, g.Name)
}

// Rest returns the time in hours before a glued panel is planed, sanded or stressed, the longest that
// sources say: glue swells the joint line, and wood surfaced too soon sinks there later.
func (g Glue) Rest() figure.Figure {
	return typical("rest before surfacing", g.Rested.High, figure.Hours, g.Rested, g.Name)
}

var massFormula = figure.Formula{Text: "m = joints · length · thickness · spread", Source: "arithmetic", Range: "glue on one face of each joint"}

// maxJoints is more joints than any panel has; it keeps a mistyped number from being answered.
const maxJoints = 10_000

// Mass returns the mass of glue in kg for a number of edge joints of the given length and thickness, at a
// spread in g/m²:
//
//	m = joints · length · thickness · spread
func Mass(long, thickness length.Length, joints int, spread float64) (figure.Figure, error) {
	err := cmp.Or(within.Length("length", long), within.Length("thickness", thickness),
		within.Counted("joints", joints, 0, maxJoints), within.Positive("spread", spread, figure.GramPerM2))
	if err != nil {
		return figure.Figure{}, err
	}
	m2 := float64(joints) * long.MM() * thickness.MM() / 1e6
	return figure.Of("glue", m2*spread/1000, figure.Kg, &massFormula,
		figure.In("joints", float64(joints), figure.Count), figure.InLength("length", long), figure.InLength("thickness", thickness),
		figure.In("spread", spread, figure.GramPerM2)), nil
}
