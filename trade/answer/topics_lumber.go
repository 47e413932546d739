package answer

import (
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/lumber"
)

// sawCaution is said where boards are ripped or cut off.
const sawCaution = "push sticks and a riving knife at the saw, eyes and ears covered; no gloves or loose sleeves at turning blades"

func lumberTopics() []Topic {
	return []Topic{
		{
			Name: "board-feet", Asks: "how many board feet does the yard bill?",
			Keys: []Key{ask("thickness", quantity.Rough, "8/4", "rough thickness, also of surfaced boards"), ask("width", quantity.Length, "7 1/4 in", "of one board"),
				ask("length", quantity.Length, "103 in", "of one board"), ask("count", quantity.Count, "2", "boards, each rounded by itself").within(1, 1000).or("1"),
				choose("tally", "how the yard counts", string(lumber.Retail), string(lumber.NHLA), string(lumber.Volume))},
			Answers: []string{"boardfeet", "nhla", "volume"}, Call: []string{"thickness=8/4", "width=7 1/4 in", "length=103 in"}, reckon: boardFeet,
		},
		{
			Name: "waste", Asks: "how much must be bought so that enough is left?",
			Keys: []Key{ask("net", quantity.Amount, "20 bf", "what the work needs"),
				ask("waste", quantity.Percent, "17 %", "share of what is bought that is lost").within(0, 99).optional(),
				ask("added", quantity.Percent, "30 %", "what is added to the net").within(0, 1000).optional()},
			Rules: []Rule{either([]string{"waste"}, []string{"added"})}, Answers: []string{"buy", "share"}, Call: []string{"net=20 bf", "waste=17%"}, reckon: waste,
		},
		{
			Name: "pieces", Asks: "how many equal parts still come out of this board or stick?",
			Keys: []Key{ask("stock", quantity.Length, "96 in", "length of the board or stick"), ask("part", quantity.Length, "21 in", "length of one part"),
				ask("kerf", quantity.Length, "1/8 in", "width of the saw cut").within(0, 100), ask("start", quantity.Length, "15 in", "where the first part begins").zero().or("0 in")},
			Answers: []string{"count", "left", "next_short"}, Call: []string{"stock=96 in", "part=21 in", "kerf=1/8 in", "start=15 in"}, reckon: pieces,
		},
		{
			Name: "strips", Asks: "how many strips does a glued-up blank take?",
			Keys: []Key{ask("blank_width", quantity.Length, "20 in", "of the blank"), ask("board_width", quantity.Length, "6 in", "of the boards as bought"),
				ask("rough_edges", quantity.Count, "2", "edges of each board to rip off").within(0, 2), ask("kerf", quantity.Length, "1/8 in", "width of the saw cut").within(0, 100),
				ask("jointing", quantity.Length, "1/32 in", "what jointing takes off each edge").within(0, 100)},
			Answers: []string{"count", "strip_width"}, Call: []string{"blank_width=20 in", "board_width=6 in", "rough_edges=1", "kerf=1/8 in", "jointing=1/32 in"}, reckon: strips,
		},
		{
			Name: "thickness", Asks: "does this stock still reach the thickness after flattening?",
			Keys: []Key{ask("rough", quantity.Rough, "8/4", "thickness the stock is sold by"),
				ask("surfaced", quantity.Length, "1 3/4 in", "its thickness as it lies there, planed; left out: S2S by its rough thickness").optional(),
				ask("bow", quantity.Length, "1/16 in", "over the length that is flattened").zero().or("0 in"), ask("twist", quantity.Length, "1/16 in", "over the length that is flattened").zero().or("0 in"),
				ask("wanted", quantity.Length, "1 1/2 in", "thickness of the finished part")},
			Answers: []string{"left", "next"}, Call: []string{"rough=8/4", "bow=1/16 in", "twist=1/32 in", "wanted=1 1/2 in"}, reckon: thickness,
		},
		{
			Name: "weight", Asks: "what does solid wood weigh?",
			Keys: []Key{woodKey(), ask("length", quantity.Length, "42 in", "of one part"), ask("width", quantity.Length, "19 in", "of one part"), ask("thickness", quantity.Length, "1 in", "of one part"),
				moistness("mc", "moisture content").or("12 %"), ask("count", quantity.Count, "2", "parts").or("1")},
			Answers: []string{"mass"}, Call: []string{"wood=white-oak", "length=42 in", "width=19 in", "thickness=1 1/16 in"}, reckon: weight,
		},
		{
			Name: "cut-down", Asks: "what comes off a part that was made too large?",
			Keys: []Key{ask("made", quantity.Length, "20 in", "size of the part as it is"), ask("wanted", quantity.Length, "19 1/2 in", "size it should have"),
				choose("keep", "the edge that stays as it is", string(lumber.KeepLeft), string(lumber.KeepRight), string(lumber.KeepNone))},
			Answers: []string{"off_left", "off_right"}, Call: []string{"made=20 in", "wanted=19 1/2 in", "keep=none"}, reckon: cutDown,
		},
	}
}

