package change

import (
	"rodwright/build"
	"rodwright/part"
)

// one is a single panel or pipe of a build.
type one struct {
	kind *part.Part
	tag  string // its own: C1.2
	name string // of its place: front left post 1
}

// match is one panel or pipe in two builds; the side that lacks it has no kind.
type match struct{ from, to one }

func (m match) both() bool { return m.from.kind != nil && m.to.kind != nil }

func matchPanels(from, to *build.Build) []match { return pair(panelsOf(from), panelsOf(to)) }

func matchPipes(from, to *build.Build) []match { return pair(pipesOf(from), pipesOf(to)) }

func panelsOf(b *build.Build) []one {
	return singles(b.Parts, part.Panel, func(i int) string { return b.Resolved.Panels[i].Name })
}

func pipesOf(b *build.Build) []one {
	return singles(b.Parts, part.Pipe, func(i int) string { return b.Resolved.Sticks[i].Name })
}

// singles lists every part of a kind one by one, in the order of the list.
func singles(list *part.List, kind part.Kind, name func(int) string) (out []one) {
	for i := range list.Parts {
		p := &list.Parts[i]
		if p.Kind != kind {
			continue
		}
		for j, tag := range p.Tags {
			out = append(out, one{p, tag, name(p.Indexes[j])})
		}
	}
	return out
}

// pair matches by name, several of one name in order: first what the later build has, then what only the
// earlier one had.
func pair(from, to []one) (out []match) {
	were := byName(from)
	for _, t := range to {
		m := match{to: t}
		if same := were[t.name]; len(same) > 0 {
			m.from, were[t.name] = same[0], same[1:]
		}
		out = append(out, m)
	}
	for _, f := range from {
		if left := were[f.name]; len(left) > 0 && left[0].tag == f.tag {
			out = append(out, match{from: f})
			were[f.name] = left[1:]
		}
	}
	return out
}

func byName(all []one) map[string][]one {
	out := make(map[string][]one, len(all))
	for _, o := range all {
		out[o.name] = append(out[o.name], o)
	}
	return out
}
