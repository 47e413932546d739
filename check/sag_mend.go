package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/plate"
)

// mendTries is how many thicknesses are tried; mendMost how many times as thick a panel may become.
const (
	mendTries = 4
	mendMost  = 3
)

// mendSag says how thick the panel would have to be, to the next mark of the tape.
func (p *Piece) mendSag(s sagging, value, limit figure.Figure) string {
	name := p.Panels[s.panel].Name
	now := p.Panels[s.panel].Max.Z - p.Panels[s.panel].Min.Z
	other := "bring its supports closer, or put a rail under it"
	if thick, ok := p.thickEnough(s, now, value, limit); ok {
		return fmt.Sprintf("make %s %s thick instead of %s, %s", name, p.up(thick), p.Doc.Fineness.Show(now), other)
	}
	return fmt.Sprintf("%s is %s thick and no thicker one would do: %s", name, p.Doc.Fineness.Show(now), other)
}

// thickEnough finds a thickness at which a figure keeps to its limit. Sag goes down with the cube of thickness, stress with its
// square, where nothing but the panel bends; what bends besides shows when it is worked out.
func (p *Piece) thickEnough(s sagging, now length.Length, value, limit figure.Figure) (length.Length, bool) {
	if limit.Value <= 0 {
		return 0, false
	}
	power, try, off := 3.0, now, value.Value/limit.Value
	if value.Unit == figure.MPa {
		power = 2
	}
	for range mendTries {
		// What is over the limit by a hair is put under it.
		try = ceilTo(length.FromMM(try.MM()*math.Pow(max(off, 1)*1.005, 1/power)), p.Doc.Fineness)
		if try > mendMost*now {
			return 0, false
		}
		got, err := p.atThickness(s, try, value)
		if err != nil {
			return 0, false
		}
		if off = got / limit.Value; off <= 1 {
			return try, true
		}
	}
	return 0, false
}

// atThickness works a figure out for a panel as thick as that: on the coarsest mesh both as it is and as it would be, whose
// ratio is that of finer ones.
func (p *Piece) atThickness(s sagging, thick length.Length, value figure.Figure) (float64, error) {
	model := s.full
	if value.Name == lastingName {
		model = s.model
	}
	was, err := plate.Coarse(*model, s.stuff)
	if err != nil {
		return 0, err
	}
	thicker := *model
	thicker.Thickness = thick.MM()
	is, err := plate.Coarse(thicker, s.stuff)
	if value.Unit == figure.MPa {
		return value.Value * is.Stress / was.Stress, err
	}
	return value.Value * is.Sag / was.Sag, err
}

// lastingName is the name of the figure of package trade/beam for sag in the end.
const lastingName = "lasting sag"
