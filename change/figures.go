package change

import (
	"fmt"

	"rodwright/build"
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
)

// Moved is a finding whose verdict stays and whose figure moves.
type Moved struct {
	Check   string `json:"check"`
	Place   string `json:"place"`
	Verdict string `json:"verdict"`
	From    string `json:"from"`
	To      string `json:"to"`
}

// figuresMoved lists the findings that two builds share and that reckon with another figure or limit now, as it is shown.
func figuresMoved(before, after *build.Build) []Moved {
	was := map[spot]finding.Finding{}
	for _, f := range before.Findings {
		if _, there := was[spot{f.Check, f.Place}]; !there {
			was[spot{f.Check, f.Place}] = f
		}
	}
	out := []Moved{}
	fine := after.Doc.Fineness.Finer()
	seen := map[spot]bool{}
	for _, f := range after.Findings {
		s := spot{f.Check, f.Place}
		old, there := was[s]
		if !there || seen[s] || old.Verdict != f.Verdict {
			continue
		}
		seen[s] = true
		if a, b := against(old, fine), against(f, fine); a != b {
			out = append(out, Moved{f.Check, f.Place, f.Verdict.String(), a, b})
		}
	}
	return out
}

// against tells a figure and its limit.
func against(f finding.Finding, fine length.Fineness) string {
	show := func(g figure.Figure) string {
		if g.Missing() {
			return "not known"
		}
		return g.Show(fine)
	}
	return fmt.Sprintf("%s of %s", show(f.Figure), show(f.Limit))
}
