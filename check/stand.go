package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// offDrawing is how far the frame stands off what is drawn.
var offDrawing = figure.Formula{
	Text:   "off = measured − drawn",
	Source: "common practice, no source",
	Range:  "distances of a standing frame, taken with a tape",
}

// Stand tells every distance that was measured of the standing frame against the drawing. Openings and seats follow what
// was measured. Distances that can't all be fail, and move nothing: they are never averaged.
func Stand(p *Piece) []finding.Finding {
	if p.Standing == nil {
		return nil
	}
	var out []finding.Finding
	for _, d := range p.Standing.Distances {
		out = append(out, stood(p, d))
	}
	return out
}

func stood(p *Piece, d piece.Stood) finding.Finding {
	f := finding.Finding{Check: "standing", Place: d.From + " to " + d.To + over(d.Over)}
	if d.Bearing == piece.Lapsed {
		f.Verdict = finding.Unknown
		f.Missing = fmt.Sprintf("the distance as it is now: it was measured %s when %s was drawn, and %s is drawn now",
			p.Doc.Fineness.Finer().Text(d.Value), p.Doc.Fineness.Finer().Text(d.Distance.Drawn), p.Doc.Fineness.Finer().Text(d.Drawn))
		f.Mend = "measure again and withdraw this one"
		return f
	}
	if d.Bearing == piece.NoSuchThing || d.Bearing == piece.SamePlace {
		f.Verdict = finding.Unknown
		f.Missing = "two things of this piece that lie apart"
		f.Mend = "withdraw it, or name others"
		return f
	}
	against, name := d.Drawn, "off the drawing"
	if d.Bearing == piece.Contradicts && !d.Diagonal {
		against, name = d.Now, "off what other distances say"
	}
	off := (d.Value - against).Abs()
	limit := reach(p)
	f.Figure = figure.OfLength(name, off, &offDrawing, figure.InLength("measured", d.Value), figure.InLength("drawn", d.Drawn), figure.InLength("by the others", d.Now))
	f.Because = []figure.Figure{f.Figure}
	f.Limit = figure.OfLength("give of the joints", limit, &threadFormula)
	f.Verdict = finding.Judge(off.MM(), limit.MM(), finding.AtMost)
	f.Assumed = []string{"both ends of the tape within " + p.Doc.Fineness.Finer().Text(piece.TapeReach.Half())}
	switch {
	case d.Bearing == piece.Contradicts && d.Diagonal:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("the frame is out of square, or a side is not as drawn: the diagonal by the sides is %s; measure the sides, then square it", p.Doc.Fineness.Show(d.Now))
	case d.Bearing == piece.Contradicts:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("by the others it is %s: measure again and withdraw the one that is wrong; it moves nothing until then", p.Doc.Fineness.Show(d.Now))
	case f.Verdict == finding.Fails: // the openings follow, so that nothing is wrong but the look
		f.Verdict = finding.Tight
		f.Mend = "openings and seats follow what was measured; look whether the joints are tight and the frame square"
	}
	return f
}

func over(o piece.Over) string {
	if o == piece.Centres {
		return ""
	}
	return ", " + string(o)
}

var threadFormula = figure.Formula{
	Text:   "give = one pitch of the thread",
	Source: "common practice, no source: a joint is set within a turn",
	Range:  "screwed pipe",
}

// reach is by how much a built frame may stand off: one pitch of its thread.
func reach(p *Piece) length.Length {
	for _, n := range p.Nodes {
		if n.Size.Pitch > 0 {
			return n.Size.Pitch
		}
	}
	return length.Inch / 16
}
