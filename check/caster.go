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

// plateMoment returns the moment with which a swivelled wheel pries at its plate or stem.
func (p *Piece) plateMoment(kg float64) (figure.Figure, bool) {
	f, err := caster.PlateMoment(stability.Weight(kg), p.Doc.Feet.Offset)
	return f, err == nil && f.Value > 0
}
