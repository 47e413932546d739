package answer

import (
	"fmt"

	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/bore"
	"rodwright/trade/pipe"
)

func pipeKey() Key {
	return named("pipe", "3/4", "size of the pipe: 1/2, 3/4, 1 … or DN15, DN20, DN25 …")
}

// endKey asks for what a pipe's end is joined by. Ends must be said: none, too, is an answer.
func endKey(name, example string) Key {
	k := named(name, example, "what the pipe's end is joined by")
	for _, kind := range pipe.Kinds() {
		k.Choices = append(k.Choices, string(kind))
	}
	return k
}

func pipeTopics() []Topic {
	return []Topic{
		{
			Name: "pipe-cut", Asks: "how long is a pipe cut between two fittings?",
			Keys: []Key{pipeKey(), ask("between", quantity.Length, "14 in", "from centre to centre; from the face a flange is screwed to, a cap's closed face or a bare end"),
				endKey("end_a", "tee"), endKey("end_b", "tee")},
			Answers: []string{"cut", "take_out_a", "take_out_b", "loosest", "tightest"},
			Call:    []string{"pipe=3/4", "between=14 in", "end_a=tee", "end_b=tee"}, reckon: pipeCut,
		},
		{
			Name: "nipple", Asks: "which nipple bridges the gap between two fittings?",
			Keys:    []Key{pipeKey(), ask("faces", quantity.Length, "2 in", "gap between the faces of the fittings").zero()},
			Answers: []string{"stock", "exact", "shorter", "longer", "moves"}, Call: []string{"pipe=3/4", "faces=2 in"}, reckon: nipple,
		},
		{
			Name: "thread", Asks: "how deep does a pipe screw in, and how far does it move in a turn?",
			Keys:    []Key{pipeKey(), ask("turns", quantity.Ratio, "1", "turns to reckon the move for").within(0, 100).or("1")},
			Answers: []string{"pitch", "engagement", "hand_engagement", "threads_per_inch", "band"}, Call: []string{"pipe=3/4", "turns=1/2"}, reckon: thread,
		},
		{
			Name: "pipe-weight", Asks: "what does a length of pipe weigh?",
			Keys:    []Key{pipeKey(), ask("length", quantity.Length, "21 ft", "length of the pipe")},
			Answers: []string{"mass"}, Call: []string{"pipe=3/4", "length=21 ft"}, reckon: pipeWeight,
		},
		{
			Name: "loops", Asks: "how many unions does a pipe frame need?",
			Keys: []Key{ask("pipes", quantity.Count, "12", "pipes in the frame"),
				ask("joints", quantity.Count, "8", "fittings, flanges, caps and bare ends; flanges fixed beforehand to one body count as one"),
				ask("groups", quantity.Count, "1", "frames that do not touch each other")},
			Answers: []string{"unions"}, Call: []string{"pipes=12", "joints=8", "groups=1"}, reckon: loops,
		},
		{
			Name: "bore", Asks: "which bit makes the hole that a pipe or fitting passes?",
			Keys: []Key{pipeKey(), choose("through", "the largest thing that must go through", "pipe", "coupling", "elbow90", "tee", "flange"),
				ask("clearance", quantity.Length, "1/32 in", "room wanted on the diameter").within(0, 100).or("1/32 in")},
			Answers: []string{"bit", "needs", "straight"}, Call: []string{"pipe=1/2", "through=coupling"}, reckon: boring,
		},
	}
}

const threadCaution = "cut and threaded ends are sharp and oily: gloves for handling, none at the turning machine; eye protection"

func pipeCut(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	a, err := in.fitting("end_a", s)
	if err != nil {
		return err
	}
	b, err := in.fitting("end_b", s)
	if err != nil {
		return err
	}
	cut, err := pipe.CutLength(in.length("between"), a, b)
	if err != nil {
		return in.about("between", err)
	}
	w.answer("cut", cut.Figure)
	w.answer("take_out_a", figure.OfLength("take_out_a", cut.TakeOutA, nil))
	w.answer("take_out_b", figure.OfLength("take_out_b", cut.TakeOutB, nil))
	w.answer("loosest", figure.OfLength("loosest", cut.Loosest, nil))
	w.answer("tightest", figure.OfLength("tightest", cut.Tightest, nil))
	w.assume("loosest and tightest: the built distance of this cut with each joint one pitch less and one pitch further in")
	if cut.Cut < s.CloseNipple {
		w.caution("shorter than a close nipple, " + shown(figure.OfLength("", s.CloseNipple, nil), in.imperial()) + ": there is no such pipe; set the joints further apart")
	} else if cut.Cut < pipe.Threadable {
		w.caution("shorter than a threading machine holds, about " + shown(figure.OfLength("", pipe.Threadable, nil), in.imperial()) + ": take a stock nipple and move the joint to it")
	}
	w.caution(threadCaution)
	return nil
}

var exactFormula = figure.Formula{Text: "exact = faces + 2·e", Source: "pipe fitters' make-up, common practice", Range: "both joints at normal make-up"}

