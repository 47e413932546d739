package sheet

import (
	"context"

	"rodwright/cut"
)

// BoundByWeights is the lower bound of the cost of p by scales, and the one by all steps of the alternation.
func BoundByWeights(p *Problem) (scaled, alternated float64) {
	m := newModel(p)
	budget := cut.NewBudget(context.Background(), cut.Limits{})
	scaled = m.bound(m.needs(), budget)
	if a := m.alternation(budget); a != nil {
		for a.step(budget) {
		}
		alternated = a.best
	}
	return scaled, alternated
}

// Constructed is the value of the best filling of the only sheet by construction, and the bound it leaves.
func Constructed(p *Problem) (value, bound float64) {
	m := newModel(p)
	f, _, bound := m.construct(0, cut.NewBudget(context.Background(), cut.Limits{}))
	return m.trueValue(f), bound
}

// PooledPlan fills sheets a few times, takes them into the pool and returns a plan from it, as an answer.
func PooledPlan(p *Problem, seed uint64) *cut.Answer {
	s := newSearch(newModel(p), cut.NewBudget(context.Background(), cut.Limits{}))
	s.dice = cut.NewDice(seed)
	s.best.left = make([]int, len(s.m.kinds))
	s.pool = newPool(s)
	if s.pool == nil {
		return s.answer()
	}
	for range 3 {
		for _, f := range s.build(s.m.needs(), s.m.counts(), s.manners(1)).sheets {
			s.pool.add(f)
		}
		s.pool.price()
	}
	s.offer(s.pool.plan())
	return s.answer()
}

// BySections is one sheet of the first store filled by sections, as an answer with all parts of it.
func BySections(p *Problem, seed uint64) *cut.Answer {
	m := newModel(p)
	s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
	s.dice = cut.NewDice(seed)
	s.best.left = m.needs()
	how := s.manners(1)[0]
	s.bySections(&how)
	if f := s.f.bySections(0, m.needs(), how); len(f.parts) > 0 {
		for _, q := range f.parts {
			s.best.left[q.kind]--
		}
		s.best.sheets = []filled{f}
	}
	return s.answer()
}

// Rows is a layout by rows alone, as an answer, and how many parts that fit a sheet found no place.
func Rows(p *Problem) (a *cut.Answer, left int) {
	m := newModel(p)
	s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
	need := m.needs()
	s.offer(plan{m.rows(need, m.counts()), need})
	for _, n := range need {
		left += n
	}
	return s.answer(), left
}

// Fullest fills a sheet of every store by chance and says what it holds of the parts' areas, and what it is taken to
// hold at most.
func Fullest(p *Problem, seed uint64) (out [][2]float64) {
	m := newModel(p)
	s := newSearch(m, cut.NewBudget(context.Background(), cut.Limits{}))
	s.dice = cut.NewDice(seed)
	for st := range m.stores {
		out = append(out, [2]float64{s.f.fill(st, m.needs(), s.manners(1)[0]).value, m.holds(st)})
	}
	return out
}
