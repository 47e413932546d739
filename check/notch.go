package check

import (
	"fmt"
	"math"
	"slices"

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
		from := len(out)
		for j, f := range panel.Features {
			if f.Stick >= 0 && (f.Kind == piece.NotchFeature || f.Kind == piece.HoleFeature) {
				out = append(out, p.notch(i, j))
			}
		}
		pictureWorst(out[from:])
	}
	return out
}

// pictureWorst leaves the picture of the year to the opening of a panel whose gaps come nearest to nothing.
func pictureWorst(fs []finding.Finding) {
	worst, least := -1, math.Inf(1)
	for n, f := range fs {
		if f.Picture.Year == nil {
			continue
		}
		for _, l := range f.Picture.Year.Lines {
			if at := slices.Min(l.Values); at < least {
				worst, least = n, at
			}
		}
	}
	for n := range fs {
		if n != worst {
			fs[n].Picture = finding.Picture{}
		}
	}
}

// notch gives one finding for an opening: of its walls where these fail or are tight, else of its tongue.
func (p *Piece) notch(i, j int) finding.Finding {
	panel := p.Panels[i]
	feature := panel.Features[j]
	f := finding.Finding{
		Check: "notch", Parts: tags(p.Parts.PanelTags[i], p.Parts.StickTags[feature.Stick]),
		Place: panel.Name + ", " + feature.Why, Sense: finding.AtLeast, View: finding.View{From: "top"},
	}
	walls, gaps, err := p.clearance(i, j)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	left := p.tongue(panel, j)
	least := thickness(panel)
	f.Because = append([]figure.Figure(nil), feature.Walls...)
	wood := figure.OfLength("wood left beside it", left, &tongueFormula)
	f.Figure, f.Limit = wood, figure.OfLength("least", least, &tongueFormula)
	f.Because, f.Picture = append(f.Because, f.Figure), gaps
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

// wall is one wall of an opening, as far as the frame may stand off towards it on the day it is built.
type wall struct {
	name  string
	clear length.Length // from the post to the wall
	band  length.Length
	sign  float64 // of what the wood's growth does to the gap: −1 pushes the wall to the post, 1 pulls it off, 0 does nothing
}

// walls returns the walls of opening j of panel i, and how the wood between its post and the held line moves.
// Sides that the opening opens to have none.
func (p *Piece) walls(i, j int) (out []wall, s season, err error) {
	panel := p.Panels[i]
	f := panel.Features[j]
	size := [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y}
	at := [2]length.Length{p.Nodes[p.Sticks[f.Stick].A].At.X - panel.Min.X, p.Nodes[p.Sticks[f.Stick].A].At.Y - panel.Min.Y}
	held := panel.HeldAt - across(panel, [2]length.Length{panel.Min.X, panel.Min.Y})
	if s, err = p.moves(i, (across(panel, at) - held).Abs()); err != nil {
		return nil, s, err
	}
	names := [2][2]string{{"left wall", "right wall"}, {"front wall", "back wall"}}
	for axis := range 2 {
		isAcross := (axis == 1) == panel.GrainX
		for n, upper := range []bool{false, true} {
			w := wall{name: names[axis][n], clear: at[axis] - f.Min[axis] - f.Section.Half(), band: wallInput(f, "band")}
			open := f.Min[axis] <= 0
			if upper {
				w.clear, open = f.Max[axis]-at[axis]-f.Section.Half(), f.Max[axis] >= size[axis]
			}
			switch {
			case open:
				continue
			case isAcross && upper == (at[axis] <= held): // between the post and the held line
				w.sign = -1
			case isAcross:
				w.sign = 1
			}
			out = append(out, w)
		}
	}
	return out, s, nil
}

// worst returns how far the wall stays off the post in the worst season, on a frame that stands off to it.
func (w wall) worst(s season) figure.Figure {
	moves := length.Length(0)
	switch {
	case w.sign < 0:
		moves = s.grows()
	case w.sign > 0:
		moves = s.shrinks()
	}
	return figure.OfLength("clearance in the worst season", w.clear-w.band-moves, &clearFormula,
		figure.InLength("wall", w.clear), figure.InLength("frame band", w.band), figure.InLength("movement", moves))
}

// clearance returns how far the nearest wall of opening j stays off the post in the worst season, and the gaps at
// all its walls through the year; a figure without a name where the opening has no wall.
func (p *Piece) clearance(i, j int) (worst figure.Figure, gaps finding.Picture, err error) {
	walls, s, err := p.walls(i, j)
	if err != nil {
		return worst, gaps, err
	}
	y := p.throughYear(i, s)
	var lines []finding.Line
	for _, w := range walls {
		if c := w.worst(s); worst.Name == "" || c.Value < worst.Value {
			worst = c
		}
		lines = append(lines, y.line(w.name, w.clear-w.band, w.sign))
	}
	return worst, yearOf(y, 0, lines...), nil
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
