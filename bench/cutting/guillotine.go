package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

// runGuillotine fills single sheets for value by cuts right across, any number of stages: gcut without counts,
// cgcut with them.
func runGuillotine(r *run) error {
	rows, err := table(filepath.Join(r.data, "best", "2d_guillotine_exact.csv"))
	if err != nil {
		return err
	}
	var sum time.Duration
	optimal, proven, n := 0, 0, 0
	for _, row := range rows {
		name := row["instance"]
		counted := strings.HasPrefix(name, "cgcut")
		if !counted && !strings.HasPrefix(name, "gcut") || name == "gcut13" && r.only != name || !r.wants(name) {
			continue
		}
		p, err := readValued(filepath.Join(r.data, "2d-guillotine-"+strings.TrimRight(name, "0123456789"), name+".txt"), counted)
		if err != nil {
			return err
		}
		o, err := r.valued(known{"guillotine", name, float(row["optimum_or_lower"]), float(row["upper_bound"])}, p)
		if err != nil {
			return err
		}
		n++
		sum += o.took
		if o.answer.Cost >= o.least {
			optimal++
		}
		if o.answer.Proven {
			proven++
		}
	}
	fmt.Printf("%d problems: %d optimal, %d proven, %v all together\n", n, optimal, proven, sum.Round(time.Millisecond))
	return nil
}

// valued fills a sheet for value: the cost of the answer is that value, and its bound lies above.
func (r *run) valued(k known, p *sheet.Problem) (outcome, error) {
	ctx, stop := context.WithTimeout(context.Background(), r.within)
	defer stop()
	start := time.Now()
	a, err := sheet.Solve(ctx, p, cut.Limits{Nodes: cut.Endless})
	if err != nil {
		return outcome{}, fmt.Errorf("%s: %w", k.name, err)
	}
	o := outcome{k, a, time.Since(start)}
	for _, f := range verify.Sheet(p, a) {
		r.refute("%s: %v", k.name, f)
	}
	if a.Bound < k.least || a.Cost > k.most {
		r.refute("%s: value %v, bound %v, known %v to %v", k.name, a.Cost, a.Bound, k.least, k.most)
	}
	if r.verbose {
		fmt.Printf("%-10s value %-8v bound %-8v known %v to %v  proven %-5v %v\n", k.name, a.Cost, a.Bound, k.least, k.most, a.Proven, o.took.Round(time.Millisecond))
	}
	return o, nil
}

// readValued reads one sheet and its parts: their number, the sheet, then length, width, the count where parts
// are counted, and value of each.
func readValued(file string, counted bool) (*sheet.Problem, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	v := numbers(string(text))
	each := 3
	if counted {
		each = 4
	}
	if len(v) < 3 || len(v) < 3+each*int(v[0]) {
		return nil, fmt.Errorf("%s is cut short", file)
	}
	p := &sheet.Problem{Unit: length.MM, Sheets: []sheet.Sheet{{Tag: "P1", Length: length.FromMM(v[1]), Width: length.FromMM(v[2]), Count: 1}}}
	for i := range int(v[0]) {
		row := v[3+each*i:]
		q := sheet.Part{Tag: fmt.Sprint("D", i), Length: length.FromMM(row[0]), Width: length.FromMM(row[1]), Count: cut.Any, Value: cut.Priced(row[each-1])}
		if counted {
			q.Count = cut.Count(row[2])
		}
		p.Parts = append(p.Parts, q)
	}
	return p, nil
}
