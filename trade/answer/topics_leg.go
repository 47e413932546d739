package answer

import (
	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/stability"
)

func legTopics() []Topic {
	leg := func(name string) Key {
		return ask(name, quantity.Length, "29 in", "length of leg "+name+", the legs in order round the piece, panel to foot, measured upside down")
	}
	return []Topic{{
		Name: "level", Asks: "which leg must be shortened so that the piece does not rock, and by how many turns of its flange?",
		Keys:    []Key{pipeKey(), leg("a"), leg("b"), leg("c"), leg("d")},
		Answers: []string{"rock", "shorten", "turns"}, Call: []string{"pipe=3/4", "a=29 in", "b=29.06 in", "c=29 in", "d=28.9 in"}, reckon: level,
	}}
}

var (
	turnsFormula   = figure.Formula{Text: "turns = rock ÷ pitch", Source: "a thread moves by its pitch in a turn", Range: "a four-hole flange meets its holes every quarter turn"}
	shortenFormula = figure.Formula{Text: "shorten = the longer leg of the longer diagonal", Source: "plane through three points; common practice, no source"}
)

func level(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	rock := stability.Rock(in.length("a"), in.length("b"), in.length("c"), in.length("d"))
	names := [...]string{"a", "b", "c", "d"}
	leg, other := rock.Shorten[0], rock.Shorten[1]
	if in.length(names[other]) > in.length(names[leg]) {
		leg = other
	}
	which := names[leg]
	if rock.By == 0 {
		which = "none"
	}
	turns := float64(rock.By) / float64(s.Pitch)
	w.answer("rock", rock.Figure)
	w.answer("shorten", figure.Figure{Unit: figure.Text, Words: which, Formula: &shortenFormula})
	w.answer("turns", figure.Of("turns", turns, figure.Count, &turnsFormula,
		figure.InLength("rock", rock.By), figure.InLength("pitch", s.Pitch)).From(s.ThreadSource.String()))
	w.assumePipe(s)
	w.assume("the floor is flat: stand the piece on a flat reference first")
	w.caution("turn a flange tighter only, never back; two people to turn a heavy piece over")
	return nil
}
