package steps

import (
	"fmt"
	"strings"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// shape plans everything that is cut in one kind of panel after its blank is there, and returns the last
// step of it.
func (p *planner) shape(q part.Part, after int) int {
	last := p.size(q, after)
	last = p.mark(q, last)
	for _, kind := range []piece.FeatureKind{piece.ReliefFeature, piece.HoleFeature, piece.SlotFeature, piece.CutOutFeature, piece.NotchFeature} {
		last = p.features(q, kind, last)
	}
	return p.pour(q, p.profiles(q, last))
}

// size cuts a flattened blank to its finished size.
func (p *planner) size(q part.Part, after int) int {
	if q.Sheet {
		return p.do(job{
			work: "size-sheet", parts: q.Tags, units: float64(4 * q.Count), after: before(after),
			title:    fmt.Sprintf("Cut %s from %s: %s", titled(q), q.Material, p.plan(q.Finished)),
			measures: []string{"the good face down under a circular saw, up on a table saw"},
		})
	}
	return p.do(job{
		work: "size", parts: q.Tags, units: float64(4 * q.Count), after: before(after), settings: 2,
		title:    fmt.Sprintf("Cut %s to its finished size: %s", titled(q), p.plan(q.Finished)),
		measures: []string{fmt.Sprintf("from the blank of %s: true one edge and one end first, they meet at the datum corner (%s)", p.plan(q.Blank), q.Datum)},
	})
}

// plan writes length × width × thickness.
func (p *planner) plan(d [3]length.Length) string {
	return fmt.Sprintf("%s × %s × %s", p.fine.Number(d[0]), p.fine.Number(d[1]), p.show(d[2]))
}

// mark sets all features out from one corner before any is cut, so that no error adds to another.
func (p *planner) mark(q part.Part, after int) int {
	if len(q.Features) == 0 {
		return after
	}
	var lines []string
	for _, f := range q.Features {
		lines = append(lines, p.featureLine(f))
	}
	return p.do(job{
		work: "mark", parts: q.Tags, units: float64(len(q.Features) * q.Count), after: before(after),
		title:    fmt.Sprintf("Mark out %s on %s, all from the datum corner (%s)", several(len(q.Features), "opening"), titled(q), q.Datum),
		measures: lines,
	})
}

// featureLine says where a feature lies: a round one by its centre, all others by their corner, along the
// grain and then across it from the datum.
func (p *planner) featureLine(f part.Feature) string {
	var b strings.Builder
	if f.Round {
		c := f.Centre()
		fmt.Fprintf(&b, "%s ⌀ %s, centre at %s, %s", f.Kind, p.show(f.Size[0]), p.fine.Number(c[0]), p.show(c[1]))
	} else {
		fmt.Fprintf(&b, "%s %s × %s, corner at %s, %s", f.Kind, p.fine.Number(f.Size[0]), p.show(f.Size[1]), p.fine.Number(f.At[0]), p.show(f.At[1]))
	}
	if f.Opens != part.NoSide {
		fmt.Fprintf(&b, ", open to the %s", f.Opens)
	}
	if f.Depth > 0 {
		fmt.Fprintf(&b, ", %s deep from the underside", p.show(f.Depth))
	}
	if f.Radius > 0 && !f.Round {
		fmt.Fprintf(&b, ", corners %s radius", p.show(f.Radius))
	}
	if f.Why != "" {
		fmt.Fprintf(&b, " (%s)", f.Why)
	}
	return b.String()
}

// features plans one step for all cuts of a kind in a panel; round holes that a hole saw must cut are a
// step of their own.
func (p *planner) features(q part.Part, kind piece.FeatureKind, after int) int {
	var plain, sawn []part.Feature
	for _, f := range q.Features {
		switch {
		case f.Kind != kind:
		case kind == piece.HoleFeature && f.Round && f.Size[0] > LargestBit:
			sawn = append(sawn, f)
		default:
			plain = append(plain, f)
		}
	}
	after = p.cutOut(q, workOf(kind), plain, after)
	return p.cutOut(q, "hole-saw", sawn, after)
}

// workOf names the kind of work that makes a kind of feature.
func workOf(k piece.FeatureKind) string {
	if k == piece.HoleFeature {
		return "bore"
	}
	return string(k) // relief, slot, cut-out, notch
}

// LargestBit is the largest hole that is bored with a bit; larger ones take a hole saw. Common practice, no
// source.
const LargestBit = 5 * length.Inch / 4

// cutOut plans the given features, grouped by size so that each bit or stop is set once.
func (p *planner) cutOut(q part.Part, work string, fs []part.Feature, after int) int {
	if len(fs) == 0 {
		return after
	}
	var sizes []string
	counts := map[string]int{}
	for _, f := range fs {
		text := p.featureSize(f)
		counts[text]++
		sizes = once(append(sizes, text))
	}
	for i, text := range sizes {
		sizes[i] = fmt.Sprintf("%d × %s", counts[text], text)
	}
	j := job{
		work: work, parts: q.Tags, units: float64(len(fs) * q.Count), settings: len(sizes), after: before(after),
		title: fmt.Sprintf("%s %s: %s", verb(work), titled(q), strings.Join(sizes, "; ")),
	}
	for _, f := range fs {
		j.measures = append(j.measures, p.featureLine(f))
	}
	if work == "hole-saw" {
		p.fromBothFaces(&j, q)
	}
	if work == "notch" || work == "cut-out" {
		j.measures = append(j.measures, p.corners(fs)...)
	}
	if work == "bore" {
		j.measures = append(j.measures, "stop when the point shows and finish from the other face, or bore into a backing board")
	}
	return p.do(j)
}

// corners says how the inside corners are made: bored first, so that no saw cut runs past them.
func (p *planner) corners(fs []part.Feature) []string {
	var out []string
	for _, f := range fs {
		if f.Radius > 0 {
			out = once(append(out, fmt.Sprintf("bore the inside corners first with a %s bit, then saw from hole to hole", p.show(2*f.Radius))))
		}
	}
	return out
}

// verb begins the title of a step that cuts features.
func verb(work string) string {
	switch work {
	case "relief":
		return "Relieve the underside of"
	case "bore":
		return "Bore"
	case "hole-saw":
		return "Saw the holes of"
	case "slot":
		return "Cut the slots of"
	case "cut-out":
		return "Cut the openings of"
	}
	return "Notch"
}

// featureSize writes the size of a feature, without its place.
func (p *planner) featureSize(f part.Feature) string {
	if f.Round {
		return "⌀ " + p.show(f.Size[0])
	}
	return p.fine.Number(f.Size[0]) + " × " + p.show(f.Size[1])
}

// fromBothFaces says how a panel thicker than the hole saw's depth is cut: the pilot right through, then
// half from each face. A panel thicker than twice the depth can't be cut with it.
func (p *planner) fromBothFaces(j *job, q part.Part) {
	saw, ok := p.s.Tool("hole-saw")
	if !ok || saw.Depth <= 0 || saw.Depth >= q.Finished[2] {
		return
	}
	j.measures = append(j.measures, fmt.Sprintf("the saw cuts %s deep and the panel is %s thick: pilot right through, then from both faces", p.show(saw.Depth), p.show(q.Finished[2])))
	thick := q.Finished[2]
	j.fits = func(t shop.Tool) bool { return t.ID != "hole-saw" || 2*t.Depth >= thick }
}

// profiles runs the edge profiles of a panel, end grain first so that breakout is taken off by the edges.
func (p *planner) profiles(q part.Part, after int) int {
	if len(q.Profiles) == 0 {
		return after
	}
	var run length.Length
	var lines, kinds []string
	for _, end := range []bool{true, false} {
		for _, e := range q.Profiles {
			if (e.Side == part.StartEnd || e.Side == part.FarEnd) != end {
				continue
			}
			run += e.Run
			kind := e.Profile + " " + p.show(e.Size)
			kinds = append(kinds, kind)
			lines = append(lines, fmt.Sprintf("%s on the %s, not where a flange or plate seats", kind, e.Side))
		}
	}
	kinds = once(kinds)
	return p.do(job{
		work: "profile", parts: q.Tags, units: run.MM() / 1000 * float64(q.Count), settings: len(kinds), after: before(after),
		title:    fmt.Sprintf("Run the edges of %s: %s", titled(q), strings.Join(kinds, ", ")),
		measures: lines,
	})
}
