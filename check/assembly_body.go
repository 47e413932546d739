package check

import (
	"math"

	"rodwright/piece"
	"rodwright/trade/pipe"
)

// touching is how far two bodies may run into each other and still only touch, in mm.
const touching = 0.1

// rod is a straight round piece of a body, in mm.
type rod struct {
	a, b   [3]float64
	radius float64
}

// body is one thing of a frame that is turned as a whole: a pipe, a fitting, half of a union; or a panel that posts pass
// through, whose rods are its edges and what fills it.
type body struct {
	tag, name string
	rods      []rod
	stick     int // the pipe; -1
	node      int // the fitting or the half of a union; -1
	panel     int // -1
}

// threadJoint is one thread: a pipe in a fitting, with the axis it is turned about.
type threadJoint struct {
	pipe, fitting int // bodies
	node          int
	at, along     [3]float64
}

// workpiece is a frame as it is put together: its bodies and the threads between them.
type workpiece struct {
	*Piece
	bodies []body
	turns  []threadJoint
	unions [][2]int // bodies: both halves of each
	panels []through
}

// through is a panel that posts pass through in closed holes: a body, and the pipes in the holes.
type through struct {
	body  int
	pipes []int
}

// workpieceOf takes the frame apart into its bodies, unions opened.
func (p *Piece) workpieceOf() *workpiece {
	w := &workpiece{Piece: p}
	pipes := make([]int, len(p.Sticks))
	for i, s := range p.Sticks {
		pipes[i] = len(w.bodies)
		w.bodies = append(w.bodies, body{p.Parts.StickTags[i], s.Name, []rod{p.pipeRod(i)}, i, -1, -1})
	}
	for i, n := range p.Nodes {
		switch n.Kind {
		case pipe.None:
		case pipe.Union:
			w.union(i, pipes)
		default:
			at := w.fitting(i, n.Dirs)
			for k, s := range n.Sticks {
				w.thread(pipes[s], at, i, n.Dirs[k])
			}
		}
	}
	w.layPanels(pipes)
	return w
}

// union adds both halves of a union, each on its own pipe.
func (w *workpiece) union(i int, pipes []int) {
	n := w.Nodes[i]
	var halves [2]int
	for k, s := range n.Sticks[:min(len(n.Sticks), 2)] {
		halves[k] = w.fitting(i, n.Dirs[k:k+1])
		w.thread(pipes[s], halves[k], i, n.Dirs[k])
	}
	w.unions = append(w.unions, halves)
}

// fitting adds a fitting with the outlets it has that way.
func (w *workpiece) fitting(i int, outlets []piece.Dir) int {
	n := w.Nodes[i]
	b := body{w.Parts.NodeTags[i], n.Kind.Words() + " at the " + n.Place, nil, -1, i, -1}
	at := mm(n.At)
	for _, d := range outlets {
		u := unit(d)
		radius := n.Fitting.Band.MM() / 2
		if n.Kind == pipe.Flange { // its plate lies on the face, its hub is narrower
			b.rods = append(b.rods, rod{at, far(at, u, n.Fitting.PlateThick.MM()), n.Fitting.Plate.MM() / 2})
		}
		b.rods = append(b.rods, rod{at, far(at, u, n.Fitting.CentreToEnd.MM()), radius})
	}
	w.bodies = append(w.bodies, b)
	return len(w.bodies) - 1
}

func (w *workpiece) thread(pipe, fitting, node int, d piece.Dir) {
	w.turns = append(w.turns, threadJoint{pipe, fitting, node, mm(w.Nodes[node].At), unit(d)})
}

// pipeRod is a pipe from end to end, threads included.
func (p *Piece) pipeRod(i int) rod {
	s := p.Sticks[i]
	a, b, u := p.Nodes[s.A], p.Nodes[s.B], unit(s.Dir)
	return rod{far(mm(a.At), u, a.Fitting.TakeOut().MM()), far(mm(b.At), u, -b.Fitting.TakeOut().MM()), a.Size.OD.MM() / 2}
}

// layPanels adds the panels with closed holes round posts.
func (w *workpiece) layPanels(pipes []int) {
	for i, flat := range w.Panels {
		var in []int
		for _, f := range flat.Features {
			if f.Kind == piece.HoleFeature && f.Stick >= 0 {
				in = append(in, pipes[f.Stick])
			}
		}
		if len(in) == 0 {
			continue
		}
		w.panels = append(w.panels, through{len(w.bodies), in})
		w.bodies = append(w.bodies, body{w.Parts.PanelTags[i], flat.Name, slabRods(flat), -1, -1, i})
	}
}

// slabRods are the edges of a panel as rods half as thick as it: what turns beside it strikes these first.
func slabRods(flat piece.FlatPanel) (out []rod) {
	lo, hi := mm(flat.Min), mm(flat.Max)
	z, r := (lo[2]+hi[2])/2, (hi[2]-lo[2])/2
	corners := [][3]float64{{lo[0], lo[1], z}, {hi[0], lo[1], z}, {hi[0], hi[1], z}, {lo[0], hi[1], z}}
	for k, c := range corners {
		out = append(out, rod{c, corners[(k+1)%4], r})
	}
	return out
}

func mm(v piece.Vec) [3]float64 { return [3]float64{v.X.MM(), v.Y.MM(), v.Z.MM()} }

func unit(d piece.Dir) [3]float64 {
	n := math.Sqrt(float64(int(d.X)*int(d.X) + int(d.Y)*int(d.Y) + int(d.Z)*int(d.Z)))
	if n == 0 {
		return [3]float64{}
	}
	return [3]float64{float64(d.X) / n, float64(d.Y) / n, float64(d.Z) / n}
}

func far(a, along [3]float64, by float64) [3]float64 {
	return [3]float64{a[0] + along[0]*by, a[1] + along[1]*by, a[2] + along[2]*by}
}

func minus(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// ring is what a rod sweeps in a whole turn about an axis: from where to where along it, and how near it and how far
// from it.
type ring struct{ from, to, near, far float64 }

// swept returns the ring of a rod about the axis of a thread. A rod that neither lies along the axis nor square to it
// sweeps less than its ring, so that a strike may be told that is none; the other way round is not possible.
func (t *threadJoint) swept(r rod) ring {
	p, q := minus(r.a, t.at), minus(r.b, t.at)
	up, uq := dot(p, t.along), dot(q, t.along)
	p, q = far(p, t.along, -up), far(q, t.along, -uq) // square to the axis
	d := minus(q, p)
	near := p
	if n := dot(d, d); n > 0 {
		near = far(p, d, min(max(-dot(p, d)/n, 0), 1))
	}
	long := math.Hypot(uq-up, math.Sqrt(dot(d, d)))
	side := 0.0 // how much of the radius lies along the axis
	if long > 0 {
		side = math.Sqrt(dot(d, d)) / long
	}
	return ring{
		min(up, uq) - r.radius*side, max(up, uq) + r.radius*side,
		max(math.Sqrt(dot(near, near))-r.radius, 0), math.Sqrt(max(dot(p, p), dot(q, q))) + r.radius,
	}
}

// round is the ring round two.
func (a ring) round(b ring) ring {
	return ring{min(a.from, b.from), max(a.to, b.to), min(a.near, b.near), max(a.far, b.far)}
}

// meet says by how much two rings run into each other, in mm; zero or less where they stay clear.
func (a ring) meet(b ring) float64 {
	return min(min(a.to, b.to)-max(a.from, b.from), min(a.far, b.far)-max(a.near, b.near)) - touching
}
