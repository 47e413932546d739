package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// trestle is a table base: two pairs of legs, each joined low by one bar, and one long bar from tee to tee.
const trestle = `
rodwright: 1
piece: trestle
unit: in
fineness: 1/16
place: {room: studio}
wood: {species: hard-maple}
pipe: {standard: npt, size: 3/4}
posts:
  front: {at: front corners of top, inset: 4 in, from: feet, to: top}
  back: {at: back corners of top, inset: 4 in, from: feet, to: top}
rails:
  end: {joins: front with back, level: 6 in}
  stretcher: {joins: end rails}
panels:
  top: {length: 60 in, width: 30 in, thickness: 1 1/2 in, grain: along length, level: 30 in, sits: [on front posts, on back posts]}
feet: caps
`

// Seven bars joined as a tree close no loop; with a second stretcher there is one, hence one union (a public answer;
// loops = bars − joints + groups).
func TestATreeNeedsNoUnionASecondStretcherOne(t *testing.T) {
	f := only(t, Loop(derive(t, trestle)), "the frame")
	verdict(t, f, finding.Stands)
	near(t, "loops", because(t, f, "closed loops").Value, 0, 0)

	two := derive(t, trestle, "stretcher: {joins: end rails}", "stretcher: {joins: end rails, share: 1/4}\n  second: {joins: end rails, share: 3/4}")
	f = only(t, Loop(two), "the frame")
	verdict(t, f, finding.Stands)
	near(t, "loops", because(t, f, "closed loops").Value, 1, 0)
	if two.unions() != 1 || len(f.Parts) != 1 {
		t.Errorf("%d unions, parts %v", two.unions(), f.Parts)
	}
}

// A box of elbows and tees with right-hand threads can't be closed: every loop needs a union. 12 pipes, 8 joints, one
// group: 5 loops.
func TestABoxWithoutUnionsCannotBeClosed(t *testing.T) {
	p := derive(t, hoop)
	f := only(t, Loop(p), "the frame")
	verdict(t, f, finding.Stands)
	near(t, "loops", because(t, f, "closed loops").Value, 5, 0)
	left := 0
	for i := range p.Nodes { // a union that is glued up is none
		if p.Nodes[i].Kind == pipe.Union && left < 2 {
			p.Nodes[i].Kind = pipe.Coupling
			left++
		}
	}
	f = only(t, Loop(p), "the frame")
	verdict(t, f, finding.Fails)
	near(t, "left", f.Figure.Value, 2, 0)
	says(t, f.Mend, "put 2 more")
}

// As many unions as loops do not help where two of them open the same loop.
func TestUnionsAreCountedWhereTheyOpenALoop(t *testing.T) {
	tee, union := pipe.Tee, pipe.Union
	// a square 0-1-2-3 and a square 3-4-5-0, sharing the side 0-3; nodes 6 and 7 are unions in the sides 0-1 and 1-2
	p := frame([]pipe.Kind{tee, tee, tee, tee, tee, tee, union, union},
		[][2]int{{0, 6}, {6, 1}, {1, 7}, {7, 2}, {2, 3}, {3, 0}, {3, 4}, {4, 5}, {5, 0}})
	f := only(t, Loop(p), "the frame")
	near(t, "loops", because(t, f, "closed loops").Value, 2, 0)
	verdict(t, f, finding.Fails)
	near(t, "left", f.Figure.Value, 1, 0)
}

// Two arms from one wall with a rail between them close a loop through the wall.
func TestTheWallClosesALoop(t *testing.T) {
	p := frame([]pipe.Kind{pipe.Flange, pipe.Flange, pipe.Elbow90, pipe.Elbow90}, [][2]int{{0, 2}, {1, 3}, {2, 3}})
	p.Nodes[0].ToWall, p.Nodes[1].ToWall = true, true
	p = Of(p.Resolved, p.Parts, p.Shop)
	f := only(t, Loop(p), "the frame")
	near(t, "loops", because(t, f, "closed loops").Value, 1, 0)
	verdict(t, f, finding.Fails)
}

// A builder found on paper, after several trips to the shop, that two ends of pipe had no link at all.
func TestFramesThatNothingJoinsAreAskedFor(t *testing.T) {
	p := frame([]pipe.Kind{pipe.Cap, pipe.Cap, pipe.Cap, pipe.Cap}, [][2]int{{0, 1}, {2, 3}})
	f := only(t, Loop(p), "stand apart")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "2 frames")
	for _, f := range Loop(derive(t, trestle)) {
		if f.Verdict == finding.Unknown {
			t.Error(told([]finding.Finding{f}))
		}
	}
}

// frame builds a frame by hand from its joints and the pipes between them.
func frame(kinds []pipe.Kind, pipes [][2]int) *Piece {
	r := &piece.Resolved{Doc: &piece.Document{}}
	l := &part.List{NodeTags: make([]string, len(kinds))}
	size, _ := pipe.Lookup("3/4")
	for _, k := range kinds {
		r.Nodes = append(r.Nodes, piece.Node{Kind: k, Size: size, Panel: -1, Foot: -1})
	}
	for i, e := range pipes {
		r.Sticks = append(r.Sticks, piece.Stick{A: e[0], B: e[1], Section: piece.Section{Pipe: &size}})
		for _, n := range e {
			r.Nodes[n].Sticks = append(r.Nodes[n].Sticks, i)
		}
		l.Parts = append(l.Parts, part.Part{Kind: part.Pipe, Tag: "C1", Indexes: []int{i}})
	}
	p := &Piece{Resolved: r, Parts: l, sticks: make([]*part.Part, len(pipes)), nodes: make([]*part.Part, len(kinds))}
	for i := range pipes {
		p.sticks[i] = &l.Parts[i]
	}
	p.frame = frames(r)
	p.standing = p.apart()
	return p
}
