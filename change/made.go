package change

import (
	"fmt"

	"rodwright/part"
)

// made lists what only one of two lists has.
func made(from, to *part.List, panels, pipes []match) Made {
	m := Made{Added: []string{}, Gone: []string{}}
	came, went := map[*part.Part]int{}, map[*part.Part]int{}
	for _, p := range append(panels[:len(panels):len(panels)], pipes...) {
		switch {
		case p.from.kind == nil:
			came[p.to.kind]++
		case p.to.kind == nil:
			went[p.from.kind]++
		}
	}
	m.Added = fewer(m.Added, to, came, from)
	m.Gone = fewer(m.Gone, from, went, to)
	return m
}

// fewer adds, in the order of list, the parts that other has fewer of: panels and pipes as they were counted,
// the rest by what they are.
func fewer(out []string, list *part.List, counted map[*part.Part]int, other *part.List) []string {
	have, there := counts(list), counts(other)
	for i := range list.Parts {
		p := &list.Parts[i]
		if p.Kind == part.Panel || p.Kind == part.Pipe {
			if n := counted[p]; n > 0 {
				out = append(out, times(n, p.Tag+" "+p.Name))
			}
			continue
		}
		w := what(p)
		if n := have[w] - there[w]; n > 0 {
			out = append(out, times(n, w))
		}
		have[w] = 0 // told once, however many kinds are alike
	}
	return out
}

// counts tells how many fittings and how much hardware of each sort a list has.
func counts(list *part.List) map[string]int {
	out := map[string]int{}
	for i := range list.Parts {
		if p := &list.Parts[i]; p.Kind == part.Fitting || p.Kind == part.Hardware {
			out[what(p)] += p.Count
		}
	}
	return out
}

// what says what a fitting or a piece of hardware is: tee 3/4, wood screw 10 × 1 in.
func what(p *part.Part) string {
	if p.Kind == part.Fitting {
		return p.Name + " " + p.Material
	}
	return p.Name
}

func times(n int, what string) string {
	if n == 1 {
		return what
	}
	return fmt.Sprintf("%d × %s", n, what)
}
