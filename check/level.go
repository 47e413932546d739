package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// FootReach is how far a levelling foot goes in or out from the middle of its thread, 3/8 in: from memory.
const FootReach = 3 * length.Inch / 8

var (
	footReachFormula = figure.Formula{
		Text: "taken up by feet = feet × reach of one", Source: "from memory: a levelling foot goes 3/8 in in or out from its middle",
		Range: "feet of the longer diagonal go in, those of the other out; of two legs only, one goes in and one out",
	}
	turnReachFormula = figure.Formula{
		Text:   "taken up by turns = legs of a diagonal × (turns tighter + turns looser) × pitch",
		Source: "wrench-tight is 1.5 to 3.6 turns past hand-tight, common practice, no source; a thread moves by its pitch in a turn",
		Range:  "the joint above the foot, turned when the piece is put together: a tight taper thread is not turned back",
	}
	turnsLeftFormula = figure.Formula{
		Text: "turns = 3.6 − (e − L1) ÷ pitch tighter, (e − L1) ÷ pitch − 1.5 looser", Source: "common practice, no source",
		Range: "taper threads of normal make-up e, hand-tight length L1",
	}
)

// leg is one foot under a post and how far its length may come out otherwise than drawn, from the floor up to what the
// legs have in common.
type leg struct {
	foot int
	giving
	pipes int
}

// Level says of every piece on legs of pipe how far it may rock by what the legs' joints give, and whether its feet, or
// turns of the joints above them, take that up. On three legs nothing rocks.
func Level(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		if legs := p.legs(s); len(legs) > 3 {
			out = append(out, p.level(s, legs))
		}
	}
	return out
}

// legs returns the legs of what stands by itself, in order round it; none where a foot is fixed to no pipe.
func (p *Piece) legs(s standing) []leg {
	var out []leg
	to := p.legTops(s)
	for _, i := range s.feet {
		n := p.Feet[i].Node
		if n < 0 || len(p.Nodes[n].Sticks) == 0 {
			return nil
		}
		l := leg{foot: i}
		for _, stick := range p.upFrom(n) {
			below := p.Nodes[p.Sticks[stick].A]
			if below.At.Z+below.Fitting.Band.Half() >= to { // a rail's joint bears the panel by half its band at most
				break
			}
			l.giving, l.pipes = l.and(p.giveOf(stick)), l.pipes+1
		}
		out = append(out, l)
	}
	p.roundAbout(out)
	return out
}

// upFrom returns the upright pipes above a joint, from below.
func (p *Piece) upFrom(node int) (out []int) {
	for {
		next := -1
		for _, s := range p.Nodes[node].Sticks {
			if p.Sticks[s].A == node && p.Sticks[s].Dir == (piece.Dir{Z: 1}) {
				next = s
			}
		}
		if next < 0 {
			return out
		}
		out, node = append(out, next), p.Sticks[next].B
	}
}

// legTops is the height up to which legs are compared: that of the panel that most of them bear, the lowest of equals;
// where they bear none, that of the rails that tie most of them.
func (p *Piece) legTops(s standing) length.Length {
	best, most := length.Max, 0
	count := map[length.Length]int{}
	for _, i := range s.feet {
		if n := p.Feet[i].Node; n >= 0 {
			for _, z := range p.tiedAt(n) {
				count[z]++
			}
		}
	}
	for z, n := range count {
		if n > most || n == most && z < best {
			best, most = z, n
		}
	}
	return best
}

// tiedAt returns the heights at which a leg bears a panel, by a flange on it or by a rail; where it bears none, those of
// its joints with rails.
func (p *Piece) tiedAt(foot int) (out []length.Length) {
	var rails []length.Length
	for _, s := range p.upFrom(foot) {
		n := p.Sticks[s].B
		switch {
		case p.Nodes[n].Panel >= 0:
			out = append(out, p.Panels[p.Nodes[n].Panel].Min.Z)
		case len(p.Nodes[n].Sticks) > 2 || len(p.Nodes[n].Sticks) == 2 && p.Nodes[n].Kind != pipe.Coupling && p.Nodes[n].Kind != pipe.Union:
			rails = append(rails, p.Nodes[n].At.Z)
			if z, bears := p.railBears(n); bears {
				out = append(out, z)
			}
		}
	}
	if len(out) == 0 {
		return rails
	}
	return out
}

// railBears returns the underside of the panel that a rail at a joint bears.
func (p *Piece) railBears(node int) (length.Length, bool) {
	for _, panel := range p.Panels {
		for _, s := range panel.Seats {
			if s.Kind == piece.OnRails && s.Stick >= 0 && slices.Contains(p.Nodes[node].Sticks, s.Stick) {
				return panel.Min.Z, true
			}
		}
	}
	return 0, false
}

