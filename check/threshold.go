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
	walkFormula = figure.Formula{
		Text: "v ≥ 2 mph", Source: "ANSI ICWM:2018 tests casters over bumps at that speed; taken over as that of a piece pushed by hand, common practice",
		Range: "rolled about a room at a slow walk",
	}
	climbFormula = figure.Formula{
		Text: "F = W · √(2Rs − s²) ÷ (R − s)", Source: statics,
		Range: "it climbs before it tips just when F is below the tipping push: as it begins to tip the wheels at the step bear the whole weight",
	}
	smallFormula = figure.Formula{Text: "s < R", Source: statics, Range: "a step of half the wheel's diameter can't be climbed at any push"}
)

// slowWalk is 2 mph in m/s, from the international mile of 1959.
const slowWalk = 2 * 1609.344 / 3600

// rampRun is how many times as long as high a ramp over a step is laid, common practice.
const rampRun = 12

// Threshold says of a piece on casters at which speed it goes over when its wheels stop dead, and whether it can be
// pushed over the threshold that the document names. A piece that goes over one way and not another is tight: it can be
// turned.
func Threshold(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.free() {
		own, err := p.own(s)
		sides := p.rolling(s)
		if err != nil || sides == nil {
			continue
		}
		out = append(out, p.stopped(s, own, sides)...)
		if p.Doc.Place.Threshold > 0 && p.Doc.Feet.Wheel > 0 {
			out = append(out, p.climbs(s, own, sides)...)
		}
	}
	return out
}

// rolling returns the sides of the base of what stands on casters alone.
func (p *Piece) rolling(s standing) []side {
	for _, i := range s.feet {
		if !rolls(p.Feet[i].Spec.Kind) {
			return nil
		}
	}
	return p.base(s.feet)
}

// tipping is one side over which a rolling piece may go, with the figure that says when.
type tipping struct {
	side
	there  []bool
	centre stability.Mass
	inside length.Length
	figure figure.Figure
}

// stopped judges the speed at which the piece goes over when its wheels stop dead.
func (p *Piece) stopped(s standing, own stability.Mass, sides []side) []finding.Finding {
	ts, all := p.tippings(s, own, sides, func(w *tipping) (err error) {
		w.figure, err = stability.GoOver(w.centre.Z, w.inside)
		return err
	})
	if len(ts) == 0 {
		return nil
	}
	worst, best := extremes(ts)
	f := p.on("threshold", s, worst.side, "its wheels stop dead, "+worst.towards()+", "+whatIsThere(p.things(s), worst.there))
	f.Figure, f.Because = worst.figure, []figure.Figure{worst.figure}
	f.Limit = figure.Of("a slow walk", slowWalk, figure.MPerS, &walkFormula)
	f.Verdict = finding.Judge(f.Figure.Value, f.Limit.Value, f.Sense)
	f.View.Marks = []finding.Mark{markOf(worst.centre)}
	if !all {
		f.Assumed = append(f.Assumed, "it holds too many things to try every combination: the worst of those that tip it soonest and highest")
	}
	if f.Verdict == finding.Stands {
		return []finding.Finding{f}
	}
	f.Caution = "Roll it slowly, empty where you can, and look for what may stop its wheels: it goes over towards where it rolls."
	if f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("roll it no faster than %s m/s that way", figure.Digits(math.Floor(worst.figure.Value*100)/100, 2))
		if best.figure.Value >= slowWalk {
			f.Verdict = finding.Tight
			f.Mend += fmt.Sprintf("; or turn it and roll it %s, where it bears %s", best.towards(), best.figure.Show(p.Doc.Fineness))
		}
	}
	return []finding.Finding{f}
}

// tippings works out a figure for every side, with the combination that makes it least; all is false where there are too many
// combinations to try.
func (p *Piece) tippings(s standing, own stability.Mass, sides []side, reckon func(*tipping) error) (out []tipping, all bool) {
	things := p.things(s)
	all = true
	for _, over := range sides {
		sets, whole := combinations(over, own, things)
		all = all && whole
		var least tipping
		for _, there := range sets {
			w := tipping{side: over, there: there}
			w.centre, _ = stability.Centre(with(own, things, there)...)
			w.inside = length.FromMM(over.inside(w.centre.X.MM(), w.centre.Y.MM()))
			if reckon(&w) == nil && (least.figure.Missing() || w.figure.Value < least.figure.Value) {
				least = w
			}
		}
		if !least.figure.Missing() {
			out = append(out, least)
		}
	}
	return out, all
}

func extremes(ts []tipping) (worst, best tipping) {
	worst, best = ts[0], ts[0]
	for _, w := range ts[1:] {
		if w.figure.Value < worst.figure.Value {
			worst = w
		}
		if w.figure.Value > best.figure.Value {
			best = w
		}
	}
	return worst, best
}

// mostCombinations bounds how many combinations of held things are tried one by one.
const mostCombinations = 512

