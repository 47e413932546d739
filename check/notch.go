package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

var (
	tongueFormula = figure.Formula{
		Text:   "length of the tongue along the grain, and its breadth across it ≥ thickness",
		Source: "common practice, no source",
		Range:  "wood that stands free beside a notch is short grain and breaks along it",
	}
	clearFormula = figure.Formula{
		Text:   "clearance = wall − frame band − movement",
		Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2 and 13-3 for the movement; band: common practice, no source",
		Range:  "the wall that comes nearest to the post in the worst season, on a frame built one pitch off at each joint",
	}
)

// Notch says of every opening round a post whether the wood left beside it is long and broad enough, and
// whether its walls stay clear of the post all year.
func Notch(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		for j, f := range panel.Features {
			if f.Stick >= 0 && (f.Kind == piece.NotchFeature || f.Kind == piece.HoleFeature) {
				out = append(out, p.notch(i, j))
			}
		}
	}
	return out
}

// notch gives one finding for an opening: of its walls where these fail or are tight, else of its tongue.
func (p *Piece) notch(i, j int) finding.Finding {
	panel := p.Panels[i]
	feature := panel.Features[j]
	f := finding.Finding{
		Check: "notch", Parts: tags(p.Parts.PanelTags[i], p.Parts.StickTags[feature.Stick]),
		Place: panel.Name + ", " + feature.Why, Sense: finding.AtLeast, View: finding.View{From: "top"},
	}
	walls, err := p.clearance(i, j)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	left := p.tongue(panel, j)
	least := thickness(panel)
	f.Because = append([]figure.Figure(nil), feature.Walls...)
	wood := figure.OfLength("wood left beside it", left, &tongueFormula)
	f.Figure, f.Limit = wood, figure.OfLength("least", least, &tongueFormula)
	f.Because = append(f.Because, f.Figure)
	f.Verdict = finding.Judge(left.MM(), least.MM(), finding.AtLeast)
	if walls.Name != "" {
		f.Because = append(f.Because, walls)
	}
	switch {
	case walls.Name != "" && walls.Value < 0:
		f.Verdict, f.Figure, f.Limit = finding.Fails, walls, figure.OfLength("least", 0, &clearFormula)
		f.Mend = fmt.Sprintf("give it a gap %s wider", p.up(length.FromMM(-walls.Value)))
	case f.Verdict == finding.Fails:
		f.Mend = fmt.Sprintf("move the post %s farther in, or let the opening open to that side", p.up(least-left))
	case f.Verdict == finding.Stands && walls.Name != "" && length.FromMM(walls.Value) < p.Shop.Settings.WorkingGap.Half():
		f.Verdict, f.Figure, f.Limit = finding.Tight, walls, figure.OfLength("least", 0, &clearFormula)
	}
	return f
}

// tongue returns how much wood is left beside feature j where it is least: along the grain up to the
// panel's ends and the openings that lie in line, across it up to the panel's edges.
func (p *Piece) tongue(panel piece.FlatPanel, j int) length.Length {
	size := [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y}
	f := panel.Features[j]
	left := length.Max
	for axis := range 2 {
		before, after := f.Min[axis], size[axis]-f.Max[axis]
		for k, g := range panel.Features {
			if k == j || g.Depth > 0 || g.Max[1-axis] <= f.Min[1-axis] || f.Max[1-axis] <= g.Min[1-axis] {
				continue
			}
			if g.Max[axis] <= f.Min[axis] {
				before = min(before, f.Min[axis]-g.Max[axis])
			}
			if g.Min[axis] >= f.Max[axis] {
				after = min(after, g.Min[axis]-f.Max[axis])
			}
		}
		// where nothing is left the opening reaches the edge, or the corner is gone: no tongue stands
		for _, wood := range []length.Length{before, after} {
			if wood > 0 {
				left = min(left, wood)
			}
		}
	}
	return left
}

// clearance returns how far the nearest wall of opening j stays off the post in the worst season; a figure
// without a name where the opening has no wall.
func (p *Piece) clearance(i, j int) (worst figure.Figure, err error) {
	panel := p.Panels[i]
	f := panel.Features[j]
	size := [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y}
	at := [2]length.Length{p.Nodes[p.Sticks[f.Stick].A].At.X - panel.Min.X, p.Nodes[p.Sticks[f.Stick].A].At.Y - panel.Min.Y}
	held := panel.HeldAt - across(panel, [2]length.Length{panel.Min.X, panel.Min.Y})
	season, err := p.moves(i, (across(panel, at) - held).Abs())
	if err != nil {
		return worst, err
	}
	band := wallInput(f, "band")
	for axis := range 2 {
		for _, upper := range []bool{false, true} {
			wall, open := at[axis]-f.Min[axis], f.Min[axis] <= 0
			if upper {
				wall, open = f.Max[axis]-at[axis], f.Max[axis] >= size[axis]
			}
			if open {
				continue
			}
			moves := length.Length(0)
			if isAcross := (axis == 1) == panel.GrainX; isAcross {
				// the wall between the post and the held line is pushed to the post, the other pulled
				if moves = season.shrinks(); upper == (at[axis] <= held) {
					moves = season.grows()
				}
			}
			clear := wall - f.Section.Half()
			c := figure.OfLength("clearance in the worst season", clear-band-moves, &clearFormula,
				figure.InLength("wall", clear), figure.InLength("frame band", band), figure.InLength("movement", moves))
			if worst.Name == "" || c.Value < worst.Value {
				worst = c
			}
		}
	}
	return worst, nil
}

// wallInput returns a length that went into the walls of an opening.
func wallInput(f piece.Feature, name string) length.Length {
	for _, w := range f.Walls {
		for _, in := range w.Inputs {
			if in.Name == name {
				return length.FromMM(in.Value)
			}
		}
	}
	return 0
}
