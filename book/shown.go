package book

import (
	"fmt"

	"rodwright/draw/plot"
	"rodwright/finding"
)

// worstFirst is the order of verdicts in which a picture is chosen.
var worstFirst = []finding.Verdict{finding.Fails, finding.Unknown, finding.Tight, finding.Stands}

// shows draws what the checks found where a picture says more than a figure: of each kind of picture the one of
// the worst finding, the first of those that are as bad.
func (a *author) shows() []Section {
	s := Section{ID: "what-the-checks-show", Title: "What the checks show", NewPage: true}
	names, drawn := finding.Names(a.b.Findings), map[string]bool{}
	for _, v := range worstFirst {
		for i, f := range a.b.Findings {
			kind := plot.Kind(f.Picture)
			if f.Verdict != v || kind == "" || drawn[kind] {
				continue
			}
			drawn[kind] = true
			d := plot.Of(f, plot.ID(names[i]), a.st)
			s.Blocks = append(s.Blocks, Figure{Drawing: d, Caption: d.Title + ". " + a.judged(f)})
		}
	}
	return []Section{s}
}

// judged tells a finding in a caption: its check and place, its verdict, and the figure with its limit.
func (a *author) judged(f finding.Finding) string {
	verdict := f.Verdict.String()
	if f.Verdict == finding.Unknown {
		verdict = "not known"
	}
	words := fmt.Sprintf("%s, %s: %s", capital(f.Check), a.w.say(f.Place), verdict)
	if f.Figure.Missing() || f.Limit.Missing() {
		return words + "."
	}
	return words + fmt.Sprintf("; %s %s, must be %s %s.", f.Figure.Name, a.show(f.Figure), f.Sense, a.show(f.Limit))
}
