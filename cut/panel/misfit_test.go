package panel_test

import (
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/length"
)

// What can't be made is told with its reason, and the rest is laid out as if nothing else had been asked for.
func TestWhatNoBoardCanGiveIsToldAndTheRestLaidOut(t *testing.T) {
	knotty := board("B1", 46*inch, 7*inch)
	for x := inch; x < 46*inch; x += 8 * inch {
		knotty.Defects = append(knotty.Defects, knot(x, 3*inch/2, inch, 4*inch))
	}
	boards := []panel.Board{knotty, board("B2", 46*inch, 7*inch, knot(20*inch, inch, inch, 5*inch)), board("B3", 30*inch, 7*inch)}
	for i := range boards {
		boards[i].Thickness = inch
	}
	ask := func(tag string, l, w length.Length, change func(*panel.Panel)) panel.Panel {
		q := panel.Panel{Tag: tag, Length: l * inch, Width: w * inch, Count: 1, Show: cut.Character}
		if change != nil {
			change(&q)
		}
		return q
	}
	for _, c := range []struct {
		name string
		bad  panel.Panel
		why  string
	}{
		{"too long", ask("A9", 60, 5, nil), "longer than any board"},
		{"no clear stretch so long", ask("A9", 40, 5, func(q *panel.Panel) { q.Show = cut.Clear }), "grade clear"},
		{"too thick", ask("A9", 40, 5, func(q *panel.Panel) { q.Thickness = 2 * inch }), "thicker than any board"},
		{"too few boards", ask("A9", 40, 40, nil), "not enough wood"},
	} {
		t.Run(c.name, func(t *testing.T) {
			rest := ask("A1", 40, 5, nil)
			a := solve(t, shop(boards, rest, c.bad))
			if len(a.NotPlaced) != 1 || a.NotPlaced[0].Tag != "A9" || !strings.Contains(a.NotPlaced[0].Why, c.why) {
				t.Errorf("told as %v, want %q", a.NotPlaced, c.why)
			}
			want := solve(t, shop(boards, rest))
			if len(a.Panels) != 1 || a.Cost != want.Cost || !a.Proven || !want.Proven {
				t.Errorf("%d made for %v, bound %v; alone %v, bound %v", len(a.Panels), a.Cost, a.Bound, want.Cost, want.Bound)
			}
		})
	}
}
