package check

import (
	"fmt"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// need is one distance of the frame that a panel depends on: how far it may be off before the panel binds or comes
// off what bears it.
type need struct {
	panel  int
	at     [2]int // joints, either of which the distance leads to
	axis   int    // 0 along the piece, 1 front to back
	allows length.Length
	what   string // what it is for, in words: the opening round a post
}

// needs returns every distance that a panel depends on.
func (p *Piece) needs() (out []need) {
	for i := range p.Panels {
		out = p.openingNeeds(out, i)
		out = p.seatNeeds(out, i)
	}
	return out
}

// openingNeeds adds the openings round posts: their walls leave room for the frame, and a working gap. The movement of
// the wood is in the walls besides.
func (p *Piece) openingNeeds(out []need, i int) []need {
	for _, f := range p.Panels[i].Features {
		if f.Stick < 0 || f.Kind != piece.NotchFeature && f.Kind != piece.HoleFeature || len(f.Walls) == 0 {
			continue
		}
		s := p.Sticks[f.Stick]
		for axis := range 2 {
			out = append(out, need{i, [2]int{s.A, s.B}, axis, wallInput(f, "band") + wallInput(f, "gap"), "the opening " + f.Why})
		}
	}
	return out
}

// seatNeeds adds the gaps at posts that a panel stands between, and by how much it overlaps what bears it.
func (p *Piece) seatNeeds(out []need, i int) []need {
	for _, s := range p.Panels[i].Seats {
		if s.Kind == piece.BetweenPosts && s.Stick >= 0 {
			if f := p.gapAt(i, s); f.Verdict != finding.Unknown {
				out = append(out, need{i, p.endsOf(s), p.outside(i, s.At), length.FromMM(f.Figure.Value), "the gap at the " + p.Sticks[s.Stick].Name})
			}
			continue
		}
		f, bears := p.reach(i, s)
		if !bears || f.Verdict == finding.Unknown || s.Node < 0 && s.Stick < 0 {
			continue
		}
		for axis := range 2 {
			if s.Kind == piece.OnRails && share(p.Sticks[s.Stick].Dir, axis) > 0 {
				continue // along a rail it may pass under the panel's edge
			}
			out = append(out, need{i, p.endsOf(s), axis, length.FromMM(slack(f)), fmt.Sprintf("its overlap on %s", p.seatName(s))})
		}
	}
	return out
}

// seatName names what bears a panel there.
func (p *Piece) seatName(s piece.PanelSeat) string {
	_, on, _ := p.bearing(s)
	return on
}

// endsOf returns the joints of a seat: a flange, or both ends of a pipe.
func (p *Piece) endsOf(s piece.PanelSeat) [2]int {
	if s.Node >= 0 {
		return [2]int{s.Node, s.Node}
	}
	return [2]int{p.Sticks[s.Stick].A, p.Sticks[s.Stick].B}
}

// outside says along which axis a plan point lies farther out of a panel.
func (p *Piece) outside(i int, at [2]length.Length) int {
	panel := p.Panels[i]
	if max(panel.Min.X-at[0], at[0]-panel.Max.X) >= max(panel.Min.Y-at[1], at[1]-panel.Max.Y) {
		return 0
	}
	return 1
}

// laidTo returns the joint that a panel is laid to: the first of the seats that hold it, as the line goes by that its
// movement is reckoned from, or of a loose panel the first rail; of a pipe the end at a post. What else holds it is screwed where it comes. -1
// where no joint bears it.
func (p *Piece) laidTo(i int) int {
	for _, holds := range []func(piece.PanelSeat) bool{
		func(s piece.PanelSeat) bool { return s.Kind == piece.OnPosts },
		func(s piece.PanelSeat) bool { return s.Kind == piece.UnderPosts },
		func(s piece.PanelSeat) bool { return s.Strap },
		func(s piece.PanelSeat) bool { return s.Kind == piece.OnRails },
	} {
		for _, s := range p.Panels[i].Seats {
			if (s.Node >= 0 || s.Stick >= 0) && holds(s) {
				ends := p.endsOf(s)
				if p.post(ends[0]) < 0 && p.post(ends[1]) >= 0 {
					return ends[1]
				}
				return ends[0]
			}
		}
	}
	return -1
}
