package frame_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"rodwright/mechanics/frame"
)

// Units of the table, exact by definition: 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N.
const (
	inch  = 25.4
	pound = 4.4482216152605
	psi   = pound / (inch * inch)
)

// given are the inputs of a row, each in mm, N and MPa by the unit in its name.
type given map[string]float64

var units = map[string]float64{
	"in": inch, "in4": inch * inch * inch * inch, "lbf": pound, "psi": psi, "psf": psi / 144, "lb_per_in": pound / inch,
	"mm": 1, "mm4": 1, "N_per_mm": 1, "N_per_mm2": 1, "m": 1000, "m4": 1e12, "Pa": 1e-6, "N": 1, "kN": 1000,
	"in3": inch * inch * inch, "lbf-in": pound * inch, "lb": pound, "N/mm2": 1, "N/m": 1e-3, "N_per_m": 1e-3, "kNm": 1e6, "": 1,
}

func read(t *testing.T, inputs string) given {
	t.Helper()
	g := given{}
	for _, part := range strings.Split(inputs, ";") {
		name, value, is := strings.Cut(part, "=")
		if !is {
			continue // "same", "kb=1/384" and the like are read by the row's own test
		}
		name, unit, _ := strings.Cut(name, "_")
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			continue
		}
		by, known := units[unit]
		if !known {
			t.Fatalf("unit %q of %q", unit, part)
		}
		g[name] = v * by
	}
	return g
}

// section bends alike both ways and gives in nothing else.
func section(e, second float64) frame.Section {
	return frame.Section{E: e, G: e / 2.6, Area: 1e8, J: 2 * second, IY: second, IZ: second, WY: 1, WZ: 1}
}

// span is a beam of stations along x, a share of the length each, with holds at some of them.
func span(long float64, s frame.Section, holds map[float64][6]float64, at ...float64) frame.Frame {
	f := frame.Frame{}
	for i, x := range at {
		f.Nodes = append(f.Nodes, node(fmt.Sprint(x), x*long, 0, 0, holds[x]))
		if i > 0 {
			m := rigid(fmt.Sprint("to ", x), fmt.Sprint(at[i-1]), fmt.Sprint(x))
			m.Section = s
			f.Members = append(f.Members, m)
		}
	}
	return f
}

func evenly(f frame.Frame, q float64) frame.Case {
	c := frame.Case{}
	for _, m := range f.Members {
		c.Evens = append(c.Evens, frame.Even{Member: m.Name, PerMM: frame.Vec{0, 0, -q}})
	}
	return c
}

func at(place float64, force float64) frame.Case {
	return frame.Case{Pushes: []frame.Push{{Node: fmt.Sprint(place), Force: frame.Vec{0, 0, -force}}}}
}

var (
	onRests  = map[float64][6]float64{0: nearRest, 1: farRest}
	betweens = map[float64][6]float64{0: frame.Clamped, 1: {0, frame.Rigid, frame.Rigid, frame.Rigid, frame.Rigid, frame.Rigid}}
	fromWall = map[float64][6]float64{0: frame.Clamped}
)

func sag(t *testing.T, f frame.Frame, c frame.Case, place float64) float64 {
	t.Helper()
	return -move(t, solve(t, f, c), fmt.Sprint(place))[2]
}

func most(t *testing.T, f frame.Frame, c frame.Case) float64 {
	t.Helper()
	top := 0.0
	for _, m := range solve(t, f, c).Members {
		top = math.Max(top, m.Bending)
	}
	return top
}

// columns are posts of the given heights, clamped below, whose heads slide as one and don't turn: 100 apart
// along y, pushed together along x.
func columns(e, second float64, heights ...float64) frame.Frame {
	f := frame.Frame{}
	tied := frame.Panel{Name: "beams", Normal: frame.Vec{0, 0, 1}}
	for i, h := range heights {
		foot, head := fmt.Sprint("foot ", i), fmt.Sprint("head ", i)
		y := 100 * float64(i)
		f.Nodes = append(f.Nodes, node(foot, 0, y, -h, frame.Clamped),
			node(head, 0, y, 0, [6]float64{0, frame.Rigid, 0, frame.Rigid, frame.Rigid, frame.Rigid}))
		m := rigid(fmt.Sprint("column ", i), foot, head)
		m.Section = section(e, second)
		f.Members = append(f.Members, m)
		tied.Nodes = append(tied.Nodes, head)
	}
	if len(heights) > 1 {
		f.Panels = []frame.Panel{tied}
	}
	return f
}

func repeat(h float64, n int) []float64 {
	all := make([]float64, n)
	for i := range all {
		all[i] = h
	}
	return all
}

func shear(t *testing.T, f frame.Frame, push float64) (sway, force, moment float64) {
	t.Helper()
	a := solve(t, f, sideways("head 0", push))
	foot, _ := a.Node("foot 0")
	return move(t, a, "head 0")[0], -foot.Push[0], math.Abs(foot.Push[4])
}

