package beam

import (
	"cmp"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	freeLeg = figure.Formula{Text: "K = 3EI/h³", Source: simpleBeam, Range: "one end held, the other free to turn: the least a leg resists"}
	heldLeg = figure.Formula{Text: "K = 12EI/h³", Source: simpleBeam, Range: "both ends held against turning: the most a leg resists"}

	cantileverFormula = figure.Formula{Text: "δ = PL³/(3EI)", Source: handbook9, Range: straight}
)

// LegStiffness returns the level force in N per mm that a leg, post or column resists with: 3EI/h³ when one
// end is free to turn, 12EI/h³ when neither is. The span of the beam is the leg's height.
func LegStiffness(b Beam, e Ends) (figure.Figure, error) {
	if _, err := ParseEnds(string(e)); err != nil {
		return figure.Figure{}, err
	}
	if err := b.check(); err != nil {
		return figure.Figure{}, err
	}
	n, f := 3.0, &freeLeg
	if e == Held {
		n, f = 12, &heldLeg
	}
	h := b.Span.MM()
	return finite(figure.Of("stiffness", n*b.Modulus*b.Section.Inertia/(h*h*h), figure.NPerMM, f,
		figure.In("E", b.Modulus, figure.MPa), figure.In("I", b.Section.Inertia, figure.MM4), figure.InLength("h", b.Span)))
}

var restraintFormula = figure.Formula{
	Text: "F = 3EIδ/L³ … 12EIδ/L³", Source: simpleBeam,
	Range: "a leg whose ends are moved by δ against each other; the true force lies between the two",
}

// Restraint returns the least and the greatest force in newtons with which a leg holds back a panel that
// moves by the given distance: what the screws carry instead, when they have no play.
func Restraint(b Beam, moved length.Length) (least, most figure.Figure, err error) {
	free, err := LegStiffness(b, Resting)
	if err = cmp.Or(err, within.Room("movement", moved)); err != nil {
		return figure.Figure{}, figure.Figure{}, err
	}
	in := append([]figure.Input{figure.InLength("δ", moved)}, free.Inputs...)
	least = figure.Of("least force of the leg", free.Value*moved.MM(), figure.N, &restraintFormula, in...)
	most = figure.Of("greatest force of the leg", 4*least.Value, figure.N, &restraintFormula, in...)
	return least, most, nil
}

// Cantilever returns the sag in mm at the free end of a beam held at the other, under a load in newtons
// there. The span of the beam is its reach.
func Cantilever(b Beam, load float64) (figure.Figure, error) {
	if err := cmp.Or(b.check(), within.NotNegative("load", load, figure.N)); err != nil {
		return figure.Figure{}, err
	}
	l := b.Span.MM()
	v := load * l * l * l / (3 * b.Modulus * b.Section.Inertia)
	in := []figure.Input{
		figure.In("P", load, figure.N), figure.InLength("L", b.Span),
		figure.In("E", b.Modulus, figure.MPa), figure.In("I", b.Section.Inertia, figure.MM4),
	}
	if b.Shear > 0 {
		v += load * l / (b.Shear * b.ShearArea)
		in = append(in, figure.In("G", b.Shear, figure.MPa), figure.In("A'", b.ShearArea, figure.SquareMM))
	}
	return finite(figure.Of("sag at the free end", v, figure.MM, &cantileverFormula, in...))
}
