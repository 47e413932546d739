package explain_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/panel"
	"rodwright/cut/sheet"
	"rodwright/cut/stick"
	"rodwright/length"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
)

func mmSpeech(noun string) explain.Speech {
	return explain.Speech{
		Noun: noun, Metric: true, Length: func(l length.Length) string { return cut.Text(l, length.MM) },
		Money: func(v float64) string { return fmt.Sprintf("%.2f", v) },
	}
}

// solved solves a problem of any kind.
func solved(t interface{ Fatal(...any) }, p cut.Problem) *cut.Answer {
	var a *cut.Answer
	var err error
	l := cut.Limits{Nodes: 3000}
	switch {
	case p.Sticks != nil:
		a, err = stick.Solve(context.Background(), p.Sticks, l)
	case p.Boards != nil:
		a, err = panel.Solve(context.Background(), p.Boards, l)
	default:
		a, err = sheet.Solve(context.Background(), p.Sheets, l)
	}
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func drawSticks(t *rapid.T) *cut.StickProblem {
	n := func(from, to int, what string) length.Length {
		return length.Length(rapid.IntRange(from, to).Draw(t, what)) * mm
	}
	p := &cut.StickProblem{Unit: length.MM, Kerf: n(0, 4, "kerf"), Trim: n(0, 6, "trim"), Useful: n(0, 200, "useful")}
	p.Stock = []cut.StickStock{{Tag: "S1", Length: 1000 * mm, Count: cut.Any, Price: cut.Priced(1)}}
	if rapid.Bool().Draw(t, "short") {
		p.Stock = append(p.Stock, cut.StickStock{Tag: "S2", Length: 600 * mm, Count: cut.Any, Price: cut.Priced(1)})
	}
	for i := range rapid.IntRange(1, 5).Draw(t, "kinds") {
		p.Parts = append(p.Parts, cut.StickPart{Tag: fmt.Sprint("C", i), Length: n(80, 900, "length"), Count: cut.Count(rapid.IntRange(1, 4).Draw(t, "count"))})
	}
	return p
}

func drawBoards(t *rapid.T) *cut.PanelProblem {
	n := func(from, to int, what string) length.Length {
		return length.Length(rapid.IntRange(from, to).Draw(t, what)) * mm
	}
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: n(0, 4, "kerf"), Jointing: mm, EndTrim: n(0, 20, "trim"), BoardEdgeTrim: n(0, 8, "edge"), MinTail: 200 * mm,
		Strip: cut.Span{Least: 30 * mm, Most: 120 * mm},
	}
	for i := range 6 {
		b := cut.Board{Tag: fmt.Sprint("B", i), Length: 1200 * mm, Width: n(90, 160, "width"), RoughEdges: rapid.IntRange(0, 2).Draw(t, "rough")}
		if rapid.Bool().Draw(t, "knot") {
			b.Defects = append(b.Defects, cut.Defect{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: n(0, 800, "x"), Y: n(0, 80, "y"), Length: 40 * mm, Width: 30 * mm}})
		}
		p.Boards = append(p.Boards, b)
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "kinds") {
		p.Panels = append(p.Panels, cut.Panel{Tag: fmt.Sprint("A", i), Length: n(200, 600, "l"), Width: n(100, 300, "w"), Count: 1, Show: cut.Clear})
	}
	return p
}

func drawSheets(t *rapid.T) *cut.SheetProblem {
	n := func(from, to int, what string) length.Length {
		return length.Length(rapid.IntRange(from, to).Draw(t, what)) * mm
	}
	p := &cut.SheetProblem{
		Unit: length.MM, Kerf: n(0, 4, "kerf"), Trim: n(0, 12, "trim"), Stages: 3, Useful: [2]length.Length{200 * mm, 100 * mm},
		Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 600 * mm, Count: cut.Any}},
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "kinds") {
		p.Parts = append(p.Parts, cut.SheetPart{
			Tag: fmt.Sprint("D", i), Length: n(60, 700, "l"), Width: n(60, 500, "w"), Count: cut.Count(rapid.IntRange(1, 3).Draw(t, "n")), Turn: rapid.Bool().Draw(t, "turn"),
		})
	}
	return p
}

func drawProblem(t *rapid.T) cut.Problem {
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		return cut.Problem{Sticks: drawSticks(t)}
	case 1:
		return cut.Problem{Boards: drawBoards(t)}
	}
	return cut.Problem{Sheets: drawSheets(t)}
}

