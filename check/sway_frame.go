package check

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"sync"

	"rodwright/finding"
	beams "rodwright/mechanics/frame"
	"rodwright/piece"
)

// Pushed is a push test of the standing frame: a level push in the middle of a panel, and how far it moved there.
type Pushed struct {
	Panel   string
	Towards piece.PanelSide
	Newtons float64
	Moved   float64 // mm
	Number  int64   // of the entry that tells it
}

// racked is what the frame of one standing comes to.
type racked struct {
	k       *skeleton
	missing string
	loose   *beams.Mechanism
	sways   [2]swayed // along the piece and front to back; not there for what hangs on a wall
	strong  strong
	tested  float64 // how many times as stiff as the softest its joints are by a push test; 0 without
	past    bool    // the push test told of more, or less, than joints alone can give
}

// swayed is how far the top of a frame moves when it is pushed one way.
type swayed struct {
	there       bool
	soft, stiff float64 // mm, between the bounds of its joints; alike after a push test
	moved       []finding.Moved
	mend        string // where it moves too much, or nearly
}

// rack works out the frame of what stands by itself, once.
func (p *Piece) rack(n int) *racked {
	if p.racks == nil {
		p.racks = make([]*racked, len(p.standing))
	}
	if p.racks[n] == nil {
		k := p.skeletonOf(p.standing[n])
		compute := func() any { return k.rack() }
		if p.Keep != nil {
			fresh := compute
			compute = func() any { return p.Keep("frame", k.key(), fresh) }
		}
		r := *compute().(*racked) // what is kept is shared
		r.k = k
		p.racks[n] = &r
	}
	return p.racks[n]
}

// rack works out sway and strength between the bounds of the joints, or with the joints that a push test found.
func (k *skeleton) rack() *racked {
	r := &racked{missing: k.missing}
	r.strong = nothingYet()
	if r.missing != "" {
		return r
	}
	if len(k.floor) == 0 && !k.s.wall {
		r.missing = "what it stands on: name its feet, for example caps, or fix it to a wall"
		return r
	}
	bounds := []gives{softest, stiffest}
	if g, ok := k.tested(r); ok {
		bounds = []gives{g}
	}
	r.within(k.bothBounds(bounds))
	k.mends(r, bounds[0])
	return r
}

// limit is how far the top may sway, in mm.
func (k *skeleton) limit() float64 { return k.height() / k.p.Shop.Settings.SwayRatio }

// mends finds what mends each sway that is too large.
func (k *skeleton) mends(r *racked, g gives) {
	var wait sync.WaitGroup
	for axis := range r.sways {
		if s := &r.sways[axis]; s.there && s.soft > tightFrom*k.limit() {
			wait.Go(func() { s.mend = k.swayMend(g, s.soft, axis) })
		}
	}
	wait.Wait()
}

// tightFrom is the share of a limit from which a measured sway is tight.
const tightFrom = 0.8

// bound is what one bound of the joints comes to.
type bound struct {
	sways  [2]swayed
	strong strong
	err    error
}

// bothBounds works out the bounds at once: each is a frame of its own.
func (k *skeleton) bothBounds(of []gives) []bound {
	l := k.loading()
	out := make([]bound, len(of))
	var wait sync.WaitGroup
	for n := range of {
		wait.Go(func() { out[n] = k.bound(of[n], l) })
	}
	wait.Wait()
	return out
}

// within takes over what the bounds, the soft one first, come to.
func (r *racked) within(bounds []bound) {
	for n, b := range bounds {
		if b.err != nil {
			if !errors.As(b.err, &r.loose) {
				r.missing = b.err.Error()
			}
			return
		}
		for axis, s := range b.sways {
			if n > 0 {
				s.soft, s.moved = r.sways[axis].soft, r.sways[axis].moved
			}
			r.sways[axis] = s
		}
		r.strong.try(b.strong)
	}
}

// try keeps the worse of each kind.
func (s *strong) try(with strong) {
	s.root.try(with.root)
	s.flange.try(with.flange)
	s.strap.try(with.strap)
	s.foot.try(with.foot)
}