func nipple(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	exact := s.Bridge(in.length("faces"))
	stock, shorter, longer := pipe.NearestNipple(s, exact)
	from := "nipples as sold: ASTM A733, from memory"
	if s.Standard == pipe.ISO7 {
		from = "nipples as sold in millimetres, from memory"
	}
	w.answer("stock", figure.OfLength("stock", stock, nil))
	w.answer("exact", figure.OfLength("exact", exact, &exactFormula, figure.InLength("faces", in.length("faces")), figure.InLength("e", s.Engagement)).From(s.ThreadSource.String()))
	if shorter > 0 {
		w.answer("shorter", figure.OfLength("shorter", shorter, nil))
	}
	if longer > 0 {
		w.answer("longer", figure.OfLength("longer", longer, nil))
	}
	w.answer("moves", figure.OfLength("moves", stock-exact, nil))
	w.assumePipe(s, "make-up", "close nipple")
	w.assume(from, "moves: positive where the stock nipple sets the fittings further apart")
	if longer == 0 {
		w.assume("longer than any nipple that is sold: cut it from a stick")
	}
	return nil
}

var bandFormula = figure.Formula{Text: "band = turns·pitch", Source: "a thread moves by its pitch in a turn"}

func thread(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	turns, from := in.number("turns"), s.ThreadSource.String()
	w.answer("pitch", figure.OfLength("pitch", s.Pitch, nil).From(from))
	w.answer("engagement", figure.OfLength("engagement", s.Engagement, nil).From(from))
	w.answer("hand_engagement", figure.OfLength("hand_engagement", s.HandTight, nil).From(from))
	w.answer("threads_per_inch", figure.Of("threads_per_inch", s.ThreadsPerInch, figure.Count, nil).From(from))
	w.answer("band", figure.OfLength("band", s.MakeUp(turns), &bandFormula,
		figure.In("turns", turns, figure.Ratio), figure.InLength("pitch", s.Pitch)).From(s.ThreadSource.String()))
	w.assumePipe(s, "make-up")
	w.caution("taper threads are only ever tightened: turning one back to point it right makes it leak and work loose")
	return nil
}

var weightFormula = figure.Formula{Text: "mass = mass per metre·L", Source: "table of the pipe's standard", Range: "plain pipe, without fittings"}

func pipeWeight(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	l := in.length("length")
	w.answer("mass", figure.Of("mass", s.Mass(l), figure.Kg, &weightFormula,
		figure.In("mass per metre", s.MassPerMetre, figure.KgPerM), figure.InLength("L", l)).From(s.Source.String()))
	w.assumePipe(s)
	if s.Mass(l) > 23 {
		w.caution("heavier than one person should lift, 23 kg: two people, or cut it first")
	}
	return nil
}

var loopFormula = figure.Formula{Text: "loops = pipes − joints + groups", Source: "graph theory: the cycle rank of the frame", Range: "right-handed threads: each loop needs a union, a running thread or a slip joint"}

func loops(in given, w *work) error {
	pipes, joints, groups := in.count("pipes"), in.count("joints"), in.count("groups")
	n := pipe.LoopCount(pipes, joints, groups)
	if n < 0 {
		return in.wrong("joints", fmt.Sprintf("more than these pipes can have; takes at most %d, pipes + groups", pipes+groups))
	}
	if groups > joints {
		return in.wrong("groups", "more groups than joints: each has at least one")
	}
	w.answer("unions", figure.Of("unions", float64(n), figure.Count, &loopFormula,
		figure.In("pipes", float64(pipes), figure.Count), figure.In("joints", float64(joints), figure.Count), figure.In("groups", float64(groups), figure.Count)))
	w.assume("flanges are screwed to the wood last; a left-right coupling or a long thread with lock nut does for a union")
	if n == 0 {
		w.assume("no loop: every joint can be turned home")
	}
	return nil
}

func boring(in given, w *work) error {
	s, err := in.size()
	if err != nil {
		return err
	}
	kind := pipe.Kind(in.word("through"))
	if kind == "pipe" {
		kind = pipe.None
	}
	f, err := s.Fitting(kind)
	if err != nil {
		return in.about("through", err)
	}
	needs, err := bore.Needs(bore.Section(f), in.length("clearance"))
	if err != nil {
		return err
	}
	w.reason(needs)
	w.answer("bit", bore.Bit(bore.Section(f)+in.length("clearance"), s.Standard == pipe.ISO7))
	w.answer("needs", needs)
	if bore.Bent(f) {
		w.answer("straight", bore.Straight(f))
		w.assume("the band passes this hole, the arm must be turned through behind it; straight, arm and all, it needs the hole called straight: else screw it on after the pipe is through")
	}
	w.assume(f.Assumed)
	w.assumePipe(s)
	w.caution("clamp the panel; bore till the pilot shows, then finish from the other face; eye protection, no gloves at the drill")
	return nil
}
