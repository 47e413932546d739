package part

import (
	"cmp"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/caster"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
	"rodwright/trade/strap"
)

// WallScrew is the length of a screw through a flange into a wall where the maker names none, 2 1/2 in:
// through half an inch of lining and the flange, and an inch and a half and more into the stud. Common
// practice, no source; what holds in the wall at hand is for local practice to say.
const WallScrew = 5 * length.Inch / 2

// casterPlate is the thickness of a caster's plate under the screw head, 1/8 in, from memory.
const casterPlate = length.Inch / 8

// usualGauge is the wood screw for steel whose own screw nobody knows, No. 10: common practice, no source.
const usualGauge = 10

// fasteners lists every set of screws: flanges in the order of the nodes, straps in the order of panels and
// seats, then casters.
func (t *takeOff) fasteners() error {
	for _, step := range []func() error{t.flangeScrews, t.strapScrews, t.casterScrews} {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

func (t *takeOff) flangeScrews() error {
	for i, n := range t.r.Nodes {
		if n.Kind != pipe.Flange || n.Panel < 0 && !n.ToWall {
			continue
		}
		f, err := t.fitting(i, n.Size)
		if err != nil {
			return err
		}
		set := Fastener{
			Panel: n.Panel, Node: i, Seat: -1, Foot: -1, Count: f.Holes, Gauge: f.ScrewGauge,
			Grip: f.PlateThick, Hole: f.Hole, Assumed: words(f.Assumed),
		}
		chosen := t.doc.Joints.Flange
		if n.ToWall {
			set.Panel = -1
			chosen = t.doc.Joints.WallFlange
		}
		if err := t.fasten(set, chosen); err != nil {
			return err
		}
	}
	return nil
}

func (t *takeOff) strapScrews() error {
	for i, p := range t.r.Panels {
		for k, seat := range p.Seats {
			if !seat.Strap {
				continue
			}
			s, err := t.strapAt(seat)
			if err != nil {
				return err
			}
			set := Fastener{
				Panel: i, Node: -1, Seat: k, Foot: -1, Count: 2, Gauge: s.ScrewGauge,
				Grip: s.Thick, Hole: s.Hole, Assumed: words(s.Assumed),
			}
			if err := t.fasten(set, t.doc.Joints.Strap); err != nil {
				return err
			}
		}
	}
	return nil
}

// strapAt returns the strap round the rail of a seat.
func (t *takeOff) strapAt(seat piece.PanelSeat) (strap.Strap, error) {
	rail := t.r.Sticks[seat.Stick]
	if rail.Section.Pipe == nil {
		return strap.Strap{}, t.wrong(rail.Pos, rail.Name+" is no pipe", "give it a size of pipe, or let the panel lie loose on it")
	}
	s, err := strap.Lookup(rail.Section.Pipe.ID)
	if err != nil {
		return s, t.wrong(rail.Pos, rail.Name+": "+err.Error(), "choose a size of pipe that straps are sold for, or write straps: 0")
	}
	return s, nil
}

func (t *takeOff) casterScrews() error {
	for i, f := range t.r.Feet {
		if f.Panel < 0 || f.Spec.Kind != piece.PlateCaster {
			continue
		}
		class, err := caster.Nearest(caster.Plate, f.Spec.Wheel)
		if err != nil {
			return t.wrong(f.Spec.Pos, err.Error(), "")
		}
		set := Fastener{
			Panel: f.Panel, Node: -1, Seat: -1, Foot: i, Count: class.Holes, Gauge: class.ScrewGauge,
			Grip: casterPlate, Assumed: words(class.Assumed, "caster plate 1/8 in thick, from memory; measure yours"),
		}
		if err := t.fasten(set, t.doc.Joints.Caster); err != nil {
			return err
		}
	}
	return nil
}

// fasten settles the screw of a set: the maker's choice, else the gauge of the steel and the longest screw
// that is sold and does not come through.
func (t *takeOff) fasten(set Fastener, chosen piece.Fastening) error {
	set.Gauge = cmp.Or(chosen.Gauge, set.Gauge, usualGauge)
	if _, err := screw.Lookup(set.Gauge); err != nil {
		return t.wrong(chosen.Pos, err.Error(), "write the number of a wood screw, for example 10")
	}
	set.Slotted, set.Hole = chosen.Slotted, cmp.Or(chosen.Hole, set.Hole)
	set.Length, set.Fits = t.screwLength(set, chosen.Length)
	if set.Panel < 0 && chosen.Length == 0 {
		set.Assumed = append(set.Assumed, "screws of "+length.Sixteenth.Text(WallScrew)+" into the wall, common practice; local practice decides what holds")
	}
	t.list.Fasteners = append(t.list.Fasteners, set)
	return nil
}

// screwLength returns the length of a set's screws, and whether such a screw keeps the shop's allowance to
// the far face. Where none that is sold does, it is the shortest that reaches the wood.
func (t *takeOff) screwLength(set Fastener, chosen length.Length) (length.Length, bool) {
	if set.Panel < 0 {
		return cmp.Or(chosen, WallScrew), true
	}
	p := t.r.Panels[set.Panel]
	room := p.Max.Z - p.Min.Z
	if allowance := t.s.Settings.ScrewAllowance; allowance > 0 {
		room += screw.Skin - allowance // LongestFor keeps the trade's skin; the shop may keep another
	}
	if chosen > 0 {
		return chosen, chosen > set.Grip && chosen <= set.Grip+room-screw.Skin
	}
	if l, ok := screw.LongestFor(set.Grip, room); ok {
		return l, true
	}
	for _, l := range screw.StockLengths() {
		if l > set.Grip {
			return l, false
		}
	}
	return screw.StockLengths()[0], false
}
