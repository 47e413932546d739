package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/piece"
	"rodwright/solid"
)

var overlapFormula = figure.Formula{
	Text: "depth of the space that two bodies both fill", Source: "geometry of the piece",
	Range: "touching is no overlap",
}

// Overlap says which two things of the piece would fill the same space: panel, pipe, a fitting's band, what a
// caster sweeps, a thing held. When none do, one finding says so.
func Overlap(p *Piece) []finding.Finding {
	type things struct{ a, b thing }
	var out []finding.Finding
	at := map[things]int{} // a fitting has several bodies: one finding tells of the deepest
	for i := range p.solids {
		for j := i + 1; j < len(p.solids); j++ {
			a, b := p.solids[i], p.solids[j]
			if p.MayMeet(a, b) || solid.Apart(a.Shape, b.Shape) {
				continue
			}
			m, ok := solid.Overlap(a.Shape, b.Shape)
			if !ok {
				continue
			}
			f, k := p.overlap(a, b, m), things{thing{a.Kind, a.Index}, thing{b.Kind, b.Index}}
			n, seen := at[k]
			switch {
			case !seen:
				at[k] = len(out)
				out = append(out, f)
			case f.Figure.Value > out[n].Figure.Value:
				out[n] = f
			}
		}
	}
	if len(out) > 0 || len(p.solids) < 2 {
		return out
	}
	return []finding.Finding{p.clear()}
}

// thing names what a body is of.
type thing struct {
	kind  piece.BodyKind
	index int
}

// clear says that nothing overlaps.
func (p *Piece) clear() finding.Finding {
	none := figure.OfLength("deepest overlap", 0, &overlapFormula, figure.In("bodies", float64(len(p.solids)), figure.Count))
	f := finding.Finding{
		Check: "overlap", Place: "the whole piece", Figure: none,
		Limit: figure.OfLength("allowed", 0, nil), Because: []figure.Figure{none},
	}
	for _, s := range p.standing {
		f.Parts = append(f.Parts, p.tagsOf(s)...)
	}
	f.Parts = tags(f.Parts...)
	return f
}

func (p *Piece) overlap(a, b piece.Body, m solid.Meeting) finding.Finding {
	depth := figure.OfLength("depth", m.Depth, &overlapFormula, figure.InText("of", a.Name), figure.InText("and", b.Name))
	f := finding.Finding{
		Check: "overlap", Verdict: finding.Fails, Place: a.Name + " and " + b.Name,
		Parts:   tags(p.bodyTag(a), p.bodyTag(b)),
		Figure:  depth,
		Limit:   figure.OfLength("allowed", 0, nil),
		Because: []figure.Figure{depth},
		Mend:    fmt.Sprintf("move one of them %s", p.up(m.Depth)),
		View: finding.View{Marks: []finding.Mark{{
			At: [3]float64{m.At.X.MM(), m.At.Y.MM(), m.At.Z.MM()}, Text: "here",
		}}},
	}
	switch {
	case a.Kind == piece.HeldBody || b.Kind == piece.HeldBody:
		f.Mend += ", or place what it holds with at:"
	case a.Kind == piece.PanelBody:
		f.Mend += ", or cut the panel out there"
	}
	return f
}

// bodyTag returns the physical tag of what a body is, or for a held thing that of the panel it stands on.
func (p *Piece) bodyTag(b piece.Body) string {
	switch b.Kind {
	case piece.PanelBody:
		return p.Parts.PanelTags[b.Index]
	case piece.StickBody:
		return p.Parts.StickTags[b.Index]
	case piece.FittingBody:
		return p.Parts.NodeTags[b.Index]
	case piece.FootBody:
		return p.Parts.FootTags[b.Index]
	}
	return p.Parts.PanelTags[p.Held[b.Index].Panel]
}
