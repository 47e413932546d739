package plate

import (
	"errors"
	"fmt"
	"math"

	"rodwright/mechanics/band"
)

// Unheld says that a plate is free to move.
type Unheld struct {
	X, Y float64 // where it moves most
	Text string
}

// Error says what moves and what would hold it.
func (u *Unheld) Error() string { return u.Text }

// loose says in words of the plate what the solver says of its unknowns.
func (l *level) loose(err error) error {
	var u *band.Unstable
	if !errors.As(err, &u) {
		return err
	}
	node := l.firstNode(u)
	x, y := l.at(node)
	return &Unheld{X: x, Y: y, Text: fmt.Sprintf("the plate is free to tip or drop near %.0f, %.0f mm: it needs supports that don't all stand on one line (three posts at least, or a held edge), under every piece of it", x, y)}
}

// firstNode returns the node whose sag takes the largest part in a motion.
func (l *level) firstNode(u *band.Unstable) int {
	node, top := 0, -1.0
	for e, raw := range l.first {
		if n := raw / perNode; n < len(l.used) && raw%perNode == sag && math.Abs(u.Motion[e]) > top*(1+1e-6) {
			node, top = n, math.Abs(u.Motion[e])
		}
	}
	return node
}

// patience is how many turns in which no fewer supports disagree are borne before they change one by one.
const patience = 5

// settle lets supports lift until all are consistent: none pulls that can't, and the plate sinks into none.
// All that disagree change at once; when they don't grow fewer, the first of them alone does until they do,
// which ends for every plate that is held (J. J. Júdice, F. M. Pires, A block principal pivoting algorithm for
// large-scale strictly monotone linear complementarity problems, Computers & Operations Research 21 (1994),
// p. 587). A plate that loses its hold on the way leans on springs so soft that they carry next to nothing,
// and must stand without them in the end.
func (l *level) settle() error {
	fewest, left := len(l.contacts)+1, patience
	for range 60 + 4*len(l.contacts) {
		if err := l.lean(); err != nil {
			return err
		}
		wrong := l.wrong()
		switch {
		case len(wrong) == 0:
			return l.stand()
		case len(wrong) < fewest:
			fewest, left = len(wrong), patience
		case left > 0:
			left--
		default:
			wrong = wrong[:1]
		}
		for _, k := range wrong {
			l.contacts[k].open = !l.contacts[k].open
		}
	}
	return errors.New("which supports lift can't be settled: the plate rocks between them")
}

// inherit lifts the contacts that lay nearest to lifted ones of the same support on a coarser mesh: most often
// they lift again.
func (l *level) inherit(before *level) {
	if !before.anyOpen() {
		return
	}
	for k := range l.contacts {
		c := &l.contacts[k]
		x, y := l.at(c.node)
		near := math.Inf(1)
		for _, b := range before.contacts {
			if b.owner != c.owner {
				continue
			}
			bx, by := before.at(b.node)
			if d := math.Hypot(x-bx, y-by); d < near {
				near, c.open = d, b.open && !c.twoSided
			}
		}
	}
}

// softness is that of the springs lent to lifted supports, of the stiffness of the plate itself.
const softness = 1e-5

// lean solves, with soft springs where the plate would not stand.
func (l *level) lean() error {
	l.soft = 0
	err := l.solve()
	var u *Unheld
	if !errors.As(err, &u) || !l.anyOpen() {
		return err
	}
	l.soft = softness * max(l.stiff.Dx, l.stiff.Dy) / (l.x[len(l.x)-1] * l.y[len(l.y)-1])
	return l.solve()
}

// stand reports a plate that only stands on soft springs.
func (l *level) stand() error {
	if l.soft == 0 {
		return nil
	}
	high, low := l.extremes()
	n := low
	if math.Abs(l.field[perNode*high+sag]) > math.Abs(l.field[perNode*low+sag]) {
		n = high
	}
	x, y := l.at(n)
	return &Unheld{X: x, Y: y, Text: fmt.Sprintf("the plate tips over under its load, most near %.0f, %.0f mm: supports lift and nothing holds them down; strap one or move them outwards", x, y)}
}

// extremes returns the nodes that lie highest and lowest.
func (l *level) extremes() (high, low int) {
	w := func(n int) float64 { return l.field[perNode*n+sag] }
	for n, used := range l.used {
		if !used {
			continue
		}
		if !l.used[low] || w(n) > w(low) {
			low = n
		}
		if !l.used[high] || w(n) < w(high) {
			high = n
		}
	}
	return high, low
}

func (l *level) anyOpen() bool {
	for _, c := range l.contacts {
		if c.open {
			return true
		}
	}
	return false
}

// wrong works out the forces and gaps of all contacts and returns those that can't be.
func (l *level) wrong() []int {
	l.weigh()
	deepest := 0.0
	for n := range l.used {
		deepest = max(deepest, math.Abs(l.field[perNode*n+sag]))
	}
	var out []int
	for k, c := range l.contacts {
		switch {
		case c.twoSided:
		case c.open && c.gap < -1e-7*deepest, !c.open && c.force < -1e-6*l.size:
			out = append(out, k)
		}
	}
	return out
}

// weigh works out the force and the gap of every contact.
func (l *level) weigh() {
	taken := map[int]float64{} // by node, from the unyielding ground
	for k := range l.contacts {
		c := &l.contacts[k]
		c.force, c.gap = 0, -l.field[perNode*c.node+sag]
		switch {
		case c.rail >= 0:
			c.gap += l.field[c.rail]
			if !c.open {
				c.force = l.beamOf(c.rail).pushed(l.field, c.rail)
			}
		case c.spring > 0 && !c.open:
			c.force = c.spring * l.field[perNode*c.node+sag]
			c.gap = 0
		}
		taken[c.node] += c.force
	}
	for k := range l.contacts {
		if c := &l.contacts[k]; c.rail < 0 && c.spring == 0 && !c.open {
			c.force = l.pull(c.node) - taken[c.node]
		}
	}
}

func (l *level) beamOf(unknown int) *beam {
	for n := range l.beams {
		if b := &l.beams[n]; unknown >= b.first && unknown < b.first+2*len(b.nodes) {
			return b
		}
	}
	return nil
}
