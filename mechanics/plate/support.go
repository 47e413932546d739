package plate

import (
	"errors"
	"fmt"
	"slices"
)

// owner says to which support a contact belongs.
type owner struct {
	kind  int
	index int
}

const (
	byPost = iota
	byDisc
	byEdge
	byRail
)

// contact is a node on a support: on the ground, or on a point of a rail.
type contact struct {
	owner    owner
	node     int
	rail     int // the unknown of the rail it lies on, or -1: on the ground
	spring   float64
	twoSided bool
	open     bool    // lifted
	force    float64 // the support pushes up by
	gap      float64 // lifted by
}

// carriage is how a mesh is held: unknowns held for good, contacts that may lift, rails.
type carriage struct {
	held     []bool // by unknown, those of the rails after those of the nodes
	contacts []contact
	ground   []int // by node: its contact with the unyielding ground, plus 1
	beams    []beam
	joined   [][2]int // unknowns of rails that move as those of a node
}

// carry finds what holds the mesh. Where two supports hold the same node, the first of posts, discs, edges
// and rails gets the reaction.
func (p *Plate) carry(m *mesh) (*carriage, error) {
	c := &carriage{held: make([]bool, perNode*len(m.used)), ground: make([]int, len(m.used))}
	for n, used := range m.used {
		if !used {
			c.hold(n, sag, tipX, tipY, twist)
		}
	}
	var err error
	for i, s := range p.Posts {
		n, e := m.find(fmt.Sprintf("post %d", i+1), s.X, s.Y)
		err = errors.Join(err, e)
		c.touch(contact{owner: owner{byPost, i}, node: n, rail: -1, spring: s.Spring, twoSided: s.TwoSided})
	}
	for i, d := range p.Discs {
		err = errors.Join(err, p.carryDisc(m, c, i, d))
	}
	for i := range p.Edges {
		p.carryEdge(m, c, i)
	}
	for i, r := range p.Rails {
		err = errors.Join(err, p.carryRail(m, c, i, r))
	}
	if err == nil && len(c.contacts) == 0 {
		err = &Unheld{Text: "nothing holds the plate: give it an edge, posts, discs or a rail"}
	}
	return c, err
}

func (c *carriage) hold(node int, unknowns ...int) {
	for _, u := range unknowns {
		c.held[perNode*node+u] = true
	}
}

// touch adds a contact; a node lies on the unyielding ground only once.
func (c *carriage) touch(t contact) {
	if t.rail < 0 && t.spring == 0 {
		if k := c.ground[t.node]; k > 0 {
			old := &c.contacts[k-1]
			old.twoSided = old.twoSided || t.twoSided
			return
		}
		c.ground[t.node] = len(c.contacts) + 1
	}
	c.contacts = append(c.contacts, t)
}

func (p *Plate) carryDisc(m *mesh, c *carriage, index int, d Disc) error {
	var nodes []int
	for _, s := range [][2]float64{
		{-1, 0}, {-diagonal, -diagonal}, {0, -1}, {diagonal, -diagonal}, {1, 0}, {diagonal, diagonal}, {0, 1}, {-diagonal, diagonal},
	} {
		x, y := d.X+s[0]*d.R, d.Y+s[1]*d.R
		if p.within("", x, y) == nil {
			nodes = append(nodes, m.node(nearest(m.x, x), nearest(m.y, y)))
		}
	}
	if d.Clamped {
		nodes = append(nodes, m.inside(d)...)
	}
	slices.Sort(nodes)
	nodes = slices.DeleteFunc(slices.Compact(nodes), func(n int) bool { return !m.used[n] })
	for _, n := range nodes {
		if d.Clamped {
			c.hold(n, tipX, tipY, twist)
		}
		c.touch(contact{owner: owner{byDisc, index}, node: n, rail: -1, twoSided: d.TwoSided || d.Clamped})
	}
	if len(nodes) == 0 {
		return fmt.Errorf("disc %d at %g, %g mm touches no wood", index+1, d.X, d.Y)
	}
	return nil
}

// inside returns the nodes within a disc.
func (m *mesh) inside(d Disc) []int {
	var out []int
	for i, x := range m.x {
		for j, y := range m.y {
			if dx, dy := x-d.X, y-d.Y; dx*dx+dy*dy <= d.R*d.R*(1+1e-9) {
				out = append(out, m.node(i, j))
			}
		}
	}
	return out
}

func (p *Plate) carryEdge(m *mesh, c *carriage, side int) {
	how := p.Edges[side]
	if how == Free {
		return
	}
	nodes, along := m.edge(side)
	for _, n := range nodes {
		if !m.used[n] {
			continue
		}
		switch how {
		case Held:
			c.hold(n, tipX, tipY, twist)
		case Resting:
			c.hold(n, along)
		}
		c.touch(contact{owner: owner{byEdge, side}, node: n, rail: -1, twoSided: how != Lying})
	}
}

// edge returns the nodes of a side of the plate and the slope along it.
func (m *mesh) edge(side int) (nodes []int, along int) {
	if side == Left || side == Right {
		i := 0
		if side == Right {
			i = len(m.x) - 1
		}
		for j := range m.y {
			nodes = append(nodes, m.node(i, j))
		}
		return nodes, tipY
	}
	j := 0
	if side == Back {
		j = len(m.y) - 1
	}
	for i := range m.x {
		nodes = append(nodes, m.node(i, j))
	}
	return nodes, tipX
}
