package check

import (
	"fmt"
	"math"

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
		Range: "screws that come from both faces within one plate's width",
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
	return append(out, p.screwsMeet()...)
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
	found.Because = []figure.Figure{found.Figure, inWood}
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
	if found.Verdict == finding.Fails {
		found.Mend = p.fittingScrew(f, thick)
	}
	return found
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

// screwsMeet tells of flanges on both faces of a panel whose screws come from opposite sides within one
// plate's width.
func (p *Piece) screwsMeet() []finding.Finding {
	var out []finding.Finding
	for n, a := range p.Parts.Fasteners {
		for _, b := range p.Parts.Fasteners[:n] {
			if f, ok := p.meet(a, b); ok {
				out = append(out, f)
			}
		}
	}
	return out
}

func (p *Piece) meet(a, b part.Fastener) (finding.Finding, bool) {
	if a.Panel < 0 || a.Panel != b.Panel || a.Node < 0 || b.Node < 0 {
		return finding.Finding{}, false
	}
	na, nb := p.Nodes[a.Node], p.Nodes[b.Node]
	apart := math.Hypot((na.At.X - nb.At.X).MM(), (na.At.Y - nb.At.Y).MM())
	if na.At.Z == nb.At.Z || apart >= (na.Fitting.Plate.Half()+nb.Fitting.Plate.Half()).MM() {
		return finding.Finding{}, false
	}
	panel := p.Panels[a.Panel]
	biteA, biteB := a.Length-a.Grip, b.Length-b.Grip
	left := thickness(panel) - biteA - biteB
	f := finding.Finding{
		Check: "screw", Parts: tags(p.Parts.PanelTags[a.Panel], a.Holds, b.Holds), Sense: finding.AtLeast,
		Place: "screws from both faces of " + panel.Name + ", at the " + nb.Place,
		Figure: figure.OfLength("wood between the points", left, &meetFormula,
			figure.InLength("thickness", thickness(panel)), figure.InLength("bite", biteA), figure.InLength("bite from the other face", biteB)),
		Limit: figure.OfLength("least", 0, nil),
	}
	f.Because = []figure.Figure{f.Figure}
	if left < 0 {
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("take screws %s shorter on one face, or turn one flange so that its screws pass between the others", p.up(-left))
	}
	return f, true
}
