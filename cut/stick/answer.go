package stick

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// answer turns the plan into sticks with tagged parts.
func (m *model) answer(p plan, bound float64) *cut.Answer {
	order(p.loads)
	a := &cut.Answer{NotPlaced: m.misfit}
	tags := m.tags()
	for _, i := range m.ready {
		a.Bought = append(a.Bought, slices.Repeat([]string{m.p.Parts[i].Tag}, int(m.p.Parts[i].Count))...)
	}
	sticks := p.loads
	for i, l := range p.loads {
		if m.stores[l.store].only >= 0 {
			sticks = p.loads[:i] // what is bought comes last
			break
		}
		u := m.used(l, tags, &a.Waste)
		a.Used = append(a.Used, u)
	}
	for _, l := range p.loads[len(sticks):] {
		a.Bought = append(a.Bought, tags.next(m.stores[l.store].only))
	}
	work := m.work(p.left)
	for k, n := range p.left {
		for range n {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: tags.next(k)})
		}
	}
	m.p.TellWhy(a)
	a.Cuts = m.settings(sticks, a.Used)
	a.Cost, a.Bound, a.Proven = cut.Settle(m.cost(p.loads)+work, bound+work, false)
	return a
}

// tagger hands out the tags of each kind, in the order of the input.
type tagger struct {
	m    *model
	part []int // place in kinds[k].part
	used []int // pieces of it handed out
}

func (m *model) tags() *tagger {
	return &tagger{m, make([]int, len(m.kinds)), make([]int, len(m.kinds))}
}

func (t *tagger) next(k int) string {
	kd := t.m.kinds[k]
	for t.used[k] == int(t.m.p.Parts[kd.part[t.part[k]]].Count) {
		t.part[k]++
		t.used[k] = 0
	}
	t.used[k]++
	return t.m.p.Parts[kd.part[t.part[k]]].Tag
}

// used lays the parts of one stick end to end and adds up what is lost.
func (m *model) used(l load, tags *tagger, w *cut.Waste) cut.Used {
	p := m.p
	st := p.Stock[m.stores[l.store].stock]
	u := cut.Used{Stock: st.Tag}
	x, end := p.Trim, st.Length-p.Trim
	w.Trim += (2 * p.Trim).MM()
	for _, k := range l.kinds {
		size := length.Length(m.kinds[k].size) - p.Kerf
		u.Parts = append(u.Parts, cut.Placed{Tag: tags.next(int(k)), At: [2]length.Length{x}, Size: [2]length.Length{size}})
		x += size
		lost := min(p.Kerf, end-x)
		w.Kerf += lost.MM()
		x += lost
	}
	switch left := end - x; {
	case left <= 0:
	case left >= p.Useful:
		w.LeftoverUseful += left.MM()
		u.Left = []cut.Offcut{{At: [2]length.Length{x}, Size: [2]length.Length{left}}}
	default:
		w.LeftoverLost += left.MM()
	}
	return u
}

// firstOf is the first kind that is as long as k.
func (m *model) firstOf(k int) int {
	for k > 0 && m.kinds[k-1].size == m.kinds[k].size {
		k--
	}
	return k
}

// settings lists the saw cuts by setting of the stop, the longest first: all parts of one length are cut,
// from every stick that holds some, before the stop is moved.
func (m *model) settings(loads []load, used []cut.Used) (out []cut.Setting) {
	on := make([][]int, len(m.kinds)) // sticks that hold a part of the length, by the first kind of it
	for i, l := range loads {
		for n, k := range l.kinds {
			if n == 0 || m.kinds[l.kinds[n-1]].size != m.kinds[k].size {
				first := m.firstOf(int(k))
				on[first] = append(on[first], i)
			}
		}
	}
	for k := range on {
		size := length.Length(m.kinds[k].size) - m.p.Kerf
		for _, i := range on[k] {
			s := cut.Setting{N: len(out) + 1, On: used[i].Stock, Machine: cut.Crosscut, Setting: size}
			for _, q := range used[i].Parts {
				if q.Size[0] == size {
					s.Makes = append(s.Makes, q.Tag)
				}
			}
			out = append(out, s)
		}
	}
	return out
}
