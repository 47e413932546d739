package steps

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/adhesive"
	"rodwright/trade/wood"
)

// gluing is what one glue-up of a panel takes.
type gluing struct {
	clamps   int     // at once, for one panel
	clampH   float64 // hours in the clamps
	restH    float64 // hours before the panel is planed or sanded
	lines    []string
	cautions []string
	assumed  []string
}

// gluingOf works out the glue-up of a panel with the shop's glue and clamps. A class of glue that no table
// has leaves the shop's own times of work.
func (p *planner) gluingOf(q part.Part) gluing {
	o, _ := p.s.Operation("glue")
	out := gluing{clamps: 2, restH: o.WaitH, clampH: o.WaitH}
	g, err := adhesive.LookupGlue(p.s.Settings.Adhesive)
	if err != nil {
		out.assumed = []string{fmt.Sprintf("the glue %q is in no table: times are the shop's own for gluing", p.s.Settings.Adhesive)}
		return out
	}
	rest := g.Rest()
	out.restH, out.clampH = max(rest.Value, g.ClampTime().Value), g.ClampTime().Value
	out.cautions = g.Cautions()
	out.lines = append(out.lines,
		fmt.Sprintf("%s, about %.0f g/m² of joint; in the clamps within %s of the first spread", g.Name, g.Spread().Value, hours(g.OpenTime().Value)),
		fmt.Sprintf("%s in the clamps", hours(out.clampH)))
	for _, f := range []figure.Figure{g.Spread(), g.OpenTime(), g.ClampTime(), rest} {
		out.assumed = append(out.assumed, f.Assumed...)
	}
	p.clamping(q, g, &out)
	return out
}

// clamping counts the clamps of one panel: by pressure on one joint, and by spacing; the greater rules
// where the shop's clamps have a known force.
func (p *planner) clamping(q part.Part, g adhesive.Glue, out *gluing) {
	clamp, ok := p.s.Tool("bar-clamp")
	sp, err := wood.Lookup(q.Material)
	if !ok || err != nil || clamp.ForceN <= 0 || g.ContactOnly {
		out.lines = append(out.lines, "a clamp every 8 to 12 in, the first 2 in from the end, half of them above and half below")
		return
	}
	pressure, err := adhesive.Pressure(sp)
	if err != nil {
		return
	}
	c, err := adhesive.Clamp(adhesive.Joint{
		Length: q.Blank[0], Thickness: max(q.Blank[2], length.Millimetre), Pressure: pressure.Value, ClampForce: clamp.ForceN,
	})
	if err != nil {
		return
	}
	out.clamps = int(math.Max(c.Count.Value, c.BySpacing.Value))
	out.lines = append(out.lines, fmt.Sprintf("%d clamps for the pressure (%s on one joint), one every %s at most, half of them above and half below",
		out.clamps, c.Force.Show(p.fine), c.Spacing.Show(p.fine)))
	out.assumed = append(out.assumed, pressure.Assumed...)
	out.assumed = append(out.assumed, c.Spacing.Assumed...)
	if out.clamps > clamp.Count {
		least := int(c.BySpacing.Value)
		out.lines = append(out.lines, fmt.Sprintf("the shop has %s: with fewer than %d the joint is under its pressure, with fewer than %d it gapes", several(clamp.Count, "clamp"), out.clamps, least))
		out.clamps = max(least, min(out.clamps, clamp.Count))
	}
}
