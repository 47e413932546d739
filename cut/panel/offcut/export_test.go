package offcut

import (
	"context"

	"rodwright/cut"
)

// Anew writes an answer anew from where its strips lie.
func Anew(p *cut.PanelProblem, a *cut.Answer) *cut.Answer {
	w := newWork(p, a, cut.NewBudget(context.Background(), cut.Limits{Nodes: 1}))
	return w.answer(a, w.read(a))
}
