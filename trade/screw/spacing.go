package screw

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

const spacingSource = "National Design Specification for Wood Construction, Commentary, recommended spacing of wood screws, from memory"

var (
	edgeFormula = figure.Formula{
		Text: "to the edge ≥ 2.5·D", Source: spacingSource, Range: "steel on wood, pilot bored or not; D the shank",
	}
	endFormula = figure.Formula{
		Text: "to the end ≥ 5·D bored, 10·D not bored", Source: spacingSource, Range: "steel on wood, load towards the end; 3 and 5·D where it pushes away from it",
	}
	besideFormula = figure.Formula{
		Text: "along the grain ≥ 5·D bored, 10·D not bored", Source: spacingSource, Range: "steel on wood; across the grain half of it",
	}
)

// Spacing is how far a screw keeps from the ends of its wood and from the next screw so that the wood does
// not split. All are in mm.
type Spacing struct {
	Edge  figure.Figure // to the edge that runs with the grain
	End   figure.Figure // to the end, where the grain runs out
	Along figure.Figure // to the next screw along the grain; across it half of this
}

// Spaced returns the distances that screws of the given shank diameter keep through steel into wood, in a
// bored pilot or without: without one the ends are twice as far.
func Spaced(shank length.Length, bored bool) (Spacing, error) {
	if err := within.Between("screw diameter", shank.MM(), leastDiameter, mostDiameter, figure.MM); err != nil {
		return Spacing{}, err
	}
	far := int64(10)
	if bored {
		far = 5
	}
	d := figure.InLength("D", shank)
	return Spacing{
		Edge:  figure.OfLength("least to the edge", shank.Scale(5, 2), &edgeFormula, d),
		End:   figure.OfLength("least to the end", shank.Scale(far, 1), &endFormula, d),
		Along: figure.OfLength("least between screws", shank.Scale(far, 1), &besideFormula, d),
	}, nil
}
