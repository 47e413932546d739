package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// armSpan is the widest panel whose two edges one person's hands hold, 1.2 m; knuckles and shoulders are the heights
// between which a piece is lifted. Common practice, no source.
const (
	armSpan   = 1200 * length.Millimetre
	knuckles  = 250 * length.Millimetre
	shoulders = 1400 * length.Millimetre
)

// handLong and handHigh are the least hand hole: NIOSH Publication 94-110, optimal hand-hold cut-out, from memory.
const (
	handLong = 115 * length.Millimetre
	handHigh = 38 * length.Millimetre
)

var (
	gripFormula = figure.Formula{
		Text: "the panel's lesser size ≤ 1.2 m, or openings for hands", Source: "common practice, no source",
		Range: "a smooth panel whose two edges one person's hands hold",
	}
	holdsFormula = figure.Formula{
		Text: "holds = rails and held panels between 0.25 and 1.4 m above the floor", Source: "common practice, no source",
		Range: "a piece that is lifted by its frame, one hold at each side",
	}
)

// Grip says whether hands find a hold: on the panel that is the largest across, and on each piece that stands by itself,
// by its rails and by panels that something holds down.
func Grip(p *Piece) []finding.Finding {
	out := p.gripPanel()
	for _, s := range p.standing {
		out = append(out, p.gripWhole(s))
	}
	return out
}

func lesser(panel piece.FlatPanel) length.Length { return min(size(panel)[0], size(panel)[1]) }

func (p *Piece) gripPanel() []finding.Finding {
	widest := -1
	for i, panel := range p.Panels {
		if p.panels[i] != nil && !hasHands(panel) && (widest < 0 || lesser(panel) > lesser(p.Panels[widest])) {
			widest = i
		}
	}
	if widest < 0 {
		return nil
	}
	f := finding.Finding{
		Check: "grip", Place: p.Panels[widest].Name + ", carried as a part", Parts: tags(p.Parts.PanelTags[widest]),
		Figure: figure.OfLength("across", lesser(p.Panels[widest]), &gripFormula), Limit: figure.OfLength("arms reach", armSpan, nil),
	}
	f.Because = []figure.Figure{f.Figure}
	if f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost); f.Verdict == finding.Fails {
		f.Verdict = finding.Tight // two carry it on edge, in slings
		f.Mend = fmt.Sprintf("carry it on edge by two in slings, or cut hand holes of %s × %s", p.up(handLong), p.up(handHigh))
		f.Caution = "A large smooth panel slips out of hands: gloves that grip, and nobody under it."
	}
	return []finding.Finding{f}
}

// hasHands reports whether a panel has two openings that hands go through.
func hasHands(panel piece.FlatPanel) bool {
	hands := 0
	for _, f := range panel.Features {
		a, b := f.Max[0]-f.Min[0], f.Max[1]-f.Min[1]
		if f.Depth == 0 && f.Stick < 0 && max(a, b) >= handLong && min(a, b) >= handHigh {
			hands++
		}
	}
	return hands >= 2
}

// gripWhole counts what a piece can be lifted by, and names what it must not be lifted by.
func (p *Piece) gripWhole(s standing) finding.Finding {
	holds, loose := 0, ""
	reached := func(z length.Length) bool { return z >= knuckles && z <= shoulders }
	for _, i := range s.sticks {
		if st := p.Sticks[i]; st.Dir.Z == 0 && reached(p.Nodes[st.A].At.Z) {
			holds++
		}
	}
	for _, i := range s.panels {
		switch panel := p.Panels[i]; {
		case !panel.Fixed:
			loose = panel.Name
		case reached(panel.Min.Z):
			holds += 2 // its two ends
		}
	}
	f := finding.Finding{
		Check: "grip", Place: p.place(s) + ", where it is lifted", Parts: p.tagsOf(s), Sense: finding.AtLeast,
		Figure: figure.Of("holds", float64(holds), figure.Count, &holdsFormula), Limit: figure.Of("least", 2, figure.Count, nil),
	}
	f.Because = []figure.Figure{f.Figure}
	if holds < 2 {
		f.Verdict = finding.Tight // two can still bend down, or tilt it on slings
		f.Mend = "lift it with 2 slings under it, or give it a rail at knee height"
	}
	if loose != "" {
		f.Caution = "Do not lift it by " + loose + ": it lies loose and comes off in the hands."
	}
	return f
}
