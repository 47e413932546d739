package check

import (
	"fmt"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/tongue"
)

var reactionFormula = figure.Formula{
	Text: "V = Σ P·(distance to the next support) ÷ span", Source: "statics, any mechanics text",
	Range: "each span rests by itself on its two supports; a load beyond the outer ones turns about the nearest; what it lifts off the other is not taken off",
}

// Section says of every wooden panel that is notched or relieved where it is borne whether the wood left across it
// there bears the shear: at the worst line of support. How hard it is bent there is the sag's to say, which has the
// openings in it.
func Section(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		if panel.Spec.Wood != nil {
			out = append(out, p.section(i)...)
		}
	}
	return out
}

func (p *Piece) section(i int) []finding.Finding {
	panel := p.Panels[i]
	axis, lines := p.supportLines(panel)
	var worst []finding.Finding
	used := -1.0
	for n, at := range lines {
		whole, pockets := netAt(panel, axis, at)
		if len(pockets) == 0 && whole == size(panel)[1-axis] {
			continue
		}
		f := finding.Finding{
			Check: "section", Place: fmt.Sprintf("%s, across it at the support %s from its %s", panel.Name, p.Doc.Fineness.Text(at), [2]string{"left end", "front"}[axis]),
			Parts: tags(p.Parts.PanelTags[i]), View: finding.View{From: "top"},
		}
		if len(lines) < 2 {
			return unknown(f, "a second line of support: on one alone statics do not say what it bears")
		}
		f, share := p.sheared(f, i, axis, p.reaction(i, axis, lines, n), whole, pockets)
		if share > used {
			worst, used = []finding.Finding{f}, share
		}
	}
	return worst
}

// sheared weighs one line of support; used is the share of what the section may bear.
func (p *Piece) sheared(f finding.Finding, i, axis int, v figure.Figure, whole length.Length, pockets []tongue.Pocket) (finding.Finding, float64) {
	panel := p.Panels[i]
	_, limit, err := tongue.Limits(panel.Spec.Wood.Species, (axis == 0) != panel.GrainX, false)
	if err != nil {
		return unknown(f, err.Error())[0], 0
	}
	area, err := tongue.NetArea(whole, thickness(panel), pockets...)
	if err != nil {
		return unknown(f, err.Error())[0], 0
	}
	shear, err := tongue.NetShear(v.Value, area.Value)
	if err != nil {
		return unknown(f, "wood over the support: "+err.Error())[0], 0
	}
	f.Figure, f.Limit, f.Because = shear, limit, []figure.Figure{v, area, shear}
	f.Assumed = []string{
		"ends that rest, each span by itself, the whole load of a support on one side of it",
		"the shear spreads over the whole width that is left",
	}
	if f.Verdict = finding.Judge(shear.Value, limit.Value, finding.AtMost); f.Verdict == finding.Fails {
		needed := length.FromMM(thickness(panel).MM() * shear.Value / limit.Value)
		f.Mend = fmt.Sprintf("make the panel %s thick, or let it stop short of the fittings instead of relieving it", p.up(needed))
		f.Caution = "A panel that shears at its support comes down at once."
	}
	return f, shear.Value / limit.Value
}

func size(panel piece.FlatPanel) [2]length.Length {
	return [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y}
}

// supportLines returns the lines that bear a panel, across the grain where two or more do, else along it, from its left
// front corner: a rail along itself, flanges and feet at their middles.
func (p *Piece) supportLines(panel piece.FlatPanel) (axis int, at []length.Length) {
	if !panel.GrainX {
		axis = 1
	}
	if at = p.linesAlong(panel, axis); len(at) < 2 {
		if other := p.linesAlong(panel, 1-axis); len(other) > len(at) {
			return 1 - axis, other
		}
	}
	return axis, at
}

// linesAlong returns where on one axis a panel is borne, in order, each once.
func (p *Piece) linesAlong(panel piece.FlatPanel, axis int) (at []length.Length) {
	for _, s := range panel.Seats {
		if _, _, ok := p.bearing(s); !ok {
			continue
		}
		if s.Kind == piece.OnRails {
			if d := p.Sticks[s.Stick].Dir; axis == 0 && d.X != 0 || axis == 1 && d.Y != 0 {
				continue
			}
		}
		where := [2]length.Length{s.At[0] - panel.Min.X, s.At[1] - panel.Min.Y}[axis]
		if where >= 0 && where <= size(panel)[axis] {
			at = append(at, where)
		}
	}
	slices.Sort(at)
	return slices.CompactFunc(at, func(a, b length.Length) bool { return (b - a).Abs() < length.Inch })
}

// netAt returns the width across a panel that no opening and no pocket takes near a line, within its thickness of it, and
// the pockets there.
func netAt(panel piece.FlatPanel, axis int, at length.Length) (whole length.Length, pockets []tongue.Pocket) {
	across, near := 1-axis, thickness(panel)
	type span struct{ from, to, deep length.Length }
	var cuts []span
	for _, f := range panel.Features {
		if f.Max[axis] < at-near || f.Min[axis] > at+near {
			continue
		}
		deep := f.Depth
		if deep == 0 {
			deep = near
		}
		cuts = append(cuts, span{max(f.Min[across], 0), min(f.Max[across], size(panel)[across]), deep})
	}
	slices.SortFunc(cuts, func(a, b span) int { return int(min(max(a.from-b.from, -1), 1)) })
	done := length.Length(0)
	for _, c := range cuts {
		if c.from > done {
			whole += c.from - done
		}
		if from := max(c.from, done); c.to > from {
			if c.deep < near {
				pockets = append(pockets, tongue.Pocket{Wide: c.to - from, Deep: c.deep})
			}
			done = c.to
		}
	}
	return whole + max(0, size(panel)[across]-done), pockets
}

// reaction returns what line n bears of the panel and of what it holds.
func (p *Piece) reaction(i, axis int, lines []length.Length, n int) figure.Figure {
	panel := p.Panels[i]
	along := func(v piece.Vec) float64 { return [2]float64{(v.X - panel.Min.X).MM(), (v.Y - panel.Min.Y).MM()}[axis] }
	total := 0.0
	const parts = 40
	spread := func(from, to, newton float64) { // as point loads at the middles of equal parts
		for k := range parts {
			total += newton / parts * shareOf(lines, n, from+(to-from)*(float64(k)+0.5)/parts)
		}
	}
	if q := p.panels[i]; q != nil {
		spread(0, along(panel.Max), q.MassKg*gravity)
	}
	for _, h := range p.Held {
		if h.Panel == i {
			spread(along(h.Min), along(h.Max), h.MassKg*gravity)
		}
	}
	return figure.Of("the support bears", max(total, 0), figure.N, &reactionFormula)
}

// shareOf is the part of a load at a place that line n of several bears.
func shareOf(lines []length.Length, n int, at float64) float64 {
	k := 0
	for k+2 < len(lines) && at > lines[k+1].MM() {
		k++
	}
	a, b := lines[k].MM(), lines[k+1].MM()
	switch right := (at - a) / (b - a); n {
	case k:
		return max(0, 1-right)
	case k + 1:
		return max(0, right)
	}
	return 0
}
