package steps

import (
	"fmt"

	"rodwright/cut"
	"rodwright/part"
	"rodwright/shop"
)

// glueUp plans the glue-up of one kind of panel and the flattening of what comes out of the clamps, and
// returns the last step. A panel of one board is neither glued nor flattened again.
func (p *planner) glueUp(q part.Part, a *cut.Answer, after int) int {
	strips := p.stripsOf(q, a)
	if strips < 2 {
		return after
	}
	joints := strips - 1
	glue := p.gluingOf(q)
	batches := p.batches(glue.clamps * q.Count)
	j := job{
		work: "glue", parts: q.Tags, units: float64(joints * q.Count), settings: q.Count, after: before(after),
		title:    fmt.Sprintf("Glue up %s: %s, %s in each", titled(q), several(strips, "strip"), several(joints, "joint")),
		measures: p.stripLines(q, a),
		waitH:    glue.restH + float64(batches-1)*glue.clampH,
		cautions: glue.cautions, assumed: glue.assumed, clamps: p.held(glue.clamps * q.Count), clampH: glue.clampH * float64(batches),
	}
	j.measures = append(j.measures, glue.lines...)
	j.measures = append(j.measures, "dry-clamp first: no joint may show light", fmt.Sprintf("not planed or sanded before %g h", glue.restH))
	if batches > 1 {
		j.measures = append(j.measures, fmt.Sprintf("%s: %d glue-ups one after the other, each %g h in the clamps", p.clampsOwned(), batches, glue.clampH))
	}
	glued := p.do(j)
	return p.do(job{
		work: "flatten-panel", parts: q.Tags, units: 2 * blankM2([]part.Part{q}), after: before(glued),
		title: fmt.Sprintf("Flatten both faces of %s to %s", titled(q), p.show(q.Finished[2])),
		fits:  func(t shop.Tool) bool { return t.Width == 0 || t.Width >= q.Blank[1] },
	})
}

// stripsOf counts the strips in one panel of the kind.
func (p *planner) stripsOf(q part.Part, a *cut.Answer) int {
	if a != nil {
		for _, g := range a.Panels {
			if belongs(q, g.Tag) {
				return len(g.Strips)
			}
		}
	}
	return q.GlueLines + 1
}

// belongs reports whether a tag names the part itself or one physical piece of it.
func belongs(q part.Part, tag string) bool {
	if tag == q.Tag {
		return true
	}
	for _, t := range q.Tags {
		if t == tag {
			return true
		}
	}
	return false
}

// stripLines says which strip of which board comes where in each panel, rings turned about.
func (p *planner) stripLines(q part.Part, a *cut.Answer) []string {
	if a == nil {
		return nil
	}
	var out []string
	for _, g := range a.Panels {
		if !belongs(q, g.Tag) {
			continue
		}
		line := g.Tag + ", from the datum edge:"
		for i, s := range g.Strips {
			if i > 0 {
				line += ","
			}
			line += fmt.Sprintf(" %s of %s", p.show(s.NetWidth), boardName(a, s.Board))
			if s.Ring != cut.NoRing {
				line += ", rings " + string(s.Ring)
			}
		}
		out = append(out, line)
	}
	return out
}

// batches is how often the shop's clamps must be used for the number wanted at once.
func (p *planner) batches(clamps int) int {
	owned := 0
	if t, ok := p.s.Tool("bar-clamp"); ok {
		owned = t.Count
	}
	if owned == 0 || clamps <= owned {
		return 1
	}
	return (clamps + owned - 1) / owned
}

// held is how many of the wanted clamps the shop can give at once.
func (p *planner) held(wanted int) int {
	t, _ := p.s.Tool("bar-clamp")
	return min(wanted, t.Count)
}

func (p *planner) clampsOwned() string {
	t, _ := p.s.Tool("bar-clamp")
	return several(t.Count, "clamp") + " in the shop"
}
