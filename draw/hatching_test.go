package draw_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

var materials = []draw.Fill{draw.LongWood, draw.EndWood, draw.Plywood, draw.Waste}

// skyline is an outline made of columns that stand on y = 0, some with an upright slot of no wood in the
// middle: whether a place is wood is plain.
type skyline struct {
	width   length.Length // of every column
	heights []length.Length
	slots   []length.Length // height of the slot in the middle third of a column's width and height; 0 for none
}

func someSkyline(t *rapid.T) skyline {
	s := skyline{width: length.Length(rapid.Int64Range(5_000_000, 60_000_000).Draw(t, "width"))}
	for range rapid.IntRange(1, 6).Draw(t, "columns") {
		h := length.Length(rapid.Int64Range(3_000_000, 300_000_000).Draw(t, "height"))
		s.heights = append(s.heights, h)
		s.slots = append(s.slots, length.Length(rapid.Int64Range(0, 1).Draw(t, "slot"))*h/3)
	}
	return s
}

func (s skyline) area(fill draw.Fill, along draw.Axis) draw.Area {
	a := draw.Area{Pen: draw.Outline, Fill: fill, Along: along}
	a.Outer = draw.Path{{Point: draw.Point{X: s.width * length.Length(len(s.heights))}}}
	for i, h := range slices.Backward(s.heights) {
		l := s.width * length.Length(i)
		a.Outer = append(a.Outer, draw.Vertex{Point: draw.Point{X: l + s.width, Y: h}}, draw.Vertex{Point: draw.Point{X: l, Y: h}})
		if n := s.slots[i]; n > 0 {
			a.Holes = append(a.Holes, draw.Rectangle(draw.Point{X: l + s.width/3, Y: n}, draw.Point{X: l + s.width*2/3, Y: 2 * n}))
		}
	}
	a.Outer = append(a.Outer, draw.Vertex{})
	return a
}

// wood reports whether a place is wood, edges included to the nanometre that strokes are rounded to.
func (s skyline) wood(x, y float64) bool {
	const nm = 1
	i := int(math.Floor(x / float64(s.width)))
	if i < 0 || i >= len(s.heights) || y < 0 || y > float64(s.heights[i]) {
		return false
	}
	in := x - float64(i)*float64(s.width)
	n := float64(s.slots[i])
	return n == 0 || in < float64(s.width/3)+nm || in > float64(s.width*2/3)-nm || y < n+nm || y > 2*n-nm
}

// trace returns places along a line or an arc.
func trace(m draw.Mark) (out [][2]float64) {
	const n = 200
	for k := range n + 1 {
		t := float64(k) / n
		switch m := m.(type) {
		case draw.Line:
			out = append(out, [2]float64{float64(m.A.X) + t*float64(m.B.X-m.A.X), float64(m.A.Y) + t*float64(m.B.Y-m.A.Y)})
		case draw.Arc:
			a := (m.From + t*m.Sweep) * math.Pi / 180
			out = append(out, [2]float64{float64(m.Centre.X) + float64(m.Radius)*math.Cos(a), float64(m.Centre.Y) + float64(m.Radius)*math.Sin(a)})
		}
	}
	return out
}

// strokes returns what fills an area.
func strokes(a draw.Area, per int64) []draw.Mark {
	return (&draw.Drawing{Per: per, Marks: []draw.Mark{a}}).Flat()[1:]
}

func TestHatchingNeverLeavesItsOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := someSkyline(t)
		fill := rapid.SampledFrom(materials).Draw(t, "fill")
		along := rapid.SampledFrom([]draw.Axis{draw.AlongX, draw.AlongY}).Draw(t, "along")
		per := rapid.SampledFrom([]int64{1, 4, 10}).Draw(t, "per")
		for _, m := range strokes(s.area(fill, along), per) {
			for _, p := range trace(m) {
				if !s.wood(p[0], p[1]) {
					t.Errorf("%+v leaves the outline at %v", m, p)
				}
			}
		}
	})
}

