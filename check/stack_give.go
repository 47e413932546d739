package check

import (
	"slices"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// giving is by how much the distance between the ends of one pipe may come out otherwise than drawn.
type giving struct {
	felt pipe.Stack // every joint wrenched by feel, fittings as they are sold
	set  pipe.Stack // the distance set by measuring while it is wrenched
}

// giveOf reckons one pipe. By feel each joint makes up a pitch more or less, each fitting is off its table, and the
// pipe must be turned on until both its fittings point their way. Set by measure it is within half a pitch of
// what the tape says, fittings and all, and still has to point.
func (p *Piece) giveOf(stick int) (g giving) {
	s := p.Sticks[stick]
	size := p.Nodes[s.A].Size
	for _, n := range []int{s.A, s.B} {
		if node := p.Nodes[n]; node.Kind != pipe.None {
			g.felt = g.felt.With(size.MakeUp(pipe.FeltTurns), 1).With(p.centreGive(node), 1)
		}
	}
	pointed := size.MakeUp(p.pointing(stick))
	g.felt = g.felt.With(pointed, 1)
	g.set = g.set.With(size.MakeUp(pipe.SetTurns), 1).With(pointed, 1)
	return g
}

// centreGive is how far the fitting at a joint may be off its table; less where the shop measured it.
func (p *Piece) centreGive(n piece.Node) length.Length {
	for _, m := range p.Shop.Fittings {
		if m.Pipe == n.Size.ID && m.Kind == n.Kind && m.CentreToEnd > 0 {
			return pipe.BenchGive
		}
	}
	return pipe.CentreGive
}

// pointing is by how many turns a pipe may stand off because both its fittings must point their way: none where
// a flange, a cap, a union or a bare end leaves it free; half as many where a fitting serves in two positions.
func (p *Piece) pointing(stick int) float64 {
	s := p.Sticks[stick]
	turns := pipe.PointedTurns
	for _, n := range []int{s.A, s.B} {
		points, twice := turning(p.Nodes[n], s.Dir)
		if !points {
			return 0
		}
		if twice {
			turns = pipe.PointedTurns / 2
		}
	}
	return turns
}

// turning reports whether a fitting must point a given way when it is turned about a pipe, and whether half a turn
// makes it the same again.
func turning(n piece.Node, about piece.Dir) (points, twice bool) {
	twice = true
	for _, d := range n.Dirs {
		if d == about || d == back(about) {
			continue
		}
		points = true
		twice = twice && slices.Contains(n.Dirs, halfTurn(d, about))
	}
	return points, points && twice
}

// halfTurn turns a direction by half about an axis along the piece, front to back or upright; about one that
// slants it returns no direction.
func halfTurn(d, about piece.Dir) piece.Dir {
	keep := func(d, about int8) int8 {
		if about != 0 {
			return d
		}
		return -d
	}
	if n := about.X*about.X + about.Y*about.Y + about.Z*about.Z; n != 1 {
		return piece.Dir{}
	}
	return piece.Dir{X: keep(d.X, about.X), Y: keep(d.Y, about.Y), Z: keep(d.Z, about.Z)}
}

// share is how much of a pipe's length lies along an axis: 1, or √½ of one that slants at 45°.
func share(d piece.Dir, axis int) float64 {
	parts := [3]int8{d.X, d.Y, d.Z}
	if parts[axis] == 0 {
		return 0
	}
	n := 0
	for _, c := range parts {
		n += int(c * c)
	}
	return [...]float64{0, 1, 0.7071067811865476, 0.5773502691896258}[n]
}

// along returns a giving as far as it lies along an axis.
func (g giving) along(d piece.Dir, axis int) giving {
	by := share(d, axis)
	if by == 1 {
		return g
	}
	scaled := func(s pipe.Stack) (out pipe.Stack) {
		for _, t := range s {
			out = out.With(length.FromMM(t.By.MM()*by), t.Times)
		}
		return out
	}
	return giving{scaled(g.felt), scaled(g.set)}
}

func (g giving) and(h giving) giving { return giving{g.felt.And(h.felt), g.set.And(h.set)} }
