package plate

// Field is how a plate lies under its load. Sag at node (i, j) is W[i*len(Y)+j].
type Field struct {
	X, Y []float64 // the lines of the mesh
	W    []float64 // mm, downwards; 0 in openings
	Wood []bool    // by cell, i*(len(Y)-1)+j: not cut out

	mesh *mesh
	raw  []float64
}

func (l *level) asField() *Field {
	f := &Field{X: l.x, Y: l.y, Wood: l.wood, W: make([]float64, len(l.used)), mesh: l.mesh, raw: l.field}
	for i := range l.x {
		for j := range l.y {
			f.W[i*len(l.y)+j] = l.field[perNode*l.node(i, j)+sag]
		}
	}
	return f
}

// At returns the sag at a place; false in an opening or beside the plate.
func (f *Field) At(x, y float64) (w float64, ok bool) {
	m := f.mesh
	// Not written as beside, so that NaN lies beside too.
	if !(x >= m.x[0] && x <= m.x[len(m.x)-1] && y >= m.y[0] && y <= m.y[len(m.y)-1]) {
		return 0, false
	}
	i, j := m.under(x, y)
	if !m.has(i, j) {
		return 0, false
	}
	return m.value(f.raw, i, j, cubics(x-m.x[i], m.tx[i].h), cubics(y-m.y[j], m.ty[j].h)), true
}

// under returns the cell that holds a place; on a line of the mesh, the one of wood.
func (m *mesh) under(x, y float64) (i, j int) {
	i, j = span(m.x, x), span(m.y, y)
	back, down := x == m.x[i] && i > 0, y == m.y[j] && j > 0
	for _, c := range []struct {
		ok   bool
		i, j int
	}{{true, i, j}, {back, i - 1, j}, {down, i, j - 1}, {back && down, i - 1, j - 1}} {
		if c.ok && m.has(c.i, c.j) {
			return c.i, c.j
		}
	}
	return i, j
}
