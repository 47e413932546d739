package steps

import (
	"slices"

	"rodwright/piece"
	"rodwright/trade/pipe"
)

// joinKind says how one thing comes to the frame that is there already.
type joinKind uint8

// The ways a thing comes to the frame.
const (
	startAt   joinKind = iota // the first fitting
	screwPipe                 // a pipe is turned into a fitting of the frame
	screwNode                 // a fitting is turned onto a pipe of the frame
	caught                    // a pipe whose both ends are fixed already: it can't be turned
)

// join is one thing put to the frame. All threads are right-handed: only what is still free can be turned.
type join struct {
	kind  joinKind
	stick int // -1 for startAt
	node  int // the fitting; for screwPipe the one it is turned into
}

// grower puts a frame together outwards from a fitting, so that every turn turns one pipe or one fitting
// only. Unions stay open: each of their halves is an end of its own pipe.
type grower struct {
	r       *piece.Resolved
	inVise  map[int]bool // nodes that sit on their pipes beforehand: flanges and unions' halves
	nodeIn  []bool
	stickIn []bool
	blocked []bool // sticks that must wait for a panel
	joins   []join
}

func newGrower(r *piece.Resolved) *grower {
	g := &grower{
		r: r, inVise: map[int]bool{}, nodeIn: make([]bool, len(r.Nodes)),
		stickIn: make([]bool, len(r.Sticks)), blocked: make([]bool, len(r.Sticks)),
	}
	for i, n := range r.Nodes {
		g.inVise[i] = n.Kind == pipe.Flange || n.Kind == pipe.Union || n.Kind == pipe.None
	}
	return g
}

// grow adds everything that can be added now. Each round first goes on from the frame that is there, and
// then begins the next one.
func (g *grower) grow() {
	var last *piece.Stick
	for {
		s := g.next(last)
		if s < 0 {
			if !g.begin() {
				return
			}
			continue
		}
		last = &g.r.Sticks[s]
		g.add(s)
	}
}

// alike reports whether two sticks are of one group: back posts and back rails are two.
func alike(a, b piece.Stick) bool { return a.Group == b.Group && a.Role == b.Role }

// begin starts a frame at the fitting that most pipes meet in, the first of equals; where no pipes meet,
// at a pipe with what closes its ends. It reports false when nothing is left that can be begun.
func (g *grower) begin() bool {
	best := -1
	for i, n := range g.r.Nodes {
		if g.nodeIn[i] || g.inVise[i] || len(n.Sticks) < 2 || !g.open(n.Sticks) {
			continue
		}
		if best < 0 || len(n.Sticks) > len(g.r.Nodes[best].Sticks) {
			best = i
		}
	}
	if best >= 0 {
		g.nodeIn[best] = true
		g.joins = append(g.joins, join{startAt, -1, best})
		return true
	}
	for i, s := range g.r.Sticks {
		if !g.stickIn[i] && !g.blocked[i] {
			g.stickIn[i] = true
			g.joins = append(g.joins, join{startAt, i, -1})
			g.close(i, s.A)
			g.close(i, s.B)
			return true
		}
	}
	return false
}

// close turns the fitting of a node onto a pipe, unless it is there.
func (g *grower) close(stick, node int) {
	if !g.inVise[node] && !g.nodeIn[node] {
		g.nodeIn[node] = true
		g.joins = append(g.joins, join{screwNode, stick, node})
	}
}

// open reports whether one of the sticks can be put in now.
func (g *grower) open(sticks []int) bool {
	return slices.ContainsFunc(sticks, func(s int) bool { return !g.stickIn[s] && !g.blocked[s] })
}

// next returns a stick that meets the frame, one of the group that was last worked at if there is one, so
// that like work is done together; -1 when none does.
func (g *grower) next(last *piece.Stick) int {
	first := -1
	for i, s := range g.r.Sticks {
		if g.stickIn[i] || g.blocked[i] || !g.fixed(s.A) && !g.fixed(s.B) {
			continue
		}
		if last != nil && alike(s, *last) {
			return i
		}
		if first < 0 {
			first = i
		}
	}
	return first
}

// fixed reports whether a pipe can be turned into that node now: a fitting that is in the frame.
func (g *grower) fixed(node int) bool { return g.nodeIn[node] && !g.inVise[node] }

// add turns a pipe into the frame, and then the fitting of its other end onto it.
func (g *grower) add(i int) {
	s := g.r.Sticks[i]
	g.stickIn[i] = true
	if g.fixed(s.A) && g.fixed(s.B) {
		g.joins = append(g.joins, join{caught, i, s.A})
		return
	}
	at, far := s.A, s.B
	if !g.fixed(at) {
		at, far = far, at
	}
	g.joins = append(g.joins, join{screwPipe, i, at})
	g.close(i, far)
}
