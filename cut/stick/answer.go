package stick

import (
	"slices"

	"rodwright/cut"
	"rodwright/cut/sawing"
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
	a.Cost, a.Bound, a.Proven = cut.Settle(m.cost(p.loads)+work, bound+work, false)
	return sawing.Finish(cut.Problem{Sticks: m.p}, a)
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
