package check

import (
	"cmp"
	"slices"
)

// Order is how a frame of threaded pipe is put together by hand: what is turned onto what, in order, then the unions.
//
// It is found by taking the frame apart, unions first: a thread is undone where the two groups it joins can be turned
// about its pipe without striking each other. Undoing one thread only takes bodies out of the way of the others, so that
// what can be undone now can be undone later too: to undo whatever can be is exact, and where some threads are left
// over there is no order at all that turns one group onto another.
type Order struct {
	Steps  []Joining
	Unions []int   // nodes, drawn up at the end, in the order of the nodes
	Stuck  []Stuck // threads that can't be turned; the frame can't be put together where there are any
}

// Joining is one step: a group is turned onto another by one thread, or a panel is laid that posts pass through.
type Joining struct {
	Stick, Node int      // the thread: a pipe in a fitting; -1 where a panel is laid
	Turned      []string // tags of what is turned, pipes and fittings that hang together by then
	Panel       int      // the panel that is laid; else -1
	Swing       float64  // mm, the radius that what is turned sweeps about its pipe
}

// Stuck is a thread that can't be turned, and why.
type Stuck struct {
	Stick, Node int
	Loop        bool   // its pipe is part of a loop without a union
	Strikes     [2]int // bodies of the frame that strike each other where it is no loop
	By          float64
	names       [2]string
	panel       bool // the second is a panel that posts pass through
}

// strike is a pair of bodies on the two sides of a thread that strike each other when it is turned, as long as both are
// still in the group, and the panel through which it comes still lies in it.
type strike struct {
	a, b  int
	panel int // of the workpiece; -1
	by    float64
}

// undoing is a workpiece that is taken apart.
type undoing struct {
	*workpiece
	next    [][]int    // turns at each body
	bridge  []bool     // turns that alone join their two sides
	strikes [][]strike // of each turn, once it was tried
	tried   []bool     // turns whose strikes are known
	undone  []bool
	lifted  []bool // panels
	group   []int  // of each body
	below   []int  // bodies on the far side of each turn, as seen from the first body of its group
	size    []int  // of each group
	child   []int  // the body on the far side of each turn
}

// Assemble finds the order in which the frame can be put together.
func Assemble(p *Piece) Order {
	u := newUndoing(p.workpieceOf())
	var back []Joining
	for {
		u.regroup()
		if panel := u.liftable(); panel >= 0 {
			u.lifted[panel] = true
			back = append(back, Joining{Stick: -1, Node: -1, Panel: u.bodies[u.panels[panel].body].panel})
			continue
		}
		t := u.easiest()
		if t < 0 {
			break
		}
		back = append(back, u.undo(t))
	}
	slices.Reverse(back)
	o := Order{Steps: back, Stuck: u.stuck()}
	for _, halves := range u.unions {
		o.Unions = append(o.Unions, u.bodies[halves[0]].node)
	}
	return o
}

func newUndoing(w *workpiece) *undoing {
	n := len(w.turns)
	u := &undoing{
		workpiece: w, next: make([][]int, len(w.bodies)), bridge: make([]bool, n), strikes: make([][]strike, n), tried: make([]bool, n),
		undone: make([]bool, n), lifted: make([]bool, len(w.panels)), group: make([]int, len(w.bodies)),
		below: make([]int, n), child: make([]int, n),
	}
	for i, t := range w.turns {
		u.next[t.pipe] = append(u.next[t.pipe], i)
		u.next[t.fitting] = append(u.next[t.fitting], i)
	}
	for i := range w.turns {
		side := u.sideOf(i)
		u.bridge[i] = !side[w.turns[i].fitting]
	}
	return u
}

// sideOf marks the bodies that hang on the pipe's side of a turn now; the fitting is among them where a loop leads
// back to it.
func (u *undoing) sideOf(turn int) []bool {
	side := make([]bool, len(u.bodies))
	start := u.turns[turn].pipe
	side[start] = true
	queue := append(make([]int, 0, len(u.bodies)), start)
	for ; len(queue) > 0; queue = queue[1:] {
		for _, t := range u.next[queue[0]] {
			if other := u.turns[t].pipe + u.turns[t].fitting - queue[0]; t != turn && !u.undone[t] && !side[other] {
				side[other] = true
				queue = append(queue, other)
			}
		}
	}
	return side
}

