package answer

import (
	"math"

	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/beam"
	"rodwright/trade/pipe"
)

func endsKey() Key {
	return choose("ends", "how both ends are held: free to turn, or so that they can't", string(beam.Resting), string(beam.Held))
}

func strengthTopics() []Topic {
	modulus := ask("modulus", quantity.Pressure, "1.58e6 psi", "modulus of elasticity along the grain").optional()
	return []Topic{
		{
			Name: "sag", Asks: "how far does a shelf sag, and is that too much?",
			Keys: []Key{woodKey().optional(), modulus, ask("span", quantity.Length, "36 in", "between the supports"),
				ask("width", quantity.Length, "11 1/4 in", "front to back"), ask("thickness", quantity.Length, "3/4 in", "of the board"),
				ask("load", quantity.Force, "60 lb", "the whole load").zero(),
				choose("spread", "where the load stands", string(beam.Even), string(beam.Middle)), endsKey(),
				choose("lasting", "the air in which a load stays for months", string(beam.Dry), string(beam.Damp))},
			Rules: []Rule{either([]string{"wood"}, []string{"modulus"})}, Answers: []string{"sag", "limit_ratio", "lasting_sag"},
			Call: []string{"wood=yellow-poplar", "span=39 in", "width=11 in", "thickness=3/4 in", "load=65 lb"}, reckon: sag,
		},
		{
			Name: "pipe-beam", Asks: "what may a level pipe carry at the middle of its span, and how far does it sag?",
			Keys: []Key{pipeKey(), ask("span", quantity.Length, "48 in", "between the supports"), ask("load", quantity.Force, "100 lb", "at mid-span").zero().optional(),
				ask("yield", quantity.Pressure, "30000 psi", "stress at which the steel stays bent").between(1, 2000).or("30000 psi"),
				ask("safety", quantity.Ratio, "2", "how many times the load the pipe must bear before it stays bent").within(1, 20).or("2"), endsKey()},
			Answers: []string{"allowed", "sag", "yields"}, Call: []string{"pipe=1", "span=48 in", "load=100 lb"}, reckon: pipeBeam,
		},
	}
}

var ratioFormula = figure.Formula{Text: "limit_ratio = sag ÷ limit", Source: "common practice, no source", Range: "above 1 the shelf will show its sag"}

func sag(in given, w *work) error {
	modulus := in.number("modulus")
	if in.has("wood") {
		s, err := in.species()
		if err != nil {
			return err
		}
		if math.IsNaN(s.MOE) {
			return in.wrong("wood", "no modulus of elasticity is known for it; give modulus instead")
		}
		modulus = s.MOE
		w.assume("clear wood at 12 % moisture content: "+s.Source.String(), s.Assumed)
	}
	section, err := beam.Rectangle(in.length("width"), in.length("thickness"))
	if err != nil {
		return err
	}
	b := beam.Beam{Span: in.length("span"), Modulus: modulus, Section: section}
	f, err := beam.Sag(b, in.number("load"), beam.Spread(in.word("spread")), beam.Ends(in.word("ends")))
	if err != nil {
		return err
	}
	limit, err := beam.ElasticLimit(b.Span)
	if err != nil {
		return err
	}
	lasting, err := beam.LastingSag(f.Value, beam.Lasting(in.word("lasting")).Factor())
	if err != nil {
		return err
	}
	seen, err := beam.LastingLimit(b.Span)
	if err != nil {
		return err
	}
	w.reason(f, limit, seen)
	w.answer("sag", f)
	w.answer("limit_ratio", figure.Of("limit_ratio", f.Value/limit.Value, figure.Ratio, &ratioFormula,
		figure.In("sag", f.Value, figure.MM), figure.In("limit", limit.Value, figure.MM)))
	w.answer("lasting_sag", lasting)
	w.assume("the load is taken to stay for good; the board's own weight counts only if it is in the load")
	if f.Value > limit.Value || lasting.Value > seen.Value {
		w.caution("it will show: thicker, shorter or stiffer, or a rail under the edge")
	}
	return nil
}

func pipeBeam(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	section, err := beam.Tube(s.OD, s.Wall)
	if err != nil {
		return err
	}
	ends := beam.Ends(in.word("ends"))
	yields, err := beam.YieldLoad(in.length("span"), section, in.number("yield"), ends, s.RootModulusShare())
	if err != nil {
		return err
	}
	allowed, err := beam.Allowed(yields, in.number("safety"))
	if err != nil {
		return err
	}
	w.reason(yields)
	w.answer("allowed", allowed)
	if in.has("load") {
		b := beam.Beam{Span: in.length("span"), Modulus: pipe.SteelModulus, Section: section}
		f, err := beam.Sag(b, in.number("load"), beam.Middle, ends)
		if err != nil {
			return err
		}
		w.answer("sag", f)
		if in.number("load") > allowed.Value {
			w.caution("the load is more than what is allowed")
		}
	}
	w.answer("yields", yields)
	w.assumePipe(s)
	if in.defaulted("yield") {
		w.assume("yield 30 000 psi, the least of ASTM A53 grade A, from memory")
	}
	if in.defaulted("safety") {
		w.assume("safety 2, common practice")
	}
	w.caution("a thread within the span leaves about half the strength: keep couplings and tees out of its middle; nobody stands or swings on it")
	return nil
}
