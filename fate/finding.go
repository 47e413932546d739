package fate

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
)

// offFormula is how far a part that was made is off.
var offFormula = figure.Formula{
	Text:   "off = made − drawn",
	Source: "common practice, no source",
	Range:  "a part that is made and used as it is",
}

// Findings tells of every part that is made whether it still serves: as drawn, within what is cut to, off by more, to
// be put right, or not at all. The check is named made.
func Findings(settled []Settled, fine length.Fineness) []finding.Finding {
	var out []finding.Finding
	for _, s := range settled {
		switch {
		case s.Need == nil && s.Thing.Place == "" || !s.Thing.Live():
		case s.Need == nil:
			out = append(out, useless(s))
		case s.Way.Kind != AsIs:
			out = append(out, toPutRight(s))
		case s.Thing.State >= journal.Sized || s.Thing.Shape.Kind == journal.KindPipe:
			out = append(out, measured(s, fine))
		}
	}
	return out
}

func useless(s Settled) finding.Finding {
	return finding.Finding{
		Check: "made", Place: s.Thing.Place, Parts: []string{s.Thing.Label}, Verdict: finding.Fails,
		Figure:  figure.Of("parts that serve", 0, figure.Count, &serveFormula, figure.In("made", 1, figure.Count)),
		Limit:   figure.Of("parts that serve", 1, figure.Count, &serveFormula),
		Because: []figure.Figure{figure.Of("parts that serve", 0, figure.Count, &serveFormula, figure.In("made", 1, figure.Count))},
		Mend:    "it does not serve any more: " + s.Why + "; weigh the change to see what else it can be",
	}
}

var serveFormula = figure.Formula{
	Text:   "a part serves when what the plan needs can be cut from it or made by adding to it",
	Source: "common practice, no source",
	Range:  "parts that are made",
}

func toPutRight(s Settled) finding.Finding {
	hours := figure.Of("work to put it right", s.Way.HandsH, figure.Hours, &rightFormula)
	return finding.Finding{
		Check: "made", Place: s.Thing.Place, Parts: []string{s.Need.Tag}, Verdict: finding.Tight,
		Figure: hours, Limit: figure.Of("work to put it right", 0, figure.Hours, &rightFormula),
		Because: []figure.Figure{hours},
		Mend:    s.Way.Words,
	}
}

var rightFormula = figure.Formula{
	Text:   "sum over the work of set-up + units × time of one",
	Source: "the shop's times of work",
	Range:  "parts that were made for another plan",
}

// measured tells the largest difference of a part from what is drawn.
func measured(s Settled, fine length.Fineness) finding.Finding {
	off, which := length.Length(0), "length"
	drawn := s.Need.Part.Finished
	if s.Need.Part.Kind == part.Pipe {
		drawn = [3]length.Length{s.Need.Part.Cut}
	}
	for k, name := range []string{"length", "width", "thickness"} {
		d := length.Length(s.Thing.Shape.Drawn[k])
		if d == 0 {
			d = drawn[k]
		}
		if d == 0 {
			continue
		}
		if by := length.Length(s.Thing.Shape.Size[k]) - d; by.Abs() > off.Abs() {
			off, which = by, name
		}
	}
	limit := max(fine.Step, Marking)
	f := finding.Finding{
		Check: "made", Place: s.Thing.Place, Parts: []string{s.Need.Tag}, Verdict: finding.Stands,
		Figure: figure.OfLength("off in "+which, off.Abs(), &offFormula, figure.InLength("made − drawn", off)),
		Limit:  figure.OfLength("step that is cut to", limit, &offFormula),
	}
	f.Because = []figure.Figure{f.Figure}
	if !s.Thing.Shape.Measured {
		f.Assumed = []string{"nobody measured it: taken as drawn"}
	}
	switch {
	case off.Abs() > limit:
		f.Verdict = finding.Tight
		f.Mend = fmt.Sprintf("it is used as it is, and what follows from it is reckoned with its own size: look whether %s still looks right", s.Thing.Place)
	case 5*off.Abs() > 4*limit:
		f.Verdict = finding.Tight
	}
	return f
}
