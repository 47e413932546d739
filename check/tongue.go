package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/tongue"
	"rodwright/trade/wood"
)

// handPress is what a hand presses with, in newtons; it may come on any tongue. Common practice, no source.
const handPress = 250

var tongueLoad = figure.Formula{
	Text: "P = 250 N of a hand, or half the weight of what stands there", Source: "common practice, no source",
	Range: "a thing set down on its rim; one that no place is given for may stand anywhere on its panel",
}

// Tongue says of every wooden panel with openings whether the wood that stands free beside them, between an opening and
// the edge or the next opening, bears a hand or half a held thing: of each row of openings that does not stand the worst
// tongue, or of the panel the worst where all stand. Round holes count as the square inside them.
func Tongue(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		if panel.Spec.Wood != nil {
			out = append(out, p.tongues(i)...)
		}
	}
	return out
}

// tongues keeps what a maker must see of the tongues of one panel.
func (p *Piece) tongues(i int) []finding.Finding {
	var order []string
	worst := map[string]finding.Finding{}
	share := map[string]float64{}
	var calm finding.Finding
	calmest := -1.0
	for _, s := range p.strips(i) {
		f, used := p.weigh(i, s)
		if f.Verdict == finding.Stands || f.Verdict == finding.Unknown {
			if used > calmest {
				calm, calmest = f, used
			}
			continue
		}
		if _, seen := worst[s.why]; !seen {
			order = append(order, s.why)
		}
		if used > share[s.why] {
			worst[s.why], share[s.why] = f, used
		}
	}
	if len(order) == 0 && calmest >= 0 {
		return []finding.Finding{calm}
	}
	var out []finding.Finding
	for _, why := range order {
		out = append(out, worst[why])
	}
	return out
}

// press is what may press a tongue.
type press struct {
	n      float64
	byHand bool
	what   string
}

// loadsOn returns what may press a strip of panel i: a hand, and half the heaviest thing that may stand there.
func (p *Piece) loadsOn(i int, s strip) []press {
	heaviest := -1
	for n, h := range p.Held {
		if h.Panel == i && (h.Spec.At == nil || p.stands(i, h, s)) && (heaviest < 0 || h.MassKg > p.Held[heaviest].MassKg) {
			heaviest = n
		}
	}
	hand := press{handPress, true, "a hand"}
	if heaviest < 0 {
		return []press{hand}
	}
	h := p.Held[heaviest]
	return []press{hand, {h.MassKg * gravity / 2, false, h.Name}}
}

// stands reports whether a thing stands on some of a strip.
func (p *Piece) stands(i int, h piece.Held, s strip) bool {
	at := p.Panels[i].Min
	return h.Min.X-at.X < s.max[0] && h.Max.X-at.X > s.min[0] && h.Min.Y-at.Y < s.max[1] && h.Max.Y-at.Y > s.min[1]
}

// weigh weighs one tongue under the load that is worst for it; used is the share of what it may bear.
func (p *Piece) weigh(i int, s strip) (worst finding.Finding, used float64) {
	used = -1
	for _, l := range p.loadsOn(i, s) {
		if f, share := p.pressed(i, s, l); share > used {
			worst, used = f, share
		}
	}
	return worst, used
}

// pressed weighs one tongue under one load, by its bending or its shear, whichever is nearer its limit.
func (p *Piece) pressed(i int, s strip, l press) (finding.Finding, float64) {
	panel := p.Panels[i]
	t := s.tongue(thickness(panel))
	f := finding.Finding{
		Check: "tongue", Parts: tags(p.Parts.PanelTags[i]), Place: fmt.Sprintf("%s, wood between %s and %s", panel.Name, s.why, s.beside),
		View: finding.View{From: "top", Marks: []finding.Mark{s.mark(panel)}},
	}
	stress, err := tongue.Stress(t, l.n)
	if err != nil {
		return unknown(f, err.Error())[0], 0
	}
	shear, _ := tongue.Shear(t, l.n) // its sizes were weighed just before
	bend, tear, err := tongue.Limits(panel.Spec.Wood.Species, t.IsShort, l.byHand)
	if err != nil {
		return unknown(f, err.Error())[0], 0
	}
	f.Figure, f.Limit = stress, bend
	if shear.Value*bend.Value > stress.Value*tear.Value {
		f.Figure, f.Limit = shear, tear
	}
	f.Because = []figure.Figure{figure.Of("load", l.n, figure.N, &tongueLoad), stress, shear, bend, tear}
	f.Assumed = s.assumed(l)
	if f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = p.mendTongue(s, t, l, panel.Spec.Wood.Species)
		f.Caution = "A tongue breaks off at once and without warning: who leans or stands on it falls."
	}
	return f, f.Figure.Value / f.Limit.Value
}

func (s strip) assumed(l press) []string {
	how := "it is pressed at its tip by "
	if s.both {
		how = "it rests at both its ends and is pressed in its middle by "
	}
	grain := "its grain is short: it runs across the tongue"
	if !s.short {
		grain = "its grain runs out into it"
	}
	return []string{how + l.what, grain, "clear wood, no knot or check at the root"}
}

// mendTongue finds the least breadth that bears the load, else the least thickness.
func (p *Piece) mendTongue(s strip, t tongue.Tongue, l press, wood wood.Species) string {
	bears := func(t tongue.Tongue) bool {
		stress, _ := tongue.Stress(t, l.n)
		shear, _ := tongue.Shear(t, l.n)
		bend, tear, err := tongue.Limits(wood, t.IsShort, l.byHand)
		return err == nil && stress.Value <= bend.Value && shear.Value <= tear.Value
	}
	least := func(from length.Length, with func(length.Length) tongue.Tongue) length.Length {
		lo, hi := from, 8*from+length.Metre
		if !bears(with(hi)) {
			return 0
		}
		for hi-lo > length.Millimetre/100 {
			if mid := lo + (hi - lo).Half(); bears(with(mid)) {
				hi = mid
			} else {
				lo = mid
			}
		}
		return hi
	}
	broader := least(t.Broad, func(w length.Length) tongue.Tongue { t := t; t.Broad = w; return t })
	thicker := least(t.Thick, func(w length.Length) tongue.Tongue { t := t; t.Thick = w; return t })
	words := fmt.Sprintf("make the panel %s thick", p.up(thicker))
	if broader > 0 {
		words = fmt.Sprintf("move %s %s away from %s, or %s", s.why, p.up(broader-t.Broad), s.beside, words)
	}
	if !s.both {
		words += ", or make it a hole instead of a notch, so that both ends are held"
	}
	return words
}
