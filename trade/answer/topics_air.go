package answer

import (
	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/wood"
)

// The keys that several topics ask, each in one place so that it means the same everywhere.
func woodKey() Key { return named("wood", "white-oak", "species of the wood") }
func tempKey() Key {
	return ask("temp", quantity.Temperature, "70 F", "temperature of the air").within(wood.LowestEMCTemp, wood.HighestEMCTemp)
}
func humidity(name, means string) Key  { return ask(name, quantity.Percent, "45 %", means) }
func moistness(name, means string) Key { return ask(name, quantity.Percent, "8 %", means) }

// moistures are the two ways to say how the wood's moisture changes.
func moistures() []Key {
	return []Key{
		moistness("from_mc", "moisture content before").optional(), moistness("to_mc", "moisture content after").optional(),
		humidity("from_rh", "relative humidity before").optional(), humidity("to_rh", "relative humidity after").optional(), tempKey().optional(),
	}
}

var (
	byMC = []string{"from_mc", "to_mc"}
	byRH = []string{"from_rh", "to_rh", "temp"}
)

func cutKey() Key {
	return choose("cut", "how the board is sawn", string(wood.Flat), string(wood.Quarter), string(wood.Mixed))
}

func airTopics() []Topic {
	return []Topic{
		{
			Name: "emc", Asks: "what moisture content does wood come to in this air?",
			Keys:    []Key{tempKey(), humidity("rh", "relative humidity of the air")},
			Answers: []string{"mc"}, Call: []string{"temp=70F", "rh=45%"}, reckon: emc,
		},
		{
			Name: "movement", Asks: "how much wider or narrower does a board get?",
			Keys:  append(append([]Key{woodKey(), ask("width", quantity.Length, "20 in", "the board's size across the grain")}, moistures()...), cutKey()),
			Rules: []Rule{either(byMC, byRH)}, Answers: []string{"change", "from_mc", "to_mc"},
			Call: []string{"wood=white-oak", "width=20 in", "from_mc=8%", "to_mc=11%"}, reckon: movement,
		},
		{
			Name: "cup", Asks: "how far does one flat-sawn strip cup?",
			Keys: append(append([]Key{woodKey(), ask("width", quantity.Length, "6 in", "width of the strip"),
				ask("ring_radius", quantity.Length, "4 in", "radius of the growth rings in it").or("4 in")}, moistures()...),
				ask("face_difference", quantity.Percent, "1 %", "by how much one face is wetter than the other, in points of moisture content").optional(),
				ask("thickness", quantity.Length, "1 in", "thickness of the strip, for the difference between the faces").optional()),
			Rules:   []Rule{{Groups: [][]string{byMC, byRH}, Most: 1}, {Groups: [][]string{byMC, byRH, {"face_difference", "thickness"}}, Least: 1, Most: 2}},
			Answers: []string{"depth"}, Call: []string{"wood=white-oak", "width=6 in", "from_mc=12%", "to_mc=8%"}, reckon: cup,
		},
	}
}

func emc(in given, w *work) error {
	f, err := in.emc("rh", "temp")
	w.answer("mc", f)
	return err
}

// moisture returns the moisture contents before and after, from the air where only that is given.
func (in given) moisture(w *work) (from, to figure.Figure, err error) {
	if in.has("from_mc") {
		return figure.Of("from_mc", in.number("from_mc"), figure.Percent, nil), figure.Of("to_mc", in.number("to_mc"), figure.Percent, nil), nil
	}
	if from, err = in.emc("from_rh", "temp"); err != nil {
		return from, to, err
	}
	if to, err = in.emc("to_rh", "temp"); err == nil {
		w.reason(from, to)
	}
	return from, to, err
}

func movement(in given, w *work) error {
	s, err := in.species()
	if err != nil {
		return err
	}
	cut, err := wood.ParseCut(in.word("cut"))
	if err != nil {
		return in.about("cut", err)
	}
	from, to, err := in.moisture(w)
	if err != nil {
		return err
	}
	change, err := wood.Change(s, cut, in.length("width"), from.Value, to.Value)
	if err != nil {
		return in.about("wood", err)
	}
	w.answer("change", change)
	w.answer("from_mc", from)
	w.answer("to_mc", to)
	if in.defaulted("cut") {
		w.assume("flat-sawn")
	}
	w.caution("wood moves with a force no screw or glue line holds: fasten one line, let the rest slide")
	return nil
}

func cup(in given, w *work) error {
	s, err := in.species()
	if err != nil {
		return err
	}
	var rings, faces figure.Figure
	if in.has("from_mc") || in.has("from_rh") {
		from, to, err := in.moisture(w)
		if err != nil {
			return err
		}
		if rings, err = wood.Cup(s, in.length("width"), in.length("ring_radius"), from.Value, to.Value); err != nil {
			return err
		}
		if in.defaulted("ring_radius") {
			w.assume("rings of 4 in radius: look at the end grain")
		}
	}
	if in.has("face_difference") {
		if faces, err = wood.FaceCup(s, wood.Flat, in.length("width"), in.length("thickness"), in.number("face_difference")); err != nil {
			return in.about("face_difference", err)
		}
		w.caution("coat both faces in one session, then the faces stay alike")
	}
	w.answer("depth", sum(w, rings, faces))
	return nil
}

var cupFormula = figure.Formula{Text: "depth = rings + faces", Source: "common practice, no source: both bend the same way at worst"}

// sum adds what the rings and what the difference of the faces do; either may be missing.
func sum(w *work, rings, faces figure.Figure) figure.Figure {
	switch {
	case faces.Missing():
		return rings
	case rings.Missing():
		return faces
	}
	w.reason(rings, faces)
	return figure.Of("depth", rings.Value+faces.Value, figure.MM, &cupFormula,
		figure.In("rings", rings.Value, figure.MM), figure.In("faces", faces.Value, figure.MM))
}
