package part

import (
	"slices"

	"rodwright/journal"
)

// State returns how far the i-th part of the kind is made.
func (p *Part) State(i int) journal.State {
	if i >= len(p.States) {
		return journal.Planned
	}
	return p.States[i]
}

func (p *Part) worksOf(i int) []string {
	if i >= len(p.Works) {
		return nil
	}
	return p.Works[i]
}

// Done reports whether a kind of work is done to the i-th part of the kind: its state lies beyond what the work leads
// to, or the work was told. Openings are cut one kind after the other, so that the state alone does not tell.
func (p *Part) Done(i int, work string) bool {
	to, ok := journal.AfterWork(work)
	switch state := p.State(i); {
	case !ok || state < journal.BlankCut:
		return false
	case state > journal.Shaped || to != journal.Shaped:
		return state >= to
	}
	told := p.worksOf(i)
	if work == "mark" { // what is cut was marked
		return slices.ContainsFunc(told, func(w string) bool { to, _ := journal.AfterWork(w); return to == journal.Shaped })
	}
	return slices.Contains(told, work) || slices.Contains(told, journal.Shaped.String())
}

// Left returns the kind with those of its parts that are not made as far as the state. Where all are, its count is
// zero.
func (p *Part) Left(to journal.State) Part {
	left := *p
	if p.States == nil {
		return left
	}
	left.Tags, left.Indexes, left.States, left.Works = nil, nil, nil, nil
	for i, tag := range p.Tags {
		if p.State(i) >= to {
			continue
		}
		left.Tags, left.States, left.Works = append(left.Tags, tag), append(left.States, p.State(i)), append(left.Works, p.worksOf(i))
		if i < len(p.Indexes) {
			left.Indexes = append(left.Indexes, p.Indexes[i])
		}
	}
	left.Count = len(left.Tags)
	return left
}

// Left returns the list with those panels and pipes only that are not made as far as the state, and with the fittings
// at whose joints none is fitted yet. Totals and what is used up stay those of the whole piece.
func (l *List) Left(to journal.State) *List {
	left := *l
	left.Parts = nil
	for i := range l.Parts {
		p := l.Parts[i].Left(to)
		if l.Parts[i].Kind == Fitting && l.Parts[i].States != nil {
			p = l.Parts[i].Left(journal.Fitted)
		}
		if p.Count > 0 {
			left.Parts = append(left.Parts, p)
		}
	}
	return &left
}

// Made returns the list with the states of its parts and the kinds of work that were told, by tag; parts that are not
// named are planned.
func (l *List) Made(states map[string]journal.State, works map[string][]string) *List {
	made := *l
	made.Parts = append([]Part(nil), l.Parts...)
	for i := range made.Parts {
		p := &made.Parts[i]
		for k, tag := range p.Tags {
			if s, ok := states[tag]; ok {
				if p.States == nil {
					p.States = make([]journal.State, len(p.Tags))
				}
				p.States[k] = s
				if p.Works == nil {
					p.Works = make([][]string, len(p.Tags))
				}
				p.Works[k] = works[tag]
			}
		}
	}
	return &made
}
