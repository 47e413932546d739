package steps

import (
	"fmt"
	"slices"

	"rodwright/figure"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/adhesive"
)

// pour plans the filling of the voids in one kind of panel, after it is shaped and before it is sanded, and
// returns the last step of it. A void of more than one pour's depth is filled in layers; nothing is sanded
// before the last is hard right through.
func (p *planner) pour(q part.Part, after int) int {
	if p.r.Doc == nil {
		return after
	}
	for _, v := range p.r.Doc.Voids {
		var tags []string
		for n, i := range q.Indexes {
			if p.r.Panels[i].Name == v.In {
				tags = append(tags, q.Tags[n])
			}
		}
		r, err := adhesive.LookupResin(v.Resin)
		if len(tags) == 0 || err != nil { // the take-off has refused a resin that no table has
			continue
		}
		after = p.pourOne(q, v, r, tags, after)
	}
	return after
}

func (p *planner) pourOne(q part.Part, v piece.Void, r adhesive.Resin, tags []string, after int) int {
	lines, pours := p.pourLines(q, v, r)
	cure := r.Cure()
	return p.do(job{
		work: "pour", parts: tags, units: float64(v.Count * pours), settings: pours, after: before(after),
		title:    fmt.Sprintf("Fill %s (%s) in %s with %s, in %s", several(v.Count, "void"), v.Name, titled(q), r.Name, several(pours, "pour")),
		measures: lines, cautions: r.Cautions(), assumed: slices.Concat([]string{r.Assumed}, cure.Assumed),
		waitH: cure.Value + float64(pours-1)*r.TackFree.High,
	})
}

// pourLines says how much is mixed, how many pours there are, and how the void is dammed.
func (p *planner) pourLines(q part.Part, v piece.Void, r adhesive.Resin) (lines []string, pours int) {
	pours = 1
	if n, err := adhesive.Pours(v.Depth, r.GreatestPour()); err == nil {
		pours = int(n.Value)
	}
	if ml, err := part.FillOf(v, 100*p.s.Settings.Spare).Volume(); err == nil {
		if a, b, err := adhesive.Mix(ml.Value, r.Ratio[0], r.Ratio[1]); err == nil {
			lines = append(lines, fmt.Sprintf("%s ml in all, spare for soak-in included: %s ml resin and %s ml hardener by volume, if the label says no other ratio",
				figure.Digits(ml.Value, 3), figure.Digits(a.Value, 3), figure.Digits(b.Value, 3)))
		}
	}
	if pours > 1 {
		lines = append(lines, fmt.Sprintf("each pour at most %s deep, the next when the last is tacky, after up to %s", p.show(r.GreatestPour()), hours(r.TackFree.High)))
	}
	if v.Depth >= q.Finished[2] {
		lines = append(lines, "it goes right through: tape the show face tight and pour from the back, so that bubbles rise to the hidden face")
	} else {
		lines = append(lines, "dam the rim with tape or wax where it runs out to an edge")
	}
	return append(lines,
		"brush a thin coat into the dry walls first: it seals them, and fewer bubbles rise",
		"the level drops as resin soaks in: keep some back for a top-up, fill a little proud",
		"sand after full cure, with light pressure and fresh paper"), pours
}
