package panel

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

// From place to place a segment yields what its clear ranges yield, each for itself.
func TestASegmentYieldsWhatItsClearRangesYield(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := twoBoards()
		b := &p.Boards[0]
		b.Length, b.Width = 200, 60
		for range rapid.IntRange(0, 5).Draw(t, "knots") {
			b.Defects = append(b.Defects, cut.Defect{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{
				X: length.Length(rapid.IntRange(0, 190).Draw(t, "x")), Y: length.Length(rapid.IntRange(0, 55).Draw(t, "y")),
				Length: length.Length(rapid.IntRange(1, 30).Draw(t, "length")), Width: length.Length(rapid.IntRange(1, 30).Draw(t, "width")),
			}})
		}
		m := newModel(p)
		for k := range m.kinds {
			src := m.boards[0]
			for i, x := range src.pos {
				want := length.Length(0)
				if x+m.kinds[k].length <= src.Length {
					for _, y := range m.clear(src, m.kinds[k], x) {
						want += m.netOf(y.To - y.From)
					}
				}
				if src.net[k][i] != want {
					t.Fatalf("kind %d at %d yields %d, its clear ranges %d", k, x, src.net[k][i], want)
				}
			}
		}
	})
}
