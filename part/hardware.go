package part

import (
	"math"
	"slices"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
)

// seatRef is a seat of a panel.
type seatRef struct{ panel, seat int }

// hardware takes off what is neither wood nor pipe. On the list screws come first, by gauge and length in
// the order they are first needed; then casters and feet, straps, and the small parts that fix them.
func (t *takeOff) hardware() error {
	feet, err := t.feet()
	if err != nil {
		return err
	}
	straps, at, err := t.straps()
	if err != nil {
		return err
	}
	if err := t.fasteners(); err != nil {
		return err
	}
	small, err := t.smallParts()
	if err != nil {
		return err
	}
	parts := slices.Concat(t.screws(), feet, straps, small)
	t.list.FootTags = make([]string, len(t.r.Feet))
	for i, f := range t.r.Feet {
		if f.Node >= 0 {
			t.list.FootTags[i] = t.list.NodeTags[f.Node]
		}
	}
	t.add("H", parts, t.list.FootTags)
	t.tagSeats(parts, at)
	t.nameFasteners(parts)
	return nil
}

// screws counts the screws of all sets by gauge and length.
func (t *takeOff) screws() []Part {
	var parts []Part
	for _, f := range t.list.Fasteners {
		at := slices.IndexFunc(parts, func(p Part) bool { return p.Gauge == f.Gauge && p.Long == f.Length })
		if at < 0 {
			at = len(parts)
			parts = append(parts, Part{
				Kind: Hardware, Name: shop.ScrewItem(f.Gauge, f.Length), Gauge: f.Gauge, Long: f.Length,
				MassKg: screwMass(f.Gauge, f.Length), Assumed: []string{"screws weigh as plain steel of their shank's diameter"},
			})
		}
		parts[at].Count += f.Count
	}
	return parts
}

// screwMass is the mass in kg of a cylinder of the screw's shank: thread and head make up for each other.
func screwMass(gauge int, l length.Length) float64 {
	s, err := screw.Lookup(gauge)
	if err != nil {
		return 0 // fasten has refused it before
	}
	d := s.Shank.MM()
	return math.Pi / 4 * d * d * l.MM() * pipe.SteelDensity / 1e9
}

// straps counts the straps by size of pipe, and returns the seats they stand at, in the same order.
func (t *takeOff) straps() (parts []Part, at [][]seatRef, err error) {
	for i, p := range t.r.Panels {
		for k, seat := range p.Seats {
			if !seat.Strap {
				continue
			}
			s, err := t.strapAt(seat)
			if err != nil {
				return nil, nil, err
			}
			size := *t.r.Sticks[seat.Stick].Section.Pipe
			n := slices.IndexFunc(parts, func(p Part) bool { return p.Material == size.ID })
			if n < 0 {
				n = len(parts)
				// Round half the pipe, and from hole to hole beside it with half an inch beyond each.
				flat := s.HoleSpacing - size.OD + length.Inch
				long := flat.MM() + math.Pi/2*size.OD.MM()
				parts, at = append(parts, Part{
					Kind: Hardware, Name: shop.StrapItem(size), Material: size.ID,
					MassKg:  long * s.Width.MM() * s.Thick.MM() * pipe.SteelDensity / 1e9,
					Assumed: words(s.Assumed, "straps weigh as the strip they are bent from"),
				}), append(at, nil)
			}
			parts[n].Count++
			at[n] = append(at[n], seatRef{i, k})
		}
	}
	return parts, at, nil
}

// tagSeats gives every strapped seat the tag of its strap.
func (t *takeOff) tagSeats(parts []Part, at [][]seatRef) {
	t.list.SeatTags = make([][]string, len(t.r.Panels))
	for i, p := range t.r.Panels {
		t.list.SeatTags[i] = make([]string, len(p.Seats))
	}
	for n, refs := range at {
		size := *t.r.Sticks[t.r.Panels[refs[0].panel].Seats[refs[0].seat].Stick].Section.Pipe
		i := slices.IndexFunc(parts, func(p Part) bool { return p.Name == shop.StrapItem(size) })
		for k, ref := range at[n] {
			t.list.SeatTags[ref.panel][ref.seat] = parts[i].Tags[k]
		}
	}
}

// nameFasteners tells each set of screws which hardware it is and what it holds.
func (t *takeOff) nameFasteners(parts []Part) {
	for i := range t.list.Fasteners {
		f := &t.list.Fasteners[i]
		n := slices.IndexFunc(parts, func(p Part) bool { return p.Gauge == f.Gauge && p.Long == f.Length })
		f.Screws = parts[n].Tag
		switch {
		case f.Node >= 0:
			f.Holds = t.list.NodeTags[f.Node]
		case f.Foot >= 0:
			f.Holds = t.list.FootTags[f.Foot]
		default:
			f.Holds = t.list.SeatTags[f.Panel][f.Seat]
		}
	}
}

// small is a part that fixes others: an insert for a stem, an anchor for a wall screw.
func (t *takeOff) small(name string, count int, massKg float64, assumed ...string) []Part {
	if count == 0 {
		return nil
	}
	return []Part{{
		Kind: Hardware, Name: name, Count: count, MassKg: massKg,
		Assumed: append(assumed, name+": weight from memory"),
	}}
}

// The masses of small parts, from memory.
const (
	insertKg  = 0.012
	nutKg     = 0.025 // lock nut and washer of a stem
	boltKg    = 0.030 // short bolt with nut and washer
	anchorKg  = 0.005
	levelKg   = 0.10 // levelling foot
	casterKg3 = 0.55 // caster of a 3 in wheel; others go with the square of the wheel
)

// smallParts counts what fixes stems, plates and wall screws.
//
//   - a stem under a panel, or one fixed by an insert: a threaded insert
//   - a stem through a drilled cap: a lock nut and washer
//   - a caster's plate on a flange: a bolt with its nut in each hole of the plate
//   - a wall screw in masonry: an anchor
//
// Common practice, no source.
func (t *takeOff) smallParts() ([]Part, error) {
	inserts, nuts, bolts := 0, 0, 0
	var spec *piece.Feet
	for _, f := range t.r.Feet {
		if !stemmed(f.Spec.Kind) && f.Spec.Kind != piece.PlateCaster {
			continue
		}
		spec = f.Spec
		class, err := classOf(f.Spec)
		switch {
		case err != nil:
			return nil, t.wrong(f.Spec.Pos, err.Error(), "")
		case f.Spec.Kind == piece.PlateCaster && f.Panel < 0:
			bolts += class.Holes
		case f.Spec.Kind == piece.PlateCaster:
		case f.Panel >= 0 || f.Spec.Fixed == "insert":
			inserts++
		default:
			nuts++
		}
	}
	anchors := 0
	for _, f := range t.list.Fasteners {
		if f.Panel < 0 && t.doc.Place.WallKind == "masonry" {
			anchors += f.Count
		}
	}
	thread, bolt := t.stemThread(spec)
	return slices.Concat(
		t.small("threaded insert "+thread, inserts, insertKg),
		t.small("lock nut and washer "+thread, nuts, nutKg),
		t.small("bolt "+bolt+" × 1 in with nut", bolts, boltKg, "holes of plate and flange are drilled to match"),
		t.small("wall anchor", anchors, anchorKg, "anchors to suit the wall; local practice decides what holds"),
	), nil
}
