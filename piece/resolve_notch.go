package piece

import (
	"slices"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/pipe"
)

// holeFrom is how far from every edge a post must stand for the panel to get a hole round it instead of a
// notch, unless the document chooses: 6 in, common practice, no source.
const holeFrom = 6 * length.Inch

// cutPanels cuts every panel: openings round posts, pockets over bands, then the document's holes.
func (r *rod) cutPanels() error {
	for i := range r.out.Panels {
		p := &r.out.Panels[i]
		for _, s := range p.Seats {
			if s.Kind != AroundPosts {
				continue
			}
			if err := r.openRound(i, s); err != nil {
				return err
			}
		}
		if err := r.relieve(i); err != nil {
			return err
		}
		if err := r.bore(p); err != nil {
			return err
		}
	}
	return nil
}

// passing is what goes through a panel's thickness at a post.
type passing struct {
	section length.Length // the largest section
	node    int           // the fitting it is the band of; -1 for plain pipe
}

// sectionIn returns the largest section of a post between two heights: the band of a fitting that reaches
// between them, the plate of a flange, else the pipe.
func (r *rod) sectionIn(run int, from, to length.Length) passing {
	best := passing{r.runs[run].size.OD, -1}
	for i, of := range r.stickRun {
		if of != run {
			continue
		}
		for _, k := range []int{r.out.Sticks[i].A, r.out.Sticks[i].B} {
			n := &r.out.Nodes[k]
			lo, hi := n.upright()
			size := n.Fitting.Band
			if n.Kind == pipe.Flange {
				size = n.Fitting.Plate
			}
			if lo < to && hi > from && size > best.section {
				best = passing{size, k}
			}
		}
	}
	return best
}

// upright returns from where to where a joint's metal reaches up along a post: to the end of its outlets up
// and down, else half of its band.
func (n *Node) upright() (lo, hi length.Length) {
	half := n.Fitting.Band.Half()
	if n.Fitting.Kind.Outlets() <= 1 {
		half = 0
	}
	lo, hi = n.At.Z-half, n.At.Z+half
	if slices.Contains(n.Dirs, Dir{0, 0, 1}) {
		hi = n.At.Z + n.Fitting.CentreToEnd
	}
	if slices.Contains(n.Dirs, Dir{0, 0, -1}) {
		lo = n.At.Z - n.Fitting.CentreToEnd
	}
	return lo, hi
}

// openRound cuts the notch or hole round one post.
func (r *rod) openRound(i int, s PanelSeat) error {
	p := &r.out.Panels[i]
	band, bandLength := r.frameBand(i, s.Stick)
	g, err := r.gapsAt(p, s.At, band, bandLength)
	if err != nil {
		return err
	}
	what := r.sectionIn(r.stickRun[s.Stick], p.Min.Z, p.Max.Z)
	u := &r.runs[r.stickRun[s.Stick]]
	f := Feature{Name: u.name, Node: what.node, Stick: s.Stick, Section: what.section, Why: "round " + u.name, Pos: p.Spec.Pos}
	opens := r.opening(p, u.group, s.At)
	if opens == NoSide {
		half := what.section.Half() + max(g.low, g.high, g.along)
		f.Kind, f.Round, f.Radius = HoleFeature, true, half
		f.Min, f.Max = p.square(s.At, half)
		f.Walls = []figure.Figure{g.inner, g.outer, g.beside}
	} else {
		f.Kind, f.Opens = NotchFeature, opens
		f.Min, f.Max = p.rectangle(s.At, what.section.Half(), g)
		p.openTo(&f, g)
		f.Radius = min(r.shop.Settings.InsideRadius, (f.Max[0] - f.Min[0]).Half(), (f.Max[1] - f.Min[1]).Half())
	}
	p.Features = append(p.Features, f)
	return nil
}

// square returns the square round a plan point, measured from the panel's left front corner.
func (p *FlatPanel) square(at [2]length.Length, half length.Length) (lo, hi [2]length.Length) {
	x, y := at[0]-p.Min.X, at[1]-p.Min.Y
	return [2]length.Length{x - half, y - half}, [2]length.Length{x + half, y + half}
}

// rectangle returns the opening round a section at a plan point, measured from the panel's left front
// corner: the section and the gap to every wall.
func (p *FlatPanel) rectangle(at [2]length.Length, half length.Length, g gaps) (lo, hi [2]length.Length) {
	lo, hi = p.square(at, half)
	across, along := 0, 1
	if p.GrainX {
		across, along = 1, 0
	}
	lo[across] -= g.low
	hi[across] += g.high
	lo[along] -= g.along
	hi[along] += g.along
	return lo, hi
}

// openTo carries a notch's rectangle to the edge it opens to, keeps it within the panel, and notes the
// walls that are left.
func (p *FlatPanel) openTo(f *Feature, g gaps) {
	size := [2]length.Length{p.Max.X - p.Min.X, p.Max.Y - p.Min.Y}
	across := 0
	if p.GrainX {
		across = 1
	}
	axis, end := 0, f.Opens == RightSide || f.Opens == BackSide
	if f.Opens == FrontSide || f.Opens == BackSide {
		axis = 1
	}
	if end {
		f.Max[axis] = size[axis]
	} else {
		f.Min[axis] = 0
	}
	for k := range 2 {
		f.Min[k], f.Max[k] = max(0, f.Min[k]), min(size[k], f.Max[k])
	}
	if axis != across || g.innerLow == end {
		f.Walls = append(f.Walls, g.inner)
	}
	if axis != across || g.innerLow != end {
		f.Walls = append(f.Walls, g.outer)
	}
	f.Walls = append(f.Walls, g.beside)
}

// opening returns the edge that the opening round a post is open to, or none for a hole: as the document
// chooses, else the nearest edge. Of edges equally near one along the grain goes first, as the notch then
// leaves the panel's ends whole, and the back before the front, the left before the right. A post more than
// 6 in from every edge gets a hole.
func (r *rod) opening(p *FlatPanel, group string, at [2]length.Length) PanelSide {
	switch side := p.Spec.Opens[group]; side {
	case "front", "back", "left", "right":
		return PanelSide(side)
	case "hole":
		return NoSide
	}
	type edge struct {
		side PanelSide
		from length.Length
	}
	deep := []edge{{BackSide, p.Max.Y - at[1]}, {FrontSide, at[1] - p.Min.Y}}
	wide := []edge{{LeftSide, at[0] - p.Min.X}, {RightSide, p.Max.X - at[0]}}
	order := append(deep, wide...)
	if !p.GrainX {
		order = append(wide, deep...)
	}
	best := order[0]
	for _, e := range order[1:] {
		if e.from < best.from {
			best = e
		}
	}
	if best.from > holeFrom {
		return NoSide
	}
	return best.side
}
