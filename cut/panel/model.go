package panel

import (
	"cmp"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// made is one panel to be made, every piece for itself.
type made struct {
	panel int           // index in the problem
	width length.Length // net width its strips add up to
}

// kind is all panels whose strips are interchangeable.
type kind struct {
	length    length.Length // of the strips
	show      cut.Show
	thickness length.Length
	masks     []cut.Stretch // where along the strip no defect may lie
	mates     bool          // a single panel that wants its boards from one log
	panels    []made        // the widest first
	need      length.Length
}

// segment is one crosscut piece of a board, for strips of one kind.
type segment struct {
	board, kind int
	at          length.Length
	net         length.Length // the most net width its strips can have
}

// model is a problem with its panels sorted into kinds, and the boards prepared for each.
type model struct {
	p      *Problem
	kinds  []kind
	boards []*board
	twin   []int // by board: the first board that is just like it
	misfit []cut.NotPlaced
}

func newModel(p *Problem) *model {
	m := &model{p: p}
	for i, q := range p.Panels {
		for range q.Count {
			m.addPanel(i, q)
		}
	}
	for k := range m.kinds {
		kd := &m.kinds[k]
		slices.SortStableFunc(kd.panels, func(a, b made) int { return cmp.Compare(b.width, a.width) })
	}
	for k := range p.Boards {
		m.twin = append(m.twin, m.twinOf(k))
		if m.twin[k] < k {
			m.boards = append(m.boards, m.boards[m.twin[k]].as(p.Boards[k].Tag))
			continue
		}
		m.boards = append(m.boards, m.newBoard(k))
	}
	m.dropHopeless()
	for k := range m.kinds {
		m.kinds[k].need = m.demand(k)
	}
	return m
}

// twinOf returns the first of the boards that differs from board k in nothing but its tag. Where mates are
// asked for, every board is a log of its own and has no twin.
func (m *model) twinOf(k int) int {
	if slices.ContainsFunc(m.kinds, func(kd kind) bool { return kd.mates }) {
		return k
	}
	b := m.p.Boards[k]
	for i, a := range m.p.Boards[:k] {
		if a.Length == b.Length && a.Width == b.Width && a.Thickness == b.Thickness && a.RoughEdges == b.RoughEdges &&
			a.Price == b.Price && a.Ring == b.Ring && slices.Equal(a.Defects, b.Defects) {
			return i
		}
	}
	return k
}

// demand is the net width of all panels of a kind, with an allowance for a strip divided between two.
func (m *model) demand(k int) (d length.Length) {
	for _, q := range m.kinds[k].panels {
		d += q.width
	}
	return d + length.Length(len(m.kinds[k].panels)-1)*(m.p.Kerf+m.p.Joint())
}

func (m *model) addPanel(i int, q cut.Panel) {
	kd := kind{length: m.p.BlankLength(i), show: q.Show, thickness: q.Thickness, mates: q.Mates}
	if m.masked(q.Show) {
		for _, r := range q.KeepOut {
			kd.masks = append(kd.masks, cut.Stretch{From: r.X + m.p.EndTrim, To: r.X + r.Length + m.p.EndTrim})
		}
	}
	one := made{i, m.p.BlankWidth(i)}
	for k := range m.kinds {
		if m.kinds[k].same(kd) {
			m.kinds[k].panels = append(m.kinds[k].panels, one)
			return
		}
	}
	kd.panels = []made{one}
	m.kinds = append(m.kinds, kd)
}

// masked reports whether it matters where along a strip of a grade no defect may lie: whether any board has one that the
// grade takes elsewhere.
func (m *model) masked(show cut.Show) bool {
	return slices.ContainsFunc(m.p.Boards, func(b cut.Board) bool {
		return slices.ContainsFunc(b.Defects, func(d cut.Defect) bool { return show.Takes(d, false) })
	})
}

// same reports whether strips for a serve b. Panels that want mates stand alone.
func (a kind) same(b kind) bool {
	return a.length == b.length && a.show == b.show && a.thickness == b.thickness &&
		!a.mates && !b.mates && slices.Equal(a.masks, b.masks)
}

// dropHopeless takes out the kinds that not one strip can be made for, and says why.
func (m *model) dropHopeless() {
	var keep []kind
	var index []int
	for k, kd := range m.kinds {
		if why := m.hopeless(k); why != "" {
			for _, q := range kd.panels {
				m.misfit = append(m.misfit, cut.NotPlaced{Tag: m.p.Panels[q.panel].Tag, Why: why})
			}
			continue
		}
		keep = append(keep, kd)
		index = append(index, k)
	}
	m.kinds = keep
	for _, b := range m.boards {
		b.keep(index)
	}
}

// hopeless says why no board yields any strip of a kind; nothing where one does.
func (m *model) hopeless(k int) string {
	kd := m.kinds[k]
	longest, thickest := length.Length(0), length.Length(0)
	for i, b := range m.boards {
		longest = max(longest, m.p.Boards[i].Length)
		thickest = max(thickest, m.p.Boards[i].Thickness)
		if b.best(k) > 0 {
			return ""
		}
	}
	switch {
	case kd.length > longest:
		return fmt.Sprintf("longer than any board (strips of %s; the longest board has %s)",
			cut.Text(kd.length, m.p.Unit), cut.Text(longest, m.p.Unit))
	case kd.thickness > thickest:
		return fmt.Sprintf("thicker than any board (%s; the thickest board has %s)",
			cut.Text(kd.thickness, m.p.Unit), cut.Text(thickest, m.p.Unit))
	}
	return fmt.Sprintf("no board yields a strip of %s for the grade %s", cut.Text(kd.length, m.p.Unit), kd.show)
}
