// Package explain tells of a layout what a maker asks of it: where the stock went that was opened (Shares), why
// fewer pieces of stock are not enough (WhyNotFewer), and what one more piece of stock would change (OneMore).
//
// It reckons from the problem and the answer alone. Words puts an explanation into sentences, with lengths
// and money printed as its user prints them.
package explain

import (
	"rodwright/cut"
)

// Use says what became of a share of the stock.
type Use string

// The uses, in the order in which they are told.
const (
	Parts    Use = "parts" // of boards the finished panels
	Later    Use = "later" // on the strips still: taken off when they are jointed and the panel is trimmed
	SawCuts  Use = "saw cuts"
	Trimming Use = "trimming" // ends and edges of the stock
	Defects  Use = "defects"
	Kept     Use = "kept"
	Lost     Use = "lost"
)

// Share is how much of the stock that was opened served one use.
type Share struct {
	Use    Use
	Amount float64 // millimetres of sticks, square millimetres of boards and sheets
	Of     float64 // share of all that was opened, 0 to 1
}

// Shares splits what a layout opens; the amounts add up to it. What is nothing is left out.
func Shares(p cut.Problem, a *cut.Answer) (out []Share) {
	opened := p.Opened(a)
	if opened <= 0 {
		return nil
	}
	w := a.Waste
	parts := opened - w.Total()
	later := onStrips(p.Boards, a)
	for _, s := range []Share{
		{Use: Parts, Amount: parts - later}, {Use: Later, Amount: later}, {Use: SawCuts, Amount: w.Kerf}, {Use: Trimming, Amount: w.Trim},
		{Use: Defects, Amount: w.Defect}, {Use: Kept, Amount: w.LeftoverUseful}, {Use: Lost, Amount: w.LeftoverLost},
	} {
		if s.Of = s.Amount / opened; s.Of > 1e-12 {
			out = append(out, s)
		}
	}
	return out
}

// onStrips is what the strips of glued-up panels hold more than the finished panels: square millimetres.
func onStrips(p *cut.PanelProblem, a *cut.Answer) (sum float64) {
	if p == nil {
		return 0
	}
	finished := map[string]float64{}
	for _, q := range p.Panels {
		finished[q.Tag] = q.Length.MM() * q.Width.MM()
	}
	for _, g := range a.Panels {
		for _, s := range g.Strips {
			sum += s.Size[0].MM() * s.Size[1].MM()
		}
		sum -= finished[g.Tag]
	}
	return max(0, sum)
}
