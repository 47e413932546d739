package panel_test

import (
	"context"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/verify"
	"rodwright/length"
)

const inch = length.Inch

// solve lays out p and refuses any fault.
func solve(t testing.TB, p *panel.Problem) *cut.Answer {
	t.Helper()
	a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range verify.Panel(p, a) {
		t.Errorf("%v", f)
	}
	return a
}

// shop is a problem with a shop's usual saw cut, jointing and trims, in inches.
func shop(boards []panel.Board, panels ...panel.Panel) *panel.Problem {
	return &panel.Problem{
		Unit: length.In, Kerf: inch / 8, Jointing: inch / 16, EndTrim: inch, PanelEdgeTrim: inch / 4, BoardEdgeTrim: inch / 4,
		Strip: cut.Span{Least: 2 * inch, Most: 6 * inch}, Boards: boards, Panels: panels,
	}
}

func board(tag string, l, w length.Length, defects ...cut.Defect) panel.Board {
	return panel.Board{Tag: tag, Length: l, Width: w, RoughEdges: 1, Price: cut.Priced(30), Ring: cut.RingUp, Defects: defects}
}

func top(l, w length.Length, show cut.Show) panel.Panel {
	return panel.Panel{Tag: "A1", Length: l, Width: w, Count: 1, Show: show}
}

func knot(x, y, l, w length.Length) cut.Defect {
	return cut.Defect{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: x, Y: y, Length: l, Width: w}}
}

// Worked by hand: a blank of 42 × 19 1/2 in. A board of 7 1/4 in less 1/4 in of rough edge gives 7 in:
// two strips of 3 7/16 in, 6 5/8 in net after jointing. A board of 96 in holds two such lengths, so three
// stretches of 6 5/8 = 19 7/8 in net are enough, and two boards hold four.
func TestAPanelOfTwoBoards(t *testing.T) {
	p := shop([]panel.Board{board("B1", 96*inch, 29*inch/4), board("B2", 96*inch, 29*inch/4), board("B3", 96*inch, 29*inch/4)}, top(40*inch, 19*inch, cut.Clear))
	a := solve(t, p)
	if a.Cost != 60 || !a.Proven {
		t.Errorf("cost %v, bound %v, want 60 proven", a.Cost, a.Bound)
	}
	var net length.Length
	for _, s := range a.Panels[0].Strips {
		net += s.NetWidth
		if s.NetWidth != s.Size[1]-inch/8 || s.Size[0] != 42*inch {
			t.Errorf("strip %+v", s)
		}
	}
	if net != 19*inch+inch/2 {
		t.Errorf("the strips add up to %v in, wanted 19.5", net.Inches())
	}
}

func TestAKeptTailLowersTheCost(t *testing.T) {
	p := shop([]panel.Board{board("B1", 100*inch, 8*inch)}, top(48*inch, 6*inch, cut.Clear))
	p.Salvage, p.MinTail = 0.5, 24*inch
	a := solve(t, p)
	// The tail is 100 − 50 − 1/8 = 49 7/8 in: 30 − 0.5 · 30 · 0.49875.
	if want := 30 - 0.5*30*0.49875; a.Cost != cut.RoundMoney(want) || !a.Proven {
		t.Errorf("cost %v, bound %v, want %v proven", a.Cost, a.Bound, want)
	}
	if len(a.Used[0].Left) != 1 || a.Used[0].Left[0].Size[0] != 50*inch-inch/8 {
		t.Errorf("left %v", a.Used[0].Left)
	}
}

func TestDefectsFallBetweenTheStrips(t *testing.T) {
	for _, c := range []struct {
		name    string
		show    cut.Show
		defects []cut.Defect
		made    bool
	}{
		{"a knot at the end is cut off", cut.Clear, []cut.Defect{knot(0, 3*inch, 2*inch, inch)}, true},
		{"a knot in the middle of the width leaves too little clear wood", cut.Clear, []cut.Defect{knot(20*inch, 5*inch/2, 2*inch, 2*inch)}, false},
		{"a character face takes it", cut.Character, []cut.Defect{knot(20*inch, 3*inch, 2*inch, inch)}, true},
		{"a small knot is taken where small knots are", cut.SmallKnots, []cut.Defect{knot(20*inch, 3*inch, inch/2, inch/2)}, true},
		{"a split is never taken", cut.Character, []cut.Defect{{Kind: cut.Split, Face: cut.BothFaces, Rect: cut.Rect{X: 10 * inch, Y: 0, Length: 30 * inch, Width: 5 * inch}}}, false},
		{"sap on the back is taken", cut.Clear, []cut.Defect{{Kind: cut.Sap, Face: cut.BackFace, Rect: cut.Rect{X: 0, Y: 0, Length: 50 * inch, Width: 2 * inch}}}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := solve(t, shop([]panel.Board{board("B1", 46*inch, 7*inch, c.defects...)}, top(40*inch, 5*inch, c.show)))
			if made := len(a.Panels) == 1; made != c.made {
				t.Errorf("made %v, want %v: %v", made, c.made, a.NotPlaced)
			}
		})
	}
}

