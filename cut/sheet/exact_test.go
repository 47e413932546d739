package sheet_test

import (
	"context"
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

func TestNoBoundByWeightsIsAboveTheOptimum(t *testing.T) {
	alternated := 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t)
		if rapid.Bool().Draw(t, "none turns") {
			for i := range p.Parts {
				p.Parts[i].Turn = false
			}
		}
		want := float64(60 * fewest(p))
		if rapid.Bool().Draw(t, "a second kind of sheet") { // smaller and no cheaper: it changes nothing
			second := p.Sheets[0]
			second.Tag, second.Price = "P2", cut.Priced(float64(rapid.IntRange(60, 90).Draw(t, "price")))
			second.Length -= length.Length(rapid.IntRange(0, 3).Draw(t, "shorter")) * mm
			second.Width -= length.Length(rapid.IntRange(0, 3).Draw(t, "narrower")) * mm
			p.Sheets = append(p.Sheets, second)
			if rapid.Bool().Draw(t, "it comes first") {
				p.Sheets[0], p.Sheets[1] = p.Sheets[1], p.Sheets[0]
			}
		}
		scaled, better := sheet.BoundByWeights(p)
		if scaled > want || better > want {
			t.Fatalf("bound by scales %v, alternated %v, optimum %v", scaled, better, want)
		}
		if better > 0 {
			alternated++
		}
	})
	if alternated < 20 {
		t.Errorf("only %d problems had a bound by alternation", alternated)
	}
}

// Three squares of 6 by 6 on sheets of 10 by 10 lie one to a sheet; four parts of 5 by 5 fill one. Of the first, two
// scales show it; the alternation must not lose it.
func TestTheAlternationKeepsWhatScalesFind(t *testing.T) {
	p := board(0, 0, 10*mm, 10*mm, part("a", 6*mm, 6*mm, 3), part("b", 5*mm, 5*mm, 4))
	scaled, better := sheet.BoundByWeights(p)
	if scaled != 240 && better != 240 {
		t.Errorf("bounds %v and %v, want 240: three sheets of one square each, and a fourth", scaled, better)
	}
}

func TestConstructionFindsTheGreatestValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t)
		p.Sheets[0].Count = 1
		p.Parts = p.Parts[:min(2, len(p.Parts))] // no more than four pieces, as many as bestValue tries
		for i := range p.Parts {
			p.Parts[i].Value = cut.Priced(float64(rapid.IntRange(1, 30).Draw(t, "value")))
		}
		want := bestValue(p)
		if value, bound := sheet.Constructed(p); value != want || bound != want {
			t.Fatalf("value %v, bound %v, possible %v", value, bound, want)
		}
	})
}

// Within stages the filling found may be worth less, but never the bound.
func TestConstructionBoundsStagedFillings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 4, 3)
		p.Sheets = p.Sheets[:1]
		p.Sheets[0].Count, p.Sheets[0].Defects = 1, nil
		for i := range p.Parts {
			p.Parts[i].Value = cut.Priced(float64(1 + i*7%5))
			p.Parts[i].Count = max(p.Parts[i].Count, 0)
		}
		staged, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 3000})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Sheet(p, staged) {
			t.Errorf("%v", f)
		}
		p.Stages = 0
		free, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 100_000})
		if err != nil {
			t.Fatal(err)
		}
		if free.Proven && staged.Cost > free.Cost || staged.Proven && staged.Bound > free.Bound {
			t.Fatalf("within stages %v (bound %v), without %v (bound %v)", staged.Cost, staged.Bound, free.Cost, free.Bound)
		}
	})
}

// laid are the faults of a layout that do not come from its cost: of a part of a layout only those count.
func laid(faults []verify.Fault) (out []verify.Fault) {
	for _, f := range faults {
		if f.Rule != verify.CostRule && f.Rule != verify.BoundRule {
			out = append(out, f)
		}
	}
	return out
}