// roundAbout puts legs in order round the piece.
func (p *Piece) roundAbout(legs []leg) {
	var x, y float64
	for _, l := range legs {
		x, y = x+p.Feet[l.foot].At.X.MM(), y+p.Feet[l.foot].At.Y.MM()
	}
	n := float64(max(len(legs), 1))
	angle := func(l leg) float64 {
		at := p.Feet[l.foot].At
		return math.Atan2(at.Y.MM()-y/n, at.X.MM()-x/n)
	}
	slices.SortStableFunc(legs, func(a, b leg) int { return cmp.Compare(angle(a), angle(b)) })
}

// rocks adds up what makes a piece rock: of four legs all of them, as the rock is the difference of the sums of the
// diagonals; of more the two that may be off most, one long and one short.
func rocks(legs []leg) (g giving, counted []leg) {
	counted = slices.Clone(legs)
	if len(legs) > 4 {
		slices.SortStableFunc(counted, func(a, b leg) int { return cmp.Compare(b.felt.Worst(), a.felt.Worst()) })
		counted = counted[:2]
	}
	for _, l := range counted {
		g = g.and(l.giving)
	}
	return g, counted
}

func (p *Piece) level(s standing, legs []leg) finding.Finding {
	g, counted := rocks(legs)
	f := finding.Finding{Check: "level", Place: p.place(s) + " on its legs", View: finding.View{From: "front"}}
	for _, l := range legs {
		f.Parts = append(f.Parts, p.Parts.NodeTags[p.Feet[l.foot].Node])
		for _, stick := range p.upFrom(p.Feet[l.foot].Node)[:l.pipes] {
			f.Parts = append(f.Parts, p.Parts.StickTags[stick])
		}
	}
	f.Parts = tags(f.Parts...)
	figures := g.felt.Figures()
	f.Figure, f.Because = figures[2], figures
	reach, turns := p.takenUp(legs[0], len(counted))
	f.Limit = reach
	f.Because = append(f.Because, turns...)
	f.Because = append(f.Because, figure.OfLength("off at worst where each pipe is set by measure", g.set.Worst(), figures[0].Formula), reach)
	f.Assumed = append(slices.Clone(giveWords), "the floor is even: check it before a leg is blamed", "the legs are independent of each other, and the frame does not give")
	if f.Verdict = finding.Judge(f.Figure.Value, reach.Value, finding.AtMost); f.Verdict == finding.Fails {
		f.Verdict = finding.Tight
	}
	if f.Verdict == finding.Tight {
		f.Mend = p.levelMend(legs, g, turns)
	}
	return f
}

// takenUp is how much rock the feet take up, or turns of the joints above them; and the turns.
func (p *Piece) takenUp(l leg, legs int) (reach figure.Figure, turns []figure.Figure) {
	foot := p.Feet[l.foot]
	size := p.Nodes[foot.Node].Size
	tighter, looser := size.TurnsLeft()
	turns = []figure.Figure{
		figure.Of("turns tighter, each leg", tighter, figure.Count, &turnsLeftFormula, figure.InLength("e", size.Engagement),
			figure.InLength("L1", size.HandTight), figure.InLength("pitch", size.Pitch)),
		figure.Of("turns looser, each leg", looser, figure.Count, &turnsLeftFormula, figure.InLength("e", size.Engagement),
			figure.InLength("L1", size.HandTight), figure.InLength("pitch", size.Pitch)),
	}
	if foot.Spec.Kind == piece.Leveller {
		return figure.OfLength("taken up by the feet", FootReach*length.Length(legs), &footReachFormula,
			figure.In("feet", float64(legs), figure.Count), figure.InLength("reach", FootReach)), turns
	}
	half := float64(legs) / 2
	return figure.OfLength("taken up by turns", size.MakeUp(half*(tighter+looser)), &turnReachFormula,
		figure.In("legs", half, figure.Count), figure.In("tighter", tighter, figure.Count), figure.In("looser", looser, figure.Count),
		figure.InLength("pitch", size.Pitch)), turns
}

// levelMend says how the legs come out even: each pipe set by measure, then the rest by turns.
func (p *Piece) levelMend(legs []leg, g giving, turns []figure.Figure) string {
	mend := fmt.Sprintf("set every pipe of the legs by measure, within half a turn: then it is off by %s at most; turn the piece over and measure the legs",
		p.up(g.set.Worst()))
	if len(legs) == 4 {
		mend += ": it rocks by |(a + c) − (b + d)|, so shorten one leg of the longer diagonal by that"
	}
	pitch := p.Nodes[p.Feet[legs[0].foot].Node].Size.Pitch
	if pitch <= 0 || p.Feet[legs[0].foot].Spec.Kind == piece.Leveller {
		return mend
	}
	return mend + fmt.Sprintf(", a turn of the joint above its foot for every %s mm, %s turns tighter at most", figure.Digits(pitch.MM(), 3), figure.Digits(turns[0].Value, 2))
}
