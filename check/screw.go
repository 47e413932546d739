package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/screw"
)

var (
	screwFormula = figure.Formula{
		Text: "left = grip + thickness − length ≥ the allowance for the point", Source: "common practice, no source",
		Range: "the point stays in the wood with the head seated on the steel",
	}
	biteFormula = figure.Formula{
		Text: "bite = length − grip", Source: "Wood Handbook FPL-GTR-282 (2021) ch. 8: no lateral load below 4 diameters of penetration, from memory",
	}
	meetFormula = figure.Formula{
		Text: "left = thickness − bite from below − bite from above", Source: "common practice, no source",
		Range: "screws that come from both faces and can stand over one another",
	}
	stopFormula = figure.Formula{
		Text: "depth = length − grip", Source: "common practice, no source", Range: "a stop on the bit, so that the pilot ends where the point does and the wood beyond it stays whole",
	}
)

// Screw says of every kind of screw, panel by panel, whether its point stays in the wood and its thread
// reaches it, and whether screws from both faces would meet.
func Screw(p *Piece) []finding.Finding {
	type set struct {
		screws string
		panel  int
		grip   length.Length
	}
	var out []finding.Finding
	at := map[set]int{}
	for _, f := range p.Parts.Fasteners {
		if f.Panel < 0 {
			continue
		}
		k := set{f.Screws, f.Panel, f.Grip}
		if n, seen := at[k]; seen {
			out[n].Parts = tags(append(out[n].Parts, f.Holds)...)
			continue
		}
		at[k] = len(out)
		out = append(out, p.screwLength(f))
	}
	out = append(out, p.screwsMeet()...)
	return append(out, p.hanging()...)
}

func (p *Piece) screwLength(f part.Fastener) finding.Finding {
	panel := p.Panels[f.Panel]
	thick := thickness(panel)
	left, bite := f.Grip+thick-f.Length, f.Length-f.Grip
	found := finding.Finding{
		Check: "screw", Parts: tags(f.Screws, p.Parts.PanelTags[f.Panel], f.Holds), Sense: finding.AtLeast,
		Place: fmt.Sprintf("wood screws %d × %s into %s", f.Gauge, p.Doc.Fineness.Text(f.Length), panel.Name),
		Figure: figure.OfLength("wood left beyond the point", left, &screwFormula,
			figure.InLength("grip", f.Grip), figure.InLength("thickness", thick), figure.InLength("length", f.Length)),
		Limit:   figure.OfLength("least", p.Shop.Settings.ScrewAllowance, nil),
		Assumed: append([]string(nil), f.Assumed...),
	}
	inWood := figure.OfLength("bite in the wood", bite, &biteFormula, figure.InLength("length", f.Length), figure.InLength("grip", f.Grip))
	found.Because = append([]figure.Figure{found.Figure, inWood}, p.boring(f)...)
	rim, bears := headBears(f)
	if !rim.Missing() {
		found.Because = append(found.Because, rim)
	}
	switch least := p.leastBite(f.Gauge); { // the allowance is the margin: a screw that keeps it is not tight
	case bite <= 0:
		found.Verdict, found.Figure = finding.Fails, inWood
		found.Limit = figure.OfLength("least", least, &biteFormula)
	case !f.Fits:
		found.Verdict = finding.Fails
	case bite < least:
		found.Verdict = finding.Tight
		found.Assumed = append(found.Assumed, fmt.Sprintf("it bites only %s, less than four of its diameters: what it bears sideways is not counted on", p.Doc.Fineness.Text(bite)))
	}
	switch {
	case found.Verdict == finding.Fails:
		found.Mend = p.fittingScrew(f, thick)
	case !bears:
		found.Verdict = finding.Tight
		found.Mend = fmt.Sprintf("put a washer wider than %s under each head: the head slips through the steel", p.up(f.Hole))
	}
	return found
}

// boring returns the pilot to bore for a set of screws and how deep, as the work is told; none in sheet goods.
func (p *Piece) boring(f part.Fastener) []figure.Figure {
	spec := p.Panels[f.Panel].Spec
	if spec.Wood == nil || f.Length <= f.Grip {
		return nil
	}
	b, err := screw.Pilot(f.Gauge, spec.Wood.Species)
	if err != nil {
		return nil
	}
	return []figure.Figure{b.Pilot, figure.OfLength("depth of the pilot", f.Length-f.Grip, &stopFormula,
		figure.InLength("length", f.Length), figure.InLength("grip", f.Grip))}
}

// headBears returns how much of the head bears on the steel and whether it does at all. Round a slot it bears on
// both sides; where the hole is as sold and not known there is no figure.
func headBears(f part.Fastener) (figure.Figure, bool) {
	if f.Slotted || f.Hole <= 0 {
		return figure.Figure{}, true
	}
	rim, err := screw.Rim(f.Gauge, f.Hole)
	if err != nil {
		return figure.Figure{}, true
	}
	return rim, rim.Value > 0
}

// leastBite is the penetration below which a screw bears nothing sideways: four diameters.
func (p *Piece) leastBite(gauge int) length.Length {
	sc, err := screw.Lookup(gauge)
	if err != nil {
		return 0
	}
	return 4 * sc.Shank
}

// fittingScrew names what would fit: the longest screw sold that does, or a thicker panel. The shop's
// allowance stands in for the trade's.
func (p *Piece) fittingScrew(f part.Fastener, thick length.Length) string {
	if l, ok := screw.LongestFor(f.Grip, thick+screw.Skin-p.Shop.Settings.ScrewAllowance); ok && l != f.Length {
		return fmt.Sprintf("take a screw of %s", p.Doc.Fineness.Text(l))
	}
	lacks := screw.StockLengths()[0]
	for _, l := range screw.StockLengths() {
		if l > f.Grip {
			lacks = l
			break
		}
	}
	return fmt.Sprintf("no wood screw sold is short enough: make the panel %s thicker, or put a block under the steel",
		p.up(lacks+p.Shop.Settings.ScrewAllowance-f.Grip-thick))
}

// screwsMeet tells of flanges, straps and plates on both faces of a panel whose screws can stand over one
// another, however the flanges are turned.
func (p *Piece) screwsMeet() []finding.Finding {
	var out []finding.Finding
	for i := range p.Panels {
		sets := p.screwSets(i)
		for n, a := range sets {
			for _, b := range sets[:n] {
				if a.above != b.above && apart(a, b) < (a.shank+b.shank)/2+leastBetween {
					out = append(out, p.meet(a, b))
				}
			}
		}
	}
	return out
}

// leastBetween is the wood that keeps two screws apart which come from opposite faces, 1/8 in, in mm: common practice,
// no source.
const leastBetween = 25.4 / 8

func (p *Piece) meet(a, b screwSet) finding.Finding {
	panel := p.Panels[a.Panel]
	biteA, biteB := a.Length-a.Grip, b.Length-b.Grip
	left := thickness(panel) - biteA - biteB
	f := finding.Finding{
		Check: "screw", Parts: tags(p.Parts.PanelTags[a.Panel], a.Holds, b.Holds), Sense: finding.AtLeast,
		Place: "screws from both faces of " + panel.Name + ", at " + b.what,
		Figure: figure.OfLength("wood between the points", left, &meetFormula,
			figure.InLength("thickness", thickness(panel)), figure.InLength("bite", biteA), figure.InLength("bite from the other face", biteB)),
		Limit: figure.OfLength("least", 0, nil),
	}
	f.Because = []figure.Figure{f.Figure}
	if left < 0 {
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("take screws %s shorter on one face, or turn one flange so that its screws pass between the others", p.up(-left))
	}
	return f
}
