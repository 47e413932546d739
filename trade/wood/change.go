package wood

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
)

// Within these moisture contents the change is linear, eq. 13-2; outside them eq. 13-3 holds.
const (
	LinearFrom = 6.0  // percent MC
	LinearTo   = 14.0 // percent MC
)

// wettest is the highest moisture content that is read: green sapwood of the lightest species holds less.
const wettest = 250.0

var linearFormula = figure.Formula{
	Text:   "ΔD = D·C·(MC2 − MC1)",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2",
	Range:  "6 to 14 % MC",
}

var greenFormula = figure.Formula{
	Text:   "ΔD = D·(MC2 − MC1)/(100·F/S − F + MC1)",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-3",
	Range:  "from oven dry to the green point F: 30 % MC, 22 % for redwood and western redcedar",
}

// Change returns how much a board of the given width changes across the grain, in mm, growing positive,
// when its moisture content goes from fromMC to toMC, in percent.
//
// If both lie within 6 to 14 %, by Wood Handbook eq. 13-2, with C the coefficient of the cut:
//
//	ΔD = D · C · (MC2 − MC1)
//
// If either lies outside, the whole change by eq. 13-3, with S the shrinkage of the cut and F the green
// point of the species:
//
//	ΔD = D · (MC2 − MC1) ÷ (100·F/S − F + MC1)
//
// so that a change is never pieced together from two formulas. Above the green point wood does not move;
// a wetter end counts as the green point, and the figure says so.
func Change(s Species, cut Cut, width length.Length, fromMC, toMC float64) (figure.Figure, error) {
	if width <= 0 || width > length.Max {
		return figure.Figure{}, fmt.Errorf("the width of the board is %s mm; write more than zero and at most 1 km", figure.Digits(width.MM(), 4))
	}
	if err := moisture(fromMC, toMC); err != nil {
		return figure.Figure{}, err
	}
	if linear(fromMC) && linear(toMC) {
		return linearFigure(s, cut, width, fromMC, toMC)
	}
	return greenFigure(s, cut, width, fromMC, toMC)
}

// Most is [Change] on the safe side where the one formula takes over from the other. The handbook's tables of
// coefficients and of shrinkages do not always agree (mahogany's coefficient is the greater by two thirds), so a
// board that gets just wetter than 14 % could seem to have moved less than at 14 %: it is then taken to have moved as
// far as the coefficient says at the edge of its range. So a longer span of moisture never moves a board less.
func Most(s Species, cut Cut, width length.Length, fromMC, toMC float64) (figure.Figure, error) {
	f, err := Change(s, cut, width, fromMC, toMC)
	if err != nil || !linear(fromMC) || linear(toMC) {
		return f, err
	}
	edge := LinearTo
	if toMC < fromMC {
		edge = LinearFrom
	}
	g, err := linearFigure(s, cut, width, fromMC, edge)
	if err != nil || math.Abs(g.Value) <= math.Abs(f.Value) {
		return f, nil
	}
	return g.Assuming(fmt.Sprintf("reckoned at %g %% MC, where the coefficient says more than the shrinkage does beyond it", edge)), nil
}

// moisture checks that all are moisture contents of wood.
func moisture(mcs ...float64) error {
	for _, mc := range mcs {
		if !(mc >= 0 && mc <= wettest) {
			return fmt.Errorf("the moisture content is %s %%; write 0 to %g %%", figure.Digits(mc, 4), wettest)
		}
	}
	return nil
}

func linear(mc float64) bool { return mc >= LinearFrom && mc <= LinearTo }

func linearFigure(s Species, cut Cut, width length.Length, fromMC, toMC float64) (figure.Figure, error) {
	c := s.Coefficient(cut)
	if math.IsNaN(c) {
		return figure.Figure{}, fmt.Errorf("no movement coefficient of %s is known for %s-sawn boards; take another species, or the cut that is known", s.ID, cut)
	}
	f := figure.Of("change across the grain", linearChange(width.MM(), c, fromMC, toMC), figure.MM, &linearFormula,
		figure.InLength("D", width), figure.In("C", c, figure.PerPercent),
		figure.In("MC1", fromMC, figure.Percent), figure.In("MC2", toMC, figure.Percent))
	return assumeMovement(f.From(s.MoveSource.String()), s), nil
}

func greenFigure(s Species, cut Cut, width length.Length, fromMC, toMC float64) (figure.Figure, error) {
	shrinkage := s.Shrinkage(cut)
	if !(shrinkage > 0) {
		return figure.Figure{}, fmt.Errorf("no shrinkage of %s is known for %s-sawn boards; take another species, or keep within 6 to 14 %% MC", s.ID, cut)
	}
	mc1, mc2 := min(fromMC, s.GreenPoint), min(toMC, s.GreenPoint)
	f := figure.Of("change across the grain", greenChange(width.MM(), shrinkage, s.GreenPoint, mc1, mc2), figure.MM, &greenFormula,
		figure.InLength("D", width), figure.In("S", shrinkage, figure.Percent), figure.In("F", s.GreenPoint, figure.Percent),
		figure.In("MC1", mc1, figure.Percent), figure.In("MC2", mc2, figure.Percent))
	if mc1 != fromMC || mc2 != toMC {
		f = f.Assuming(fmt.Sprintf("wood wetter than its green point of %g %% MC does not move further", s.GreenPoint))
	}
	return assumeMovement(f.From(s.ShrinkFrom.String()), s), nil
}

func assumeMovement(f figure.Figure, s Species) figure.Figure {
	if s.MoveAssumed == "" {
		return f
	}
	return f.Assuming(s.MoveAssumed)
}

// linearChange is eq. 13-2.
func linearChange(d, c, mc1, mc2 float64) float64 { return d * c * (mc2 - mc1) }

// greenChange is eq. 13-3; shrinkage in percent from the green point f to dry.
func greenChange(d, shrinkage, f, mc1, mc2 float64) float64 {
	return d * (mc2 - mc1) / (f*100/shrinkage - f + mc1)
}
