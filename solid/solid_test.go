package solid

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

const in = length.Inch

// vec gives a point in inches.
func vec(x, y, z float64) Vec {
	return Vec{length.FromInches(x), length.FromInches(y), length.FromInches(z)}
}

func box(x0, y0, z0, x1, y1, z1 float64) Box { return Box{vec(x0, y0, z0), vec(x1, y1, z1)} }

// bar gives a bar of 1.05 in, the outside diameter of 3/4 pipe (ASME B36.10M).
func bar(ax, ay, az, bx, by, bz float64) Cylinder {
	return Cylinder{vec(ax, ay, az), vec(bx, by, bz), length.FromInches(0.525)}
}

// board is 20 × 10 in, 1 in thick, its underside at 0, with the given openings.
func board(openings ...Opening) Slab { return Slab{vec(0, 0, 0), vec(20, 10, 1), openings} }

// open gives an opening in inches.
func open(x0, y0, x1, y1, radius, depth float64) Opening {
	f := length.FromInches
	return Opening{[2]length.Length{f(x0), f(y0)}, [2]length.Length{f(x1), f(y1)}, f(radius), f(depth)}
}

// The depths are worked out by hand from the drawings; common practice, no source.
func TestOverlapDepth(t *testing.T) {
	hole := open(4, 4, 6, 6, 1, 0)
	notch := open(8, 7, 10, 11, 0.25, 0)
	pocket := open(12, 4, 15, 6, 0, 0.25)
	for _, c := range []struct {
		name  string
		a, b  Shape
		depth float64 // inches; 0 is none
	}{
		{"boxes a quarter inch into each other", box(0, 0, 0, 2, 2, 2), box(1.75, 0, 0, 4, 2, 2), 0.25},
		{"boxes face to face", box(0, 0, 0, 2, 2, 2), box(2, 0, 0, 4, 2, 2), 0},
		{"boxes apart", box(0, 0, 0, 2, 2, 2), box(3, 3, 3, 4, 4, 4), 0},
		{"one box in another", box(0, 0, 0, 9, 9, 9), box(4, 4, 4, 5, 6, 7), 1},
		{"crossing bars whose axes meet", bar(-5, 0, 0, 5, 0, 0), bar(0, -5, 0, 0, 5, 0), 1.05},
		{"crossing bars an inch apart", bar(-5, 0, 0, 5, 0, 0), bar(0, -5, 1, 0, 5, 1), 0.05},
		{"crossing bars that touch", bar(-5, 0, 0, 5, 0, 0), bar(0, -5, 1.05, 0, 5, 1.05), 0},
		{"side by side bars that touch", bar(0, 0, 0, 0, 0, 9), bar(1.05, 0, 0, 1.05, 0, 9), 0},
		{"side by side bars in each other", bar(0, 0, 0, 0, 0, 9), bar(1, 0, 0, 1, 0, 9), 0.05},
		{"bars end to end", bar(0, 0, 0, 0, 0, 9), bar(0, 0, 9, 0, 0, 12), 0},
		{"bars with their ends in each other", bar(0, 0, 0, 0, 0, 9), bar(0, 0, 8.9, 0, 0, 12), 0.1},
		{"a bar that ends at another's skin", bar(-5, 0, 0, 5, 0, 0), bar(0, 0.525, 0, 0, 9, 0), 0},
		{"a bar that ends inside another", bar(-5, 0, 0, 5, 0, 0), bar(0, 0.5, 0, 0, 9, 0), 0.025},
		{"a bar lying on a board", board(), bar(-5, 5, 1.525, 25, 5, 1.525), 0},
		{"a bar let into a board", board(), bar(-5, 5, 1.425, 25, 5, 1.425), 0.1},
		{"a bar through a board", board(), bar(3, 3, -4, 3, 3, 4), 1},
		{"a bar at a board's edge", board(), bar(3, -0.525, -4, 3, -0.525, 4), 0},
		{"a bar into a board's edge", board(), bar(3, -0.425, -4, 3, -0.425, 4), 0.1},
		{"a bar through a hole", board(hole), bar(5, 5, -4, 5, 5, 4), 0},
		{"a bar that fills a hole", board(open(4.475, 4.475, 5.525, 5.525, 1, 0)), bar(5, 5, -4, 5, 5, 4), 0},
		{"a bar off the middle of a hole", board(hole), bar(5.575, 5, -4, 5.575, 5, 4), 0.1},
		{"a bar in a notch", board(notch), bar(9, 8, -4, 9, 8, 4), 0},
		{"a bar into a notch's side", board(notch), bar(8.425, 8, -4, 8.425, 8, 4), 0.1},
		{"a bar lying in a pocket", board(pocket), bar(12.5, 5, -0.275, 14.5, 5, -0.275), 0},
		{"a bar up through a pocket's roof", board(pocket), bar(13, 5, -4, 13, 5, 0.375), 0.125},
		{"a bar across from hole to notch", board(open(2, 4, 6, 6, 0, 0), open(5, 4, 9, 6, 0, 0)), bar(2.5, 5, 0.5, 8.5, 5, 0.5), 0},
		{"a box in a cut-out", board(open(2, 2, 8, 8, 0, 0)), box(2, 2, -1, 8, 8, 3), 0},
		{"a board through another's cut-out", board(open(2, 2, 8, 8, 0, 0)), Slab{vec(3, 3, -1), vec(7, 7, 3), []Opening{open(4, 4, 5, 5, 0, 0)}}, 0},
		{"notched boards into each other", board(notch), Slab{vec(0, 9.9, 0), vec(20, 19.9, 1), []Opening{hole}}, 0.1},
		{"a diagonal bar over a board", board(), bar(5, 5, 2, 9, 5, 6), 0},
		{"a diagonal bar into a board", board(), bar(5, 5, -4, 9, 5, 0), 0.371},
		{"nothing of no length", board(), bar(5, 5, 0.5, 5, 5, 0.5), 0},
		{"nothing of no radius", board(), Cylinder{vec(5, 5, -1), vec(5, 5, 2), 0}, 0},
	} {
		m, ok := Overlap(c.a, c.b)
		if ok != (c.depth > 0) || m.Depth.Inches() < c.depth-0.003 || m.Depth.Inches() > c.depth+0.003 {
			t.Errorf("%s: depth %.4f in (%v), want %.3f", c.name, m.Depth.Inches(), ok, c.depth)
		}
		if ok && (!c.a.Contains(m.At) || !c.b.Contains(m.At)) {
			t.Errorf("%s: %v is not in both", c.name, m.At)
		}
	}
}

