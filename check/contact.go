package check

import (
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/finish"
)

var contactFormula = figure.Formula{
	Text:   "iron, tannin and water stain black",
	Source: "common practice, no source: wax is trusted in dry rooms, a film in damp ones",
}

// Contact says of every wood rich in tannin whether the steel that bears on it will stain it. The steel is
// coated as the shop does in a place that damp.
func Contact(p *Piece) []finding.Finding {
	var out []finding.Finding
	at := map[string]int{}
	for i, panel := range p.Panels {
		w := panel.Spec.Wood
		if w == nil || !w.Species.Tannin || !slices.ContainsFunc(panel.Seats, touches) {
			continue
		}
		if n, seen := at[w.Species.ID]; seen {
			out[n].Parts = tags(append(out[n].Parts, p.Parts.PanelTags[i])...)
			continue
		}
		at[w.Species.ID] = len(out)
		f := p.contact(w.Species.Name)
		f.Parts = tags(p.Parts.PanelTags[i])
		out = append(out, f)
	}
	return out
}

// touches reports whether steel bears on the panel there; round and between posts it keeps off.
func touches(s piece.PanelSeat) bool {
	return s.Kind != piece.AroundPosts && s.Kind != piece.BetweenPosts
}

// Up to which relative humidity, in percent, a coat on the steel is trusted. Common practice, no source.
const (
	bareAir = 0 // bare steel stains with the first wet hand
	waxAir  = shop.DampRH
	filmAir = 100 // a film keeps water off however damp the room
)

func (p *Piece) contact(wood string) finding.Finding {
	coat, why := p.Shop.Settings.SteelCoat(p.Doc.Place.HighRH)
	trusted, words := float64(waxAir), "the steel is coated with "+finish.Words(coat)
	switch {
	case coat == "":
		trusted, words = bareAir, "the steel is left bare"
	case finish.Film(coat):
		trusted = filmAir
	}
	f := finding.Finding{
		Check: "contact", Place: "steel on " + wood,
		Figure:  figure.Of("highest relative humidity", p.Doc.Place.HighRH, figure.Percent, &contactFormula),
		Limit:   figure.Of("up to which the steel's coat is trusted", trusted, figure.Percent, &contactFormula),
		Assumed: tags(words, why, "the wood is finished with "+finish.Words(p.Shop.Settings.Finish)+" where the steel bears on it"),
		Caution: "Seal both before they touch; keep wet rags and wet glue off bare steel on such wood.",
	}
	f.Because = []figure.Figure{f.Figure}
	f.Assumed = append(f.Assumed, p.Air.Assumed...)
	f.Verdict = finding.Judge(f.Figure.Value, trusted, finding.AtMost)
	switch {
	case f.Verdict == finding.Fails:
		f.Mend = "coat the steel with a clear film, which is trusted up to 100 %, and seal the wood before they touch"
	case finish.Film(coat):
		f.Verdict = finding.Stands
	}
	return f
}
