package book

import (
	"fmt"
	"strings"

	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/sawing"
	"rodwright/layout"
	"rodwright/steps"
)

// layoutWords tells what a layout opens, what of it is waste, why fewer pieces are not enough, and how sure it is
// that nothing better exists.
func (a *author) layoutWords(l layout.Layout) string {
	says := []string{fmt.Sprintf("The layout opens %s.", several(len(l.Answer.Used), l.Noun())), wasteWords(l)}
	why := explain.WhyNotFewer(l.Problem(), l.Answer)
	if words := a.explained(l).Why(why, l.Answer.Of); words != "" && why.Ground != explain.One {
		says = append(says, "Why not fewer? "+words)
	}
	if why.Ground != explain.Weighed && why.Ground != explain.Open && !why.Alike { // those say it already
		says = append(says, proof(l.Answer))
	}
	if l.Kind == layout.OfBoards {
		says = append(says, "Boards of other sizes serve as well: lay the strips out anew, so that each strip keeps its length and width.")
	}
	return strings.Join(once(says), " ")
}

// explained puts explanations into the reader's measures; a plan names no money.
func (a *author) explained(l layout.Layout) explain.Speech {
	return explain.Speech{Noun: l.Noun(), Length: a.w.to.Show, Metric: a.w.to.Unit.Metric()}
}

// opened is all stock that a layout opens.
func (a *author) opened(l layout.Layout) string {
	return a.explained(l).Amount(l.Problem().Opened(l.Answer))
}

// wasteWords tells which share of what is opened does not become parts.
func wasteWords(l layout.Layout) string {
	of := map[explain.Use]float64{}
	for _, s := range explain.Shares(l.Problem(), l.Answer) {
		of[s.Use] = s.Of
	}
	if len(of) == 0 {
		return ""
	}
	share := func(v float64) string {
		if v > 0 && v < 0.005 {
			return "less than 1 %"
		}
		return fmt.Sprintf("%.0f %%", 100*v)
	}
	taken := "saw cuts and trimming"
	if l.Kind == layout.OfBoards {
		taken = "saw cuts, jointing and trimming"
	}
	words := fmt.Sprintf("%s of it becomes parts, %s take %s", share(of[explain.Parts]), taken,
		share(of[explain.Later]+of[explain.SawCuts]+of[explain.Trimming]+of[explain.Defects]))
	kept, lost := of[explain.Kept], of[explain.Lost]
	switch {
	case kept > 0 && lost > 0:
		return words + fmt.Sprintf(", %s is left to keep and %s is lost.", share(kept), share(lost))
	case kept > 0:
		return words + fmt.Sprintf(" and %s is left to keep.", share(kept))
	}
	return words + fmt.Sprintf(" and %s is lost.", share(lost))
}

// proof tells how much better any other layout of the same stock could be, without naming money.
func proof(a *cut.Answer) string {
	of := ""
	if w := a.Of.Words(); w != "" {
		of = ", " + w + ","
	}
	switch gap := 100 * a.Gap(); {
	case a.Proven:
		return "It is proven that no other layout of this stock" + of + " costs less."
	case gap < 0.01:
		return "No other layout of this stock" + of + " costs less by as much as 0.01 %."
	default:
		return fmt.Sprintf("No other layout of this stock%s can cost less by more than %s %%.", of, digits(gap))
	}
}

// atTheSaw is the list that a person follows: by setting of the stop or fence, with a box to tick for each piece
// of stock.
func (a *author) atTheSaw(l layout.Layout) []Block {
	list := l.Cuts()
	if len(list.Runs) == 0 {
		return nil
	}
	s := sawing.Speech{Length: a.w.to.Show, Fine: a.w.to.Finer().Show, Noun: l.Noun(), Piece: l.PieceName}
	head := "At the saw: " + list.Changes() + ". " + s.Note(l.Problem().Kerf())
	if l.Kind != layout.OfSticks {
		head += " The numbers are those in rings on the drawings."
	}
	out := []Block{
		Paragraph{head},
		Note{Tone: Caution, Title: "At the saw", Items: steps.SawCautions(steps.Kind(l.Kind))},
	}
	ticks := List{Ticks: true}
	heads := s.Heads(list)
	for k, r := range list.Runs {
		if r.Steps[0].N == 0 {
			ticks.Items = append(ticks.Items, fmt.Sprintf("Of every %s %s", l.Noun(), heads[k]))
			continue
		}
		for i, step := range r.Steps {
			head := capital(heads[k])
			if i > 0 {
				head = "The same"
			}
			ticks.Items = append(ticks.Items, head+": "+stepWords(s.Step(list, step)))
		}
	}
	return append(out, ticks)
}

// stepWords writes one step behind its setting: no. 3, stick 1, cut C8.1, C8.2; 86 mm is left.
func stepWords(t sawing.Told) string {
	words := fmt.Sprintf("no. %d, %s, %s", t.N, t.On, t.Does)
	if t.Left != "" {
		words += "; " + t.Left
	}
	return words
}
