package plate

import (
	"math"
	"slices"
)

// diagonal is how far a point at 45° on a circle of 1 lies from its middle line.
const diagonal = math.Sqrt2 / 2

// small reports a hole so small that a square around it is as good: a tenth of the shorter side across at most. The
// square takes away more, so that the plate sags more, by less than 1/1000 for one hole of that size.
func (p *Plate) small(h Circle) bool { return h.R <= min(p.Width, p.Depth)/20 }

// forced returns the lines across x and across y that the mesh must have: edges of openings, supports, point
// loads.
func (p *Plate) forced() (xs, ys []float64) {
	at := func(x, y float64) { xs, ys = append(xs, x), append(ys, y) }
	for _, o := range p.Openings {
		at(o.X, o.Y)
		at(o.X+o.W, o.Y+o.H)
	}
	for _, h := range p.Holes {
		steps := []float64{-1, -diagonal, diagonal, 1}
		if p.small(h) {
			steps = []float64{-1, 1}
		}
		for _, s := range steps {
			at(h.X+s*h.R, h.Y+s*h.R)
		}
	}
	for _, s := range p.Posts {
		at(s.X, s.Y)
	}
	for _, d := range p.Discs {
		for _, s := range []float64{-1, -diagonal, 0, diagonal, 1} {
			at(d.X+s*d.R, d.Y+s*d.R)
		}
	}
	for _, r := range p.Rails {
		at(r.FromX, r.FromY)
		at(r.ToX, r.ToY)
	}
	for _, l := range p.Load.Points {
		at(l.X, l.Y)
	}
	near := min(p.Width, p.Depth) / 500
	return halved(settled(xs, p.Width, near)), halved(settled(ys, p.Depth, near))
}

// halved puts a line in the middle where there are none but the edges: two held edges would hold a cell between them
// altogether.
func halved(lines []float64) []float64 {
	if len(lines) > 2 {
		return lines
	}
	return []float64{lines[0], (lines[0] + lines[1]) / 2, lines[1]}
}

// settled sorts lines, drops those outside 0 to end, and draws together what lies nearer than near, so that
// no cell is a sliver: a run of near lines becomes lines at even distances over the same stretch, which
// moves none by more than near and treats both directions alike.
func settled(lines []float64, end, near float64) []float64 {
	lines = slices.DeleteFunc(lines, func(v float64) bool { return v <= near || v >= end-near })
	slices.Sort(lines)
	out := []float64{0}
	for len(lines) > 0 {
		run := 1
		for run < len(lines) && lines[run]-lines[run-1] < near {
			run++
		}
		first, last := lines[0], lines[run-1]
		n := int((last-first)/near + 1e-9)
		if n == 0 {
			out = append(out, (first+last)/2)
		}
		for i := 0; n > 0 && i <= n; i++ {
			out = append(out, first+(last-first)*float64(i)/float64(n))
		}
		lines = lines[run:]
	}
	return append(out, end)
}

// split cuts the gaps between lines evenly into cells of at most most.
func split(lines []float64, most float64) []float64 {
	out := []float64{lines[0]}
	for i := 1; i < len(lines); i++ {
		from, gap := lines[i-1], lines[i]-lines[i-1]
		n := int(math.Ceil(gap/most - 1e-9))
		for k := 1; k < n; k++ {
			out = append(out, from+gap*float64(k)/float64(n))
		}
		out = append(out, lines[i])
	}
	return out
}

// nearest returns the index of the line nearest to v.
func nearest(lines []float64, v float64) int {
	i, _ := slices.BinarySearch(lines, v)
	if i == len(lines) || i > 0 && v-lines[i-1] < lines[i]-v {
		return i - 1
	}
	return i
}

// span returns the cell that holds v.
func span(lines []float64, v float64) int {
	i, found := slices.BinarySearch(lines, v)
	if !found {
		i--
	}
	return max(0, min(i, len(lines)-2))
}
