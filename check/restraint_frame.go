package check

import (
	"math"
	"slices"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// end is one end of a straight run of pipe: the joint it comes to, and how far that is.
type end struct {
	node int
	far  length.Length
}

// along follows pipe in a straight line from a node until it comes to a joint where stop says so, or to the
// end of the line.
func (p *Piece) along(node int, d piece.Dir, stop func(node int) bool) end {
	e := end{node: node}
	for {
		next := -1
		for k, out := range p.Nodes[e.node].Dirs {
			if out == d {
				next = p.Nodes[e.node].Sticks[k]
			}
		}
		if next < 0 {
			return e
		}
		e.far += p.Sticks[next].Between
		e.node = p.Sticks[next].A + p.Sticks[next].B - e.node
		if stop(e.node) {
			return e
		}
	}
}

func back(d piece.Dir) piece.Dir { return piece.Dir{X: -d.X, Y: -d.Y, Z: -d.Z} }

// stayed reports whether a node can't move across the grain of panel i by itself: a stick leaves it that way,
// or it is screwed to something else.
func (p *Piece) stayed(i, node int) bool {
	n := p.Nodes[node]
	for _, d := range n.Dirs {
		if leadsAcross(p.Panels[i], d) {
			return true
		}
	}
	return n.ToWall || n.Panel >= 0 && n.Panel != i
}

// legGives returns how much the flange at a node is moved across the grain of panel i by one newton, in mm,
// with the leg's far end free to turn and held. The leg bends up to the first joint that is stayed; one that
// is stayed nowhere gives without end.
func (p *Piece) legGives(i, node int) (soft, stiff float64) {
	if len(p.Nodes[node].Dirs) == 0 {
		return math.Inf(1), math.Inf(1)
	}
	d := p.Nodes[node].Dirs[0]
	if leadsAcross(p.Panels[i], d) { // a brace: it does not bend but push
		return 0, 0
	}
	to := p.along(node, d, func(n int) bool { return p.stayed(i, n) })
	if to.node == node || !p.stayed(i, to.node) {
		return math.Inf(1), math.Inf(1)
	}
	size := p.Nodes[node].Size
	return bends(legFree, to.far, size), bends(legHeld, to.far, size)
}

// span returns the joints between which a stick's straight run of pipe lies bare: where posts or other rails
// meet it, or its ends.
func (p *Piece) span(stick int) (a, b end) {
	s := p.Sticks[stick]
	stop := func(n int) bool {
		for _, d := range p.Nodes[n].Dirs {
			if d != s.Dir && d != back(s.Dir) {
				return true
			}
		}
		return false
	}
	start := p.along(s.B, back(s.Dir), stop)
	if stop(s.B) { // along does not ask at the joint it starts from
		b = end{node: s.B}
	} else {
		b = p.along(s.B, s.Dir, stop)
	}
	return end{node: start.node}, end{node: b.node, far: start.far + b.far}
}

// railGives returns how much a rail and the posts that carry it are moved across the grain of panel i by one
// newton shared by its straps, in mm: with all ends free to turn, and with a rail that does not bend between
// posts whose far ends are held.
func (p *Piece) railGives(i, stick int, straps []part.Fastener) (soft, stiff float64) {
	a, b := p.span(stick)
	softA, stiffA := p.postGives(i, a.node)
	softB, stiffB := p.postGives(i, b.node)
	start := p.Nodes[a.node].At
	var at []float64
	for _, f := range straps {
		seat := p.Panels[i].Seats[f.Seat].At
		at = append(at, math.Hypot((seat[0]-start.X).MM(), (seat[1]-start.Y).MM()))
	}
	size := p.Nodes[a.node].Size
	switch {
	case math.IsInf(softA, 1) && math.IsInf(softB, 1):
		return softA, stiffA
	case math.IsInf(softB, 1): // only one end is held: the rail stands out from it
		far := length.FromMM(slices.Max(at))
		return softA + bends(legFree, far, size), stiffA + bends(legHeld, far, size)
	case math.IsInf(softA, 1):
		far := length.FromMM(b.far.MM() - slices.Min(at))
		return softB + bends(legFree, far, size), stiffB + bends(legHeld, far, size)
	}
	// each end bears half: its movement counts half, and for half the force
	return (softA+softB)/4 + sags(at, b.far.MM(), size), (stiffA + stiffB) / 4
}

// postGives returns how much a joint of a post is moved across the grain of panel i by one newton: not at all
// where it is stayed, else as the post bends to the stayed joints above and below it.
func (p *Piece) postGives(i, node int) (soft, stiff float64) {
	if p.stayed(i, node) {
		return 0, 0
	}
	var k [2]float64
	for _, d := range p.Nodes[node].Dirs {
		if d.Z == 0 {
			continue
		}
		to := p.along(node, d, func(n int) bool { return p.stayed(i, n) })
		if !p.stayed(i, to.node) || to.far <= 0 {
			continue
		}
		size := p.Nodes[node].Size
		k[0] += 1 / bends(legFree, to.far, size)
		k[1] += 1 / bends(legHeld, to.far, size)
	}
	return 1 / k[0], 1 / k[1] // without end where nothing stays it
}

// sags returns how much the middle of several points of a rail is moved by one newton shared by them, in mm:
// a beam that rests at its ends, by superposition of
//
//	δ(x) = F·b·x·(ℓ² − b² − x²) ÷ (6·ℓ·E·I) for x ≤ a, b = ℓ − a
func sags(at []float64, span float64, size pipe.Size) float64 {
	if !(span > 0) || len(at) == 0 {
		return 0
	}
	sum := 0.0
	for _, x := range at {
		for _, a := range at {
			x, a := min(x, a), max(x, a) // what a load at one does at the other goes both ways
			b := span - a
			sum += max(0, b*x*(span*span-b*b-x*x))
		}
	}
	n := float64(len(at))
	return sum / (6 * span * pipe.SteelModulus * size.SecondMoment() * n * n)
}