// Two clear ranges on either side of a knot narrower than the saw cut share that saw cut.
func TestAKnotNarrowerThanTheSawCutTakesAWholeOne(t *testing.T) {
	p := shop([]panel.Board{board("B1", 46*inch, 7*inch, knot(20*inch, 3*inch, inch, inch/32))}, top(40*inch, 5*inch, cut.Clear))
	if a := solve(t, p); len(a.Panels) != 1 || len(a.Panels[0].Strips) != 2 {
		t.Errorf("made %+v", a.Panels)
	}
}

// A rip through an open hole leaves a joint with nothing to glue.
func TestNoJointGoesThroughAVoid(t *testing.T) {
	void := cut.Defect{Kind: cut.Void, Face: cut.BothFaces, Rect: cut.Rect{X: 20 * inch, Y: 11 * inch / 4, Length: 2 * inch, Width: 2 * inch}}
	p := shop([]panel.Board{board("B1", 46*inch, 8*inch, void), board("B2", 46*inch, 8*inch, void)}, top(40*inch, 9*inch, cut.Character))
	a := solve(t, p)
	if len(a.Panels) != 1 {
		t.Errorf("not made: %v", a.NotPlaced)
	}
}

func TestNoDefectComesWhereANotchOrScrewWillBe(t *testing.T) {
	p := shop([]panel.Board{board("B1", 46*inch, 7*inch, knot(20*inch, 5*inch/2, 2*inch, 2*inch))}, top(40*inch, 5*inch, cut.Character))
	p.Panels[0].KeepOut = []cut.Rect{{X: 14 * inch, Y: inch, Length: 8 * inch, Width: 3 * inch}}
	if a := solve(t, p); len(a.Panels) != 0 {
		t.Errorf("made from %+v", a.Panels[0].Strips)
	}
	p.Boards = append(p.Boards, board("B2", 46*inch, 7*inch))
	if a := solve(t, p); len(a.Panels) != 1 || a.Panels[0].Strips[0].Board != "B2" {
		t.Errorf("the clear board is not taken: %+v", a.Panels)
	}
}

func TestTheRingsOfNeighboursAlternate(t *testing.T) {
	a := solve(t, shop([]panel.Board{board("B1", 96*inch, 8*inch), board("B2", 96*inch, 8*inch)}, top(40*inch, 20*inch, cut.Clear)))
	strips := a.Panels[0].Strips
	for i := 1; i < len(strips); i++ {
		if strips[i].Ring == strips[i-1].Ring {
			t.Errorf("strips %d and %d both show %s", i-1, i, strips[i].Ring)
		}
	}
}

func TestAStripThatShowsItsOnlyGoodFaceIsNotTurnedOver(t *testing.T) {
	back := cut.Defect{Kind: cut.Knot, Face: cut.BackFace, Rect: cut.Rect{Length: 40 * inch, Width: 8 * inch}}
	a := solve(t, shop([]panel.Board{board("B1", 96*inch, 8*inch, back)}, top(40*inch, 7*inch, cut.Clear)))
	for _, s := range a.Panels[0].Strips {
		if s.At[0] < 40*inch && s.Ring != cut.RingUp {
			t.Errorf("strip %+v shows the knot on its back", s)
		}
	}
}

func TestMatesComeFromOneLog(t *testing.T) {
	boards := []panel.Board{board("B1", 46*inch, 7*inch), board("B2", 46*inch, 7*inch), board("B3", 46*inch, 7*inch)}
	boards[0].Mate, boards[2].Mate = "log a", "log a"
	p := shop(boards, top(40*inch, 11*inch, cut.Clear))
	p.Panels[0].Mates = true
	a := solve(t, p)
	if len(a.Panels) != 1 {
		t.Fatalf("not made: %v", a.NotPlaced)
	}
	for _, s := range a.Panels[0].Strips {
		if s.Board == "B2" {
			t.Error("a strip comes from another log")
		}
	}
	p.Boards[2].Mate = "log b"
	if a = solve(t, p); len(a.Panels) != 0 || !strings.Contains(a.NotPlaced[0].Why, "log") {
		t.Errorf("made from boards of two logs; not placed %v", a.NotPlaced)
	}
}

