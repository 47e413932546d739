package sheet_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

// stock adds a kind of sheet.
func stock(p *sheet.Problem, tag string, l, w length.Length, n cut.Count, price float64) {
	p.Sheets = append(p.Sheets, sheet.Sheet{Tag: tag, Length: l, Width: w, Count: n, Price: cut.Priced(price)})
}

// used are the tags of the sheets opened, sorted.
func used(a *cut.Answer) string {
	var tags []string
	for _, u := range a.Used {
		tags = append(tags, u.Stock)
	}
	slices.Sort(tags)
	return strings.Join(tags, " ")
}

// Parts of 400 × 300, a sheet of 800 × 600 for 60 holds four, one of 800 × 300 for 35 two, the offcut of 400 × 300 for
// 2 one: what is cheapest is reckoned by hand.
func TestSizesAndOffcutsOfTheRackAreTakenByPrice(t *testing.T) {
	for _, c := range []struct {
		parts  cut.Count
		halves cut.Count // sheets of half the width that are there
		cost   float64
		used   string
	}{
		{1, cut.Any, 2, "rest"},
		{2, cut.Any, 35, "half"},
		{3, cut.Any, 37, "half rest"},
		{4, cut.Any, 60, "P1"},
		{5, cut.Any, 62, "P1 rest"},
		{6, cut.Any, 95, "P1 half"},
		{7, 1, 97, "P1 half rest"},
		{8, 1, 120, "P1 P1"},
		{2, 0, 60, "P1"},
	} {
		t.Run(fmt.Sprintf("%d parts, %d halves", c.parts, c.halves), func(t *testing.T) {
			p := board(0, 0, 800*mm, 600*mm, part("D1", 400*mm, 300*mm, c.parts))
			stock(p, "half", 800*mm, 300*mm, c.halves, 35)
			stock(p, "rest", 400*mm, 300*mm, 1, 2)
			a := solve(t, p)
			if a.Cost != c.cost || !a.Proven || used(a) != c.used {
				t.Errorf("%s for %v, bound %v; want %s for %v", used(a), a.Cost, a.Bound, c.used, c.cost)
			}
		})
	}
}

// An offcut of the rack costs nothing where it is given no price to pay; then nothing is bought.
func TestAnOffcutForNothingIsUsedFirst(t *testing.T) {
	p := board(3*mm, 0, 2440*mm, 1220*mm, part("D1", 500*mm, 300*mm, 2))
	stock(p, "rest", 1003*mm, 300*mm, 1, 0)
	if a := solve(t, p); a.Cost != 0 || !a.Proven || used(a) != "rest" {
		t.Errorf("%s for %v, bound %v", used(a), a.Cost, a.Bound)
	}
}

// Two parts of 700 × 500 lie on a sheet of 1000 × 700 only turned, each.
func TestGrainForbidsTheTurnThatOneSheetNeeds(t *testing.T) {
	p := board(0, 0, 1000*mm, 700*mm, part("D1", 700*mm, 500*mm, 2))
	for _, c := range []struct {
		turn, grain bool
		cost        float64
	}{{true, false, 60}, {true, true, 120}, {false, false, 120}} {
		p.Parts[0].Turn, p.Sheets[0].Grain = c.turn, c.grain
		if a := solve(t, p); a.Cost != c.cost {
			t.Errorf("turn %v, grain %v: cost %v, want %v", c.turn, c.grain, a.Cost, c.cost)
		}
	}
}

// Sheets with defects are filled part by part; a part that is too wide as it is lies there turned.
func TestAPartIsTurnedBesideADefect(t *testing.T) {
	p := board(0, 0, 1000*mm, 500*mm, part("D1", 400*mm, 900*mm, 1))
	p.Parts[0].Turn = true
	p.Sheets[0].Defects = []cut.Rect{{X: 0, Y: 0, Length: 50 * mm, Width: 50 * mm}}
	if a := solve(t, p); len(a.Used) != 1 || !a.Used[0].Parts[0].Turned {
		t.Errorf("used %+v", a.Used)
	}
}

// A sheet never holds parts of more value than it is taken to hold at most.
func TestNoSheetHoldsMoreThanItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8, 5)
		if p.Valued() {
			return
		}
		for st, most := range sheet.Fullest(p, rapid.Uint64().Draw(t, "seed")) {
			if most[0] > most[1] {
				t.Fatalf("sheet %d holds %v of %v", st, most[0], most[1])
			}
		}
	})
}

// The sheet is filled to the last: nine parts of 100 × 100 with their saw cuts.
func TestAFullSheetHoldsItsArea(t *testing.T) {
	p := board(3*mm, 0, 306*mm, 306*mm, part("D1", 100*mm, 100*mm, 9))
	if most := sheet.Fullest(p, 1)[0]; most[0] != 9*103*103 || most[1] < most[0] || most[1] > most[0]*1.001 {
		t.Errorf("holds %v of %v", most[0], most[1])
	}
}

