package answer

import (
	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/price"
	"rodwright/trade/way"
)

func fitTopics() []Topic {
	return []Topic{
		{
			Name: "fits", Asks: "does it fit into the space?",
			Keys: []Key{ask("space", quantity.Length, "36 5/8 in", "of the opening"), ask("size", quantity.Length, "36 1/2 in", "of the thing"),
				ask("clearance", quantity.Length, "1/16 in", "room wanted besides").zero().or("0 in")},
			Answers: []string{"left", "yes"}, Call: []string{"space=36 5/8 in", "size=36 1/2 in", "clearance=1/16 in"}, reckon: fits,
		},
		{
			Name: "stand-up", Asks: "how high must a ceiling be, to stand a piece up that is carried on its side?",
			Keys:    []Key{ask("length", quantity.Length, "82 in", "of the piece"), ask("width", quantity.Length, "44 in", "of the piece, in the plane it turns in")},
			Answers: []string{"needed"}, Call: []string{"length=82 in", "width=44 in"}, reckon: standUp,
		},
		{
			Name: "margin", Asks: "what is the price, when part of it is to be left over the cost?",
			Keys: []Key{ask("cost", quantity.Money, "420", "of material, hours and overhead"),
				ask("margin", quantity.Percent, "30 %", "share of the price that is left").within(0, 99.9).optional(),
				ask("markup", quantity.Percent, "30 %", "what is put on the cost").within(0, 10_000).optional()},
			Rules: []Rule{either([]string{"margin"}, []string{"markup"})}, Answers: []string{"price", "margin", "markup"}, Call: []string{"cost=420", "markup=30%"}, reckon: margin,
		},
	}
}

var yesFormula = figure.Formula{Text: "yes = 1 if left ≥ 0", Source: "geometry"}

func fits(in given, w *work) error {
	left := way.Left(in.length("space"), in.length("size"), in.length("clearance"))
	yes, words := 0.0, "no"
	if left.Value >= 0 {
		yes, words = 1, "yes"
	}
	w.answer("left", left)
	f := figure.Of("yes", yes, figure.Count, &yesFormula, figure.In("left", left.Value, figure.MM))
	f.Words = words
	w.answer("yes", f)
	w.caution("measure the opening yourself, top, middle and bottom, before the last cut")
	return nil
}

func standUp(in given, w *work) error {
	f, err := way.StandUp(in.length("length"), in.length("width"))
	if err != nil {
		return err
	}
	w.answer("needed", f)
	w.caution("two people for anything over 23 kg or longer than an arm's span; mind lamps and pipes under the ceiling")
	return nil
}

func margin(in given, w *work) error {
	reckon, key := price.ByMargin, "margin"
	if in.has("markup") {
		reckon, key = price.ByMarkup, "markup"
	}
	p, err := reckon(in.number("cost"), in.number(key))
	if err != nil {
		return err
	}
	w.answer("price", p.Price)
	w.answer("margin", p.Margin)
	w.answer("markup", p.Markup)
	if key == "markup" {
		w.caution("a mark-up is a share of the cost, a margin of the price: the margin is the smaller number")
	}
	return nil
}
