package shop

import (
	"slices"

	"rodwright/length"
)

// Tool is something the shop owns, with what it can do and where it ends.
type Tool struct {
	ID     string // class, for example hole-saw
	Name   string // in a maker's words
	Does   []string
	Depth  length.Length // the deepest cut; zero where it does not apply
	Width  length.Length // the widest board, or the greatest opening
	Least  length.Length // the shortest part it holds safely
	ForceN float64       // of one clamp
	Count  int           // how many there are
}

// Tool returns the tool of that class. It reports false when the shop owns none.
func (s *Shop) Tool(id string) (Tool, bool) {
	i := slices.IndexFunc(s.Tools, func(t Tool) bool { return t.ID == id })
	if i < 0 {
		return Tool{}, false
	}
	return s.Tools[i], true
}

// ToolsFor returns the shop's tools that do the kind of work, in the shop's order of preference.
func (s *Shop) ToolsFor(work string) []Tool {
	var out []Tool
	for _, t := range s.Tools {
		if slices.Contains(t.Does, work) {
			out = append(out, t)
		}
	}
	return out
}

// Operation is how long one kind of work takes in this shop: hands = SetUpH + units × UnitH, and then
// WaitH in which no hands are needed.
type Operation struct {
	ID     string  // cut-pipe, thread, sand …
	Per    string  // what a unit is: cut, thread, m2 and grit …
	SetUpH float64 // hours
	UnitH  float64 // hours for each unit
	WaitH  float64 // hours
	Source string
}

// Operation returns the times of that kind of work. It reports false when the shop has none.
func (s *Shop) Operation(id string) (Operation, bool) {
	i := slices.IndexFunc(s.Operations, func(o Operation) bool { return o.ID == id })
	if i < 0 {
		return Operation{}, false
	}
	return s.Operations[i], true
}

// Hands returns the hours of handwork for the given number of units.
func (o Operation) Hands(units float64) float64 { return o.SetUpH + units*o.UnitH }
