package answer

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/bore"
	"rodwright/trade/screw"
)

func screwTopics() []Topic {
	gauge := ask("gauge", quantity.Gauge, "10", "number of the wood screw")
	return []Topic{
		{
			Name: "screw", Asks: "what does a wood screw hold against a pull?",
			Keys: []Key{woodKey(), gauge.within(1, 20).optional(), ask("diameter", quantity.Length, "0.19 in", "outer diameter of the thread").between(0, 25.4).optional(),
				ask("thread_in", quantity.Length, "2/3 in", "length of thread in the wood that holds"),
				choose("grain", "into which face: across the grain, or into the board's end", string(screw.Side), string(screw.End)),
				ask("count", quantity.Count, "4", "screws that pull together").or("1")},
			Rules: []Rule{either([]string{"gauge"}, []string{"diameter"})}, Answers: []string{"ultimate", "design"},
			Call: []string{"wood=white-oak", "gauge=10", "thread_in=0.667 in"}, reckon: screwHold,
		},
		{
			Name: "pilot", Asks: "how wide is the hole bored for a screw's thread?",
			Keys:    []Key{gauge, woodKey()},
			Answers: []string{"pilot"}, Call: []string{"gauge=10", "wood=white-oak"}, reckon: pilot,
		},
		{
			Name: "drill", Asks: "must a hole saw go in from both faces?",
			Keys:    []Key{ask("thickness", quantity.Length, "1 1/4 in", "of the panel"), ask("saw_depth", quantity.Length, "1 in", "how deep the hole saw cuts")},
			Answers: []string{"sides"}, Call: []string{"thickness=1 1/4 in", "saw_depth=1 in"}, reckon: drill,
		},
	}
}

var countFormula = figure.Formula{Text: "together = count·one", Source: "common practice, no source", Range: "screws that pull alike, each in its own wood"}

func screwHold(in given, w *work) error {
	s, err := in.species()
	if err != nil {
		return err
	}
	diameter := in.length("diameter")
	if in.has("gauge") {
		shank, err := screw.Shank(in.count("gauge"))
		if err != nil {
			return in.about("gauge", err)
		}
		w.reason(shank)
		diameter = length.FromMM(shank.Value)
	}
	grain := screw.Grain(in.word("grain"))
	ultimate, design, err := screw.Withdrawal(s, diameter, in.length("thread_in"), grain)
	if err != nil {
		return err
	}
	n := float64(in.count("count"))
	w.answer("ultimate", in.times(w, n, ultimate))
	w.answer("design", in.times(w, n, design))
	w.assume(s.Assumed, "seasoned, sound wood and the right pilot")
	if grain == screw.End {
		w.caution("end grain is given nothing in design: use an insert, a cross dowel or side grain")
	}
	w.caution(screw.Overdriven)
	return nil
}

// times multiplies what one screw holds.
func (in given) times(w *work, n float64, one figure.Figure) figure.Figure {
	if n == 1 {
		return one
	}
	w.reason(one)
	return figure.Of(one.Name, n*one.Value, one.Unit, &countFormula, figure.In("count", n, figure.Count), figure.In("one", one.Value, one.Unit))
}

func pilot(in given, w *work) error {
	s, err := in.species()
	if err != nil {
		return err
	}
	b, err := screw.Pilot(in.count("gauge"), s)
	if err != nil {
		return in.about("gauge", err)
	}
	w.answer("pilot", b.Pilot)
	w.reason(b.Suppliers)
	w.assume(s.Assumed, "suppliers' charts go up to "+shown(b.Suppliers, in.imperial()))
	w.caution(screw.Overdriven, "eye protection; clamp small parts, never hold them at the drill")
	return nil
}

func drill(in given, w *work) error {
	sides, err := bore.Sides(in.length("thickness"), in.length("saw_depth"))
	if err != nil {
		return err
	}
	w.answer("sides", sides)
	if sides.Value > 1 {
		w.assume("pilot right through first; the second cut follows it from the other face")
	}
	w.caution("clamp the panel and hold the drill with both hands: a hole saw that grabs throws it; eye protection, no gloves")
	return nil
}
