package change

import (
	"strings"

	"rodwright/length"
	"rodwright/part"
)

// sides name the finished dimensions of a panel.
var sides = [3]string{"length", "width", "thickness"}

// panelCuts lists the finished dimensions of panels that move.
func panelCuts(panels []match) []Cut {
	cuts := []Cut{}
	for _, m := range panels {
		if !m.both() {
			continue
		}
		for i, side := range sides {
			if a, b := m.from.kind.Finished[i], m.to.kind.Finished[i]; a != b {
				cuts = append(cuts, Cut{m.to.kind.Tag, m.to.name, side, 1, mm(a), mm(b)})
			}
		}
	}
	return cuts
}

// move is a length that the pipes of one kind had and the one they get.
type move struct {
	kind     *part.Part
	from, to length.Length
}

// pipeCuts lists the lengths of pipe that move, those that move alike together.
func pipeCuts(pipes []match) (cuts []Cut) {
	moved := map[move][]string{}
	var order []move
	for _, m := range pipes {
		if !m.both() || m.from.kind.Cut == m.to.kind.Cut {
			continue
		}
		v := move{m.to.kind, m.from.kind.Cut, m.to.kind.Cut}
		if moved[v] == nil {
			order = append(order, v)
		}
		moved[v] = append(moved[v], m.to.tag)
	}
	for _, v := range order {
		cuts = append(cuts, Cut{tagOf(v.kind, moved[v]), v.kind.Name, "cut", len(moved[v]), mm(v.from), mm(v.to)})
	}
	return cuts
}

// tagOf is the kind's tag where all of the kind are meant, else the tags of those that are.
func tagOf(kind *part.Part, tags []string) string {
	if len(tags) == kind.Count {
		return kind.Tag
	}
	return strings.Join(tags, " ")
}
