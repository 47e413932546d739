package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

var (
	insertFormula = figure.Formula{
		Text: "pressure at the mouth = 6·M ÷ (D·L²)", Source: "statics: a stiff pin in wood that gives evenly, any mechanics text",
		Range: "M of the swivelled wheel, D outside and L length of the insert; what the wheel is pushed sideways comes on top",
	}
	crushFormula = figure.Formula{
		Text: "crushing to design for = strength across the grain ÷ 2", Source: "Wood Handbook FPL-GTR-282 (2021) Table 5-3, compression perpendicular; the factor: common practice, no source",
	}
)

// A generic threaded insert: its wall outside the stem, and its greatest length. From memory.
const (
	insertWall = 3 * length.Inch / 32
	insertLong = length.Inch
)

// Insert says of stem casters whose stems go into wood whether the insert that they want, a bare stem wears its hole
// wide, bears the prying of a swivelled wheel: by what it presses on the wood at its mouth.
func Insert(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		for _, n := range s.feet {
			if f := p.Feet[n]; f.Panel >= 0 && f.Spec.Kind == piece.StemCaster {
				out = append(out, p.insert(s, f.Panel, n))
				break
			}
		}
	}
	return out
}

func (p *Piece) insert(s standing, panel, foot int) finding.Finding {
	f := finding.Finding{
		Check: "insert", Place: "stems of the casters in " + p.Panels[panel].Name,
		Parts:   tags(p.Parts.FootTags[foot], p.Parts.PanelTags[panel]),
		Assumed: []string{"a generic threaded insert, from memory: it takes the stem, 3/32 in of wall round it, as long as the panel lets and 1 in at most, turned into a bored hole and glued"},
		Caution: "Never set a stem into bare wood: its hole wears wide and the caster falls out.",
	}
	strength := p.crushing(panel)
	l, err := p.load(s, s.feet)
	switch {
	case err != nil:
		return unknown(f, err.Error())[0]
	case math.IsNaN(strength):
		return unknown(f, "how much "+p.Panels[panel].Name+" bears when an insert presses on it")[0]
	}
	long := min(insertLong, thickness(p.Panels[panel])-p.Shop.Settings.ScrewAllowance)
	if long <= 0 {
		return unknown(f, "a panel thick enough for an insert")[0]
	}
	kg := math.Max(l.even.Value, l.share.Value)
	moment, _ := p.plateMoment(kg)
	wide := p.stemWide() + 2*insertWall
	f.Figure = figure.Of("pressure at the insert's mouth", 6*moment.Value/(wide.MM()*long.MM()*long.MM()), figure.MPa, &insertFormula,
		figure.In("M", moment.Value, figure.NMM), figure.InLength("D", wide), figure.InLength("L", long), figure.In("load", kg, figure.Kg))
	f.Limit = figure.Of("crushing to design for", strength/2, figure.MPa, &crushFormula, figure.In("strength", strength, figure.MPa))
	f.Because = []figure.Figure{f.Figure, f.Limit}
	if f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost); f.Verdict != finding.Stands {
		f.Mend = fmt.Sprintf("take casters with plates, or an insert %s times as long in a thicker panel", figure.Digits(math.Sqrt(math.Max(1.1, f.Figure.Value/f.Limit.Value/0.8)), 2))
	}
	return f
}

// stemWide is the diameter of the commonest stem: 3/8 in, or 10 mm where the pipe is of the metric standard. From memory.
func (p *Piece) stemWide() length.Length {
	if p.Doc.Pipe.Standard == pipe.ISO7 {
		return 10 * length.Millimetre
	}
	return 3 * length.Inch / 8
}

// crushing is the strength of a panel's wood across its grain in MPa, NaN where it is not known.
func (p *Piece) crushing(panel int) float64 {
	spec := p.Panels[panel].Spec
	switch {
	case spec.Sheet != "":
		return math.NaN()
	case spec.Wood != nil:
		return spec.Wood.Species.CompPerp
	}
	return p.Doc.Wood.Species.CompPerp
}
