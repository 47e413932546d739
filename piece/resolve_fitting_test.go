package piece

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/trade/pipe"
)

var (
	right = Dir{1, 0, 0}
	left  = Dir{-1, 0, 0}
	back  = Dir{0, 1, 0}
	front = Dir{0, -1, 0}
	up    = Dir{0, 0, 1}
	down  = Dir{0, 0, -1}
)

// meetings are the ways sticks can meet and the fitting for each. The shapes are those of ASME B16.3 and the
// side outlet fittings of the trade; which directions each serves is common practice, no source.
var meetings = []struct {
	name string
	dirs []Dir
	kind pipe.Kind // empty: none is made
}{
	{"two in line", []Dir{right, left}, pipe.Coupling},
	{"two square", []Dir{right, up}, pipe.Elbow90},
	{"two that bend by 45°", []Dir{up, {1, 0, -1}}, pipe.Elbow45},
	{"two that bend by 45° on the flat", []Dir{right, {-1, 1, 0}}, pipe.Elbow45},
	{"two that bend by 135°", []Dir{up, {1, 0, 1}}, ""},
	{"two slanting at 60°", []Dir{{1, 1, 0}, {1, 0, 1}}, ""},
	{"two slanting in line", []Dir{{1, 0, 1}, {-1, 0, -1}}, pipe.Coupling},
	{"two slanting square", []Dir{{1, 0, 1}, {1, 0, -1}}, pipe.Elbow90},
	{"two through the corners of a cube", []Dir{up, {1, 1, -1}}, ""},
	{"three flat", []Dir{right, up, down}, pipe.Tee},
	{"three flat, the branch slanting in plan", []Dir{{1, 1, 0}, up, down}, pipe.Tee},
	{"three with a slanting branch", []Dir{{1, 0, 1}, up, down}, ""},
	{"three each square to the others", []Dir{right, back, up}, pipe.SideElbow},
	{"three with two at 135°", []Dir{right, {-1, 1, 0}, up}, ""},
	{"four in two lines", []Dir{right, left, up, down}, pipe.Cross},
	{"four in two lines, level", []Dir{right, left, back, front}, pipe.Cross},
	{"four in two slanting lines", []Dir{right, left, {0, 1, 1}, {0, -1, -1}}, pipe.Cross},
	{"four, a tee and one square", []Dir{right, back, up, down}, pipe.SideTee},
	{"four, a tee and one at 45°", []Dir{right, {1, 1, 0}, up, down}, ""},
	{"four of which none are in line", []Dir{right, back, up, {-1, -1, 0}}, ""},
	{"five", []Dir{right, left, back, up, down}, ""},
	{"six", []Dir{right, left, back, front, up, down}, ""},
	{"one", []Dir{right}, ""},
}

func TestFittingForEveryMeeting(t *testing.T) {
	for _, m := range meetings {
		if got, ok := FittingFor(m.dirs); got != m.kind || ok != (m.kind != "") {
			t.Errorf("%s: %q %v, want %q", m.name, got, ok, m.kind)
		}
	}
}

// turned returns the direction with its axes taken in another order and some of them reversed.
func (d Dir) turned(order [3]int, flip [3]bool) Dir {
	from, out := [3]int8{d.X, d.Y, d.Z}, [3]int8{}
	for i, k := range order {
		if out[i] = from[k]; flip[i] {
			out[i] = -out[i]
		}
	}
	return Dir{out[0], out[1], out[2]}
}

// A fitting can be turned in the hand: the same meeting in another direction, or read in another order, needs
// the same one.
func TestFittingDoesNotDependOnHowItIsTurned(t *testing.T) {
	orders := [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(meetings).Draw(t, "meeting")
		order := rapid.SampledFrom(orders).Draw(t, "order")
		var flip [3]bool
		for i := range flip {
			flip[i] = rapid.Bool().Draw(t, "flip")
		}
		dirs := rapid.Permutation(m.dirs).Draw(t, "dirs")
		turned := make([]Dir, len(dirs))
		for i, d := range dirs {
			turned[i] = d.turned(order, flip)
		}
		if got, _ := FittingFor(turned); got != m.kind {
			t.Fatalf("%s as %v: %q, want %q", m.name, turned, got, m.kind)
		}
	})
}

func TestMeetingTakenApart(t *testing.T) {
	for _, c := range []struct {
		name  string
		dirs  []Dir
		line  Dir
		kinds [2]pipe.Kind
	}{
		{"five: a cross and a tee", []Dir{right, left, back, up, down}, up, [2]pipe.Kind{pipe.Cross, pipe.Tee}},
		{"six: two crosses", []Dir{right, left, back, front, up, down}, up, [2]pipe.Kind{pipe.Cross, pipe.Cross}},
		{"five level and up: on a level line", []Dir{right, left, back, front, up}, right, [2]pipe.Kind{pipe.Cross, pipe.Tee}},
	} {
		p, ok := takeApart(c.dirs)
		if !ok || p.line != c.line || p.kinds != c.kinds {
			t.Errorf("%s: %v %+v", c.name, ok, p)
		}
		for _, d := range p.rest {
			if slices.Contains(p.first, d) {
				t.Errorf("%s: %v is at both", c.name, d)
			}
		}
	}
	if _, ok := takeApart([]Dir{right, back, {1, 1, 1}}); ok {
		t.Error("a meeting without a line was taken apart")
	}
}

func TestDirectionsInOrderAndInWords(t *testing.T) {
	want := []Dir{right, {1, 1, 0}, {1, 0, -1}, left, back, front, up, down}
	got := slices.Clone(want)
	slices.Reverse(got)
	slices.SortFunc(got, Dir.compare)
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if w := (Dir{-1, 0, 1}).String(); w != "left-up" {
		t.Errorf("%q", w)
	}
}
