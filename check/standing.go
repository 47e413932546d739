package check

import (
	"rodwright/part"
	"rodwright/piece"
)

// standing is what stands, hangs or falls as one: panels and the frame they are borne by. Most pieces are
// one; a document may hold several that nothing joins.
type standing struct {
	panels, sticks, nodes, feet, held []int
	wall                              bool // a flange of it is on the wall
}

// forest tells which things hang together.
type forest []int

func newForest(n int) forest {
	f := make(forest, n)
	for i := range f {
		f[i] = i
	}
	return f
}

func (f forest) root(i int) int {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

// join makes one of two, and reports false where they are one already.
func (f forest) join(a, b int) bool {
	a, b = f.root(a), f.root(b)
	if a == b {
		return false
	}
	f[max(a, b)] = min(a, b)
	return true
}

// frames numbers the frames of a piece, node by node: what sticks join is one, and the wall joins all
// flanges on it.
func frames(r *piece.Resolved) []int {
	f := newForest(len(r.Nodes))
	for _, s := range r.Sticks {
		f.join(s.A, s.B)
	}
	wall := -1
	for i, n := range r.Nodes {
		switch {
		case !n.ToWall:
		case wall < 0:
			wall = i
		default:
			f.join(wall, i)
		}
	}
	out := make([]int, len(r.Nodes))
	for i := range out {
		out[i] = f.root(i)
	}
	return out
}

// apart sorts the piece into what stands by itself, in the order of its nodes, then of its panels.
func (p *Piece) apart() []standing {
	nodes, panels := len(p.Nodes), len(p.Panels)
	f := newForest(nodes + panels + len(p.Feet))
	for i, of := range p.frame {
		f.join(i, of)
	}
	for i, panel := range p.Panels {
		for _, s := range panel.Seats {
			p.joinSeat(f, nodes+i, s)
		}
	}
	for i, foot := range p.Feet {
		switch {
		case foot.Node >= 0:
			f.join(foot.Node, nodes+panels+i)
		case foot.Panel >= 0:
			f.join(nodes+foot.Panel, nodes+panels+i)
		}
	}
	return p.sorted(f)
}

// joinSeat joins a panel with what a seat of it is on.
func (p *Piece) joinSeat(f forest, panel int, s piece.PanelSeat) {
	if s.Node >= 0 {
		f.join(s.Node, panel)
	}
	if s.Stick >= 0 {
		f.join(p.Sticks[s.Stick].A, panel)
	}
}

func (p *Piece) sorted(f forest) []standing {
	var out []standing
	at := map[int]int{}
	of := func(i int) *standing {
		root := f.root(i)
		n, seen := at[root]
		if !seen {
			n = len(out)
			at[root] = n
			out = append(out, standing{})
		}
		return &out[n]
	}
	nodes, panels := len(p.Nodes), len(p.Panels)
	for i, n := range p.Nodes {
		s := of(i)
		s.nodes, s.wall = append(s.nodes, i), s.wall || n.ToWall
	}
	for i := range p.Panels {
		s := of(nodes + i)
		s.panels = append(s.panels, i)
	}
	for i := range p.Feet {
		s := of(nodes + panels + i)
		s.feet = append(s.feet, i)
	}
	for i, stick := range p.Sticks {
		s := of(stick.A)
		s.sticks = append(s.sticks, i)
	}
	for i, h := range p.Held {
		s := of(nodes + h.Panel)
		s.held = append(s.held, i)
	}
	return out
}

// place names what stands by itself: the whole piece, or the first panel or stick of it.
func (p *Piece) place(s standing) string {
	switch {
	case len(p.standing) < 2:
		return "the whole piece"
	case len(s.panels) > 0:
		return p.Panels[s.panels[0]].Name + " and what it stands on"
	case len(s.sticks) > 0:
		return "the frame of " + p.Sticks[s.sticks[0]].Name
	}
	return "what stands by itself"
}

// tagsOf returns the kinds of parts of what stands by itself; of the whole piece all of them.
func (p *Piece) tagsOf(s standing) []string {
	var all []string
	for _, shelf := range []struct {
		parts []*part.Part
		of    []int
	}{{p.panels, s.panels}, {p.sticks, s.sticks}, {p.nodes, s.nodes}, {p.feet, s.feet}} {
		for _, i := range shelf.of {
			if pt := shelf.parts[i]; pt != nil {
				all = append(all, pt.Tag)
			}
		}
	}
	return tags(all...)
}
