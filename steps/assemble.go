package steps

import (
	"fmt"
	"slices"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// dryFit tries the frame by hand and returns the step.
func (p *planner) dryFit(after ...int) int {
	if len(p.r.Sticks) == 0 {
		return 0
	}
	return p.do(job{
		work: "dry-fit", parts: once(append(slices.Clone(p.list.StickTags), p.list.NodeTags...)), units: float64(2 * len(p.r.Sticks)), after: before(after...),
		title:    fmt.Sprintf("Put the frame together by hand: %s, %s; try the panels in it", several(len(p.r.Sticks), "pipe"), several(p.list.Totals.Fittings, "fitting")),
		measures: []string{"hand-tight it is longer than it will be: every joint still goes in by a few turns; cut nothing by this measure"},
		cautions: Cautions("frame"),
	})
}

// vise wrenches every flange and union half onto its pipe in the vise, before the frame is put together
// and before any flange is screwed to wood.
func (p *planner) vise(after int) int {
	var parts, lines, kinds []string
	joints := 0
	for i, n := range p.r.Nodes {
		if n.Kind != pipe.Flange && n.Kind != pipe.Union {
			continue
		}
		what := "flange"
		if n.Kind == pipe.Union {
			what = "one half of union"
			kinds = append(kinds, "union halves")
		} else {
			kinds = append(kinds, "flanges")
		}
		for _, s := range n.Sticks {
			lines = append(lines, fmt.Sprintf("%s %s on %s (%s)", what, p.list.NodeTags[i], p.list.StickTags[s], n.Place))
			parts = append(parts, p.list.StickTags[s])
			joints++
		}
		parts = append(parts, p.list.NodeTags[i])
	}
	if joints == 0 {
		return after
	}
	lines = append(lines, "a taper thread is only ever tightened: never turn one back to make it point right")
	return p.do(job{
		work: "wrench", parts: once(parts), units: float64(joints), after: before(after), measures: lines,
		title: fmt.Sprintf("Wrench %s onto their pipes in the vise, before anything is screwed to wood: %s", phrase(once(kinds)), several(joints, "joint")),
	})
}

// frame puts the frame together, laying panels that posts pass through in between, and closes the loops
// at their unions last. It returns the last step.
func (p *planner) frame(after int) int {
	g := newGrower(p.r)
	through := p.throughPanels()
	for _, t := range through {
		for _, s := range t.sticks {
			g.blocked[s] = true
		}
	}
	done := 0
	for {
		g.grow()
		after = p.joins(g, g.joins[done:], after)
		done = len(g.joins)
		if len(through) == 0 {
			break
		}
		after = p.layThrough(through[0], after)
		through = through[1:]
		p.unblock(g, through)
	}
	return p.unions(after)
}

// unblock frees the sticks that no panel still to come must be laid for.
func (p *planner) unblock(g *grower, through []throughPanel) {
	clear(g.blocked)
	for _, t := range through {
		for _, s := range t.sticks {
			g.blocked[s] = true
		}
	}
}

// throughPanel is a panel with closed holes that posts pass through: it must lie there before they are
// screwed in from above.
type throughPanel struct {
	panel  int
	sticks []int
}

// throughPanels returns the panels that posts pass through, from below upwards.
func (p *planner) throughPanels() []throughPanel {
	var out []throughPanel
	for i, flat := range p.r.Panels {
		var sticks []int
		for _, f := range flat.Features {
			if f.Kind == piece.HoleFeature && f.Stick >= 0 {
				sticks = append(sticks, f.Stick)
			}
		}
		if len(sticks) > 0 {
			out = append(out, throughPanel{i, sticks})
		}
	}
	slices.SortStableFunc(out, func(a, b throughPanel) int {
		za, zb := p.r.Panels[a.panel].Min.Z, p.r.Panels[b.panel].Min.Z
		return int(min(max(za-zb, -1), 1))
	})
	return out
}

// layThrough lays a panel in the half-built frame.
func (p *planner) layThrough(t throughPanel, after int) int {
	tag := p.list.PanelTags[t.panel]
	p.laid[t.panel] = true
	var lines []string
	for _, s := range t.sticks {
		lines = append(lines, fmt.Sprintf("%s (%s) goes down through its hole and is screwed in from above", p.list.StickTags[s], p.r.Sticks[s].Name))
	}
	return p.do(job{
		work: "lay", parts: []string{tag}, units: 1, after: before(after, p.handled), measures: append(lines, p.stains(t.panel)...),
		title:    fmt.Sprintf("Lay %s %s in its place now: posts pass through it", p.r.Panels[t.panel].Name, tag),
		cautions: p.heavy(p.panelMass(tag)),
	})
}

// joins turns what the grower did into steps, one for each run of like work.
func (p *planner) joins(g *grower, js []join, after int) int {
	for len(js) > 0 {
		n := 1
		for n < len(js) && p.together(js[n-1], js[n]) {
			n++
		}
		after = p.joinStep(js[:n], after)
		js = js[n:]
	}
	return after
}

// together reports whether b belongs to the step that ends with a: no new frame, and the same group of
// sticks. The fitting a frame begins with goes with the first pipes that follow it.
func (p *planner) together(a, b join) bool {
	if b.kind == startAt {
		return false
	}
	return a.stick < 0 || alike(p.r.Sticks[a.stick], p.r.Sticks[b.stick])
}

// joinStep writes one step of putting the frame together.
func (p *planner) joinStep(js []join, after int) int {
	var parts, lines, names []string
	units := 0
	j := job{work: "frame", after: before(after), cautions: nil}
	for _, q := range js {
		if q.stick >= 0 {
			parts = append(parts, p.list.StickTags[q.stick])
			names = append(names, p.r.Sticks[q.stick].Name)
		}
		if q.node >= 0 {
			parts = append(parts, p.list.NodeTags[q.node])
		}
		lines = append(lines, p.joinLine(q))
		switch q.kind {
		case screwPipe, screwNode:
			units++
		case caught:
			j.cautions = append(j.cautions, "Both ends of "+p.list.StickTags[q.stick]+" are fixed: it can't be screwed into both. The loop needs a union; see the finding on loops.")
			units += 2
		}
	}
	if size := p.sizeOf(js); size != nil {
		lines = append(lines, p.makeUp(*size))
	}
	j.parts, j.measures, j.units = once(parts), lines, float64(units)
	j.title = "Screw together " + phrase(once(names))
	if len(once(names)) > 4 {
		j.title = fmt.Sprintf("Screw together %s to %s: %s", names[0], names[len(names)-1], several(len(once(names)), "pipe"))
	}
	return p.do(j)
}

// joinLine says what is turned into what.
func (p *planner) joinLine(q join) string {
	switch q.kind {
	case startAt:
		if q.stick >= 0 {
			return "begin with " + p.list.StickTags[q.stick] + ", " + p.r.Sticks[q.stick].Name
		}
		n := p.r.Nodes[q.node]
		return fmt.Sprintf("begin with the %s %s, %s", n.Kind.Words(), p.list.NodeTags[q.node], n.Place)
	case screwPipe:
		return fmt.Sprintf("%s (%s) into %s", p.list.StickTags[q.stick], p.r.Sticks[q.stick].Name, p.list.NodeTags[q.node])
	case screwNode:
		n := p.r.Nodes[q.node]
		return fmt.Sprintf("%s %s onto %s, pointing as drawn (%s)", n.Kind.Words(), p.list.NodeTags[q.node], p.list.StickTags[q.stick], n.Place)
	}
	return fmt.Sprintf("%s (%s): both its fittings are fixed already", p.list.StickTags[q.stick], p.r.Sticks[q.stick].Name)
}

func (p *planner) sizeOf(js []join) *pipe.Size {
	for _, q := range js {
		if q.stick >= 0 {
			return p.r.Sticks[q.stick].Section.Pipe
		}
	}
	return nil
}

// makeUp says how far a pipe goes in, by hand and by wrench.
func (p *planner) makeUp(s pipe.Size) string {
	if s.Pitch <= 0 {
		return ""
	}
	turns := float64(s.Engagement-s.HandTight) / float64(s.Pitch)
	return fmt.Sprintf("make-up %s in every joint: by hand about %s, then about %.1f turns with the wrench", p.show(s.Engagement), p.show(s.HandTight), turns)
}

// unions closes the loops.
func (p *planner) unions(after int) int {
	var parts, lines []string
	for i, n := range p.r.Nodes {
		if n.Kind == pipe.Union {
			parts = append(parts, p.list.NodeTags[i])
			lines = append(lines, fmt.Sprintf("union %s (%s): bring the halves in line, then draw the nut up", p.list.NodeTags[i], n.Place))
		}
	}
	if len(parts) == 0 {
		return after
	}
	return p.do(job{
		work: "frame", parts: parts, units: float64(len(parts)), after: before(after), measures: lines,
		title: fmt.Sprintf("Close %s at %s, the last joint of all", several(len(parts), "loop"), several(len(parts), "union")),
	})
}

// panelMass returns the mass of the panel with that tag.
func (p *planner) panelMass(tag string) float64 {
	for _, q := range p.list.Parts {
		if q.Kind == part.Panel && slices.Contains(q.Tags, tag) {
			return q.MassKg
		}
	}
	return 0
}

// heavy warns of a mass that one person should not lift.
func (p *planner) heavy(kg float64) []string {
	if kg <= p.s.Settings.LiftKg {
		return nil
	}
	return []string{fmt.Sprintf("%.0f kg is more than the %g kg one person should lift: two people, or in parts.", kg, p.s.Settings.LiftKg)}
}
