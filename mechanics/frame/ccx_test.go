package frame_test

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rodwright/mechanics/frame"
)

// The table of this file: four posts of 700 on a rectangle of 600 by 400, rails round the top, all of steel
// pipe 26.7 by 2.87 mm, the feet clamped, 100 N along x on one corner and 30 N along y on the one across.
const (
	pipeOuter, pipeWall = 26.7, 2.87
	steel, steelNu      = 200000.0, 0.3
	tableHigh           = 700.0
	stubLong            = 4.0 // mm: how CalculiX is told of a joint that gives
)

var tableFeet = []frame.Vec{{0, 0, 0}, {600, 0, 0}, {600, 400, 0}, {0, 400, 0}}

func pipeTable(joint frame.Springs) frame.Frame {
	f := frame.Frame{}
	pipe := frame.Pipe(steel, steel/(2*(1+steelNu)), pipeOuter, pipeOuter-2*pipeWall)
	for i, c := range tableFeet {
		foot, top := fmt.Sprint("foot ", i), fmt.Sprint("top ", i)
		f.Nodes = append(f.Nodes, node(foot, c[0], c[1], 0, frame.Clamped), node(top, c[0], c[1], tableHigh))
		post, rail := rigid(fmt.Sprint("post ", i), foot, top), rigid(fmt.Sprint("rail ", i), top, fmt.Sprint("top ", (i+1)%4))
		post.Section, rail.Section = pipe, pipe
		rail.Start.Springs, rail.End.Springs = joint, joint
		f.Members = append(f.Members, post, rail)
	}
	return f
}

// TestATableSwaysAsSolidElementsSay works the same table with CalculiX, a public finite element program that
// expands each piece of pipe into solid elements, with none of the formulas of this package. A joint that
// gives is a stub of soft pipe there: E'I/l about y and z, G'J/l about x.
func TestATableSwaysAsSolidElementsSay(t *testing.T) {
	program, err := exec.LookPath("ccx")
	if err != nil {
		t.Fatal("CalculiX (ccx) is missing: run `make tools`")
	}
	pipe := frame.Pipe(steel, steel/2.6, pipeOuter, pipeOuter-2*pipeWall)
	for _, soft := range []float64{0, 3200, 800, 200} { // MPa of the stub; 0 is a joint that does not give
		joint := frame.Stiff
		if soft > 0 {
			k := soft * pipe.IY / stubLong
			joint = frame.Springs{Twist: soft / 2 * pipe.J / stubLong, Y: k, Z: k}
		}
		a := solve(t, pipeTable(joint), frame.Case{Pushes: []frame.Push{
			{Node: "top 0", Force: frame.Vec{100, 0, 0}}, {Node: "top 2", Force: frame.Vec{0, 30, 0}},
		}})
		d := newDeck(soft)
		moved := d.run(t, program)
		for _, at := range []struct {
			top  int
			way  frame.Freedom
			name string
		}{{0, frame.AlongX, "pushed corner"}, {2, frame.AlongX, "corner across"}, {2, frame.AlongY, "corner across, other way"}} {
			what := fmt.Sprintf("stub %g MPa: %s", soft, at.name)
			within(t, what, move(t, a, fmt.Sprint("top ", at.top))[at.way], moved[d.tops[at.top]][at.way], 0.02)
		}
	}
}

// deck is an input of CalculiX: nodes are numbered from 1.
type deck struct {
	nodes       []frame.Vec
	stiff, soft [][3]int
	feet, tops  []int
	modulus     float64
}

const pieces = 48 // of a stick; quadratic pieces of reduced integration near the answer from below, as 1/pieces

func newDeck(soft float64) *deck {
	d := &deck{modulus: soft}
	for _, c := range tableFeet {
		d.feet = append(d.feet, d.node(c))
		c[2] = tableHigh
		d.tops = append(d.tops, d.node(c))
	}
	for i := range d.feet {
		d.stiff = append(d.stiff, d.line(d.feet[i], d.tops[i], pieces)...)
		d.rail(d.tops[i], d.tops[(i+1)%4])
	}
	return d
}

func (d *deck) node(at frame.Vec) int {
	d.nodes = append(d.nodes, at)
	return len(d.nodes)
}