// nothingYet is what no case has told of.
func nothingYet() strong {
	return strong{root: worst{at: -1}, flange: worst{at: -1}, strap: worst{at: -1}, foot: worst{at: -1}}
}

// bound works out one bound of the joints.
func (k *skeleton) bound(g gives, l *loading) (b bound) {
	b.strong = nothingYet()
	m, err := beams.New(k.jointed(g))
	if err != nil {
		b.err = err
		return b
	}
	on, err := m.Mix(l.floor...)
	if err != nil {
		b.err = err
		return b
	}
	for axis := range b.sways {
		if k.s.wall {
			break
		}
		a, err := on.Solve("push", true, []beams.Share{{Of: alongIt + axis, By: k.push().Value}})
		if err != nil {
			b.err = err
			return b
		}
		moved := k.moved(&a, k.atTop(along(axis, k.push().Value)))
		b.sways[axis] = swayed{there: true, soft: moved, stiff: moved, moved: k.shape(&a)}
	}
	b.err = k.prove(g, on, l, &b.strong)
	return b
}

func along(axis int, force float64) (v beams.Vec) {
	v[axis] = force
	return v
}

// moved is how far a push moves where it acts, along itself: the work of its parts over the force.
func (k *skeleton) moved(a *beams.Answer, pushes []beams.Push) float64 {
	var whole beams.Vec
	work := 0.0
	for _, q := range pushes {
		stand, _ := a.Node(q.Node)
		for x := range whole {
			whole[x] += q.Force[x]
			work += q.Force[x]*stand.Move[x] + q.Moment[x]*stand.Move[x+3]
		}
	}
	return work / math.Sqrt(whole[0]*whole[0]+whole[1]*whole[1]+whole[2]*whole[2])
}

// shape are the sticks as they move: their ends, and points between on the curve that the ends' turning gives.
func (k *skeleton) shape(a *beams.Answer) []finding.Moved {
	var out []finding.Moved
	at := map[int]int{}
	for i, st := range k.sticks {
		if st < 0 {
			continue
		}
		n, seen := at[st]
		if !seen {
			n = len(out)
			at[st] = n
			out = append(out, finding.Moved{Tag: k.p.Parts.StickTags[st]})
		}
		k.bent(&out[n], a, i)
	}
	return out
}

// shapePoints is into how many parts a member is drawn.
const shapePoints = 4

// bent adds the points of one member: cubics between ends that move and turn.
func (k *skeleton) bent(m *finding.Moved, a *beams.Answer, member int) {
	from, _ := a.Node(k.frame.Members[member].From)
	to, _ := a.Node(k.frame.Members[member].To)
	p, q := k.place(from.Node), k.place(to.Node)
	run := beams.Vec{q[0] - p[0], q[1] - p[1], q[2] - p[2]}
	startTurn, endTurn := cross(three(from.Move, 3), run), cross(three(to.Move, 3), run)
	first := 0
	if len(m.At) > 0 {
		first = 1 // the last point of the member before
	}
	for n := first; n <= shapePoints; n++ {
		t := float64(n) / shapePoints
		var at, move [3]float64
		for x := range at {
			at[x] = p[x] + t*run[x]
			move[x] = (1-3*t*t+2*t*t*t)*from.Move[x] + (3*t*t-2*t*t*t)*to.Move[x] + (t-2*t*t+t*t*t)*startTurn[x] + (t*t*t-t*t)*endTurn[x]
		}
		m.At, m.Move = append(m.At, at), append(m.Move, move)
	}
}

func (k *skeleton) place(node string) beams.Vec {
	for i := range k.frame.Nodes {
		if k.frame.Nodes[i].Name == node {
			return k.frame.Nodes[i].At
		}
	}
	return beams.Vec{}
}

func three(of [6]float64, from int) beams.Vec { return beams.Vec{of[from], of[from+1], of[from+2]} }

