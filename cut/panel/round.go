package panel

import (
	"math"
	"slices"
)

// Roundings make the bound closer where kinds are wanted in few segments. For any step d, segments of net widths u
// with Σ u ≥ D have Σ ⌈u/d⌉ ≥ ⌈Σ u/d⌉ ≥ ⌈D/d⌉ (Chvátal, Discrete Mathematics 4, 1973, from memory): that is one more need, and a
// segment's worth is still a number of its own, so the longest path finds the best way as before. A step just below
// D/k asks for more than k segments of no more than the step.

// Bounds on the roundings.
const (
	roundParts  = 14 // the most parts that a need is divided into
	roundsEach  = 24 // roundings that are added at once
	roundsTimes = 3  // how often they are added
)

// tighten adds the roundings that the present solution falls short of most, and returns the program with them; false
// where there is none.
func (p *program) tighten() (*program, bool) {
	var found []rounding
	var lacks []float64
	for t, kd := range p.l.kinds {
		for k := 1; k <= roundParts; k++ {
			r := rounding{t, math.Ceil(kd.need/float64(k)) - 1, kd.need}
			if r.step <= 0 {
				continue
			}
			if lack := 1 - p.counted(r)/r.count(); lack > 1e-4 {
				found, lacks = append(found, r), append(lacks, lack)
			}
		}
	}
	if len(found) == 0 {
		return p, false
	}
	for len(found) > roundsEach {
		least := 0
		for i, v := range lacks {
			if v < lacks[least] {
				least = i
			}
		}
		found, lacks = append(found[:least], found[least+1:]...), append(lacks[:least], lacks[least+1:]...)
	}
	q := newProgram(p.l.with(found), p.budget)
	for _, w := range p.ways {
		if w.crude {
			continue
		}
		v := q.l.newWay(w.cost)
		for _, g := range w.segments {
			q.l.extend(&v, q.groups[w.group].lowBoard, g.cut)
		}
		q.add(w.group, v)
	}
	return q, true
}

// with returns a copy of the bound with more roundings.
func (l *low) with(more []rounding) *low {
	out := *l
	out.rounds = slices.Concat(l.rounds, more)
	out.val, out.best, out.way, out.steps = nil, nil, nil, nil
	return &out
}

// counted is what the present solution counts in a rounding.
func (p *program) counted(r rounding) (v float64) {
	p.use(func(w groupWay, times float64) {
		for _, g := range w.segments {
			if g.kind == r.kind {
				v += times * r.of(p.groups[w.group].cuts[g.cut].net)
			}
		}
		if w.crude {
			v = math.Inf(1)
		}
	})
	return v
}
