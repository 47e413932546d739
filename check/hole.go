package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/bore"
)

var (
	sawFormula = figure.Formula{
		Text: "thickness ≤ 2 × depth of the hole saw", Source: "common practice, no source",
		Range: "pilot through, then from both faces",
	}
	rimFormula = figure.Formula{
		Text: "wood between the rim and the nearest edge, opening or rim of a flange", Source: "common practice, no source",
	}
)

// largestBit is the largest hole that is bored with a bit; larger ones take a hole saw. Common practice, no
// source.
const largestBit = 5 * length.Inch / 4

// Hole says of every row of openings the document asks for whether what must pass goes through, whether the
// hole saw reaches, and whether the rims keep off edges, openings and flanges. Equal openings of one row
// give one finding each, for the worst of them. Round holes for posts are asked only whether the saw reaches.
func Hole(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		done := map[string]bool{}
		for _, f := range panel.Features {
			if f.Kind == piece.ReliefFeature || f.Kind == piece.NotchFeature || done[f.Why] {
				continue
			}
			done[f.Why] = true
			if f.PassSize > 0 {
				out = append(out, p.passes(i, f))
			}
			if f.Round && f.Depth == 0 && f.Max[0]-f.Min[0] > largestBit {
				out = append(out, p.sawn(i, f))
			}
			if f.Stick < 0 {
				out = append(out, p.rim(i, f.Why))
			}
		}
	}
	return out
}

// rowName names an opening by its row, a hole round a post by the post.
func rowName(panel piece.FlatPanel, f piece.Feature) string {
	if f.Stick >= 0 {
		return "hole " + f.Why + " in " + panel.Name
	}
	return f.Why + " in " + panel.Name
}

func (p *Piece) passes(i int, f piece.Feature) finding.Finding {
	open := min(f.Max[0]-f.Min[0], f.Max[1]-f.Min[1])
	found := finding.Finding{
		Check: "hole", Parts: tags(p.Parts.PanelTags[i]), Place: rowName(p.Panels[i], f) + " lets " + f.Passes + " through", Sense: finding.AtLeast,
		Figure: figure.OfLength("opening", open, nil),
		View:   finding.View{From: "top"},
	}
	needs, err := bore.Needs(f.PassSize, p.Shop.Settings.HoleClearance)
	if err != nil {
		return unknown(found, err.Error())[0]
	}
	found.Limit, found.Because = needs, []figure.Figure{needs}
	if need := length.FromMM(needs.Value); open < need { // a hole that passes is not tight: the clearance is in the limit already
		found.Verdict = finding.Fails
		found.Mend = fmt.Sprintf("make it %s, or fit what is larger after the panel is on", p.up(need))
	}
	return found
}

// sawn weighs the panel's thickness against the shop's hole saw, from one face or from both.
func (p *Piece) sawn(i int, f piece.Feature) finding.Finding {
	thick := thickness(p.Panels[i])
	found := finding.Finding{
		Check: "hole", Parts: tags(p.Parts.PanelTags[i]), Place: rowName(p.Panels[i], f) + ", sawn",
		Caution: "Clamp the panel, let the saw clear its chips, keep hands off the far side.",
	}
	saw, owned := p.Shop.Tool("hole-saw")
	if !owned || saw.Depth <= 0 {
		return unknown(found, "the depth of the shop's hole saw")[0]
	}
	found.Figure = figure.OfLength("thickness", thick, nil)
	found.Limit = figure.OfLength("reached from both faces", 2*saw.Depth, &sawFormula, figure.InLength("depth", saw.Depth))
	found.Because = []figure.Figure{found.Limit}
	sides, err := bore.Sides(thick, saw.Depth)
	switch {
	case err != nil: // the cuts from both faces do not meet
		found.Verdict = finding.Fails
		found.Mend = fmt.Sprintf("saw it out along its line or rout it, or make the panel %s thinner there", p.up(thick-2*saw.Depth))
	case sides.Value > 1:
		found.Assumed = []string{"pilot through, then from both faces: the saw is shallower than the panel"}
	}
	return found
}

// rim weighs the wood left round the worst of the openings of a row.
func (p *Piece) rim(i int, why string) finding.Finding {
	panel := p.Panels[i]
	left, beside, worst := length.Max, "", piece.Feature{}
	for j, f := range panel.Features {
		if f.Why != why || f.Stick >= 0 {
			continue
		}
		if l, what := p.woodRound(i, j); l < left {
			left, beside, worst = l, what, f
		}
	}
	found := finding.Finding{
		Check: "hole", Parts: tags(p.Parts.PanelTags[i]), Place: fmt.Sprintf("%s in %s, %s", worst.Name, panel.Name, beside), Sense: finding.AtLeast,
		Figure: figure.OfLength("wood left", left, &rimFormula),
		Limit:  figure.OfLength("least", p.Shop.Settings.CornerGap, nil),
		View:   finding.View{From: "top"},
	}
	found.Because = []figure.Figure{found.Figure}
	if found.Verdict = finding.Judge(left.MM(), found.Limit.Value, finding.AtLeast); found.Verdict == finding.Fails {
		found.Mend = fmt.Sprintf("move it %s away", p.up(p.Shop.Settings.CornerGap-left))
	}
	return found
}
