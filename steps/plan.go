package steps

import (
	"errors"
	"math"
	"slices"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// errOther says that the inputs do not belong to each other.
var errOther = errors.New("the parts are not those of this piece: take them off again")

// Plan orders the work on a piece: what is bought, milled, glued, shaped and finished, the pipe that is
// made meanwhile, how all of it is put together and comes to its place. layouts may be empty; cuts are
// then grouped by the parts' own sizes.
//
// Promises:
//
//  1. After names earlier steps only.
//  2. Every part of the list is in at least one step.
//  3. No hours are negative.
//  4. The same input gives the same plan.
//
// Work that is done already, by the states of the parts, is left out. What puts parts right that were made for
// another plan comes before all that is done to them.
//
// The error says that the parts are not those of the piece, or names a setting of the shop that can't be.
func Plan(r *piece.Resolved, list *part.List, layouts []Layout, s *shop.Shop, redo ...Redo) (*Work, error) {
	if len(list.PanelTags) != len(r.Panels) || len(list.StickTags) != len(r.Sticks) || len(list.NodeTags) != len(r.Nodes) {
		return nil, errOther
	}
	p := &planner{r: r, list: list, layouts: layouts, s: s, work: &Work{}, laid: map[int]bool{}, fine: length.Sixteenth}
	if r.Doc != nil && r.Doc.Fineness.Step > 0 {
		p.fine = r.Doc.Fineness
	}
	p.states, p.redone = statesOf(list), map[string]int{}
	if p.wanting() {
		p.bought = p.do(job{work: "buy", units: 1, title: "Fetch what is on the buying list and check every piece against it: lengths, threads, straight boards"})
	}
	for _, r := range redo {
		p.putRight(r)
	}
	last := p.build()
	p.deliverLast(last)
	if p.err != nil {
		return nil, p.err
	}
	p.add()
	return p.work, nil
}

// build plans everything up to the standing piece and returns its last step.
func (p *planner) build() int {
	blanks := p.boards()
	var shaped []int
	panels := p.of(func(q part.Part) bool { return q.Kind == part.Panel })
	for _, q := range left(panels, journal.Filled) {
		from := blanks[q.Tag]
		if from == 0 {
			from = p.bought
		}
		shaped = append(shaped, p.shape(q, from))
	}
	p.handled, p.cured = p.surface(panels, shaped)
	last := p.pipework()
	last = p.dryFit(append(shaped, last)...)
	last = p.vise(last)
	last = p.caps(last)
	last = p.frame(last)
	if p.onWall() {
		last = p.deliver(last, p.handled)
		last = p.anchor(last)
		p.delivered = true
	}
	return p.feet(p.panels(last))
}

// onWall reports whether a flange goes to a wall: such a piece is put together at its place.
func (p *planner) onWall() bool {
	return slices.ContainsFunc(p.r.Nodes, func(n piece.Node) bool { return n.ToWall })
}

// deliverLast levels the piece and hands it over once its finish is hard.
func (p *planner) deliverLast(last int) {
	last = p.level(last)
	if !p.delivered {
		p.deliver(last, p.handled, p.cured)
	}
}

// add sums up the plan.
func (p *planner) add() {
	w := p.work
	for _, s := range w.Steps {
		w.HandsH += s.HandsH
		w.Assumed = once(append(w.Assumed, s.Assumed...))
	}
	w.Unknown = once(w.Unknown)
	w.Spans = Schedule(w.Steps, Capacity{p.s.Settings.HandsPerDay, p.s.Settings.People, p.held(math.MaxInt)})
	w.Days = Days(w.Spans)
}
