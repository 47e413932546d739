package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

var betweenFormula = figure.Formula{
	Text:   "gap at the dampest time = gap − d·C·(wet − build)",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2 and 13-3 for the movement",
	Range:  "d from the line the panel is held on to its edge at the post, across the grain",
}

// betweenPosts says of every panel between posts how much room it has left at the post where it has the
// least when it is wettest.
func (p *Piece) betweenPosts() []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		var worst *finding.Finding
		for _, s := range panel.Seats {
			if s.Kind != piece.BetweenPosts || s.Stick < 0 {
				continue
			}
			f := p.gapAt(i, s)
			if worst == nil || worst.Verdict == finding.Unknown || f.Verdict != finding.Unknown && f.Figure.Value < worst.Figure.Value {
				worst = &f
			}
		}
		if worst != nil {
			out = append(out, *worst)
		}
	}
	return out
}

// gapAt weighs the gap between panel i and one post.
func (p *Piece) gapAt(i int, s piece.PanelSeat) finding.Finding {
	panel, stick := p.Panels[i], p.Sticks[s.Stick]
	f := finding.Finding{
		Check: "fit", Parts: tags(p.Parts.PanelTags[i], p.Parts.StickTags[s.Stick]), Sense: finding.AtLeast,
		Place: panel.Name + " between posts, at the " + stick.Name, View: finding.View{From: "top"},
	}
	section := p.sectionAt(s.At, panel.Min.Z, panel.Max.Z)
	// how far the axis stands outside the panel, and the edge across the grain that it stands outside of
	dx := max(panel.Min.X-s.At[0], s.At[0]-panel.Max.X, 0)
	dy := max(panel.Min.Y-s.At[1], s.At[1]-panel.Max.Y, 0)
	drawn := length.FromMM(math.Hypot(dx.MM(), dy.MM())) - section.Half()
	var grows length.Length
	if outside := across(panel, [2]length.Length{dx, dy}); outside > 0 {
		season, err := p.moves(i, (across(panel, s.At)-panel.HeldAt).Abs()-outside)
		if err != nil {
			return unknown(f, err.Error())[0]
		}
		grows = season.grows()
		f.Because = season.figures()
		y := p.throughYear(i, season)
		f.Picture = yearOf(y, 0, y.line("gap at the "+stick.Name, drawn, -1))
	}
	f.Figure = figure.OfLength("gap when it is dampest", drawn-grows, &betweenFormula,
		figure.InLength("gap", drawn), figure.InLength("grows", grows), figure.InLength("post", section))
	f.Limit = figure.OfLength("least gap", 0, nil)
	f.Because = append(f.Because, f.Figure)
	if !panel.Fixed {
		f.Assumed = append(f.Assumed, panel.Name+" lies loose: reckoned from its middle")
	}
	switch pitch := p.Nodes[stick.A].Size.Pitch; {
	case drawn < grows:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("make %s %s narrower there, or set the posts as much farther apart", panel.Name, p.up(grows-drawn+p.Shop.Settings.WorkingGap))
	case drawn-grows < pitch:
		f.Verdict = finding.Tight
		f.Assumed = append(f.Assumed, "a frame built one pitch tighter takes "+p.up(pitch)+" of it")
	}
	return f
}

// sectionAt returns the largest section of what stands upright at a plan point between two heights: the band
// of a fitting, the plate of a flange, else the pipe.
func (p *Piece) sectionAt(at [2]length.Length, from, to length.Length) (section length.Length) {
	for _, b := range p.solids {
		if b.Kind != piece.StickBody && b.Kind != piece.FittingBody {
			continue
		}
		lo, hi := b.Shape.Bounds()
		x, y := lo.X+(hi.X-lo.X).Half(), lo.Y+(hi.Y-lo.Y).Half()
		if x == at[0] && y == at[1] && lo.Z < to && hi.Z > from {
			section = max(section, hi.X-lo.X, hi.Y-lo.Y)
		}
	}
	return section
}
