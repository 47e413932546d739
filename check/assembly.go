package check

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/trade/pipe"
)

var (
	turnableFormula = figure.Formula{
		Text:   "threads left when everything that can be turned is undone",
		Source: "counted by taking the frame apart; a thread once undone never hinders another, so that what is left can be turned in no order",
		Range:  "right-handed threads, each step turns one group onto another; unions open; a whole turn must be free; the bench is not reckoned with",
	}
	swingFormula = figure.Formula{
		Text:   "swing = greatest distance of what is turned from the pipe it is turned about",
		Source: "geometry of the piece",
		Range:  "the lesser of the two groups is turned",
	}
)

// Assembly says whether hands can put the frame together: whether there is an order in which every thread is turned, one
// group of parts onto another, with room to swing. It fails where a pipe is caught in a loop without a union, or where
// one group would strike the other, and names what to add. See [Assemble] for the order itself.
func Assembly(p *Piece) []finding.Finding {
	if len(p.Sticks) == 0 {
		return nil
	}
	o := Assemble(p)
	f := finding.Finding{
		Check: "assembly", Place: "putting the frame together",
		Figure: figure.Of("threads that can't be turned", float64(len(o.Stuck)), figure.Count, &turnableFormula,
			figure.In("threads", float64(o.threads()+len(o.Stuck)), figure.Count), figure.In("unions", float64(len(o.Unions)), figure.Count)),
		Limit: figure.Of("allowed", 0, figure.Count, nil),
		Assumed: []string{
			"flanges are wrenched onto their pipes first, and screwed to wood or wall last",
			"unions are drawn up last: their halves in line, the frame sprung apart by the depth of a half, room for the nut",
			"panels with notches are put in from their open side",
		},
	}
	f.Because = append([]figure.Figure{f.Figure}, p.swings(o)...)
	if len(o.Stuck) > 0 {
		p.stuckFinding(&f, o)
		return []finding.Finding{f}
	}
	for _, s := range p.standing {
		f.Parts = append(f.Parts, p.tagsOf(standing{sticks: s.sticks, nodes: s.nodes})...)
	}
	f.Parts = tags(f.Parts...)
	return []finding.Finding{f}
}

// threads counts the threads that are turned.
func (o Order) threads() (n int) {
	for _, s := range o.Steps {
		if s.Panel < 0 {
			n++
		}
	}
	return n
}

// swings tells the widest swing of the order, and of how many parts the largest group is that is turned.
func (p *Piece) swings(o Order) []figure.Figure {
	wide, many := -1, -1
	for i, s := range o.Steps {
		if s.Panel >= 0 {
			continue
		}
		if wide < 0 || s.Swing > o.Steps[wide].Swing {
			wide = i
		}
		if many < 0 || len(s.Turned) > len(o.Steps[many].Turned) {
			many = i
		}
	}
	if wide < 0 {
		return nil
	}
	about := func(s Joining) figure.Input {
		return figure.InText("about", p.Sticks[s.Stick].Name+" at the "+p.Nodes[s.Node].Place)
	}
	return []figure.Figure{
		figure.OfLength("widest swing", length.FromMM(o.Steps[wide].Swing), &swingFormula, about(o.Steps[wide])),
		figure.Of("parts of the largest group turned", float64(len(o.Steps[many].Turned)), figure.Count, nil, about(o.Steps[many])),
	}
}

// stuckFinding tells what can't be turned and what mends it.
func (p *Piece) stuckFinding(f *finding.Finding, o Order) {
	f.Verdict = finding.Fails
	var caught []int
	for _, s := range o.Stuck {
		f.Parts = append(f.Parts, p.Parts.StickTags[s.Stick], p.Parts.NodeTags[s.Node])
		if s.Loop {
			caught = add(caught, s.Stick)
		}
	}
	f.Parts = tags(f.Parts...)
	if len(caught) > 0 {
		f.Mend = p.unionFor(caught)
		return
	}
	s := o.Stuck[0]
	for _, other := range o.Stuck {
		if other.By < s.By {
			s = other
		}
	}
	f.Place += ", at the " + p.Nodes[s.Node].Place
	f.Mend = fmt.Sprintf("turned about the %s, the %s strikes the %s: move them %s farther apart, or put a union into 1 pipe between them",
		p.Sticks[s.Stick].Name, s.names[0], s.names[1], p.up(length.FromMM(s.By)))
	if s.panel {
		f.Mend = fmt.Sprintf("%s can't be laid while the posts in its holes are joined above and below it: let at least 1 of its holes open to an edge as a notch",
			strings.ToLower(s.names[1][:1])+s.names[1][1:])
	}
}

// unionFor says into which of the pipes of loops without a union one goes: the longest level one that has room, else the
// longest.
func (p *Piece) unionFor(caught []int) string {
	best := slices.MaxFunc(caught, func(a, b int) int {
		x, y := p.Sticks[a], p.Sticks[b]
		if level := btoi(x.Dir.Z == 0) - btoi(y.Dir.Z == 0); level != 0 {
			return level
		}
		return int(min(max(x.Between-y.Between, -1), 1))
	})
	s := p.Sticks[best]
	mend := fmt.Sprintf("put 1 union into the %s: it is caught between two fittings that are fixed, and all threads are right-handed", s.Name)
	union, err := p.Shop.Fitting(*s.Section.Pipe, pipe.Union)
	if err != nil {
		return mend
	}
	least := pipe.LeastBetween(p.Nodes[s.A].Fitting, union) + pipe.LeastBetween(union, p.Nodes[s.B].Fitting)
	if s.Between < least {
		mend += "; it must be at least " + p.up(least) + " from joint to joint for that"
	}
	return mend
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}
