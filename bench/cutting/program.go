package main

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
)

// program is an integer program: least Σ cost·x under its rows, every x from 0 to its most.
type program struct {
	name    string
	rows    []row
	columns []column
}

// row is one condition on a sum.
type row struct {
	sense senseOfRow
	right float64
}

// senseOfRow is how a row's sum compares with its right side, by the letters of the MPS format.
type senseOfRow byte

const (
	equal   senseOfRow = 'E'
	atMost  senseOfRow = 'L'
	atLeast senseOfRow = 'G'
)

// column is one unknown with what it adds to each row. A most of +Inf is none.
type column struct {
	cost, most float64
	whole      bool
	entries    []entry
}

type entry struct {
	row   int
	value float64
}

// condition adds a row and returns its place.
func (p *program) condition(sense senseOfRow, right float64) int {
	p.rows = append(p.rows, row{sense, right})
	return len(p.rows) - 1
}

// unknown adds a column.
func (p *program) unknown(cost, most float64, whole bool, entries ...entry) {
	p.columns = append(p.columns, column{cost, most, whole, entries})
}

// writeMPS writes the program in the free MPS format: rows R0, R1, … and columns C0, C1, …, the objective
// as row COST, the whole-numbered columns between markers.
func (p *program) writeMPS(to io.Writer) error {
	w := bufio.NewWriter(to)
	fmt.Fprintf(w, "NAME %s FREE\nROWS\n N COST\n", p.name)
	for i, r := range p.rows {
		fmt.Fprintf(w, " %c R%d\n", r.sense, i)
	}
	fmt.Fprintln(w, "COLUMNS")
	whole := false
	for j, c := range p.columns {
		if c.whole != whole {
			whole = c.whole
			writeMarker(w, j, whole)
		}
		if c.cost != 0 || len(c.entries) == 0 {
			fmt.Fprintf(w, " C%d COST %s\n", j, plain(c.cost))
		}
		for _, e := range c.entries {
			fmt.Fprintf(w, " C%d R%d %s\n", j, e.row, plain(e.value))
		}
	}
	if whole {
		writeMarker(w, len(p.columns), false)
	}
	fmt.Fprintln(w, "RHS")
	for i, r := range p.rows {
		if r.right != 0 {
			fmt.Fprintf(w, " RHS R%d %s\n", i, plain(r.right))
		}
	}
	fmt.Fprintln(w, "BOUNDS")
	for j, c := range p.columns {
		if math.IsInf(c.most, 1) {
			fmt.Fprintf(w, " PL BOUND C%d\n", j) // readers differ in what a whole column without one may be
		} else {
			fmt.Fprintf(w, " UP BOUND C%d %s\n", j, plain(c.most))
		}
	}
	fmt.Fprintln(w, "ENDATA")
	return w.Flush()
}

func writeMarker(w io.Writer, n int, begin bool) {
	word := "INTEND"
	if begin {
		word = "INTORG"
	}
	fmt.Fprintf(w, " M%d 'MARKER' '%s'\n", n, word)
}

// plain prints a number with all its digits.
func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// writePrograms writes the problems of hard28, of several lengths and of glued-up panels as integer programs
// into a folder, one file each.
func (r *run) writePrograms(dir string) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	programs, err := r.programs()
	if err != nil {
		return err
	}
	for _, p := range programs {
		if err := p.save(filepath.Join(dir, p.name+".mps")); err != nil {
			return err
		}
		fmt.Printf("%-24s %6d rows, %7d columns\n", p.name, len(p.rows), len(p.columns))
	}
	return nil
}

func (p *program) save(file string) error {
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	if err := p.writeMPS(f); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// programs are the problems to be given to a general solver.
func (r *run) programs() (out []*program, err error) {
	one, err := r.oneLength()
	if err != nil {
		return nil, err
	}
	many, err := r.manyLengths()
	if err != nil {
		return nil, err
	}
	for _, q := range append(one, many...) {
		if (q.set == "hard28" || q.set == "multi") && r.wants(q.name) {
			out = append(out, arcFlow(q.name, q.problem))
		}
	}
	glued, err := r.gluedProblems()
	if err != nil {
		return nil, err
	}
	for _, g := range glued {
		if name := strconv.Itoa(g.Seed); r.wants(name) {
			out = append(out, g.program("glue-up-"+name))
		}
	}
	return out, nil
}
