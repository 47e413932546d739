package plate

// The unknowns of a node, in this order.
const (
	sag   = iota // w
	tipX         // ∂w/∂x
	tipY         // ∂w/∂y
	twist        // ∂²w/∂x∂y
	perNode
)

// element gives the stiffness of one cell. Its 16 unknowns are products of a cubic in x and one in y: number
// 4a+b is cubic a of x times cubic b of y.
type element struct {
	tx, ty *table
	s      Stiffness
}

// entry integrates Dx·wxx² + 2·Dxy·wxx·wyy + Dy·wyy² + 4·Dk·wxy² over the cell for one pair of unknowns: twice
// the energy of bending (Timoshenko and Woinowsky-Krieger, 2nd ed. 1959, chapter 11).
func (e element) entry(u, v int) float64 {
	a, b, c, d := u>>2, u&3, v>>2, v&3
	x, y := e.tx, e.ty
	return e.s.Dx*x.m22[a][c]*y.m00[b][d] +
		e.s.Dy*x.m00[a][c]*y.m22[b][d] +
		e.s.Dxy*(x.m02[c][a]*y.m02[b][d]+x.m02[a][c]*y.m02[d][b]) +
		4*e.s.Dk*x.m11[a][c]*y.m11[b][d]
}

// matrix returns the stiffness of the cell.
func (e element) matrix() *[16][16]float64 {
	var out [16][16]float64
	for u := range out {
		for v := range u + 1 {
			out[u][v] = e.entry(u, v)
			out[v][u] = out[u][v]
		}
	}
	return &out
}

// raw numbers the unknowns of a cell over the whole mesh.
func (m *mesh) raw(i, j int) [16]int {
	nodes := m.corners(i, j)
	var out [16]int
	for u := range out {
		a, b := u>>2, u&3
		out[u] = perNode*nodes[a>>1+b&2] + a&1 + 2*(b&1)
	}
	return out
}

// value adds up the field at cell (i, j) given the weights of the cubics in x and in y.
func (m *mesh) value(field []float64, i, j int, x, y [4]float64) float64 {
	sum := 0.0
	for u, r := range m.raw(i, j) {
		sum += field[r] * x[u>>2] * y[u&3]
	}
	return sum
}
