package sheet

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// answer turns the best plan into sheets with tagged parts.
func (s *search) answer() *cut.Answer {
	m := s.m
	a := &cut.Answer{NotPlaced: m.misfit}
	sheets := slices.Clone(s.best.sheets)
	slices.SortStableFunc(sheets, func(x, y filled) int {
		return cmp.Or(cmp.Compare(x.store, y.store), cmp.Compare(m.empty(x), m.empty(y)))
	})
	var tasks []staged
	for _, f := range sheets {
		if len(f.parts) == 0 {
			continue
		}
		u := m.used(f, &a.Waste)
		a.Used = append(a.Used, u)
		tasks = append(tasks, m.tasks(f, u, len(tasks))...)
	}
	a.Cuts = ordered(tasks)
	for k, n := range s.best.left {
		for range n {
			if !m.valued {
				a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: m.p.Parts[m.kinds[k].part].Tag})
			}
		}
	}
	m.p.TellWhy(a)
	cost, bound := m.cost(sheets), s.bound
	if m.valued {
		cost = s.rank.value
	} else {
		bound = math.Min(bound, cost)
	}
	a.Cost, a.Bound, a.Proven = cut.Settle(cost, bound, m.valued)
	return a
}

// used describes one sheet and adds up what is lost of it.
func (m *model) used(f filled, w *cut.Waste) cut.Used {
	st := m.stores[f.store]
	s := m.p.Sheets[st.sheet]
	u := cut.Used{Stock: s.Tag, Parts: make([]cut.Placed, 0, len(f.parts))}
	inside := st.in.Length.MM() * st.in.Width.MM()
	w.Trim += s.Length.MM()*s.Width.MM() - inside
	rest := inside
	for _, q := range f.parts {
		u.Parts = append(u.Parts, cut.Placed{
			Tag: m.p.Parts[m.kinds[q.kind].part].Tag, At: [2]length.Length{q.X, q.Y},
			Size: [2]length.Length{q.Length, q.Width}, Turned: q.turned,
		})
		rest -= q.Length.MM() * q.Width.MM()
	}
	free := slices.Clone(f.free)
	slices.SortFunc(free, func(a, b piece) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	t := sheetTotals{rest: rest}
	for _, p := range free {
		t.piece(m, st, p, &u)
	}
	w.Kerf += math.Max(0, t.rest)
	w.LeftoverUseful += t.useful
	w.LeftoverLost += t.lost
	w.Defect += t.defect
	return u
}

// sheetTotals splits what is no part of one sheet; what no free piece takes of rest is saw cuts.
type sheetTotals struct{ rest, useful, lost, defect float64 }

func (t *sheetTotals) piece(m *model, st store, p piece, u *cut.Used) {
	area := p.Length.MM() * p.Width.MM()
	t.rest -= area
	bad := 0.0
	for _, d := range st.defects {
		if d.Overlaps(p.Rect) {
			l := min(d.X+d.Length, p.X+p.Length) - max(d.X, p.X)
			w := min(d.Y+d.Width, p.Y+p.Width) - max(d.Y, p.Y)
			bad += l.MM() * w.MM()
		}
	}
	if bad == 0 && m.p.Keeps(p.Length, p.Width, st.grain) {
		t.useful += area
		u.Left = append(u.Left, cut.Offcut{
			At: [2]length.Length{p.X, p.Y}, Size: [2]length.Length{p.Length, p.Width},
		})
		return
	}
	t.defect += min(bad, area)
	t.lost += area - min(bad, area)
}

// tasks lists the cuts of one sheet, in the direction that takes fewer stages first. base is the number of
// tasks before them.
func (m *model) tasks(f filled, u cut.Used, base int) []staged {
	boxes := make([]box, 0, len(u.Parts)+len(u.Left))
	for _, q := range u.Parts {
		boxes = append(boxes, box{cut.Rect{X: q.At[0], Y: q.At[1], Length: q.Size[0], Width: q.Size[1]}, q.Tag})
	}
	for _, o := range u.Left {
		boxes = append(boxes, box{Rect: cut.Rect{X: o.At[0], Y: o.At[1], Length: o.Size[0], Width: o.Size[1]}})
	}
	s := m.p.Sheets[m.stores[f.store].sheet]
	c := &cutter{sheet: s.Tag, kerf: m.p.Kerf}
	first := acrossX
	if stagesFrom(slices.Clone(boxes), acrossY, m.p.Kerf) < stagesFrom(slices.Clone(boxes), acrossX, m.p.Kerf) {
		first = acrossY
	}
	c.piece(cut.Rect{Length: s.Length, Width: s.Width}, boxes, first, -1, 1)
	for i := range c.tasks {
		if c.tasks[i].After >= 0 {
			c.tasks[i].After += base
		}
	}
	return c.tasks
}
