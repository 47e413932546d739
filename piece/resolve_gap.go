package piece

import (
	"fmt"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/gap"
	"rodwright/trade/wood"
)

var besideFormula = figure.Formula{
	Text:   "along = band + gap",
	Source: "common practice, no source",
	Range:  "wall of a notch along the grain, where neither wood nor steel moves",
}

var bandFormula = figure.Formula{
	Text:   "band = pipes × pitch",
	Source: "common practice, no source: a pipe that must point one way comes within half a pitch, and is set by measure within half a pitch",
}

// gaps are the distances from what passes a panel to the walls of its opening.
type gaps struct {
	low, high length.Length // across the grain, at the lower and the higher coordinate
	along     length.Length // along the grain
	inner     figure.Figure // towards the line the panel is held at
	outer     figure.Figure // away from it
	beside    figure.Figure // along the grain
	innerLow  bool          // the inner wall is at the lower coordinate
}

// gapsAt reckons the walls of an opening for something at a plan point, on a frame that may stand off by
// the band.
//
// Wood that grows damper pushes the inner wall, between the post and the line the panel is held at, towards
// the post; wood that dries pulls the outer wall to it. Steel and wood along the grain do not move. The
// movement that parts them counts as none.
func (r *rod) gapsAt(p *FlatPanel, at [2]length.Length, band figure.Figure, bandLength length.Length) (g gaps, err error) {
	working := r.shop.Settings.WorkingGap
	if p.Spec.Gap != nil {
		working = *p.Spec.Gap
	}
	d := p.across(at) - p.HeldAt
	g.innerLow = d >= 0
	wet, err := r.moves(p, d.Abs(), r.out.Air.WetMC)
	if err != nil {
		return g, err
	}
	dry, err := r.moves(p, d.Abs(), r.out.Air.DryMC)
	if err != nil {
		return g, err
	}
	walls := gap.Notch(0, dry.Value, wet.Value, bandLength, working)
	told := func(f figure.Figure, name string, moved figure.Figure) figure.Figure {
		f.Name, f.Inputs = name, append([]figure.Input{figure.InLength("d", d.Abs())}, f.Inputs...)
		return f.From(moved.Source).Assuming(moved.Assumed...).Assuming(band.Assumed...)
	}
	g.inner, g.outer = told(walls.Inner, "inner wall", wet), told(walls.Outer, "outer wall", dry)
	g.along = bandLength + working
	g.beside = figure.OfLength("wall along the grain", g.along, &besideFormula,
		figure.InLength("band", bandLength), figure.InLength("gap", working)).Assuming(band.Assumed...)
	g.low, g.high = length.FromMM(g.inner.Value), length.FromMM(g.outer.Value)
	if !g.innerLow {
		g.low, g.high = g.high, g.low
	}
	return g, nil
}

// moves returns how much the wood between the held line and a place d across the grain grows, in mm, from the
// day it is made until it has the given moisture.
func (r *rod) moves(p *FlatPanel, d length.Length, mc float64) (figure.Figure, error) {
	w := p.Spec.Wood
	if w == nil && p.Spec.Sheet == "" {
		w = &r.doc.Wood
	}
	still := figure.Of("change across the grain", 0, figure.MM, nil)
	if w == nil {
		return still.Assuming("sheet goods do not move in their plane"), nil
	}
	if d == 0 {
		return still, nil
	}
	cut, unsure := w.Cut, []string(nil)
	if cut == "" {
		cut, unsure = wood.Flat, []string{"how the boards are sawn is not known: reckoned as flat-sawn"}
	}
	f, err := wood.Most(w.Species, cut, d, w.Moisture, mc)
	if err != nil {
		return f, r.fault(p.Spec.Pos, "name a wood and a cut whose movement is known", "the movement of %s: %v", p.Name, err)
	}
	if !p.Fixed {
		unsure = append(unsure, p.Name+" lies loose: reckoned from its middle")
	}
	return f.Assuming(unsure...), nil
}

// frameBand returns how far the built frame may stand off at a post, against the joints that hold the
// panel: one pitch for every level pipe on the way from them, half for its pointing and half for setting it
// by measure; at least one.
func (r *rod) frameBand(i, stick int) (figure.Figure, length.Length) {
	s := &r.out.Sticks[stick]
	size := r.out.Nodes[s.A].Size
	pipes, joined := r.levelPipes(r.heldNodes(i), stick)
	n := max(1, pipes)
	band := size.Pitch * length.Length(n)
	f := figure.OfLength("frame band", band, &bandFormula, figure.In("pipes", float64(n), figure.Count), figure.InLength("pitch", size.Pitch))
	if !joined {
		f = f.Assuming(fmt.Sprintf("the %s is not joined by pipe to what holds %s: one pitch reckoned", s.Name, r.out.Panels[i].Name))
	}
	return f, band
}

// levelPipes returns the least number of pipes that are not upright on the way along the frame from any of
// the joints to a stick, and whether there is a way.
func (r *rod) levelPipes(from []int, stick int) (pipes int, joined bool) {
	cost := make([]int, len(r.out.Nodes))
	for i := range cost {
		cost[i] = -1
	}
	now := from
	for count := 0; len(now) > 0; count++ {
		var next []int
		for len(now) > 0 {
			n := now[len(now)-1]
			now = now[:len(now)-1]
			if cost[n] >= 0 {
				continue
			}
			cost[n] = count
			for _, s := range r.out.Nodes[n].Sticks {
				other := r.out.Sticks[s].A + r.out.Sticks[s].B - n
				if r.out.Sticks[s].Dir.upright() {
					now = append(now, other)
				} else {
					next = append(next, other)
				}
			}
		}
		now = next
	}
	a, b := cost[r.out.Sticks[stick].A], cost[r.out.Sticks[stick].B]
	switch {
	case a < 0:
		return b, b >= 0
	case b < 0:
		return a, true
	}
	return min(a, b), true
}
