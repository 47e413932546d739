package check

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	beams "rodwright/mechanics/frame"
	"rodwright/piece"
	bend "rodwright/trade/plate"
)

// panel adds a panel: a node above each flange, strap and foot that holds it, all of which move as one in its face, and
// strips of wood between them. A loose panel only weighs on what it lies on.
func (k *skeleton) panel(i int, cuts map[[2]int]int) {
	flat := &k.p.Panels[i]
	if !k.p.isFast(i) {
		var r rest
		for n, seat := range flat.Seats {
			if seat.Kind == piece.OnRails && seat.Stick >= 0 {
				r.nodes = append(r.nodes, cuts[[2]int{i, n}])
			}
		}
		r.nodes = once(r.nodes)
		k.bears[i] = r
		return
	}
	b := &boarding{skeleton: k, panel: i, plane: ((flat.Min.Z + flat.Max.Z).Half()).MM(), pipes: map[int]piece.Dir{}}
	b.lower(cuts)
	for n, seat := range flat.Seats {
		b.seat(n, seat, cuts)
	}
	if len(b.nodes) > 1 {
		names := make([]string, len(b.nodes))
		for n, at := range b.nodes {
			names[n] = k.frame.Nodes[at].Name
		}
		k.frame.Panels = append(k.frame.Panels, beams.Panel{Name: flat.Name, Nodes: names, Normal: beams.Vec{0, 0, 1}})
	}
	b.strips()
	k.bears[i] = rest{b.nodes, true}
}

// once returns numbers in order, each once.
func once(of []int) []int {
	out := slices.Clone(of)
	slices.Sort(out)
	return slices.Compact(out)
}

// boarding is a panel in the making.
type boarding struct {
	*skeleton
	panel int
	plane float64
	nodes []int
	pipes map[int]piece.Dir // of the panel's nodes that are on a pipe: where that leads
}

// lower takes the axes of the pipes on which a panel is strapped for its plane.
func (b *boarding) lower(cuts map[[2]int]int) {
	for n, seat := range b.p.Panels[b.panel].Seats {
		if at, ok := cuts[[2]int{b.panel, n}]; ok && seat.Strap {
			b.plane = b.frame.Nodes[at].At[2]
			return
		}
	}
}

// over returns the panel's node above a place in plan, a new one where there is none yet.
func (b *boarding) over(x, y float64) int {
	if n := b.near(x, y); n >= 0 {
		return n
	}
	n := b.node("p"+strconv.Itoa(b.panel)+"."+strconv.Itoa(len(b.nodes)), beams.Vec{x, y, b.plane})
	b.nodes = append(b.nodes, n)
	return n
}

// near returns the panel's node at a place in plan; -1 where there is none.
func (b *boarding) near(x, y float64) int {
	for _, n := range b.nodes {
		if at := b.frame.Nodes[n].At; math.Hypot(at[0]-x, at[1]-y) < nearEnough {
			return n
		}
	}
	return -1
}

// seat joins the panel to one place that holds it.
func (b *boarding) seat(n int, seat piece.PanelSeat, cuts map[[2]int]int) {
	switch {
	case seat.Kind == piece.OnFeet && seat.Foot >= 0:
		at := b.p.Feet[seat.Foot].At
		b.over(at.X.MM(), at.Y.MM()) // its foot finds the node
	case seat.Node >= 0 && (seat.Kind == piece.OnPosts || seat.Kind == piece.UnderPosts):
		at, ok := b.at[seat.Node]
		if !ok {
			return
		}
		from := b.frame.Nodes[at].At
		m := b.member(at, b.over(from[0], from[1]), stout, beams.Vec{}, -1, [2]joint{screwed})
		turned := (seat.Kind == piece.OnPosts) == (b.plane < from[2])
		b.stubs = append(b.stubs, stub{member: m, fastener: b.p.fastener(b.panel, seat.Node, -1, -1), turned: turned})
	case seat.Strap && seat.Stick >= 0:
		b.strap(n, seat, cuts)
	}
}

// strap lets the panel share a node with the pipe that it is strapped to: where a pipe of another size lies at another
// height, a stub leads there.
func (b *boarding) strap(n int, seat piece.PanelSeat, cuts map[[2]int]int) {
	at, ok := cuts[[2]int{b.panel, n}]
	d := b.p.Sticks[seat.Stick].Dir
	if !ok || d.X == 0 && d.Y == 0 {
		return
	}
	q := b.frame.Nodes[at].At
	fast := b.p.fastener(b.panel, -1, n, -1)
	switch top := b.near(q[0], q[1]); {
	case math.Abs(q[2]-b.plane) > nearEnough:
		along := beams.Vec{float64(d.X), float64(d.Y), 0} // so that own z of the stub is the pipe's axis
		m := b.member(at, b.over(q[0], q[1]), stout, along, -1, [2]joint{strapped})
		b.stubs = append(b.stubs, stub{member: m, fastener: fast, strap: true})
	case top < 0:
		if math.Abs(q[2]-b.plane) > 0 {
			b.frame.Nodes[at].At[2] = b.plane
		}
		b.nodes = append(b.nodes, at)
		b.pipes[at] = d
		b.stubs = append(b.stubs, stub{member: -1, at: at, fastener: fast, strap: true, stick: seat.Stick})
	}
}

