package change

import (
	"fmt"
	"slices"

	"rodwright/build"
	"rodwright/part"
	"rodwright/piece"
)

// papers lists what was printed and no longer agrees: drawings of parts, the views, lists, layouts, steps, the quote.
func papers(before, after *build.Build) []string {
	out := []string{}
	out = append(out, partDrawings(before, after)...)
	moved := moved(before.Resolved, after.Resolved)
	for _, p := range []struct {
		name string
		old  bool
	}{
		{"the views", moved},
		{"the list of parts", differs(partLines(before), partLines(after))},
		{"the buying list", differs(buyLines(before), buyLines(after))},
		{"the cutting layouts", differs(cutLines(before), cutLines(after))},
		{"the steps", differs(stepLines(before), stepLines(after))},
		{"the quote", differs(quoteLine(before), quoteLine(after))},
	} {
		if p.old {
			out = append(out, p.name)
		}
	}
	return out
}

func differs(a, b []string) bool { return !slices.Equal(a, b) }

// partDrawings names the panels whose own drawing is out of date.
func partDrawings(before, after *build.Build) (out []string) {
	for _, m := range matchPanels(before, after) {
		if m.both() && differs(panelLines(m.from.kind), panelLines(m.to.kind)) {
			out = append(out, "the drawing of "+m.to.name)
		}
	}
	return out
}

func panelLines(p *part.Part) []string {
	out := []string{fmt.Sprint(p.Finished, p.Blank, p.Profiles)}
	for _, f := range p.Features {
		out = append(out, fmt.Sprint(f.Kind, f.At, f.Size, f.Round, f.Radius, f.Depth))
	}
	return out
}

// moved reports whether anything stands elsewhere.
func moved(a, b *piece.Resolved) bool {
	if len(a.Nodes) != len(b.Nodes) || len(a.Panels) != len(b.Panels) {
		return true
	}
	for i := range a.Nodes {
		if a.Nodes[i].At != b.Nodes[i].At || a.Nodes[i].Kind != b.Nodes[i].Kind {
			return true
		}
	}
	for i := range a.Panels {
		if a.Panels[i].Min != b.Panels[i].Min || a.Panels[i].Max != b.Panels[i].Max {
			return true
		}
	}
	return false
}

func partLines(b *build.Build) (out []string) {
	for _, p := range b.Parts.Parts {
		out = append(out, fmt.Sprint(p.Tag, p.Name, p.Material, p.Count, p.Finished, p.Blank, p.Cut))
	}
	return out
}

func buyLines(b *build.Build) (out []string) {
	for _, l := range b.Buy.Lines {
		out = append(out, fmt.Sprint(l.Item, l.Count, l.Pack, l.Unit))
	}
	return out
}

func cutLines(b *build.Build) (out []string) {
	for _, l := range b.Layout.All() {
		out = append(out, fmt.Sprint(l.Kind, l.Material, l.Answer.Used, l.Answer.Panels))
	}
	return out
}

func stepLines(b *build.Build) (out []string) {
	for _, s := range b.Work.Steps {
		out = append(out, fmt.Sprint(s.Work, s.Title, s.Parts, s.Measures))
	}
	return out
}

func quoteLine(b *build.Build) []string { return []string{b.Quote.Total.String()} }