// between is the point a part of the way from one node to another.
func (d *deck) between(a, b int, part float64) frame.Vec {
	var v frame.Vec
	for i := range v {
		v[i] = d.nodes[a-1][i] + part*(d.nodes[b-1][i]-d.nodes[a-1][i])
	}
	return v
}

func (d *deck) rail(a, b int) {
	if d.modulus == 0 {
		d.stiff = append(d.stiff, d.line(a, b, pieces)...)
		return
	}
	long := math.Abs(d.nodes[a-1][0]-d.nodes[b-1][0]) + math.Abs(d.nodes[a-1][1]-d.nodes[b-1][1])
	start, end := d.node(d.between(a, b, stubLong/long)), d.node(d.between(a, b, 1-stubLong/long))
	d.soft = append(d.soft, d.line(a, start, 1)...)
	d.stiff = append(d.stiff, d.line(start, end, pieces)...)
	d.soft = append(d.soft, d.line(end, b, 1)...)
}

func (d *deck) line(a, b, n int) [][3]int {
	var all [][3]int
	last := a
	for i := range n {
		middle, next := d.node(d.between(a, b, (float64(i)+0.5)/float64(n))), b
		if i < n-1 {
			next = d.node(d.between(a, b, float64(i+1)/float64(n)))
		}
		all = append(all, [3]int{last, middle, next})
		last = next
	}
	return all
}

func (d *deck) write() string {
	var b strings.Builder
	b.WriteString("*NODE,NSET=ALL\n")
	for i, n := range d.nodes {
		fmt.Fprintf(&b, "%d,%.9g,%.9g,%.9g\n", i+1, n[0], n[1], n[2])
	}
	element := 0
	for _, set := range []struct {
		name     string
		elements [][3]int
		e, nu    float64
	}{{"STIFF", d.stiff, steel, steelNu}, {"SOFT", d.soft, d.modulus, 0}} { // a stub without sideways give: it is shorter than wide
		if len(set.elements) == 0 {
			continue
		}
		fmt.Fprintf(&b, "*ELEMENT,TYPE=B32R,ELSET=%s\n", set.name)
		for _, e := range set.elements {
			element++
			fmt.Fprintf(&b, "%d,%d,%d,%d\n", element, e[0], e[1], e[2])
		}
		fmt.Fprintf(&b, "*MATERIAL,NAME=M%s\n*ELASTIC\n%g,%g\n", set.name, set.e, set.nu)
		fmt.Fprintf(&b, "*BEAM SECTION,ELSET=%s,MATERIAL=M%s,SECTION=PIPE\n%g,%g\n0.57735,0.57735,0.57735\n", set.name, set.name, pipeOuter/2, pipeWall)
	}
	b.WriteString("*BOUNDARY\n")
	for _, n := range d.feet {
		fmt.Fprintf(&b, "%d,1,6\n", n)
	}
	fmt.Fprintf(&b, "*STEP\n*STATIC\n*CLOAD\n%d,1,100\n%d,2,30\n*NODE PRINT,NSET=ALL\nU\n*END STEP\n", d.tops[0], d.tops[2])
	return b.String()
}

// run returns the movements by node.
func (d *deck) run(t *testing.T, program string) map[int]frame.Vec {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "table.inp"), []byte(d.write()), 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.CommandContext(t.Context(), program, "table")
	run.Dir = dir
	run.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	if said, err := run.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said[max(0, len(said)-2000):])
	}
	file, err := os.Open(filepath.Join(dir, "table.dat"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	moved := map[int]frame.Vec{}
	for lines := bufio.NewScanner(file); lines.Scan(); {
		words := strings.Fields(lines.Text())
		if len(words) != 4 {
			continue
		}
		var v frame.Vec
		n, err := strconv.Atoi(words[0])
		for i := range v {
			if err == nil {
				v[i], err = strconv.ParseFloat(words[i+1], 64)
			}
		}
		if err == nil {
			moved[n] = v
		}
	}
	if len(moved) != len(d.nodes) {
		t.Fatalf("CalculiX tells of %d nodes, not %d", len(moved), len(d.nodes))
	}
	return moved
}
