package sheet

import (
	"rodwright/cut"
	"rodwright/length"
)

// kind is one part of the problem that fits on some sheet.
type kind struct {
	part int
	l, w length.Length
	turn bool
	need int
}

// store is one kind of sheet.
type store struct {
	sheet   int
	in      cut.Rect // within the trim
	price   float64
	count   int // -1 is any number
	grain   bool
	defects []cut.Rect
}

// model is a problem with what can't be placed taken out.
type model struct {
	p      *Problem
	kinds  []kind
	stores []store
	valued bool
	misfit []cut.NotPlaced
	grids  map[gridKey]*grid // nil where it takes too long
	common length.Length     // greatest common divisor of all sizes, 0 before it is asked for
}

func newModel(p *Problem) *model {
	m := &model{p: p, valued: p.Valued()}
	for i, s := range p.Sheets {
		in := p.Inside(i)
		if s.Count != 0 && in.Length > 0 && in.Width > 0 {
			m.stores = append(m.stores, store{i, in, p.Cost(i), int(s.Count), s.Grain, s.Defects})
		}
	}
	for i, q := range p.Parts {
		k := kind{part: i, l: q.Length, w: q.Width, turn: q.Turn, need: int(q.Count)}
		if q.Count == cut.Any {
			k.need = m.mostOf(k)
		}
		switch {
		case k.need == 0 && q.Count != cut.Any:
		case !m.fits(k):
			m.tooLarge(i)
		default:
			m.kinds = append(m.kinds, k)
		}
	}
	return m
}

// unit is the greatest common divisor of all sizes.
func (m *model) unit() length.Length {
	if m.common > 0 {
		return m.common
	}
	u := m.p.Kerf
	for _, k := range m.kinds {
		u = gcd(gcd(u, k.l), k.w)
	}
	for _, s := range m.stores {
		u = gcd(gcd(u, s.in.Length), s.in.Width)
	}
	m.common = max(u, 1)
	return m.common
}

func gcd(a, b length.Length) length.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// mostOf returns how many parts of a kind the areas of all sheets have room for.
func (m *model) mostOf(k kind) int {
	n := 0.0
	kf := m.p.Kerf.MM()
	for _, s := range m.stores {
		each := (s.in.Length.MM() + kf) * (s.in.Width.MM() + kf) / ((k.l.MM() + kf) * (k.w.MM() + kf))
		n += float64(s.count) * float64(int(each+1e-9))
	}
	return int(min(n, cut.MaxPieces))
}

// fits reports whether a part fits on an empty sheet without regard to defects.
func (m *model) fits(k kind) bool {
	for _, s := range m.stores {
		if s.takes(k.l, k.w) || k.turn && !s.grain && s.takes(k.w, k.l) {
			return true
		}
	}
	return false
}

func (s store) takes(l, w length.Length) bool { return l <= s.in.Length && w <= s.in.Width }

func (m *model) tooLarge(i int) {
	q := m.p.Parts[i]
	for range max(1, int(q.Count)) {
		m.misfit = append(m.misfit, cut.NotPlaced{Tag: q.Tag})
	}
}

// value is what one part of a kind is worth: its own value, or its area with the saw cuts.
func (m *model) value(k int) float64 {
	kd := m.kinds[k]
	if m.valued {
		return m.p.Parts[kd.part].Value.Value
	}
	return (kd.l + m.p.Kerf).MM() * (kd.w + m.p.Kerf).MM()
}
