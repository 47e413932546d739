package draw_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

// pad keeps what is painted on it.
type pad struct {
	paths  [][]draw.Segment
	inks   []draw.Ink
	labels []draw.Label
	order  []string
}

func (p *pad) Draw(path []draw.Segment, ink draw.Ink) {
	p.paths, p.inks = append(p.paths, path), append(p.inks, ink)
	p.order = append(p.order, fmt.Sprintf("%s %v %d", ink.Pen, ink.Stroked, ink.Shade))
}

func (p *pad) Write(l draw.Label) {
	p.labels, p.order = append(p.labels, l), append(p.order, l.Words)
}

func paint(per int64, marks ...draw.Mark) *pad {
	p := &pad{}
	draw.Paint(&draw.Drawing{ID: "a", Per: per, Marks: marks}, p)
	return p
}

// along returns places on a path's curves and lines.
func along(path []draw.Segment) (out []draw.XY) {
	var at draw.XY
	for _, s := range path {
		switch s.Op {
		case draw.Move, draw.LineTo:
			at = s.P[0]
			out = append(out, at)
		case draw.CurveTo:
			for k := 1; k <= 32; k++ {
				t := float64(k) / 32
				u := 1 - t
				f := func(a, b, c, d float64) float64 {
					return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d
				}
				out = append(out, draw.XY{X: f(at.X, s.P[0].X, s.P[1].X, s.P[2].X), Y: f(at.Y, s.P[0].Y, s.P[1].Y, s.P[2].Y)})
			}
			at = s.P[2]
		}
	}
	return out
}

func TestCurvesAreRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(-720, 720).Draw(t, "from")
		sweep := rapid.Float64Range(1, 360).Draw(t, "sweep")
		frame := draw.Area{Outer: draw.Rectangle(pt(-100, -100), pt(100, 100))}
		p := paint(2, frame, draw.Arc{Centre: pt(0, 0), Radius: mm(80), From: from, Sweep: sweep})
		for _, xy := range along(p.paths[1]) {
			// the centre lies at 50, 50 on paper, where the radius is 40
			if r := math.Hypot(xy.X-50, xy.Y-50); math.Abs(r-40) > 40*1e-4 {
				t.Errorf("%v is %g from the centre", xy, r)
			}
		}
		ends := along(p.paths[1])
		last := ends[len(ends)-1]
		to := (from + sweep) * math.Pi / 180
		if math.Hypot(last.X-50-40*math.Cos(to), last.Y-50-40*math.Sin(to)) > 1e-6 {
			t.Errorf("the arc ends at %v", last)
		}
	})
}

func TestBulgesAreThePartsOfCirclesTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// three places on a circle make two edges of a path; the third is straight
		a := rapid.Float64Range(0, 6).Draw(t, "from")
		one, two := rapid.Float64Range(0.1, 3).Draw(t, "one"), rapid.Float64Range(0.1, 3).Draw(t, "two")
		on := func(angle float64) draw.Point { return pt(50*math.Cos(angle), 50*math.Sin(angle)) }
		path := draw.Path{{Point: on(a), Bulge: math.Tan(one / 4)}, {Point: on(a + one), Bulge: math.Tan(two / 4)}, {Point: on(a + one + two)}}
		frame := draw.Area{Outer: draw.Rectangle(pt(-60, -60), pt(60, 60))}
		for _, xy := range along(paint(1, frame, draw.Area{Outer: path}).paths[1]) {
			if r := math.Hypot(xy.X-60, xy.Y-60); math.Abs(r-50) > 50*1e-4 {
				t.Errorf("%v is %g from the centre", xy, r)
			}
		}
	})
}

func TestPaperBeginsAtTheLowerLeft(t *testing.T) {
	d := &draw.Drawing{Per: 10, Marks: []draw.Mark{
		draw.Line{A: pt(-100, 50), B: pt(300, 250)},
		draw.Text{At: pt(100, 100), Words: "3/8 ⌀", Height: 3, Anchor: draw.Middle, Strong: true},
	}}
	p := &pad{}
	draw.Paint(d, p)
	if w, h := d.Size(); w != 40 || h != 20 {
		t.Errorf("%g by %g mm of paper, want 40 by 20", w, h)
	}
	if got := p.paths[0]; got[0].P[0] != (draw.XY{}) || got[1].P[0] != (draw.XY{X: 40, Y: 20}) {
		t.Errorf("the line is %v", got)
	}
	l := p.labels[0]
	if l.At != (draw.XY{X: 20, Y: 5}) || l.Words != "³⁄₈ Ø" || l.Size != 3 || !l.Strong {
		t.Errorf("the label is %+v", l)
	}
}