// tablePortal is the portal of rows bm23 to bm26.
func tablePortal(t *testing.T, pinned bool, beam float64) (sway, foot float64) {
	t.Helper()
	const high, long = 30 * inch, 20 * inch
	hold := frame.Clamped
	if pinned {
		hold = hingedFoot
	}
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, hold), node("b", 0, 0, high, flat), node("c", long, 0, high, flat), node("d", long, 0, 0, hold)}}
	for _, m := range []frame.Member{rigid("ab", "a", "b"), rigid("bc", "b", "c"), rigid("dc", "d", "c")} {
		m.Section = section(29e6*psi, 0.03704*units["in4"])
		f.Members = append(f.Members, m)
	}
	f.Members[1].Section.IY *= beam
	a := solve(t, f, sideways("b", 20*pound))
	n, _ := a.Node("a")
	return move(t, a, "b")[0], math.Abs(n.Push[4])
}

func shelf(t *testing.T, e float64, holds map[float64][6]float64) float64 {
	t.Helper()
	f := span(36*inch, section(e*psi, 11.25*0.75*0.75*0.75/12*units["in4"]), holds, 0, 0.5, 1)
	return sag(t, f, evenly(f, 20*units["psf"]*11.25*inch), 0.5)
}

func pipeOf(g given) frame.Section { return frame.Pipe(2e5, 8e4, g["D"], g["D"]-2*g["t"]) }

// answers are what the frame says to each row, in mm, N and MPa.
var answers = map[string]func(t *testing.T, g given) float64{
	"bm01": func(t *testing.T, g given) float64 {
		f := span(g["L"], section(2e5, g["I"]), onRests, 0, 1)
		return most(t, f, evenly(f, g["q"])) * g["y"] / g["I"]
	},
	"bm02": func(t *testing.T, g given) float64 {
		f := span(g["L"], section(g["E"], g["I"]), onRests, 0, 0.5, 1)
		return sag(t, f, evenly(f, g["q"]), 0.5)
	},
	"bm03": func(t *testing.T, g given) float64 {
		f := span(g["L"], section(2e5, g["I"]), onRests, 0, 0.5, 1)
		return most(t, f, at(0.5, g["F"])) * g["y"] / g["I"]
	},
	"bm04": func(t *testing.T, g given) float64 {
		return sag(t, span(g["L"], section(g["E"], g["I"]), onRests, 0, 0.5, 1), at(0.5, g["F"]), 0.5)
	},
	"bm07": func(t *testing.T, g given) float64 {
		sway, _, _ := shear(t, columns(g["E"], g["I"], g["h"]), 1000)
		return 1000 / sway
	},
	"bm08": func(t *testing.T, g given) float64 {
		sway, _, _ := shear(t, columns(32800, 0.002133e12, repeat(5000, 11)...), g["H"])
		return sway
	},
	"bm09": func(t *testing.T, g given) float64 {
		_, force, _ := shear(t, columns(32800, 0.002133e12, repeat(5000, 11)...), g["H"])
		return force
	},
	"bm10": func(t *testing.T, g given) float64 {
		_, _, moment := shear(t, columns(32800, 0.002133e12, g["h"]), g["V"])
		return moment
	},
	"bm12": func(t *testing.T, g given) float64 {
		sway, _, _ := shear(t, columns(32800, 0.002133e12, 3000, 6000), g["H"])
		return sway
	},
	"bm13": func(t *testing.T, g given) float64 {
		_, force, _ := shear(t, columns(32800, 0.002133e12, 3000, 6000), g["H"])
		return force
	},
	"bm14": func(t *testing.T, g given) float64 { // the modulus at which the beam sags by D
		second := g["b"] * math.Pow(g["h"], 3) / 12
		return 1000 * sag(t, span(g["L"], section(1000, second), onRests, 0, 0.5, 1), at(0.5, g["P"]), 0.5) / g["D"]
	},
	"bm16": func(t *testing.T, _ given) float64 { return shelf(t, 1.38e6, betweens) },
	"bm17": func(t *testing.T, _ given) float64 { return shelf(t, 1.82e6, onRests) },
	"bm18": func(_ *testing.T, g given) float64 { return pipeOf(g).IY },
	"bm19": func(_ *testing.T, g given) float64 { return pipeOf(g).IZ },
	"bm20": func(_ *testing.T, g given) float64 { return pipeOf(g).WY },
	"bm21": func(_ *testing.T, g given) float64 { return pipeOf(g).WZ },
	"bm22": func(t *testing.T, g given) float64 {
		return sag(t, span(g["L"], section(g["E"], g["I"]), fromWall, 0, 1), at(1, g["P"]), 1)
	},
	"bm23": func(t *testing.T, _ given) float64 { sway, _ := tablePortal(t, false, 1); return sway },
	"bm24": func(t *testing.T, _ given) float64 { sway, _ := tablePortal(t, true, 1); return sway },
	"bm25": func(t *testing.T, _ given) float64 { sway, _ := tablePortal(t, false, 1e5); return sway },
	"bm26": func(t *testing.T, _ given) float64 { _, foot := tablePortal(t, false, 1); return foot },
	"bm30": func(t *testing.T, g given) float64 {
		f := span(2*g["L"], section(1e4, 1e5), map[float64][6]float64{0: nearRest, 0.5: farRest, 1: farRest}, 0, 0.5, 1)
		middle, _ := ptr(solve(t, f, evenly(f, g["w"]))).Node("0.5")
		return middle.Push[2]
	},
	"bm31": func(t *testing.T, g given) float64 { // largest at 0.4215 of the span from the outer end
		f := span(2*g["L"], section(g["E"], g["I"]), map[float64][6]float64{0: nearRest, 0.5: farRest, 1: farRest}, 0, 0.21075, 0.5, 1)
		return sag(t, f, evenly(f, g["w"]), 0.21075)
	},
}

