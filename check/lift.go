package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/stability"
	"rodwright/trade/within"
)

var peopleFormula = figure.Formula{
	Text: "limit = hands at most × what one lifts close to the body", Source: "NIOSH revised lifting equation (1991), load constant 23 kg, from memory; how many find a hold: common practice, no source",
	Range: "a good grip, now and then, straight in front, the load shared evenly",
}

// How many people find a hold: two on a part, one at each corner of a piece.
const (
	atPart  = 2
	atPiece = 4
)

// Lift says whether the finished piece and its heaviest part can be lifted by as many people as find a hold on
// them, and how many it takes.
func Lift(p *Piece) []finding.Finding {
	one, err := stability.LiftLimit(0)
	if err != nil {
		return unknown(finding.Finding{Check: "lift", Place: "the whole piece"}, err.Error())
	}
	if l := p.Shop.Settings.LiftKg; l > 0 && l < one.Value {
		one = figure.Of(one.Name, l, figure.Kg, nil).From("the shop's own setting")
	}
	var out []finding.Finding
	for _, s := range p.standing {
		out = append(out, p.lifted(p.place(s)+", empty", p.ownKg(s), atPiece, one, p.tagsOf(s)))
	}
	return append(out, p.liftPart(one)...)
}

func (p *Piece) liftPart(one figure.Figure) []finding.Finding {
	heaviest := -1
	for i := range p.Parts.Parts {
		if heaviest < 0 || p.Parts.Parts[i].MassKg > p.Parts.Parts[heaviest].MassKg {
			heaviest = i
		}
	}
	if heaviest < 0 {
		return nil
	}
	pt := p.Parts.Parts[heaviest]
	return []finding.Finding{p.reached(p.lifted("the heaviest part, "+pt.Name, pt.MassKg, atPart, one, tags(pt.Tags...)), pt, one)}
}

// reached says how many carry a part whose middle lies far from the body, or which is long, and what one lifts there.
func (p *Piece) reached(f finding.Finding, pt part.Part, one figure.Figure) finding.Finding {
	if pt.Kind != part.Panel || len(pt.Indexes) == 0 {
		return f
	}
	panel := size(p.Panels[pt.Indexes[0]])
	long, wide := max(panel[0], panel[1]), min(panel[0], panel[1])
	reach, err := stability.Reach(wide)
	if err != nil {
		return f
	}
	f.Because = append(f.Because, reach)
	alone := figure.Figure{}
	if l, err := stability.LiftLimit(length.FromMM(reach.Value)); err == nil {
		alone = l
		alone.Name, alone.Value = "one with it held flat before the body", min(l.Value, one.Value)
		f.Because = append(f.Because, alone)
	}
	switch {
	case long > alonePart:
		f.Assumed = append(f.Assumed, fmt.Sprintf("%s long: two carry it because of its length, one at each end", p.Doc.Fineness.Text(long)))
	case pt.MassKg > alone.Value:
		f.Assumed = append(f.Assumed, "held flat before the body its middle lies too far out for one: two carry it, one at each end, or one on edge and close to the body")
	}
	return f
}

// alonePart is the longest panel that one person steers through a house, 2 m. Common practice, no source.
const alonePart = 2 * length.Metre

func (p *Piece) lifted(place string, kg float64, most int, one figure.Figure, tags []string) finding.Finding {
	f := finding.Finding{
		Check: "lift", Place: place, Parts: tags,
		Figure: figure.Of("mass", kg, figure.Kg, nil),
		Limit: figure.Of("lift", one.Value*float64(most), figure.Kg, &peopleFormula,
			figure.In("hands at most", float64(most), figure.Count), figure.In("one", one.Value, figure.Kg)),
	}
	f.Because = []figure.Figure{one, f.Limit}
	need, _ := within.Whole(kg / one.Value)
	f.Assumed = []string{fmt.Sprintf("it takes %s, with the load close to the body", peopleWords(max(1, need)))}
	f.Verdict = finding.Judge(kg, f.Limit.Value, finding.AtMost)
	if kg > one.Value {
		f.Caution = "More than one person should lift: get help. Far from the body a back bears less, at 50 cm reach only half."
	}
	if f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("carry it in parts or by a hoist or skates, or make it %s kg lighter", figure.Digits(kg-f.Limit.Value, 3))
	}
	return f
}

func peopleWords(n int) string {
	switch n {
	case 1:
		return "one person"
	case 2:
		return "two people"
	}
	return fmt.Sprintf("%d people", n)
}
