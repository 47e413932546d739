package plate

import (
	"fmt"

	"rodwright/mechanics/band"
)

// beam is a rail with a stiffness of its own: unknowns first+2k and first+2k+1 are its sag and slope under
// nodes[k], which stands at place[k] along it.
type beam struct {
	ei    float64
	first int
	nodes []int
	place []float64
}

// carryRail lays a rail under the mesh.
func (p *Plate) carryRail(m *mesh, c *carriage, index int, r Rail) error {
	nodes, place, along := m.along(r)
	if len(nodes) < 2 {
		return fmt.Errorf("rail %d is too short to matter: %g mm", index+1, max(r.ToX-r.FromX, r.FromX-r.ToX, r.ToY-r.FromY, r.FromY-r.ToY))
	}
	b := beam{ei: r.EI, first: len(c.held), nodes: nodes, place: place}
	by := owner{byRail, index}
	touches := false
	for k, n := range nodes {
		end := !r.Loose && (k == 0 || k == len(nodes)-1)
		if b.ei > 0 {
			c.held = append(c.held, end, false)
		}
		if !m.used[n] {
			continue
		}
		touches = true
		both := r.TwoSided || r.Loose
		t := contact{owner: by, node: n, rail: -1, twoSided: both}
		if b.ei > 0 && !end {
			t.rail = b.first + 2*k
		}
		c.touch(t)
		switch {
		case both && b.ei > 0:
			c.joined = append(c.joined, [2]int{b.first + 2*k + 1, perNode*n + along})
		case both:
			c.hold(n, along)
		}
	}
	if b.ei > 0 {
		c.beams = append(c.beams, b)
	}
	if !touches {
		return fmt.Errorf("rail %d from %g, %g mm touches no wood", index+1, r.FromX, r.FromY)
	}
	return nil
}

// along returns the nodes over a rail, their places along it and the slope along it.
func (m *mesh) along(r Rail) (nodes []int, place []float64, slope int) {
	i0, i1 := nearest(m.x, min(r.FromX, r.ToX)), nearest(m.x, max(r.FromX, r.ToX))
	j0, j1 := nearest(m.y, min(r.FromY, r.ToY)), nearest(m.y, max(r.FromY, r.ToY))
	if r.FromY == r.ToY {
		for i := i0; i <= i1; i++ {
			nodes, place = append(nodes, m.node(i, j0)), append(place, m.x[i])
		}
		return nodes, place, tipX
	}
	for j := j0; j <= j1; j++ {
		nodes, place = append(nodes, m.node(i0, j)), append(place, m.y[j])
	}
	return nodes, place, tipY
}

// spans calls f for every span of the beam with its unknowns and its stiffness.
func (b *beam) spans(f func(at [4]int, k [4][4]float64)) {
	for s := range len(b.nodes) - 1 {
		k := times(b.ei, beamTable(b.place[s+1]-b.place[s]))
		u := b.first + 2*s
		f([4]int{u, u + 1, u + 2, u + 3}, k)
	}
}

func (b *beam) assemble(k *band.Matrix, eq []int) {
	b.spans(func(at [4]int, stiff [4][4]float64) {
		for u := range 4 {
			for v := range u + 1 {
				k.Add(eq[at[u]], eq[at[v]], stiff[u][v])
			}
		}
	})
}

// pushed returns the force that bends the beam so at its unknown.
func (b *beam) pushed(field []float64, unknown int) float64 {
	sum := 0.0
	b.spans(func(at [4]int, k [4][4]float64) {
		for u := range 4 {
			for v := range 4 {
				if at[u] == unknown {
					sum += k[u][v] * field[at[v]]
				}
			}
		}
	})
	return sum
}
