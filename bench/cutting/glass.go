package main

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Rules of the glass challenge (ROADEF/EURO 2018): plates and cuts in millimetres.
const (
	plateLength = 6000
	plateWidth  = 3210
	leastFirst  = 100 // between two first cuts
	mostFirst   = 3500
	leastSecond = 100 // between two second cuts
	leastWaste  = 20  // of a piece that is waste, in either direction
)

// pane is one piece of glass that is wanted; those of a stack must be cut in turn.
type pane struct{ l, w, stack int }

// flaw is a rectangle of a plate that no pane may hold and no cut may go through.
type flaw struct{ x0, y0, x1, y1 int }

// glass is one problem.
type glass struct {
	panes  []pane
	stacks [][]int        // indices of panes, in turn
	like   []int          // of each stack the last before it with the same sizes, -1 for none
	flaws  map[int][]flaw // of each plate
	area   int
}

// glassLong is the time for each problem that the challenge gave.
const glassLong = 180 * time.Second

// runGlass cuts the panes of sets A, and with --long of B and X too, at 180 s each, and prints the waste over the best that is
// certified.
func runGlass(r *run) error {
	rows, err := table(filepath.Join(r.data, "best", "2d_roadef2018.csv"))
	if err != nil {
		return err
	}
	if r.long {
		r.within = max(r.within, glassLong)
	}
	ratio, n := 0.0, 0
	for _, row := range rows {
		name := row["instance"]
		if !r.wants(name) || !r.long && !strings.HasPrefix(name, "A") {
			continue
		}
		g, err := readGlass(filepath.Join(r.data, "2d-roadef2018"), name)
		if err != nil {
			return err
		}
		start := time.Now()
		best := g.search(start.Add(r.within))
		took := time.Since(start)
		if best == nil {
			fmt.Printf("%-4s no layout found\n", name)
			continue
		}
		plan := best.plan()
		for _, fault := range g.faults(plan) {
			r.refute("%s: %s", name, fault)
		}
		waste, known := g.waste(plan), float(row["best_certified_waste"])
		fmt.Printf("%-4s %d panes, %d plates, waste %d, certified %.0f, ratio %.3f, %v\n", name, len(g.panes), best.plate+1, waste, known, float64(waste)/known, took.Round(time.Millisecond))
		if known > 0 {
			ratio += float64(waste) / known
			n++
		}
	}
	fmt.Printf("%d problems: mean waste over the best certified %.3f\n", n, ratio/float64(max(n, 1)))
	return nil
}

// readGlass reads the panes and flaws of a problem.
func readGlass(dir, name string) (*glass, error) {
	panes, err := semicolons(filepath.Join(dir, name+"_batch.csv"))
	if err != nil {
		return nil, err
	}
	flaws, err := semicolons(filepath.Join(dir, name+"_defects.csv"))
	if err != nil {
		return nil, err
	}
	g := &glass{flaws: map[int][]flaw{}}
	at := map[int]int{}
	slices.SortStableFunc(panes, func(a, b []float64) int {
		return cmp.Or(cmp.Compare(a[3], b[3]), cmp.Compare(a[4], b[4]))
	})
	for _, v := range panes {
		p := pane{int(v[1]), int(v[2]), int(v[3])}
		s, ok := at[p.stack]
		if !ok {
			s = len(g.stacks)
			at[p.stack], g.stacks = s, append(g.stacks, nil)
		}
		p.stack = s
		g.stacks[s] = append(g.stacks[s], len(g.panes))
		g.panes = append(g.panes, p)
		g.area += p.l * p.w
	}
	g.twins()
	for _, v := range flaws {
		f := flaw{int(v[2]), int(v[3]), int(v[2] + v[4] + 0.999), int(v[3] + v[5] + 0.999)}
		g.flaws[int(v[1])] = append(g.flaws[int(v[1])], f)
	}
	return g, nil
}

// twins finds stacks of the same sizes.
func (g *glass) twins() {
	last := map[string]int{}
	for s, stack := range g.stacks {
		name := ""
		for _, i := range stack {
			name += fmt.Sprint(g.panes[i].l, "x", g.panes[i].w, " ")
		}
		before, ok := last[name]
		if !ok {
			before = -1
		}
		g.like, last[name] = append(g.like, before), s
	}
}

// semicolons reads the rows of numbers of a file parted by semicolons, without its head.
func semicolons(file string) (out [][]float64, err error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comma = ';'
	rows, err := in.ReadAll()
	if err != nil {
		return nil, err
	}
	for _, row := range rows[min(1, len(rows)):] {
		v := make([]float64, len(row))
		for i, w := range row {
			v[i] = float(w)
		}
		out = append(out, v)
	}
	return out, nil
}
