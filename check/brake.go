package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/trade/stability"
)

var (
	leastLocks   = figure.Formula{Text: "locks ≥ 2", Source: "common practice, no source", Range: "one locked wheel lets the piece turn about it"}
	lockedShares = figure.Formula{
		Text: "share = Σ over locked wheels of (1/n + plane through the moments)", Source: "statics: a stiff piece on equal springs, any mechanics text",
		Range: "on a slope the load moves downhill by h·tan α; the worst direction and the worst combination of what it holds",
	}
)

// locks says whether enough casters lock, and on a floor with a known slope whether they hold there.
func (p *Piece) locks(s standing, feet []int) []finding.Finding {
	var locked []int
	for _, i := range feet {
		if p.Feet[i].Locked {
			locked = append(locked, i)
		}
	}
	f := finding.Finding{
		Check: "caster", Place: p.place(s) + ", locked", Parts: p.footTags(feet), Sense: finding.AtLeast,
		Figure: figure.Of("casters that lock", float64(len(locked)), figure.Count, nil),
		Limit:  figure.Of("least", 2, figure.Count, &leastLocks),
	}
	f.Because = []figure.Figure{f.Limit}
	if len(locked) < 2 {
		f.Verdict = finding.Fails
		f.Mend = "take 2 of the casters with a lock"
		f.Caution = "A piece that rolls by itself can hurt someone: chock the wheels until they lock."
	}
	if !(p.Doc.Place.Slope > 0) {
		return []finding.Finding{f}
	}
	return []finding.Finding{f, p.holds(s, feet, locked)}
}

// holds says whether the locked wheels hold the piece on the floor's slope. With none locked it rolls by itself.
func (p *Piece) holds(s standing, feet, locked []int) finding.Finding {
	slope := p.Doc.Place.Slope
	f := finding.Finding{Check: "caster", Place: p.place(s) + ", locked on a floor that slopes", Parts: p.footTags(feet), Sense: finding.AtLeast}
	share, there, ok := p.lockedShare(s, feet, locked, slope)
	if !ok {
		return unknown(f, "how its wheels share the load: it weighs nothing, or they stand in one line")[0]
	}
	f.Place += ", " + whatIsThere(p.things(s), there)
	holds, err := stability.HoldingSlope(share, 0)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Figure, f.Limit = holds, figure.Of("slope of the floor", slope, figure.Deg, nil)
	f.Because = []figure.Figure{holds, figure.Of("load on locked wheels", 100*share, figure.Percent, &lockedShares, figure.In("n", float64(len(feet)), figure.Count), figure.In("α", slope, figure.Deg))}
	own, err := p.own(s)
	if err == nil {
		if centre, err := stability.Centre(with(own, p.things(s), there)...); err == nil {
			if roll, err := stability.RollAway(centre.Kg, slope); err == nil {
				f.Because = append(f.Because, roll)
			}
		}
	}
	f.Assumed = []string{"each thing held may be there or not: the worst combination is shown", "a locked wheel neither turns nor swivels"}
	f.Verdict = finding.Judge(holds.Value, slope, finding.AtLeast)
	if f.Verdict == finding.Fails {
		need := 100 * math.Tan(slope*math.Pi/180) / stability.RubberOnFloor
		f.Mend = fmt.Sprintf("lock more of the wheels: it needs %s of its load on locked ones", figure.Show(need, figure.Percent, p.Doc.Fineness))
		f.Caution = "A piece that rolls by itself can hurt someone: chock the wheels."
		if len(locked) == 0 {
			f.Caution = "With no wheel locked it rolls away by itself: chock the wheels at once."
		}
	}
	return f
}

// lockedShare returns the least share of the load, 0 to 1, that stands on the locked wheels on a slope in degrees, and
// the things that are there then. What a mass m brings to them is m·(s − h·tan α·g), s their share of a load at its
// place and g how fast that share falls the worst way; so the share is a ratio of sums. It reports false where the load
// can't be shared out.
func (p *Piece) lockedShare(s standing, feet, locked []int, slope float64) (share float64, there []bool, ok bool) {
	plane, ok := sharePlane(p.axes(feet))
	own, err := p.own(s)
	if !ok || err != nil {
		return 0, nil, false
	}
	var even, a, b float64
	for _, at := range p.axes(locked) {
		da, db := plane.slopes(at)
		even, a, b = even+1/float64(len(feet))-da*plane.mid[0]-db*plane.mid[1], a+da, b+db
	}
	falls := math.Tan(slope*math.Pi/180) * math.Hypot(a, b)
	of := func(m stability.Mass) addend {
		return addend{m.Kg * (even + a*m.X.MM() + b*m.Y.MM() - falls*m.Z.MM()), m.Kg}
	}
	there, share = leastRatio(of(own), each(p.things(s), of))
	return min(max(share, 0), 1), there, true
}
