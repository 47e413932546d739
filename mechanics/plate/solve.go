package plate

import (
	"fmt"
	"math"
)

// How a plate is refined.
const (
	enough    = 0.01  // change of the largest movement that ends it
	coarsest  = 5     // cells along the longer side to begin with, at least
	finer     = 1.5   // times as many cells in the next mesh, at least
	mostMesh  = 8     // meshes tried
	mostCells = 4_000 // of a mesh
)

// Solve works out how the plate bears its load, on finer and finer meshes until the largest movement changes
// by less than 1 %. A plate that nothing holds, that drops, tips over or falls apart is an error of type
// [*Unheld].
func (p *Plate) Solve() (*Result, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	return p.refine(enough, mostMesh)
}

func (p *Plate) refine(enough float64, meshes int) (*Result, error) {
	s, err := p.Material.Stiffness(p.Thickness)
	if err != nil {
		return nil, err
	}
	if p.GrainAlongY {
		s = s.turned()
	}
	xs, ys := p.forced()
	var last *Result
	var before *level
	most := max(p.Width, p.Depth) / coarsest
	for range meshes {
		l, err := p.level(s, xs, ys, most, before)
		if err != nil || l == nil && last == nil {
			return nil, err
		}
		if l == nil {
			return last, nil
		}
		r := l.result(p)
		if last != nil {
			r.Change = change(last, r)
			r.Converged = r.Change < enough
		}
		if r.Converged {
			return r, nil
		}
		last, before, most = r, l, next(xs, ys, most)
	}
	return last, nil
}

// cells counts the cells of a mesh, cut out or not.
func cells(xs, ys []float64, most float64) int {
	return (len(split(xs, most)) - 1) * (len(split(ys, most)) - 1)
}

// next returns how long the cells of the next mesh are at most.
func next(xs, ys []float64, most float64) float64 {
	more := finer * float64(cells(xs, ys, most))
	for float64(cells(xs, ys, most)) < more {
		most /= 1.05
	}
	return most
}

// level solves one mesh; nil when it would be too fine and there is a coarser answer.
func (p *Plate) level(s Stiffness, xs, ys []float64, most float64, before *level) (*level, error) {
	if cells := cells(xs, ys, most); cells > mostCells {
		if before != nil {
			return nil, nil
		}
		return nil, fmt.Errorf("the plate has too much detail: it falls into %d cells, at most %d can be worked out", cells, mostCells)
	}
	l, err := p.newLevel(s, xs, ys, most)
	if err != nil {
		return nil, err
	}
	if before != nil {
		l.inherit(before)
	}
	return l, l.settle()
}

// change compares the largest movements of two meshes.
func change(a, b *Result) float64 {
	was, is := max(a.Sag.Value, a.Rise.Value), max(b.Sag.Value, b.Rise.Value)
	if is == was {
		return 0
	}
	return math.Abs(is-was) / max(math.Abs(is), math.Abs(was))
}
