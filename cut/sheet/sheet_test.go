package sheet_test

import (
	"context"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

const mm = length.Millimetre

// solve lays out p and refuses any fault.
func solve(t testing.TB, p *sheet.Problem) *cut.Answer {
	t.Helper()
	a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 100_000})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range verify.Sheet(p, a) {
		t.Errorf("%v", f)
	}
	return a
}

// board is a problem of sheets of one size.
func board(kerf, trim, l, w length.Length, parts ...sheet.Part) *sheet.Problem {
	return &sheet.Problem{
		Unit: length.MM, Kerf: kerf, Trim: trim,
		Sheets: []sheet.Sheet{{Tag: "P1", Length: l, Width: w, Count: cut.Any, Price: cut.Priced(60)}}, Parts: parts,
	}
}

func part(tag string, l, w length.Length, n cut.Count) sheet.Part {
	return sheet.Part{Tag: tag, Length: l, Width: w, Count: n}
}

func TestSawCutsAndTrimDecideWhatFits(t *testing.T) {
	for _, c := range []struct {
		name string
		l, w length.Length
		want float64
	}{
		{"four parts and a cross of saw cuts", 823 * mm, 623 * mm, 60},
		{"a nanometre short along", 823*mm - 1, 623 * mm, 120},
		{"a nanometre short across", 823 * mm, 623*mm - 1, 120},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := solve(t, board(3*mm, 10*mm, c.l, c.w, part("D1", 400*mm, 300*mm, 4)))
			if a.Cost != c.want || !a.Proven {
				t.Errorf("cost %v, bound %v, want %v proven", a.Cost, a.Bound, c.want)
			}
		})
	}
}

func TestAPartIsTurnedOnlyWhereItMayBe(t *testing.T) {
	for _, c := range []struct {
		turn, grain bool
		placed      int
	}{{true, false, 1}, {false, false, 0}, {true, true, 0}} {
		p := board(0, 0, 1000*mm, 500*mm, part("D1", 400*mm, 900*mm, 1))
		p.Parts[0].Turn, p.Sheets[0].Grain = c.turn, c.grain
		a := solve(t, p)
		if len(a.Used) != c.placed || len(a.NotPlaced) != 1-c.placed {
			t.Errorf("turn %v, grain %v: %d sheets used", c.turn, c.grain, len(a.Used))
		}
		if c.placed == 1 && !a.Used[0].Parts[0].Turned {
			t.Error("the part is not told as turned")
		}
		if c.placed == 0 && !strings.Contains(a.NotPlaced[0].Why, "fits only turned on P1") {
			t.Errorf("told as %q", a.NotPlaced[0].Why)
		}
	}
}

func TestPartsKeepOffDefects(t *testing.T) {
	p := board(3*mm, 0, 1000*mm, 500*mm, part("D1", 440*mm, 440*mm, 2))
	p.Sheets[0].Defects = []cut.Rect{{X: 0, Y: 0, Length: 50 * mm, Width: 40 * mm}}
	if a := solve(t, p); a.Cost != 60 {
		t.Errorf("behind the defect both fit, cost %v", a.Cost)
	}
	p.Sheets[0].Defects = append(p.Sheets[0].Defects, cut.Rect{X: 430 * mm, Y: 200 * mm, Length: 60 * mm, Width: 10 * mm})
	if a := solve(t, p); len(a.Used) != 2 {
		t.Errorf("with one in the middle each takes a sheet, used %d", len(a.Used))
	}
}

// Five rectangles round a pinwheel can't be parted by cuts right across: two sheets are needed, though
// the areas fill one.
func TestAPinwheelIsNotCutRightAcross(t *testing.T) {
	p := board(0, 0, 300*mm, 300*mm,
		part("a", 200*mm, 100*mm, 2), part("b", 100*mm, 200*mm, 2), part("c", 100*mm, 100*mm, 1))
	if a := solve(t, p); a.Cost != 120 || a.Bound != 60 {
		t.Errorf("cost %v, bound %v", a.Cost, a.Bound)
	}
}

func TestFewerStagesNeedMoreSheets(t *testing.T) {
	// Two columns, each cut into two rows, one of those again into two: three changes of direction.
	parts := []sheet.Part{
		part("a", 100*mm, 200*mm, 1), part("b", 200*mm, 80*mm, 1), part("c", 120*mm, 120*mm, 1), part("d", 80*mm, 120*mm, 1),
	}
	want := map[int]float64{3: 60, 0: 60}
	for stages, cost := range want {
		p := board(0, 0, 300*mm, 200*mm, parts...)
		p.Stages = stages
		if a := solve(t, p); a.Cost != cost {
			t.Errorf("%d stages: cost %v, want %v", stages, a.Cost, cost)
		}
	}
	p := board(0, 0, 300*mm, 200*mm, parts...)
	p.Stages = 1
	if a := solve(t, p); a.Cost <= 60 {
		t.Errorf("one stage can't part them, cost %v", a.Cost)
	}
}