func init() { // rows that ask the same of other numbers
	answers["bm05"], answers["bm06"], answers["bm11"] = answers["bm01"], answers["bm02"], answers["bm07"]
}

func TestTheTableOfBeamsIsAnswered(t *testing.T) {
	for _, row := range beams(t) {
		if strings.HasPrefix(row["id"], "kb_") {
			continue
		}
		t.Run(row["id"], func(t *testing.T) {
			answer, is := answers[row["id"]]
			if !is {
				t.Fatal("nothing answers this row")
			}
			want, err1 := strconv.ParseFloat(row["expected"], 64)
			tolerance, err2 := strconv.ParseFloat(row["tolerance"], 64)
			by, known := units[row["unit"]]
			if err1 != nil || err2 != nil || !known {
				t.Fatalf("row %v: %v, %v", row, err1, err2)
			}
			got := answer(t, read(t, row["inputs"])) / by
			if !(math.Abs(got-want) <= tolerance) {
				t.Errorf("%s: got %.6g %s, want %g ± %g (%s, %s)", row["case"], got, row["unit"], want, tolerance, row["source"], row["how"])
			}
			t.Logf("%.6g, the table says %s %s", got, row["expected"], row["unit"])
		})
	}
}

// TestTheConstantsOfBendingAndShear reads kb and ks of δ = kb W L³/EI + ks W L/GA' back from a frame.
func TestTheConstantsOfBendingAndShear(t *testing.T) {
	quarters := func(f frame.Frame) frame.Case {
		return frame.Combine("", frame.Term{By: 1, Case: at(0.25, 500)}, frame.Term{By: 1, Case: at(0.75, 500)})
	}
	middle := func(frame.Frame) frame.Case { return at(0.5, 1000) }
	tip := func(frame.Frame) frame.Case { return at(1, 1000) }
	all := func(f frame.Frame) frame.Case { return evenly(f, 1) }
	kinds := map[string]struct {
		holds map[float64][6]float64
		load  func(frame.Frame) frame.Case
		place float64
	}{
		"kb_uniform_load_both_ends_simply_supported_midspan":                  {onRests, all, 0.5},
		"kb_uniform_load_both_ends_clamped_midspan":                           {betweens, all, 0.5},
		"kb_concentrated_at_midspan_both_ends_simply_supported":               {onRests, middle, 0.5},
		"kb_concentrated_at_midspan_both_ends_clamped":                        {betweens, middle, 0.5},
		"kb_concentrated_at_outer_quarter_points_simply_supported_midspan":    {onRests, quarters, 0.5},
		"kb_concentrated_at_outer_quarter_points_simply_supported_load_point": {onRests, quarters, 0.25},
		"kb_uniform_load_cantilever_free_end":                                 {fromWall, all, 1},
		"kb_concentrated_at_free_end_cantilever":                              {fromWall, tip, 1},
	}
	found := 0
	for _, row := range beams(t) {
		kind, is := kinds[row["id"]]
		if !is {
			continue
		}
		found++
		bending, sheared, _ := strings.Cut(row["expected"], " and ks=")
		s := section(1e4, 2e5) // W = 1000 N, L = 1000 mm: W L³/EI = 500 mm; G A' = 1e6: W L/GA' = 1 mm
		s.G = 4000
		f := span(1000, s, kind.holds, 0, 0.25, 0.5, 0.75, 1)
		stiff := sag(t, f, kind.load(f), kind.place)
		for i := range f.Members {
			f.Members[i].Section.ShearZ = 250
		}
		near(t, row["id"]+" kb", stiff/500, fraction(t, bending))
		near(t, row["id"]+" ks", sag(t, f, kind.load(f), kind.place)-stiff, fraction(t, sheared))
	}
	if found != len(kinds) {
		t.Errorf("%d of %d rows are in the table", found, len(kinds))
	}
}

func fraction(t *testing.T, text string) float64 {
	t.Helper()
	above, below, is := strings.Cut(text, "/")
	a, err := strconv.ParseFloat(above, 64)
	b := 1.0
	if is && err == nil {
		b, err = strconv.ParseFloat(below, 64)
	}
	if err != nil {
		t.Fatal(err)
	}
	return a / b
}

func beams(t *testing.T) []map[string]string {
	t.Helper()
	file, err := os.Open("testdata/beams.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		all = append(all, m)
	}
	return all
}
