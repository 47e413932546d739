package answer

import (
	"fmt"

	"rodwright/figure"
	"rodwright/trade/adhesive"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/finish"
)

func fillTopics() []Topic {
	return []Topic{
		{
			Name: "resin", Asks: "how much resin fills these voids, and in how many pours?",
			Keys: []Key{ask("area", quantity.Area, "4 in x 2 in", "of one void at the face"), ask("depth", quantity.Length, "3/4 in", "at its deepest"),
				ask("count", quantity.Count, "3", "equal voids").or("1"), ask("pour_depth", quantity.Length, "1/4 in", "the deepest pour that the label allows").optional(),
				ask("shape", quantity.Ratio, "0.5", "share of area × depth that the void holds: 1 with straight walls, 0.5 round-bottomed, 1/3 a funnel").between(0, 1).or("1"),
				ask("ratio", quantity.Mix, "2:1", "resin to hardener by volume").optional(),
				ask("density", quantity.Density, "1.1 g/ml", "of the mixed resin").within(500, 5000).optional(),
				ask("spare", quantity.Ratio, "10 %", "more for soak-in, drips and what stays in the cup").within(0, 2).or("0")},
			Answers: []string{"volume", "mass", "pours", "part_a", "part_b"},
			Call:    []string{"area=4 in x 2 in", "depth=3/4 in", "count=3", "pour_depth=1/4 in", "shape=0.5", "ratio=2:1", "spare=10%"}, reckon: resin,
		},
		{
			Name: "finish", Asks: "how much finish do these faces take?",
			Keys: []Key{ask("area", quantity.Area, "42 in x 19 in", "of all faces and edges that are coated"), ask("coats", quantity.Count, "2", "coats").within(1, 100),
				ask("coverage", quantity.Coverage, "12 m2/L", "what a litre, quart or gallon covers in one coat"),
				ask("spare", quantity.Ratio, "10 %", "more for the brush, rag and can").within(0, 2).or("0")},
			Answers: []string{"volume"}, Call: []string{"area=42 in x 19 in", "coats=2", "coverage=12 m2/L", "spare=10%"}, reckon: finishing,
		},
	}
}

func resin(in given, w *work) error {
	volume, err := adhesive.Fill{AreaMM2: in.number("area") * 1e6, Depth: in.length("depth"), Count: in.count("count"),
		Shape: in.number("shape"), Spare: in.number("spare") * 100}.Volume()
	if err != nil {
		return err
	}
	w.answer("volume", volume)
	if err := in.bulk(w, volume.Value); err != nil {
		return err
	}
	if in.has("pour_depth") {
		pours, err := adhesive.Pours(in.length("depth"), in.length("pour_depth"))
		if err != nil {
			return err
		}
		w.answer("pours", pours)
	} else {
		w.caution("the label says how deep one pour may be: give pour_depth")
	}
	if in.has("ratio") {
		a, b, err := adhesive.Mix(volume.Value, in.number("ratio"), 1)
		if err != nil {
			return in.about("ratio", err)
		}
		w.answer("part_a", a)
		w.answer("part_b", b)
	}
	if in.number("spare") == 0 {
		w.assume("nothing is reckoned for soak-in and drips: knot wood drinks, plan a top-up pour")
	}
	class, err := adhesive.LookupResin(adhesive.Resins()[0])
	if err != nil {
		return err
	}
	w.caution(class.Cautions()...)
	w.caution("a void right through the board: tape the show face and pour from the back, bubbles rise to the hidden face; seal dry walls with a thin coat first",
		"sand after full cure only, with little pressure and a mask: dust of half-cured resin harms")
	return nil
}

func finishing(in given, w *work) error {
	volume, err := finish.Quantity(in.number("area"), in.count("coats"), in.number("coverage"), in.number("spare")*100)
	if err != nil {
		return err
	}
	w.answer("volume", volume)
	w.assume("both faces and all edges belong to the area: coat both faces in one session")
	w.caution("rags with drying oil catch fire by themselves: "+finish.RagCaution(),
		"no flame or spark near solvent or spray; fresh air, gloves",
		"oil: wipe off all excess in about half an hour, days between coats; a promised day follows the full cure, not the last coat")
	return nil
}

// bulk answers the mass of the resin, at the density that was given or that resins commonly have.
func (in given) bulk(w *work, ml float64) error {
	density := in.number("density") / 1000
	if !in.has("density") {
		class, err := adhesive.LookupResin(adhesive.Resins()[0])
		if err != nil {
			return err
		}
		density = class.Density.Middle()
		w.assume(fmt.Sprintf("mixed resin of %s g/ml: %s", figure.Digits(density, 3), class.Density.Source))
	}
	mass, err := adhesive.Bulk(ml, density)
	if err != nil {
		return in.about("density", err)
	}
	w.answer("mass", mass)
	return nil
}
