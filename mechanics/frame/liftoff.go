package frame

import (
	"errors"
	"math"
)

// liftOff solves push = give·lift + push0 with push ≥ 0, lift ≥ 0 and one of each pair 0, by the method of
// C. E. Lemke (Bimatrix Equilibrium Points and Mathematical Programming, Management Science 11 (1965), from
// memory). It ends for every give that stores energy: with an answer, or with a ray along which the lifts grow
// without end, which says that there is no balance.
func liftOff(give [][]float64, push []float64) (lift, ray []float64, err error) {
	n := len(push)
	t := newTableau(give, push)
	if t == nil {
		return make([]float64, n), nil, nil
	}
	enter := t.open()
	for range 100 + 50*n {
		row := t.leave(enter)
		if row < 0 {
			return nil, t.ray(enter), nil
		}
		left := t.basis[row]
		t.pivot(row, enter)
		if left == 2*n {
			return t.lifts(), nil, nil
		}
		enter = (left + n) % (2 * n)
	}
	return nil, nil, errors.New("the feet find no rest on their floors: they rest on each other in a circle of rounding")
}

// tableau holds one row per foot. Columns 0 to n−1 are pushes, n to 2n−1 lifts, 2n the helper, 2n+1 the value.
type tableau struct {
	n         int
	rows      [][]float64
	basis     []int
	unit      float64 // N, of a push
	stiffness float64 // N/mm
}

// newTableau writes the problem without units, or returns nil when every foot pushes as it stands.
func newTableau(give [][]float64, push []float64) *tableau {
	n := len(push)
	t := &tableau{n: n, stiffness: leastFigure}
	low := 0.0
	for i, p := range push {
		t.unit = math.Max(t.unit, math.Abs(p))
		t.stiffness = math.Max(t.stiffness, give[i][i])
		low = math.Min(low, p)
	}
	if low >= -1e-9*t.unit {
		return nil
	}
	for i := range n {
		row := make([]float64, 2*n+2)
		row[i], row[2*n], row[2*n+1] = 1, -1, push[i]/t.unit
		for j := range n {
			row[n+j] = -give[i][j] / t.stiffness
		}
		t.rows, t.basis = append(t.rows, row), append(t.basis, i)
	}
	return t
}

// open brings the helper in where the floor pulls most; the lift of that foot enters next.
func (t *tableau) open() int {
	worst := 0
	for i, row := range t.rows {
		if row[2*t.n+1] < t.rows[worst][2*t.n+1] {
			worst = i
		}
	}
	t.pivot(worst, 2*t.n)
	return t.n + worst
}

const pivotSmall = 1e-10

// leave picks the row whose unknown is first to reach nothing when the column enters: the helper before any
// other, then by the order of whole rows, so that equal ones cannot send it round in a circle.
func (t *tableau) leave(column int) int {
	best := -1
	for i, row := range t.rows {
		if row[column] <= pivotSmall {
			continue
		}
		if best < 0 || t.before(i, best, column) {
			best = i
		}
	}
	return best
}

func (t *tableau) before(a, b, column int) bool {
	for k := range 2*t.n + 2 {
		at := (k + 2*t.n + 1) % (2*t.n + 2) // the value first
		d := t.rows[a][at]/t.rows[a][column] - t.rows[b][at]/t.rows[b][column]
		if k == 0 && math.Abs(d) <= 1e-12 {
			if t.basis[a] == 2*t.n || t.basis[b] == 2*t.n {
				return t.basis[a] == 2*t.n
			}
			continue
		}
		if math.Abs(d) > 1e-12 {
			return d < 0
		}
	}
	return false
}

func (t *tableau) pivot(row, column int) {
	by := t.rows[row][column]
	for j := range t.rows[row] {
		t.rows[row][j] /= by
	}
	for i, other := range t.rows {
		if f := other[column]; i != row && f != 0 {
			for j := range other {
				other[j] -= f * t.rows[row][j]
			}
			other[column] = 0
		}
	}
	t.basis[row] = column
}

// lifts reads the answer.
func (t *tableau) lifts() []float64 {
	lift := make([]float64, t.n)
	for i, b := range t.basis {
		if b >= t.n && b < 2*t.n {
			lift[b-t.n] = math.Max(0, t.rows[i][2*t.n+1]) * t.unit / t.stiffness
		}
	}
	return lift
}

// ray reads how fast the lifts grow when the column enters and nothing stops it.
func (t *tableau) ray(column int) []float64 {
	ray := make([]float64, t.n)
	if column >= t.n && column < 2*t.n {
		ray[column-t.n] = 1
	}
	for i, b := range t.basis {
		if b >= t.n && b < 2*t.n {
			ray[b-t.n] = math.Max(0, -t.rows[i][column])
		}
	}
	return ray
}
