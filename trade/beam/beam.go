// Package beam holds the closed forms of the straight beam: how far a shelf or a pipe sags, what stress it
// comes to, and how stiff a leg is against a push.
//
// The words: a beam is resting when its ends are free to turn, and held when they can't; the truth of a
// screwed joint lies between the two. A load is spread even over the span or stands in its middle. Start
// with [Sag].
//
// The package knows straight, level, elastic beams of one section. A panel on four supports is a plate and
// a frame is a frame: those are computed elsewhere and agree with these forms where they meet.
package beam

import (
	"cmp"
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Ends says how both ends of a beam are held.
type Ends string

// The ways the ends are held. The first is the default of an answer: it gives the greater sag.
const (
	Resting Ends = "resting" // free to turn
	Held    Ends = "held"    // can't turn
)

// ParseEnds reads resting or held.
func ParseEnds(text string) (Ends, error) {
	if e := Ends(text); e == Resting || e == Held {
		return e, nil
	}
	return "", fmt.Errorf("ends %q is not one of resting, held", text)
}

// Spread says where the load stands.
type Spread string

// The ways a load stands on a beam. The first is the default of an answer.
const (
	Even   Spread = "even"   // uniform over the span
	Middle Spread = "middle" // all of it at mid-span
)

// ParseSpread reads even or middle.
func ParseSpread(text string) (Spread, error) {
	if s := Spread(text); s == Even || s == Middle {
		return s, nil
	}
	return "", fmt.Errorf("spread %q is not one of even, middle", text)
}

// Beam is a straight beam of one section over one span.
type Beam struct {
	Span      length.Length // between the supports
	Modulus   float64       // of elasticity, MPa
	Section   Section
	Shear     float64 // modulus of rigidity, MPa; 0 leaves the shear sag out
	ShearArea float64 // that resists shear, mm²; used with Shear only, see [Section.ShearArea]
}

func (b Beam) check() error {
	err := cmp.Or(within.Length("span", b.Span), within.Positive("modulus", b.Modulus, figure.MPa),
		within.Positive("second moment", b.Section.Inertia, figure.MM4), within.NotNegative("shear modulus", b.Shear, figure.MPa))
	if err == nil && b.Shear > 0 {
		return within.Positive("shear area", b.ShearArea, figure.SquareMM)
	}
	return err
}

// constants are those of δ = kb·W·L³/(E·I) + ks·W·L/(G·A') for a whole load W.
type constants struct {
	bending, shear float64
	moment         float64 // greatest bending moment ÷ (W·L)
	formula        *figure.Formula
	stress         *figure.Formula
}

const (
	handbook9  = "Wood Handbook FPL-GTR-282 (2021) ch. 9, eq. 9-1 and Table 9-1, from memory"
	simpleBeam = "beam formulas, any mechanics text"
	straight   = "straight elastic beam, sag small against the span"
)

var (
	evenResting   = figure.Formula{Text: "δ = 5WL³/(384EI) [+ WL/(8GA')]", Source: handbook9, Range: straight}
	evenHeld      = figure.Formula{Text: "δ = WL³/(384EI) [+ WL/(8GA')]", Source: handbook9, Range: straight}
	middleResting = figure.Formula{Text: "δ = WL³/(48EI) [+ WL/(4GA')]", Source: handbook9, Range: straight}
	middleHeld    = figure.Formula{Text: "δ = WL³/(192EI) [+ WL/(4GA')]", Source: handbook9, Range: straight}

	evenRestingStress   = figure.Formula{Text: "σ = WL/(8Z)", Source: simpleBeam, Range: straight}
	evenHeldStress      = figure.Formula{Text: "σ = WL/(12Z)", Source: simpleBeam, Range: straight}
	middleRestingStress = figure.Formula{Text: "σ = WL/(4Z)", Source: simpleBeam, Range: straight}
	middleHeldStress    = figure.Formula{Text: "σ = WL/(8Z)", Source: simpleBeam, Range: straight}
)

func constantsOf(s Spread, e Ends) (constants, error) {
	switch {
	case s == Even && e == Resting:
		return constants{5.0 / 384, 1.0 / 8, 1.0 / 8, &evenResting, &evenRestingStress}, nil
	case s == Even && e == Held:
		return constants{1.0 / 384, 1.0 / 8, 1.0 / 12, &evenHeld, &evenHeldStress}, nil
	case s == Middle && e == Resting:
		return constants{1.0 / 48, 1.0 / 4, 1.0 / 4, &middleResting, &middleRestingStress}, nil
	case s == Middle && e == Held:
		return constants{1.0 / 192, 1.0 / 4, 1.0 / 8, &middleHeld, &middleHeldStress}, nil
	}
	if _, err := ParseSpread(string(s)); err != nil {
		return constants{}, err
	}
	_, err := ParseEnds(string(e))
	return constants{}, err
}

// Sag returns the sag in mm at mid-span under a whole load in newtons:
//
//	δ = kb·W·L³/(E·I) + ks·W·L/(G·A')
//
// with kb, ks of Table 9-1: even 5/384 resting, 1/384 held, ks 1/8; middle 1/48 and 1/192, ks 1/4. The
// shear part is left out where the beam has no shear modulus.
func Sag(b Beam, load float64, s Spread, e Ends) (figure.Figure, error) {
	k, err := constantsOf(s, e)
	if err = cmp.Or(err, b.check(), within.NotNegative("load", load, figure.N)); err != nil {
		return figure.Figure{}, err
	}
	l := b.Span.MM()
	sag := k.bending * load * l * l * l / (b.Modulus * b.Section.Inertia)
	in := []figure.Input{
		figure.In("W", load, figure.N), figure.InLength("L", b.Span),
		figure.In("E", b.Modulus, figure.MPa), figure.In("I", b.Section.Inertia, figure.MM4),
	}
	if b.Shear > 0 {
		sag += k.shear * load * l / (b.Shear * b.ShearArea)
		in = append(in, figure.In("G", b.Shear, figure.MPa), figure.In("A'", b.ShearArea, figure.SquareMM))
	}
	return figure.Of("sag", sag, figure.MM, k.formula, in...).Assuming(holding(e)), nil
}

// Stress returns the greatest bending stress in MPa under a whole load in newtons.
func Stress(b Beam, load float64, s Spread, e Ends) (figure.Figure, error) {
	k, err := constantsOf(s, e)
	err = cmp.Or(err, within.Length("span", b.Span), within.Positive("section modulus", b.Section.Modulus, figure.MM3),
		within.NotNegative("load", load, figure.N))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("bending stress", k.moment*load*b.Span.MM()/b.Section.Modulus, figure.MPa, k.stress,
		figure.In("W", load, figure.N), figure.InLength("L", b.Span), figure.In("Z", b.Section.Modulus, figure.MM3)).
		Assuming(holding(e)), nil
}

func holding(e Ends) string {
	if e == Held {
		return "both ends held so that they can't turn"
	}
	return "both ends resting, free to turn"
}

// finite reports a result that grew past any number, from inputs that are each within their range.
func finite(f figure.Figure) (figure.Figure, error) {
	if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
		return figure.Figure{}, within.Finite(f.Name, f.Value, f.Unit)
	}
	return f, nil
}
