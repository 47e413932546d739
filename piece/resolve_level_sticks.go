package piece

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// raiseRails lays every rail at its level, and checks that the posts it joins reach that level.
func (r *rod) raiseRails() error {
	for i := range r.doc.Rails {
		g := &r.doc.Rails[i]
		size, err := r.pipeOf(g.Section, g.Pos)
		if err != nil {
			return err
		}
		z := *r.railLevel[i]
		words := railWords(r.railAt[i])
		for k, p := range r.railAt[i] {
			u := run{name: r.unique(memberName(g.Name, "rail", words[k]), g.Name), noun: nounFor(g.Name, "rail"), group: g.Name,
				role: RailRole, pos: g.Pos, size: size, from: g.Section, union: g.Union}
			for _, e := range []railEnd{p.endA, p.endB} {
				if err := r.reaches(g, u.name, e, z); err != nil {
					return err
				}
			}
			u, _ = u.lay(Vec{p.a.x, p.a.y, z}, Vec{p.b.x, p.b.y, z}, openEnd(g.Pos), openEnd(g.Pos))
			r.runs = append(r.runs, u)
		}
	}
	return nil
}

// railWords tells the rails of a group apart by their middles: those along the piece among themselves, and
// the others among themselves, where that is clear.
func railWords(rails []railPlan) []string {
	var along, across []int
	middles := make([]spot, len(rails))
	for i, p := range rails {
		middles[i] = spot{p.a.x + p.b.x, p.a.y + p.b.y} // twice the middle, which orders the same
		if p.a.y == p.b.y {
			along = append(along, i)
		} else {
			across = append(across, i)
		}
	}
	out, seen := make([]string, len(rails)), map[string]bool{}
	for _, some := range [][]int{along, across} {
		at := make([]spot, len(some))
		for k, i := range some {
			at[k] = middles[i]
		}
		for k, word := range wordsFor(at) {
			if seen[word] {
				return wordsFor(middles)
			}
			seen[word] = true
			out[some[k]] = word
		}
	}
	return out
}

// reaches checks that the post at a rail's end passes the rail's level.
func (r *rod) reaches(g *Rails, name string, e railEnd, z length.Length) error {
	if e.rails {
		return nil
	}
	post := r.postRun(e)
	if z < post.start.Z || z > post.far().Z {
		return r.fault(g.Pos, "put the rail at a level within the post, or make the post longer", "the %s is at %s, but the %s goes from %s up to %s",
			name, r.text(z), post.name, r.text(post.start.Z), r.text(post.far().Z))
	}
	return nil
}

// postRun returns the run of a post; posts were raised first, group by group.
func (r *rod) postRun(e railEnd) *run {
	n := e.no
	for i := range e.group {
		n += len(r.postAt[i])
	}
	return &r.runs[n]
}

// raiseArms stands every arm out from the wall.
func (r *rod) raiseArms() error {
	for i := range r.doc.Arms {
		g := &r.doc.Arms[i]
		size, err := r.pipeOf(g.Section, g.Pos)
		if err != nil {
			return err
		}
		if g.Reach <= 0 {
			return r.fault(g.Pos, "write reach: with its length from the wall to its front end", "the arms %s reach nowhere", g.Name)
		}
		var at []spot
		for _, a := range r.armAt[i] {
			at = append(at, spot{x: a.x})
		}
		words, z, wall := wordsFor(at), *r.armLevel[i], *r.wall
		for k, a := range r.armAt[i] {
			u := run{name: r.unique(memberName(g.Name, "arm", words[k]), g.Name), noun: nounFor(g.Name, "arm"), group: g.Name,
				role: ArmRole, pos: g.Pos, size: size, from: g.Section}
			onWall := runEnd{fixed: true, kind: pipe.Flange, panel: -1, wall: true, foot: -1, pos: g.Pos}
			u, _ = u.lay(Vec{a.x, wall - g.Reach, z}, Vec{a.x, wall, z}, closedBy(g.Finish, g.Pos), onWall)
			r.runs = append(r.runs, u)
		}
	}
	return nil
}

// raiseFree places the free sticks by their coordinates.
func (r *rod) raiseFree() error {
	for i := range r.doc.Sticks {
		f := &r.doc.Sticks[i]
		size, err := r.pipeOf(f.Section, f.Pos)
		if err != nil {
			return err
		}
		u := run{name: r.unique(nounFor(f.Name, "stick"), f.Name), noun: nounFor(f.Name, "stick"), group: f.Name,
			role: FreeRole, pos: f.Pos, size: size, from: f.Section}
		a, b := Vec{f.A[0], f.A[1], f.A[2]}, Vec{f.B[0], f.B[1], f.B[2]}
		d, _, ok := line(a, b)
		if !ok {
			return r.fault(f.Pos, "let it run along the piece, front to back or upright, or at 45° to these", "the %s runs neither square nor at 45°, or has no length", u.name)
		}
		endA, err := r.freeEnd(u.name, a, d, f.FinishA, f.Pos)
		if err != nil {
			return err
		}
		endB, err := r.freeEnd(u.name, b, d.minus(), f.FinishB, f.Pos)
		if err != nil {
			return err
		}
		u, _ = u.lay(a, b, endA, endB)
		r.runs = append(r.runs, u)
	}
	return nil
}

// freeEnd returns what closes an end of a free stick that the stick leaves in direction d: a flange is
// screwed to the panel, the floor or the wall that it faces.
func (r *rod) freeEnd(name string, at Vec, d Dir, finish pipe.Kind, pos Pos) (runEnd, error) {
	end := closedBy(finish, pos)
	down := d == Dir{0, 0, 1}
	if finish != pipe.Flange {
		if at.Z == 0 && down {
			end.foot, end.fixed = r.standOn(finish, at, name, pos), true
		}
		return end, nil
	}
	if d.upright() {
		end.panel = r.panelFacing(at, !down)
	}
	switch {
	case end.panel >= 0:
		end.fixed = true
	case at.Z == 0 && down:
		end.foot, end.fixed = r.standOn(finish, at, name, pos), true
	case d == Dir{0, -1, 0} && r.wall != nil && *r.wall == at.Y:
		end.fixed, end.wall = true, true
	case d == Dir{0, -1, 0}:
		return end, r.fault(pos, "end all of them at the same y", "the %s is flanged to a wall at y %s, but the wall is at y %s", name, r.text(at.Y), r.text(*r.wall))
	}
	return end, nil
}
