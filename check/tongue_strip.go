package check

import (
	"math"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/tongue"
)

// strip is wood that stands free between an opening and an edge or another opening, from the panel's left front corner.
type strip struct {
	min, max    [2]length.Length
	broad       int    // the axis along which its breadth lies
	both        bool   // held at both ends: beside a hole
	short       bool   // its grain runs across it
	why, beside string // the opening, and what it is beside
}

// tongue is the strip as a tongue of the given thickness.
func (s strip) tongue(thick length.Length) tongue.Tongue {
	along := 1 - s.broad
	return tongue.Tongue{Out: s.max[along] - s.min[along], Broad: s.max[s.broad] - s.min[s.broad], Thick: thick, AtBoth: s.both, IsShort: s.short}
}

func (s strip) mark(panel piece.FlatPanel) finding.Mark {
	mid := func(a int) float64 { return (s.min[a] + (s.max[a] - s.min[a]).Half()).MM() }
	return finding.Mark{At: [3]float64{panel.Min.X.MM() + mid(0), panel.Min.Y.MM() + mid(1), panel.Max.Z.MM()}, Text: "breaks here"}
}

// strips returns the wood on each side of every opening that goes through panel i, where some is left. What an opening
// cuts off wholly, from edge to edge, is no strip.
func (p *Piece) strips(i int) (out []strip) {
	panel := p.Panels[i]
	for j, f := range panel.Features {
		if f.Depth > 0 {
			continue
		}
		for broad := range 2 {
			for _, upper := range []bool{false, true} {
				if s, ok := beside(panel, j, broad, upper); ok {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// beside returns the strip on one side of opening j. It ends at the nearest other opening that it meets, else at the
// edge.
func beside(panel piece.FlatPanel, j, broad int, upper bool) (strip, bool) {
	size := [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y}
	f, along := panel.Features[j], 1-broad
	s := strip{min: f.Min, max: f.Max, broad: broad, short: (broad == 0) == panel.GrainX, why: f.Why, beside: "the edge"}
	if upper {
		s.min[broad], s.max[broad] = f.Max[broad], size[broad]
	} else {
		s.min[broad], s.max[broad] = 0, f.Min[broad]
	}
	round := f.Round
	for k, g := range panel.Features {
		from, to := max(f.Min[along], g.Min[along]), min(f.Max[along], g.Max[along])
		if k == j || g.Depth > 0 || from >= to {
			continue
		}
		switch near := s; {
		case upper && g.Min[broad] >= f.Max[broad] && g.Min[broad] < s.max[broad]:
			near.max[broad] = g.Min[broad]
			near.min[along], near.max[along] = from, to
			s, round = near, f.Round || g.Round
		case !upper && g.Max[broad] <= f.Min[broad] && g.Max[broad] > s.min[broad]:
			near.min[broad] = g.Max[broad]
			near.min[along], near.max[along] = from, to
			s, round = near, f.Round || g.Round
		default:
			continue
		}
		s.beside = otherName(f, g)
	}
	first, last := s.min[along] <= 0, s.max[along] >= size[along]
	s.both = !first && !last
	if s.both && round { // as the square inside the circle
		in := length.FromMM((s.max[along] - s.min[along]).MM() * (1 - math.Sqrt2/2) / 2)
		s.min[along], s.max[along] = s.min[along]+in, s.max[along]-in
	}
	return s, s.max[broad] > s.min[broad] && s.max[along] > s.min[along] && !(first && last)
}

// otherName names the opening beside an opening.
func otherName(f, g piece.Feature) string {
	if f.Why == g.Why {
		return "the next of " + g.Why
	}
	return "the opening " + g.Why
}