// Five rectangles fill 400 × 300: 'a' stands beside 'b' over the rest, which is 'c' beside 'd' over 'e'. That takes four
// stages.
func TestEachStageAllowsAsManySheets(t *testing.T) {
	parts := []sheet.Part{
		part("a", 200*mm, 300*mm, 1), part("b", 200*mm, 100*mm, 1), part("c", 100*mm, 200*mm, 1),
		part("d", 100*mm, 120*mm, 1), part("e", 100*mm, 80*mm, 1),
	}
	for _, c := range []struct {
		stages int
		cost   float64
	}{{2, 120}, {3, 120}, {4, 60}, {0, 60}} {
		p := board(0, 0, 400*mm, 300*mm, parts...)
		p.Stages = c.stages
		if a := solve(t, p); a.Cost != c.cost {
			t.Errorf("%d stages: cost %v, want %v", c.stages, a.Cost, c.cost)
		}
	}
}

// Nine parts of value 4 and any number of it fill 300 × 300; a saw cut of 3 leaves room for four.
func TestAnyNumberIsCutForValueWithinKerfAndTrim(t *testing.T) {
	for _, c := range []struct {
		kerf, trim length.Length
		value      float64
	}{{0, 0, 36}, {3 * mm, 0, 16}, {0, 1 * mm, 16}} {
		p := board(c.kerf, c.trim, 300*mm, 300*mm)
		p.Sheets[0].Count = 1
		p.Parts = []sheet.Part{{Tag: "D1", Length: 100 * mm, Width: 100 * mm, Count: cut.Any, Value: cut.Priced(4)}}
		if a := solve(t, p); a.Cost != c.value || !a.Proven {
			t.Errorf("kerf %v, trim %v: value %v, bound %v, want %v", c.kerf, c.trim, a.Cost, a.Bound, c.value)
		}
	}
}

// Of three kinds one is too long and one too many; the rest is laid out, and each that is not says so.
func TestWhatCantBeMetIsToldAndTheRestLaidOut(t *testing.T) {
	p := board(0, 0, 1000*mm, 500*mm, part("long", 1200*mm, 100*mm, 1), part("many", 900*mm, 400*mm, 3), part("few", 100*mm, 50*mm, 4))
	p.Sheets[0].Count = 2
	a := solve(t, p)
	placed := 0
	for _, u := range a.Used {
		placed += len(u.Parts)
	}
	if placed != 6 || len(a.NotPlaced) != 2 {
		t.Fatalf("%d parts placed, not placed %v", placed, a.NotPlaced)
	}
	for _, n := range a.NotPlaced {
		if want := map[string]string{"long": "than any sheet", "many": "no sheet left"}[n.Tag]; !strings.Contains(n.Why, want) {
			t.Errorf("%s is told as %q, want %q", n.Tag, n.Why, want)
		}
	}
}

// saw is a person who follows the cuts of one sheet: which piece a cut is made on is left to them, as long as the
// fence is set as told and every cut goes right through the piece.
type saw struct {
	steps []cut.Setting
	kerf  length.Length
	parts []bite
	seen  map[string]bool
}

// tired reports whether more was tried than is worth while.
func (s *saw) tired() bool { return len(s.seen) > 400 }

// yields reports whether pieces in hand become the parts by the cuts from step i on.
func (s *saw) yields(i int, hand []bite) bool {
	slices.SortFunc(hand, func(a, b bite) int { return int(a.l-b.l) + int(a.w-b.w)<<20 })
	at := []byte{byte(i)}
	for _, p := range hand {
		at = append(at, byte(p.l/mm), byte(p.w/mm))
	}
	key := string(at)
	if s.seen[key] || s.tired() {
		return false
	}
	s.seen[key] = true
	if i == len(s.steps) {
		left := slices.Clone(hand)
		for _, q := range s.parts {
			n := slices.Index(left, q)
			if n < 0 {
				return false
			}
			left = slices.Delete(left, n, n+1)
		}
		return true
	}
	step := s.steps[i]
	for n, p := range hand {
		rest := slices.Delete(slices.Clone(hand), n, n+1)
		if s.goesOn(i, rest, p, step.Setting) || len(step.Makes) == 0 && s.goesOn(i, rest, p, step.Setting-s.kerf) {
			return true
		}
	}
	return false
}

// goesOn reports whether that is so when a piece p is cut at step i so that off comes off it in front of the saw cut;
// what comes off for nothing may be told with the saw cut, and then be no more than that.
func (s *saw) goesOn(i int, rest []bite, p bite, off length.Length) bool {
	near, far := p, p
	if s.steps[i].Machine == cut.Crosscut {
		near.l, far.l = off, p.l-off-s.kerf
	} else {
		near.w, far.w = off, p.w-off-s.kerf
	}
	if near.l >= p.l && near.w >= p.w || near.l > p.l || near.w > p.w {
		return false
	}
	for _, q := range []bite{near, far} {
		if q.l > 0 && q.w > 0 {
			rest = append(rest, q)
		}
	}
	return s.yields(i, slices.Clone(rest)) || s.yields(i+1, slices.Clone(rest)) // another cut at this setting, or none
}

