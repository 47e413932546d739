package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

var (
	handPush = figure.Formula{
		Text: "F ≥ 10 % of the empty piece's weight", Source: "common practice, no source",
		Range: "a level push at the top; the 10° of a tilt come to the same where the top is 1.76 times as high as the centre of gravity",
	}
	leanFormula = figure.Formula{
		Text: "F ≥ 100 N", Source: "IEC 62368-1, 3rd edition, presses equipment down with at most that; taken over for furniture, common practice",
		Range: "an arm leant on the edge; who sits or climbs on it weighs several times that",
	}
)

const (
	pushedBy = 0.10  // of the empty piece's weight
	leantBy  = 100.0 // N
)

// Push says which level push at the top and which load on an edge that stands out beyond the feet tip the piece, over the
// side that bears least, and whether the loads that the document names tip it. What is fixed to a wall does not tip; what
// stands on no base is for [Tip] to tell.
func Push(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.free() {
		own, err := p.own(s)
		sides := p.base(s.feet)
		if err != nil || sides == nil {
			continue
		}
		own.Kg = max(own.Kg, 1e-9)
		out = append(out, p.pushed(s, own, sides)...)
		out = append(out, p.leant(s, own, sides)...)
		for _, l := range p.Doc.Loads {
			out = append(out, p.loaded(s, own, sides, l)...)
		}
	}
	return out
}

// stand is what steadies a piece against going over one side, with the things there that steady it least.
type stand struct {
	side
	there  []bool
	centre stability.Mass
	inside length.Length
}

// steadied weighs a side with the things that steady it least.
func (p *Piece) steadied(s standing, own stability.Mass, over side) stand {
	things := p.things(s)
	out := stand{side: over, there: leastMoment(over, things)}
	out.centre, _ = stability.Centre(with(own, things, out.there)...) // own has mass
	out.inside = length.FromMM(over.inside(out.centre.X.MM(), out.centre.Y.MM()))
	return out
}

// newtons is the moment that steadies the side, for a lever of 1 mm.
func (s stand) newtons() float64 { return stability.Weight(s.centre.Kg) * s.inside.MM() }

// least returns the side that a measure is least of, and reports false where the measure has no number for any.
func (p *Piece) least(s standing, own stability.Mass, sides []side, measure func(stand) float64) (best stand, ok bool) {
	low := math.Inf(1)
	for _, over := range sides {
		if st := p.steadied(s, own, over); measure(st) < low {
			best, low, ok = st, measure(st), true
		}
	}
	return best, ok
}

// pushed judges the level push at the top.
func (p *Piece) pushed(s standing, own stability.Mass, sides []side) []finding.Finding {
	top := p.top(s)
	st, ok := p.least(s, own, sides, stand.newtons)
	if !ok || top <= 0 {
		return nil
	}
	push, err := stability.Push(st.centre.Kg, st.inside, top)
	if err != nil {
		return nil
	}
	w := stability.Weight(own.Kg)
	f := p.on("push", s, st.side, "pushed at its top, "+st.towards()+", "+whatIsThere(p.things(s), st.there))
	f.Figure, f.Because = push, []figure.Figure{push}
	if i := p.highest(s); i >= 0 && p.Panels[i].Max.Z < top && p.Panels[i].Max.Z > 0 {
		if at, err := stability.Push(st.centre.Kg, st.inside, p.Panels[i].Max.Z); err == nil {
			at.Name = "tipping push at " + p.Panels[i].Name
			f.Because = append(f.Because, at)
		}
	}
	f.Limit = figure.Of("push it must bear", pushedBy*w, figure.N, &handPush, figure.In("W", w, figure.N))
	need := lack{own.Kg, pushedBy*top.MM() - st.side.inside(own.X.MM(), own.Y.MM())}
	p.judgePush(s, &f, st, need)
	f.View.Marks = append(f.View.Marks, finding.Mark{At: [3]float64{st.centre.X.MM(), st.centre.Y.MM(), top.MM()}, Text: "push"})
	return []finding.Finding{f}
}

// judgePush gives the verdict of a force that tips, with how far the feet must go out where it is too small. Need is what
// the piece with the force lacks.
func (p *Piece) judgePush(s standing, f *finding.Finding, st stand, need lack) {
	f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, f.Sense)
	f.View.Marks = []finding.Mark{markOf(st.centre)}
	if f.Verdict == finding.Stands {
		return
	}
	f.Caution = "It can be pulled or pushed over onto a person: anchor it to a wall where children are about."
	if f.Verdict == finding.Fails {
		f.Mend = p.feetOut(s, st.side, need)
	}
}

// feetOut says by how much the feet on a side must go out.
func (p *Piece) feetOut(s standing, over side, need lack) string {
	move := leastMove(need, each(p.things(s), func(m stability.Mass) lack { return lack{m.Kg, -over.inside(m.X.MM(), m.Y.MM())} }))
	if !(move < length.Metre.MM()) {
		return "anchor it to a wall: it would need feet more than 1 m farther out"
	}
	return fmt.Sprintf("move the feet on that side %s out, %s; or anchor it to a wall", p.up(length.FromMM(move)+length.Nanometre), over.towards())
}

// leant judges a load on the edge of the panel that stands out farthest beyond a side, over the side that bears least.
func (p *Piece) leant(s standing, own stability.Mass, sides []side) []finding.Finding {
	st, ok := p.least(s, own, sides, func(st stand) float64 {
		if out, _ := p.beyond(s, st.side); out > 0 {
			return st.newtons() / out.MM()
		}
		return math.Inf(1)
	})
	if !ok {
		return nil // no panel stands out
	}
	out, panel := p.beyond(s, st.side)
	load, err := stability.EdgeLoad(st.centre.Kg, st.inside, out)
	if err != nil {
		return nil
	}
	f := p.on("push", s, st.side, "leant on at the edge of "+p.Panels[panel].Name+", "+st.towards()+", "+whatIsThere(p.things(s), st.there))
	f.Figure, f.Because = load, []figure.Figure{load}
	f.Limit = figure.Of("load it must bear", leantBy, figure.N, &leanFormula)
	need := pressed(own, st.side.inside(own.X.MM(), own.Y.MM()), leantBy, -out.MM())
	p.judgePush(s, &f, st, need)
	return []finding.Finding{f}
}

// pressed is what a piece lacks with a force straight down on it, in N, at a distance inside its side.
func pressed(own stability.Mass, inside, force, at float64) lack {
	kg := own.Kg + force/stability.Gravity
	return lack{kg, -(own.Kg*inside + force/stability.Gravity*at) / kg}
}

// alongPush is the direction in plan of a push.
func alongPush(side piece.PanelSide) [2]float64 {
	return map[piece.PanelSide][2]float64{piece.FrontSide: {0, -1}, piece.BackSide: {0, 1}, piece.LeftSide: {-1, 0}, piece.RightSide: {1, 0}}[side]
}
