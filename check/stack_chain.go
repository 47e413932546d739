package check

import (
	"rodwright/length"
	"rodwright/piece"
)

// sureWays are the surest ways along the frame from one joint to every other, in one direction of the piece:
// of several ways round a loop the one that is least off at worst, since the others are set to it by their unions.
type sureWays struct {
	off  []length.Length // at worst; less than zero where there is no way
	via  []int           // the pipe by which a joint is come to; -1 where the way begins
	p    *Piece
	axis int
}

// from returns the ways from a joint. Pipes square to the axis cost nothing.
func (c *chains) from(start, axis int) *sureWays {
	w := &sureWays{off: make([]length.Length, len(c.Nodes)), via: make([]int, len(c.Nodes)), p: c.Piece, axis: axis}
	done := make([]bool, len(c.Nodes))
	for i := range w.off {
		w.off[i], w.via[i] = -1, -1
	}
	w.off[start] = 0
	for {
		at := -1
		for i, off := range w.off {
			if off >= 0 && !done[i] && (at < 0 || off < w.off[at]) {
				at = i
			}
		}
		if at < 0 {
			return w
		}
		done[at] = true
		for _, s := range c.Nodes[at].Sticks {
			next := c.Sticks[s].A + c.Sticks[s].B - at
			if off := w.off[at] + c.worst[axis][s]; w.off[next] < 0 || off < w.off[next] {
				w.off[next], w.via[next] = off, s
			}
		}
	}
}

// to returns the pipes on the way to a joint that lie along the axis.
func (w *sureWays) to(node int) (sticks []int) {
	for w.via[node] >= 0 {
		s := w.via[node]
		if share(w.p.Sticks[s].Dir, w.axis) > 0 {
			sticks = append(sticks, s)
		}
		node = w.p.Sticks[s].A + w.p.Sticks[s].B - node
	}
	return sticks
}

// firstPost returns the post at the joint where the way to another begins, else the first post on the way; -1 where
// none is.
func (p *Piece) firstPost(w *sureWays, node int) int {
	post := -1
	for {
		if at := p.post(node); at >= 0 {
			post = at
		}
		if w.via[node] < 0 {
			return post
		}
		s := p.Sticks[w.via[node]]
		node = s.A + s.B - node
	}
}

// chains are all pipes with what they give.
type chains struct {
	*Piece
	gives []giving           // of each stick
	worst [3][]length.Length // of each stick along each axis, by feel
}

func (p *Piece) chainsOf() *chains {
	c := &chains{Piece: p, gives: make([]giving, len(p.Sticks))}
	for axis := range 3 {
		c.worst[axis] = make([]length.Length, len(p.Sticks))
	}
	for i, s := range p.Sticks {
		c.gives[i] = p.giveOf(i)
		most := c.gives[i].felt.Worst()
		for axis := range 3 {
			c.worst[axis][i] = length.FromMM(most.MM() * share(s.Dir, axis))
		}
	}
	return c
}

// give adds up what the pipes of a chain give along an axis.
func (c *chains) give(sticks []int, axis int) (g giving) {
	for _, s := range sticks {
		g = g.and(c.gives[s].along(c.Sticks[s].Dir, axis))
	}
	return g
}

// post returns the post that passes a joint, by one of its pipes; -1 where none does.
func (p *Piece) post(node int) int {
	for _, s := range p.Nodes[node].Sticks {
		if p.Sticks[s].Role == piece.PostRole {
			return s
		}
	}
	return -1
}

// postName is the name of the post that a pipe is part of, as the journal takes it: the number of the pipe is
// left out where the post is cut into several.
func (p *Piece) postName(stick int) string {
	s := p.Sticks[stick]
	name := s.Name
	for _, n := range []int{s.A, s.B} {
		for _, other := range p.Nodes[n].Sticks {
			if o := p.Sticks[other]; other != stick && o.Role == s.Role && o.Dir == s.Dir {
				return cutNumber(name)
			}
		}
	}
	return name
}

// cutNumber leaves out the number behind a name.
func cutNumber(name string) string {
	for i := len(name) - 1; i > 0; i-- {
		switch c := name[i]; {
		case c == ' ':
			return name[:i]
		case c < '0' || c > '9':
			return name
		}
	}
	return name
}
