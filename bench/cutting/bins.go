package main

import (
	"bufio"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

// runBins lays rectangles out on as few equal sheets as it can, by three stages of cuts and without turning, and
// prints for each class the sheets, the bounds and the best known.
func runBins(r *run) error {
	rows, err := table(filepath.Join(r.data, "best", "2d_bins.csv"))
	if err != nil {
		return err
	}
	best := map[string]float64{}
	for _, row := range rows {
		best[row["instance"]] = float(row["guillotine3_oriented"])
	}
	var all tallyOfBins
	for class := 1; class <= 10; class++ {
		name := fmt.Sprintf("Class_%02d.2bp", class)
		if !r.wants(name) && len(r.only) <= len(name) {
			continue
		}
		list, err := readBins(filepath.Join(r.data, "2d-bins-class01-10", name), name)
		if err != nil {
			return err
		}
		t, err := r.bins(list, best)
		if err != nil {
			return err
		}
		fmt.Printf("%s: %s\n", name, t)
		all.add(t)
	}
	fmt.Printf("all: %s; 99 of 100 within %v\n", &all, percentile(all.took, 0.99))
	return nil
}

// tallyOfBins adds up the answers of a class.
type tallyOfBins struct {
	bins, bound, known float64
	proven             int
	took               []outcome
}

func (t *tallyOfBins) String() string {
	return fmt.Sprintf("%d problems, %v bins, sum of bounds %v, known %v, %d proven", len(t.took), t.bins, t.bound, t.known, t.proven)
}

func (t *tallyOfBins) add(o *tallyOfBins) {
	t.bins, t.bound, t.known, t.proven = t.bins+o.bins, t.bound+o.bound, t.known+o.known, t.proven+o.proven
	t.took = append(t.took, o.took...)
}

func (r *run) bins(list []binProblem, best map[string]float64) (*tallyOfBins, error) {
	t := &tallyOfBins{}
	for _, b := range list {
		if !r.wants(b.name) {
			continue
		}
		o, err := r.timed(known{"bins", b.name, 0, best[b.name]}, func(ctx context.Context) (*cut.Answer, error) {
			return sheet.Solve(ctx, b.problem, cut.Limits{Nodes: cut.Endless})
		}, func(a *cut.Answer) []verify.Fault { return verify.Sheet(b.problem, a) })
		if err != nil {
			return nil, err
		}
		t.bins, t.bound, t.known = t.bins+o.answer.Cost, t.bound+math.Ceil(o.answer.Bound-1e-9), t.known+o.most
		if o.answer.Proven {
			t.proven++
		}
		t.took = append(t.took, o)
	}
	return t, nil
}

// binProblem is one open problem of bins.
type binProblem struct {
	name    string
	problem *sheet.Problem
}

// readBins reads the problems of a class: each has a line with the class, the number of parts, a line with the
// relative and the absolute number, the width and length of the bin, then those of the parts.
func readBins(file, class string) (out []binProblem, err error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var v []float64
	for scan := bufio.NewScanner(f); scan.Scan(); {
		if row := leading(scan.Text()); len(row) > 0 {
			v = append(v, row...)
		}
	}
	for len(v) >= 6 {
		n, number := int(v[1]), int(v[2])
		if len(v) < 6+2*n {
			return nil, fmt.Errorf("%s is cut short", file)
		}
		p := &sheet.Problem{Unit: length.MM, Stages: 3, Sheets: []sheet.Sheet{{
			Tag: "P", Length: length.FromMM(v[5]), Width: length.FromMM(v[4]), Count: cut.Any, Price: cut.Priced(1),
		}}}
		for i := range n {
			p.Parts = append(p.Parts, sheet.Part{Tag: fmt.Sprint("D", i), Length: length.FromMM(v[7+2*i]), Width: length.FromMM(v[6+2*i]), Count: 1})
		}
		out = append(out, binProblem{fmt.Sprintf("%s_%d_%d", class, n, number), p})
		v = v[6+2*n:]
	}
	return out, nil
}

// leading are the numbers a line begins with; words behind them only say what they are.
func leading(line string) (out []float64) {
	for _, w := range strings.Fields(line) {
		x, err := strconv.ParseFloat(w, 64)
		if err != nil {
			break
		}
		out = append(out, x)
	}
	return out
}