// regroup finds what hangs together now, and how much of it lies beyond each turn.
func (u *undoing) regroup() {
	u.size = u.size[:0]
	for i := range u.group {
		u.group[i] = -1
	}
	for i := range u.bodies {
		if u.group[i] < 0 {
			u.size = append(u.size, 0)
			u.size[len(u.size)-1] = u.grow(i, -1, len(u.size)-1)
		}
	}
}

// grow numbers the group of a body that was come to by a turn, and counts what lies beyond it.
func (u *undoing) grow(at, by, group int) int {
	u.group[at] = group
	n := 1
	for _, t := range u.next[at] {
		other := u.turns[t].pipe + u.turns[t].fitting - at
		if t == by || u.undone[t] || u.group[other] >= 0 {
			continue
		}
		u.child[t] = other
		u.below[t] = u.grow(other, t, group)
		n += u.below[t]
	}
	return n
}

// easiest returns the turn that can be undone now and by which the fewest parts are turned, the last of equals; -1 where
// none can be. Those by which few are turned are tried first, since most can be undone.
func (u *undoing) easiest() int {
	passed := make([]bool, len(u.turns))
	for {
		best, fewest := -1, 0
		for i := range u.turns {
			if u.undone[i] || !u.bridge[i] || passed[i] {
				continue
			}
			if n := u.turned(i); best < 0 || n <= fewest {
				best, fewest = i, n
			}
		}
		if best < 0 || u.free(best) {
			return best
		}
		passed[best] = true
	}
}

// turned is how many parts are turned when a thread is: those of its lesser side.
func (u *undoing) turned(turn int) int {
	return min(u.below[turn], u.size[u.group[u.turns[turn].pipe]]-u.below[turn])
}

// free reports whether nothing strikes any more when a thread is turned. What does not strike now never will.
func (u *undoing) free(turn int) bool {
	if !u.tried[turn] {
		u.tried[turn], u.strikes[turn] = true, u.strikesOf(turn)
		return len(u.strikes[turn]) == 0
	}
	group := u.group[u.turns[turn].pipe]
	u.strikes[turn] = slices.DeleteFunc(u.strikes[turn], func(s strike) bool {
		return u.group[s.a] != group || u.group[s.b] != group || s.panel >= 0 && u.lifted[s.panel]
	})
	return len(u.strikes[turn]) == 0
}

// undo takes a thread apart, and says which side of it is turned.
func (u *undoing) undo(turn int) Joining {
	t := u.turns[turn]
	u.undone[turn] = true
	start := u.child[turn]
	if u.below[turn] > u.turned(turn) {
		start = t.pipe + t.fitting - start
	}
	j := Joining{Stick: u.bodies[t.pipe].stick, Node: t.node, Panel: -1}
	seen := map[int]bool{start: true}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		b := u.bodies[queue[0]]
		j.Turned = add(j.Turned, b.tag)
		for _, r := range b.rods {
			j.Swing = max(j.Swing, t.swept(r).far)
		}
		for _, k := range u.next[queue[0]] {
			if other := u.turns[k].pipe + u.turns[k].fitting - queue[0]; !u.undone[k] && !seen[other] {
				seen[other] = true
				queue = append(queue, other)
			}
		}
	}
	return j
}

// liftable returns a panel that can be lifted off the posts that pass through it: one end of each is free; -1 where none can be.
func (u *undoing) liftable() int {
next:
	for k, panel := range u.panels {
		if u.lifted[k] {
			continue
		}
		for _, pipe := range panel.pipes {
			if !slices.ContainsFunc([]int{u.Sticks[u.bodies[pipe].stick].A, u.Sticks[u.bodies[pipe].stick].B}, func(n int) bool {
				return !slices.ContainsFunc(u.next[pipe], func(t int) bool { return !u.undone[t] && u.turns[t].node == n })
			}) {
				continue next
			}
		}
		return k
	}
	return -1
}

// stuck tells the threads that are left over.
func (u *undoing) stuck() (out []Stuck) {
	for i, t := range u.turns {
		if u.undone[i] {
			continue
		}
		s := Stuck{Stick: u.bodies[t.pipe].stick, Node: t.node, Loop: !u.bridge[i]}
		if !s.Loop {
			worst := slices.MaxFunc(u.strikes[i], func(a, b strike) int { return cmp.Compare(a.by, b.by) })
			s.Strikes, s.By = [2]int{worst.a, worst.b}, max(worst.by, touching)
			s.names = [2]string{u.bodies[worst.a].name, u.bodies[worst.b].name}
			if worst.panel >= 0 {
				s.names[1], s.panel = u.bodies[u.panels[worst.panel].body].name, true
			}
		}
		out = append(out, s)
	}
	return out
}
