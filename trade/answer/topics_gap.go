package answer

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/gap"
	"rodwright/trade/wood"
)

// yearKeys are the air that a piece lives in over the year, and the day it is built.
func yearKeys() []Key {
	return []Key{
		humidity("low_rh", "driest air of the year"), humidity("high_rh", "dampest air of the year"), tempKey(),
		moistness("build_mc", "moisture content on the day it is built"),
	}
}

func gapTopics() []Topic {
	year := []string{"low_rh=30%", "high_rh=60%", "temp=70F", "build_mc=8%"}
	return []Topic{
		{
			Name: "slot", Asks: "how wide must the hole round a screw be, so that the wood can move?",
			Keys: append(append([]Key{woodKey(), ask("spacing", quantity.Length, "14 1/2 in", "distance between the screws across the grain")}, yearKeys()...),
				ask("shank", quantity.Length, "0.19 in", "diameter of the screw's shank").between(0, 50)),
			Answers: []string{"hole", "change_dry", "change_wet"},
			Call:    append([]string{"wood=white-oak", "spacing=14.5 in", "shank=0.19 in"}, year...), reckon: slot,
		},
		{
			Name: "notch", Asks: "how much room does a notch round a post need?",
			Keys: append(append([]Key{woodKey(), ask("distance", quantity.Length, "7 1/4 in", "from the line that is held to the post, across the grain")}, yearKeys()...),
				ask("band", quantity.Length, "1/14 in", "how far the built frame may stand off at that joint").zero(),
				ask("gap", quantity.Length, "1/16 in", "working gap wanted besides").zero(),
				ask("post", quantity.Length, "1.458 in", "the post's largest section within the panel's thickness: the band of a fitting, not the pipe")),
			Answers: []string{"inner", "outer", "opening"},
			Call:    append([]string{"wood=white-oak", "distance=7.25 in", "band=1/14 in", "gap=1/16 in", "post=1.458 in"}, year...), reckon: notch,
		},
	}
}

// year returns how a width of flat-sawn wood changes from the day it is built to the driest and to the
// dampest air.
func (in given) year(w *work, width length.Length) (dry, wet figure.Figure, err error) {
	s, err := in.species()
	if err != nil {
		return dry, wet, err
	}
	if in.number("low_rh") > in.number("high_rh") {
		return dry, wet, in.wrong("high_rh", "is below low_rh, "+in.word("low_rh")+"; takes the dampest air of the year")
	}
	low, err := in.emc("low_rh", "temp")
	if err != nil {
		return dry, wet, err
	}
	high, err := in.emc("high_rh", "temp")
	if err != nil {
		return dry, wet, err
	}
	if dry, err = wood.Change(s, wood.Flat, width, in.number("build_mc"), low.Value); err != nil {
		return dry, wet, in.about("wood", err)
	}
	if wet, err = wood.Change(s, wood.Flat, width, in.number("build_mc"), high.Value); err != nil {
		return dry, wet, in.about("wood", err)
	}
	w.reason(low, high, dry, wet)
	w.assume("flat-sawn, which moves most")
	return dry, wet, nil
}

func slot(in given, w *work) error {
	dry, wet, err := in.year(w, in.length("spacing"))
	if err != nil {
		return err
	}
	w.answer("hole", gap.Hole(in.length("shank"), dry.Value, wet.Value))
	w.answer("change_dry", dry)
	w.answer("change_wet", wet)
	w.assume("the screw stands in the middle of its hole on the day it is built")
	w.caution("the screw's head or a washer must cover the hole; drive it snug, not tight")
	return nil
}

func notch(in given, w *work) error {
	dry, wet, err := in.year(w, in.length("distance"))
	if err != nil {
		return err
	}
	walls := gap.Notch(in.length("post"), dry.Value, wet.Value, in.length("band"), in.length("gap"))
	w.answer("inner", walls.Inner)
	w.answer("outer", walls.Outer)
	w.answer("opening", walls.Opening)
	w.assume("walls along the grain need band and gap only")
	w.caution("the tongue beside a notch is short grain: do not lift the panel by it")
	return nil
}