// combinations returns the combinations of held things that differ over a side: things of one mass that stand as far
// inside it and as high are alike, and only their number counts. Where there are too many it returns none, all, and
// those that tip soonest, lie nearest and steady least, and reports false.
func combinations(over side, own stability.Mass, things []piece.Held) (sets [][]bool, all bool) {
	type like struct{ kg, inside, height float64 }
	groups := map[like][]int{}
	var order []like
	for i, h := range things {
		m := heldMass(h)
		k := like{m.Kg, math.Round(over.inside(m.X.MM(), m.Y.MM()) * 1e3), m.Z.MM()}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], i)
	}
	sets = [][]bool{make([]bool, len(things))}
	for _, k := range order {
		if len(sets)*(len(groups[k])+1) > mostCombinations {
			whole := make([]bool, len(things))
			for i := range whole {
				whole[i] = true
			}
			return [][]bool{make([]bool, len(things)), whole, worstHeld(over, own, things), lightest(over, own, things), leastMoment(over, things)}, false
		}
		for _, set := range sets {
			for n := range groups[k] {
				more := append([]bool(nil), set...)
				for _, i := range groups[k][:n+1] {
					more[i] = true
				}
				sets = append(sets, more)
			}
		}
	}
	return sets, true
}

// climbs judges the push over the named threshold against the push that tips the piece.
func (p *Piece) climbs(s standing, own stability.Mass, sides []side) []finding.Finding {
	step, wheel, top := p.Doc.Place.Threshold, p.Doc.Feet.Wheel, p.top(s)
	share, err := stability.StepPush(wheel, step)
	if err != nil {
		return []finding.Finding{p.stepTooHigh(s, sides[0])}
	}
	// the tipping push as a share of the weight: least with the centre nearest to the side
	var ts []tipping
	for _, over := range sides {
		things := p.things(s)
		w := tipping{side: over, there: lightest(over, own, things)}
		w.centre, _ = stability.Centre(with(own, things, w.there)...)
		w.inside = length.FromMM(over.inside(w.centre.X.MM(), w.centre.Y.MM()))
		w.figure = figure.OfLength("inside", w.inside, nil)
		ts = append(ts, w)
	}
	worst, best := extremes(ts)
	tips, err := stability.Push(worst.centre.Kg, worst.inside, top)
	if err != nil {
		return nil
	}
	w := stability.Weight(worst.centre.Kg)
	f := p.on("threshold", s, worst.side, fmt.Sprintf("over a step of %s, %s, %s", p.Doc.Fineness.Show(step), worst.towards(), whatIsThere(p.things(s), worst.there)))
	f.Sense, f.Limit = finding.AtMost, tips
	f.Figure = figure.Of("push over the step", share.Value*w, figure.N, &climbFormula, figure.In("W", w, figure.N), figure.InLength("R", wheel.Half()), figure.InLength("s", step))
	f.Because = []figure.Figure{share, tips}
	f.Verdict = finding.Judge(f.Figure.Value, tips.Value, f.Sense)
	small, err := stability.SmallStep(wheel)
	if err == nil {
		f.Because = append(f.Because, small)
	}
	if f.Verdict == finding.Stands && step.MM() > small.Value {
		f.Verdict = finding.Tight
	}
	p.mendStep(&f, worst, best, share.Value, small.Value, top)
	return []finding.Finding{f}
}

// mendStep says how the step is taken all the same.
func (p *Piece) mendStep(f *finding.Finding, worst, best tipping, share, small float64, top length.Length) {
	step := p.Doc.Place.Threshold
	if f.Verdict == finding.Stands {
		return
	}
	f.Caution = "Lift the leading wheels over, two people to a heavy piece: do not run at a step."
	ramp := "lay a ramp " + p.up(step.Scale(rampRun, 1)) + " long"
	if step.MM() > small {
		ramp += fmt.Sprintf(", or take wheels of %s", p.up(step.Scale(20, 1)))
	}
	f.Mend = ramp
	if f.Verdict != finding.Fails {
		return
	}
	if z := worst.inside.MM() / share; z > p.Doc.Feet.Wheel.Half().MM() {
		f.Mend += fmt.Sprintf("; or push it no higher than %s above the floor", p.Doc.Fineness.Text(length.FromMM(z)))
	}
	if best.inside.MM() > share*top.MM() {
		f.Verdict = finding.Tight
		f.Mend += "; or turn it and roll it over " + best.towards()
	}
}

// stepTooHigh tells that the step can't be climbed at all.
func (p *Piece) stepTooHigh(s standing, over side) finding.Finding {
	step, half := p.Doc.Place.Threshold, p.Doc.Feet.Wheel.Half()
	f := p.on("threshold", s, over, "over a step of "+p.Doc.Fineness.Show(step))
	f.Sense, f.Verdict = finding.AtMost, finding.Fails
	f.Figure = figure.OfLength("step", step, &smallFormula)
	f.Limit = figure.OfLength("half the wheel", half, nil)
	f.Because = []figure.Figure{f.Figure}
	f.Mend = fmt.Sprintf("lay a ramp %s long, or take wheels of %s", p.up(step.Scale(rampRun, 1)), p.up(step.Scale(20, 1)))
	f.Caution = "Lift it over, two people to a heavy piece: do not run at a step."
	return f
}