// strips puts strips of the panel between its nodes, along rows and columns, each as wide as its share of the panel; what
// these leave apart is joined by the shortest.
func (b *boarding) strips() {
	if len(b.nodes) < 2 {
		return
	}
	stuff, _, err := b.p.stuffOf(b.panel)
	if err != nil {
		b.missing = cmp.Or(b.missing, err.Error())
		return
	}
	flat := &b.p.Panels[b.panel]
	size := [2]float64{(flat.Max.X - flat.Min.X).MM(), (flat.Max.Y - flat.Min.Y).MM()}
	joined := newForest(len(b.nodes))
	for axis := range 2 {
		rows := b.rows(1-axis, size[1-axis]/10)
		wide := size[1-axis] / float64(len(rows))
		for _, row := range rows {
			slices.SortFunc(row, func(i, j int) int {
				return cmp.Compare(b.frame.Nodes[b.nodes[i]].At[axis], b.frame.Nodes[b.nodes[j]].At[axis])
			})
			for n := 1; n < len(row); n++ {
				joined.join(row[n-1], row[n])
				b.strip(row[n-1], row[n], wide, stuff)
			}
		}
	}
	for i, j, ok := b.apart(joined); ok; i, j, ok = b.apart(joined) {
		joined.join(i, j)
		b.strip(i, j, min(size[0], size[1])/2, stuff)
	}
}

// rows sorts the panel's nodes into rows of about the same coordinate along an axis.
func (b *boarding) rows(axis int, tolerance float64) (out [][]int) {
	order := make([]int, len(b.nodes))
	for i := range order {
		order[i] = i
	}
	at := func(i int) float64 { return b.frame.Nodes[b.nodes[i]].At[axis] }
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(at(i), at(j)) })
	for _, i := range order {
		if n := len(out); n > 0 && at(i)-at(out[n-1][0]) <= tolerance {
			out[n-1] = append(out[n-1], i)
			continue
		}
		out = append(out, []int{i})
	}
	return out
}

// apart returns the two nodes nearest to each other that no strips join.
func (b *boarding) apart(joined forest) (i, j int, ok bool) {
	least := math.Inf(1)
	for p := range b.nodes {
		for q := range p {
			if joined.root(p) == joined.root(q) {
				continue
			}
			if d := distance(b.frame.Nodes[b.nodes[p]].At, b.frame.Nodes[b.nodes[q]].At); d < least {
				i, j, least, ok = q, p, d, true
			}
		}
	}
	return i, j, ok
}

// strip adds a strip of the panel between two of its nodes. Its modulus follows from the angle to the grain by Hankinson's
// formula; half of its stiffness in twisting is left to the strips that cross it.
func (b *boarding) strip(i, j int, wide float64, stuff bend.Stuff) {
	from, to := b.frame.Nodes[b.nodes[i]].At, b.frame.Nodes[b.nodes[j]].At
	grain := 1
	if b.p.Panels[b.panel].GrainX {
		grain = 0
	}
	cos := (to[grain] - from[grain]) / distance(from, to)
	e := stuff.EL * stuff.ET / (stuff.EL*(1-cos*cos) + stuff.ET*cos*cos)
	flat := &b.p.Panels[b.panel]
	c := beams.Rectangle(e, stuff.GLT, max(wide, nearEnough), (flat.Max.Z - flat.Min.Z).MM())
	c.J /= 2
	ends := [2]joint{b.onPipe(i, from, to), b.onPipe(j, from, to)}
	b.member(b.nodes[i], b.nodes[j], c, beams.Vec{}, -1, ends)
}

// onPipe is how a strip meets the panel's node: on a pipe it turns about that as a strap lets it.
func (b *boarding) onPipe(i int, from, to beams.Vec) joint {
	d, ok := b.pipes[b.nodes[i]]
	if !ok {
		return firm
	}
	far := distance(from, to) * math.Hypot(float64(d.X), float64(d.Y))
	if math.Abs((to[0]-from[0])*float64(d.X)+(to[1]-from[1])*float64(d.Y)) > far/2 {
		return strapAlong
	}
	return strapAcross
}
