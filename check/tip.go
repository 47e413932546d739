package check

import (
	"fmt"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

var tipLimit = figure.Formula{
	Text:   "α ≥ the shop's least tilt",
	Source: "IEC 60335-1 clause 20.1 asks 10° of household appliances; taken over for furniture by the shop",
}

// Tip says, for every side of the base, at which tilt the piece goes over with the worst combination of
// the things it holds: each may be there or not. What is fixed to a wall does not tip.
func Tip(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		if s.wall || len(s.sticks) == 0 && len(s.feet) == 0 {
			continue // a panel that rests on nothing is for the seat to tell
		}
		out = append(out, p.tip(s)...)
	}
	return out
}

func (p *Piece) tip(s standing) []finding.Finding {
	f := finding.Finding{Check: "tip", Place: p.place(s), Parts: p.tagsOf(s)}
	if len(s.feet) == 0 {
		return unknown(f, "what it stands on: name its feet, for example caps, or fix it to a wall")
	}
	sides := p.base(s.feet)
	if sides == nil {
		f.Mend = "give it three feet that do not stand in one line, or fix it to a wall"
		return unknown(f, "three feet that do not stand in one line")
	}
	own, err := stability.Centre(p.bodies(s)...)
	if err != nil {
		return unknown(f, err.Error())
	}
	var out []finding.Finding
	for _, over := range sides {
		out = append(out, p.tipOver(s, over, own)...)
	}
	return out
}

// tipOver weighs one side of the base.
func (p *Piece) tipOver(s standing, over side, own stability.Mass) []finding.Finding {
	things := p.things(s)
	there := worstHeld(over, own, things)
	f := finding.Finding{
		Check: "tip", Sense: finding.AtLeast, Place: over.towards() + ", " + whatIsThere(things, there),
		Parts:   tags(p.Parts.FootTags[over.feet[0]], p.Parts.FootTags[over.feet[1]]),
		Assumed: []string{"each thing held may be there or not: the worst combination is shown", "the piece is rigid and does not slide"},
		View:    finding.View{From: over.view()},
	}
	if len(p.standing) > 1 {
		f.Place = p.place(s) + ", " + f.Place
	}
	if len(f.Parts) == 0 { // bare ends of pipe have no tag of their own
		f.Parts = p.tagsOf(s)
	}
	centre, err := stability.Centre(with(own, things, there)...)
	if err != nil {
		return unknown(f, err.Error())
	}
	inside := length.FromMM(over.inside(centre.X.MM(), centre.Y.MM()))
	angle, err := stability.Angle(inside, centre.Z)
	if err != nil {
		return unknown(f, err.Error())
	}
	f.Limit = figure.Of("least tilt", p.Shop.Settings.TipDegrees, figure.Deg, &tipLimit)
	f.Figure = angle
	f.Because = append([]figure.Figure{angle}, p.goesOverAt(s, over, centre, inside)...)
	f.Assumed = append(f.Assumed, swung(over)...)
	f.Verdict = finding.Judge(angle.Value, f.Limit.Value, finding.AtLeast)
	f.View.Marks = []finding.Mark{{At: [3]float64{centre.X.MM(), centre.Y.MM(), centre.Z.MM()}, Text: "centre of gravity"}}
	if f.Verdict != finding.Stands {
		f.Caution = "A tall piece can fall on a person: lock the wheels if it has any, keep heavy things low, or anchor it to a wall."
	}
	if f.Verdict == finding.Fails {
		f.Mend = p.tipMend(s, over, own)
	}
	return []finding.Finding{f}
}

// view names the side from which the piece is seen to go over.
func (s side) view() string {
	if strings.HasSuffix(s.towards(), "left") || strings.HasSuffix(s.towards(), "right") {
		return "front"
	}
	return "side"
}

// swung says in words where the floor is touched.
func swung(s side) []string {
	switch {
	case s.in > 0:
		return []string{"both casters on that side swung inward"}
	case s.in < 0:
		return []string{"it goes over on the rims of the flanges it stands on"}
	}
	return nil
}

// with returns the piece itself and those of the things that are there.
func with(own stability.Mass, things []piece.Held, there []bool) []stability.Mass {
	out := []stability.Mass{own}
	for i, h := range things {
		if there[i] {
			out = append(out, heldMass(h))
		}
	}
	return out
}

// whatIsThere tells a combination of held things in words.
func whatIsThere(things []piece.Held, there []bool) string {
	here, all, order := map[string]int{}, map[string]int{}, []string{}
	total := 0
	for i, h := range things {
		all[h.Spec.Name]++
		if !there[i] {
			continue
		}
		if here[h.Spec.Name] == 0 {
			order = append(order, h.Spec.Name)
		}
		here[h.Spec.Name]++
		total++
	}
	switch {
	case total == 0:
		return "empty"
	case total == len(things):
		return "with everything it holds"
	}
	for i, name := range order {
		switch n := here[name]; {
		case n < all[name]:
			order[i] = fmt.Sprintf("%d of %d %s", n, all[name], name)
		case n > 1:
			order[i] = fmt.Sprintf("%d %s", n, name)
		}
	}
	return "with " + strings.Join(order, " and ") + " alone on it"
}
