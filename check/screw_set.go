package check

import (
	"math"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/caster"
	"rodwright/trade/screw"
	"rodwright/trade/strap"
)

// screwSet is one flange, strap or caster's plate with its screws in a panel, in plan, mm.
type screwSet struct {
	part.Fastener
	at    [2]float64
	round float64      // radius of the circle of its screws, however it is turned; 0 where their points are known
	spots [][2]float64 // their points, where they are known
	above bool         // the screws come from above
	shank float64
	what  string // the flange, strap or caster in words
}

// plateMargin is the wood screw's distance from the edges of a caster's plate, 3/8 in: from memory.
const plateMargin = 3 * length.Inch / 8

// screwSets returns what is screwed to panel i, in the order of the fasteners.
func (p *Piece) screwSets(i int) (out []screwSet) {
	for _, f := range p.Parts.Fasteners {
		sc, err := screw.Lookup(f.Gauge)
		if f.Panel != i || err != nil {
			continue
		}
		s := screwSet{Fastener: f, shank: sc.Shank.MM()}
		switch {
		case f.Node >= 0:
			n := p.Nodes[f.Node]
			s.at, s.round = plan(n.At), n.Fitting.HoleCircle.Half().MM()
			s.above, s.what = n.At.Z >= p.Panels[i].Max.Z, "the flange at the "+n.Place
		case f.Seat >= 0:
			s.strapSpots(p, p.Panels[i].Seats[f.Seat])
		default:
			foot := p.Feet[f.Foot]
			s.at, s.what = plan(foot.At), "the plate of "+foot.Name
			if class, err := caster.Nearest(caster.Plate, foot.Spec.Wheel); err == nil {
				s.round = math.Hypot((class.Plate[0].Half() - plateMargin).MM(), (class.Plate[1].Half() - plateMargin).MM())
			}
		}
		out = append(out, s)
	}
	return out
}

func plan(at piece.Vec) [2]float64 { return [2]float64{at.X.MM(), at.Y.MM()} }

// strapSpots sets the two screws of a strap, which stand across its rail.
func (s *screwSet) strapSpots(p *Piece, seat piece.PanelSeat) {
	rail := p.Sticks[seat.Stick]
	s.at = [2]float64{seat.At[0].MM(), seat.At[1].MM()}
	s.what = "the strap on " + rail.Name
	d := [2]float64{float64(rail.Dir.X), float64(rail.Dir.Y)}
	l := math.Hypot(d[0], d[1])
	if rail.Section.Pipe == nil || !(l > 0) {
		return
	}
	st, err := strap.Lookup(rail.Section.Pipe.ID)
	if err != nil {
		return
	}
	half := st.HoleSpacing.Half().MM() / l
	for _, side := range [2]float64{-half, half} {
		s.spots = append(s.spots, [2]float64{s.at[0] - side*d[1], s.at[1] + side*d[0]})
	}
}

// points returns the known points, or the middle of the circle that they stand on.
func (s screwSet) points() [][2]float64 {
	if len(s.spots) > 0 {
		return s.spots
	}
	return [][2]float64{s.at}
}

// apart returns how near, in mm, a screw of one set can stand to a screw of another, however both are turned.
func apart(a, b screwSet) float64 {
	least := math.Inf(1)
	for _, q := range a.points() {
		for _, r := range b.points() {
			d := math.Hypot(q[0]-r[0], q[1]-r[1])
			least = min(least, max(0, d-a.round-b.round, math.Abs(a.round-b.round)-d))
		}
	}
	return least
}

// turnedBest returns the share of its radius by which a circle of n screws reaches towards an edge when it is
// turned to keep off it: cos(π/n).
func (s screwSet) turnedBest() float64 {
	if s.Count < 2 {
		return 1
	}
	return max(0, math.Cos(math.Pi/float64(s.Count)))
}
