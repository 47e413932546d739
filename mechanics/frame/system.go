package frame

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"rodwright/mechanics/band"
)

// system is the factored stiffness. The slides and the turning of a panel stand in a row with every node the
// panel binds and would fill the band; they are bordered off: the band is solved for them one by one, and
// what is left for them alone is a small full system (J. R. Bunch, D. J. Rose, Partitioning, Tearing and
// Modification of Sparse Linear Systems, J. Math. Anal. Appl. 48 (1974), from memory).
type system struct {
	place  []int // of each loose unknown: in the band, or in the border as a complement
	inner  *band.Factor
	cross  [][]term    // column of each border unknown in the band's rows
	answer [][]float64 // the band's answer to that column
	border *mat.Cholesky
	inside int
}

// system factors. A motion instead says how the loose unknowns move without resistance.
func (a *assembly) system() (s *system, motion []float64, err error) {
	s = &system{place: make([]int, len(a.diagonal))}
	bordered := 0
	for i, f := range a.ties.loose {
		if f >= 6*a.nodes && a.wide(f) {
			s.place[i] = ^bordered
			bordered++
			continue
		}
		s.place[i] = s.inside
		s.inside++
	}
	s.cross = make([][]term, bordered)
	small := mat.NewSymDense(max(bordered, 1), nil)
	if motion, err = a.factorBand(s, small); motion != nil || err != nil {
		return nil, motion, err
	}
	if bordered == 0 {
		return s, nil, nil
	}
	motion, err = s.factorBorder(small)
	return s, motion, err
}

// narrow is how many nodes a panel may bind whose own unknowns stand in the band: those of a wider one would draw the band
// out over the whole frame.
const narrow = 4

// wide reports whether a freedom of a panel stands in the border.
func (a *assembly) wide(freedom int) bool { return a.bound[(freedom-6*a.nodes)/3] > narrow }

// factorBand sends every entry where it belongs and factors the band.
func (a *assembly) factorBand(s *system, small *mat.SymDense) ([]float64, error) {
	inner := band.New(max(s.inside, 1))
	if s.inside == 0 {
		inner.Add(0, 0, 1)
	}
	for _, e := range a.entries {
		p, q := s.place[e.i], s.place[e.j]
		switch {
		case p >= 0 && q >= 0:
			inner.Add(p, q, e.v)
		case p < 0 && q < 0:
			small.SetSym(^p, ^q, small.At(^p, ^q)+e.v)
		case p < 0:
			s.cross[^p] = append(s.cross[^p], term{q, e.v})
		default:
			s.cross[^q] = append(s.cross[^q], term{p, e.v})
		}
	}
	var err error
	s.inner, err = inner.Factor()
	var loose *band.Unstable
	if !errors.As(err, &loose) {
		return nil, err
	}
	motion := make([]float64, len(a.diagonal))
	for i, p := range s.place {
		if p >= 0 && p < len(loose.Motion) {
			motion[i] = loose.Motion[p]
			if d := a.diagonal[i]; d > 0 {
				motion[i] /= math.Sqrt(d) // the band's motion is in the unit of each stiffness
			}
		}
	}
	return motion, nil
}

// factorBorder takes from the border what the band gives way to it.
func (s *system) factorBorder(small *mat.SymDense) (motion []float64, err error) {
	n := len(s.cross)
	for c, column := range s.cross {
		s.cross[c] = gather(column)
		b := make([]float64, s.inside)
		for _, t := range s.cross[c] {
			b[t.of] = t.by
		}
		s.answer = append(s.answer, s.solveBand(b))
	}
	scale := make([]float64, n)
	for i := range scale {
		if scale[i] = 1; small.At(i, i) > 0 {
			scale[i] = 1 / math.Sqrt(small.At(i, i))
		}
	}
	scaled := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range i + 1 {
			small.SetSym(i, j, small.At(i, j)-dotTerms(s.cross[i], s.answer[j]))
			scaled.SetSym(i, j, small.At(i, j)*scale[i]*scale[j])
		}
	}
	if soft := softest(scaled); soft != nil {
		return s.borderMotion(soft, scale), nil
	}
	s.border = &mat.Cholesky{}
	if !s.border.Factorize(small) {
		return nil, errors.New("the stiffnesses of panels and members lie too far apart to be worked out")
	}
	return nil, nil
}

// leastOfBorder is the smallest eigenvalue, of about 1, of a border that stands.
const leastOfBorder = 1e-11

// softest is the motion that meets no resistance, or nil.
func softest(k *mat.SymDense) []float64 {
	var eigen mat.EigenSym
	if !eigen.Factorize(k, true) || eigen.Values(nil)[0] > leastOfBorder {
		return nil
	}
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	return mat.Col(nil, 0, &vectors)
}

func (s *system) borderMotion(soft, scale []float64) []float64 {
	motion := make([]float64, len(s.place))
	for i, p := range s.place {
		if p < 0 {
			motion[i] = soft[^p] * scale[^p]
			continue
		}
		for c := range soft {
			motion[i] -= s.answer[c][p] * soft[c] * scale[c]
		}
	}
	return motion
}

func dotTerms(terms []term, x []float64) float64 {
	sum := 0.0
	for _, t := range terms {
		sum += t.by * x[t.of]
	}
	return sum
}

func (s *system) solveBand(b []float64) []float64 {
	if s.inside == 0 {
		return nil
	}
	return s.inner.Solve(b)
}

// solve returns the loose unknowns under forces on them.
func (s *system) solve(b []float64) []float64 {
	inner, outer := make([]float64, s.inside), mat.NewVecDense(max(len(s.cross), 1), nil)
	for i, p := range s.place {
		if p >= 0 {
			inner[p] = b[i]
		} else {
			outer.SetVec(^p, b[i])
		}
	}
	y := s.solveBand(inner)
	if s.border != nil {
		for c, terms := range s.cross {
			outer.SetVec(c, outer.AtVec(c)-dotTerms(terms, y))
		}
		_ = s.border.SolveVecTo(outer, outer) // at worst a warning: the balance of every answer is checked
		for c := range s.cross {
			for i := range y {
				y[i] -= s.answer[c][i] * outer.AtVec(c)
			}
		}
	}
	x := make([]float64, len(b))
	for i, p := range s.place {
		if p >= 0 {
			x[i] = y[p]
		} else {
			x[i] = outer.AtVec(^p)
		}
	}
	return x
}
