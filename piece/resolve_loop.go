package piece

import (
	"cmp"
	"slices"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// chooseUnions closes the loops of the frame, joins what is longer than a stick, and divides the runs into
// the sticks that are cut.
//
// All threads are right-handed, so every closed loop needs a union. A stick gets one when it is left over
// once the others have grown into a forest, and the forest grows first from the sticks that should not have
// one: those with no room for it, then upright ones, then those a panel lies on, short before long, those
// that the maker asked for last. The flanges on a wall count as one joint.
func (r *rod) chooseUnions() error {
	order := r.reluctance()
	joined := newForest(len(r.out.Nodes))
	r.joinWall(joined)
	var loops []int
	for _, i := range order {
		if !joined.join(r.segments[i].a, r.segments[i].b) {
			loops = append(loops, i)
		}
	}
	slices.Sort(loops)
	for _, i := range loops {
		ok, err := r.room(i)
		if err != nil {
			return err
		}
		if !ok {
			return r.noRoom(i, loops)
		}
		r.segments[i].joints = []pipe.Kind{pipe.Union}
	}
	r.out.Groups = joined.trees
	if err := r.askedUnions(loops); err != nil {
		return err
	}
	if err := r.joinLong(); err != nil {
		return err
	}
	rings := make([][]int, len(loops))
	for k, i := range loops {
		rings[k] = r.ring(i, loops)
	}
	return r.cutSticks(loops, rings)
}

// reluctance orders the segments by how little they should get a union.
func (r *rod) reluctance() []int {
	type rank struct {
		room, asked, clear, level bool
		length                    length.Length
	}
	ranks := make([]rank, len(r.segments))
	order := make([]int, len(r.segments))
	for i, s := range r.segments {
		u := &r.runs[s.run]
		ok, _ := r.room(i)
		ranks[i] = rank{ok, u.union, !r.borne(u), u.dir.level(), u.dir.distance(s.t1 - s.t0)}
		order[i] = i
	}
	slices.SortFunc(order, func(i, k int) int {
		a, b := ranks[i], ranks[k]
		return cmp.Or(before(a.room, b.room), before(a.asked, b.asked), before(a.level, b.level), before(a.clear, b.clear),
			cmp.Compare(a.length, b.length), cmp.Compare(k, i))
	})
	return order
}

// before orders false before true.
func before(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// borne reports whether a panel lies on a level run, or so near over it that a union's band would reach into
// the panel.
func (r *rod) borne(u *run) bool {
	union, err := r.fitting(u.pos, u.size, pipe.Union)
	if err != nil || !u.dir.level() {
		return false
	}
	return slices.ContainsFunc(r.out.Panels, func(p FlatPanel) bool {
		over := p.Min.Z - u.start.Z
		_, _, under := u.under(&p)
		return under && over >= 0 && over < union.Band.Half()
	})
}

// carries reports whether the run belongs to the rails or arms of that name.
func (u *run) carries(group string) bool {
	return u.group == group && (u.role == RailRole || u.role == ArmRole)
}

// joinWall makes one joint of all flanges on the wall.
func (r *rod) joinWall(f *forest) {
	first := -1
	for i := range r.out.Nodes {
		switch {
		case !r.out.Nodes[i].ToWall:
		case first < 0:
			first = i
		default:
			f.join(first, i)
		}
	}
}

// room reports whether a union and the two pipes beside it fit into a segment: each pipe at least a close
// nipple.
func (r *rod) room(i int) (bool, error) {
	s := &r.segments[i]
	u := &r.runs[s.run]
	least, err := r.leastWithUnion(s)
	return u.dir.distance(s.t1-s.t0) >= least, err
}

// leastWithUnion is the least distance between a segment's joints with a union between them.
func (r *rod) leastWithUnion(s *segment) (length.Length, error) {
	union, err := r.fitting(r.runs[s.run].pos, r.runs[s.run].size, pipe.Union)
	if err != nil {
		return length.Max, err
	}
	return pipe.LeastBetween(r.out.Nodes[s.a].Fitting, union) + pipe.LeastBetween(union, r.out.Nodes[s.b].Fitting), nil
}

// noRoom is the error for a loop in which no stick is long enough for a union.
func (r *rod) noRoom(i int, loops []int) error {
	var names []string
	longest := length.Length(0)
	for _, k := range r.ring(i, loops) {
		s := &r.segments[k]
		u := &r.runs[s.run]
		longest = max(longest, u.dir.distance(s.t1-s.t0))
		if !slices.Contains(names, u.name) {
			names = append(names, u.name)
		}
	}
	least, _ := r.leastWithUnion(&r.segments[i])
	u := &r.runs[r.segments[i].run]
	return r.fault(u.pos, "make one of them at least "+r.textUp(least)+" from joint to joint, or leave one out",
		"the closed loop of %s needs a union, and none of its sticks has room for one: the longest is %s", list(names), r.text(longest))
}

// askedUnions checks that every union the maker asked for closes a loop.
func (r *rod) askedUnions(loops []int) error {
	for i := range r.doc.Rails {
		g := &r.doc.Rails[i]
		of := func(k int) bool {
			u := &r.runs[r.segments[k].run]
			return u.role == RailRole && u.group == g.Name
		}
		if !g.Union || slices.ContainsFunc(loops, of) {
			continue
		}
		roomy := false
		for k := range r.segments {
			ok, _ := r.room(k)
			roomy = roomy || ok && of(k)
		}
		if !roomy {
			return r.fault(g.Pos, "leave union: out, or make them longer", "the rails %s ask for a union, but none of them has room for one between its joints", g.Name)
		}
		return r.fault(g.Pos, "leave union: out", "the rails %s ask for a union, but close no loop that has none yet", g.Name)
	}
	return nil
}

// ring returns the segments of the loop that a left-over segment closes, round the loop, beginning with it.
func (r *rod) ring(i int, loops []int) []int {
	s := &r.segments[i]
	type step struct{ node, via, from int }
	seen := map[int]bool{s.b: true}
	queue := []step{{s.b, i, -1}}
	next := r.alongTree(loops)
	for k := 0; k < len(queue); k++ {
		if queue[k].node == s.a {
			var out []int
			for at := k; at >= 0; at = queue[at].from {
				if queue[at].via >= 0 { // along the wall no stick is passed
					out = append(out, queue[at].via)
				}
			}
			slices.Reverse(out)
			return out
		}
		for _, e := range next[queue[k].node] {
			if !seen[e[0]] {
				seen[e[0]] = true
				queue = append(queue, step{e[0], e[1], k})
			}
		}
	}
	return []int{i}
}

// alongTree returns for each node the nodes next to it in the forest, with the segment between, -1 where
// that is the wall.
func (r *rod) alongTree(loops []int) [][][2]int {
	next := make([][][2]int, len(r.out.Nodes))
	for i, s := range r.segments {
		if _, left := slices.BinarySearch(loops, i); !left {
			next[s.a] = append(next[s.a], [2]int{s.b, i})
			next[s.b] = append(next[s.b], [2]int{s.a, i})
		}
	}
	first := -1
	for i := range r.out.Nodes {
		switch {
		case !r.out.Nodes[i].ToWall:
		case first < 0:
			first = i
		default:
			next[first] = append(next[first], [2]int{i, -1})
			next[i] = append(next[i], [2]int{first, -1})
		}
	}
	return next
}

// forest tells which joints hang together, by the number of trees.
type forest struct {
	parent []int
	trees  int
}

func newForest(n int) *forest {
	f := &forest{make([]int, n), n}
	for i := range f.parent {
		f.parent[i] = i
	}
	return f
}

func (f *forest) root(i int) int {
	for f.parent[i] != i {
		f.parent[i] = f.parent[f.parent[i]]
		i = f.parent[i]
	}
	return i
}

// join makes one tree of two, and reports false where they are one already.
func (f *forest) join(a, b int) bool {
	a, b = f.root(a), f.root(b)
	if a == b {
		return false
	}
	f.parent[max(a, b)] = min(a, b)
	f.trees--
	return true
}
