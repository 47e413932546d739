package part

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/adhesive"
	"rodwright/trade/finish"
)

// supplies reckons what is used up: glue for the joints of glued-up panels, finish on their faces and edges,
// and what coats the steel, and resin for the voids that the document names.
func (t *takeOff) supplies() error {
	for _, supply := range []func() error{t.glue, t.resin, t.finish, t.steelFinish} {
		if err := supply(); err != nil {
			return err
		}
	}
	return nil
}

// glue adds the adhesive of every joint line: as long as the blank and as high as its thickness, at the
// shop's spread or the adhesive's own, and the shop's spare on top.
func (t *takeOff) glue() error {
	if !slices.ContainsFunc(t.list.Parts, func(p Part) bool { return p.GlueLines > 0 }) {
		return nil
	}
	g, err := adhesive.LookupGlue(t.s.Settings.Adhesive)
	if err != nil {
		return fmt.Errorf("the shop's adhesive: %w", err)
	}
	spread := g.Spread()
	if own := t.s.Panel.GluePerJoint; own > 0 {
		spread = figure.Of("spread", own, figure.GramPerM2, nil).From("the shop's own")
	}
	s := Supply{Name: g.Name, Class: g.ID, Cautions: g.Cautions()}
	kg, lines := 0.0, 0
	for _, p := range t.list.Parts {
		if p.Kind != Panel || p.GlueLines == 0 {
			continue
		}
		m, err := adhesive.Mass(p.Blank[0], p.Blank[2], p.GlueLines, spread.Value)
		if err != nil {
			return fmt.Errorf("glue for %s: %w", p.Name, err)
		}
		kg += m.Value
		lines += p.GlueLines
		s.For = append(s.For, p.Tag)
	}
	s.Quantity = figure.Of("glue", kg*(1+t.s.Settings.Spare), figure.Kg, &glueFormula,
		figure.In("joints", float64(lines), figure.Count), figure.In("spread", spread.Value, figure.GramPerM2),
		figure.In("spare", 100*t.s.Settings.Spare, figure.Percent)).From(spread.Source).Assuming(spread.Assumed...)
	s.Assumed = words(append([]string{"strips of at most " + length.Sixteenth.Text(t.s.Panel.StripMost)}, spread.Assumed...)...)
	t.list.Supplies = append(t.list.Supplies, s)
	return nil
}

var glueFormula = figure.Formula{
	Text: "m = Σ joints · blank length · blank thickness · spread · (1 + spare)", Source: "arithmetic", Range: "glue on one face of each joint",
}

// finish adds what coats both faces and all edges of the panels, each coat alike.
func (t *takeOff) finish() error {
	return t.coat(t.s.Settings.Finish, t.list.Totals.FaceM2, t.s.Settings.Coats, Panel)
}

// fittingShare is the surface of the fittings as a share of that of the pipes, a quarter: common practice,
// no source.
const fittingShare = 0.25

// steelFinish adds what coats the pipes all round and the fittings on them.
func (t *takeOff) steelFinish() error {
	area := 0.0
	for _, p := range t.list.Parts {
		if p.Kind == Pipe {
			od := t.r.Sticks[p.Indexes[0]].Section.Pipe.OD
			area += float64(p.Count) * math.Pi * od.MM() * max(p.Cut, 0).MM() / 1e6
		}
	}
	class, why := t.s.Settings.SteelCoat(t.doc.Place.HighRH)
	return t.coat(class, area*(1+fittingShare), 0, Pipe, words("fittings have a quarter of the pipes' surface", why)...)
}

// coat adds one finish for all parts of a kind: area × coats ÷ coverage and the shop's spare. Coats of zero
// are the usual number of the class. A shop that names no finish uses none.
func (t *takeOff) coat(class string, area float64, coats int, on Kind, assumed ...string) error {
	if area == 0 || class == "" {
		return nil
	}
	f, err := finish.Lookup(class)
	if err != nil {
		return fmt.Errorf("the shop's finish for each %s: %w", on, err)
	}
	if coats == 0 {
		coats = max(f.Coats, 1)
	}
	coverage := f.CoverageFigure()
	q, err := finish.Quantity(area, coats, coverage.Value, 100*t.s.Settings.Spare)
	if err != nil {
		return fmt.Errorf("finish for each %s: %w", on, err)
	}
	s := Supply{Name: f.Name, Class: f.ID, Quantity: q.From(coverage.Source).Assuming(coverage.Assumed...), Cautions: f.Cautions()}
	for _, p := range t.list.Parts {
		if p.Kind == on {
			s.For = append(s.For, p.Tag)
		}
	}
	s.Assumed = words(append(assumed, coverage.Assumed...)...)
	t.list.Supplies = append(t.list.Supplies, s)
	return nil
}
