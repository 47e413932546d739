package piece

import (
	"fmt"
	"slices"

	"rodwright/trade/pipe"
)

// leaving is one stick that leaves a joint.
type leaving struct {
	segment int
	dir     Dir
	through bool // its run goes on beyond the joint
}

// leavings returns what leaves each node, by the order of directions.
func (r *rod) leavings() [][]leaving {
	out := make([][]leaving, len(r.out.Nodes))
	for i, s := range r.segments {
		u := &r.runs[s.run]
		out[s.a] = append(out[s.a], leaving{i, u.dir, s.t0 > 0})
		out[s.b] = append(out[s.b], leaving{i, u.dir.minus(), s.t1 < u.n})
	}
	for _, ls := range out {
		slices.SortStableFunc(ls, func(a, b leaving) int { return a.dir.compare(b.dir) })
	}
	return out
}

// nameJoints gives every node its fitting, or what ends there.
func (r *rod) nameJoints() error {
	for i, ls := range r.leavings() {
		n := &r.out.Nodes[i]
		first := r.primary(ls)
		n.Pos = first.pos
		n.Size = first.size
		var err error
		if len(ls) == 1 {
			err = r.nameEnd(i, ls[0])
		} else {
			err = r.nameMeeting(n, first, ls)
		}
		if err != nil {
			return err
		}
		if n.Fitting, err = r.fitting(n.Pos, n.Size, n.Kind); err != nil {
			return err
		}
	}
	return nil
}

// primary returns the run a joint is named after: a post before others, one that goes through before one
// that ends, the first in the document.
func (r *rod) primary(ls []leaving) *run {
	best, rank := r.segments[ls[0].segment].run, -1
	for _, l := range ls {
		no, score := r.segments[l.segment].run, 0
		if r.runs[no].role == PostRole {
			score += 2
		}
		if l.through {
			score++
		}
		if score > rank || score == rank && no < best {
			best, rank = no, score
		}
	}
	return &r.runs[best]
}

// nameEnd names a node that one stick ends at.
func (r *rod) nameEnd(i int, l leaving) error {
	n, u := &r.out.Nodes[i], &r.runs[r.segments[l.segment].run]
	end := u.ends[0]
	if l.dir != u.dir {
		end = u.ends[1]
	}
	which := u.endName(l.dir)
	if end.open {
		return r.fault(end.pos, "end it at a post, rail or panel", "the %s end of the %s meets nothing", which, u.name)
	}
	n.Kind, n.Panel, n.ToWall, n.Foot = end.kind, end.panel, end.wall, end.foot
	switch {
	case n.Panel >= 0 && l.dir.Z < 0:
		n.Place = u.name + " under " + r.doc.Panels[n.Panel].Name
	case n.Panel >= 0:
		n.Place = u.name + " on " + r.doc.Panels[n.Panel].Name
	case n.ToWall:
		n.Place = u.name + " at the wall"
	case n.Foot >= 0:
		n.Place = "foot of the " + u.name
		r.out.Feet[n.Foot].Node = i
	default:
		n.Place = which + " end of the " + u.name
	}
	return nil
}

// endName says which end of a run a stick leaves in direction d.
func (u *run) endName(d Dir) string {
	start := d == u.dir
	switch {
	case u.dir.Z != 0:
		return map[bool]string{true: "lower", false: "upper"}[start]
	case u.dir.X != 0:
		return map[bool]string{true: "left", false: "right"}[start]
	}
	return map[bool]string{true: "front", false: "back"}[start]
}

// nameMeeting names a node where sticks meet: the fitting that has their directions.
func (r *rod) nameMeeting(n *Node, first *run, ls []leaving) error {
	dirs := make([]Dir, 0, len(ls))
	var others []string
	for _, l := range ls {
		u := &r.runs[r.segments[l.segment].run]
		dirs = append(dirs, l.dir)
		if u != first && !slices.Contains(others, u.noun) {
			others = append(others, u.noun)
		}
	}
	n.Place = first.name
	if len(others) > 0 {
		n.Place += " at " + list(others)
	}
	for _, l := range ls {
		if err := r.checkMeeting(n, first, l); err != nil {
			return err
		}
	}
	kind, ok := FittingFor(dirs)
	if !ok {
		return r.noFitting(n, dirs, ls)
	}
	n.Kind = kind
	return nil
}

// checkMeeting says where a stick meets others of another size, or at an end that is screwed to something.
func (r *rod) checkMeeting(n *Node, first *run, l leaving) error {
	u := &r.runs[r.segments[l.segment].run]
	if u.size != n.Size {
		return r.fault(u.pos, "use one size of pipe where they meet, or keep them apart", "%s %s: %s and %s pipe meet, and no fitting here joins two sizes",
			n.Place, r.height(n.At), first.size.ID, u.size.ID)
	}
	end := u.ends[0]
	if l.dir != u.dir {
		end = u.ends[1]
	}
	if !l.through && end.fixed {
		return r.fault(end.pos, "move one of them", "%s %s: the %s ends here in a %s, which joins no other pipe", n.Place, r.height(n.At), u.name, end.kind.Words())
	}
	return nil
}

// height tells where a joint is above the floor.
func (r *rod) height(at Vec) string { return "at " + r.text(at.Z) + " above the floor" }

// noFitting is the error for a meeting that no fitting makes: where it is, which ways the sticks leave, and
// what could be made instead.
func (r *rod) noFitting(n *Node, dirs []Dir, ls []leaving) error {
	words := make([]string, len(dirs))
	for i, d := range dirs {
		words[i] = d.String()
	}
	message := fmt.Sprintf("%s, %s above the floor: sticks leave %s, and no fitting has these %d ends", n.Place, r.text(n.At.Z), list(words), len(dirs))
	return &Error{File: r.doc.File, Pos: n.Pos, Message: message, Want: r.instead(n, dirs, ls)}
}

// instead says which two fittings would do, and by how much to stagger them at least: a close nipple between
// them.
func (r *rod) instead(n *Node, dirs []Dir, ls []leaving) string {
	apart, ok := takeApart(dirs)
	if !ok {
		return "move a stick away: made are elbows (square or 135°), tees, crosses, and elbows and tees with a side outlet"
	}
	a, errA := r.fitting(n.Pos, n.Size, apart.kinds[0])
	b, errB := r.fitting(n.Pos, n.Size, apart.kinds[1])
	if errA != nil || errB != nil {
		return "move a stick away along the run"
	}
	var move []string
	for _, l := range ls {
		u := &r.runs[r.segments[l.segment].run]
		if slices.Contains(apart.rest, l.dir) && !slices.Contains(move, u.name) {
			move = append(move, u.name)
		}
	}
	how := map[Dir]string{{0, 0, 1}: "up or down", {1, 0, 0}: "left or right", {0, 1, 0}: "to the front or back"}[apart.line]
	return fmt.Sprintf("make it a %s and a %s at least %s apart: move the %s that much %s",
		apart.kinds[0].Words(), apart.kinds[1].Words(), r.textUp(pipe.LeastBetween(a, b)), list(move), how)
}
