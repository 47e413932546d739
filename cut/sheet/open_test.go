package sheet_test

import (
	"context"
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

// open is a published problem of one sheet filled for value, with its optimum.
type open struct {
	name    string
	optimum float64
	problem *sheet.Problem
}

// valued reads the instances; each row of the file names its publication. A part is written
// lengthxwidth:value:count, without a count when any number may be cut.
func valued(t testing.TB) (out []open) {
	t.Helper()
	f, err := os.Open("testdata/valued.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	num := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, r := range rows[1:] {
		p := board(0, 0, length.FromMM(num(r[1])), length.FromMM(num(r[2])))
		p.Sheets[0].Count = 1
		for i, word := range strings.Fields(r[4]) {
			f := strings.FieldsFunc(word, func(c rune) bool { return c == 'x' || c == ':' })
			q := part(strconv.Itoa(i), length.FromMM(num(f[0])), length.FromMM(num(f[1])), cut.Any)
			q.Value = cut.Priced(num(f[2]))
			if len(f) > 3 {
				q.Count = cut.Count(num(f[3]))
			}
			p.Parts = append(p.Parts, q)
		}
		out = append(out, open{r[0], num(r[3]), p})
	}
	return out
}

// Sources: Beasley 1985 (OR-Library gcut), Christofides and Whitlock 1977 (cgcut), Beasley 1985
// (ngcut, there without the rule of cuts right across); see the source column.
func TestPublishedSheetsFilledForValue(t *testing.T) {
	for _, o := range valued(t) {
		t.Run(o.name, func(t *testing.T) {
			a, err := sheet.Solve(context.Background(), o.problem, cut.Limits{})
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range verify.Sheet(o.problem, a) {
				t.Errorf("%v", f)
			}
			if a.Cost != o.optimum || !a.Proven {
				t.Errorf("value %v, bound %v, want %v proven", a.Cost, a.Bound, o.optimum)
			}
		})
	}
}

func BenchmarkValued(b *testing.B) {
	p := valued(b)[2].problem
	for b.Loop() {
		if _, err := sheet.Solve(context.Background(), p, cut.Limits{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSheets(b *testing.B) {
	p := board(3*mm, 10*mm, 2440*mm, 1220*mm)
	p.Stages = 3
	for i := range 30 {
		p.Parts = append(p.Parts, part(strconv.Itoa(i), length.Length(200+97*i%900)*mm, length.Length(150+61*i%500)*mm, 3))
	}
	for b.Loop() {
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 100_000})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(100*a.Gap(), "%gap")
	}
}
