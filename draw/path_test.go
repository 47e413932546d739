package draw_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

func mm(v float64) length.Length { return length.FromMM(v) }

func pt(x, y float64) draw.Point { return draw.Point{X: mm(x), Y: mm(y)} }

// enclosed returns the area of a path in mm²: the polygon of its corners and the segments that bulges add,
// radius²·(turn − sin turn)/2 each.
func enclosed(p draw.Path) (sum float64) {
	for i, v := range p {
		w := p[(i+1)%len(p)]
		sum += (v.X.MM()*w.Y.MM() - w.X.MM()*v.Y.MM()) / 2
		if v.Bulge != 0 {
			turn := 4 * math.Atan(v.Bulge)
			chord := math.Hypot((w.X - v.X).MM(), (w.Y - v.Y).MM())
			r := chord / 2 / math.Sin(turn/2)
			sum += r * r * (turn - math.Sin(turn)) / 2
		}
	}
	return sum
}

// The areas are those of elementary geometry: a rectangle, π·r², and a rectangle less (4 − π)·r².
func TestPathsEncloseTheirShapes(t *testing.T) {
	for name, c := range map[string]struct {
		path draw.Path
		want float64
	}{
		"rectangle":            {draw.Rectangle(pt(1, 2), pt(31, 22)), 600},
		"circle":               {draw.Circle(pt(5, 5), mm(10)), 100 * math.Pi},
		"rounded":              {draw.Rounded(pt(0, 0), pt(30, 20), mm(4)), 600 - (4-math.Pi)*16},
		"slot":                 {draw.Rounded(pt(0, 0), pt(30, 20), mm(10)), 200 + 100*math.Pi},
		"rounded far too much": {draw.Rounded(pt(0, 0), pt(30, 20), mm(99)), 200 + 100*math.Pi},
		"disc":                 {draw.Rounded(pt(0, 0), pt(20, 20), mm(10)), 100 * math.Pi},
		"not rounded":          {draw.Rounded(pt(0, 0), pt(30, 20), 0), 600},
	} {
		if got := enclosed(c.path); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s encloses %g mm², want %g", name, got, c.want)
		}
	}
}

func TestNoEdgeOfARoundedRectangleIsEmpty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := length.Length(rapid.Int64Range(1, 50).Draw(t, "w")), length.Length(rapid.Int64Range(1, 50).Draw(t, "h"))
		p := draw.Rounded(draw.Point{}, draw.Point{X: w, Y: h}, length.Length(rapid.Int64Range(-1, 60).Draw(t, "r")))
		for i, v := range p {
			if v.Point == p[(i+1)%len(p)].Point {
				t.Errorf("edge %d of %v has no length", i, p)
			}
		}
	})
}

func TestBoundsHoldArcsWhereTheyTurnBack(t *testing.T) {
	for name, c := range map[string]struct {
		mark draw.Mark
		want draw.Rect
	}{
		"line":             {draw.Line{A: pt(3, -1), B: pt(1, 4)}, draw.Rect{Min: pt(1, -1), Max: pt(3, 4)}},
		"whole circle":     {draw.Arc{Centre: pt(5, 5), Radius: mm(2), From: 77, Sweep: 360}, draw.Rect{Min: pt(3, 3), Max: pt(7, 7)}},
		"upper half":       {draw.Arc{Centre: pt(0, 0), Radius: mm(2), From: 0, Sweep: 180}, draw.Rect{Min: pt(-2, 0), Max: pt(2, 2)}},
		"over the start":   {draw.Arc{Centre: pt(0, 0), Radius: mm(2), From: 270, Sweep: 180}, draw.Rect{Min: pt(0, -2), Max: pt(2, 2)}},
		"circle as a path": {draw.Area{Outer: draw.Circle(pt(5, 5), mm(2))}, draw.Rect{Min: pt(3, 3), Max: pt(7, 7)}},
		"turned inwards": {
			draw.Area{Outer: draw.Path{{Point: pt(0, 0)}, {Point: pt(10, 0), Bulge: -0.5}, {Point: pt(10, 10)}, {Point: pt(0, 10)}}},
			draw.Rect{Min: pt(0, 0), Max: pt(10, 10)},
		},
	} {
		d := draw.Drawing{Per: 3, Marks: []draw.Mark{c.mark}}
		if got := d.Bounds(); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	if got := (&draw.Drawing{}).Bounds(); got != (draw.Rect{}) {
		t.Errorf("nothing has the bounds %v", got)
	}
}