func TestContains(t *testing.T) {
	for _, c := range []struct {
		name string
		s    Shape
		p    Vec
		want bool
	}{
		{"box inside", box(0, 0, 0, 1, 1, 1), vec(0.5, 0.5, 0.5), true},
		{"box skin", box(0, 0, 0, 1, 1, 1), vec(1, 1, 1), true},
		{"box outside", box(0, 0, 0, 1, 1, 1), vec(1, 1, 1.001), false},
		{"bar skin", bar(0, 0, 0, 0, 0, 4), vec(0.525, 0, 4), true},
		{"bar beyond its end", bar(0, 0, 0, 0, 0, 4), vec(0, 0, 4.001), false},
		{"bar beside", bar(0, 0, 0, 0, 0, 4), vec(0.4, 0.4, 2), false},
		{"bar on the slant", bar(0, 0, 0, 4, 0, 4), vec(2, 0.5, 2), true},
		{"wood", board(open(4, 4, 6, 6, 1, 0)), vec(1, 1, 0.5), true},
		{"hole", board(open(4, 4, 6, 6, 1, 0)), vec(5, 5, 0.5), false},
		{"the corner a round hole leaves", board(open(4, 4, 6, 6, 1, 0)), vec(4.1, 4.1, 0.5), true},
		{"pocket", board(open(4, 4, 6, 6, 0, 0.5)), vec(5, 5, 0.25), false},
		{"above a pocket", board(open(4, 4, 6, 6, 0, 0.5)), vec(5, 5, 0.75), true},
		{"beside the board", board(), vec(5, 11, 0.5), false},
	} {
		if got := c.s.Contains(c.p); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

func TestBoundsOfBars(t *testing.T) {
	lo, hi := bar(0, 0, 0, 0, 0, 9).Bounds()
	if lo != vec(-0.525, -0.525, 0) || hi != vec(0.525, 0.525, 9) {
		t.Errorf("upright bar: %v to %v", lo, hi)
	}
	lo, hi = bar(0, 0, 0, 4, 0, 4).Bounds()
	reach := 0.525 * 0.70711
	for _, d := range []length.Length{lo.X + length.FromInches(reach), hi.Z - length.FromInches(4+reach), lo.Y + length.FromInches(0.525)} {
		if d.Abs() > 10*length.Micrometre {
			t.Errorf("slanting bar: %v to %v", lo, hi)
		}
	}
}

// axes are the directions a stick can run in.
func axes() []Vec {
	return []Vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 1, 0}, {1, 0, 1}, {0, 1, -1}, {-1, 1, 0}}
}

