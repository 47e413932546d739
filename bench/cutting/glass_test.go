package main

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

func drawGlass(t *rapid.T) *glass {
	g := &glass{flaws: map[int][]flaw{}}
	for s := range rapid.IntRange(1, 4).Draw(t, "stacks") {
		g.stacks = append(g.stacks, nil)
		for range rapid.IntRange(1, 3).Draw(t, "panes") {
			p := pane{rapid.IntRange(60, 2500).Draw(t, "length"), rapid.IntRange(60, 2500).Draw(t, "width"), s}
			g.stacks[s] = append(g.stacks[s], len(g.panes))
			g.panes = append(g.panes, p)
			g.area += p.l * p.w
		}
	}
	for range rapid.IntRange(0, 6).Draw(t, "flaws") {
		x, y := rapid.IntRange(0, 5990).Draw(t, "x"), rapid.IntRange(0, 3200).Draw(t, "y")
		i := rapid.IntRange(0, 2).Draw(t, "plate")
		g.flaws[i] = append(g.flaws[i], flaw{x, y, x + 1 + x%9, y + 1 + y%9})
	}
	g.twins()
	return g
}

func TestPanesAreCutByTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGlass(t)
		best := g.search(time.Now(), time.Now)
		if best == nil {
			t.Skip("a pane fits nowhere")
		}
		plan := best.plan()
		if faults := g.faults(plan); len(faults) > 0 {
			t.Fatal(faults)
		}
		if g.waste(plan) != best.total()-g.area {
			t.Fatalf("waste %d, the search says %d", g.waste(plan), best.total()-g.area)
		}
	})
}

