package piece

import (
	"slices"

	"rodwright/piece/markup"
	"rodwright/trade/stability"
)

// readStandards reads the published requirements that the piece is to meet, one id or a list of them.
func (r *reading) readStandards(n *markup.Node) {
	if n == nil {
		return
	}
	if n.Kind != markup.Scalar && n.Kind != markup.List {
		r.fail(n.Pos, "write a list: [iec-60335-1-tilt]", "standards: is %s", n.Kind)
		return
	}
	for _, item := range items(n) {
		if item.Kind == markup.Empty {
			r.fail(item.Pos, "write an id, for example iec-60335-1-tilt", "an entry of standards: is empty")
			continue
		}
		if id := r.single(item, "standards"); id != nil {
			r.readStandard(id)
		}
	}
}

func (r *reading) readStandard(n *markup.Node) {
	s, err := stability.LookupRequirement(n.Text)
	switch {
	case err != nil:
		r.unknownID(n.TextPos, "standard", n.Text, err)
	case slices.Contains(r.doc.Standards, s.ID):
		r.fail(n.TextPos, "leave one of them out", "standards: names %s twice", s.ID)
	default:
		r.doc.Standards = append(r.doc.Standards, s.ID)
	}
}