func TestTheSharesAddUpToWhatWasOpened(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		a := solved(t, p)
		sum, opened := 0.0, p.Opened(a)
		for _, s := range explain.Shares(p, a) {
			if s.Amount < 0 {
				t.Fatalf("%s: %v", s.Use, s.Amount)
			}
			sum += s.Amount
		}
		if math.Abs(sum-opened) > 1e-6*(1+opened) {
			t.Fatalf("shares come to %v, opened is %v", sum, opened)
		}
	})
}

// A layout that opens more than is needed must not be told to be the least there can be. The solver counts the
// fewest: all sticks have one price.
func TestAGroundNeverRefutesALayoutThatExists(t *testing.T) {
	grounds := map[explain.Ground]int{}
	for seed := range 300 {
		p := rapid.Custom(drawSticks).Example(seed)
		best := solved(t, cut.Problem{Sticks: p})
		if len(best.NotPlaced) > 0 {
			continue // a part is longer than the room of a stick
		}
		for more := range 3 {
			a := *best
			for range more {
				a.Used = append(a.Used, cut.Used{Stock: "S1"})
			}
			r := explain.WhyNotFewer(cut.Problem{Sticks: p}, &a)
			grounds[r.Ground]++
			if hard := r.Ground == explain.Room || r.Ground == explain.Few; hard && !r.Alike && more > 0 {
				t.Fatalf("%d sticks are enough, but %+v", len(best.Used), r)
			}
		}
	}
	for _, g := range []explain.Ground{explain.One, explain.Room, explain.Few, explain.Weighed} {
		if grounds[g] == 0 {
			t.Errorf("no layout was explained by %q: %v", g, grounds)
		}
	}
}

func TestAGroundNeverRefutesASheetLayoutThatExists(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		best := solved(t, p)
		if len(best.NotPlaced) > 0 || len(best.Used) == 0 {
			t.Skip("not all is laid out")
		}
		a := *best
		a.Used = append(append([]cut.Used{}, best.Used...), best.Used[0])
		if r := explain.WhyNotFewer(p, &a); !r.Alike && (r.Ground == explain.Room || r.Ground == explain.Few) {
			t.Fatalf("%d are enough, but %+v", len(best.Used), r)
		}
	})
}

