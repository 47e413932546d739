package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/stick"
	"rodwright/length"
)

const mm = length.Millimetre

// The format is described in B. A. Murtagh, Advanced Linear Programming (McGraw-Hill, 1981), section 9.2.
func Example_writeMPS() {
	p := &program{name: "tiny"}
	a, b := p.condition(atLeast, 2.5), p.condition(equal, 0)
	p.unknown(3, 4, true, entry{a, 1}, entry{b, -1})
	p.unknown(0, math.Inf(1), false, entry{b, 1})
	if err := p.writeMPS(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// NAME tiny FREE
	// ROWS
	//  N COST
	//  G R0
	//  E R1
	// COLUMNS
	//  M0 'MARKER' 'INTORG'
	//  C0 COST 3
	//  C0 R0 1
	//  C0 R1 -1
	//  M1 'MARKER' 'INTEND'
	//  C1 R1 1
	// RHS
	//  RHS R0 2.5
	// BOUNDS
	//  UP BOUND C0 4
	//  PL BOUND C1
	// ENDATA
}

// relaxed is the least cost when no number need be whole, by the simplex method of gonum
// (gonum.org/v1/gonum v0.17, optimize/convex/lp).
func relaxed(t *testing.T, p *program) float64 {
	t.Helper()
	rows := slices.Clone(p.rows)
	columns := slices.Clone(p.columns)
	for j, c := range p.columns {
		if !math.IsInf(c.most, 1) {
			columns[j].entries = append(slices.Clone(c.entries), entry{len(rows), 1})
			rows = append(rows, row{atMost, c.most})
		}
	}
	for i, r := range rows {
		if r.sense != equal {
			slack := map[senseOfRow]float64{atMost: 1, atLeast: -1}[r.sense]
			columns = append(columns, column{entries: []entry{{i, slack}}})
		}
	}
	// Flow is kept at every node if at all but one: the simplex method wants rows that don't depend on each other.
	drop := slices.IndexFunc(rows, func(r row) bool { return r.sense == equal })
	matrix := mat.NewDense(len(rows)-1, len(columns), nil)
	cost, right := make([]float64, len(columns)), make([]float64, 0, len(rows)-1)
	for j, c := range columns {
		cost[j] = c.cost
		for _, e := range c.entries {
			if e.row != drop {
				i := e.row
				if i > drop {
					i--
				}
				matrix.Set(i, j, matrix.At(i, j)+e.value)
			}
		}
	}
	for i, r := range rows {
		if i != drop {
			right = append(right, r.right)
		}
	}
	least, _, err := lp.Simplex(cost, matrix, right, 1e-10, nil)
	if err != nil {
		t.Fatal(err)
	}
	return least
}

// By hand: two parts of 4 go on each stick of 10, so five take two and a half sticks.
func TestWithoutWholeNumbersSticksAreShared(t *testing.T) {
	for _, c := range []struct {
		name string
		p    stick.Problem
		want float64
	}{
		{"one length", stick.Problem{
			Stock: []stick.Stock{{Tag: "S", Length: 10 * mm, Count: cut.Any, Price: cut.Priced(1)}},
			Parts: []stick.Part{{Tag: "C1", Length: 4 * mm, Count: 5}},
		}, 2.5},
		// Two of 3 + 1 on each 9 + 1: every part takes a saw cut, and the room has one more.
		{"with saw cuts", stick.Problem{
			Kerf: mm, Trim: mm,
			Stock: []stick.Stock{{Tag: "S", Length: 11 * mm, Count: cut.Any, Price: cut.Priced(1)}},
			Parts: []stick.Part{{Tag: "C1", Length: 3 * mm, Count: 5}},
		}, 2.5},
		// The remnant holds two of 4 for nearly nothing, the other three cost 1.5 sticks.
		{"a remnant first", stick.Problem{
			Stock: []stick.Stock{
				{Tag: "R", Length: 8 * mm, Count: 1, Price: cut.Priced(0.25)},
				{Tag: "S", Length: 10 * mm, Count: cut.Any, Price: cut.Priced(1)},
			},
			Parts: []stick.Part{{Tag: "C1", Length: 4 * mm, Count: 5}},
		}, 1.75},
	} {
		if got := relaxed(t, arcFlow(c.name, &c.p)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestTheRowsOfPartsAreAllThatFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &stick.Problem{Kerf: length.Length(rapid.IntRange(0, 2).Draw(t, "kerf"))}
		for i := range rapid.IntRange(1, 2).Draw(t, "lengths") {
			p.Stock = append(p.Stock, stick.Stock{Tag: fmt.Sprint(i), Length: length.Length(rapid.IntRange(5, 25).Draw(t, "length")), Count: cut.Any})
		}
		for i := range rapid.IntRange(1, 4).Draw(t, "kinds") {
			p.Parts = append(p.Parts, stick.Part{
				Tag: fmt.Sprint(i), Length: length.Length(rapid.IntRange(2, 12).Draw(t, "part")), Count: cut.Count(rapid.IntRange(1, 3).Draw(t, "count")),
			})
		}
		f := newFlow(p)
		got, want := f.rows(), allRows(f, slices.Max(f.room))
		if !slices.Equal(got, want) {
			t.Fatalf("rows %v, want %v", got, want)
		}
	})
}

// rows are all rows of parts that the arcs allow, as counts of each kind. A row may hold more of a kind than are
// wanted when others of its length in between end where one of them may begin; no stick is the worse for it.
func (f *flow) rows() []string {
	seen := map[string]bool{}
	var walk func(x length.Length, kind int, count []int)
	walk = func(x length.Length, kind int, count []int) {
		seen[fmt.Sprint(count)] = true
		for i := kind; i < len(f.kinds); i++ {
			if k := f.kinds[i]; count[i] < k.need && slices.Contains(k.from, x) {
				next := slices.Clone(count)
				next[i]++
				walk(x+k.size, i, next)
			}
		}
	}
	walk(0, 0, make([]int, len(f.kinds)))
	return sortedKeys(seen)
}

func allRows(f *flow, room length.Length) []string {
	seen := map[string]bool{}
	var fill func(i int, left length.Length, count []int)
	fill = func(i int, left length.Length, count []int) {
		if i == len(f.kinds) {
			seen[fmt.Sprint(count)] = true
			return
		}
		for n := 0; n <= f.kinds[i].need && length.Length(n)*f.kinds[i].size <= left; n++ {
			next := slices.Clone(count)
			next[i] = n
			fill(i+1, left-length.Length(n)*f.kinds[i].size, next)
		}
	}
	fill(0, room, make([]int, len(f.kinds)))
	return sortedKeys(seen)
}

func sortedKeys(m map[string]bool) (out []string) {
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// smallGlueUp is one board of 100 × 40 with a knot and a split, for two clear panels and one with knots.
func smallGlueUp(t *testing.T) gluedProblem {
	return decodeGlueUp(t, `{"seed": 1, "kerf": 2, "rip_kerf": 2, "joint": 1, "edge_trim": 4, "min_strip": 8, "max_strip": 20, "min_tail": 30, "salvage": 0.5,
 "boards": [{"len": 100, "wid": 40, "cost": 10, "defects": [[30, 36, 10, 14], [95, 100, 0, 40]]}],
 "panels": [{"len": 28, "wid": 10, "qty": 2, "clear": true}, {"len": 28, "wid": 5, "qty": 1, "clear": true}, {"len": 50, "wid": 12, "qty": 1, "clear": false}]}`)
}

func decodeGlueUp(t *testing.T, text string) (g gluedProblem) {
	t.Helper()
	if err := json.Unmarshal([]byte(text), &g); err != nil {
		t.Fatal(err)
	}
	return g
}

// By hand: of the trimmed width from 4 to 36 the knot from 10 to 14 leaves 6, too narrow, and 22: two strips of 10
// beside a saw cut are 18 when jointed, one of 20 is 19. 32 are two strips of 15, jointed 28, or three of 28/3,
// jointed 25.
func TestANetWidthIsWhatJointedStripsAddUpTo(t *testing.T) {
	g := smallGlueUp(t)
	clear, knotty := gluedKind{length: 28, clear: true}, gluedKind{length: 50}
	for _, c := range []struct {
		at   length.Length
		kind gluedKind
		want length.Length
	}{
		{0, clear, 28},  // ends before the knot
		{3, clear, 19},  // meets it
		{36, clear, 28}, // begins behind it
		{0, knotty, 28},
		{45, knotty, 28}, // ends where the split begins
		{46, knotty, 0},
		{70, clear, 0}, // beyond the split
	} {
		if got := g.netWidth(0, c.at, c.kind); got != c.want {
			t.Errorf("%d long at %d: %d, want %d", c.kind.length, c.at, got, c.want)
		}
	}
}

func TestPanelsOfOneKindAreSummedUpWithASawCutBetween(t *testing.T) {
	want := []gluedKind{{28, true, 10 + 10 + 5 + 2*(2+1)}, {50, false, 12}}
	if got := smallGlueUp(t).kinds(); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestSegmentsBeginBehindDefectsAndBehindEachOther(t *testing.T) {
	g := smallGlueUp(t)
	want := []length.Length{0, 30, 36, 52, 60, 66, 82, 88, 90, 96}
	if got := g.positions(0, g.kinds()); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// By hand: a segment of 28 yields 28, what is wanted. A board of 100 yields three, so a third of it is bought,
// for 10/3; a board of 62 whose tail of 32 is worth its price is cheaper with one segment, 10 − 10·32/62, than
// half of one with two.
func TestWithoutWholeNumbersBoardsAreShared(t *testing.T) {
	for _, c := range []struct {
		name          string
		long, salvage float64
		want          float64
	}{
		{"three segments", 100, 0.5, 10. / 3},
		{"a kept tail", 62, 1, 10 * 30. / 62},
	} {
		g := decodeGlueUp(t, fmt.Sprintf(`{"kerf": 2, "rip_kerf": 2, "joint": 1, "edge_trim": 4, "min_strip": 8, "max_strip": 20, "min_tail": 30, "salvage": %v,
 "boards": [{"len": %v, "wid": 40, "cost": 10}], "panels": [{"len": 28, "wid": 28, "qty": 1, "clear": true}]}`, c.salvage, c.long))
		if got := relaxed(t, g.program(c.name)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestProgramsAreWrittenForEveryProblem(t *testing.T) {
	var b strings.Builder
	if err := smallGlueUp(t).program("small").writeMPS(&b); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(b.String(), "NAME small FREE\n") || !strings.HasSuffix(b.String(), "\nENDATA\n") {
		t.Error(b.String())
	}
}
