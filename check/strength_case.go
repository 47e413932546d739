package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/length"
	beams "rodwright/mechanics/frame"
	"rodwright/piece"
	"rodwright/trade/stability"
)

// The loads that furniture must bear besides what it holds: common practice, no source.
const (
	pushShare   = 0.1  // a level push at the top, of the weight of the piece with all it holds
	leastPush   = 50.0 // N, of that push: a hand laid on it
	leanWeight  = 250  // N on an edge: a grown person who leans there
	unevenFloor = 3.0  // mm, by which a floor may lie lower under one foot
	levelled    = 1.0  // mm, of that when its feet have been levelled
)

// loading is all that comes upon a frame: what is worked out once, and the sums of it that are judged.
type loading struct {
	floor, wheels []beams.Case // summed on the floor, and on wheels that nothing brakes
	sums          []burden
}

// burden is a sum of loads, in words.
type burden struct {
	name    string
	shares  []beams.Share
	shifts  []beams.Shift // of the floor under a foot
	wheels  bool          // on wheels that nothing brakes
	inHands bool          // the floor bears nothing
}

// The first loads of every frame: its weight, what it holds, and level pushes of 1 N at the top along it and front to back.
const (
	itsWeight = iota
	allHeld
	alongIt
	acrossIt
)

// sidesOf are the directions of the pushes, in the order they are tried.
var sidesOf = []piece.PanelSide{piece.LeftSide, piece.RightSide, piece.FrontSide, piece.BackSide}

// loading brings together all loads that the strength is judged by. Each of the things that come upon the piece is tried
// empty and with everything it holds.
func (k *skeleton) loading() *loading {
	first := []beams.Case{{Pushes: k.weights}, {Pushes: k.held}, {Pushes: k.atTop(along(0, 1))}, {Pushes: k.atTop(along(1, 1))}}
	l := &loading{floor: first}
	l.add(burden{name: withAll, shares: full()})
	push := k.push().Value
	for _, side := range sidesOf {
		l.both(k, "pushed at the top to the "+string(side), pushedTo(side, push))
	}
	if top := k.topPanels(); len(top) > 0 {
		for _, side := range sidesOf {
			name := fmt.Sprintf("leant on at the %s edge of %s", side, k.p.Panels[top[0]].Name)
			l.both(k, name, l.load(k.spread(top[0], k.edge(top[0], side), beams.Vec{0, 0, -leanWeight})))
		}
	}
	for _, own := range k.p.Doc.Loads {
		if pushes := k.load(own); len(pushes) > 0 {
			l.both(k, own.Name, l.load(pushes))
		}
	}
	k.footOff(l)
	k.rolled(l, first)
	k.lift(l)
	return l
}

const withAll = "with everything it holds"

func full(more ...beams.Share) []beams.Share {
	return append([]beams.Share{{Of: itsWeight, By: 1}, {Of: allHeld, By: 1}}, more...)
}

// pushedTo is a push at the top to a side.
func pushedTo(side piece.PanelSide, force float64) beams.Share {
	d := towards(side)
	if d[0] != 0 {
		return beams.Share{Of: alongIt, By: d[0] * force}
	}
	return beams.Share{Of: acrossIt, By: d[1] * force}
}

func (l *loading) add(b burden) { l.sums = append(l.sums, b) }

// load takes up one more load.
func (l *loading) load(pushes []beams.Push) beams.Share {
	l.floor = append(l.floor, beams.Case{Pushes: pushes})
	return beams.Share{Of: len(l.floor) - 1, By: 1}
}

// both tries a load with everything held and on the empty piece.
func (l *loading) both(k *skeleton, name string, load beams.Share) {
	l.add(burden{name: name + ", " + withAll, shares: full(load)})
	if len(k.held) > 0 {
		l.add(burden{name: name + ", empty", shares: []beams.Share{{Of: itsWeight, By: 1}, load}})
	}
}

// push is the level push at the top.
func (k *skeleton) push() figure.Figure {
	kg := k.p.ownKg(k.s)
	for _, h := range k.p.things(k.s) {
		kg += h.MassKg
	}
	w := kg * gravity
	return figure.Of("push at the top", max(pushShare*w, leastPush), figure.N, &pushFormula, figure.In("W", w, figure.N))
}

var pushFormula = figure.Formula{
	Text: "F = max(0.1·W, 50 N)", Source: "common practice, no source", Range: "a level push at the top; W the weight of the piece with all it holds",
}

// load is one of the maker's own loads.
func (k *skeleton) load(l piece.Load) []beams.Push {
	for _, i := range k.s.panels {
		if k.p.Panels[i].Name != l.On {
			continue
		}
		at := k.edge(i, l.Edge)
		if l.At != nil {
			lo := k.p.Panels[i].Min
			at = vec(piece.Vec{X: lo.X + l.At[0], Y: lo.Y + l.At[1]})
		}
		if l.PushN > 0 {
			return k.spread(i, at, times(towards(l.Towards), l.PushN))
		}
		return k.spread(i, at, down(l.MassKg))
	}
	return nil
}

