package check

import (
	"math"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/strap"
)

// woodRound returns the least wood between opening j of panel i and an edge, where its profile ends; another
// opening; or what is screwed to the panel: and which of them it is.
func (p *Piece) woodRound(i, j int) (length.Length, string) {
	panel := p.Panels[i]
	f := panel.Features[j]
	left, beside := p.toEdge(panel, f), "to the panel's edge"
	for k, g := range panel.Features {
		if k == j || g.Depth > 0 {
			continue
		}
		if l := between(f, g); l < left {
			left, beside = l, "to "+openingName(g)
		}
	}
	for _, s := range panel.Seats {
		plate, on, ok := p.plateOn(panel, s)
		if !ok {
			continue
		}
		if l := between(f, plate); l < left {
			left, beside = l, "to "+on
		}
	}
	return left, beside
}

// plateOn returns what is screwed to a panel there as an area of it, and its name: a flange, a caster's plate, a strap
// with its screws. It reports false where nothing is screwed.
func (p *Piece) plateOn(panel piece.FlatPanel, s piece.PanelSeat) (plate piece.Feature, on string, ok bool) {
	r, on, ok := p.bearing(s)
	half := [2]length.Length{r, r}
	if ok && s.Kind == piece.OnRails {
		stick := p.Sticks[s.Stick]
		held, err := strap.Lookup(stick.Section.Pipe.ID)
		if !s.Strap || err != nil {
			return plate, on, false
		}
		half = [2]length.Length{held.Width.Half(), (held.HoleSpacing + held.Width).Half()}
		if stick.Dir.X == 0 {
			half[0], half[1] = half[1], half[0]
		}
		on = "the strap on " + on
	}
	plate.Round = s.Kind != piece.OnFeet && s.Kind != piece.OnRails
	for a, at := range [2]length.Length{s.At[0] - panel.Min.X, s.At[1] - panel.Min.Y} {
		plate.Min[a], plate.Max[a] = at-half[a], at+half[a]
	}
	return plate, on, ok
}

// toEdge returns the wood between an opening and the nearest edge, its profile taken off.
func (p *Piece) toEdge(panel piece.FlatPanel, f piece.Feature) length.Length {
	left := map[string]length.Length{
		"left": f.Min[0], "front": f.Min[1],
		"right": panel.Max.X - panel.Min.X - f.Max[0], "back": panel.Max.Y - panel.Min.Y - f.Max[1],
	}
	for _, e := range panel.Edges {
		left[e.Side] -= e.Size
	}
	return min(left["left"], left["right"], left["front"], left["back"])
}

func openingName(f piece.Feature) string {
	if f.Stick >= 0 {
		return "the opening " + f.Why
	}
	return "the next of " + f.Why
}

// between returns the distance between two openings: circles between their rims, others between their
// rectangles; zero or less where they run into each other.
func between(f, g piece.Feature) length.Length {
	fr, fc := roundOff(f)
	gr, gc := roundOff(g)
	dx := max(fc[0].from-gc[0].to, gc[0].from-fc[0].to, 0).MM()
	dy := max(fc[1].from-gc[1].to, gc[1].from-fc[1].to, 0).MM()
	return length.FromMM(math.Hypot(dx, dy)) - fr - gr
}

type stretch struct{ from, to length.Length }

// roundOff returns a circle as its radius round a point, a rectangle as itself with no radius.
func roundOff(f piece.Feature) (length.Length, [2]stretch) {
	var r length.Length
	if f.Round {
		r = (f.Max[0] - f.Min[0]).Half()
	}
	var box [2]stretch
	for a := range box {
		box[a] = stretch{f.Min[a] + r, f.Max[a] - r}
	}
	return r, box
}
