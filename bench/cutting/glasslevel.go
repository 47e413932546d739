package main

import (
	"cmp"
	"slices"
)

// glassLevel keeps the best fronts of one level.
type glassLevel struct {
	wide  int
	all   []rankedFront
	full  bool    // as many are kept as there may be
	limit float64 // the worst rank then
}

type rankedFront struct {
	rank float64 // the less the better
	*front
}

// spareFronts is how many times as many fronts as are kept are gathered before the worst are left out.
const spareFronts = 3

// takes reports whether a front of a rank may be among the kept.
func (l *glassLevel) takes(rank float64) bool { return !l.full || rank < l.limit }

func (l *glassLevel) add(f *front, rank float64) {
	if l.all = append(l.all, rankedFront{rank, f}); len(l.all) >= spareFronts*l.wide+16 {
		l.thin()
	}
}

// thin keeps the best fronts, and none that lies behind a better one with the same panes.
func (l *glassLevel) thin() {
	slices.SortFunc(l.all, func(a, b rankedFront) int { return cmp.Compare(a.rank, b.rank) })
	kept := l.all[:0]
	seen := make(map[uint64][]*front, l.wide)
	for _, f := range l.all {
		if slices.ContainsFunc(seen[f.same], func(o *front) bool { return o.ahead(f.front) }) {
			continue
		}
		seen[f.same] = append(seen[f.same], f.front)
		if kept = append(kept, f); len(kept) == l.wide {
			l.full, l.limit = true, f.rank
			break
		}
	}
	clear(l.all[len(kept):])
	l.all = kept
}

// ahead reports whether a front leaves at least what another leaves, wherever one looks.
func (f *front) ahead(o *front) bool {
	if f.plate != o.plate {
		return f.plate < o.plate
	}
	for _, y := range [...]int{0, f.y0, f.y1, o.y0, o.y1} {
		if f.reach(y) > o.reach(y) {
			return false
		}
	}
	return true
}

// reach is how far the plate is used up at a height.
func (f *front) reach(y int) int {
	switch {
	case y < f.y0:
		return f.x1
	case y < f.y1:
		return f.end
	}
	return f.x0
}
