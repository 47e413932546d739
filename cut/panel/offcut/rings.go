package offcut

import (
	"rodwright/cut"
	"rodwright/length"
)

// strip as the answer has it.
func (w *work) told(s strip, ring cut.Ring) cut.Strip {
	return cut.Strip{
		Board: w.p.Boards[s.board].Tag, Ring: ring, NetWidth: w.net(s),
		At: [2]length.Length{s.X, s.Y}, Size: [2]length.Length{s.Length, s.Width},
	}
}

// alternate puts the strips of a panel in an order in which the sides of their rings alternate.
func (w *work) alternate(g int, strips []strip) (out []cut.Strip) {
	facing := make([]cut.Facing, len(strips))
	for i, s := range strips {
		facing[i] = cut.Facing{Ring: w.p.Boards[s.board].Ring, Turns: w.turns(g, s)}
	}
	order, shown := cut.Alternate(facing)
	for n, i := range order {
		out = append(out, w.told(strips[i], shown[n]))
	}
	return out
}

// turns reports whether a strip may show either face: always where its board's rings are not known, as then nothing is
// asked of them.
func (w *work) turns(g int, s strip) bool {
	b := w.p.Boards[s.board]
	if b.Ring == cut.NoRing {
		return true
	}
	for _, d := range b.Defects {
		if d.Overlaps(s.Rect) && !w.p.Panels[w.glued[g].panel].Show.Takes(d, true) {
			return false
		}
	}
	return true
}
