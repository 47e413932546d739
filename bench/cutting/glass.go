package main

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
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
	marks  []uint64       // of panes: sums of them tell sets of panes apart
	flaws  map[int][]flaw // of each plate
	area   int
}

// glassLong is the time for each problem that the challenge gave.
const glassLong = 180 * time.Second

// runGlass cuts the panes of set A, and with --long of B and X too, at 180 s each, and prints for each set the waste
// over the best that is certified. Problems that are asked for by --only are cut whatever their set.
func runGlass(r *run) error {
	rows, err := table(filepath.Join(r.data, "best", "2d_roadef2018.csv"))
	if err != nil {
		return err
	}
	if r.long {
		r.within = max(r.within, glassLong)
	}
	for _, set := range []string{"A", "B", "X"} {
		ratio, n := 0.0, 0
		for _, row := range rows {
			name := row["instance"]
			if !strings.HasPrefix(name, set) || !r.wants(name) || !r.long && r.only == "" && set != "A" {
				continue
			}
			over, err := r.glass(name, row["best_certified_waste"])
			if err != nil {
				return err
			}
			if over > 0 {
				ratio += over
				n++
			}
		}
		if n > 0 {
			fmt.Printf("set %s, %d problems: mean waste over the best certified %.3f\n", set, n, ratio/float64(n))
		}
	}
	return nil
}

// glass cuts the panes of one problem and returns the waste over the best certified, 0 where none is.
func (r *run) glass(name, certified string) (over float64, err error) {
	g, err := readGlass(filepath.Join(r.data, "2d-roadef2018"), name)
	if err != nil {
		return 0, err
	}
	start := r.clock()
	best := g.search(start.Add(r.within), r.clock)
	took := r.clock().Sub(start)
	if best == nil {
		r.refute("%s: no layout found", name)
		return 0, nil
	}
	plan := best.plan()
	for _, fault := range g.faults(plan) {
		r.refute("%s: %s", name, fault)
	}
	waste, known := g.waste(plan), "none certified"
	if certified != "" {
		over = float64(waste) / float(certified)
		known = fmt.Sprintf("certified %s, ratio %.3f", certified, over)
	}
	fmt.Printf("%-4s %d panes, %d plates, waste %d, %s, %v\n", name, len(g.panes), best.plate+1, waste, known, took.Round(time.Millisecond))
	return over, nil
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

// twins finds stacks of the same sizes, and marks the panes: those of such stacks alike.
func (g *glass) twins() {
	last := map[string]int{}
	g.marks = make([]uint64, len(g.panes))
	dice := rand.New(rand.NewPCG(1, 2))
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
		for t, i := range stack {
			if g.marks[i] = dice.Uint64(); before >= 0 {
				g.marks[i] = g.marks[g.stacks[before][t]]
			}
		}
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
