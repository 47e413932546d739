package answer

import (
	"fmt"

	"rodwright/figure"
	"rodwright/trade/adhesive"
	"rodwright/trade/answer/quantity"
)

// glued says what holds for every glued joint.
func (w *work) glued() error {
	g, err := adhesive.LookupGlue(adhesive.Glues()[0])
	if err != nil {
		return err
	}
	w.caution(fmt.Sprintf("plane or sand no sooner than %s h after gluing with water-based glue: its water swells the joint, which sinks later", figure.Digits(g.Rest().Value, 3)),
		"air the room; gloves for polyurethane and epoxy, which make the skin allergic")
	return nil
}

func glueTopics() []Topic {
	joints := ask("joints", quantity.Count, "3", "glue lines side by side in the panel")
	return []Topic{
		{
			Name: "clamps", Asks: "how many clamps does a glued joint need?",
			Keys: []Key{ask("length", quantity.Length, "42 in", "of the joint"), ask("thickness", quantity.Length, "1 3/8 in", "of the boards"),
				joints.or("1"), woodKey().optional(), ask("pressure", quantity.Pressure, "200 psi", "wanted on the joint").between(0, 20).optional(),
				ask("clamp_force", quantity.Force, "1050 lb", "of one clamp"), ask("pad", quantity.Length, "2 in", "width of a clamp's pad").optional(),
				ask("edge_strip", quantity.Length, "2 in", "width of the strip between the pads and the joint").optional()},
			Rules:   []Rule{either([]string{"wood"}, []string{"pressure"}), together("pad", "edge_strip")},
			Answers: []string{"count", "spacing", "force"}, Call: []string{"length=42 in", "thickness=1 3/8 in", "pressure=200 psi", "clamp_force=1050 lb"}, reckon: clamps,
		},
		{
			Name: "adhesive", Asks: "how much glue do these joints take?",
			Keys: []Key{ask("length", quantity.Length, "42 in", "of one joint"), ask("thickness", quantity.Length, "1 3/8 in", "of the boards"), joints,
				ask("spread", quantity.Spread, "200 g/m2", "glue on one area of joint")},
			Answers: []string{"mass"}, Call: []string{"length=42 in", "thickness=1 3/8 in", "joints=3", "spread=200 g/m2"}, reckon: glue,
		},
	}
}

func clamps(in given, w *work) error {
	pressure := in.number("pressure")
	if in.has("wood") {
		s, err := in.species()
		if err != nil {
			return err
		}
		p, err := adhesive.Pressure(s)
		if err != nil {
			return in.about("wood", err)
		}
		w.reason(p)
		pressure = p.Value
		if a := adhesive.Advice(s); a.Known() {
			w.assume(fmt.Sprintf("glue makers ask %s to %s for this wood", shown(figure.Of("", a.Low, figure.MPa, nil), in.imperial()), shown(figure.Of("", a.High, figure.MPa, nil), in.imperial())))
		}
	}
	c, err := adhesive.Clamp(adhesive.Joint{Length: in.length("length"), Thickness: in.length("thickness"), Pressure: pressure,
		ClampForce: in.number("clamp_force"), Pad: in.length("pad"), Strip: in.length("edge_strip")})
	if err != nil {
		return err
	}
	w.reason(c.Force)
	w.answer("count", c.Count)
	w.answer("spacing", c.Spacing)
	w.answer("force", c.Force)
	if in.count("joints") > 1 {
		w.assume("parallel joints are squeezed by the same clamps: the area of one counts")
	}
	if c.BySpacing.Value > c.Count.Value {
		w.assume(fmt.Sprintf("so few stand further apart than that: %d clamps keep to the spacing", int(c.BySpacing.Value)))
	}
	w.assume("fewer clamps are common: such a joint is under its target, not wrong")
	w.caution("a bar under load can slip: feet and faces out of its way")
	return w.glued()
}

func glue(in given, w *work) error {
	m, err := adhesive.Mass(in.length("length"), in.length("thickness"), in.count("joints"), in.number("spread"))
	if err != nil {
		return err
	}
	w.answer("mass", m)
	w.assume("nothing is reckoned for squeeze-out beyond the spread and for what stays in the brush")
	return w.glued()
}
