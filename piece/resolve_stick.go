package piece

import (
	"slices"
	"strconv"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// joinLong divides segments whose pipe is longer than the longest stick the shop can buy, by couplings into
// equal pipes; a union that is there already takes the middle joint.
func (r *rod) joinLong() error {
	for i := range r.segments {
		s := &r.segments[i]
		u := &r.runs[s.run]
		sticks := r.shop.StickLengths(u.size)
		if len(sticks) == 0 {
			return r.fault(u.pos, "enter the lengths in which it is sold", "the shop does not say how long sticks of %s pipe are", u.size.ID)
		}
		longest, union := slices.Max(sticks), len(s.joints) > 0
		for n := len(s.joints) + 1; ; n++ {
			s.joints = slices.Repeat([]pipe.Kind{pipe.Coupling}, n-1)
			if union {
				s.joints[(n-1)/2] = pipe.Union
			}
			each, err := r.pieceOf(s)
			if err != nil {
				return err
			}
			if each <= longest {
				break
			}
		}
	}
	return nil
}

// pieceOf returns how long each pipe of a divided segment is cut.
func (r *rod) pieceOf(s *segment) (length.Length, error) {
	u := &r.runs[s.run]
	left := u.dir.distance(s.t1-s.t0) - r.out.Nodes[s.a].Fitting.TakeOut() - r.out.Nodes[s.b].Fitting.TakeOut()
	for _, k := range s.joints {
		f, err := r.fitting(u.pos, u.size, k)
		if err != nil {
			return 0, err
		}
		left -= 2 * f.TakeOut()
	}
	return left.Scale(1, int64(len(s.joints)+1)), nil
}

// cutSticks makes the sticks, in the order of the document and from the lower, left or front end, with the
// nodes that divide segments, and writes down the loops.
func (r *rod) cutSticks(loops []int, rings [][]int) error {
	pieces := make([]int, len(r.runs))
	for _, s := range r.segments {
		pieces[s.run] += len(s.joints) + 1
	}
	number := make([]int, len(r.runs))
	sticks := make([][]int, len(r.segments)) // of each segment
	unions := make([]int, len(r.segments))
	for i := range r.segments {
		s := &r.segments[i]
		u := &r.runs[s.run]
		nodes, err := r.divide(s)
		if err != nil {
			return err
		}
		for k := 1; k < len(nodes); k++ {
			name := u.name
			if number[s.run]++; pieces[s.run] > 1 {
				name += " " + strconv.Itoa(number[s.run])
			}
			sticks[i] = append(sticks[i], len(r.out.Sticks))
			r.addStick(s.run, name, nodes[k-1], nodes[k])
		}
		if at := slices.Index(s.joints, pipe.Union); at >= 0 {
			unions[i] = nodes[at+1]
		}
	}
	r.orderJoints()
	for k, i := range loops {
		r.out.Loops = append(r.out.Loops, Loop{Sticks: r.roundLoop(rings[k], sticks), Union: unions[i]})
	}
	return nil
}

// roundLoop returns the sticks of a loop's segments in the order in which they are passed.
func (r *rod) roundLoop(ring []int, sticks [][]int) (out []int) {
	at := r.segments[ring[0]].a
	for _, i := range ring {
		s, pieces := &r.segments[i], slices.Clone(sticks[i])
		forward := s.a == at || s.b != at && r.out.Nodes[s.a].ToWall // the wall leads from any of its flanges to any other
		at = s.b
		if !forward {
			slices.Reverse(pieces)
			at = s.a
		}
		out = append(out, pieces...)
	}
	return out
}

// divide returns the nodes of a segment from a to b, and adds those that divide it into equal pipes.
func (r *rod) divide(s *segment) ([]int, error) {
	u := &r.runs[s.run]
	each, err := r.pieceOf(s)
	if err != nil {
		return nil, err
	}
	nodes := []int{s.a}
	at := r.out.Nodes[s.a].Fitting.TakeOut()
	for k, kind := range s.joints {
		f, err := r.fitting(u.pos, u.size, kind)
		if err != nil {
			return nil, err
		}
		at += each + f.TakeOut()
		nodes = append(nodes, len(r.out.Nodes))
		r.out.Nodes = append(r.out.Nodes, Node{At: u.at(s.t0 + u.dir.steps(at)), Kind: kind, Size: u.size, Fitting: f,
			Panel: -1, Foot: -1, Place: string(kind) + " in the " + u.name, Pos: u.pos})
		if at += f.TakeOut(); k > 0 {
			r.out.Nodes[len(r.out.Nodes)-1].Place += " (" + strconv.Itoa(k+1) + ")"
		}
	}
	return append(nodes, s.b), nil
}

// addStick adds the stick between two nodes of a run.
func (r *rod) addStick(of int, name string, a, b int) {
	u, no := &r.runs[of], len(r.out.Sticks)
	r.stickRun = append(r.stickRun, of)
	_, n, _ := line(r.out.Nodes[a].At, r.out.Nodes[b].At)
	section := Section{Pipe: &u.size}
	r.out.Sticks = append(r.out.Sticks, Stick{Name: name, Group: u.group, Role: u.role, A: a, B: b, Section: section,
		Between: u.dir.distance(n), Dir: u.dir, Pos: u.pos})
	for _, end := range []struct {
		node int
		dir  Dir
	}{{a, u.dir}, {b, u.dir.minus()}} {
		node := &r.out.Nodes[end.node]
		node.Dirs = append(node.Dirs, end.dir)
		node.Sticks = append(node.Sticks, no)
	}
}

// orderJoints puts the sticks of every node into the order of directions.
func (r *rod) orderJoints() {
	for i := range r.out.Nodes {
		n := &r.out.Nodes[i]
		order := make([]int, len(n.Dirs))
		for k := range order {
			order[k] = k
		}
		slices.SortStableFunc(order, func(a, b int) int { return n.Dirs[a].compare(n.Dirs[b]) })
		dirs, sticks := make([]Dir, len(order)), make([]int, len(order))
		for k, from := range order {
			dirs[k], sticks[k] = n.Dirs[from], n.Sticks[from]
		}
		n.Dirs, n.Sticks = dirs, sticks
	}
}
