package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

var (
	underFormula = figure.Formula{Text: "height ≤ room up to what is above", Source: "geometry of the piece"}
	onFormula    = figure.Formula{
		Text: "reach past the panel's edge ≤ a quarter of the thing's own size", Source: "common practice, no source",
		Range: "with half of it past the edge it falls",
	}
)

// Fit says of every kind of held thing whether it goes under what is above it and stands on its panel, and
// of every panel between posts whether it still has room there when it is wettest.
func Fit(p *Piece) []finding.Finding {
	var out []finding.Finding
	done := map[*piece.Hold]bool{}
	for _, h := range p.Held {
		if done[h.Spec] {
			continue
		}
		done[h.Spec] = true
		if f, covered := p.underWhatIsAbove(h.Spec); covered {
			out = append(out, f)
		}
		out = append(out, p.standsOn(h.Spec))
	}
	return append(out, p.betweenPosts()...)
}

// worst returns the one of several equal things for which a length is the least.
func (p *Piece) worst(spec *piece.Hold, of func(piece.Held) length.Length) (worst piece.Held) {
	first := true
	for _, h := range p.Held {
		if h.Spec == spec && (first || of(h) < of(worst)) {
			worst, first = h, false
		}
	}
	return worst
}

// room returns the height free above the panel where the thing stands, or length.Max under the open sky.
// Posts and what slants over it are for the overlap to find.
func (p *Piece) room(h piece.Held) length.Length {
	ceiling := length.Max
	for _, b := range p.solids {
		if !p.covers(b, h.Panel) {
			continue
		}
		lo, hi := b.Shape.Bounds()
		if lo.Z >= h.Min.Z && planMeet(h.Min, h.Max, piece.Vec(lo), piece.Vec(hi)) {
			ceiling = min(ceiling, lo.Z)
		}
	}
	if ceiling == length.Max {
		return length.Max
	}
	return ceiling - h.Min.Z
}

// covers reports whether a body can lie over things on a panel: another panel, a level pipe, a fitting that is not
// screwed to the same panel.
func (p *Piece) covers(b piece.Body, panel int) bool {
	switch b.Kind {
	case piece.PanelBody:
		return b.Index != panel
	case piece.StickBody:
		return p.Sticks[b.Index].Dir.Z == 0
	case piece.FittingBody:
		return p.Nodes[b.Index].Panel != panel
	}
	return false
}

func (p *Piece) underWhatIsAbove(spec *piece.Hold) (finding.Finding, bool) {
	h := p.worst(spec, p.room)
	room := p.room(h)
	if room == length.Max {
		return finding.Finding{}, false
	}
	high := h.Max.Z - h.Min.Z
	f := finding.Finding{
		Check: "fit", Parts: tags(p.Parts.PanelTags[h.Panel]), Place: spec.Name + " under what is above",
		Figure: figure.OfLength("height of "+spec.Name, high, nil),
		Limit:  figure.OfLength("room above "+p.Panels[h.Panel].Name, room, &underFormula),
		View:   finding.View{From: "front"},
	}
	f.Because = []figure.Figure{f.Limit}
	f.Verdict = finding.Judge(high.MM(), room.MM(), finding.AtMost)
	if f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("raise what is above %s by %s, or hold it elsewhere", spec.Name, p.up(high-room))
	}
	return f, true
}

// past returns how far the thing reaches past the panel it stands on, along the piece and from front to
// back; at most zero where it stands wholly on it.
func (p *Piece) past(h piece.Held) [2]length.Length {
	panel := p.Panels[h.Panel]
	return [2]length.Length{
		max(panel.Min.X-h.Min.X, h.Max.X-panel.Max.X),
		max(panel.Min.Y-h.Min.Y, h.Max.Y-panel.Max.Y),
	}
}

func (p *Piece) standsOn(spec *piece.Hold) finding.Finding {
	h := p.worst(spec, func(h piece.Held) length.Length { past := p.past(h); return -max(past[0], past[1]) })
	past, size, way := p.past(h), h.Max.X-h.Min.X, "longer"
	reach := past[0]
	if past[1]-(h.Max.Y-h.Min.Y)/4 > past[0]-size/4 {
		reach, size, way = past[1], h.Max.Y-h.Min.Y, "deeper"
	}
	f := finding.Finding{
		Check: "fit", Parts: tags(p.Parts.PanelTags[h.Panel]), Place: spec.Name + " on " + p.Panels[h.Panel].Name,
		Figure: figure.OfLength("reach past the edge", max(reach, 0), nil),
		Limit:  figure.OfLength("greatest reach", size/4, &onFormula, figure.InLength("its size", size)),
		View:   finding.View{From: "top"},
	}
	f.Because = []figure.Figure{f.Limit}
	f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost)
	if f.Verdict == finding.Stands && reach > 0 {
		f.Verdict = finding.Tight
		f.Assumed = []string{"it may stand out over the edge"}
	}
	if f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("make %s %s %s on that side, or place %s elsewhere", p.Panels[h.Panel].Name, p.up(reach-size/4), way, spec.Name)
	}
	return f
}

// planMeet reports whether two boxes overlap in plan; touching is no overlap.
func planMeet(aMin, aMax, bMin, bMax piece.Vec) bool {
	return aMin.X < bMax.X && bMin.X < aMax.X && aMin.Y < bMax.Y && bMin.Y < aMax.Y
}
