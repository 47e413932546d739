package sheet

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/cut/sawing"
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
	for _, f := range sheets {
		if len(f.parts) == 0 {
			continue
		}
		a.Used = append(a.Used, m.used(f, &a.Waste))
	}
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
	return sawing.Finish(cut.Problem{Sheets: m.p}, a)
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
