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

// alternate puts the strips of a panel in an order in which the sides of their rings alternate as far as they can: a
// strip whose back is as good as its face may be turned over.
func (w *work) alternate(g int, strips []strip) (out []cut.Strip) {
	waiting := map[cut.Ring][]strip{} // by the ring side they must show; NoRing may show either
	for _, s := range strips {
		r := w.p.Boards[s.board].Ring
		if w.turns(g, s) {
			r = cut.NoRing
		}
		waiting[r] = append(waiting[r], s)
	}
	want := cut.RingUp
	if len(waiting[cut.RingDown]) > len(waiting[cut.RingUp]) {
		want = cut.RingDown
	}
	for range strips {
		from := want
		for _, r := range []cut.Ring{want, cut.NoRing, want.Other()} {
			if len(waiting[r]) > 0 {
				from = r
				break
			}
		}
		s := waiting[from][0]
		waiting[from] = waiting[from][1:]
		shown := from
		if from == cut.NoRing && w.p.Boards[s.board].Ring != cut.NoRing {
			shown = want
		}
		out = append(out, w.told(s, shown))
		want = want.Other()
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
