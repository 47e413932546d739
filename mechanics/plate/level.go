package plate

import (
	"errors"
	"math"

	"rodwright/mechanics/band"
)

// level is a plate on one mesh.
type level struct {
	*mesh
	*carriage
	stiff Stiffness
	cells []*[16][16]float64 // by cell: its stiffness; nil where there is no wood
	load  []float64          // by unknown of the nodes
	total float64            // load
	size  float64            // the sum of the sizes of the loads
	soft  float64            // stiffness lent to lifted supports while the plate tips, else 0

	eq    []int // by unknown: its equation, or -1 when it is held
	first []int // by equation: its first unknown
	field []float64
	turns int
}

func (p *Plate) newLevel(s Stiffness, xs, ys []float64) (*level, error) {
	l := &level{mesh: newMesh(p, xs, ys), stiff: s}
	if err := l.mesh.check(); err != nil {
		return nil, err
	}
	var err error
	if l.carriage, err = p.carry(l.mesh); err != nil {
		return nil, err
	}
	l.stiffen()
	l.load, l.total, l.size, err = p.loads(l.mesh)
	return l, err
}

// stiffen works out the stiffness of every cell.
func (l *level) stiffen() {
	l.cells = make([]*[16][16]float64, len(l.wood))
	for i := range l.tx {
		for j := range l.ty {
			if l.has(i, j) {
				l.cells[l.cell(i, j)] = element{&l.tx[i], &l.ty[j], l.stiff}.matrix()
			}
		}
	}
}

// number gives every unknown its equation: those that move together share one, those that are held have
// none. The unknowns of a rail follow those of the node above.
func (l *level) number() {
	lead := l.leads()
	stopped := make([]bool, len(lead))
	for u, held := range l.held {
		stopped[lead[u]] = stopped[lead[u]] || held
	}
	for _, c := range l.contacts {
		if c.rail < 0 && c.spring == 0 && !c.open {
			stopped[lead[perNode*c.node+sag]] = true
		}
	}
	l.eq, l.first = make([]int, len(lead)), l.first[:0]
	for u := range l.eq {
		l.eq[u] = -1
	}
	give := func(u int) {
		if t := lead[u]; !stopped[t] && l.eq[t] < 0 {
			l.eq[t] = len(l.first)
			l.first = append(l.first, u)
		}
		l.eq[u] = l.eq[lead[u]]
	}
	above := l.railsAt()
	for n := range l.used {
		for u := range perNode {
			give(perNode*n + u)
		}
		for _, u := range above[n] {
			give(u)
			give(u + 1)
		}
	}
}

// leads returns for every unknown the one that stands for all that move together: an unknown of the plate.
func (l *level) leads() []int {
	lead := make([]int, len(l.held))
	for u := range lead {
		lead[u] = u
	}
	for _, j := range l.joined {
		lead[j[0]] = j[1]
	}
	for _, c := range l.contacts {
		if c.rail >= 0 && !c.open {
			lead[c.rail] = perNode*c.node + sag
		}
	}
	return lead
}

// railsAt returns by node the unknowns of rails under it.
func (l *level) railsAt() map[int][]int {
	out := map[int][]int{}
	for _, b := range l.beams {
		for k, n := range b.nodes {
			out[n] = append(out[n], b.first+2*k)
		}
	}
	return out
}

// solve finds the field with the contacts as they are.
func (l *level) solve() error {
	l.turns++
	l.number()
	l.field = make([]float64, len(l.eq))
	if len(l.first) == 0 {
		return nil
	}
	k := l.assemble()
	defer k.Release()
	f, err := k.Factor()
	if err != nil {
		return l.loose(err)
	}
	b := make([]float64, len(l.first))
	for u, v := range l.load {
		if l.eq[u] >= 0 {
			b[l.eq[u]] += v
		}
	}
	x := f.Solve(b)
	f.Release()
	for u, e := range l.eq {
		if e >= 0 {
			l.field[u] = x[e]
		}
	}
	return l.finite()
}

func (l *level) assemble() *band.Matrix {
	k := band.NewBanded(len(l.first), l.width())
	for i := range l.tx {
		for j := range l.ty {
			if l.has(i, j) {
				l.assembleCell(k, i, j)
			}
		}
	}
	for n := range l.beams {
		l.beams[n].assemble(k, l.eq)
	}
	for _, c := range l.contacts {
		l.assembleContact(k, c)
	}
	return k
}

// width returns the bandwidth: the largest distance of two equations that meet in a cell or in a span of a rail.
func (l *level) width() int {
	width := 0
	meet := func(unknowns []int) {
		lo, hi := len(l.first), 0
		for _, u := range unknowns {
			if e := l.eq[u]; e >= 0 {
				lo, hi = min(lo, e), max(hi, e)
			}
		}
		width = max(width, hi-lo)
	}
	for i := range l.tx {
		for j := range l.ty {
			if l.has(i, j) {
				raw := l.raw(i, j)
				meet(raw[:])
			}
		}
	}
	for _, b := range l.beams {
		for s := range len(b.nodes) - 1 {
			u := b.first + 2*s
			meet([]int{u, u + 1, u + 2, u + 3})
		}
	}
	for _, c := range l.contacts {
		if c.rail >= 0 {
			meet([]int{c.rail, perNode*c.node + sag})
		}
	}
	return width
}

func (l *level) assembleCell(k *band.Matrix, i, j int) {
	stiff := l.cells[l.cell(i, j)]
	raw := l.raw(i, j)
	for u := range raw {
		e := l.eq[raw[u]]
		if e < 0 {
			continue
		}
		for v := range u + 1 {
			k.Add(e, l.eq[raw[v]], stiff[u][v])
		}
	}
}

func (l *level) assembleContact(k *band.Matrix, c contact) {
	w := l.eq[perNode*c.node+sag]
	s := 0.0
	switch {
	case c.open:
		s = l.soft
	case c.spring > 0:
		s = c.spring
	}
	if s == 0 {
		return
	}
	k.Add(w, w, s)
	if c.rail >= 0 {
		r := l.eq[c.rail]
		k.Add(r, r, s)
		k.Add(w, r, -s)
	}
}

func (l *level) finite() error {
	for _, v := range l.field {
		if math.IsNaN(v) || math.Abs(v) > 1e100 {
			return errors.New("the plate bends without bound: its load is out of all proportion to its stiffness")
		}
	}
	return nil
}

// pull returns what holds a node up: its load less what the plate's own bending carries.
func (l *level) pull(node int) float64 {
	i, j := l.lines(node)
	w := perNode*node + sag
	sum := l.load[w]
	for _, c := range [][2]int{{i - 1, j - 1}, {i, j - 1}, {i - 1, j}, {i, j}} {
		if !l.has(c[0], c[1]) {
			continue
		}
		stiff := l.cells[l.cell(c[0], c[1])]
		raw := l.raw(c[0], c[1])
		for u := range raw {
			if raw[u] != w {
				continue
			}
			for v := range raw {
				sum -= stiff[u][v] * l.field[raw[v]]
			}
		}
	}
	return sum
}
