package check

import (
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

var insideFormula = figure.Formula{Text: "d ≥ 0", Source: statics, Range: "a load straight down inside the base tips nothing"}

const statics = "statics of a rigid body, any mechanics text"

// loaded says whether one of the loads that the document names tips the piece; none where it comes upon another.
func (p *Piece) loaded(s standing, own stability.Mass, sides []side, l piece.Load) []finding.Finding {
	for _, i := range s.panels {
		switch panel := p.Panels[i]; {
		case panel.Name != l.On:
		case l.PushN > 0:
			return p.pushedBy(s, own, sides, l, panel)
		case l.MassKg > 0:
			return p.pressedBy(s, own, sides, l, panel)
		}
	}
	return nil
}

// pushedBy judges a level push at the top of its panel. Over a side that it meets aslant only its part across counts.
func (p *Piece) pushedBy(s standing, own stability.Mass, sides []side, l piece.Load, panel piece.FlatPanel) []finding.Finding {
	to := alongPush(l.Towards)
	across := func(over side) float64 { return to[0]*over.out[0] + to[1]*over.out[1] }
	st, ok := p.least(s, own, sides, func(st stand) float64 {
		if a := across(st.side); a > 1e-9 {
			return st.newtons() / a
		}
		return math.Inf(1)
	})
	if !ok || panel.Max.Z <= 0 {
		return nil
	}
	z := length.FromMM(panel.Max.Z.MM() * across(st.side))
	push, err := stability.Push(st.centre.Kg, st.inside, z)
	if err != nil {
		return nil
	}
	f := p.on("push", s, st.side, l.Name+": pushed at "+panel.Name+", "+st.towards()+", "+whatIsThere(p.things(s), st.there))
	f.Figure, f.Because = push, []figure.Figure{push}
	f.Limit = figure.Of("load it must bear", l.PushN, figure.N, nil)
	need := lack{own.Kg, l.PushN*z.MM()/stability.Weight(own.Kg) - st.side.inside(own.X.MM(), own.Y.MM())}
	p.judgePush(s, &f, st, need)
	return []finding.Finding{f}
}

// pressedBy judges a weight straight down.
func (p *Piece) pressedBy(s standing, own stability.Mass, sides []side, l piece.Load, panel piece.FlatPanel) []finding.Finding {
	at := comesDown(l, panel)
	st, outside := p.least(s, own, sides, func(st stand) float64 {
		if d := st.side.inside(at[0], at[1]); d < -1e-6 {
			return st.newtons() / -d
		}
		return math.Inf(1)
	})
	if !outside {
		return []finding.Finding{p.insideBase(s, own, sides, l, panel, at)}
	}
	inside := st.side.inside(at[0], at[1])
	load, err := stability.EdgeLoad(st.centre.Kg, st.inside, max(length.FromMM(-inside), length.Nanometre))
	if err != nil {
		return nil
	}
	f := p.on("push", s, st.side, l.Name+": on "+panel.Name+", "+st.towards()+", "+whatIsThere(p.things(s), st.there))
	w := stability.Weight(l.MassKg)
	f.Figure, f.Because = load, []figure.Figure{load}
	f.Limit = figure.Of("load it must bear", w, figure.N, nil, figure.In("m", l.MassKg, figure.Kg))
	p.judgePush(s, &f, st, pressed(own, st.side.inside(own.X.MM(), own.Y.MM()), w, inside))
	return []finding.Finding{f}
}

// insideBase tells how far inside the base a weight comes down.
func (p *Piece) insideBase(s standing, own stability.Mass, sides []side, l piece.Load, panel piece.FlatPanel, at [2]float64) finding.Finding {
	st, _ := p.least(s, own, sides, func(st stand) float64 { return st.side.inside(at[0], at[1]) })
	f := p.on("push", s, st.side, l.Name+": on "+panel.Name)
	d := math.Max(0, st.side.inside(at[0], at[1]))
	f.Figure = figure.Of("distance inside the base", d, figure.MM, &insideFormula)
	f.Limit = figure.Of("edge of the base", 0, figure.MM, nil)
	f.Because = []figure.Figure{f.Figure}
	f.Verdict = finding.Judge(d, 0, f.Sense)
	f.View.Marks = []finding.Mark{{At: [3]float64{at[0], at[1], panel.Max.Z.MM()}, Text: l.Name}}
	return f
}

// comesDown returns where a load comes down in plan, in mm: at its own place, else at the middle of its edge, else at the
// middle of its panel.
func comesDown(l piece.Load, panel piece.FlatPanel) [2]float64 {
	lo, hi := panel.Min, panel.Max
	if l.At != nil {
		return [2]float64{(lo.X + l.At[0]).MM(), (lo.Y + l.At[1]).MM()}
	}
	x, y := (lo.X + hi.X).Half(), (lo.Y + hi.Y).Half()
	switch l.Edge {
	case piece.FrontSide:
		y = lo.Y
	case piece.BackSide:
		y = hi.Y
	case piece.LeftSide:
		x = lo.X
	case piece.RightSide:
		x = hi.X
	}
	return [2]float64{x.MM(), y.MM()}
}
