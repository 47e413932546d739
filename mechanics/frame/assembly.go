package frame

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// assembly gathers the stiffness of the loose unknowns, entry by entry.
type assembly struct {
	ties     *ties
	nodes    int
	bound    []int // how many nodes each panel binds
	entries  []entry
	diagonal []float64
	turning  [][3][3]float64 // stiffness of each node's loose turnings among themselves, below the diagonal
}

type entry struct {
	i, j int // i >= j
	v    float64
}

func (a *assembly) stick(s *stick) {
	k := s.matrix()
	var freedoms [12]int
	for i := range 6 {
		freedoms[i], freedoms[i+6] = 6*s.from+i, 6*s.to+i
	}
	for i := range k {
		for j := range k {
			if v := k[i][j]; v != 0 {
				a.couple(freedoms[i], freedoms[j], v)
			}
		}
	}
}

// couple adds the stiffness between two freedoms, in this order alone, to the unknowns that move them.
func (a *assembly) couple(p, q int, v float64) {
	for _, s := range a.ties.follows[p] {
		for _, t := range a.ties.follows[q] {
			if t.of >= 0 && s.of >= t.of {
				a.add(s.of, t.of, v*s.by*t.by)
			}
		}
	}
}

func (a *assembly) add(i, j int, v float64) {
	a.entries = append(a.entries, entry{i, j, v})
	if i == j {
		a.diagonal[i] += v
	}
	p, q := a.ties.loose[i], a.ties.loose[j]
	if n := p / 6; n < a.nodes && n == q/6 && p%6 >= 3 && q%6 >= 3 {
		a.turning[n][p%6-3][q%6-3] += v
	}
}

// idle is a turning of a node that strains nothing: every end that meets there is hinged about it. It is no
// mechanism, since a node without size that turns on its own is nothing one could see; it is kept still, and
// only a moment on it is refused.
type idle struct {
	node  int
	about Vec
	at    [3]int // loose unknown of each turning, or -1
}

// settleIdle finds the idle turnings and keeps them still. What strains nothing at the node alone strains
// nothing anywhere, so that any stiffness will do.
func (a *assembly) settleIdle() []idle {
	unknown := make([][3]int, a.nodes)
	for i := range unknown {
		unknown[i] = [3]int{-1, -1, -1}
	}
	for i, f := range a.ties.loose {
		if f/6 < a.nodes && f%6 >= 3 {
			unknown[f/6][f%6-3] = i
		}
	}
	var found []idle
	for n, at := range unknown {
		directions, stiff := slack(a.turning[n], at)
		for _, d := range directions {
			found = append(found, idle{n, d, at})
			for i := range d {
				for j := range i + 1 {
					if v := stiff * d[i] * d[j]; v != 0 {
						a.add(at[i], at[j], v)
					}
				}
			}
		}
	}
	return found
}

// slack are the directions among the loose turnings that have no stiffness, and the largest stiffness there.
func slack(k [3][3]float64, at [3]int) ([]Vec, float64) {
	if firm(k) {
		return nil, 0
	}
	var loose []int
	for i, u := range at {
		if u >= 0 {
			loose = append(loose, i)
		}
	}
	if len(loose) == 0 {
		return nil, 0
	}
	part := mat.NewSymDense(len(loose), nil)
	for i, p := range loose {
		for j, q := range loose[:i+1] {
			part.SetSym(i, j, k[p][q])
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(part, true) {
		return nil, 0
	}
	values, vectors := eigen.Values(nil), mat.Dense{}
	eigen.VectorsTo(&vectors)
	top := values[len(values)-1]
	var none []Vec
	for i, v := range values {
		if v > 1e-13*top {
			continue
		}
		var d Vec
		for j, p := range loose {
			d[p] = vectors.At(j, i)
		}
		none = append(none, d)
	}
	if top <= 0 {
		top = 1
	}
	return none, top
}

// firm is a quick look: a block well away from singular has no slack.
func firm(k [3][3]float64) bool {
	low := 1e-9 * math.Max(k[0][0], math.Max(k[1][1], k[2][2]))
	if k[0][0] <= low {
		return false
	}
	l10, l20 := k[1][0]/k[0][0], k[2][0]/k[0][0]
	d1 := k[1][1] - l10*k[1][0]
	if d1 <= low {
		return false
	}
	l21 := (k[2][1] - l20*k[1][0]) / d1
	return k[2][2]-l20*k[2][0]-l21*l21*d1 > low
}