func aShape() *rapid.Generator[Shape] {
	return rapid.Custom(func(t *rapid.T) Shape {
		at := func() length.Length {
			return length.Length(rapid.IntRange(-40, 40).Draw(t, "quarter inches")) * in / 4
		}
		size := func() length.Length { return length.Length(rapid.IntRange(1, 40).Draw(t, "size")) * in / 4 }
		lo := Vec{at(), at(), at()}
		hi := Vec{lo.X + size(), lo.Y + size(), lo.Z + size()}
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 0:
			return Box{lo, hi}
		case 1:
			d, l := rapid.SampledFrom(axes()).Draw(t, "axis"), size()
			return Cylinder{lo, Vec{lo.X + d.X*l, lo.Y + d.Y*l, lo.Z + d.Z*l}, size() / 4}
		}
		s := Slab{Min: lo, Max: hi}
		for range rapid.IntRange(0, 3).Draw(t, "openings") {
			o := Opening{Min: [2]length.Length{lo.X + at()/4, lo.Y + at()/4}, Radius: size() / 8}
			o.Max = [2]length.Length{o.Min[0] + size()/2, o.Min[1] + size()/2}
			if rapid.Bool().Draw(t, "pocket") {
				o.Depth = size() / 4
			}
			s.Openings = append(s.Openings, o)
		}
		return s
	})
}

// P2: Overlap(a, b) and Overlap(b, a) say the same; and the shared point lies in both shapes.
func TestOverlapIsTheSameBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := aShape().Draw(t, "a"), aShape().Draw(t, "b")
		m, ok := Overlap(a, b)
		n, also := Overlap(b, a)
		if ok != also || (m.Depth-n.Depth).Abs() > Touch {
			t.Fatalf("%v %v, the other way %v %v", m, ok, n, also)
		}
		if ok && (Apart(a, b) || !near(a, m.At) || !near(b, m.At)) {
			t.Fatalf("%v is not in both", m.At)
		}
	})
}

// near reports whether p lies in the shape or within a few hundredths of a millimetre of its bounds, the
// roughness of a polygon for a circle.
func near(s Shape, p Vec) bool {
	const d = 50 * length.Micrometre
	for _, q := range []Vec{p, {p.X + d, p.Y, p.Z}, {p.X - d, p.Y, p.Z}, {p.X, p.Y + d, p.Z}, {p.X, p.Y - d, p.Z}, {p.X, p.Y, p.Z + d}, {p.X, p.Y, p.Z - d}} {
		if s.Contains(q) {
			return true
		}
	}
	return false
}

// P3: an overlap is no deeper than either shape is thick.
func TestDepthIsAtMostTheThickness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := aShape().Draw(t, "a"), aShape().Draw(t, "b")
		m, _ := Overlap(a, b)
		for _, s := range []Shape{a, b} {
			if c, ok := s.(Cylinder); ok && m.Depth > 2*c.Radius+Touch {
				t.Fatalf("depth %v in a bar of radius %v", m.Depth, c.Radius)
			}
			lo, hi := s.Bounds()
			if m.Depth > min(hi.X-lo.X, hi.Y-lo.Y, hi.Z-lo.Z)+Touch {
				t.Fatalf("depth %v in %v", m.Depth, s)
			}
		}
	})
}

// An opening takes wood away and never adds any: what overlaps the opened board overlaps the whole one.
func TestOpeningsOnlyRemove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := board()
		opened := board(open(3, 3, 6, 6, 0.5, 0), open(9, -1, 12, 4, 0.25, 0), open(11, 3, 16, 5, 0, 0.5))
		s := aShape().Draw(t, "s")
		if m, ok := Overlap(opened, s); ok {
			if n, also := Overlap(whole, s); !also {
				t.Fatalf("opened %v, whole %v %v", m, n, also)
			}
		}
	})
}

func ExampleOverlap() {
	rail := Cylinder{A: Vec{0, 0, 15 * in}, B: Vec{40 * in, 0, 15 * in}, Radius: in / 2}
	shelf := Slab{Min: Vec{0, -4 * in, 15*in + in/4}, Max: Vec{40 * in, 4 * in, 17 * in}}
	m, ok := Overlap(rail, shelf)
	fmt.Println(ok, length.Sixteenth.Text(m.Depth))
	// Output: true 1/4 in
}

func BenchmarkOverlapOfBarAndNotchedBoard(b *testing.B) {
	s, c := board(open(8, 7, 10, 11, 0.25, 0), open(4, 4, 6, 6, 1, 0)), bar(8.4, 8, -4, 8.4, 8, 4)
	for b.Loop() {
		Overlap(s, c)
	}
}
