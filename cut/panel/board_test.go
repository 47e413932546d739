package panel

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

const mm = length.Millimetre

// ripping is a model that only knows how boards are ripped.
func ripping(kerf, jointing, least, most length.Length) *model {
	return &model{p: &Problem{Kerf: kerf, Jointing: jointing, Strip: cut.Span{Least: least, Most: most}}}
}

// Worked by hand with a saw cut of 2, jointing of 1 at each edge, strips from 40 to 90.
func TestWhatARangeYields(t *testing.T) {
	m := ripping(2*mm, mm, 40*mm, 90*mm)
	for _, c := range []struct{ width, strips, net length.Length }{
		{39, 0, 0},    // narrower than the least strip
		{40, 1, 38},   // one strip, two joints
		{90, 1, 88},   // the widest strip
		{91, 1, 88},   // two would be 44.5 each and net 85; one of 90 nets more
		{92, 1, 88},   // two net 86
		{95, 2, 89},   // two of 46.5
		{182, 2, 176}, // two of 90 and the saw cut
		{190, 3, 180}, // three of 62
	} {
		if n, net := m.strips(c.width * mm); n != c.strips || net != c.net*mm {
			t.Errorf("a range of %d yields %d strips, %d net; want %d, %d", c.width, n, net/mm, c.strips, c.net)
		}
	}
}

func TestNoOtherNumberOfStripsYieldsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, least, most int) length.Length {
			return length.Length(rapid.IntRange(least, most).Draw(t, name))
		}
		m := ripping(draw("kerf", 0, 4), draw("jointing", 0, 3), draw("least", 0, 9), 0)
		if rapid.Bool().Draw(t, "limited") {
			m.p.Strip.Most = max(m.p.Strip.Least, m.p.Joint()+1) + draw("most", 0, 12)
		}
		width := draw("width", 0, 80)
		best := length.Length(0)
		for n := length.Length(1); n <= 80; n++ {
			if r := m.ripped(width, n); r >= n*max(m.p.Strip.Least, m.p.Joint()+1) {
				best = max(best, r-n*m.p.Joint())
			}
		}
		if _, net := m.strips(width); net != best {
			t.Fatalf("a range of %d yields %d, possible are %d", width, net, best)
		}
	})
}

func TestPlacesAreReachedFromTheEndsOfDefects(t *testing.T) {
	got, complete := positions(100, []length.Length{0, 30, 120, -1}, []length.Length{40, 25, 40}, 50)
	want := []length.Length{0, 25, 30, 40, 50, 55, 65, 70, 75, 80, 90, 95}
	if !complete || !slices.Equal(got, want) {
		t.Errorf("got %v, %v", got, complete)
	}
	if got, complete = positions(100, []length.Length{0, 30}, []length.Length{1}, 10); complete || len(got) != 10 || !slices.IsSorted(got) {
		t.Errorf("with a limit: %v, %v", got, complete)
	}
}

func TestAStripKeepsItsEdgesOffVoids(t *testing.T) {
	allowed := cut.Span{Least: 10, Most: 40}
	for _, c := range []struct {
		name       string
		y, w       length.Length
		at, width  length.Length
		voidA, toA length.Length
	}{
		{"far from it", 0, 20, 0, 20, 50, 60},
		{"wholly within", 0, 30, 0, 30, 10, 20},
		{"across the far edge, it grows", 0, 30, 0, 35, 25, 35},
		{"too wide to grow, it ends before", 0, 30, 0, 25, 25, 50},
		{"nothing fits, on behind", 0, 30, 5, 0, 5, 60},
		{"begun within, on behind", 8, 30, 12, 0, 5, 12},
	} {
		at, w := offVoids([]cut.Stretch{{From: c.voidA, To: c.toA}}, c.y, c.w, 100, allowed)
		if at != c.at || w != c.width {
			t.Errorf("%s: at %d, width %d; want %d, %d", c.name, at, w, c.at, c.width)
		}
	}
}

func TestRingsAlternateAsFarAsTheyCan(t *testing.T) {
	p := &Problem{Boards: []Board{{Tag: "u", Ring: cut.RingUp}, {Tag: "n"}, {Tag: "f", Ring: cut.RingUp, Defects: []cut.Defect{
		{Kind: cut.Knot, Face: cut.BackFace, Rect: cut.Rect{Length: 100, Width: 100}},
	}}}}
	m := &model{p: p}
	for k := range p.Boards {
		m.boards = append(m.boards, &board{Board: p.Boards[k]})
	}
	kd := kind{length: 50, show: cut.Clear}
	of := func(boards ...int) (rings []cut.Ring) {
		var strips []strip
		for _, b := range boards {
			strips = append(strips, strip{seg: segment{board: b}, width: 10})
		}
		for _, s := range m.alternate(kd, strips) {
			rings = append(rings, s.Ring)
		}
		return rings
	}
	up, down := cut.RingUp, cut.RingDown
	for _, c := range []struct {
		name   string
		boards []int
		want   []cut.Ring
	}{
		{"boards good on both faces", []int{0, 0, 0}, []cut.Ring{up, down, up}},
		{"two fixed ones between others", []int{2, 0, 2}, []cut.Ring{up, down, up}},
		{"only fixed ones", []int{2, 2}, []cut.Ring{up, up}},
		{"rings nobody has looked at", []int{1, 1}, []cut.Ring{cut.NoRing, cut.NoRing}},
	} {
		if got := of(c.boards...); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// By hand: a board of 100 without defects, segments of 30 with a saw cut of 2, net width 10, price 1 for a
// unit: before 32 one segment, before 64 two, at the end three, for the price less half the tail's share.
func TestABoardOffersWhatItYieldsBeforeEachTail(t *testing.T) {
	p := &Problem{
		Kerf: 2, Salvage: 0.5, MinTail: 30, Strip: cut.Span{Least: 10},
		Boards: []Board{{Tag: "B1", Length: 100, Width: 10, Price: cut.Priced(40)}},
		Panels: []Panel{{Tag: "A1", Length: 30, Width: 30, Count: 1, Show: cut.Clear}},
	}
	l := newBound(newModel(p), nil)
	got := l.offers(l.boards[0], []float64{1})
	want := []struct{ hold, price float64 }{{10, 40 - 0.5*40*0.68}, {20, 40 - 0.5*40*0.36}, {30, 40}}
	if len(got) != len(want) {
		t.Fatalf("offers %v", got)
	}
	for i, w := range want {
		if got[i].Hold != w.hold || math.Abs(got[i].Price-w.price) > 1e-12 {
			t.Errorf("offer %d: %v, want %v", i, got[i], w)
		}
	}
	pr := newProgram(l, cut.NewBudget(context.Background(), cut.Limits{}))
	pr.price[0] = 2
	if v, _ := pr.lagrange(pr.all(), false); v != 2*30-(3*2*10-40) {
		t.Errorf("at a price of 2 the bound is %v, want 40", v)
	}
}