func TestWordsAreWrittenLastOnPaper(t *testing.T) {
	p := paint(1,
		draw.Text{Words: "a", Height: 3},
		draw.Line{Pen: draw.Hidden, B: pt(9, 9)},
		draw.Arc{Pen: draw.Hidden, Radius: mm(3), Sweep: 90},
		draw.Area{Pen: draw.Outline, Outer: draw.Rectangle(pt(0, 0), pt(1, 1)), Fill: draw.Steel},
		draw.Area{Pen: draw.Outline, Outer: draw.Rectangle(pt(0, 0), pt(1, 1))},
		draw.Area{Pen: draw.Ghost},
	)
	want := []string{"hidden true 0", "outline true 2", "outline true 0", "outline false 1", "a"}
	if fmt.Sprint(p.order) != fmt.Sprint(want) {
		t.Errorf("painted %q, want %q", p.order, want)
	}
}

func TestATextsBoxIsWhereItIsWritten(t *testing.T) {
	for _, c := range []struct {
		text draw.Text
		want draw.Rect
	}{
		// four figures of 0.6 of their size each (as the typeface's own table has them)
		{draw.Text{Words: "1234", Height: 10}, draw.Rect{Min: pt(0, -4.4), Max: pt(48, 16.8)}},
		{draw.Text{Words: "1234", Height: 10, Anchor: draw.Middle}, draw.Rect{Min: pt(-24, -4.4), Max: pt(24, 16.8)}},
		{draw.Text{Words: "1234", Height: 10, Anchor: draw.End}, draw.Rect{Min: pt(-48, -4.4), Max: pt(0, 16.8)}},
		{draw.Text{Words: "1234", Height: 10, Turned: true}, draw.Rect{Min: pt(-16.8, 0), Max: pt(4.4, 48)}},
	} {
		if got := c.text.Box(2); got != c.want {
			t.Errorf("%+v takes %v, want %v", c.text, got, c.want)
		}
	}
}

func TestATagHasALineToItsPart(t *testing.T) {
	d := draw.Drawing{Per: 1, Marks: []draw.Mark{draw.Tag{Words: "A1", At: pt(0, 0), Part: pt(20, 10)}}}
	flat := d.Flat()
	if l, ok := flat[0].(draw.Line); !ok || l.A != pt(0, 0) || l.B != pt(20, 10) {
		t.Errorf("no line to the part: %v", flat)
	}
	box := draw.Boxes(&d)[0]
	ring := flat[2].(draw.Area)
	for _, v := range ring.Outer {
		if (box.Min.X < v.X && v.X < box.Max.X) && (box.Min.Y < v.Y && v.Y < box.Max.Y) {
			t.Errorf("the ring runs through its words at %v", v)
		}
	}
	d.Marks = []draw.Mark{draw.Tag{Words: "A1", At: pt(0, 0), Part: pt(1, 1)}}
	if n := len(d.Flat()); n != 2 {
		t.Errorf("a tag on its part is a ring and words, got %d marks", n)
	}
}

func TestBoundsHoldEverythingPainted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.SampledFrom(edges).Draw(t, "edge")
		d := &draw.Drawing{Per: 10, Marks: draw.Dimensions(board, 10, someStyle(t), edge, 1, someChains(t, edge)...)}
		d.Marks = append(d.Marks, draw.Tag{Words: "A1, A2", At: pt(700, 70), Part: pt(500, 0)}, draw.Area{Outer: draw.Circle(pt(0, 0), mm(77)), Fill: draw.EndWood})
		b := d.Bounds()
		for _, box := range draw.Boxes(d) {
			if box.Min.X < b.Min.X || box.Min.Y < b.Min.Y || box.Max.X > b.Max.X || box.Max.Y > b.Max.Y {
				t.Errorf("words at %v stand outside %v", box, b)
			}
		}
		w, h := d.Size()
		p := &pad{}
		draw.Paint(d, p)
		const round = 1e-3 // of curves, mm of paper
		for _, path := range p.paths {
			for _, xy := range along(path) {
				if xy.X < -round || xy.Y < -round || xy.X > w+round || xy.Y > h+round {
					t.Errorf("%v is painted outside %g by %g", xy, w, h)
				}
			}
		}
	})
}

func ExampleDimensions() {
	st := draw.Style{Fineness: length.Sixteenth}
	shelf := draw.Rect{Max: draw.Point{X: 24 * length.Inch, Y: length.Inch}}
	chain := []draw.Station{{At: 0}, {At: 14*length.Inch + 3*length.Inch/8}, {At: 24 * length.Inch}}
	for _, m := range draw.Dimensions(shelf, 8, st, draw.Below, 1, chain) {
		d := m.(draw.Dimension)
		fmt.Println(d.Words)
	}
	// Output:
	// 14 3/8
	// 9 5/8
}
