package explain_test

import (
	"testing"

	"rodwright/cut"
	"rodwright/length"
)

// By hand: 120 in of board at 30, 48 in of it kept at half its price: 30 × 48 ÷ 120 ÷ 2 = 6 off, 24 in all.
func TestTheCostOfBoardsTellsWhatKeptTailsTakeOff(t *testing.T) {
	p := cut.Problem{Boards: &cut.PanelProblem{
		Unit: length.In, Salvage: 0.5, MinTail: 24 * length.Inch,
		Boards: []cut.Board{{Tag: "B1", Length: 120 * length.Inch, Width: 8 * length.Inch, Price: cut.Priced(30)}},
	}}
	a := &cut.Answer{Used: []cut.Used{{Stock: "B1"}}, Cost: 24}
	want := "The boards cost 30.00; tails kept for other work are taken off at 50 % of their price, 6.00."
	if got := mmSpeech("board").Cost(p, a); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if a.Cost = 30; mmSpeech("board").Cost(p, a) != "" {
		t.Error("where nothing is kept the cost is the price of the boards, and nothing is to be told")
	}
}

// By hand: a stick at 20, two nipples bought at 3, and 4 for the work on one that is cut: 30.
func TestTheCostOfSticksTellsWhatComesOnTop(t *testing.T) {
	p := cut.Problem{Sticks: &cut.StickProblem{
		Unit: length.MM, Stock: []cut.StickStock{{Tag: "S", Length: 1000 * mm, Count: cut.Any, Price: cut.Priced(20)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 100 * mm, Count: 3, Bought: cut.Priced(3), Making: cut.Priced(4)}},
	}}
	a := &cut.Answer{Used: []cut.Used{{Stock: "S"}}, Bought: []string{"C1", "C1"}, Cost: 30}
	want := "The sticks cost 20.00, 2 parts bought ready made 6.00, the work on what is cut and could be bought 4.00."
	if got := mmSpeech("stick").Cost(p, a); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	plain := mmSpeech("stick")
	if plain.Money = nil; plain.Cost(p, a) != "" {
		t.Error("money is named where none is to be")
	}
}