func TestTheCheaperSheetIsTaken(t *testing.T) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm, part("D1", 600*mm, 400*mm, 2))
	p.Sheets = append(p.Sheets, sheet.Sheet{Tag: "half", Length: 1220 * mm, Width: 1220 * mm, Count: 1, Price: cut.Priced(34)})
	a := solve(t, p)
	if a.Cost != 34 || !a.Proven || a.Used[0].Stock != "half" {
		t.Errorf("cost %v, bound %v", a.Cost, a.Bound)
	}
	p.Parts[0].Count = 10 // eight on a whole sheet, two on the half one
	if a = solve(t, p); a.Cost != 94 {
		t.Errorf("cost %v", a.Cost)
	}
}

func TestWhereSheetsRunOutTheRestIsTold(t *testing.T) {
	p := board(0, 0, 1000*mm, 1000*mm, part("D1", 600*mm, 600*mm, 3))
	p.Sheets[0].Count = 2
	a := solve(t, p)
	if len(a.Used) != 2 || len(a.NotPlaced) != 1 || !strings.Contains(a.NotPlaced[0].Why, "no sheet left") {
		t.Errorf("%d sheets, not placed %v", len(a.Used), a.NotPlaced)
	}
	if a.Cost != 120 || a.Bound != 120 {
		t.Errorf("cost %v, bound %v of what is placed", a.Cost, a.Bound)
	}
}

func TestOffcutsWorthKeepingAreTold(t *testing.T) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm, part("D1", 1000*mm, 1200*mm, 1))
	p.Useful = [2]length.Length{300 * mm, 150 * mm}
	a := solve(t, p)
	if len(a.Used[0].Left) != 1 || a.Used[0].Left[0].Size != [2]length.Length{1417 * mm, 1200 * mm} {
		t.Errorf("left %v", a.Used[0].Left)
	}
	p.Useful = [2]length.Length{1500 * mm, 1000 * mm}
	if a = solve(t, p); len(a.Used[0].Left) != 0 || a.Waste.LeftoverLost == 0 {
		t.Errorf("left %v, waste %+v", a.Used[0].Left, a.Waste)
	}
}

// An own little problem: of value 10 parts at most four fit, one of value 25 leaves room for two.
func TestSheetsAreFilledForTheGreatestValue(t *testing.T) {
	p := board(0, 0, 400*mm, 200*mm)
	p.Sheets[0].Count = 1
	p.Parts = []sheet.Part{
		{Tag: "small", Length: 200 * mm, Width: 100 * mm, Count: cut.Any, Value: cut.Priced(10)},
		{Tag: "large", Length: 200 * mm, Width: 200 * mm, Count: 1, Value: cut.Priced(25)},
	}
	a := solve(t, p)
	if a.Cost != 45 || a.Bound < 45 || len(a.NotPlaced) != 0 {
		t.Errorf("value %v, bound %v", a.Cost, a.Bound)
	}
	p.Parts[1].Count = cut.Any
	if a = solve(t, p); a.Cost != 50 || !a.Proven {
		t.Errorf("value %v, bound %v, want 50 proven", a.Cost, a.Bound)
	}
}

func TestTheSameProblemHasTheSameLayout(t *testing.T) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm)
	p.Stages = 3
	for i := range 15 {
		q := part(fmt.Sprint("D", i), length.Length(200+97*i%700)*mm, length.Length(150+61*i%500)*mm, 2)
		q.Turn = i%2 == 0
		p.Parts = append(p.Parts, q)
	}
	if a, b := solve(t, p), solve(t, p); !reflect.DeepEqual(a, b) {
		t.Error("two answers differ")
	}
}

func TestAnEndedContextStillLaysEverythingOut(t *testing.T) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm)
	for i := range 40 {
		p.Parts = append(p.Parts, part(fmt.Sprint("D", i), length.Length(200+97*i%900)*mm, length.Length(150+61*i%800)*mm, 3))
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	a, err := sheet.Solve(ctx, p, cut.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	if faults := verify.Sheet(p, a); len(faults) > 0 || a.Bound <= 0 || len(a.NotPlaced) > 0 {
		t.Errorf("bound %v, faults %v", a.Bound, faults)
	}
}

// The cuts, made one after the other on the sheet, free every part: each part is made by the last cut that
// names it, and no part is named by none but one that is left when all around it is cut off.
func TestTheCutsNameEveryPart(t *testing.T) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm, part("D1", 600*mm, 400*mm, 3), part("D2", 500*mm, 300*mm, 4))
	a := solve(t, p)
	named := map[string]bool{}
	for i, c := range a.Cuts {
		if c.N != i+1 || c.Setting <= 0 || c.On != "P1" {
			t.Errorf("cut %+v", c)
		}
		for _, tag := range c.Makes {
			named[tag] = true
		}
	}
	if !named["D1"] || !named["D2"] {
		t.Errorf("cuts name %v", named)
	}
}

func ExampleSolve() {
	p := &sheet.Problem{
		Unit: length.MM, Kerf: 3 * mm, Trim: 10 * mm, Stages: 3,
		Sheets: []sheet.Sheet{{Tag: "P1", Length: 2440 * mm, Width: 1220 * mm, Count: 2, Price: cut.Priced(60)}},
		Parts:  []sheet.Part{{Tag: "D1", Length: 600 * mm, Width: 400 * mm, Count: 8}},
	}
	a, err := sheet.Solve(context.Background(), p, cut.Limits{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("cost", a.Cost, "bound", a.Bound, "proven", a.Proven, "sheets", len(a.Used))
	// Output: cost 60 bound 60 proven true sheets 1
}
