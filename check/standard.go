package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/trade/stability"
)

// standards judges what stands by itself by each published requirement that the document names.
func (p *Piece) standards(s standing, leans []lean) (out []finding.Finding) {
	for _, id := range p.Doc.Standards {
		r, err := stability.LookupRequirement(id)
		if err != nil {
			continue // the reader took it from the table
		}
		out = append(out, p.standard(s, leans, r))
	}
	return out
}

func (p *Piece) standard(s standing, leans []lean, r stability.Requirement) finding.Finding {
	f := finding.Finding{Check: "tip", Place: p.place(s) + ", by " + r.Title, Parts: p.tagsOf(s)}
	f.Caution = "Whether a published requirement is met only a test house can say: local law and licensed practice decide."
	covered, why := r.Covers(p.ownKg(s), p.top(s))
	switch {
	case !covered:
		f.Missing = fmt.Sprintf("a piece that it covers: %s; this one has %s kg and is %s high", why, figure.Digits(p.ownKg(s), 3), p.Doc.Fineness.Show(p.top(s)))
	case r.Kind == stability.TestRequirement:
		f.Missing = "the test itself, which is not known here (" + r.Words + "): ask a test house"
	case r.Kind == stability.StorageRequirement:
		// boards on pipe close nothing off: no litre lies behind doors or in drawers
		_, why := stability.TipOverStandard(stability.Storage{Clothing: true, Height: p.top(s), MassKg: p.ownKg(s)})
		f.Missing = "a piece that it covers: " + why + "; this one has no doors and no drawers. Anchor a tall one all the same"
	default:
		return p.asked(s, leans, r, f.Caution)
	}
	f.Verdict = finding.Unknown
	return f
}

// asked judges a requirement with a figure, over the side that bears least.
func (p *Piece) asked(s standing, leans []lean, r stability.Requirement, caution string) finding.Finding {
	var t tried
	for _, l := range leans {
		if o := p.try(s, l, r); t.figure.Missing() || o.share() < t.share() {
			t = o
		}
	}
	place := "by " + r.Title + ", " + t.towards() + ", " + whatIsThere(p.things(s), t.there)
	f := p.on("tip", s, t.side, place)
	f.Assumed = append(f.Assumed, "published for "+r.Scope+": asked of this piece by choice", r.Words)
	f.Caution, f.Figure, f.Limit, f.Because = caution, t.figure, t.limit, []figure.Figure{t.figure}
	f.Limit.Source = r.Source.String()
	f.Verdict = finding.Judge(t.figure.Value, t.limit.Value, finding.AtLeast)
	if f.Verdict == finding.Fails {
		f.Mend = p.outFor(s, t, r)
	}
	return f
}

// tried is what a requirement comes to over one side.
type tried struct {
	side
	there         []bool
	figure, limit figure.Figure
	at            length.Length // height of a push
	out           length.Length // of the edge beyond the side
}

// share is how many times the requirement is met; as good as can be where nothing is asked.
func (t tried) share() float64 {
	if t.limit.Value <= 0 {
		return math.Inf(1)
	}
	return t.figure.Value / t.limit.Value
}

// try works out a requirement over one side, with the combination of things that meets it least.
func (p *Piece) try(s standing, l lean, r stability.Requirement) tried {
	t := tried{side: l.side, there: l.there, figure: l.angle}
	t.limit = figure.Of("tilt asked", r.Value, figure.Deg, nil)
	if r.Kind == stability.TiltRequirement {
		return t
	}
	own, _ := p.own(s) // weighed before
	t.at = p.top(s)
	if r.UpTo > 0 {
		t.at = min(t.at, r.UpTo)
	}
	t.out, _ = p.beyond(s, l.side)
	t.figure = figure.Figure{}
	sets, _ := combinations(l.side, own, p.things(s))
	for _, there := range sets {
		if o, ok := p.tryForce(own, s, t, there, r); ok && (t.figure.Missing() || o.share() < t.share()) {
			t = o
		}
	}
	if t.figure.Missing() { // nothing stands out: a load straight down tips nothing
		t.figure, t.limit = l.angle, figure.Of("tilt with the load inside the base", 0, figure.Deg, nil)
	}
	return t
}

// tryForce works out the test force and what tips the piece with the things that are there; false where the force has
// nothing to press on outside the base.
func (p *Piece) tryForce(own stability.Mass, s standing, t tried, there []bool, r stability.Requirement) (tried, bool) {
	centre, _ := stability.Centre(with(own, p.things(s), there)...)
	inside := length.FromMM(t.side.inside(centre.X.MM(), centre.Y.MM()))
	t.there = there
	var err, err2 error
	if r.Kind == stability.PushRequirement {
		t.figure, err = stability.Push(centre.Kg, inside, t.at)
		t.limit, err2 = stability.PushTest(centre.Kg)
	} else {
		t.figure, err = stability.EdgeLoad(centre.Kg, inside, t.out)
		t.limit, err2 = stability.DownTest(centre.Kg)
	}
	return t, err == nil && err2 == nil && t.limit.Value > 0
}

// outFor says how far the feet must go out for the requirement, with the shown combination on it.
func (p *Piece) outFor(s standing, t tried, r stability.Requirement) string {
	own, _ := p.own(s)
	move := 0.0
	switch r.Kind {
	case stability.TiltRequirement:
		move = stillLacks(t.side, own, p.things(s), math.Tan(r.Value*math.Pi/180))
	default:
		centre, _ := stability.Centre(with(own, p.things(s), t.there)...)
		inside, kg := t.side.inside(centre.X.MM(), centre.Y.MM()), t.limit.Value/stability.Gravity
		if r.Kind == stability.PushRequirement {
			move = kg*t.at.MM()/centre.Kg - inside
		} else {
			move = (kg*t.out.MM() - centre.Kg*inside) / (kg + centre.Kg)
		}
	}
	return fmt.Sprintf("move the feet on that side at least %s out, %s", p.up(length.FromMM(max(0, move))+length.Nanometre), t.towards())
}
