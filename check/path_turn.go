package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/way"
)

var roundFormula = figure.Formula{
	Text:   "length in plan ≤ the longest that goes round with the piece's width",
	Source: "geometry", Range: "of every position, on its feet, on a side, on end or pitched up under the ceiling, the one with the most to spare",
}

// usualCeiling is how high a piece may stand in a passage where no ceiling is named, not pitched: the height of a usual
// door, 78 in. Common practice, no source.
const usualCeiling = 78 * length.Inch

// carried is one way to carry a piece round a turn: what it takes of the floor, and the longest that would pass.
type carried struct {
	plan, longest figure.Figure
	wide          length.Length
	how           string
}

// spare is how many times longer than it is the piece could be.
func (c carried) spare() float64 { return c.longest.Value / c.plan.Value }

// round finds the position in which the piece goes round a turn with the most to spare.
func (p *Piece) round(f finding.Finding, s [3]length.Length, t piece.Turn) finding.Finding {
	f.Place += " round the turn " + t.Name
	best, err := p.bestRound(s, t)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Figure = figure.OfLength("length in plan", length.FromMM(best.plan.Value), &roundFormula, figure.InLength("width", best.wide))
	f.Limit, f.Sense = best.longest, finding.AtMost
	f.Because = []figure.Figure{f.Figure, best.longest}
	if best.plan.Formula != nil {
		f.Because = append(f.Because, best.plan)
	}
	f.Assumed = []string{best.how, "a right-angled turn between upright walls, nothing in the way"}
	if f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = p.mendRound(best, t)
	}
	return f
}

// mendRound says by how much a piece must be shorter, or slimmer where it is wider than a passage.
func (p *Piece) mendRound(c carried, t piece.Turn) string {
	over, what := length.FromMM(c.plan.Value-c.longest.Value)+length.Nanometre, "shorter"
	if narrow := min(t.From, t.To); c.wide > narrow {
		over, what = c.wide-narrow, "slimmer"
	}
	return fmt.Sprintf("make it %s %s as it is carried, take feet or frame off for the way, or join it at its place", p.up(over), what)
}

// bestRound tries each of the three sizes upright, and, under a named ceiling, pitched up.
func (p *Piece) bestRound(s [3]length.Length, t piece.Turn) (best carried, err error) {
	ceiling := usualCeiling
	if c := p.Doc.Place.Ceiling; c != nil {
		ceiling = *c
	}
	lowest := min(s[0], s[1], s[2])
	for up := range s {
		if s[up] > ceiling && s[up] > lowest {
			continue
		}
		long, wide := max(s[(up+1)%3], s[(up+2)%3]), min(s[(up+1)%3], s[(up+2)%3])
		one, err := p.carriedSo(long, wide, s[up], t)
		if err != nil {
			return best, err
		}
		if best.how == "" || one.spare() > best.spare() || one.spare() == best.spare() && one.wide < best.wide {
			best = one
		}
	}
	return best, nil
}

// carriedSo weighs one position with the given size upright, pitched where the ceiling is known and that helps.
func (p *Piece) carriedSo(long, wide, high length.Length, t piece.Turn) (carried, error) {
	c := carried{plan: figure.OfLength("length in plan", long, nil), wide: wide, how: "carried level, " + p.Doc.Fineness.Text(high) + " high"}
	if p.Doc.Place.Ceiling == nil {
		c.how += "; no ceiling is named: never higher than a door of " + p.Doc.Fineness.Text(usualCeiling)
	} else {
		pitched, err := way.Pitched(long, high, *p.Doc.Place.Ceiling)
		if err != nil {
			return c, err
		}
		if plan := length.FromMM(pitched.Value); plan < long && plan >= wide {
			c.plan, c.how = pitched, "carried pitched up to the ceiling, which takes people above and below it"
		}
	}
	var err error
	c.longest, err = way.LongestRound(t.From, t.To, wide)
	return c, err
}