func TestASheetFilledBySectionsPassesTheVerifier(t *testing.T) {
	filled := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8, 5)
		p.Stages = rapid.SampledFrom([]int{0, 2, 3, 4}).Draw(t, "stages")
		for i := range p.Sheets {
			p.Sheets[i].Defects = nil
			p.Sheets[i].Count = max(p.Sheets[i].Count, 1)
		}
		if p.Sheets[0].Length <= 2*p.Trim || p.Sheets[0].Width <= 2*p.Trim {
			return
		}
		a := sheet.BySections(p, rapid.Uint64().Draw(t, "seed"))
		for _, f := range laid(verify.Sheet(p, a)) {
			t.Fatalf("%v", f)
		}
		filled += len(a.Used)
	})
	if filled < 20 {
		t.Errorf("only %d sheets were filled", filled)
	}
}

func TestAPlanFromThePoolPassesTheVerifier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8, 5)
		for _, f := range laid(verify.Sheet(p, sheet.PooledPlan(p, rapid.Uint64().Draw(t, "seed")))) {
			t.Fatalf("%v", f)
		}
	})
}

// Sources: Berkey and Wang 1987, Martello and Vigo 1998; see the source column of the file.
func TestPublishedSheetsAreProvenFewest(t *testing.T) {
	for _, o := range bins(t) {
		t.Run(o.name, func(t *testing.T) {
			a, err := sheet.Solve(context.Background(), o.problem, cut.Limits{Nodes: 2_000_000})
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range verify.Sheet(o.problem, a) {
				t.Errorf("%v", f)
			}
			if a.Cost != o.optimum || !a.Proven {
				t.Errorf("%v sheets, bound %v, known %v", a.Cost, a.Bound, o.optimum)
			}
		})
	}
}

// bins reads problems of equal sheets; a part is written lengthxwidth.
func bins(t testing.TB) (out []open) {
	t.Helper()
	f, err := os.Open("testdata/bins.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	num := func(text string) length.Length {
		v, err := strconv.Atoi(text)
		if err != nil {
			t.Fatal(err)
		}
		return length.Length(v) * mm
	}
	for _, r := range rows[1:] {
		p := board(0, 0, num(r[1]), num(r[2]))
		p.Sheets[0].Price, p.Stages = cut.Priced(1), 3
		for i, word := range strings.Fields(r[4]) {
			l, w, _ := strings.Cut(word, "x")
			p.Parts = append(p.Parts, part(strconv.Itoa(i), num(l), num(w), 1))
		}
		out = append(out, open{r[0], float64(num(r[3]) / mm), p})
	}
	return out
}

// A row of one part and one of two, and a part as wide as both rows: the sheet holds all by three stages; within two
// the last finds no place beside the rows.
func TestTwoStagesAreRowsOfPartsOnly(t *testing.T) {
	p := board(0, 0, 25*mm, 20*mm, part("a", 20*mm, 10*mm, 1), part("b", 14*mm, 10*mm, 1), part("c", 6*mm, 10*mm, 1), part("d", 5*mm, 20*mm, 1))
	for seed := range uint64(40) {
		p.Stages = 2
		for _, f := range laid(verify.Sheet(p, sheet.BySections(p, seed))) {
			t.Fatalf("two stages: %v", f)
		}
	}
	p.Stages = 3
	if a := solve(t, p); a.Cost != 60 {
		t.Errorf("three stages fill one sheet, cost %v", a.Cost)
	}
}

func TestMoreWorkNeverLowersTheBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6, 4)
		if p.Valued() {
			return
		}
		for i := range p.Sheets {
			p.Sheets[i].Count = cut.Any
		}
		last := 0.0
		for _, nodes := range []int{200, 20_000} {
			a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: nodes})
			if err != nil {
				t.Fatal(err)
			}
			if a.Bound < last-1e-9 {
				t.Fatalf("bound %v after less work, %v after %d nodes", last, a.Bound, nodes)
			}
			last = a.Bound
		}
	})
}
