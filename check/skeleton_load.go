package check

import (
	beams "rodwright/mechanics/frame"
	"rodwright/part"
	"rodwright/piece"
)

// weigh lays the weight of every part, and of everything held, on the frame.
func (k *skeleton) weigh() {
	mass := func(shelf []*part.Part, i int) float64 {
		if pt := shelf[i]; pt != nil {
			return pt.MassKg
		}
		return 0
	}
	for _, i := range k.s.sticks {
		half := mass(k.p.sticks, i) / 2
		k.hang(k.at[k.p.Sticks[i].A], half)
		k.hang(k.at[k.p.Sticks[i].B], half)
	}
	for _, i := range k.s.nodes {
		k.hang(k.at[i], mass(k.p.nodes, i))
	}
	for _, i := range k.s.feet {
		if at, ok := k.floor[i]; ok {
			k.hang(at, mass(k.p.feet, i))
		}
	}
	for _, i := range k.s.panels {
		flat := &k.p.Panels[i]
		middle := beams.Vec{((flat.Min.X + flat.Max.X).Half()).MM(), ((flat.Min.Y + flat.Max.Y).Half()).MM(), 0}
		k.weights = append(k.weights, k.spread(i, middle, down(mass(k.p.panels, i)))...)
	}
	for _, i := range k.s.held {
		h := k.p.Held[i]
		k.held = append(k.held, k.spread(h.Panel, vec(piece.Vec{X: (h.Min.X + h.Max.X).Half(), Y: (h.Min.Y + h.Max.Y).Half()}), down(h.MassKg))...)
	}
}

func down(kg float64) beams.Vec { return beams.Vec{0, 0, -kg * gravity} }

func (k *skeleton) hang(node int, kg float64) {
	if kg > 0 {
		k.weights = append(k.weights, beams.Push{Node: k.frame.Nodes[node].Name, Force: down(kg)})
	}
}

// spread shares a force at a place of a panel, seen from above, among what bears the panel. Down it is shared as a stiff
// panel on equal springs does, R = F·(1/n + plane through the moments); level, evenly. What turning is left goes to the
// nodes as moments, each the same, so that force and moment are those of the load to the last digit.
func (k *skeleton) spread(panel int, at, force beams.Vec) []beams.Push {
	on := k.bears[panel]
	if len(on.nodes) == 0 {
		return nil
	}
	n := float64(len(on.nodes))
	shares := k.shares(on.nodes, at)
	out := make([]beams.Push, len(on.nodes))
	moment := cross(beams.Vec{at[0], at[1], 0}, force)
	for i, node := range on.nodes {
		f := beams.Vec{force[0] / n, force[1] / n, force[2] * shares[i]}
		q := k.frame.Nodes[node].At
		m := cross(beams.Vec{q[0], q[1], 0}, f)
		for x := range moment {
			moment[x] -= m[x]
		}
		out[i] = beams.Push{Node: k.frame.Nodes[node].Name, Force: f}
	}
	if !on.fast {
		return out
	}
	for i := range out {
		out[i].Moment = beams.Vec{moment[0] / n, moment[1] / n, moment[2] / n}
	}
	return out
}

// shares are what equal springs bear of one unit at a place, seen from above; where they stand in one line, what is across
// it is left to others.
func (k *skeleton) shares(nodes []int, at beams.Vec) []float64 {
	n := float64(len(nodes))
	var mid [2]float64
	for _, i := range nodes {
		mid[0], mid[1] = mid[0]+k.frame.Nodes[i].At[0]/n, mid[1]+k.frame.Nodes[i].At[1]/n
	}
	var xx, yy, xy float64
	for _, i := range nodes {
		x, y := k.frame.Nodes[i].At[0]-mid[0], k.frame.Nodes[i].At[1]-mid[1]
		xx, yy, xy = xx+x*x, yy+y*y, xy+x*y
	}
	a, b := planeThrough(xx, yy, xy, at[0]-mid[0], at[1]-mid[1])
	out := make([]float64, len(nodes))
	for j, i := range nodes {
		out[j] = 1/n + a*(k.frame.Nodes[i].At[0]-mid[0]) + b*(k.frame.Nodes[i].At[1]-mid[1])
	}
	return out
}

// planeThrough solves [xx xy; xy yy]·[a b] = [x y]. Where the springs stand in one line it leaves out what lies across it.
func planeThrough(xx, yy, xy, x, y float64) (a, b float64) {
	switch det := xx*yy - xy*xy; {
	case det > 1e-6*(xx+yy)*(xx+yy):
		return (x*yy - y*xy) / det, (y*xx - x*xy) / det
	case xx >= yy && xx > 1:
		return x / xx, 0
	case yy > 1:
		return 0, y / yy
	}
	return 0, 0
}

func cross(a, b beams.Vec) beams.Vec {
	return beams.Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// atTop is a level push at the top: in the middle of the highest panels, else at the highest nodes.
func (k *skeleton) atTop(force beams.Vec) (out []beams.Push) {
	top := k.topPanels()
	for _, i := range top {
		out = append(out, k.spread(i, k.middle(i), times(force, 1/float64(len(top))))...)
	}
	if len(top) > 0 {
		return out
	}
	nodes := k.topNodes()
	for _, n := range nodes {
		out = append(out, beams.Push{Node: k.frame.Nodes[n].Name, Force: times(force, 1/float64(len(nodes)))})
	}
	return out
}

// topNodes are what bears the highest panels, or the highest nodes where there is none.
func (k *skeleton) topNodes() (out []int) {
	for _, i := range k.topPanels() {
		out = append(out, k.bears[i].nodes...)
	}
	if len(out) > 0 {
		return once(out)
	}
	high := k.height()
	for n, q := range k.frame.Nodes {
		if q.At[2] > high-nearEnough {
			out = append(out, n)
		}
	}
	return out
}

func (k *skeleton) middle(panel int) beams.Vec {
	flat := &k.p.Panels[panel]
	return vec(piece.Vec{X: (flat.Min.X + flat.Max.X).Half(), Y: (flat.Min.Y + flat.Max.Y).Half()})
}

func times(v beams.Vec, by float64) beams.Vec { return beams.Vec{v[0] * by, v[1] * by, v[2] * by} }

// edge is the middle of an edge of a panel, or the given place on it from its left front corner.
func (k *skeleton) edge(panel int, side piece.PanelSide) beams.Vec {
	at := k.middle(panel)
	flat := &k.p.Panels[panel]
	switch side {
	case piece.FrontSide:
		at[1] = flat.Min.Y.MM()
	case piece.BackSide:
		at[1] = flat.Max.Y.MM()
	case piece.LeftSide:
		at[0] = flat.Min.X.MM()
	case piece.RightSide:
		at[0] = flat.Max.X.MM()
	}
	return at
}

// towards is the direction in which something is pushed towards a side.
func towards(side piece.PanelSide) beams.Vec {
	switch side {
	case piece.FrontSide:
		return beams.Vec{0, -1, 0}
	case piece.BackSide:
		return beams.Vec{0, 1, 0}
	case piece.LeftSide:
		return beams.Vec{-1, 0, 0}
	}
	return beams.Vec{1, 0, 0}
}
