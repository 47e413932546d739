package stick_test

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// open is a published problem with what is known of its optimum.
type open struct {
	name        string
	least, most float64
	problem     *stick.Problem
}

func number(t testing.TB, text string) int {
	t.Helper()
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// oneLength reads the instances of one stock length; each row of the file names its publication.
func oneLength(t testing.TB) (out []open) {
	t.Helper()
	f, err := os.Open("testdata/one_length.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows[1:] {
		p := one(0, 0, length.Length(number(t, r[1]))*mm)
		for _, word := range strings.Fields(r[4]) {
			size, count, times := strings.Cut(word, "x")
			q := stick.Part{Tag: size, Length: length.Length(number(t, size)) * mm, Count: 1}
			if times {
				q.Count = cut.Count(number(t, count))
			}
			p.Parts = append(p.Parts, q)
		}
		out = append(out, open{r[0], float64(number(t, r[2])), float64(number(t, r[3])), p})
	}
	return out
}

// manyLengths reads the instances of several stock lengths with prices; sizes in sixteenths of an inch.
func manyLengths(t testing.TB) (out []open) {
	t.Helper()
	text, err := os.ReadFile("testdata/many_lengths.json")
	if err != nil {
		t.Fatal(err)
	}
	var list []struct {
		Name  string
		Kerf  length.Length
		Trim  length.Length `json:"end_trim"`
		Stock []struct {
			Length length.Length
			Price  float64
			Count  cut.Count
		}
		Parts []struct {
			Length length.Length
			Qty    cut.Count
		}
		Least, Most float64
	}
	if err := json.Unmarshal(text, &list); err != nil {
		t.Fatal(err)
	}
	const unit = length.Inch / 16
	for _, in := range list {
		p := &stick.Problem{Unit: length.In, Kerf: in.Kerf * unit, Trim: in.Trim * unit}
		for i, s := range in.Stock {
			p.Stock = append(p.Stock, stick.Stock{Tag: fmt.Sprint("S", i), Length: s.Length * unit, Count: s.Count, Price: cut.Priced(s.Price)})
		}
		for i, q := range in.Parts {
			p.Parts = append(p.Parts, stick.Part{Tag: fmt.Sprint("C", i), Length: q.Length * unit, Count: q.Qty})
		}
		out = append(out, open{in.Name, in.Least, in.Most, p})
	}
	return out
}

// refute checks an answer against what is known and returns how far it is above the best known cost.
func refute(t *testing.T, o open, a *cut.Answer) float64 {
	t.Helper()
	for _, f := range verify.Stick(o.problem, a) {
		t.Errorf("%s: %v", o.name, f)
	}
	if a.Bound > o.most+1e-6 {
		t.Errorf("%s: bound %v is above the known cost %v", o.name, a.Bound, o.most)
	}
	if a.Cost < o.least-1e-6 {
		t.Errorf("%s: cost %v is below the known bound %v", o.name, a.Cost, o.least)
	}
	return a.Cost/o.most - 1
}

// Sources: Falkenauer 1996 (OR-Library), Scholl, Klein and Jürgens 1997, Schwerin and Wäscher 1997,
// Wäscher and Gau 1996, Schoenfield 2002; optima by Delorme, Iori and Martello 2018. See the source column.
func TestPublishedProblemsOfOneLength(t *testing.T) {
	best, proven, all := 0, 0, 0
	for _, o := range oneLength(t) {
		a, err := stick.Solve(context.Background(), o.problem, cut.Limits{Nodes: 3_000_000})
		if err != nil {
			t.Fatal(err)
		}
		over := refute(t, o, a)
		all++
		if over <= 0 {
			best++
		}
		if a.Proven {
			proven++
		} else {
			t.Logf("%s: cost %v of at least %v, known %v to %v", o.name, a.Cost, a.Bound, o.least, o.most)
		}
	}
	t.Logf("%d problems: %d optimal, %d proven", all, best, proven)
	if best < all || proven < all {
		t.Errorf("of %d problems %d are optimal and %d proven: all have been", all, best, proven)
	}
}

// Source: generated for this project, free; best known by two general MIP solvers.
func TestProblemsOfSeveralLengthsWithPrices(t *testing.T) {
	sum, proven, n := 0.0, 0, 0
	for _, o := range manyLengths(t) {
		a, err := stick.Solve(context.Background(), o.problem, cut.Limits{Nodes: 2_000_000})
		if err != nil {
			t.Fatal(err)
		}
		over := refute(t, o, a)
		t.Logf("%s: cost %v (best known %v), bound %v", o.name, a.Cost, o.most, a.Bound)
		sum += math.Max(0, over)
		if n++; a.Proven {
			proven++
		}
	}
	if proven < n {
		t.Errorf("of %d problems %d are proven: all have been", n, proven)
	}
	if mean := sum / float64(n); mean > 0.005 {
		t.Errorf("mean %.2f %% above the best known", 100*mean)
	}
}

func BenchmarkOneLength(b *testing.B) {
	p := oneLength(b)[0].problem
	for b.Loop() {
		if _, err := stick.Solve(context.Background(), p, cut.Limits{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkManyLengths(b *testing.B) {
	p := manyLengths(b)[3].problem
	for b.Loop() {
		if _, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: 100_000}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTenThousandParts(b *testing.B) {
	p := one(2*mm, 5*mm, 6400*mm)
	d := cut.NewDice(3)
	for i := range 200 {
		p.Parts = append(p.Parts, stick.Part{Tag: fmt.Sprint("C", i), Length: length.Length(200+d.N(2400)) * mm, Count: 50})
	}
	for b.Loop() {
		a, err := stick.Solve(context.Background(), p, cut.Limits{Nodes: 1_000_000})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(100*a.Gap(), "%gap")
	}
}
