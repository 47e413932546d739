package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/screw"
)

var nearFormula = figure.Formula{
	Text: "wood beside the screw, its flange turned for the worst", Source: "geometry",
	Range: "edges where their profile ends, the walls of openings, the next screw",
}

// close is the place where a screw of a panel comes nearest to where the wood would split.
type close struct {
	set        screwSet
	left, best float64 // mm, with its flange turned for the worst and for the best
	least      figure.Figure
	beside     string
	at         [2]float64 // mm, of the set
	between    bool       // another screw, not an edge
}

// aMicron is what a float64 may miss of an exact length, in mm, and more.
const aMicron = 1e-3

// short is by how much the wood falls short, in mm; negative where there is more.
func (c close) short() float64 { return c.least.Value - c.left }

// Edge says of every panel whether the screw that comes nearest to an edge, an end, an opening or another
// screw keeps far enough off that the wood does not split.
func Edge(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i := range p.Panels {
		if c, ok := p.closest(i); ok {
			out = append(out, p.besides(i, c))
		}
	}
	return out
}

// closest returns the nearest place of panel i; false where nothing is screwed to it.
func (p *Piece) closest(i int) (worst close, found bool) {
	sets := p.screwSets(i)
	try := func(c close) {
		if !found || c.short() > worst.short() {
			worst, found = c, true
		}
	}
	for n, s := range sets {
		keeps, err := screw.Spaced(length.FromMM(s.shank), true)
		if err != nil {
			continue
		}
		for _, at := range s.points() {
			p.edgesBy(i, s, at, keeps, try)
			p.openingsBy(i, s, at, keeps, try)
		}
		for _, other := range sets[:n] {
			if other.above == s.above {
				d := apart(s, other)
				try(close{set: s, left: d, best: d, least: keeps.Along, beside: "beside the screws of " + other.what, at: s.at, between: true})
			}
		}
	}
	return worst, found
}

// edgesBy tries a point of a set against the four edges of panel i.
func (p *Piece) edgesBy(i int, s screwSet, at [2]float64, keeps screw.Spacing, try func(close)) {
	panel := p.Panels[i]
	for _, e := range [4]struct {
		side piece.PanelSide
		off  float64
		end  bool
	}{
		{piece.LeftSide, at[0] - panel.Min.X.MM(), panel.GrainX}, {piece.RightSide, panel.Max.X.MM() - at[0], panel.GrainX},
		{piece.FrontSide, at[1] - panel.Min.Y.MM(), !panel.GrainX}, {piece.BackSide, panel.Max.Y.MM() - at[1], !panel.GrainX},
	} {
		for _, profile := range panel.Edges {
			if piece.PanelSide(profile.Side) == e.side {
				e.off -= profile.Size.MM()
			}
		}
		c := close{set: s, left: e.off - s.round, best: e.off - s.round*s.turnedBest(), least: keeps.Edge, beside: "to the " + string(e.side) + " edge", at: at}
		if e.end {
			c.least, c.beside = keeps.End, "to the "+string(e.side)+" end"
		}
		try(c)
	}
}

// openingsBy tries a point of a set against what is cut right through panel i. Where the opening lies along
// the grain its wall is an end.
func (p *Piece) openingsBy(i int, s screwSet, at [2]float64, keeps screw.Spacing, try func(close)) {
	panel := p.Panels[i]
	for _, f := range panel.Features {
		if f.Depth > 0 {
			continue
		}
		r, box := roundOff(f)
		var off [2]float64
		for a, origin := range [2]length.Length{panel.Min.X, panel.Min.Y} {
			x := at[a] - origin.MM()
			off[a] = max(box[a].from.MM()-x, x-box[a].to.MM(), 0)
		}
		d := math.Hypot(off[0], off[1]) - r.MM()
		c := close{set: s, left: d - s.round, best: d - s.round*s.turnedBest(), least: keeps.Edge, beside: "to " + openingName(f), at: at}
		if (off[0] > off[1]) == panel.GrainX {
			c.least = keeps.End
		}
		try(c)
	}
}

// besides judges the nearest place of panel i.
func (p *Piece) besides(i int, c close) finding.Finding {
	f := finding.Finding{
		Check: "edge", Parts: tags(p.Parts.PanelTags[i], c.set.Holds), Sense: finding.AtLeast,
		Place: fmt.Sprintf("screws of %s in %s, %s", c.set.what, p.Panels[i].Name, c.beside),
		Figure: figure.Of("wood beside the nearest screw", c.left, figure.MM, &nearFormula,
			figure.In("to the middle of the set", c.left+c.set.round, figure.MM), figure.In("radius of its screws", c.set.round, figure.MM)),
		Limit:   c.least,
		Assumed: []string{"a pilot is bored for every screw; without one the ends want twice as much"},
		View:    finding.View{From: "top", Marks: []finding.Mark{{At: [3]float64{c.at[0], c.at[1], p.Panels[i].Min.Z.MM()}, Text: c.beside}}},
	}
	f.Because = []figure.Figure{f.Figure, c.least}
	if c.short() < aMicron { // the limit has its margin in it: what keeps it is not tight
		return f
	}
	away := p.up(length.FromMM(c.short()))
	switch {
	case c.best > c.least.Value-aMicron:
		f.Verdict = finding.Tight
		f.Assumed = append(f.Assumed, "turned so that two of its screws stand along the edge it keeps off")
		f.Mend = fmt.Sprintf("bore with two of its holes along that edge, or move it %s away", away)
	case c.between:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("move one of them %s away, or leave out the screws that come together", away)
	default:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("move it %s away", away)
	}
	return f
}