// footOff lets the floor lie lower under one foot after the other; feet that are levelled stand almost even.
func (k *skeleton) footOff(l *loading) {
	if len(k.floor) < 4 {
		return
	}
	every := (len(k.s.feet) + mostLifting - 1) / mostLifting
	for n, i := range k.s.feet {
		at, ok := k.floor[i]
		if !ok || n%every > 0 {
			continue
		}
		by := k.uneven(i)
		b := burden{name: fmt.Sprintf("the floor %s lower under its %s, %s", k.p.Doc.Fineness.Finer().Show(length.FromMM(by)), k.p.Feet[i].Name, withAll), shares: full()}
		lower := beams.Shift{Node: k.frame.Nodes[at].Name, Freedom: beams.AlongZ, By: -by}
		if k.frame.Nodes[at].Floor {
			b.shifts = []beams.Shift{lower}
		} else {
			l.floor = append(l.floor, beams.Case{Shifts: []beams.Shift{lower}})
			b.shares = append(b.shares, beams.Share{Of: len(l.floor) - 1, By: 1})
		}
		l.add(b)
	}
}

func (k *skeleton) uneven(foot int) float64 {
	if k.p.Feet[foot].Spec.Kind == piece.Leveller {
		return levelled
	}
	return unevenFloor
}

// rolled lets the wheels of each side come to a step: hands push at the top, the step pushes back at the wheels.
func (k *skeleton) rolled(l *loading, first []beams.Case) {
	spec := k.p.Doc.Feet
	if !rolls(spec.Kind) || !(spec.Wheel > 0) || k.s.wall {
		return
	}
	share, err := stability.StepPush(spec.Wheel, k.step())
	if err != nil {
		return
	}
	weight := 0.0
	for _, q := range append(append([]beams.Push(nil), k.weights...), k.held...) {
		weight -= q.Force[2]
	}
	force := share.Value * weight / 2
	l.wheels = append([]beams.Case(nil), first...)
	for _, side := range sidesOf {
		lead := k.leading(towards(side))
		back := beams.Case{}
		for _, at := range lead {
			back.Pushes = append(back.Pushes, beams.Push{Node: k.frame.Nodes[at].Name, Force: times(towards(side), -force/float64(len(lead)))})
		}
		l.wheels = append(l.wheels, back)
		l.add(burden{
			name:   "rolled over a step to the " + string(side) + ", " + withAll,
			shares: full(pushedTo(side, force), beams.Share{Of: len(l.wheels) - 1, By: 1}), wheels: true,
		})
	}
}

// step is the threshold of the way, else the highest step that the wheel takes without trouble.
func (k *skeleton) step() length.Length {
	if t := k.p.Doc.Place.Threshold; t > 0 {
		return t
	}
	return k.p.Doc.Feet.Wheel.Scale(5, 100)
}

// leading are the floor nodes of the wheels that come first.
func (k *skeleton) leading(d beams.Vec) (out []int) {
	far := func(at int) float64 { return k.frame.Nodes[at].At[0]*d[0] + k.frame.Nodes[at].At[1]*d[1] }
	first, last := math.Inf(-1), math.Inf(1)
	for _, i := range k.s.feet {
		if at, ok := k.floor[i]; ok {
			first, last = max(first, far(at)), min(last, far(at))
		}
	}
	for _, i := range k.s.feet {
		if at, ok := k.floor[i]; ok && far(at) > first-(first-last)/10-nearEnough {
			out = append(out, at)
		}
	}
	return out
}

// lift takes the empty piece by its highest panel on which it hangs in balance: hands bear its weight there, and the floor
// bears nothing.
func (k *skeleton) lift(l *loading) {
	if k.s.wall || len(k.floor) == 0 {
		return
	}
	weight, at := k.centre()
	panels := slices.Clone(k.s.panels)
	slices.SortStableFunc(panels, func(i, j int) int { return cmp.Compare(k.p.Panels[j].Max.Z, k.p.Panels[i].Max.Z) })
	for _, i := range panels {
		if hands, ok := k.handsAt(k.bears[i].nodes, at, weight); ok {
			l.add(burden{name: "lifted by " + k.p.Panels[i].Name + ", empty", inHands: true, shares: []beams.Share{{Of: itsWeight, By: 1}, l.load(hands)}})
			return
		}
	}
}

// centre is the weight of the empty piece, N, and where it acts in plan.
func (k *skeleton) centre() (weight float64, at beams.Vec) {
	places := map[string]beams.Vec{}
	for _, n := range k.frame.Nodes {
		places[n.Name] = n.At
	}
	for _, q := range k.weights {
		n := places[q.Node]
		weight -= q.Force[2]
		at[0] += -q.Force[2]*n[0] - q.Moment[1]
		at[1] += -q.Force[2]*n[1] + q.Moment[0]
	}
	if weight <= 0 {
		return 0, beams.Vec{}
	}
	return weight, times(at, 1/weight)
}

// handsAt are hands at nodes that bear a weight whose middle is at a place in plan; false where they can't in balance.
func (k *skeleton) handsAt(nodes []int, at beams.Vec, weight float64) ([]beams.Push, bool) {
	if len(nodes) < 3 || weight <= 0 {
		return nil, false
	}
	shares := k.shares(nodes, at)
	out := make([]beams.Push, len(nodes))
	for i, n := range nodes {
		q := k.frame.Nodes[n]
		at[0], at[1] = at[0]-shares[i]*q.At[0], at[1]-shares[i]*q.At[1]
		out[i] = beams.Push{Node: q.Name, Force: beams.Vec{0, 0, weight * shares[i]}}
	}
	return out, math.Hypot(at[0], at[1]) < nearEnough
}
