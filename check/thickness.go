package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/lumber"
)

// Thickness says of every wooden panel whether its stock still has the drawn thickness after flattening.
func Thickness(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i, panel := range p.Panels {
		if panel.Spec.Wood != nil && p.panels[i] != nil && !p.panels[i].Sheet {
			out = append(out, p.stock(i))
		}
	}
	return out
}

func (p *Piece) stock(i int) finding.Finding {
	wanted, rough := thickness(p.Panels[i]), p.panels[i].Rough
	f := finding.Finding{
		Check: "thickness", Parts: tags(p.Parts.PanelTags[i]), Place: p.Panels[i].Name, Sense: finding.AtLeast,
	}
	work := p.Shop.Panel
	bow := bowOf(work, p.panels[i].Blank[0])
	// the trade takes its own skim; what this shop's flattening takes beyond it is counted with the bow
	more := max(0, work.Flattening-lumber.Skim)
	if rough == "" {
		return p.noStock(f, wanted, bow+more)
	}
	stock, err := lumber.Lookup(rough)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	left, err := lumber.ThicknessLeft(stock.Surfaced, bow+more, work.Twist, wanted)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Limit = figure.OfLength("needed", 0, nil)
	f.Figure, f.Because = left, []figure.Figure{left.From(stock.Source.String())}
	f.Assumed = []string{fmt.Sprintf("%s stock surfaced to %s, bowed %s and twisted %s as this shop reckons with", rough,
		length.SixtyFourth.Text(stock.Surfaced), length.SixtyFourth.Text(bow), length.SixtyFourth.Text(work.Twist))}
	if f.Verdict = finding.Judge(left.Value, 0, finding.AtLeast); f.Verdict == finding.Fails {
		f.Mend = p.thickerStock(wanted, bow+more)
	}
	return f
}

// noStock is the finding where no stock that is sold is thick enough.
func (p *Piece) noStock(f finding.Finding, wanted, bow length.Length) finding.Finding {
	all := lumber.Quarters()
	thickest := all[len(all)-1]
	left, err := lumber.ThicknessLeft(thickest.Surfaced, bow, p.Shop.Panel.Twist, wanted)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Verdict, f.Figure, f.Limit = finding.Fails, left, figure.OfLength("needed", 0, nil)
	f.Because = []figure.Figure{left.From(thickest.Source.String())}
	f.Assumed = []string{"the thickest stock sold is " + thickest.ID}
	f.Mend = p.thickerStock(wanted, bow)
	return f
}

// bowOf is the bow of a part of the given length, by the square of it.
func bowOf(w shop.PanelWork, long length.Length) length.Length {
	if w.BowOver <= 0 {
		return w.Bow
	}
	share := long.MM() / w.BowOver.MM()
	return length.FromMM(w.Bow.MM() * share * share)
}

func (p *Piece) thickerStock(wanted, bow length.Length) string {
	s, err := lumber.NextStock(wanted, bow, p.Shop.Panel.Twist)
	if err != nil {
		return "glue it up in two layers of " + p.up(wanted.Half()) + " each, or make it thinner"
	}
	return fmt.Sprintf("take %s stock, or cut the parts short before they are flattened", s.ID)
}
