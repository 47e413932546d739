package main

import (
	"strings"

	"rodwright/figure"
	"rodwright/length"
)

// reason tells a figure in one line: what it is and its formula; in full also the numbers that went in and the
// source.
func reason(f figure.Figure, to length.Fineness, full bool) string {
	text := f.Name + " " + f.Show(to)
	if f.Formula == nil {
		return text
	}
	if text += " by " + f.Formula.Text; !full {
		return text
	}
	if len(f.Inputs) > 0 {
		inputs := make([]string, len(f.Inputs))
		for i, in := range f.Inputs {
			inputs[i] = in.Name + " " + in.Show(to)
		}
		text += ", " + strings.Join(inputs, ", ")
	}
	source := f.Source
	if source == "" {
		source = f.Formula.Source
	}
	return text + " [" + source + "]"
}
