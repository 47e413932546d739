package steps

import (
	"math"
	"slices"

	"rodwright/journal"
	"rodwright/part"
	"rodwright/shop"
)

// Redo puts parts right that were made for another plan: one kind of work on them, in the order given.
type Redo struct {
	Parts    []string // their tags
	Work     string
	Title    string
	Units    float64
	Settings int
	Assumed  []string
}

// statesOf tells how far each part is made, by tag; nil where nothing is.
func statesOf(list *part.List) map[string]journal.State {
	var states map[string]journal.State
	for i := range list.Parts {
		q := &list.Parts[i]
		for k, tag := range q.Tags {
			if q.State(k) == journal.Planned {
				continue
			}
			if states == nil {
				states = map[string]journal.State{}
			}
			states[tag] = q.State(k)
		}
	}
	return states
}

// wanting reports whether something is still to be fetched: a panel or pipe whose stock is not in the shop yet, or
// fittings for a frame that is not begun.
func (p *planner) wanting() bool {
	if p.states == nil {
		return true
	}
	return slices.ContainsFunc(p.list.Parts, func(q part.Part) bool {
		switch q.Kind {
		case part.Panel, part.Pipe:
			left := q.Left(journal.InHand)
			return left.Count > 0
		case part.Fitting:
			left := q.Left(journal.InHand)
			return left.Count == q.Count && q.Count > 0
		}
		return false
	})
}

// isDone reports whether the work of a job is done to all panels and pipes it is for.
func (p *planner) isDone(j job) bool {
	to, ok := journal.AfterWork(j.work)
	if !ok || p.states == nil || j.again {
		return false
	}
	if len(j.parts) == 0 {
		return to < journal.Fitted
	}
	made := false
	for i := range p.list.Parts {
		q := &p.list.Parts[i]
		if q.Kind != part.Panel && q.Kind != part.Pipe {
			continue
		}
		for k, tag := range q.Tags {
			switch {
			case !slices.Contains(j.parts, tag):
			case !q.Done(k, j.work):
				return false
			default:
				made = true
			}
		}
	}
	return made
}

// left returns the parts that are not made as far as the state.
func left(qs []part.Part, to journal.State) []part.Part {
	var out []part.Part
	for i := range qs {
		if q := qs[i].Left(to); q.Count > 0 {
			out = append(out, q)
		}
	}
	return out
}

// putRight plans one kind of work on parts that were made for another plan. What is done already to them is done again
// here, so that it is told to no one which parts it is for until it is a step.
func (p *planner) putRight(r Redo) {
	j := job{work: r.Work, title: r.Title, units: r.Units, settings: r.Settings, after: before(p.bought), assumed: r.Assumed, again: true}
	for _, tag := range r.Parts {
		j.after = append(j.after, p.redone[tag])
	}
	n := p.do(j)
	p.work.Steps[n-1].Parts = r.Parts
	for _, tag := range r.Parts {
		p.redone[tag] = n
	}
}

// Only returns the plan with its steps of those kinds of work alone.
func Only(w *Work, s *shop.Shop, works ...string) *Work {
	out := &Work{Unknown: w.Unknown}
	number := map[int]int{}
	for _, st := range w.Steps {
		if !slices.Contains(works, st.Work) {
			continue
		}
		number[st.N] = len(out.Steps) + 1
		st.N = len(out.Steps) + 1
		var after []int
		for _, n := range st.After {
			if k, ok := number[n]; ok {
				after = append(after, k)
			}
		}
		st.After = after
		out.Steps = append(out.Steps, st)
		out.HandsH += st.HandsH
		out.Assumed = once(append(out.Assumed, st.Assumed...))
	}
	p := planner{s: s}
	out.Spans = Schedule(out.Steps, Capacity{s.Settings.HandsPerDay, s.Settings.People, p.held(math.MaxInt)})
	out.Days = Days(out.Spans)
	return out
}
