package part

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/piece"
	"rodwright/trade/adhesive"
)

var resinFormula = figure.Formula{
	Text: "V = Σ count · π/4 · long · wide · depth · shape · (1 + spare)", Source: "geometry",
	Range: "voids of oval outline; the spare covers soak-in, drips and what stays in the cup",
}

// FillOf returns a void as what is to be filled, with the given spare in percent: an oval at the face, as deep
// as its deepest place, with the share of that which its walls leave.
func FillOf(v piece.Void, spare float64) adhesive.Fill {
	shape := map[piece.Walls]float64{
		piece.BowlWalls: adhesive.Bowl, piece.StraightWalls: adhesive.Straight, piece.FunnelWalls: adhesive.Funnel,
	}[v.Walls]
	return adhesive.Fill{
		AreaMM2: math.Pi / 4 * v.Size[0].MM() * v.Size[1].MM(), Depth: v.Depth, Count: v.Count, Shape: shape, Spare: spare,
	}
}

// resin adds what the voids of all panels take, one supply for each class of resin in the order the document
// names them, with the shop's spare.
func (t *takeOff) resin() error {
	spare := 100 * t.s.Settings.Spare
	at := map[string]int{}
	for _, v := range t.doc.Voids {
		r, err := adhesive.LookupResin(v.Resin)
		if err != nil {
			return t.wrong(v.Pos, v.Name+": "+err.Error(), "")
		}
		q, err := FillOf(v, spare).Volume()
		if err != nil {
			return t.wrong(v.Pos, v.Name+": "+err.Error(), "write the size of one void and how many there are")
		}
		i, seen := at[r.ID]
		if !seen {
			i = len(t.list.Supplies)
			at[r.ID] = i
			t.list.Supplies = append(t.list.Supplies, Supply{
				Name: r.Name, Class: r.ID, Cautions: r.Cautions(), Assumed: []string{r.Assumed},
				Quantity: figure.Of("resin", 0, figure.ML, &resinFormula, figure.In("spare", spare, figure.Percent)),
			})
		}
		s := &t.list.Supplies[i]
		s.Quantity.Value += q.Value
		s.Quantity.Inputs = append(s.Quantity.Inputs, figure.InText(v.Name, fmt.Sprintf("%d of %s × %s × %s, %s",
			v.Count, figure.Digits(v.Size[0].MM(), 4), figure.Digits(v.Size[1].MM(), 4), figure.Show(v.Depth.MM(), figure.MM, t.doc.Fineness.Finer()), v.Walls)))
		if tag := t.kindOf(v.In); !slices.Contains(s.For, tag) {
			s.For = append(s.For, tag)
		}
	}
	return nil
}

// kindOf returns the tag of the kind of part that the named panel is.
func (t *takeOff) kindOf(panel string) string {
	for _, p := range t.list.Parts {
		if p.Kind == Panel && slices.ContainsFunc(p.Indexes, func(i int) bool { return t.r.Panels[i].Name == panel }) {
			return p.Tag
		}
	}
	return ""
}
