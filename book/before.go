package book

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/part"
)

// before tells what must be known before anything is bought: what the plan leaves to others, what of the
// design is open, what to measure, and all cautions of the work.
func (a *author) before() []Section {
	s := Section{ID: "before-you-begin", Title: "Before you begin", NewPage: true, Blocks: []Block{
		Paragraph{"Read the whole plan before you buy or cut anything. Every later measure of pipe and panels rests on what you measure first."},
		Note{Tone: Caution, Title: "What this plan leaves to others", Items: a.leaves()},
	}}
	for _, open := range []struct {
		verdict finding.Verdict
		title   string
	}{
		{finding.Fails, "What fails in this design"},
		{finding.Unknown, "What is not known of this design"},
		{finding.Tight, "What is only just enough in this design"},
	} {
		var items []string
		for _, f := range a.b.Findings {
			if f.Verdict == open.verdict {
				items = append(items, a.finding(f))
			}
		}
		if open.verdict == finding.Unknown {
			items = append(items, a.w.says(a.b.Layout.Missing)...)
		}
		s.note(Wrong, open.title, items)
	}
	s.note(Assumed, "Measure these before you cut", a.toMeasure())
	s.note(Caution, "Cautions of the work that follows", a.cautions())
	return []Section{s}
}

// note adds a note, if there is anything in it.
func (s *Section) note(t Tone, title string, items []string) {
	if len(items) > 0 {
		s.Blocks = append(s.Blocks, Note{Tone: t, Title: title, Items: items})
	}
}

// leaves tells what the plan defers to.
func (a *author) leaves() []string {
	out := []string{
		"Local codes and rules for building, fire safety and waste come before this plan wherever they differ.",
		"The instructions of each machine and the sheet of each glue, finish and resin come before this plan.",
		"The plan is reckoned, not tested: who builds and uses the piece judges whether it is safe where it stands.",
	}
	if a.b.Resolved.Wall != nil {
		out = append(out, "What holds in your wall, and where pipes and cables run in it, is for local practice: where the law or your doubt asks for a licensed trade, let it fix the piece.")
	}
	return append(out, "Furniture pipe carries no gas, water or current. Wiring near the piece is for a licensed electrician.")
}

// finding tells what a check found, with its figure, what mends it and what is missing.
func (a *author) finding(f finding.Finding) string {
	words := capital(f.Check) + ", " + a.w.say(f.Place)
	if !f.Figure.Missing() && !f.Limit.Missing() {
		words += fmt.Sprintf(": %s %s, must be %s %s", f.Figure.Name, a.show(f.Figure), f.Sense, a.show(f.Limit))
	}
	words += "."
	if f.Missing != "" {
		words += " Not known: " + a.w.say(f.Missing) + "."
	}
	if f.Mend != "" {
		words += " To mend it: " + a.w.say(f.Mend) + "."
	}
	if f.Caution != "" {
		words += " " + sentence(a.w.say(f.Caution))
	}
	return words
}

func (a *author) show(f figure.Figure) string { return a.w.say(f.Show(a.w.to.Finer())) }

// sentence ends a text with a full stop.
func sentence(text string) string {
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

// toMeasure lists what the cut lengths take from tables, for the builder to check with a rule.
func (a *author) toMeasure() []string {
	var out []string
	for _, p := range a.b.Parts.Parts {
		if p.Kind == part.Pipe || p.Kind == part.Fitting {
			for _, text := range p.Assumed {
				if measured(text) {
					out = append(out, capital(a.w.say(text)))
				}
			}
		}
	}
	return once(out)
}

// measured reports whether an assumption is a size of a fitting, on which cut lengths rest.
func measured(text string) bool {
	return strings.Contains(text, "measure yours") || strings.HasPrefix(text, "make-up")
}

// cautions gathers those of all steps once, with the steps that they belong to.
func (a *author) cautions() []string {
	var texts []string
	steps := map[string][]int{}
	for _, s := range a.b.Work.Steps {
		for _, c := range a.w.says(s.Cautions) {
			if !slices.Contains(texts, c) {
				texts = append(texts, c)
			}
			steps[c] = append(steps[c], s.N)
		}
	}
	for i, t := range texts {
		texts[i] = fmt.Sprintf("%s (%s)", t, numbered(steps[t]))
	}
	return texts
}

// granted lists everything else that was taken for granted.
func (a *author) granted() []Section {
	b := a.b
	texts := slices.Concat(b.Parts.Totals.Assumed, b.Resolved.Air.Assumed, b.Doc.Wood.Assumed, b.Doc.Feet.Assumed, b.Layout.Assumed)
	for _, p := range b.Parts.Parts {
		texts = append(texts, p.Assumed...)
	}
	for _, f := range b.Parts.Fasteners {
		texts = append(texts, f.Assumed...)
	}
	for _, s := range b.Parts.Supplies {
		texts = append(texts, s.Assumed...)
	}
	for _, f := range b.Findings {
		if f.Verdict != finding.Stands {
			texts = append(texts, f.Assumptions()...)
		}
	}
	texts = slices.DeleteFunc(append(texts, b.Work.Assumed...), func(t string) bool {
		return measured(t) || strings.HasSuffix(t, "the shop has no tool for this on its list")
	})
	for i, t := range texts {
		texts[i] = capital(a.w.say(t))
	}
	s := Section{ID: "taken-for-granted", Title: "Taken for granted", Blocks: []Block{
		Paragraph{"Where nobody measured or said it, the plan takes these for granted. What you know better wins."},
	}}
	s.note(Assumed, "Not measured", once(texts))
	if len(s.Blocks) < 2 {
		return nil
	}
	return []Section{s}
}
