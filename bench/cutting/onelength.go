package main

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// runOneLength lays out the problems of one stock length and counts, for each family, those that are optimal
// and proven.
func runOneLength(r *run) error {
	all, err := r.oneLength()
	if err != nil {
		return err
	}
	took, err := r.sticks(all)
	if err != nil {
		return err
	}
	count, order := map[string]*tally{}, []string{}
	sum := &tally{}
	for _, o := range took {
		if count[o.set] == nil {
			count[o.set], order = &tally{}, append(order, o.set)
		}
		count[o.set].add(o)
		sum.add(o)
		if !o.answer.Proven && !r.verbose {
			fmt.Printf("   open: %-24s cost %v bound %v known %v to %v\n", o.name, o.answer.Cost, o.answer.Bound, o.least, o.most)
		}
	}
	for _, name := range order {
		fmt.Printf("%-14s %v\n", name, count[name])
	}
	fmt.Printf("%-14s %v; half within %v, 99 of 100 within %v\n", "all", sum, percentile(took, 0.5), percentile(took, 0.99))
	return nil
}

// tally counts the problems that are optimal and proven.
type tally struct{ n, optimal, proven int }

func (t *tally) add(o outcome) {
	t.n++
	if o.answer.Cost <= o.most+1e-9 {
		t.optimal++
	}
	if o.answer.Proven {
		t.proven++
	}
}

func (t *tally) String() string {
	return fmt.Sprintf("%5d problems, %5d optimal, %5d proven", t.n, t.optimal, t.proven)
}

// sticks lays out problems of sticks.
func (r *run) sticks(list []stickProblem) (out []outcome, err error) {
	for _, p := range list {
		if !r.wants(p.name) {
			continue
		}
		o, err := r.timed(p.known, func(ctx context.Context) (*cut.Answer, error) {
			return stick.Solve(ctx, p.problem, cut.Limits{Nodes: cut.Endless})
		}, func(a *cut.Answer) []verify.Fault { return verify.Stick(p.problem, a) })
		if err != nil {
			return nil, err
		}
		out = append(out, o)
	}
	return out, nil
}

// stickProblem is one problem of sticks with what is known of it.
type stickProblem struct {
	known
	problem *stick.Problem
}

// oneLength reads the problems that best/1d.csv lists, from the files that it names.
func (r *run) oneLength() (out []stickProblem, err error) {
	rows, err := table(filepath.Join(r.data, "best", "1d.csv"))
	if err != nil {
		return nil, err
	}
	files, seen := map[string]map[string][]sized{}, map[string]int{}
	for _, row := range rows {
		file := row["file"]
		if files[file] == nil {
			if files[file], err = readSticks(filepath.Join(r.data, filepath.FromSlash(file))); err != nil {
				return nil, err
			}
		}
		k := known{set: row["set"], name: row["instance"]}
		k.least, k.most = float(row["best_lb"]), float(row["best_ub"])
		name := strings.Join(strings.Fields(row["name_in_file"]), " ")
		found := files[file][name]
		if len(found) == 0 {
			return nil, fmt.Errorf("%s has no problem %q", file, name)
		}
		at := min(seen[file+name], len(found)-1)
		seen[file+name]++
		out = append(out, stickProblem{k, found[at].problem()})
	}
	return out, nil
}

// sized is a problem of one stock length as the files have it; sizes may have one decimal.
type sized struct {
	room  float64
	sizes []float64
	count []int
}

func (s sized) problem() *stick.Problem {
	const unit = length.Millimetre / 10
	whole := func(v float64) length.Length { return length.Length(math.Round(10*v)) * unit }
	p := &stick.Problem{Unit: length.MM, Stock: []stick.Stock{{Tag: "S", Length: whole(s.room), Count: cut.Any, Price: cut.Priced(1)}}}
	for i, v := range s.sizes {
		p.Parts = append(p.Parts, stick.Part{Tag: "C" + strconv.Itoa(i), Length: whole(v), Count: cut.Count(s.count[i])})
	}
	return p
}

// readSticks reads any of the file formats of the collection: by name, each name perhaps more than once.
func readSticks(file string) (map[string][]sized, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	out := map[string][]sized{}
	switch {
	case strings.HasSuffix(file, ".zip"):
		return readZip(text)
	case bytes.Contains(text, []byte("'")):
		err = readTyped(text, out)
	default:
		err = readPacked(text, out)
	}
	return out, err
}

// readZip reads one problem a file: number of parts, room, sizes.
func readZip(text []byte) (map[string][]sized, error) {
	z, err := zip.NewReader(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		return nil, err
	}
	out := map[string][]sized{}
	for _, f := range z.File {
		in, err := f.Open()
		if err != nil {
			return nil, err
		}
		body, err := io.ReadAll(in)
		in.Close()
		if err != nil {
			return nil, err
		}
		v := numbers(string(body))
		if len(v) < 2 || len(v) < 2+int(v[0]) {
			return nil, fmt.Errorf("%s is cut short", f.Name)
		}
		s := sized{room: v[1]}
		s.sizes = v[2 : 2+int(v[0])]
		s.count = ones(len(s.sizes))
		name := strings.TrimSuffix(path.Base(f.Name), path.Ext(f.Name))
		out[name] = append(out[name], s)
	}
	return out, nil
}

// readTyped reads problems with a quoted name, the number of kinds, the room, and a line of size and count for
// each kind.
func readTyped(text []byte, out map[string][]sized) error {
	scan := bufio.NewScanner(bytes.NewReader(text))
	for scan.Scan() {
		_, name, quoted := strings.Cut(scan.Text(), "'")
		if !quoted {
			continue
		}
		name = strings.Join(strings.Fields(strings.TrimRight(strings.TrimSpace(name), "'")), " ")
		var head []float64
		for len(head) < 2 && scan.Scan() {
			head = append(head, numbers(scan.Text())...)
		}
		if len(head) < 2 {
			return fmt.Errorf("%s is cut short", name)
		}
		s := sized{room: head[1]}
		for range int(head[0]) {
			if !scan.Scan() {
				return fmt.Errorf("%s is cut short", name)
			}
			v := numbers(scan.Text())
			s.sizes, s.count = append(s.sizes, v[0]), append(s.count, int(v[1]))
		}
		out[name] = append(out[name], s)
	}
	return scan.Err()
}

// readPacked reads a number of problems: name, then room, parts and best known, then the sizes.
func readPacked(text []byte, out map[string][]sized) error {
	words := strings.Fields(string(text))
	at := 1
	for at+4 <= len(words) {
		name, n := words[at], int(float(words[at+2]))
		s := sized{room: float(words[at+1])}
		at += 4
		if at+n > len(words) {
			return fmt.Errorf("%s is cut short", name)
		}
		for _, w := range words[at : at+n] {
			s.sizes = append(s.sizes, float(w))
		}
		at += n
		s.count = ones(n)
		out[name] = append(out[name], s)
	}
	return nil
}

func ones(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = 1
	}
	return out
}

// numbers are all numbers in a text.
func numbers(text string) (out []float64) {
	for _, w := range strings.Fields(text) {
		if v, err := strconv.ParseFloat(w, 64); err == nil {
			out = append(out, v)
		}
	}
	return out
}

// float is the number that a text is, NaN for none.
func float(text string) float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// table reads a CSV file with a head, as rows by column.
func table(file string) (out []map[string]string, err error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		out = append(out, m)
	}
	return out, nil
}
