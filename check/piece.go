// Package check says whether a piece will do: what fits, what binds, what tips, what can't be screwed
// together. One file holds one check; files whose names follow it hold what it reckons with.
//
// A check is a function from a [Piece] to findings. One that applies prints its finding also when all is
// well; one that does not apply prints none. Where something needed is not known the verdict is unknown
// and says what is missing. Start with [Of] and any check, for example [Tip]. Which checks are run, and
// in which order, is package build's to say.
//
// Promises:
//
//  1. No check panics, and no figure is NaN or infinite, on any piece that resolves and can be taken off.
//  2. The same piece gives the same findings.
//  3. Every finding has a place, parts and a reason; an unknown one says what is missing, one that fails
//     says what mends it, with a figure.
package check

import (
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// Piece is what every check reads: exact geometry, the parts taken off it, and the shop's own limits.
type Piece struct {
	*piece.Resolved
	Parts *part.List
	Shop  *shop.Shop

	// Pushes are the push tests of the standing frame, in the order they were made.
	Pushes []Pushed

	// Keep keeps what takes long to work out by the hash of its input; nil keeps nothing. It never changes an answer.
	Keep func(stage string, input []byte, compute func() any) any

	panels, sticks, nodes, feet []*part.Part // by index into Resolved; nil where there is no part
	solids                      []piece.Body
	standing                    []standing
	frame                       []int     // of each node: sticks that hang together have one number
	racks                       []*racked // of each standing, once its frame is worked out
}

// Of returns the piece that the checks read.
func Of(r *piece.Resolved, parts *part.List, s *shop.Shop) *Piece {
	p := &Piece{
		Resolved: r, Parts: parts, Shop: s,
		panels: make([]*part.Part, len(r.Panels)),
		sticks: make([]*part.Part, len(r.Sticks)),
		nodes:  make([]*part.Part, len(r.Nodes)),
		feet:   make([]*part.Part, len(r.Feet)),
		solids: r.Solids(),
	}
	for i := range parts.Parts {
		pt := &parts.Parts[i]
		for _, at := range pt.Indexes {
			p.shelf(pt.Kind)[at] = pt
		}
	}
	p.frame = frames(r)
	p.standing = p.apart()
	return p
}

func (p *Piece) shelf(k part.Kind) []*part.Part {
	switch k {
	case part.Panel:
		return p.panels
	case part.Pipe:
		return p.sticks
	case part.Fitting:
		return p.nodes
	}
	return p.feet
}

// tags returns the tags among the given ones, empty ones left out, each once.
func tags(all ...string) (out []string) {
	seen := map[string]bool{"": true}
	for _, t := range all {
		if !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	return out
}

// unknown returns f as a finding that can't be judged, with what is missing.
func unknown(f finding.Finding, missing string) []finding.Finding {
	f.Verdict, f.Missing = finding.Unknown, missing
	return []finding.Finding{f}
}

// ceilTo rounds a length up to the next mark of the tape.
func ceilTo(l length.Length, to length.Fineness) length.Length {
	step := max(to.Step, length.Nanometre)
	if over := l % step; over > 0 {
		return l + step - over
	} else if over < 0 {
		return l - over
	}
	return l
}

// up prints a length that must be reached, rounded up to the next mark of the tape.
func (p *Piece) up(l length.Length) string { return p.Doc.Fineness.Text(ceilTo(l, p.Doc.Fineness)) }
