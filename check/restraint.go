package check

import (
	"cmp"
	"math"
	"slices"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
)

// row is everything that is screwed to a panel along one line with its grain.
type row struct {
	at    length.Length // across the grain, in the piece
	holds []hold
}

// hold is one leg under or on a panel with the screws of its flange, or one rail with the screws of all its
// straps.
type hold struct {
	frame int
	rail  bool
	free  string // why it does not hold the panel against moving across its grain; empty where it does
	gauge int
	play  length.Length
	bears float64 // N that its screws bear sideways
	why   string  // that is not known; empty where it is
	tags  []string
	// how much its far end is moved by one newton, in mm: free to turn, and held against turning
	soft, stiff float64
}

// slots is the reason why slotted steel does not hold a panel.
const slots = "the steel's holes are slotted"

func (r row) tags() (out []string) {
	for _, h := range r.holds {
		out = append(out, h.tags...)
	}
	return out
}

// rows returns what holds panel i, from the lesser coordinate across its grain to the greater.
func (p *Piece) rows(i int) (out []row) {
	byRail := map[[2]int][]part.Fastener{} // straps on one rail along the grain share it
	var order [][2]int
	for n, f := range p.Parts.Fasteners {
		if f.Panel != i {
			continue
		}
		key := [2]int{n, -1}
		if f.Seat >= 0 && !leadsAcross(p.Panels[i], p.Sticks[p.Panels[i].Seats[f.Seat].Stick].Dir) {
			key = p.railOf(i, f.Seat)
		}
		if _, seen := byRail[key]; !seen {
			order = append(order, key)
		}
		byRail[key] = append(byRail[key], f)
	}
	for _, key := range order {
		fs := byRail[key]
		at := p.fastenedAt(i, fs[0])
		n := slices.IndexFunc(out, func(r row) bool { return r.at == at })
		if n < 0 {
			n = len(out)
			out = append(out, row{at: at})
		}
		out[n].holds = append(out[n].holds, p.hold(i, fs))
	}
	slices.SortStableFunc(out, func(a, b row) int { return cmp.Compare(a.at, b.at) })
	return out
}

// railOf names the rail that a strap is on, by the joints at its ends; the second number is never -1.
func (p *Piece) railOf(i, seat int) [2]int {
	a, b := p.span(p.Panels[i].Seats[seat].Stick)
	return [2]int{a.node, b.node}
}

// fastenedAt returns where a set of screws holds panel i, across its grain.
func (p *Piece) fastenedAt(i int, f part.Fastener) length.Length {
	panel := p.Panels[i]
	switch {
	case f.Node >= 0:
		at := p.Nodes[f.Node].At
		return across(panel, [2]length.Length{at.X, at.Y})
	case f.Seat >= 0:
		return across(panel, panel.Seats[f.Seat].At)
	}
	at := p.Feet[f.Foot].At
	return across(panel, [2]length.Length{at.X, at.Y})
}

// hold describes one leg, caster or rail that holds panel i with the given screws.
func (p *Piece) hold(i int, fs []part.Fastener) hold {
	f := fs[0]
	h := hold{gauge: f.Gauge, frame: -1, play: length.Max}
	for _, each := range fs {
		h.tags = append(h.tags, each.Holds)
		h.play = min(h.play, play(each))
		h.bears += p.bears(i, each, &h.why)
	}
	switch {
	case f.Slotted && p.chosen(f).Hole == 0: // the slot is as long as it must be
		h.free = slots
	case f.Foot >= 0:
		h.free = "casters and feet move with the panel"
	}
	switch {
	case f.Node >= 0:
		h.frame = p.frame[f.Node]
		h.soft, h.stiff = p.legGives(i, f.Node)
		if h.free == "" && math.IsInf(h.soft, 1) {
			h.free = "legs that nothing joins across the grain move with the panel"
		}
	case f.Seat >= 0:
		stick := p.Panels[i].Seats[f.Seat].Stick
		h.rail, h.frame = true, p.frame[p.Sticks[stick].A]
		h.soft, h.stiff = p.railGives(i, stick, fs)
		d := p.Sticks[stick].Dir
		switch {
		case h.free != "":
		case leadsAcross(p.Panels[i], d) && (d.X == 0 || d.Y == 0):
			h.free = "straps slide along pipes that lie across the grain"
		case math.IsInf(h.soft, 1):
			h.free = "rails whose posts nothing joins across the grain move with the panel"
		}
	}
	return h
}

// chosen returns what the document says of a set of screws: a hole or slot of its own, if any.
func (p *Piece) chosen(f part.Fastener) piece.Fastening {
	switch {
	case f.Node >= 0:
		return p.Doc.Joints.Flange
	case f.Foot >= 0:
		return p.Doc.Joints.Caster
	}
	return p.Doc.Joints.Strap
}

// play returns how far a screw can move in its hole from the middle.
func play(f part.Fastener) length.Length {
	s, err := screw.Lookup(f.Gauge)
	if err != nil || f.Hole <= s.Shank {
		return 0
	}
	return (f.Hole - s.Shank).Half()
}

// bears returns what a set of screws bears sideways, in newtons, and notes why where that is not known. A
// screw too short in the wood bears nothing.
func (p *Piece) bears(i int, f part.Fastener, why *string) float64 {
	sc, err := screw.Lookup(f.Gauge)
	if err != nil {
		*why = err.Error()
		return 0
	}
	in := min(f.Length-f.Grip, thickness(p.Panels[i]))
	if in < 4*sc.Shank {
		return 0
	}
	one, err := screw.Lateral(p.Panels[i].Spec.Wood.Species, sc.Shank, in)
	if err != nil {
		*why = err.Error()
		return 0
	}
	return one.Value * float64(f.Count)
}

// legFree and legHeld are n in δ = F·L³ ÷ (n·E·I): a leg whose far end is free to turn, or held.
const (
	legFree = 3.0
	legHeld = 12.0
)

// bends returns how much one end of a length of pipe is moved sideways against the other by one newton, in mm.
func bends(n float64, l length.Length, size pipe.Size) float64 {
	mm := l.MM()
	return mm * mm * mm / (n * pipe.SteelModulus * size.SecondMoment())
}