func TestHatchingKeepsToRoundOutlinesAndHoles(t *testing.T) {
	const flat = 0.05 // mm of paper, at 1 : 1
	ring := draw.Area{Outer: draw.Circle(pt(0, 0), mm(40)), Holes: []draw.Path{draw.Circle(pt(0, 0), mm(15))}}
	for _, fill := range materials {
		ring.Fill = fill
		for _, m := range strokes(ring, 1) {
			for _, p := range trace(m) {
				if r := math.Hypot(p[0], p[1]) / 1e6; r > 40 || r < 15-flat {
					t.Errorf("fill %d: %+v is %g mm from the middle, not 15 to 40", fill, m, r)
				}
			}
		}
	}
}

func TestEveryMaterialFillsItsOutline(t *testing.T) {
	for _, c := range []struct {
		fill         draw.Fill
		least, most  int
		plain        draw.Fill
		straightOnly bool
	}{
		{draw.Empty, 0, 0, draw.Empty, true},
		{draw.Paper, 0, 0, draw.Paper, true},
		{draw.Steel, 0, 0, draw.Steel, true},
		{draw.LongWood, 20, 30, draw.Paper, true}, // 40 mm of paper at 1.5
		{draw.EndWood, 20, 80, draw.Paper, false},
		{draw.Plywood, 12, 12, draw.Paper, true},
		{draw.Waste, 40, 50, draw.Paper, true}, // 100·cos 45° + 40·cos 45° = 99 mm at 2.2
	} {
		a := draw.Area{Outer: draw.Rectangle(pt(0, 0), pt(1000, 400)), Fill: c.fill}
		flat := (&draw.Drawing{Per: 10, Marks: []draw.Mark{a}}).Flat()
		if got := flat[0].(draw.Area).Fill; got != c.plain {
			t.Errorf("fill %d lies on %d, want %d", c.fill, got, c.plain)
		}
		lines := flat[1:]
		if len(lines) < c.least || len(lines) > c.most {
			t.Errorf("fill %d has %d strokes, want %d to %d", c.fill, len(lines), c.least, c.most)
		}
		for _, m := range lines {
			if _, ok := m.(draw.Line); ok != c.straightOnly {
				t.Errorf("fill %d has a %T", c.fill, m)
			}
		}
	}
}

func TestGrainRunsAlongItsAxis(t *testing.T) {
	for _, fill := range []draw.Fill{draw.LongWood, draw.Plywood} {
		for _, along := range []draw.Axis{draw.AlongX, draw.AlongY} {
			for _, m := range strokes(draw.Area{Outer: draw.Rectangle(pt(0, 0), pt(40, 40)), Fill: fill, Along: along}, 1) {
				l := m.(draw.Line)
				if (along == draw.AlongX) != (l.A.Y == l.B.Y) || (along == draw.AlongY) != (l.A.X == l.B.X) {
					t.Errorf("fill %d along axis %d: %+v", fill, along, l)
				}
			}
		}
	}
}

// A huge or an empty outline must not take memory or fail.
func TestHatchingIsBounded(t *testing.T) {
	for _, fill := range materials {
		huge := draw.Area{Outer: draw.Rectangle(draw.Point{X: -length.Max, Y: -length.Max}, draw.Point{X: length.Max, Y: length.Max}), Fill: fill}
		if n := len(strokes(huge, 1)); n > 1000 {
			t.Errorf("fill %d draws %d strokes", fill, n)
		}
		for _, none := range []draw.Path{nil, {{}}, {{}, {}}, {{Bulge: 1}, {}}, {{}, {Point: pt(1, 1)}}, {{}, {Point: pt(9, 0)}, {Point: pt(4, 0)}}} {
			if n := len(strokes(draw.Area{Outer: none, Fill: fill, Holes: []draw.Path{nil}}, 1)); n > 0 {
				t.Errorf("fill %d of nothing draws %d strokes", fill, n)
			}
		}
	}
}

func TestHatchingIsAlwaysTheSame(t *testing.T) {
	a := draw.Area{Outer: draw.Circle(pt(3, 4), mm(50)), Fill: draw.EndWood}
	first := fmt.Sprint(strokes(a, 2))
	if again := fmt.Sprint(strokes(a, 2)); again != first {
		t.Errorf("the same area is hatched %s, then %s", first, again)
	}
}
