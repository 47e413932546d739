package panel_test

import (
	"context"
	"testing"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/length"
)

// By hand: two lengths of 43 in come off a board of 96 in one behind the other, 43 in and a saw cut of 1/8 in from its
// end, though 44 in would do as well: with a gap between them the stop would be set once more.
func TestOnABoardWithoutDefectsSegmentsLieOneBehindTheOther(t *testing.T) {
	p := &panel.Problem{
		Unit: length.In, Kerf: inch / 8, Jointing: inch / 16, Strip: cut.Span{Least: 2 * inch, Most: 5 * inch},
		Panels: []panel.Panel{{Tag: "A1", Length: 44 * inch, Width: 19 * inch, Count: 1, Show: cut.Clear}, {Tag: "A2", Length: 43 * inch, Width: 9 * inch, Count: 1, Show: cut.Clear}},
	}
	for _, tag := range []string{"B1", "B2", "B3"} {
		p.Boards = append(p.Boards, panel.Board{Tag: tag, Length: 96 * inch, Width: 6 * inch})
	}
	a, err := panel.Solve(context.Background(), p, cut.Limits{})
	if err != nil || len(a.NotPlaced) > 0 {
		t.Fatal(err, a.NotPlaced)
	}
	for _, g := range a.Panels {
		for _, s := range g.Strips {
			if step := s.Size[0] + p.Kerf; s.At[0] != 0 && s.At[0] != step {
				t.Errorf("a strip of %s begins at %v, neither at the end nor at %v", g.Tag, s.At[0], step)
			}
		}
	}
}
