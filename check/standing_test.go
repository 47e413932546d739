package check

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/trade/pipe"
)

func TestAPieceIsWhatItsFrameAndPanelsJoin(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		n    int
		wall bool
	}{
		"a table":                         {table, 1, false},
		"shelves on four posts":           {shelves, 1, false},
		"one board on two frames":         {pairs, 1, false},
		"two benches":                     {twoBenches, 2, false},
		"two arms on one wall":            {wallShelf, 1, true},
		"a board that lies on its rails":  {bearers, 1, false},
		"a board notched round its posts": {notched, 1, false},
	} {
		p := derive(t, c.text)
		if len(p.standing) != c.n || p.standing[0].wall != c.wall {
			t.Errorf("%s: %d, wall %v", name, len(p.standing), p.standing[0].wall)
		}
		var panels, sticks, nodes, feet, held int
		for _, s := range p.standing {
			panels, sticks, nodes = panels+len(s.panels), sticks+len(s.sticks), nodes+len(s.nodes)
			feet, held = feet+len(s.feet), held+len(s.held)
		}
		if panels != len(p.Panels) || sticks != len(p.Sticks) || nodes != len(p.Nodes) || feet != len(p.Feet) || held != len(p.Held) {
			t.Errorf("%s: something stands twice or nowhere", name)
		}
	}
}

func TestWhatStandsByItselfIsNamedByItsFirstPanel(t *testing.T) {
	two, one := derive(t, twoBenches), derive(t, table)
	says(t, two.place(two.standing[0]), "left seat and what it stands on")
	says(t, two.place(two.standing[1]), "right seat")
	says(t, one.place(one.standing[0]), "the whole piece")
	if a, b := two.tagsOf(two.standing[0]), two.tagsOf(two.standing[1]); slices.Contains(b, a[0]) {
		t.Errorf("%v and %v share a panel", a, b)
	}
	frames := frame([]pipe.Kind{pipe.Cap, pipe.Cap, pipe.Cap, pipe.Cap}, [][2]int{{0, 1}, {2, 3}})
	frames.Sticks[1].Name = "far stick"
	says(t, frames.place(frames.standing[1]), "the frame of far stick")
}

// Joined things have one root, and joining two sets makes them one less.
func TestAForestCountsItsTrees(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(r, "n")
		f, trees := newForest(n), n
		for range rapid.IntRange(0, 40).Draw(r, "joins") {
			a, b := rapid.IntRange(0, n-1).Draw(r, "a"), rapid.IntRange(0, n-1).Draw(r, "b")
			if f.join(a, b) {
				trees--
			}
			if f.root(a) != f.root(b) {
				r.Fatalf("%d and %d are joined and are not", a, b)
			}
		}
		roots := map[int]bool{}
		for i := range n {
			roots[f.root(i)] = true
		}
		if len(roots) != trees {
			r.Fatalf("%d roots, %d trees", len(roots), trees)
		}
	})
}

// The masses of what stands add up to the whole less its screws and straps.
func TestMassesOfBodiesAddUp(t *testing.T) {
	p := derive(t, shelves)
	sum := 0.0
	for _, b := range p.bodies(p.standing[0]) {
		sum += b.Kg
	}
	for _, pt := range p.Parts.Parts {
		if len(pt.Indexes) == 0 {
			sum += float64(pt.Count) * pt.MassKg
		}
	}
	near(t, "mass", sum, p.Parts.Totals.MassKg, 1e-9)
	near(t, "own", p.ownKg(p.standing[0]), p.Parts.Totals.MassKg, 0)
}
