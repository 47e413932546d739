package solid

import (
	"math"
	"slices"
)

// prism is a layer of a shape: a convex base with convex openings, the same from z0 to z1 of its frame.
type prism struct {
	frame
	base     polygon
	openings []polygon
	z0, z1   float64
}

// polytope is a convex body by its corners and the pairs of them that its edges join.
type polytope struct {
	corners []point
	edges   [][2]int
}

// meeting is the space two shapes share, in millimetres; the zero meeting is none.
type meeting struct {
	depth float64
	at    point
}

// pillar returns the body over a base between two heights, in the base's frame.
func pillar(base polygon, z0, z1 float64) polytope {
	n := len(base)
	body := polytope{make([]point, 0, 2*n), make([][2]int, 0, 3*n)}
	for _, z := range []float64{z0, z1} {
		for _, c := range base {
			body.corners = append(body.corners, point{c.x, c.y, z})
		}
	}
	for i := range n {
		next := (i + 1) % n
		body.edges = append(body.edges, [2]int{i, next}, [2]int{n + i, n + next}, [2]int{i, n + i})
	}
	return body
}

func brick(lo, hi point) polytope {
	return pillar(rectangle(lo.x, lo.y, hi.x, hi.y), lo.z, hi.z)
}

// deepest returns the deepest meeting of a body with any of the layers.
func deepest(layers []prism, body polytope) (best meeting) {
	for _, l := range layers {
		if m := l.meet(body, nil); m.depth > best.depth {
			best = m
		}
	}
	return best
}

// layered returns the deepest meeting of two shapes that are both made of upright layers.
func layered(a, b []prism) (best meeting) {
	for _, l := range a {
		for _, k := range b {
			if m := l.meet(pillar(k.base, k.z0, k.z1), k.openings); m.depth > best.depth {
				best = m
			}
		}
	}
	return best
}

// meet returns what the layer and a convex body share, less the body's own openings.
//
// The layer is the same at every height, so the two share space exactly where the shadow of the body's
// part between z0 and z1 falls on the layer's base outside its openings.
func (l prism) meet(body polytope, more []polygon) meeting {
	shadow, low, high := l.shadow(body)
	if high-low <= Touch.MM() {
		return meeting{}
	}
	parts := []polygon{shadow.and(l.base)}
	for _, open := range append(slices.Clip(l.openings), more...) {
		var left []polygon
		for _, p := range parts {
			left = append(left, p.without(open, Touch.MM())...)
		}
		parts = left
	}
	var best meeting
	for _, p := range parts {
		if w := min(p.width(), high-low); w > best.depth {
			best = meeting{w, l.inside(body, p.middle())}
		}
	}
	return best
}

// inside returns the middle of what the layer and the body share above the given spot of the base.
func (l prism) inside(body polytope, at spot) point {
	var cut []spot // the body's section at x = at.x, as y and z
	for _, e := range body.edges {
		a, b := l.from(body.corners[e[0]]), l.from(body.corners[e[1]])
		if a.x <= at.x && b.x >= at.x || a.x >= at.x && b.x <= at.x {
			p := a
			if a.x != b.x {
				p = a.toward(b, (at.x-a.x)/(b.x-a.x))
			}
			cut = append(cut, spot{p.y, p.z})
		}
	}
	low, high := math.Inf(1), math.Inf(-1)
	section := around(cut)
	for i, a := range section {
		b := section[(i+1)%len(section)]
		if (a.x-at.y)*(b.x-at.y) <= 0 && a.x != b.x {
			z := a.y + (at.y-a.x)/(b.x-a.x)*(b.y-a.y)
			low, high = min(low, z), max(high, z)
		}
	}
	low, high = max(low, l.z0), min(high, l.z1)
	return l.back(point{at.x, at.y, (low + high) / 2})
}

// shadow returns the outline, seen along w, of the part of the body between z0 and z1, and how high that
// part reaches.
func (l prism) shadow(body polytope) (outline polygon, low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	var seen []spot
	cast := func(p point) {
		seen = append(seen, spot{p.x, p.y})
		low, high = min(low, p.z), max(high, p.z)
	}
	inFrame := make([]point, len(body.corners))
	for i, c := range body.corners {
		inFrame[i] = l.from(c)
		if z := inFrame[i].z; z >= l.z0 && z <= l.z1 {
			cast(inFrame[i])
		}
	}
	for _, e := range body.edges {
		a, b := inFrame[e[0]], inFrame[e[1]]
		for _, z := range [2]float64{l.z0, l.z1} {
			if a.z < z && b.z > z || a.z > z && b.z < z {
				cast(a.toward(b, (z-a.z)/(b.z-a.z)))
			}
		}
	}
	return around(seen), low, high
}