func TestWhoFollowsTheCutsHoldsEveryPart(t *testing.T) {
	followed, tired := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t)
		if rapid.Bool().Draw(t, "trimmed") {
			p.Trim = 11 * mm // no part is as wide, so that a trim is told from a part
			p.Sheets[0].Length += 2 * p.Trim
			p.Sheets[0].Width += 2 * p.Trim
		}
		p.Parts = p.Parts[:min(2, len(p.Parts))]
		p.Useful = [2]length.Length{5 * mm, 5 * mm}
		p.Sheets[0].Count = 1
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 200})
		if err != nil {
			t.Fatal(err)
		}
		s := &saw{kerf: p.Kerf, seen: map[string]bool{}, steps: a.Cuts}
		for _, u := range a.Used {
			for _, q := range u.Parts {
				s.parts = append(s.parts, bite{q.Size[0], q.Size[1]})
			}
		}
		ok := s.yields(0, []bite{{p.Sheets[0].Length, p.Sheets[0].Width}})
		if followed++; !ok && s.tired() {
			tired++
		} else if !ok {
			t.Fatalf("the cuts %+v of %+v don't make the parts", a.Cuts, a.Used)
		}
	})
	t.Logf("%d lists of cuts, %d took too long to follow", followed, tired)
	if 3*tired > followed { // a sixth on the average
		t.Errorf("of %d lists of cuts %d took too long to follow", followed, tired)
	}
}

// crowd is a job of many kinds, one of each, on sheets with a defect in a corner and one in the middle.
func crowd(kinds int) *sheet.Problem {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm)
	p.Stages = 3
	p.Sheets[0].Defects = []cut.Rect{{X: 0, Y: 0, Length: 40 * mm, Width: 60 * mm}, {X: 1200 * mm, Y: 600 * mm, Length: 15 * mm, Width: 15 * mm}}
	for i := range kinds {
		q := part(fmt.Sprint("D", i), length.Length(100+97*i%900)*mm, length.Length(80+61*i%800)*mm, 1)
		q.Turn = i%3 == 0
		p.Parts = append(p.Parts, q)
	}
	return p
}

// Where no time is left, ten thousand parts still get their places, by rows.
func TestManyPartsGetTheirPlacesWithoutTime(t *testing.T) {
	p := crowd(cut.MaxPieces / 2)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	a, err := sheet.Solve(ctx, p, cut.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	if faults := verify.Sheet(p, a); len(faults) > 0 || a.Bound <= 0 || len(a.NotPlaced) > 0 {
		t.Errorf("%d sheets, bound %v, %d not placed, faults %v", len(a.Used), a.Bound, len(a.NotPlaced), faults)
	}
	if a.Gap() > 0.35 {
		t.Errorf("cost %v, bound %v: rows fill sheets better than that", a.Cost, a.Bound)
	}
}

func TestRowsPassTheVerifier(t *testing.T) {
	placed := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8, 5)
		a, _ := sheet.Rows(p)
		for _, f := range laid(verify.Sheet(p, a)) {
			t.Fatalf("%v", f)
		}
		placed += len(a.Used)
	})
	if placed < 20 {
		t.Errorf("only %d sheets were filled", placed)
	}
}

// A defect that reaches beyond the last row: what is left below its end is no more than the sheet has.
func TestADefectAboveTheLastRowIsNoLeftover(t *testing.T) {
	p := board(0, 0, 60*mm, 4*mm, part("D1", 50*mm, 2*mm, 2))
	p.Sheets[0].Count = 1
	p.Sheets[0].Defects = []cut.Rect{{X: 9 * mm, Y: 2 * mm, Length: 2 * mm, Width: 3 * mm}}
	a, left := sheet.Rows(p)
	if faults := laid(verify.Sheet(p, a)); len(faults) > 0 || left != 1 {
		t.Errorf("%d left, faults %v", left, faults)
	}
}

// Rows put down what fits a sheet at all, unless a defect is in the way: nothing is told as too much that is not.
func TestRowsLeaveNothingThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8, 5)
		for i := range p.Sheets {
			p.Sheets[i].Count = cut.Any
			p.Sheets[i].Defects = nil
		}
		for i := range p.Parts {
			p.Parts[i].Value, p.Parts[i].Count = cut.Price{}, max(p.Parts[i].Count, 0)
		}
		p.Trim = 0
		if _, left := sheet.Rows(p); left > 0 {
			t.Fatalf("%d parts found no place", left)
		}
	})
}
