package main

import (
	"math"
	"slices"

	"rodwright/length"
)

// program returns the problem of glued-up panels as the integer program that comes with the open data
// (glue-up/MODEL.md there), in sixteenths of an inch.
//
//	least Σ price(k)·z(k) − salvage·Σ price(k)·(length(k) − s)/length(k)·r(k,s)
//	on every board: a path from its one end to the other, z(k) times, over segments, skipped stretches, a kept tail
//	for every length and grade: Σ net width of its segments ≥ wanted
func (g gluedProblem) program(name string) *program {
	out := &program{name: name}
	kinds := g.kinds()
	wanted := make([]int, len(kinds))
	for t, k := range kinds {
		wanted[t] = out.condition(atLeast, float64(k.width))
	}
	for k := range g.Boards {
		g.board(out, k, kinds, wanted)
	}
	return out
}

// gluedKind is all panels of one length and grade; width is what their strips must add up to.
type gluedKind struct {
	length length.Length
	clear  bool
	width  length.Length
}

// kinds sums the panels up by length and grade. Each panel but the first of a kind adds a saw cut and a joint,
// for a strip divided between two.
func (g gluedProblem) kinds() (out []gluedKind) {
	for _, q := range g.Panels {
		t := slices.IndexFunc(out, func(k gluedKind) bool { return k.length == q.Len && k.clear == q.Clear })
		if t < 0 {
			t = len(out)
			out = append(out, gluedKind{q.Len, q.Clear, -g.RipKerf - g.Joint})
		}
		out[t].width += length.Length(q.Qty) * (q.Wid + g.RipKerf + g.Joint)
	}
	return out
}

// board adds the paths along board k.
func (g gluedProblem) board(out *program, k int, kinds []gluedKind, wanted []int) {
	b := g.Boards[k]
	positions := g.positions(k, kinds)
	at := map[length.Length]int{}
	for _, s := range append(positions, b.Len) {
		if _, seen := at[s]; !seen {
			at[s] = out.condition(equal, 0)
		}
	}
	out.unknown(b.Cost, 1, true, entry{at[b.Len], -1}, entry{at[0], 1}) // bought: the path goes round
	for i, s := range positions {
		next := b.Len
		if i+1 < len(positions) {
			next = positions[i+1]
		}
		out.unknown(0, math.Inf(1), false, entry{at[s], -1}, entry{at[next], 1})
		if tail := b.Len - s; s > 0 && tail >= g.Tail {
			worth := g.Salvage * b.Cost * float64(tail) / float64(b.Len)
			out.unknown(-worth, 1, true, entry{at[s], -1}, entry{at[b.Len], 1})
		}
		for t, kind := range kinds {
			if u := g.netWidth(k, s, kind); u > 0 {
				end := min(b.Len, s+kind.length+g.Kerf)
				out.unknown(0, 1, true, entry{at[s], -1}, entry{at[end], 1}, entry{wanted[t], float64(u)})
			}
		}
	}
}

// positions are the places of board k where a segment may begin, in order: 0, the ends of defects, and where
// another segment that begins at such a place ends.
func (g gluedProblem) positions(k int, kinds []gluedKind) []length.Length {
	b := g.Boards[k]
	seen, list := map[length.Length]bool{}, []length.Length{}
	add := func(s length.Length) {
		if s >= 0 && s < b.Len && !seen[s] {
			seen[s] = true
			list = append(list, s)
		}
	}
	add(0)
	for _, d := range b.Defects {
		add(d[1])
	}
	for i := 0; i < len(list); i++ {
		for _, t := range kinds {
			add(list[i] + t.length + g.Kerf)
		}
	}
	slices.Sort(list)
	return list
}

// netWidth is what a segment of board k that begins at s adds to the panels of a kind: 0 where it leaves the
// board or meets a split, for clear faces only what no knot shadows.
func (g gluedProblem) netWidth(k int, s length.Length, kind gluedKind) (sum length.Length) {
	b := g.Boards[k]
	end := s + kind.length
	if end > b.Len {
		return 0
	}
	from, to := g.Trim, b.Wid-g.Trim
	var shadows [][2]length.Length
	for _, d := range b.Defects {
		if d[0] >= end || s >= d[1] {
			continue
		}
		if d[2] == 0 && d[3] == b.Wid {
			return 0
		}
		if kind.clear {
			shadows = append(shadows, [2]length.Length{d[2], d[3]})
		}
	}
	slices.SortFunc(shadows, func(a, b [2]length.Length) int { return int(a[0] - b[0]) })
	for _, d := range shadows {
		sum += g.ripped(min(d[0], to) - from)
		from = max(from, d[1])
	}
	return sum + g.ripped(to-from)
}

// ripped is the most that strips from a clear interval add up to when their edges are jointed.
func (g gluedProblem) ripped(interval length.Length) (most length.Length) {
	for n := length.Length(1); n*g.Least+(n-1)*g.RipKerf <= interval; n++ {
		most = max(most, min(interval-(n-1)*g.RipKerf, n*g.Most)-n*g.Joint)
	}
	return most
}
