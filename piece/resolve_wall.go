package piece

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// armPlan is an arm as seen from above.
type armPlan struct{ x length.Length }

// planArms spreads a group of arms: by coordinates, or evenly between the two that keep their inset from
// the ends of the panel.
func (r *rod) planArms(i int) bool {
	g := &r.doc.Arms[i]
	if len(g.At) > 0 {
		r.armAt[i] = make([]armPlan, 0, len(g.At))
		for _, x := range g.At {
			r.armAt[i] = append(r.armAt[i], armPlan{x})
		}
		return true
	}
	no, ok := r.panelNo[g.Panel]
	if !ok || r.panelAt[no] == nil {
		return false
	}
	x, _ := r.doc.Panels[no].extent()
	first, span := r.panelAt[no].x+g.Inset, x-2*g.Inset
	if g.Count == 1 {
		r.armAt[i] = []armPlan{{first + span.Half()}}
		return true
	}
	r.armAt[i] = make([]armPlan, 0, g.Count)
	for k := range g.Count {
		r.armAt[i] = append(r.armAt[i], armPlan{first + span.Scale(int64(k), int64(g.Count-1))})
	}
	return true
}

// findWall settles where the wall's face is, and reports whether it now did: where free sticks end on it,
// or behind the first placed panel that lies on arms.
func (r *rod) findWall() (settled bool, err error) {
	if r.wall != nil {
		return false, nil
	}
	for _, f := range r.doc.Sticks {
		if y, ok := f.wall(); ok {
			r.wall = &y
			return true, nil
		}
	}
	for i := range r.doc.Arms {
		for j := range r.doc.Panels {
			p := &r.doc.Panels[j]
			if r.panelAt[j] == nil || !r.onArms(p, &r.doc.Arms[i]) {
				continue
			}
			_, y := p.extent()
			wall := r.panelAt[j].y + y + r.standOff()
			r.wall = &wall
			return true, nil
		}
	}
	return false, nil
}

// onArms reports whether the panel lies on the arms or places them.
func (r *rod) onArms(p *Panel, g *Arms) bool {
	if g.Panel == p.Name || g.Under == p.Name {
		return true
	}
	for _, s := range p.Seats {
		if _, rails := r.railsNo[s.Group]; s.Kind == OnRails && s.Group == g.Name && !rails {
			return true
		}
	}
	return false
}

// wallFromReach puts the wall where the longest arm's front end is at y = 0.
func (r *rod) wallFromReach() {
	var reach length.Length
	for _, g := range r.doc.Arms {
		reach = max(reach, g.Reach)
	}
	r.wall = &reach
}

// wall returns the y of the end of a free stick that is flanged to the wall: a level end towards the back.
func (f *FreeStick) wall() (y length.Length, ok bool) {
	back, finish := f.A, f.FinishA
	if f.B[1] > f.A[1] {
		back, finish = f.B, f.FinishB
	}
	level := f.A[0] == f.B[0] && f.A[2] == f.B[2] && f.A[1] != f.B[1]
	return back[1], level && finish == pipe.Flange
}
