package build

import (
	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
)

type findingJSON struct {
	Check   string        `json:"check"`
	Place   string        `json:"place,omitempty"`
	Parts   []string      `json:"parts"`
	Verdict string        `json:"verdict"`
	Figure  *figureJSON   `json:"figure,omitempty"`
	Limit   *figureJSON   `json:"limit,omitempty"`
	Sense   string        `json:"sense,omitempty"` // at most, at least: the side of the limit to stay on
	Because []becauseJSON `json:"because"`
	Assumed []string      `json:"assumed"`
	Missing string        `json:"missing,omitempty"`
	Mend    string        `json:"mend,omitempty"`
	Caution string        `json:"caution,omitempty"`
	Picture *pictureJSON  `json:"picture,omitempty"`
}

type figureJSON struct {
	Name  string      `json:"name"`
	Value rounded     `json:"value"`
	Unit  figure.Unit `json:"unit"`
	Shown string      `json:"shown"`
}

type becauseJSON struct {
	Name    string            `json:"name"`
	Shown   string            `json:"shown"`
	Formula string            `json:"formula,omitempty"`
	Inputs  map[string]string `json:"inputs,omitempty"` // encoding/json writes the keys sorted
	Source  string            `json:"source,omitempty"`
}

func findingsJSON(fs []finding.Finding, to length.Fineness) []findingJSON {
	out, names := make([]findingJSON, len(fs)), finding.Names(fs)
	for i, f := range fs {
		out[i] = findingJSON{
			Check: f.Check, Place: f.Place, Parts: nonNil(f.Parts), Verdict: f.Verdict.String(),
			Figure: figureOf(f.Figure, to), Limit: figureOf(f.Limit, to),
			Because: make([]becauseJSON, 0, len(f.Because)), Assumed: nonNil(f.Assumptions()),
			Missing: f.Missing, Mend: f.Mend, Caution: f.Caution, Picture: pictureOf(f.Picture, names[i]),
		}
		if out[i].Figure != nil && out[i].Limit != nil {
			out[i].Sense = f.Sense.String()
		}
		for _, b := range f.Because {
			out[i].Because = append(out[i].Because, because(b, to))
		}
	}
	return out
}

func figureOf(f figure.Figure, to length.Fineness) *figureJSON {
	if f.Missing() {
		return nil
	}
	return &figureJSON{f.Name, rounded(f.Value), f.Unit, f.Show(to)}
}

func because(f figure.Figure, to length.Fineness) becauseJSON {
	b := becauseJSON{Name: f.Name, Shown: f.Show(to), Source: f.Source}
	if f.Formula != nil {
		b.Formula = f.Formula.Text
		if b.Source == "" {
			b.Source = f.Formula.Source
		}
	}
	if len(f.Inputs) > 0 {
		b.Inputs = make(map[string]string, len(f.Inputs))
		for _, in := range f.Inputs {
			b.Inputs[in.Name] = in.Show(to)
		}
	}
	return b
}

// nonNil makes an empty list of a missing one: JSON then says [] and not null.
func nonNil(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}
