package offcut

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// sawing collects the cuts of boards by their kinds, and where the saw goes on one board.
type sawing struct {
	w     *work
	tasks [mostCuts][]cut.Task // by kind of cut
	kerf  []cut.Rect
}

// board saws one board.
func (s *sawing) board(k int, strips []strip) {
	b := s.w.p.Boards[k]
	s.kerf = nil
	s.saw(k, cut.Rect{Length: b.Length, Width: b.Width}, strips, 1)
}

// saw cuts strips from a piece: what is skipped is cut off first.
func (s *sawing) saw(k int, piece cut.Rect, strips []strip, cuts int) {
	if cuts > mostCuts || cuts > 2 && len(strips) == 1 && strips[0].Rect == piece {
		return
	}
	kerf := s.w.p.Kerf
	last := -1
	at, end := reach(piece, cuts)
	machine := cut.Crosscut
	if along(cuts) {
		machine = cut.Rip
	}
	add := func(set length.Length, makes []string) {
		t := cut.Task{After: last, Setting: cut.Setting{On: s.w.p.Boards[k].Tag, Machine: machine, Setting: set, Makes: makes}}
		s.tasks[cuts-1] = append(s.tasks[cuts-1], t)
		last = len(s.tasks[cuts-1]) - 1
	}
	for _, g := range s.w.groups(strips, cuts) {
		if skipped := g.from - kerf - at; skipped > 0 {
			add(skipped, nil)
		}
		if g.from > at {
			s.lose(between(piece, cuts, max(at, g.from-kerf), g.from))
		}
		if g.to < end || along(cuts) {
			add(g.to-g.from, s.tags(g.strips))
		}
		s.lose(between(piece, cuts, g.to, min(end, g.to+kerf)))
		at = g.to + kerf
		s.saw(k, between(piece, cuts, g.from, g.to), g.strips, cuts+1)
	}
}

func (s *sawing) lose(r cut.Rect) {
	if r.Length > 0 && r.Width > 0 {
		s.kerf = append(s.kerf, r)
	}
}

// tags names the panels of strips, from left to right and from the low side up.
func (s *sawing) tags(strips []strip) (out []string) {
	all := slices.Clone(strips)
	slices.SortStableFunc(all, byPlace)
	for _, st := range all {
		out = append(out, s.w.p.Panels[s.w.glued[st.glued].panel].Tag)
	}
	return out
}

// order is the cuts as they are made: across all boards first, then along, then what falls off the same way again; each
// kind with few changes of setting.
func (s *sawing) order() (out []cut.Setting) {
	for _, tasks := range s.tasks {
		out = append(out, cut.Order(tasks)...)
	}
	for i := range out {
		out[i].N = i + 1
	}
	return out
}

// settings counts the settings of stop and fence.
func (s *sawing) settings() int {
	type setting struct {
		machine cut.Machine
		at      length.Length
	}
	seen := map[setting]bool{}
	for _, tasks := range s.tasks {
		for _, t := range tasks {
			seen[setting{t.Machine, t.Setting.Setting}] = true
		}
	}
	return len(seen)
}
