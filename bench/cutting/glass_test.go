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
		best := g.search(time.Now())
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
		row := glassRow{0, 400, []glassCell{{0, flaw{0, 0, 500, 400}}, {1, flaw{500, 0, 1000, 400}}}}
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
	} {
		g, p := whole()
		harm(g, &p.plates[0][0])
		if len(g.faults(p)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
}
