package check

import (
	"math"
	"slices"
	"strconv"

	"rodwright/length"
	beams "rodwright/mechanics/frame"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// skeleton is what stands by itself as a frame of beams: sticks are members between joints that give, panels keep their
// shape in their face and bend out of it as strips of wood, feet stand on the floor.
//
// Nodes of the frame stand on the axes of pipes; those of a panel in its middle plane, above what bears it. A stub, short
// and stiff, leads from a flange, strap or foot to the panel: what it bears is what the screws bear.
type skeleton struct {
	p       *Piece
	s       standing
	frame   beams.Frame
	ends    [][2]joint // of each member
	sticks  []int      // of each member, the stick it is part of; -1 for none
	stubs   []stub
	at      map[int]int  // frame node of each node of the piece
	bears   map[int]rest // of each panel, what bears it
	floor   map[int]int  // frame node at which each foot touches the floor
	weights []beams.Push // of the parts
	held    []beams.Push // of what it holds
	rolls   bool         // some foot is a caster that no brake holds
	chocked bool         // too few brakes: all wheels are taken as held
	missing string       // what must be known first
}

// joint says how a member meets its node.
type joint uint8

const (
	firm        joint = iota
	threaded          // a pipe in its fitting
	screwed           // a flange or plate on wood
	walled            // a pipe in a flange on a wall: one behind the other
	strapped          // a stub from a pipe in a strap to its panel
	strapAcross       // a strip of a panel that crosses the pipe it is strapped to
	strapAlong        // a strip of a panel along the pipe it is strapped to
)

// stub leads from a flange, strap or foot to its panel.
type stub struct {
	member    int  // of the frame; -1 where the panel shares its node with the pipe
	fastener  int  // of the parts' fasteners, -1 where none
	turned    bool // it leads from the panel's face away from the panel: a push along it is a pull on the screws
	strap     bool
	at, stick int // of a shared node: the node and the pipe
}

// rest are the frame nodes that bear a panel.
type rest struct {
	nodes []int
	fast  bool // it is screwed or strapped there, else it lies loose
}

// near enough is how close two places of a skeleton may lie and still be one, in mm.
const nearEnough = 2

// skeletonOf builds the frame of what stands by itself.
func (p *Piece) skeletonOf(s standing) *skeleton {
	k := &skeleton{p: p, s: s, at: map[int]int{}, bears: map[int]rest{}, floor: map[int]int{}}
	for _, i := range s.nodes {
		k.at[i] = k.node("n"+strconv.Itoa(i), vec(p.Nodes[i].At))
		if p.Nodes[i].ToWall {
			k.frame.Nodes[k.at[i]].Hold = beams.Clamped
		}
	}
	cuts := k.cut()
	for _, i := range s.panels {
		k.panel(i, cuts)
	}
	k.stand()
	k.weigh()
	return k
}

func vec(at piece.Vec) beams.Vec { return beams.Vec{at.X.MM(), at.Y.MM(), at.Z.MM()} }

func (k *skeleton) node(name string, at beams.Vec) int {
	k.frame.Nodes = append(k.frame.Nodes, beams.Node{Name: name, At: at})
	return len(k.frame.Nodes) - 1
}

func (k *skeleton) member(from, to int, c beams.Section, up beams.Vec, stick int, ends [2]joint) int {
	n := len(k.frame.Members)
	k.frame.Members = append(k.frame.Members, beams.Member{
		Name: "m" + strconv.Itoa(n), From: k.frame.Nodes[from].Name, To: k.frame.Nodes[to].Name, Up: up, Section: c,
	})
	k.ends, k.sticks = append(k.ends, ends), append(k.sticks, stick)
	return n
}

// cut parts the sticks where panels bear on them, and returns the frame node of each such place: panel, then seat.
func (k *skeleton) cut() map[[2]int]int {
	type place struct {
		far  float64
		seat [2]int
	}
	on := map[int][]place{}
	for _, i := range k.s.panels {
		fast := k.p.isFast(i)
		for n, seat := range k.p.Panels[i].Seats {
			if seat.Kind != piece.OnRails || seat.Stick < 0 || fast && !seat.Strap {
				continue
			}
			a := k.p.Nodes[k.p.Sticks[seat.Stick].A].At
			far := math.Hypot((seat.At[0] - a.X).MM(), (seat.At[1] - a.Y).MM())
			on[seat.Stick] = append(on[seat.Stick], place{far, [2]int{i, n}})
		}
	}
	at := map[[2]int]int{}
	for _, i := range k.s.sticks {
		places := on[i]
		slices.SortStableFunc(places, func(a, b place) int {
			switch {
			case a.far < b.far:
				return -1
			case a.far > b.far:
				return 1
			}
			return 0
		})
		far := make([]float64, len(places))
		for n, q := range places {
			far[n] = q.far
		}
		for n, node := range k.stick(i, far) {
			at[places[n].seat] = node
		}
	}
	return at
}

// isFast reports whether a panel is screwed or strapped to what bears it.
func (p *Piece) isFast(i int) bool {
	return slices.ContainsFunc(p.Panels[i].Seats, func(s piece.PanelSeat) bool {
		return s.Strap || s.Node >= 0 && (s.Kind == piece.OnPosts || s.Kind == piece.UnderPosts) || s.Kind == piece.OnFeet
	})
}

// stick adds the members of a stick, parted at the given distances from its lower, left or front end, in order; it
// returns the node at each of them.
func (k *skeleton) stick(i int, far []float64) []int {
	st := k.p.Sticks[i]
	if st.Section.Pipe == nil {
		k.missing = "the section of " + st.Name
		return make([]int, len(far))
	}
	size := *st.Section.Pipe
	c := beams.Pipe(pipe.SteelModulus, steelShear, size.OD.MM(), size.Bore.MM())
	from, to := k.at[st.A], k.at[st.B]
	a, b := k.frame.Nodes[from].At, k.frame.Nodes[to].At
	long := distance(a, b)
	out := make([]int, len(far))
	last, lastFar, start := from, 0.0, k.jointAt(st.A)
	for n, f := range far {
		switch {
		case f-lastFar < nearEnough:
			out[n] = last
			continue
		case long-f < nearEnough:
			out[n] = to
			continue
		}
		at := beams.Vec{}
		for x := range at {
			at[x] = a[x] + (b[x]-a[x])*f/long
		}
		out[n] = k.node("r"+strconv.Itoa(i)+"."+strconv.Itoa(n), at)
		k.pipe(last, out[n], c, i, [2]joint{start, firm}, size)
		last, lastFar, start = out[n], f, firm
	}
	k.pipe(last, to, c, i, [2]joint{start, k.jointAt(st.B)}, size)
	return out
}

// steelShear is the shear modulus of steel, MPa: E ÷ 2(1 + 0.3).
const steelShear = pipe.SteelModulus / 2.6

// pipe adds a length of pipe; where it is threaded into something its section is that at the thread's root.
func (k *skeleton) pipe(from, to int, c beams.Section, stick int, ends [2]joint, size pipe.Size) {
	m := &k.frame.Members[k.member(from, to, c, beams.Vec{}, stick, ends)]
	root := size.RootModulus()
	for n, e := range []*beams.End{&m.Start, &m.End} {
		if ends[n] != firm {
			e.RootY, e.RootZ = root, root
		}
	}
}

// jointAt is how a stick meets a node.
func (k *skeleton) jointAt(node int) joint {
	switch n := k.p.Nodes[node]; {
	case n.Kind == pipe.None:
		return firm
	case n.ToWall:
		return walled
	}
	return threaded
}

func distance(a, b beams.Vec) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

// stout is the section of a stub and of the stem of a foot: steel as thick as an arm, which hardly gives.
var stout = beams.Pipe(pipe.SteelModulus, steelShear, 50, 0)

// stand lets the feet stand on the floor. Casters roll unless a brake holds them; where fewer than two brakes hold a
// piece that stands on casters alone, all wheels are taken as chocked.
func (k *skeleton) stand() {
	held := 0
	for _, i := range k.s.feet {
		if f := k.p.Feet[i]; !rolls(f.Spec.Kind) || f.Locked {
			held++
		} else {
			k.rolls = true
		}
	}
	k.chocked = k.rolls && held < 2 && !k.s.wall
	for _, i := range k.s.feet {
		f := k.p.Feet[i]
		at, ok := k.footNode(i)
		if !ok {
			continue
		}
		n := &k.frame.Nodes[at]
		k.floor[i] = at
		n.Floor, n.Hold[beams.AlongZ] = len(k.s.feet) <= mostLifting, beams.Rigid
		if !rolls(f.Spec.Kind) || f.Locked || k.chocked {
			n.Hold[beams.AlongX], n.Hold[beams.AlongY] = beams.Rigid, beams.Rigid
		}
	}
}

// mostLifting is how many feet a piece may have for each to be let off the floor. A longer row is reckoned with feet that
// the floor holds: its weight does, and to try every foot would take the square of their number.
const mostLifting = 12

// footNode returns the node at which a foot touches the floor: under its post, or under its panel.
func (k *skeleton) footNode(i int) (int, bool) {
	f := k.p.Feet[i]
	floor := vec(f.At)
	floor[2] = 0
	switch {
	case f.Node >= 0:
		top, ok := k.at[f.Node]
		if !ok || f.At.Z.MM() < nearEnough {
			return top, ok
		}
		at := k.node("f"+strconv.Itoa(i), floor)
		k.member(top, at, stout, beams.Vec{}, -1, [2]joint{})
		return at, true
	case f.Panel >= 0:
		at := k.node("f"+strconv.Itoa(i), floor)
		top := k.nearestOf(f.Panel, floor)
		if top < 0 {
			return 0, false
		}
		m := k.member(top, at, stout, beams.Vec{}, -1, [2]joint{screwed})
		k.stubs = append(k.stubs, stub{member: m, fastener: k.p.fastener(f.Panel, -1, -1, i)})
		return at, true
	}
	return 0, false
}

// nearestOf is the node of a panel nearest in plan; -1 where nothing bears the panel.
func (k *skeleton) nearestOf(panel int, at beams.Vec) int {
	best, least := -1, math.Inf(1)
	for _, n := range k.bears[panel].nodes {
		q := k.frame.Nodes[n].At
		if d := math.Hypot(q[0]-at[0], q[1]-at[1]); d < least {
			best, least = n, d
		}
	}
	return best
}

// fastener finds the screws of a flange, strap or foot; -1 where there are none.
func (p *Piece) fastener(panel, node, seat, foot int) int {
	for i, f := range p.Parts.Fasteners {
		if f.Panel != panel {
			continue
		}
		if node >= 0 && f.Node == node || seat >= 0 && f.Seat == seat || foot >= 0 && f.Foot == foot {
			return i
		}
	}
	return -1
}

// topPanels are the highest panels that anything bears: they are pushed at. None means the highest nodes are.
func (k *skeleton) topPanels() (out []int) {
	top := length.Length(0)
	for _, i := range k.s.panels {
		if z := k.p.Panels[i].Max.Z; len(k.bears[i].nodes) > 0 && z > top {
			top = z
		}
	}
	for _, i := range k.s.panels {
		if k.p.Panels[i].Max.Z == top && len(k.bears[i].nodes) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// height is that of what is pushed at above the floor, in mm.
func (k *skeleton) height() float64 {
	if top := k.topPanels(); len(top) > 0 {
		return k.p.Panels[top[0]].Max.Z.MM()
	}
	z := 0.0
	for _, n := range k.frame.Nodes {
		z = max(z, n.At[2])
	}
	return z
}
