package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/caster"
)

var (
	seatFormula = figure.Formula{
		Text:   "reach at the driest time = reach − d·C·(build − dry)",
		Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2 and 13-3 for the movement; that the whole pipe, rim or plate stays covered: common practice, no source",
		Range:  "d across the grain to the panel's edge, from the line the panel is held on or, for what is screwed to it, from the screws",
	}
	balanceFormula = figure.Formula{
		Text: "the panel's middle lies between what bears it", Source: "statics, any mechanics text",
		Range: "a panel that nothing holds down",
	}
)

// Seat says of every panel whether it still reaches over what bears it when it is driest: over the whole
// pipe of a rail, the whole rim of a flange, the whole plate of a caster. A panel that nothing bears, or that
// lies loose on one side of its middle only, is told too.
func Seat(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		var worst *finding.Finding
		for _, s := range panel.Seats {
			f, ok := p.reach(i, s)
			if ok && (worst == nil || slack(f) < slack(*worst)) {
				worst = &f
			}
		}
		switch {
		case worst == nil:
			out = append(out, unknown(finding.Finding{
				Check: "seat", Place: panel.Name, Parts: tags(p.Parts.PanelTags[i]),
			}, "what bears "+panel.Name+": let it sit on posts, rails, arms or feet")...)
		default:
			out = append(out, *worst)
			out = append(out, p.balance(i)...)
		}
	}
	return out
}

// slack is how far a figure stays from its limit; what is not known comes last.
func slack(f finding.Finding) float64 {
	if f.Verdict == finding.Unknown {
		return length.Max.MM()
	}
	return f.Figure.Value - f.Limit.Value
}

// reach weighs one bearing of panel i towards the edge where the panel covers it least. It reports false for a
// seat that bears nothing.
func (p *Piece) reach(i int, s piece.PanelSeat) (worst finding.Finding, ok bool) {
	need, on, ok := p.bearing(s)
	if !ok {
		return worst, false
	}
	for n, e := range p.edges(p.Panels[i], s) {
		if f := p.reachTo(i, s, e, need, on); n == 0 || slack(f) < slack(worst) {
			worst = f
		}
	}
	return worst, true
}

// reachTo weighs one bearing towards one edge of the panel.
func (p *Piece) reachTo(i int, s piece.PanelSeat, e edge, need length.Length, on string) finding.Finding {
	panel := p.Panels[i]
	f := finding.Finding{
		Check: "seat", Parts: tags(p.Parts.PanelTags[i]), Place: panel.Name + " on " + on, Sense: finding.AtLeast,
		View: finding.View{From: "top"},
	}
	var shrinks length.Length
	if e.isAcross {
		over := e.reach // what is screwed to the panel moves with it
		if s.Kind == piece.OnRails && !s.Strap {
			over = p.heldToEdge(panel, s)
		}
		season, err := p.moves(i, max(over, 0))
		if err != nil {
			return unknown(f, err.Error())[0]
		}
		shrinks = season.shrinks()
		f.Because = season.figures()
		y := p.throughYear(i, season)
		f.Picture = yearOf(y, need, y.line("reach over "+on, e.reach, 1))
	}
	f.Limit = figure.OfLength("bearing needed", need, nil)
	f.Figure = figure.OfLength("reach past the middle of the bearing", e.reach-shrinks, &seatFormula,
		figure.InLength("reach", e.reach), figure.InLength("shrinks", shrinks))
	f.Because = append(f.Because, f.Figure)
	if f.Verdict = finding.Judge(f.Figure.Value, need.MM(), finding.AtLeast); f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("let the panel reach %s farther over %s", p.up(need-e.reach+shrinks), on)
	}
	return f
}

// bearing returns half the width of what bears the panel there, and its name. It reports false for a post
// that the panel only goes round or stops at.
func (p *Piece) bearing(s piece.PanelSeat) (length.Length, string, bool) {
	switch {
	case s.Kind == piece.OnRails && s.Stick >= 0 && p.Sticks[s.Stick].Section.Pipe != nil:
		return p.Sticks[s.Stick].Section.Pipe.OD.Half(), "the " + p.Sticks[s.Stick].Name, true
	case (s.Kind == piece.OnPosts || s.Kind == piece.UnderPosts) && s.Node >= 0:
		plate := p.Nodes[s.Node].Fitting.Plate
		return plate.Half(), "the flange at the " + p.Nodes[s.Node].Place, plate > 0
	case s.Kind == piece.OnFeet && s.Foot >= 0:
		return p.footBearing(p.Feet[s.Foot]), "the " + p.Feet[s.Foot].Name, true
	}
	return 0, "", false
}

