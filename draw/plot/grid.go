package plot

import (
	"math"

	"rodwright/finding"
)

// grid is a panel as rows of points from its front, evenly spaced.
type grid struct {
	columns, rows int
	width, depth  float64
	down          []float64
}

// gridOf returns the grid of a picture; false where it has not two points each way, or no size.
func gridOf(b finding.Bent) (grid, bool) {
	if b.Columns < 2 || len(b.Down) < 2*b.Columns || !finite(b.Width, b.Depth) || b.Width <= 0 || b.Depth <= 0 {
		return grid{}, false
	}
	rows := len(b.Down) / b.Columns
	return grid{b.Columns, rows, b.Width, b.Depth, b.Down[:rows*b.Columns]}, true
}

func (g grid) at(i, j int) float64 {
	if v := g.down[j*g.columns+i]; finite(v) {
		return v
	}
	return math.NaN()
}

func (g grid) x(i float64) float64 { return g.width * i / float64(g.columns-1) }
func (g grid) y(j float64) float64 { return g.depth * j / float64(g.rows-1) }

// wood reports whether the cell whose left front corner is a point has wood at all its corners.
func (g grid) wood(i, j int) bool {
	if i < 0 || j < 0 || i >= g.columns-1 || j >= g.rows-1 {
		return false
	}
	return finite(g.at(i, j) + g.at(i+1, j) + g.at(i, j+1) + g.at(i+1, j+1))
}

// deepest returns the point that sags most and the range of all; ok is false where there is no wood.
func (g grid) deepest() (i, j int, lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for k, v := range g.down {
		if !finite(v) {
			continue
		}
		lo = min(lo, v)
		if v > hi {
			hi, i, j, ok = v, k%g.columns, k/g.columns, true
		}
	}
	return i, j, lo, hi, ok
}

// piece is a straight piece of a line over the panel, in millimetres of it.
type piece struct{ x0, y0, x1, y1 float64 }

// contour returns the line on which a panel sags by a level, cell by cell (marching squares, from memory): the
// line enters and leaves a cell where two corners of an edge lie on either side of the level, at the place that
// a straight slope between them gives. In a saddle the mean of the corners says which corners belong together.
func (g grid) contour(lvl float64) (out []piece) {
	for j := range g.rows - 1 {
		for i := range g.columns - 1 {
			if g.wood(i, j) {
				out = append(out, g.cell(i, j, lvl)...)
			}
		}
	}
	return out
}

// cell returns the pieces of a contour in one cell.
func (g grid) cell(i, j int, lvl float64) (out []piece) {
	v := [4]float64{g.at(i, j), g.at(i+1, j), g.at(i+1, j+1), g.at(i, j+1)}
	at := [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	var ends [][2]float64
	for k := range 4 {
		a, b := v[k], v[(k+1)%4]
		if (a > lvl) == (b > lvl) {
			continue
		}
		t, p, q := (lvl-a)/(b-a), at[k], at[(k+1)%4]
		ends = append(ends, [2]float64{float64(i) + p[0] + t*(q[0]-p[0]), float64(j) + p[1] + t*(q[1]-p[1])})
	}
	if len(ends) == 4 && (v[0] > lvl) == ((v[0]+v[1]+v[2]+v[3])/4 > lvl) {
		ends[0], ends[1], ends[2], ends[3] = ends[1], ends[2], ends[3], ends[0] // the first corner is not cut off
	}
	for k := 0; k+1 < len(ends); k += 2 {
		out = append(out, piece{g.x(ends[k][0]), g.y(ends[k][1]), g.x(ends[k+1][0]), g.y(ends[k+1][1])})
	}
	return out
}

// edges returns the sides of cells with wood on one side only: the panel's outline and its notches.
func (g grid) edges() (out []piece) {
	for j := range g.rows {
		for i := range g.columns {
			if g.wood(i, j) != g.wood(i, j-1) {
				out = append(out, piece{g.x(float64(i)), g.y(float64(j)), g.x(float64(i + 1)), g.y(float64(j))})
			}
			if g.wood(i, j) != g.wood(i-1, j) {
				out = append(out, piece{g.x(float64(i)), g.y(float64(j)), g.x(float64(i)), g.y(float64(j + 1))})
			}
		}
	}
	return out
}
