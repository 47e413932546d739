package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/piece"
	"rodwright/trade/caster"
	"rodwright/trade/stability"
)

var (
	evenFormula = figure.Formula{
		Text: "R = W·(1/n + plane through the moments)", Source: "statics: a stiff piece on equal springs, any mechanics text",
		Range: "an even floor, all feet alike; with three feet exact on every floor",
	}
	threeFormula = figure.Formula{
		Text: "R = W·(share of the triangle beyond the centre of gravity)", Source: "statics of a rigid body on three supports, any mechanics text",
		Range: "a piece that does not give, on the worst three of its feet; four at the corners of a rectangle: W·(½ + min(|ex|, |ey|))",
	}
	averageFormula = figure.Formula{Text: "average = W ÷ n", Source: "arithmetic: the feet together bear the whole"}
)

// Caster says whether the casters or levelling feet carry the piece with all it holds: by the trade's
// division by three, by its load on an even floor and, beside these, on a piece that does not give and rocks
// on three of its feet. Of casters it also says whether enough of them lock.
func Caster(p *Piece) []finding.Finding {
	spec := p.Doc.Feet
	if spec.Kind != piece.StemCaster && spec.Kind != piece.PlateCaster && spec.Kind != piece.Leveller {
		return nil
	}
	var out []finding.Finding
	for _, s := range p.standing {
		if feet := p.ratedFeet(s); len(feet) > 0 {
			out = append(out, p.carries(s, feet)...)
			if rolls(spec.Kind) {
				out = append(out, p.locks(s, feet)...)
			}
		}
	}
	return out
}

// ratedFeet returns the casters or levelling feet among the feet of what stands by itself.
func (p *Piece) ratedFeet(s standing) (feet []int) {
	for _, i := range s.feet {
		if p.Feet[i].Spec.Kind == p.Doc.Feet.Kind {
			feet = append(feet, i)
		}
	}
	return feet
}

func (p *Piece) footTags(feet []int) []string {
	var all []string
	for _, i := range feet {
		all = append(all, p.Parts.FootTags[i])
	}
	return tags(all...)
}

// carries weighs what the feet bear against what they are rated for.
func (p *Piece) carries(s standing, feet []int) []finding.Finding {
	spec := &p.Doc.Feet
	f := finding.Finding{
		Check: "caster", Place: p.place(s) + ", with everything it holds", Parts: p.footTags(feet),
		Assumed: append([]string(nil), spec.Assumed...),
	}
	if len(s.feet) > len(feet) {
		f.Assumed = append(f.Assumed, "the other feet carry nothing")
	}
	if s.wall {
		f.Assumed = append(f.Assumed, "the wall carries nothing")
	}
	if !(spec.RatedKg > 0) {
		return unknown(f, "what each of its feet is rated for")
	}
	l, err := p.load(s, feet)
	if err != nil {
		return unknown(f, err.Error())
	}
	f.Limit = figure.Of("rated", spec.RatedKg, figure.Kg, nil)
	f.Because = l.figures()
	p.judgeLoad(&f, l)
	if f.Verdict != finding.Stands && rolls(spec.Kind) {
		f.Caution = "An overloaded caster breaks without warning: do not roll the piece fully loaded over a step."
	}
	return []finding.Finding{f}
}

// judgeLoad gives the verdict. Three and four feet are judged by the greater of the trade's share and the
// load on an even floor. Of more it can only be said that they stand when even the worst three do, and that
// they fail when the average does.
func (p *Piece) judgeLoad(f *finding.Finding, l load) {
	rated := p.Doc.Feet.RatedKg
	f.Figure = l.even
	if l.share.Value > l.even.Value {
		f.Figure = l.share
	}
	f.Verdict = finding.Judge(f.Figure.Value, rated, finding.AtMost)
	past := l.three.Value > rated
	switch {
	case l.count > 4 && l.average.Value > rated:
		f.Verdict, f.Figure = finding.Fails, l.average
	case l.count > 4 && (past || f.Verdict == finding.Fails):
		f.Verdict, f.Limit = finding.Unknown, figure.Figure{}
		f.Missing = fmt.Sprintf("how much the piece gives between its %d feet: one that gives loads each with up to %s, one that does not with up to %s", l.count,
			figure.Show(f.Figure.Value, figure.Kg, p.Doc.Fineness), figure.Show(l.three.Value, figure.Kg, p.Doc.Fineness))
	case past && f.Verdict == finding.Stands:
		f.Verdict = finding.Tight
		f.Assumed = append(f.Assumed, "the frame gives enough for at least three feet to carry; on one that does not, the worst bears more than it is rated for")
	}
	if f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("take feet rated for at least %s kg each, or hold %s kg less", figure.Digits(math.Ceil(f.Figure.Value), 3),
			figure.Digits(math.Ceil((f.Figure.Value-rated)*float64(min(l.count, 3))), 3))
	}
}

var leastLocks = figure.Formula{Text: "locks ≥ 2", Source: "common practice, no source", Range: "one locked wheel lets the piece turn about it"}

// locks says whether enough casters lock, and on a floor with a known slope whether they hold there.
func (p *Piece) locks(s standing, feet []int) []finding.Finding {
	locked := 0
	for _, i := range feet {
		if p.Feet[i].Locked {
			locked++
		}
	}
	f := finding.Finding{
		Check: "caster", Place: p.place(s) + ", locked", Parts: p.footTags(feet), Sense: finding.AtLeast,
		Figure: figure.Of("casters that lock", float64(locked), figure.Count, nil),
		Limit:  figure.Of("least", 2, figure.Count, &leastLocks),
	}
	f.Because = []figure.Figure{f.Limit}
	if locked < 2 {
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("take %d of the casters with a lock", 2)
		f.Caution = "A piece that rolls by itself can hurt someone: chock the wheels until they lock."
	}
	slope := p.Doc.Place.Slope
	if !(slope > 0) {
		return []finding.Finding{f}
	}
	return append([]finding.Finding{f}, p.holdsOn(f, slope, float64(locked)/float64(len(feet)))...)
}

// holdsOn says whether the locked wheels hold the piece on the floor's slope, in degrees.
func (p *Piece) holdsOn(f finding.Finding, slope, share float64) []finding.Finding {
	f.Place += " on a floor that slopes"
	f.Verdict, f.Mend, f.Caution = finding.Stands, "", ""
	holds, err := stability.HoldingSlope(share, 0)
	if err != nil {
		return unknown(finding.Finding{Check: f.Check, Place: f.Place, Parts: f.Parts}, err.Error())
	}
	f.Figure, f.Limit = holds, figure.Of("slope of the floor", slope, figure.Deg, nil)
	f.Because = []figure.Figure{holds}
	f.Assumed = []string{"every foot bears the same"}
	if f.Verdict = finding.Judge(holds.Value, slope, finding.AtLeast); f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("lock more of the wheels: it needs %s of its load on locked ones", figure.Show(100*math.Tan(slope*math.Pi/180)/stability.RubberOnFloor, figure.Percent, p.Doc.Fineness))
		f.Caution = "A piece that rolls by itself can hurt someone: chock the wheels."
	}
	return []finding.Finding{f}
}

// plateMoment returns the moment with which a swivelled wheel pries at its plate or stem.
func (p *Piece) plateMoment(kg float64) (figure.Figure, bool) {
	f, err := caster.PlateMoment(stability.Weight(kg), p.Doc.Feet.Offset)
	return f, err == nil && f.Value > 0
}
