package panel

import (
	"cmp"
	"slices"

	"rodwright/length"
)

// slide pushes the segments of boards without defects together, towards the end they are sawn from: a gap between two of
// one length costs a setting of the stop. On such a board every place yields the same, and a tail only grows.
func (s *search) slide() {
	slid, moved := make([][]segment, len(s.best.segments)), false
	for k, segs := range s.best.segments {
		slid[k] = slices.Clone(segs)
		if len(s.m.p.Boards[k].Defects) > 0 {
			continue
		}
		slices.SortFunc(slid[k], func(a, b segment) int { return cmp.Compare(a.at, b.at) })
		at := length.Length(0)
		for i := range slid[k] {
			moved = moved || slid[k][i].at != at
			slid[k][i].at = at
			at += s.m.kinds[slid[k][i].kind].length + s.m.p.Kerf
		}
	}
	if !moved {
		return
	}
	if l := s.rip(slid); l.short <= s.best.short && l.cost <= s.best.cost+costEps {
		s.best = l
	}
}