// By hand, in inches: a stick of 252 with 1/4 off both ends holds 251.5. Twelve parts of 84 are 1008; on four
// sticks there are eight saw cuts of 1/8 between them: 1009. Four sticks hold 1006.
func TestFewerSticksHoldLessThanThePartsNeed(t *testing.T) {
	p := &cut.StickProblem{
		Unit: length.In, Kerf: inch / 8, Trim: inch / 4,
		Stock: []cut.StickStock{{Tag: "pipe", Length: 252 * inch, Count: cut.Any, Price: cut.Priced(52)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 84 * inch, Count: 12}},
	}
	a := &cut.Answer{Used: make([]cut.Used, 5), Cost: 260, Bound: 260, Proven: true}
	r := explain.WhyNotFewer(cut.Problem{Sticks: p}, a)
	if r.Ground != explain.Room || r.Fewer != 4 || math.Abs(r.Holds-1006*25.4) > 1e-9 || math.Abs(r.Needs-1009*25.4) > 1e-9 {
		t.Errorf("got %+v", r)
	}
	s := explain.Speech{Noun: "stick", Length: length.Sixteenth.Show}
	want := "4 sticks of 252 in hold 1006 in once their ends are off; the parts with the saw cuts between them need 1009 in. So 5 is the least."
	if got := s.Why(r, cut.EveryLayout); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// By hand: two parts of 330 and a saw cut of 4 are 664, three with two cuts 998; a stick of 1000 that loses 5 at
// both ends has 990. So a stick holds two of them, and seven need four.
func TestOfLongPartsAStickHoldsOnlySoMany(t *testing.T) {
	p := &cut.StickProblem{
		Unit: length.MM, Kerf: 4 * mm, Trim: 5 * mm,
		Stock: []cut.StickStock{{Tag: "S", Length: 1000 * mm, Count: cut.Any}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 330 * mm, Count: 7}, {Tag: "C2", Length: 30 * mm, Count: 1}},
	}
	a := &cut.Answer{Used: make([]cut.Used, 4), Cost: 4000, Bound: 4000, Proven: true}
	r := explain.WhyNotFewer(cut.Problem{Sticks: p}, a)
	if r.Ground != explain.Few || r.Large != 7 || r.Each != 2 || r.Least[0] != 330*mm {
		t.Errorf("got %+v", r)
	}
	want := "7 parts are 330 mm or more long, and no more than 2 of them come out of one stick of 1000 mm. So 4 is the least."
	if got := mmSpeech("stick").Why(r, cut.EveryLayout); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestWhatIsOpenIsSaidAndRoundedUp(t *testing.T) {
	p := &cut.StickProblem{
		Unit: length.MM, Stock: []cut.StickStock{{Tag: "S", Length: 1000 * mm, Count: cut.Any, Price: cut.Priced(10)}, {Tag: "L", Length: 3000 * mm, Count: cut.Any, Price: cut.Priced(40)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 300 * mm, Count: 4}},
	}
	a := &cut.Answer{Used: []cut.Used{{Stock: "S"}, {Stock: "L"}}, Cost: 80, Bound: 79.25}
	if got := mmSpeech("stick").Why(explain.WhyNotFewer(cut.Problem{Sticks: p}, a), cut.EveryLayout); !strings.Contains(got, "up to 0.94 % less is not ruled out") {
		t.Error(got)
	}
	a.Bound, a.Proven = 80, true
	if got := mmSpeech("stick").Why(explain.WhyNotFewer(cut.Problem{Sticks: p}, a), cut.EveryLayout); !strings.Contains(got, "no layout costs less than 80.00") {
		t.Error(got)
	}
}

// By hand: two parts of 600 want two sticks of 1000 at 10, or one of 1300 at 25. One more short stick that lies
// there saves 10, bought it changes nothing; one more long stick saves all 20, bought the whole is dearer by 5.
func TestOneMoreStickSavesWhatItReplaces(t *testing.T) {
	p := cut.Problem{Sticks: &cut.StickProblem{
		Unit: length.MM, Useful: 300 * mm,
		Stock: []cut.StickStock{{Tag: "short", Length: 1000 * mm, Count: cut.Any, Price: cut.Priced(10)}, {Tag: "long", Length: 1300 * mm, Count: cut.Any, Price: cut.Priced(25)}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 600 * mm, Count: 2}},
	}}
	a := solved(t, p)
	got, err := explain.OneMore(context.Background(), p, a, cut.Limits{})
	if err != nil || len(got) != 2 {
		t.Fatal(got, err)
	}
	for i, want := range []explain.Change{{Stock: "short", More: 0, Free: 10}, {Stock: "long", More: 5, Free: 20}} {
		if c := got[i]; c.Stock != want.Stock || !c.Taken || math.Abs(c.More-want.More) > 1e-9 || math.Abs(c.Free-want.Free) > 1e-9 {
			t.Errorf("got %+v, by hand %+v", c, want)
		}
	}
	want := "One more long: bought, the whole costs 5.00 more; lying there already, 20.00 less; 1 stick opened, not 2; longest offcut kept none, not 400 mm."
	if s := mmSpeech("stick").OneMore(got[1], "long"); s != want {
		t.Errorf("got  %s\nwant %s", s, want)
	}
}

func TestKindsOfWhichNothingIsGainedAreToldTogether(t *testing.T) {
	changes := []explain.Change{
		{Taken: true, Free: 80.96}, {Taken: true, More: 17.17, Free: 136.13}, {Taken: true, More: 0.004, Free: 107.95}, {}, {Taken: true, Free: 109.14},
	}
	names := []string{"board of 96 × 6 in", "board of 144 × 9 in", "board of 96 × 7 in", "R7 of the rack", "board of 120 × 8 in"}
	want := []string{
		"One more board of 144 × 9 in: bought, the whole costs 17.17 more; lying there already, 136.13 less.",
		"One more R7 of the rack: nothing changes; no better layout was found that cuts it up.",
		"Nothing is gained by buying one more board of 96 × 6 in, 96 × 7 in or 120 × 8 in; one that lies there already saves 80.96, 107.95 or 109.14.",
	}
	if got := mmSpeech("board").OneMores(changes, names); !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
	quiet := mmSpeech("board")
	quiet.Money = nil
	if got := quiet.OneMores(changes[:1], names); !slices.Equal(got, []string{"Nothing is gained by buying one more board of 96 × 6 in."}) {
		t.Errorf("where money is not named: %q", got)
	}
	if got := quiet.OneMores(nil, nil); len(got) > 0 {
		t.Errorf("of nothing: %q", got)
	}
}

