package panel

import "rodwright/cut"

// boundBudget is the least work on what is made when not all could be.
const boundBudget = 100_000

// made returns the answer. Where not all panels could be made, those that were are laid out anew by themselves, as well as
// they can be: cost and bound are theirs.
func (s *search) made() *cut.Answer {
	s.slide()
	a := s.answer()
	if s.best.short == 0 {
		return a
	}
	p := *s.m.p
	p.Panels = append([]Panel(nil), p.Panels...)
	for i := range p.Panels {
		p.Panels[i].Count = 0
	}
	for _, list := range s.best.glue.made() {
		for _, q := range list {
			p.Panels[q.panel].Count++
		}
	}
	rest := newSearch(newModel(&p), s.budget.Again(max(s.budget.Left(), boundBudget)))
	rest.run()
	rest.slide()
	b := rest.answer()
	if rest.best.short > 0 || b.Cost > a.Cost { // too little time: the layout stands, with what bound there is
		bound := 0.0
		if rest.best.short == 0 {
			bound = b.Bound
		}
		a.Cost, a.Bound, a.Proven = cut.Settle(a.Cost, min(bound, a.Cost), false)
		return a
	}
	b.NotPlaced = a.NotPlaced
	return b
}
