package check

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/way"
)

var (
	doorFormula = figure.Formula{
		Text: "the piece's two lesser sizes ≤ the door's width and height", Source: "geometry",
		Range: "carried through straight, in any position, without turning in the opening",
	}
)

// Path says whether the finished piece passes each door and each turn on its way and can be stood up under the ceiling.
func Path(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		out = append(out, p.path(s)...)
	}
	return out
}

func (p *Piece) path(s standing) []finding.Finding {
	size := p.outerSize(s)
	f := finding.Finding{Check: "path", Place: p.place(s), Parts: p.tagsOf(s)}
	var out []finding.Finding
	for _, d := range p.Doc.Place.Doors {
		out = append(out, p.through(f, size, d))
	}
	for _, t := range p.Doc.Place.Turns {
		out = append(out, p.round(f, size, t))
	}
	if len(p.Doc.Place.Doors) == 0 {
		way := f
		way.Place += ", the way to its place"
		out = append(out, unknown(way, "the doors on the way: name them under place, with width and height")...)
	}
	if p.Doc.Place.Ceiling != nil {
		out = append(out, p.standUp(f, size, *p.Doc.Place.Ceiling))
	}
	return out
}

// outerSize returns the outer sizes of what stands by itself along x, y and z, without what it holds.
func (p *Piece) outerSize(s standing) [3]length.Length {
	lo, hi := p.Min, p.Max
	if len(p.standing) > 1 {
		lo, hi = p.bounds(s)
	}
	if len(s.feet) > 0 {
		lo.Z = min(lo.Z, 0) // a levelling foot has no body, but the piece stands on the floor
	}
	return [3]length.Length{hi.X - lo.X, hi.Y - lo.Y, hi.Z - lo.Z}
}

// bounds returns the corners of the box round the bodies of what stands by itself.
func (p *Piece) bounds(s standing) (lo, hi piece.Vec) {
	first := true
	for _, b := range p.solids {
		of := map[piece.BodyKind][]int{piece.PanelBody: s.panels, piece.StickBody: s.sticks, piece.FittingBody: s.nodes, piece.FootBody: s.feet}[b.Kind]
		if !slices.Contains(of, b.Index) {
			continue
		}
		l, h := b.Shape.Bounds()
		if first {
			lo, hi, first = piece.Vec(l), piece.Vec(h), false
		}
		lo = piece.Vec{X: min(lo.X, l.X), Y: min(lo.Y, l.Y), Z: min(lo.Z, l.Z)}
		hi = piece.Vec{X: max(hi.X, h.X), Y: max(hi.Y, h.Y), Z: max(hi.Z, h.Z)}
	}
	return lo, hi
}

// through finds the position in which the piece passes the door with the most room to spare.
func (p *Piece) through(f finding.Finding, s [3]length.Length, d piece.Door) finding.Finding {
	slices.Sort(s[:])
	wide, high := min(d.Width, d.Height), max(d.Width, d.Height)
	// The two lesser sizes are what must pass; the lesser of them goes to the door's lesser measure.
	size, limit := s[0], wide
	if float64(s[1])*float64(wide) > float64(s[0])*float64(high) {
		size, limit = s[1], high
	}
	f.Place += " through " + d.Name
	f.Figure = figure.OfLength("size that must pass", size, &doorFormula, figure.InLength("lesser", s[0]), figure.InLength("middle", s[1]))
	f.Limit = figure.OfLength("opening", limit, nil)
	f.Assumed = []string{"the piece is carried whole, as it stands on its feet or on a side"}
	f.Because = []figure.Figure{f.Figure}
	if f.Verdict = finding.Judge(size.MM(), limit.MM(), finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("make it %s less there, take feet or frame off for the way, or join it at its place", p.up(size-limit))
	}
	return f
}

// standUp weighs the diagonal that swings under the ceiling: of the end where the piece lies on its back or
// front, of the front where it lies on an end. A piece that passes every door upright need not be stood up.
func (p *Piece) standUp(f finding.Finding, s [3]length.Length, ceiling length.Length) finding.Finding {
	f.Place += " stood up under the ceiling"
	lesser, greater := min(s[0], s[1]), max(s[0], s[1])
	flat, err := way.StandUp(s[2], lesser)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	onEdge, err := way.StandUp(s[2], greater)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	flat.Name, onEdge.Name = "diagonal over its lesser side", "diagonal over its greater side"
	f.Figure, f.Because = flat, []figure.Figure{flat, onEdge}
	if p.upright(s) {
		f.Figure = figure.OfLength("height", s[2], nil)
		f.Because = []figure.Figure{f.Figure, flat, onEdge}
		f.Assumed = []string{"it passes every door upright and need not be stood up"}
	}
	f.Limit = figure.OfLength("ceiling", ceiling, nil)
	f.Verdict = finding.Judge(f.Figure.Value, ceiling.MM(), finding.AtMost)
	switch {
	case f.Verdict == finding.Fails:
		f.Mend = fmt.Sprintf("bring it in upright, join it at its place, or make it %s lower", p.up(p.tooHigh(f.Figure, lesser, ceiling, s[2])))
	case f.Verdict == finding.Stands && len(f.Assumed) == 0 && onEdge.Value > ceiling.MM():
		f.Verdict = finding.Tight
		f.Assumed = []string{"it is laid flat before it is stood up: on its edge it does not come up"}
	}
	return f
}

// tooHigh returns by how much a piece must be lower to be stood up, or to stand, under a ceiling.
func (p *Piece) tooHigh(f figure.Figure, w, ceiling, high length.Length) length.Length {
	if f.Formula == nil || w >= ceiling {
		return max(high-ceiling, length.Nanometre)
	}
	return high - length.FromMM(math.Sqrt(ceiling.MM()*ceiling.MM()-w.MM()*w.MM())) + length.Nanometre
}

// upright reports whether every door is named and lets the piece pass as it stands.
func (p *Piece) upright(s [3]length.Length) bool {
	for _, d := range p.Doc.Place.Doors {
		if s[2] > d.Height || min(s[0], s[1]) > d.Width {
			return false
		}
	}
	return len(p.Doc.Place.Doors) > 0
}