// Of stock that is there without end one more is no news: paid for, it makes no proven layout cheaper. Of boards
// one more can, as each is there once.
func TestOneMoreOfEndlessStockMakesNoProvenLayoutCheaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		a := solved(t, p)
		got, err := explain.OneMore(context.Background(), p, a, cut.Limits{Nodes: 300})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range got {
			if p.Boards == nil && a.Proven && c.More < -1e-6*(1+a.Cost) && len(a.NotPlaced) == 0 {
				t.Fatalf("one more %s makes a proven layout cheaper: %+v", c.Stock, c)
			}
			if c.Taken && c.Free+c.More < -1e-6*(1+a.Cost) {
				t.Fatalf("one more %s saves more bought than had for nothing: %+v", c.Stock, c)
			}
		}
	})
}

// By hand: strips of 500 × 66, four of them, hold 132 000 mm²; the finished panel is 480 × 250: 120 000. A board of
// 1000 × 140 is 140 000, so that 8 000 are left over.
func TestWhatJointingAndTrimmingStillTakeIsNoPart(t *testing.T) {
	p := &cut.PanelProblem{
		Unit: length.MM, Boards: []cut.Board{{Tag: "B", Length: 1000 * mm, Width: 140 * mm}},
		Panels: []cut.Panel{{Tag: "A", Length: 480 * mm, Width: 250 * mm, Count: 1}},
	}
	strip := cut.Strip{Board: "B", Size: [2]length.Length{500 * mm, 66 * mm}}
	a := &cut.Answer{
		Used: []cut.Used{{Stock: "B"}}, Waste: cut.Waste{LeftoverLost: 8000},
		Panels: []cut.GluedPanel{{Tag: "A", Strips: []cut.Strip{strip, strip, strip, strip}}},
	}
	got := map[explain.Use]float64{}
	for _, s := range explain.Shares(cut.Problem{Boards: p}, a) {
		got[s.Use] = s.Amount
	}
	if math.Abs(got[explain.Parts]-120_000) > 1e-6 || math.Abs(got[explain.Later]-12_000) > 1e-6 || math.Abs(got[explain.Lost]-8_000) > 1e-6 {
		t.Errorf("got %v", got)
	}
}

// Two parts of 498 and a saw cut of 4 are just 1000: two do come out of a stick.
func TestPartsThatJustFitAStickAreNoGround(t *testing.T) {
	p := &cut.StickProblem{
		Unit: length.MM, Kerf: 4 * mm, Stock: []cut.StickStock{{Tag: "S", Length: 1000 * mm, Count: cut.Any}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 498 * mm, Count: 3}},
	}
	a := &cut.Answer{Used: make([]cut.Used, 3), Cost: 3000, Bound: 2000}
	if r := explain.WhyNotFewer(cut.Problem{Sticks: p}, a); r.Ground != explain.Open {
		t.Errorf("two sticks are enough, but %+v", r)
	}
}

// By hand: of strips at most 100 wide 98 are left when both edges are jointed by 1; a blank 200 wide needs three of
// them, 206 of board in all, 500 long: 103 000 mm². Two panels need 206 000, a board of 1000 × 150 holds 150 000.
func TestFewerBoardsHoldLessThanTheStripsNeed(t *testing.T) {
	p := &cut.PanelProblem{
		Unit: length.MM, Jointing: mm, EndTrim: 10 * mm, PanelEdgeTrim: 5 * mm, Strip: cut.Span{Least: 30 * mm, Most: 100 * mm},
		Panels: []cut.Panel{{Tag: "A1", Length: 480 * mm, Width: 190 * mm, Count: 1}, {Tag: "A2", Length: 480 * mm, Width: 190 * mm, Count: 1}},
	}
	for _, tag := range []string{"B1", "B2", "B3"} {
		p.Boards = append(p.Boards, cut.Board{Tag: tag, Length: 1000 * mm, Width: 150 * mm})
	}
	a := &cut.Answer{Used: []cut.Used{{Stock: "B1"}, {Stock: "B2"}}, Panels: []cut.GluedPanel{{Tag: "A1"}, {Tag: "A2"}}, Cost: 2, Bound: 2, Proven: true}
	r := explain.WhyNotFewer(cut.Problem{Boards: p}, a)
	if r.Ground != explain.Room || math.Abs(r.Holds-150_000) > 1e-6 || math.Abs(r.Needs-206_000) > 1e-6 {
		t.Errorf("got %+v", r)
	}
	want := "1 board of 1000 × 150 mm holds 0.15 m² within its rough edges; the strips with their joints and the trim of the blanks need at least 0.206 m². So 2 is the least."
	if got := mmSpeech("board").Why(r, cut.EveryLayout); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