// tested finds the joints of a frame that was pushed: one factor on all their springs with which it moves as it did. Of
// several tests that which tells of the softest joints counts.
func (k *skeleton) tested(r *racked) (gives, bool) {
	for _, t := range k.p.Pushes {
		pushes := k.testPush(t)
		if len(pushes) == 0 || !(t.Moved > 0) {
			continue
		}
		by, past := k.factor(pushes, t.Moved)
		if by > 0 && (r.tested == 0 || by < r.tested) {
			r.tested, r.past = by, past
		}
	}
	return stiffer(r.tested), r.tested > 0
}

func (k *skeleton) testPush(t Pushed) []beams.Push {
	for _, i := range k.s.panels {
		if k.p.Panels[i].Name == t.Panel {
			return k.spread(i, k.middle(i), times(towards(t.Towards), t.Newtons))
		}
	}
	return nil
}

// The factors between which the joints of a push test are looked for, as powers of two, and how closely.
const (
	leastFactor, mostFactor = -6.0, 10.0
	factorFine              = 0.01
)

// factor finds by bisection how many times as stiff as the softest the joints are. It reports true where no factor gives
// the movement: the nearest is returned then. Zero says that the frame can't be worked out.
func (k *skeleton) factor(pushes []beams.Push, want float64) (by float64, past bool) {
	moves := func(power float64) float64 {
		m, err := beams.New(k.jointed(stiffer(math.Exp2(power))))
		if err != nil {
			return math.NaN()
		}
		a, err := m.Solve(beams.Case{Name: "test", Pushes: pushes, HeldDown: true})
		if err != nil {
			return math.NaN()
		}
		return k.moved(&a[0], pushes)
	}
	low, high := leastFactor, mostFactor
	softly, stiffly := moves(low), moves(high)
	switch {
	case math.IsNaN(softly) || math.IsNaN(stiffly):
		return 0, false
	case want >= softly:
		return math.Exp2(low), true
	case want <= stiffly:
		return math.Exp2(high), true
	}
	for high-low > factorFine {
		middle := (low + high) / 2
		if moves(middle) > want {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Exp2((low + high) / 2), false
}

// key is all that the answer depends on.
func (k *skeleton) key() []byte {
	out := fmt.Appendf(nil, "%q %v %v %v %v %+v %v %v %v %s %s", k.missing, k.rolls, k.chocked, k.s.wall, k.height(), k.p.Pushes, k.p.Doc.Fineness, k.step(), k.limit(), k.p.Doc.Pipe.ID, k.exampleTest())
	put := func(vs ...float64) {
		for _, v := range vs {
			out = binary.LittleEndian.AppendUint64(out, math.Float64bits(v))
		}
	}
	for _, n := range k.frame.Nodes {
		out = append(append(out, n.Name...), 0)
		put(n.At[:]...)
		put(n.Hold[:]...)
	}
	for i, m := range k.frame.Members {
		out = append(append(append(append(out, m.From...), 0), m.To...), byte(k.ends[i][0]), byte(k.ends[i][1]))
		put(m.Section.E, m.Section.G, m.Section.Area, m.Section.IY, m.Section.IZ, m.Section.J, m.Start.RootY, m.End.RootY, float64(k.sticks[i]))
		put(m.Up[:]...)
	}
	for _, h := range k.holding() {
		put(float64(h.count), h.rim, h.circle, h.bears, h.withdraw, h.across)
	}
	l := k.loading()
	for _, c := range append(l.floor, l.wheels...) {
		out = fmt.Appendf(out, "%v", c.Shifts)
		for _, q := range c.Pushes {
			out = append(append(out, q.Node...), 0)
			put(q.Force[:]...)
			put(q.Moment[:]...)
		}
	}
	for _, c := range l.sums {
		out = fmt.Appendf(out, "%s %v %v", c.name, c.shares, c.shifts)
	}
	return fmt.Appendf(out, "%+v %v", k.frame.Panels, k.tagsOfSticks())
}

func (k *skeleton) tagsOfSticks() (out []string) {
	for _, i := range k.s.sticks {
		out = append(out, k.p.Parts.StickTags[i])
	}
	return out
}
