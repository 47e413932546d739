package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/trade/pipe"
)

var (
	loopFormula = figure.Formula{
		Text:   "loops = pipes − joints + groups",
		Source: "cycle rank of a graph, any text on graph theory; right-hand threads can't be screwed at once into two fixed fittings, common practice, no source",
		Range:  "every end counts as a joint; all flanges on the wall count as one",
	}
	openFormula = figure.Formula{
		Text: "loops left when every union is undone", Source: "counted by taking the frame apart; what can be screwed together is a forest",
	}
	apartFormula = figure.Formula{Text: "frames and panels that nothing joins", Source: "counted on the piece"}
)

// Loop says how many closed loops the frame has and whether undoing its unions opens them all, and tells of
// frames that nothing joins to the rest.
func Loop(p *Piece) []finding.Finding {
	if len(p.Sticks) == 0 {
		return nil
	}
	pipes, joints, groups := p.closedFrame()
	loops := figure.Of("closed loops", float64(pipe.LoopCount(pipes, joints, groups)), figure.Count, &loopFormula,
		figure.In("pipes", float64(pipes), figure.Count), figure.In("joints", float64(joints), figure.Count),
		figure.In("groups", float64(groups), figure.Count))
	unions, left := p.unions(), p.loopsLeft()
	f := finding.Finding{
		Check: "loop", Place: "the frame",
		Figure: figure.Of("loops that no union opens", float64(left), figure.Count, &openFormula,
			figure.In("closed loops", loops.Value, figure.Count), figure.In("unions", float64(unions), figure.Count)),
		Limit:   figure.Of("allowed", 0, figure.Count, nil),
		Assumed: []string{"flanges on wood are screwed down last, so that no loop is closed through a panel before"},
	}
	f.Because = []figure.Figure{loops, f.Figure}
	for i, n := range p.Nodes {
		if n.Kind == pipe.Union {
			f.Parts = append(f.Parts, p.Parts.NodeTags[i])
		}
	}
	if f.Parts = tags(f.Parts...); len(f.Parts) == 0 {
		for _, s := range p.standing {
			f.Parts = append(f.Parts, p.tagsOf(standing{sticks: s.sticks})...)
		}
		f.Parts = tags(f.Parts...)
	}
	if left > 0 {
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("put %d more into level pipes of the loops that are left, or open these", left)
	}
	return append([]finding.Finding{f}, p.framesApart()...)
}

// closedFrame counts pipes, joints and groups as they were before unions parted any pipe: a union adds one
// pipe and one joint, so that the loops stay as many. Flanges on the wall are one joint.
func (p *Piece) closedFrame() (pipes, joints, groups int) {
	onWall, seen := 0, map[int]bool{}
	for i, n := range p.Nodes {
		if n.ToWall {
			onWall++
		}
		seen[p.frame[i]] = true
	}
	pipes, joints, groups = len(p.Sticks), len(p.Nodes), len(seen)
	if onWall > 0 {
		joints -= onWall - 1
	}
	u := p.unions()
	return pipes - u, joints - u, groups
}

func (p *Piece) unions() (n int) {
	for _, node := range p.Nodes {
		if node.Kind == pipe.Union {
			n++
		}
	}
	return n
}

// loopsLeft counts the loops that are left when every union is undone: the frame is put together again pipe by
// pipe, one end of each union hanging free.
func (p *Piece) loopsLeft() (left int) {
	f := newForest(len(p.Nodes) + len(p.Sticks))
	wall := -1
	for i, n := range p.Nodes {
		switch {
		case !n.ToWall:
		case wall < 0:
			wall = i
		default:
			f.join(wall, i)
		}
	}
	for i, s := range p.Sticks {
		a, b := s.A, s.B
		if p.Nodes[b].Kind == pipe.Union && p.Nodes[b].Sticks[0] == i {
			b = len(p.Nodes) + i // the half of the union that comes off
		}
		if p.Nodes[a].Kind == pipe.Union && p.Nodes[a].Sticks[0] == i {
			a = len(p.Nodes) + i
		}
		if !f.join(a, b) {
			left++
		}
	}
	return left
}

// framesApart tells of a document whose frames nothing joins: they may be meant to stand apart, or a link has
// been forgotten.
func (p *Piece) framesApart() []finding.Finding {
	n := 0
	var all []string
	for _, s := range p.standing {
		if len(s.sticks) > 0 {
			n++
			all = append(all, p.tagsOf(s)...)
		}
	}
	if n < 2 {
		return nil
	}
	f := finding.Finding{Check: "loop", Place: "frames that stand apart", Parts: tags(all...)}
	f.Because = []figure.Figure{figure.Of("frames apart", float64(n), figure.Count, &apartFormula)}
	return unknown(f, fmt.Sprintf("whether the %d frames are meant to stand apart: no stick and no panel joins them", n))
}
