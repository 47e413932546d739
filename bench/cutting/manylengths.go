package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/length"
)

// runManyLengths lays out the problems of several stock lengths and prints how far cost and bound are from
// each other and from the best known.
func runManyLengths(r *run) error {
	list, err := r.manyLengths()
	if err != nil {
		return err
	}
	all, err := r.sticks(list)
	if err != nil {
		return err
	}
	summary(all)
	return nil
}

// manyLengths reads the problems of several stock lengths.
func (r *run) manyLengths() (out []stickProblem, err error) {
	text, err := os.ReadFile(filepath.Join(r.data, "1d-workshop-multilength", "instances.json"))
	if err != nil {
		return nil, err
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
	}
	if err := json.Unmarshal(text, &list); err != nil {
		return nil, err
	}
	rows, err := table(filepath.Join(r.data, "best", "1d_workshop_multilength.csv"))
	if err != nil {
		return nil, err
	}
	best := map[string]known{}
	for _, row := range rows { // printed with two decimals
		best[row["instance"]] = known{"multi", row["instance"], float(row["best_lower"]) - 0.006, float(row["best_cost"]) + 0.006}
	}
	for _, in := range list {
		const unit = length.Inch / 16
		p := &stick.Problem{Unit: length.In, Kerf: in.Kerf * unit, Trim: in.Trim * unit}
		for i, s := range in.Stock {
			p.Stock = append(p.Stock, stick.Stock{Tag: fmt.Sprint("S", i), Length: s.Length * unit, Count: s.Count, Price: cut.Priced(s.Price)})
		}
		for i, q := range in.Parts {
			p.Parts = append(p.Parts, stick.Part{Tag: fmt.Sprint("C", i), Length: q.Length * unit, Count: q.Qty})
		}
		out = append(out, stickProblem{best[in.Name], p})
	}
	return out, nil
}

// summary prints how far costs lie above the best known and above their own bounds.
func summary(all []outcome) {
	var above, gap float64
	proven := 0
	for _, o := range all {
		above += math.Max(0, o.answer.Cost/o.most-1)
		gap += 1 - o.answer.Bound/math.Max(o.answer.Cost, 1e-12)
		if o.answer.Proven {
			proven++
		}
	}
	n := float64(max(len(all), 1))
	fmt.Printf("%d problems: mean %.2f %% above the best known, own gap %.2f %%, %d proven; 99 of 100 within %v\n", len(all), 100*above/n, 100*gap/n, proven, percentile(all, 0.99))
}