func TestABoardTooThinIsLeft(t *testing.T) {
	p := shop([]panel.Board{board("B1", 46*inch, 7*inch), board("B2", 46*inch, 7*inch)}, top(40*inch, 5*inch, cut.Clear))
	p.Boards[0].Thickness, p.Boards[1].Thickness = inch, 5*inch/4
	p.Panels[0].Thickness = 9 * inch / 8
	if a := solve(t, p); len(a.Used) != 1 || a.Used[0].Stock != "B2" {
		t.Errorf("used %+v", a.Used)
	}
}

func TestWhatTheBoardsAreShortOfIsToldAndTheRestMade(t *testing.T) {
	long := panel.Panel{Tag: "A2", Length: 60 * inch, Width: 5 * inch, Count: 1, Show: cut.Clear}
	wide := panel.Panel{Tag: "A3", Length: 30 * inch, Width: 40 * inch, Count: 1, Show: cut.Clear}
	a := solve(t, shop([]panel.Board{board("B1", 46*inch, 7*inch)}, top(40*inch, 5*inch, cut.Clear), long, wide))
	if len(a.Panels) != 1 || a.Panels[0].Tag != "A1" || len(a.NotPlaced) != 2 {
		t.Fatalf("made %v, not %v", a.Panels, a.NotPlaced)
	}
	if a.NotPlaced[0].Tag != "A2" || !strings.Contains(a.NotPlaced[0].Why, "longer than any board") {
		t.Errorf("told as %v", a.NotPlaced[0])
	}
	if a.NotPlaced[1].Tag != "A3" || !strings.Contains(a.NotPlaced[1].Why, "not enough wood") {
		t.Errorf("told as %v", a.NotPlaced[1])
	}
}

func TestSegmentsAreCrosscutBeforeStripsAreRipped(t *testing.T) {
	a := solve(t, shop([]panel.Board{board("B1", 96*inch, 8*inch)}, top(40*inch, 12*inch, cut.Clear)))
	ripped := false
	made := map[cut.Machine]int{}
	for i, c := range a.Cuts {
		if c.N != i+1 || c.On != "B1" || c.Setting <= 0 {
			t.Errorf("cut %+v", c)
		}
		if c.Machine == cut.Crosscut && ripped {
			t.Error("a crosscut comes after the first rip")
		}
		ripped = ripped || c.Machine == cut.Rip
		made[c.Machine] += len(c.Makes)
	}
	if strips := len(a.Panels[0].Strips); made[cut.Rip] != strips || made[cut.Crosscut] != strips {
		t.Errorf("%d strips, the cuts make %v", strips, made)
	}
}

func TestTheSameProblemHasTheSameAnswer(t *testing.T) {
	p := glueUps(t)[0].problem
	if a, b := solve(t, p), solve(t, p); !reflect.DeepEqual(a, b) {
		t.Error("two answers differ")
	}
}

func TestAnEndedContextStillLaysEverythingOut(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, o := range glueUps(t) {
		a, err := panel.Solve(ctx, o.problem, cut.Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if faults := verify.Panel(o.problem, a); len(faults) > 0 || a.Bound <= 0 || len(a.NotPlaced) > 0 {
			t.Errorf("bound %v, faults %v, not placed %v", a.Bound, faults, a.NotPlaced)
		}
	}
}

func ExampleSolve() {
	p := &panel.Problem{
		Unit: length.In, Kerf: inch / 8, Jointing: inch / 16, EndTrim: inch, PanelEdgeTrim: inch / 4, BoardEdgeTrim: inch / 4,
		Strip: cut.Span{Least: 2 * inch, Most: 6 * inch},
		Boards: []panel.Board{
			{Tag: "B1", Length: 103 * inch, Width: 29 * inch / 4, RoughEdges: 1, Price: cut.Priced(38), Ring: cut.RingUp},
			{Tag: "B2", Length: 96 * inch, Width: 6 * inch, RoughEdges: 1, Price: cut.Priced(31), Ring: cut.RingDown},
		},
		Panels: []panel.Panel{{Tag: "A1", Length: 40 * inch, Width: 12 * inch, Count: 1, Show: cut.Clear}},
	}
	a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 10_000})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("cost", a.Cost)
	for _, s := range a.Panels[0].Strips {
		fmt.Println(s.Board, cut.Text(s.Size[1], p.Unit), s.Ring)
	}
	// Output:
	// cost 38
	// B1 3.4375 in up
	// B1 3.4375 in down
	// B1 6 in up
}
