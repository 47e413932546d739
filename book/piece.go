package book

import (
	"fmt"
	"strings"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// piece tells what is built, in a table, and how this plan is read.
func (a *author) piece() []Section {
	t := Table{
		Caption: "The piece in short",
		Columns: []Column{{Head: "What", Share: 1}, {Head: "In this plan", Share: 3}},
		Rows: [][]string{
			{"Overall size", a.overall()},
			{"Weight", a.w.mass(a.b.Parts.Totals.MassKg)},
		},
	}
	row := func(what string, words ...string) {
		if text := strings.Join(once(words), "; "); text != "" {
			t.Rows = append(t.Rows, []string{what, text})
		}
	}
	row("Panels", a.woods()...)
	row("Frame", a.pipeWords()...)
	row("Parts", a.counts())
	row("Stands on", a.stands())
	row("Carries", a.carries()...)
	row("Made for", a.place())
	return []Section{{ID: "the-piece", Title: "The piece", Blocks: []Block{t, Paragraph{a.reading()}}}}
}

// woods tells what the panels are made of.
func (a *author) woods() (out []string) {
	doc := a.b.Doc
	for _, f := range a.b.Resolved.Panels {
		if f.Spec == nil {
			continue
		}
		if f.Spec.Sheet != "" {
			out = append(out, materialWords(f.Spec.Sheet))
			continue
		}
		wood := doc.Wood
		if f.Spec.Wood != nil {
			wood = *f.Spec.Wood
		}
		out = append(out, fmt.Sprintf("%s (%s), %s sawn, at %s %% moisture when it is worked",
			materialWords(wood.Species.ID), wood.Species.Scientific, wood.Cut, digits(wood.Moisture)))
	}
	return once(out)
}

// threads names the threads of a standard.
var threads = map[pipe.Standard]string{pipe.NPT: "NPT", pipe.ISO7: "R (ISO 7)"}

// pipeWords tells each size of pipe: its name, its thread and what it measures.
func (a *author) pipeWords() (out []string) {
	for _, p := range a.of(part.Pipe) {
		if s, err := pipe.Lookup(p.Material); err == nil {
			out = append(out, fmt.Sprintf("pipe %s, %s outside, with %s threads, %s to the inch", s.ID, a.w.to.Finer().Text(s.OD), threads[s.Standard], digits(s.ThreadsPerInch)))
		}
	}
	return once(out)
}

func (a *author) counts() string {
	var words []string
	for _, k := range []struct {
		kind part.Kind
		one  string
	}{{part.Panel, "panel"}, {part.Pipe, "pipe"}, {part.Fitting, "fitting"}} {
		if n := counted(a.of(k.kind)); n > 0 {
			words = append(words, several(n, k.one))
		}
	}
	if n := counted(a.of(part.Hardware)); n > 0 {
		words = append(words, several(n, "piece")+" of hardware")
	}
	return phrase(words)
}

func (a *author) stands() string {
	f := a.b.Doc.Feet
	if f.Kind == piece.NoFeet || len(a.b.Resolved.Feet) == 0 {
		if a.b.Resolved.Wall != nil {
			return "nothing: it is fixed to a wall"
		}
		return ""
	}
	n := len(a.b.Resolved.Feet)
	noun := map[piece.FootKind]string{piece.BareFoot: "bare pipe end", piece.CapFoot: "cap", piece.FlangeFoot: "flange"}[f.Kind]
	if noun == "" {
		noun = string(f.Kind)
	}
	if strings.HasSuffix(noun, "foot") {
		return fmt.Sprintf("%d %s", n, strings.TrimSuffix(noun, "foot")+map[bool]string{true: "foot", false: "feet"}[n == 1])
	}
	return several(n, noun)
}

// carries tells what the piece was reckoned to hold.
func (a *author) carries() (out []string) {
	for _, h := range a.b.Doc.Holds {
		words := fmt.Sprintf("%d × %s on the %s, %s", h.Count, h.Name, h.On, a.w.size(h.Size[:]...))
		if h.Count == 1 {
			words = fmt.Sprintf("%s on the %s, %s", h.Name, h.On, a.w.size(h.Size[:]...))
		}
		words += ", " + a.w.mass(h.MassKg)
		if h.Count > 1 {
			words += " each"
		}
		out = append(out, words)
	}
	return out
}

func (a *author) place() string {
	p := a.b.Doc.Place
	words := fmt.Sprintf("%s to %s %% relative humidity over the year", digits(p.LowRH), digits(p.HighRH))
	if p.Room != "" {
		words = p.Room + ", " + words
	}
	if p.LowC != 0 || p.HighC != 0 {
		words += ", " + a.w.say(fmt.Sprintf("%g to %g C", p.LowC, p.HighC))
	}
	return words
}

// reading tells how the plan is read.
func (a *author) reading() string {
	words := "Every part has a tag: A is a panel, C a pipe, F a fitting, H hardware. C1 is a kind of pipe and C1.2 the second of that kind. " +
		"Lengths are in " + unitWords(a.w.to) + "; ≈ stands before one that is rounded."
	if len(a.of(part.Pipe)) > 0 {
		words += " The size of pipe is a name and not a measure."
	}
	for _, p := range a.of(part.Panel) {
		if p.Rough != "" {
			return words + " The thickness of rough boards is counted in quarters of an inch: 5/4 is one and a quarter as sawn."
		}
	}
	return words
}
