package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/wood"
)

// usualRings is the radius of the rings in a strip whose end grain nobody has looked at; common practice, no source.
const usualRings = 4 * length.Inch

// flatShare is the rise of a strip that a straightedge is let to show, as a share of the strip's width: 1/32 in a foot.
const flatShare = 1.0 / 384

var flatFormula = figure.Formula{
	Text:   "allowed = width ÷ 384",
	Source: "common practice, no source: 1/32 in a foot",
	Range:  "what a straightedge shows, not what breaks",
}

// Cup says of every wooden panel how hollow its strips would get over the year if nothing held them. A strip that
// is glued between others, or screwed down, is held flatter, so there the free cup makes the verdict tight at most.
func Cup(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i := range p.Panels {
		if p.Panels[i].Spec.Wood != nil {
			out = append(out, p.cup(i))
		}
	}
	return out
}

func (p *Piece) cup(i int) finding.Finding {
	w := p.Panels[i].Spec.Wood
	f := finding.Finding{
		Check: "cup", Place: p.Panels[i].Name, Parts: tags(p.Parts.PanelTags[i]), View: finding.View{From: "side"},
	}
	wide, alone := p.strip(i)
	f.Assumed = p.stripWords(i, wide, alone)
	end, unlike, err := p.cups(w)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	if w.Cut == wood.Quarter {
		f.Figure = figure.OfLength("cup", 0, nil, figure.InLength("w", wide)).Assuming("quarter-sawn strips do not cup by their rings")
	} else if f.Figure, err = wood.Cup(w.Species, wide, usualRings, w.Moisture, end); err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Limit = figure.Of("allowed", wide.MM()*flatShare, figure.MM, &flatFormula, figure.InLength("width", wide))
	f.Because = append([]figure.Figure{f.Figure}, p.unlikeFaces(i)...)
	f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost)
	if f.Verdict == finding.Fails && !alone {
		f.Verdict = finding.Tight
	}
	if f.Figure.Value > f.Limit.Value {
		f.Mend = p.narrower(unlike)
	}
	return f
}

// strip returns the width of the strips of panel i, and whether it is a single board that nothing holds flat.
func (p *Piece) strip(i int) (wide length.Length, alone bool) {
	wide = p.wide(i)
	if most := p.Shop.Panel.StripMost; most > 0 && most < wide {
		return most, false
	}
	return wide, !slices.ContainsFunc(p.Parts.Fasteners, func(f part.Fastener) bool { return f.Panel == i })
}

// stripWords says what is taken for granted of the strips.
func (p *Piece) stripWords(i int, wide length.Length, alone bool) []string {
	words := []string{"rings of " + p.Doc.Fineness.Text(usualRings) + " radius: look at the end grain", "both faces are coated in one session"}
	switch {
	case wide < p.wide(i):
		words = append(words, "strips as wide as the shop glues them; free: their neighbours hold them flatter",
			"ring sides alternate, so that the cups of neighbours make a ripple and not one bow")
	case alone:
		words = append(words, "one board, which nothing holds flat")
	default:
		words = append(words, "one board, free: its screws hold it flatter")
	}
	return append(words, p.Air.Assumed...)
}

// cups returns the end of the year at which a strip cups most, as its moisture, and how unlike its wood then
// changes both ways.
func (p *Piece) cups(w *piece.Wood) (end, unlike float64, err error) {
	dry, _, errDry := wood.Unlike(w.Species, w.Moisture, p.Air.DryMC)
	wet, _, errWet := wood.Unlike(w.Species, w.Moisture, p.Air.WetMC)
	if err = cmp.Or(errDry, errWet); err != nil {
		return 0, 0, err
	}
	if dry > wet {
		return p.Air.DryMC, dry, nil
	}
	return p.Air.WetMC, wet, nil
}

// unlikeFaces warns of what one coated face does to the whole panel.
func (p *Piece) unlikeFaces(i int) []figure.Figure {
	w := p.Panels[i].Spec.Wood
	cut := cmp.Or(w.Cut, wood.Flat)
	f, err := wood.FaceCup(w.Species, cut, p.wide(i), thickness(p.Panels[i]), 1)
	if err != nil || math.IsNaN(f.Value) {
		return nil
	}
	f.Name = "bow of the whole panel for each point of moisture between its faces, were it free"
	return []figure.Figure{f}
}

// narrower names the width of strips that stay flat enough.
func (p *Piece) narrower(unlike float64) string {
	w := wood.FlatEnough(unlike, flatShare, usualRings)
	w -= w % max(p.Doc.Fineness.Step, length.Nanometre)
	if w < max(p.Shop.Panel.StripLeast, length.Nanometre) {
		return fmt.Sprintf("take quarter-sawn strips, or bring the wood within fewer points of its place: flat-sawn ones would have to be under %s wide",
			p.up(p.Shop.Panel.StripLeast))
	}
	return fmt.Sprintf("rip its strips no wider than %s, or take quarter-sawn ones; alternate their ring sides", p.Doc.Fineness.Text(w))
}
