package panel

import (
	"cmp"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// answer turns the best layout into boards and panels.
func (s *search) answer() *cut.Answer {
	m := s.m
	a := &cut.Answer{NotPlaced: m.misfit}
	for t := range s.best.glue.panels {
		s.answerKind(t, a)
	}
	slices.SortStableFunc(a.Panels, func(x, y cut.GluedPanel) int {
		return cmp.Compare(m.panelIndex(x.Tag), m.panelIndex(y.Tag))
	})
	slices.SortStableFunc(a.NotPlaced, func(x, y cut.NotPlaced) int {
		return cmp.Compare(m.panelIndex(x.Tag), m.panelIndex(y.Tag))
	})
	sawn := m.sawnBoards(s.best, a.Panels)
	for _, b := range sawn {
		a.Used = append(a.Used, m.usedBoard(b, &a.Waste))
	}
	cost, bound := cut.RoundMoney(s.best.cost), s.bound
	if bound >= s.best.cost-costEps {
		bound = cost // of costs rounded to a millionth the least one, too
	}
	a.Cost, a.Bound, a.Proven = cut.Settle(cost, bound, false)
	return a
}

func (m *model) panelIndex(tag string) int {
	return slices.IndexFunc(m.p.Panels, func(q cut.Panel) bool { return q.Tag == tag })
}

func (s *search) answerKind(t int, a *cut.Answer) {
	kd := s.m.kinds[t]
	for _, q := range s.best.glue.panels[t] {
		tag := s.m.p.Panels[q.panel].Tag
		if len(q.strips) == 0 {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: tag, Why: s.m.noneLeft(kd, s.best.glue.panels[t])})
			continue
		}
		a.Panels = append(a.Panels, cut.GluedPanel{Tag: tag, Strips: s.m.alternate(kd, q.strips)})
	}
}

// noneLeft says what is missing of a kind for the panels without strips.
func (m *model) noneLeft(kd kind, panels []panelStrips) string {
	n, width := 0, length.Length(0)
	for _, q := range panels {
		if len(q.strips) == 0 {
			n++
			width += q.width
		}
	}
	why := "not enough wood of its grade and length is left on the boards"
	if kd.mates {
		why = "no boards of one log have enough wood of its grade and length"
	}
	return fmt.Sprintf("%s: %d of %d such panels are missing, strips of %s that add up to %s", why, n, len(panels),
		cut.Text(kd.length, m.p.Unit), cut.Text(width, m.p.Unit))
}

// alternate puts the strips of a panel in an order in which the sides of their rings alternate.
func (m *model) alternate(kd kind, strips []strip) (out []cut.Strip) {
	facing := make([]cut.Facing, len(strips))
	for i, st := range strips {
		facing[i] = cut.Facing{Ring: m.boards[st.seg.board].Ring, Turns: m.turns(kd, st)}
	}
	order, shown := cut.Alternate(facing)
	for n, i := range order {
		out = append(out, m.stripOf(kd, strips[i], shown[n]))
	}
	return out
}

func (m *model) stripOf(kd kind, st strip, ring cut.Ring) cut.Strip {
	return cut.Strip{
		Board: m.boards[st.seg.board].Tag, Ring: ring, NetWidth: st.width - m.p.Joint(),
		At: [2]length.Length{st.seg.at, st.at}, Size: [2]length.Length{kd.length, st.width},
	}
}

// turns reports whether a strip may show either face: always where its board's rings are not known, as
// then nothing is asked of them.
func (m *model) turns(kd kind, st strip) bool {
	b := m.boards[st.seg.board]
	if b.Ring == cut.NoRing {
		return true
	}
	r := cut.Rect{X: st.seg.at, Y: st.at, Length: kd.length, Width: st.width}
	for _, d := range b.Defects {
		if d.Overlaps(r) && !kd.show.Takes(d, true) {
			return false
		}
	}
	return true
}
