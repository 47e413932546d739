// Package portal holds what the trade knows of a portal: two legs and a beam across their tops, as a pipe table has at
// either end. How far does it sway when it is pushed, and how hard are its corners bent? The mechanics are those of
// package mechanics/frame.
//
// The words: a column stands on a foot; a foot is hinged where it is free to turn and fixed where it can't; the columns
// and the beam meet in corners, which are taken as rigid. Start with [Portal.Push].
package portal

import (
	"cmp"
	"fmt"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/mechanics/frame"
	"rodwright/trade/pipe"
	"rodwright/trade/within"
)

// Feet says how both feet are held.
type Feet string

// The ways the feet are held. The first is the default of an answer: it sways more.
const (
	Hinged Feet = "hinged" // free to turn
	Fixed  Feet = "fixed"  // can't turn
)

// Stick is what a column or a beam is made of. Start with [Plain] or [OfPipe].
type Stick struct {
	Modulus float64 // of elasticity, MPa
	Inertia float64 // second moment of area, mm⁴
	size    *pipe.Size
}

// Plain returns a stick of which only its stiffness in bending is known: it gives by bending alone.
func Plain(modulus, inertia float64) Stick { return Stick{Modulus: modulus, Inertia: inertia} }

// OfPipe returns a steel pipe, which gives by bending, lengthwise and in shear.
func OfPipe(s pipe.Size) Stick {
	return Stick{Modulus: pipe.SteelModulus, Inertia: s.SecondMoment(), size: &s}
}

// Portal is a frame of two columns and one beam in a plane. Height and Width are those of its lines of axes.
type Portal struct {
	Height, Width length.Length
	Column, Beam  Stick
	Feet          Feet
}

// What a portal may be: far beyond any piece of furniture, near enough that what is reckoned keeps its digits.
const (
	leastSize, mostSize       = 10, 20_000 // mm
	slenderest                = 20         // the longer of height and width over the shorter
	leastModulus, mostModulus = 1, 1e6     // MPa
	leastInertia, mostInertia = 1e-3, 1e9  // mm⁴
)

func (p Portal) check() error {
	h, w := p.Height.MM(), p.Width.MM()
	err := cmp.Or(within.Between("height", h, leastSize, mostSize, figure.MM), within.Between("width", w, leastSize, mostSize, figure.MM),
		within.Between("width", w, h/slenderest, h*slenderest, figure.MM), p.Column.check(), p.Beam.check())
	if err == nil && p.Feet != Hinged && p.Feet != Fixed {
		return fmt.Errorf("feet %q is not one of %s, %s", p.Feet, Hinged, Fixed)
	}
	return err
}

func (s Stick) check() error {
	return cmp.Or(within.Between("modulus", s.Modulus, leastModulus, mostModulus, figure.MPa),
		within.Between("inertia", s.Inertia, leastInertia, mostInertia, figure.MM4))
}

const (
	handbook = "Kleinlogel, Rigid Frame Formulas, single-bay portal, from memory; worked out by the stiffness method"
	bending  = "k = (EI of the beam ÷ EI) · (h ÷ width); rigid corners; sway small against the height; nothing heavy on top; δ' is what a pipe gives besides, lengthwise and in shear"
)

var (
	hingedSway   = figure.Formula{Text: "δ = Ph³/(12EI)·(2k + 1)/k [+ δ']", Source: handbook, Range: bending}
	fixedSway    = figure.Formula{Text: "δ = Ph³/(12EI)·(3k + 2)/(6k + 1) [+ δ']", Source: handbook, Range: bending}
	hingedMoment = figure.Formula{Text: "M = Ph/2", Source: "statics, any mechanics text", Range: "at both corners; feet hinged"}
	fixedMoment  = figure.Formula{Text: "M = Ph/2·(3k + 1)/(6k + 1)", Source: handbook, Range: "at both feet, more than at the corners; sticks that give by bending alone"}
)

// Pushed is how a portal bears a push.
type Pushed struct {
	Sway   figure.Figure // mm, of the corner that is pushed
	Moment figure.Figure // N·mm, the largest: at the feet where they are fixed, at the corners where they are hinged
}

// Push works out what a push in newtons does, level and in the portal's plane, at one upper corner.
func (p Portal) Push(push float64) (Pushed, error) {
	if err := cmp.Or(p.check(), within.Between("push", push, 0, mostPush, figure.N)); err != nil {
		return Pushed{}, err
	}
	bent, err := p.solve(push, Stick.bending)
	if err != nil {
		return Pushed{}, err
	}
	k := p.Beam.Inertia * p.Beam.Modulus / (p.Column.Inertia * p.Column.Modulus) * p.Height.MM() / p.Width.MM()
	in := []figure.Input{figure.In("P", push, figure.N), figure.InLength("h", p.Height), figure.In("k", k, figure.Ratio)}
	out := Pushed{Moment: figure.Of("largest moment", bent.moment, figure.NMM, p.formula(&hingedMoment, &fixedMoment), in...)}
	in = append(in, figure.In("E", p.Column.Modulus, figure.MPa), figure.In("I", p.Column.Inertia, figure.MM4))
	sway := bent.sway
	if p.Column.size != nil || p.Beam.size != nil {
		whole, err := p.solve(push, Stick.whole)
		if err != nil {
			return Pushed{}, err
		}
		sway = whole.sway
		in = append(in, figure.In("δ'", whole.sway-bent.sway, figure.MM))
	}
	out.Sway = figure.Of("sway", sway, figure.MM, p.formula(&hingedSway, &fixedSway), in...)
	return out, nil
}

const mostPush = 1e6 // N

func (p Portal) formula(hinged, fixed *figure.Formula) *figure.Formula {
	if p.Feet == Fixed {
		return fixed
	}
	return hinged
}

// poisson of steel; of a plain stick only its bending counts and any will do.
const poisson = 0.3

// bending returns a section so thick in its length that it gives by bending alone. The area is the same for column and
// beam: its give is a millionth of theirs.
func (s Stick) bending(area float64) frame.Section {
	return frame.Section{E: s.Modulus, G: s.Modulus / (2 * (1 + poisson)), Area: area, J: s.Inertia, IY: s.Inertia, IZ: s.Inertia}
}

// whole returns the section with all that is known of it.
func (s Stick) whole(area float64) frame.Section {
	if s.size == nil {
		return s.bending(area)
	}
	return frame.Pipe(s.Modulus, s.Modulus/(2*(1+poisson)), s.size.OD.MM(), s.size.Bore.MM())
}
