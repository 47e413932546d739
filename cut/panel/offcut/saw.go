package offcut

import (
	"rodwright/cut"
	"rodwright/length"
)

// sawing collects the settings of stop and fence for boards, and what the saw takes of one board.
type sawing struct {
	w     *work
	stops map[stop]bool
	kerf  []cut.Rect
}

// stop is a setting of stop or fence.
type stop struct {
	machine cut.Machine
	at      length.Length
}

// board saws one board.
func (s *sawing) board(k int, strips []strip) {
	b := s.w.p.Boards[k]
	s.kerf = nil
	s.saw(cut.Rect{Length: b.Length, Width: b.Width}, strips, 1)
}

// saw cuts strips from a piece: what is skipped is cut off first.
func (s *sawing) saw(piece cut.Rect, strips []strip, cuts int) {
	if cuts > mostCuts || cuts > 2 && len(strips) == 1 && strips[0].Rect == piece {
		return
	}
	kerf := s.w.p.Kerf
	at, end := reach(piece, cuts)
	machine := cut.Crosscut
	if along(cuts) {
		machine = cut.Rip
	}
	for _, g := range s.w.groups(strips, cuts) {
		if skipped := g.from - kerf - at; skipped > 0 {
			s.stops[stop{machine, skipped}] = true
		}
		if g.from > at {
			s.lose(between(piece, cuts, max(at, g.from-kerf), g.from))
		}
		if g.to < end || along(cuts) {
			s.stops[stop{machine, g.to - g.from}] = true
		}
		s.lose(between(piece, cuts, g.to, min(end, g.to+kerf)))
		at = g.to + kerf
		s.saw(between(piece, cuts, g.from, g.to), g.strips, cuts+1)
	}
}

func (s *sawing) lose(r cut.Rect) {
	if r.Length > 0 && r.Width > 0 {
		s.kerf = append(s.kerf, r)
	}
}
