package check

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/wood"
)

// season is how far a panel's wood moves over a distance across the grain between the day it is made and
// the driest and the wettest time of the year; growth is positive.
type season struct {
	Dry, Wet figure.Figure
}

// figures returns both movements, or none where nothing moves.
func (s season) figures() []figure.Figure {
	if s.Dry.Missing() {
		return nil
	}
	return []figure.Figure{s.Dry, s.Wet}
}

// most returns the greater of the two movements, without its sign.
func (s season) most() length.Length {
	return max(length.FromMM(s.Dry.Value).Abs(), length.FromMM(s.Wet.Value).Abs())
}

// shrinks returns how much less the distance is when it is least; never negative. Wood made wetter than its
// place ever is shrinks at both ends of the year.
func (s season) shrinks() length.Length {
	return max(0, -length.FromMM(s.Dry.Value), -length.FromMM(s.Wet.Value))
}

// grows returns how much more it is when it is most; never negative.
func (s season) grows() length.Length {
	return max(0, length.FromMM(s.Wet.Value), length.FromMM(s.Dry.Value))
}

// moves returns the seasonal movement of panel i over a distance across its grain: none over no distance, and
// none in sheet goods, which are taken not to move.
func (p *Piece) moves(i int, over length.Length) (season, error) {
	w := p.Panels[i].Spec.Wood
	if w == nil || over == 0 {
		return season{}, nil
	}
	cut, unsure := w.Cut, []string(nil)
	if cut == "" {
		cut, unsure = wood.Flat, []string{"how the boards are sawn is not known: reckoned as flat-sawn"}
	}
	dry, err := wood.Most(w.Species, cut, over, w.Moisture, p.Air.DryMC)
	if err != nil {
		return season{}, err
	}
	wet, err := wood.Most(w.Species, cut, over, w.Moisture, p.Air.WetMC)
	if err != nil {
		return season{}, err
	}
	dry.Name, wet.Name = "change at the driest", "change at the dampest"
	unsure = append(unsure, p.Air.Assumed...)
	return season{dry.Assuming(unsure...), wet.Assuming(unsure...)}, nil
}

// across returns the coordinate of a plan point across the panel's grain.
func across(panel piece.FlatPanel, at [2]length.Length) length.Length {
	if panel.GrainX {
		return at[1]
	}
	return at[0]
}

// wide returns how wide panel i is across its grain.
func (p *Piece) wide(i int) length.Length {
	panel := p.Panels[i]
	return across(panel, [2]length.Length{panel.Max.X - panel.Min.X, panel.Max.Y - panel.Min.Y})
}

// leadsAcross reports whether a direction leads across the panel's grain, be it aslant.
func leadsAcross(panel piece.FlatPanel, d piece.Dir) bool {
	return panel.GrainX && d.Y != 0 || !panel.GrainX && d.X != 0
}

// thickness returns the panel's finished thickness.
func thickness(panel piece.FlatPanel) length.Length { return panel.Max.Z - panel.Min.Z }