func TestWhatBreaksTheRulesIsSeen(t *testing.T) {
	whole := func() (*glass, glassPlan) {
		g := &glass{panes: []pane{{500, 400, 0}, {500, 400, 0}}, stacks: [][]int{{0, 1}}, flaws: map[int][]flaw{}}
		row := glassRow{0, 400, []glassCell{{0, flaw{0, 0, 500, 400}, none, 400}, {1, flaw{500, 0, 1000, 400}, none, 400}}}
		return g, glassPlan{[][]glassSection{{{0, 1000, []glassRow{row}}}}}
	}
	if g, p := whole(); len(g.faults(p)) != 0 {
		t.Fatalf("a good plan is refused: %v", g.faults(p))
	}
	for name, harm := range map[string]func(*glass, *glassSection){
		"a flaw in a pane":            func(g *glass, s *glassSection) { g.flaws[0] = []flaw{{10, 10, 12, 12}} },
		"a first cut through a flaw":  func(g *glass, s *glassSection) { g.flaws[0] = []flaw{{999, 2000, 1001, 2002}} },
		"a second cut through a flaw": func(g *glass, s *glassSection) { g.flaws[0] = []flaw{{700, 399, 702, 401}} },
		"panes out of turn":           func(g *glass, s *glassSection) { c := s.rows[0].cells; c[0].pane, c[1].pane = 1, 0 },
		"a pane missing":              func(g *glass, s *glassSection) { s.rows[0].cells = s.rows[0].cells[:1] },
		"a sliver beside":             func(g *glass, s *glassSection) { s.x1 = 1010 },
		"a sliver above":              func(g *glass, s *glassSection) { s.rows[0].y1 = 410 },
		"a pane of another size":      func(g *glass, s *glassSection) { g.panes[0].l = 600 },
		"panes that overlap":          func(g *glass, s *glassSection) { s.rows[0].cells[1].at = flaw{400, 0, 900, 400} },
		"a section too wide":          func(g *glass, s *glassSection) { s.x1 = 3600 },
		"a row too narrow":            func(g *glass, s *glassSection) { s.rows[0].y1 = 90 },
		"two trims of one pane": func(g *glass, s *glassSection) {
			s.rows[0].y1 = 450
			s.rows[0].cells[1].at.y0, s.rows[0].cells[1].at.y1 = 20, 420
		},
	} {
		g, p := whole()
		harm(g, &p.plates[0][0])
		if len(g.faults(p)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
}

// A row of a pane and of two above one another, and a pane above the row: the section is 1200 wide and nothing is lost.
// Without cells of two panes there is no such layout.
func towers() *glass {
	g := &glass{
		panes:  []pane{{700, 1000, 0}, {500, 400, 1}, {500, 600, 2}, {1200, 2210, 3}},
		stacks: [][]int{{0}, {1}, {2}, {3}}, flaws: map[int][]flaw{}, area: 1200 * plateWidth,
	}
	g.twins()
	return g
}

func TestTwoPanesAreCutFromOneCell(t *testing.T) {
	g := towers()
	best := g.search(time.Now().Add(100*time.Millisecond), time.Now)
	plan := best.plan()
	if faults := g.faults(plan); len(faults) > 0 || g.waste(plan) != 0 {
		t.Errorf("waste %d, faults %v", g.waste(plan), faults)
	}
}

func TestWhatBreaksTheRulesOfACellOfTwoIsSeen(t *testing.T) {
	whole := func() (*glass, glassPlan) {
		low := glassRow{0, 1000, []glassCell{{0, flaw{0, 0, 700, 1000}, none, 1000}, {1, flaw{700, 0, 1200, 400}, 2, 1000}}}
		high := glassRow{1000, plateWidth, []glassCell{{3, flaw{0, 1000, 1200, plateWidth}, none, plateWidth}}}
		return towers(), glassPlan{[][]glassSection{{{0, 1200, []glassRow{low, high}}}}}
	}
	if g, p := whole(); len(g.faults(p)) != 0 {
		t.Fatalf("a good plan is refused: %v", g.faults(p))
	}
	for name, harm := range map[string]func(*glass, *glassCell){
		"a flaw in the upper pane":       func(g *glass, c *glassCell) { g.flaws[0] = []flaw{{800, 700, 802, 702}} },
		"a flaw on the cut between them": func(g *glass, c *glassCell) { g.flaws[0] = []flaw{{800, 399, 802, 401}} },
		"waste above both":               func(g *glass, c *glassCell) { g.panes[2].w, c.end = 570, 970 },
		"an upper pane of another size":  func(g *glass, c *glassCell) { g.panes[2].l = 480 },
		"one pane twice":                 func(g *glass, c *glassCell) { c.over = 1 },
		"the upper pane missing":         func(g *glass, c *glassCell) { c.over = none },
	} {
		g, p := whole()
		harm(g, &p.plates[0][0].rows[0].cells[1])
		if len(g.faults(p)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
}

// A flaw at the front of the plate: the pane lies above it, and the waste below it is no wider than the flaw.
func TestAPaneIsLiftedAboveAFlaw(t *testing.T) {
	g := &glass{panes: []pane{{3000, 2900, 0}}, stacks: [][]int{{0}}, flaws: map[int][]flaw{0: {{10, 10, 2990, 90}}}, area: 3000 * 2900}
	g.twins()
	plan := g.search(time.Now(), time.Now).plan()
	if faults := g.faults(plan); len(faults) > 0 || plan.plates[0][0].rows[0].cells[0].at.y0 < 90 || plan.plates[0][0].x1 != 3000 {
		t.Errorf("%+v, faults %v", plan, faults)
	}
}

// Profiles of a plate 6000 × 3210, each a section to x1 up to y0, a row to end up to y1, and nothing above but x0.
func TestAFrontIsAheadWhereItReachesNowhereFarther(t *testing.T) {
	at := func(plate, x0, x1, y0, y1, end int) *front {
		return &front{plate: plate, x0: x0, x1: x1, y0: y0, y1: y1, end: end}
	}
	here := at(1, 1000, 2000, 500, 900, 1600)
	for _, c := range []struct {
		name        string
		other       *front
		ahead, back bool
	}{
		{"the same", at(1, 1000, 2000, 500, 900, 1600), true, true},
		{"a plate further", at(2, 0, 100, 0, 100, 100), true, false},
		{"a row that reaches farther", at(1, 1000, 2000, 500, 900, 1700), true, false},
		{"a row that is wider", at(1, 1000, 2000, 500, 950, 1600), true, false},
		{"a section that begins behind this one", at(1, 2000, 2500, 0, 300, 2200), true, false},
		{"a longer row that is narrower", at(1, 1000, 2000, 500, 800, 1700), false, false},
		{"a narrower section with a higher row", at(1, 1000, 1900, 500, 950, 1600), false, false},
	} {
		if ahead, back := here.ahead(c.other), c.other.ahead(here); ahead != c.ahead || back != c.back {
			t.Errorf("%s: ahead %v, behind %v", c.name, ahead, back)
		}
	}
}
