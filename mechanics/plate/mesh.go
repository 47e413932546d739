package plate

import "fmt"

// mesh is the plate cut into rectangles. Nodes and cells are told by their lines: node (i, j) stands where
// line i across x meets line j across y, cell (i, j) lies beyond that node.
type mesh struct {
	x, y   []float64
	tx, ty []table
	wood   []bool // by cell: not cut out
	used   []bool // by node: at the corner of some wood
}

// cuts returns all that is cut out as rectangles; a circle is the two that together just hold it, or one where it is
// small.
func (p *Plate) cuts() []Rect {
	out := append([]Rect(nil), p.Openings...)
	for _, h := range p.Holes {
		if p.small(h) {
			out = append(out, Rect{h.X - h.R, h.Y - h.R, 2 * h.R, 2 * h.R})
			continue
		}
		d := h.R * diagonal
		out = append(out, Rect{h.X - h.R, h.Y - d, 2 * h.R, 2 * d}, Rect{h.X - d, h.Y - h.R, 2 * d, 2 * h.R})
	}
	return out
}

// newMesh cuts the plate along lines.
func newMesh(p *Plate, xs, ys []float64) *mesh {
	m := &mesh{x: xs, y: ys}
	m.tx, m.ty = tables(m.x), tables(m.y)
	m.wood = make([]bool, len(m.tx)*len(m.ty))
	m.used = make([]bool, len(m.x)*len(m.y))
	for c := range m.wood {
		m.wood[c] = true
	}
	for _, r := range p.cuts() {
		for i := nearest(m.x, r.X); i < nearest(m.x, r.X+r.W); i++ {
			for j := nearest(m.y, r.Y); j < nearest(m.y, r.Y+r.H); j++ {
				m.wood[m.cell(i, j)] = false
			}
		}
	}
	for i := range m.tx {
		for j := range m.ty {
			if m.wood[m.cell(i, j)] {
				for _, n := range m.corners(i, j) {
					m.used[n] = true
				}
			}
		}
	}
	return m
}

func tables(lines []float64) []table {
	out := make([]table, len(lines)-1)
	for i := range out {
		out[i] = tableOf(lines[i+1] - lines[i])
	}
	return out
}

func (m *mesh) cell(i, j int) int { return i*len(m.ty) + j }

// has reports whether there is a cell (i, j) of wood.
func (m *mesh) has(i, j int) bool {
	return i >= 0 && j >= 0 && i < len(m.tx) && j < len(m.ty) && m.wood[m.cell(i, j)]
}

// node numbers the nodes along the direction with fewer lines first, which keeps the band narrow.
func (m *mesh) node(i, j int) int {
	if len(m.x) >= len(m.y) {
		return i*len(m.y) + j
	}
	return j*len(m.x) + i
}

// lines is the reverse of node.
func (m *mesh) lines(node int) (i, j int) {
	if len(m.x) >= len(m.y) {
		return node / len(m.y), node % len(m.y)
	}
	return node % len(m.x), node / len(m.x)
}

// corners returns the nodes of a cell: by x first, then by y.
func (m *mesh) corners(i, j int) [4]int {
	return [4]int{m.node(i, j), m.node(i+1, j), m.node(i, j+1), m.node(i+1, j+1)}
}

func (m *mesh) at(node int) (x, y float64) {
	i, j := m.lines(node)
	return m.x[i], m.y[j]
}

// find returns the node at a place, which must have wood.
func (m *mesh) find(name string, x, y float64) (int, error) {
	n := m.node(nearest(m.x, x), nearest(m.y, y))
	if !m.used[n] {
		return n, fmt.Errorf("%s at %g, %g mm lies in an opening", name, x, y)
	}
	return n, nil
}

// check reports a plate of which nothing is left, and wood that hangs together at a point only.
func (m *mesh) check() error {
	some := false
	for i := range m.x {
		for j := range m.y {
			a, b, c, d := m.has(i-1, j-1), m.has(i, j-1), m.has(i-1, j), m.has(i, j)
			some = some || d
			if a && d && !b && !c || b && c && !a && !d {
				return fmt.Errorf("at %g, %g mm two openings touch at a corner and leave no wood between them: part them or let them overlap", m.x[i], m.y[j])
			}
		}
	}
	if !some {
		return fmt.Errorf("the openings leave nothing of the plate")
	}
	return nil
}