// footBearing returns half the plate of a caster; round the insert of a stem the wood that the shop leaves
// round every hole.
func (p *Piece) footBearing(f piece.Foot) length.Length {
	if f.Spec.Kind == piece.PlateCaster {
		if class, err := caster.Nearest(caster.Plate, f.Spec.Wheel); err == nil {
			return max(class.Plate[0], class.Plate[1]).Half()
		}
	}
	return p.Shop.Settings.CornerGap
}

// edge is how far a panel reaches past the middle of a bearing towards one of its sides, and whether that side
// lies across the grain: an end does not move.
type edge struct {
	reach    length.Length
	isAcross bool
}

// edges returns the nearest edge along the piece and the nearest from front to back. A rail is measured across
// itself only: along itself it may pass under the edge.
func (p *Piece) edges(panel piece.FlatPanel, s piece.PanelSeat) []edge {
	x := edge{min(s.At[0]-panel.Min.X, panel.Max.X-s.At[0]), !panel.GrainX}
	y := edge{min(s.At[1]-panel.Min.Y, panel.Max.Y-s.At[1]), panel.GrainX}
	if s.Kind == piece.OnRails {
		switch d := p.Sticks[s.Stick].Dir; {
		case d.Y == 0:
			return []edge{y}
		case d.X == 0:
			return []edge{x}
		}
	}
	return []edge{x, y}
}

// heldToEdge returns how much wood lies across the grain between the line a panel is held on, or its middle
// where it lies loose, and its edge nearest to a bearing.
func (p *Piece) heldToEdge(panel piece.FlatPanel, s piece.PanelSeat) length.Length {
	lo := across(panel, [2]length.Length{panel.Min.X, panel.Min.Y})
	hi := across(panel, [2]length.Length{panel.Max.X, panel.Max.Y})
	if at := across(panel, s.At); at-lo < hi-at {
		return panel.HeldAt - lo
	}
	return hi - panel.HeldAt
}

// balance says of a panel that nothing holds down whether its middle lies between what bears it.
func (p *Piece) balance(i int) []finding.Finding {
	panel := p.Panels[i]
	if panel.Fixed {
		return nil
	}
	var lo, hi [2]length.Length
	found := false
	for _, s := range panel.Seats {
		if s.Kind != piece.OnRails {
			continue
		}
		from, to := p.covered(panel, s)
		if !found {
			lo, hi, found = from, to, true
		}
		for k := range 2 {
			lo[k], hi[k] = min(lo[k], from[k]), max(hi[k], to[k])
		}
	}
	if !found {
		return nil
	}
	mid := [2]length.Length{panel.Min.X + (panel.Max.X - panel.Min.X).Half(), panel.Min.Y + (panel.Max.Y - panel.Min.Y).Half()}
	inside := min(mid[0]-lo[0], hi[0]-mid[0], mid[1]-lo[1], hi[1]-mid[1])
	f := finding.Finding{
		Check: "seat", Place: panel.Name + ", loose", Parts: tags(p.Parts.PanelTags[i]), Sense: finding.AtLeast,
		Figure:  figure.OfLength("middle of the panel inside what bears it", inside, &balanceFormula),
		Limit:   figure.OfLength("least", 0, nil),
		Assumed: []string{"nothing holds it down"}, View: finding.View{From: "top"},
	}
	f.Because = []figure.Figure{f.Figure}
	if inside < 0 {
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("strap it down, or move a rail %s under it", p.up(-inside))
	}
	return []finding.Finding{f}
}

// covered returns the part of a rail that bears the panel, as a box in plan: its pipe under the panel.
func (p *Piece) covered(panel piece.FlatPanel, s piece.PanelSeat) (lo, hi [2]length.Length) {
	stick := p.Sticks[s.Stick]
	a, b := p.Nodes[stick.A].At, p.Nodes[stick.B].At
	lo = [2]length.Length{max(min(a.X, b.X), panel.Min.X), max(min(a.Y, b.Y), panel.Min.Y)}
	hi = [2]length.Length{min(max(a.X, b.X), panel.Max.X), min(max(a.Y, b.Y), panel.Max.Y)}
	return lo, hi
}