func boardFeet(in given, w *work) error {
	board := lumber.Board{Thickness: in.length("thickness"), Width: in.length("width"), Length: in.length("length")}
	boards := slices.Repeat([]lumber.Board{board}, in.count("count"))
	for _, a := range []struct {
		name  string
		tally lumber.Tally
	}{{"boardfeet", lumber.Tally(in.word("tally"))}, {"nhla", lumber.NHLA}, {"volume", lumber.Volume}} {
		f, err := lumber.Total(boards, a.tally)
		if err != nil {
			return err
		}
		w.answer(a.name, f)
	}
	w.assume("tally: " + in.word("tally") + "; yards differ, ask which they use")
	if board.Thickness < length.Inch {
		w.assume("stock under an inch counts as an inch, except by volume")
	}
	return nil
}

func waste(in given, w *work) error {
	net := in.values["net"]
	if in.has("waste") {
		buy, err := lumber.Buy(net.Number, net.Unit, in.number("waste"))
		if err != nil {
			return err
		}
		w.answer("buy", buy)
		w.answer("share", figure.Of("share", in.number("waste"), figure.Percent, nil))
		return nil
	}
	buy, err := lumber.BuyAdding(net.Number, net.Unit, in.number("added"))
	if err != nil {
		return err
	}
	share, err := lumber.Covered(in.number("added"))
	if err != nil {
		return err
	}
	w.answer("buy", buy)
	w.answer("share", share)
	w.assume("what is added is a share of the net, what may be lost a share of what is bought")
	return nil
}

func pieces(in given, w *work) error {
	p, err := lumber.PiecesFrom(in.length("stock"), in.length("part"), in.length("kerf"), in.length("start"))
	if err != nil {
		return err
	}
	w.answer("count", p.Figure)
	w.answer("left", figure.OfLength("left", p.Left, nil))
	w.answer("next_short", figure.OfLength("next_short", p.Short, nil))
	w.caution(sawCaution)
	return nil
}

func strips(in given, w *work) error {
	s, err := lumber.StripsFor(in.length("blank_width"), in.length("board_width"), in.count("rough_edges"), in.length("kerf"), in.length("jointing"))
	if err != nil {
		return err
	}
	w.answer("count", s.Figure)
	w.answer("strip_width", figure.OfLength("strip_width", s.Net, nil))
	w.assume("a rough edge costs the kerf and 1/8 in; each board gives one strip")
	w.caution(sawCaution)
	return nil
}

func thickness(in given, w *work) error {
	surfaced := in.length("surfaced")
	if !in.has("surfaced") {
		s, ok := stockOf(in.length("rough"))
		if !ok {
			return &Error{Topic: in.topic.Name, Key: "surfaced", Why: "is missing: no table says how thick stock of " + in.word("rough") + " is planed; measure it"}
		}
		surfaced = s.Surfaced
		w.assume(s.ID+" surfaced on two sides is "+shown(figure.OfLength("", s.Surfaced, nil), true)+": "+s.Source.String(), s.Note)
	}
	if surfaced > in.length("rough") {
		return in.wrong("surfaced", "thicker than the rough stock, "+in.word("rough"))
	}
	left, err := lumber.ThicknessLeft(surfaced, in.length("bow"), in.length("twist"), in.length("wanted"))
	if err != nil {
		return err
	}
	w.answer("left", left)
	next, err := lumber.NextStock(in.length("wanted"), in.length("bow"), in.length("twist"))
	if err != nil {
		w.answer("next", figure.Figure{Unit: figure.Text, Words: "none"})
		w.caution("no stock up to 16/4 is thick enough: glue up two layers")
	} else {
		w.answer("next", figure.Figure{Unit: figure.Text, Words: next.ID})
	}
	w.assume("bow and twist over the whole length: cut short first, bow shrinks with the square of the length")
	w.caution("flatten parts longer than about 12 in only: shorter ones are milled long and cut after; push blocks at the jointer")
	return nil
}

// stockOf returns the stock that is sold by the given rough thickness.
func stockOf(rough length.Length) (lumber.Stock, bool) {
	for _, id := range lumber.IDs() {
		if s, err := lumber.Lookup(id); err == nil && s.Rough == rough {
			return s, true
		}
	}
	return lumber.Stock{}, false
}

var massFormula = figure.Formula{Text: "mass = count·ρ·L·W·T", Source: "Wood Handbook FPL-GTR-282 (2021) ch. 4: ρ from specific gravity and moisture content"}

func weight(in given, w *work) error {
	s, err := in.species()
	if err != nil {
		return err
	}
	density := s.Density(in.number("mc"))
	if math.IsNaN(density) {
		return in.wrong("wood", "no specific gravity is known for it; takes another species")
	}
	volume := in.length("length").MM() * in.length("width").MM() * in.length("thickness").MM() / 1e9
	w.answer("mass", figure.Of("mass", in.number("count")*density*volume, figure.Kg, &massFormula,
		figure.In("count", in.number("count"), figure.Count), figure.In("ρ", density, figure.KgPerM3), figure.InLength("L", in.length("length")),
		figure.InLength("W", in.length("width")), figure.InLength("T", in.length("thickness"))).From(s.Source.String()))
	w.assume(s.Assumed)
	if in.defaulted("mc") {
		w.assume("12 % moisture content")
	}
	return nil
}

func cutDown(in given, w *work) error {
	left, right, err := lumber.CutDown(in.length("made"), in.length("wanted"), lumber.Keep(in.word("keep")))
	if err != nil {
		return err
	}
	w.answer("off_left", left)
	w.answer("off_right", right)
	w.assume("the kerf falls into what comes off")
	w.caution(sawCaution)
	return nil
}
