package piece

import "rodwright/length"

// moveJoints moves posts, joints, feet and rails to where they stand.
func (s *stander) moveJoints() {
	at := make(map[int]offset, len(s.out.Nodes)) // of each joint
	for i, run := range s.stickRun {
		if o, ok := s.off[run]; ok {
			at[s.out.Sticks[i].A], at[s.out.Sticks[i].B] = o, o
		}
	}
	for range 2 { // rails between posts, then rails between rails
		for k := range s.runs {
			if s.runs[k].role != PostRole {
				s.share(k, at)
			}
		}
	}
	for n, o := range at {
		if o == (offset{}) {
			continue
		}
		s.out.Standing.Moved = true
		s.out.Nodes[n].At.X += o.x
		s.out.Nodes[n].At.Y += o.y
	}
	if !s.out.Standing.Moved {
		return
	}
	for k := range s.runs {
		s.moveRun(k, at)
	}
	for i := range s.out.Feet {
		if f := &s.out.Feet[i]; f.Node >= 0 {
			f.At.X += at[f.Node].x
			f.At.Y += at[f.Node].y
		}
	}
	for i := range s.out.Sticks {
		s.remeasure(&s.out.Sticks[i])
	}
}

// share moves the joints along a rail by their share of what its ends do.
func (s *stander) share(k int, at map[int]offset) {
	first, last := -1, -1
	var inner []int
	for i, run := range s.stickRun {
		if run != k {
			continue
		}
		if first < 0 {
			first = s.out.Sticks[i].A
		} else {
			inner = append(inner, s.out.Sticks[i].A)
		}
		last = s.out.Sticks[i].B
	}
	if first < 0 {
		return
	}
	a, b := at[first], at[last]
	if a == (offset{}) && b == (offset{}) {
		return
	}
	whole := s.along(k, last) - s.along(k, first)
	for _, n := range inner {
		if whole == 0 {
			continue
		}
		part := s.along(k, n) - s.along(k, first)
		at[n] = offset{a.x + (b.x-a.x).Scale(int64(part), int64(whole)), a.y + (b.y-a.y).Scale(int64(part), int64(whole))}
	}
}

// along is where a joint lies along the direction of a run.
func (s *stander) along(k, node int) length.Length {
	d, p := s.runs[k].dir, s.out.Nodes[node].At
	return length.Length(d.X)*p.X + length.Length(d.Y)*p.Y + length.Length(d.Z)*p.Z
}

// moveRun moves where a run begins, as what sits on it and goes round it is placed by that.
func (s *stander) moveRun(k int, at map[int]offset) {
	o, ok := s.off[k]
	if !ok {
		for i, run := range s.stickRun {
			if run == k {
				o = at[s.out.Sticks[i].A]
				break
			}
		}
	}
	s.runs[k].start.X += o.x
	s.runs[k].start.Y += o.y
}

// remeasure sets how far the ends of a pipe stand apart, along the way it was drawn: by how little it slants then is
// below what a joint gives.
func (s *stander) remeasure(st *Stick) {
	if st.Dir.slants() != 0 {
		return
	}
	a, b := s.out.Nodes[st.A].At, s.out.Nodes[st.B].At
	st.Between = length.Length(st.Dir.X)*(b.X-a.X) + length.Length(st.Dir.Y)*(b.Y-a.Y) + length.Length(st.Dir.Z)*(b.Z-a.Z)
}

// asMade gives the panels that were made the size they have. A panel keeps its middle in plan, and its underside,
// which what bears it sets; its top is where its thickness puts it.
func (r *rod) asMade() error {
	for _, m := range r.facts.Panels {
		i, ok := r.panelNo[m.Name]
		if !ok {
			continue
		}
		p := &r.out.Panels[i]
		x, y := m.Size[0], m.Size[1]
		if !p.GrainX {
			x, y = y, x
		}
		dx, dy := x-(p.Max.X-p.Min.X), y-(p.Max.Y-p.Min.Y)
		p.Min.X -= dx.Half()
		p.Min.Y -= dy.Half()
		p.Max.X, p.Max.Y, p.Max.Z = p.Min.X+x, p.Min.Y+y, p.Min.Z+m.Size[2]
	}
	return nil
}
