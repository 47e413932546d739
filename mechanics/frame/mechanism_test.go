package frame_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"rodwright/mechanics/frame"
)

func TestAMechanismIsNamedByNodeAndDirection(t *testing.T) {
	hinges := func(f frame.Frame) frame.Frame {
		for i := range f.Members {
			f.Members[i].Start.Springs = frame.Springs{Twist: frame.Rigid}
			f.Members[i].End.Springs = frame.Springs{Twist: frame.Rigid}
		}
		return f
	}
	slanting := frame.Frame{ // two hinged sticks in one slanting line: the joint between them is loose across it
		Nodes:   []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("joint", 300, 0, 400, [6]float64{0, frame.Rigid}), node("b", 600, 0, 800, frame.Clamped)},
		Members: []frame.Member{rigid("lower", "a", "joint"), rigid("upper", "joint", "b")},
	}
	rolling := frame.Frame{
		Nodes:   []frame.Node{node("a", 0, 0, 0, frame.Pinned), node("b", 900, 0, 0, frame.Pinned)},
		Members: []frame.Member{rigid("beam", "a", "b")},
	}
	loosePanel := roof(frame.Vec{})
	for i := range loosePanel.Members {
		loosePanel.Members[i].Start.Springs = frame.Springs{Twist: frame.Rigid}
	}
	for _, c := range []struct {
		name  string
		frame frame.Frame
		node  string
		way   frame.Freedom
		along frame.Vec
	}{
		{"a portal of hinges", hinges(portal(hingedFoot, frame.Stiff)), "left", frame.AlongX, frame.Vec{1, 0, 0}},
		{"two hinged sticks in a slanting line", hinges(slanting), "joint", frame.AlongX, frame.Vec{0.8, 0, -0.6}},
		{"a beam that rolls", rolling, "a", frame.AboutX, frame.Vec{1, 0, 0}},
		{"a post that falls over", frame.Frame{
			Nodes:   []frame.Node{node("foot", 0, 0, 0, hingedFoot), node("head", 0, 0, 700)},
			Members: []frame.Member{rigid("post", "foot", "head")},
		}, "head", frame.AlongX, frame.Vec{1, 0, 0}},
		{"a node of its own", frame.Frame{Nodes: []frame.Node{node("alone", 1, 2, 3, [6]float64{frame.Rigid, frame.Rigid})}}, "alone", frame.AlongZ, frame.Vec{0, 0, 1}},
	} {
		_, err := frame.New(c.frame)
		var m *frame.Mechanism
		if !errors.As(err, &m) {
			t.Errorf("%s: got %v, want a mechanism", c.name, err)
			continue
		}
		off := m.Direction[0]*c.along[0] + m.Direction[1]*c.along[1] + m.Direction[2]*c.along[2]
		if m.Node != c.node || m.Freedom != c.way || math.Abs(off) < 1-1e-6 {
			t.Errorf("%s: %v, direction %v; want %s %s %v", c.name, err, m.Direction, c.node, c.way, c.along)
		}
	}
	_, err := frame.New(loosePanel)
	var m *frame.Mechanism
	if !errors.As(err, &m) || !strings.HasPrefix(m.Node, "head") {
		t.Errorf("a panel on hinged posts: %v", err)
	}
	free := stool()
	for i := range free.Nodes {
		free.Nodes[i].Hold[0], free.Nodes[i].Hold[1] = 0, 0
	}
	if _, err = frame.New(free); !errors.As(err, &m) || m.Freedom == frame.AlongZ {
		t.Errorf("a stool on ice: %v", err)
	}
	t.Log(err)
}

func TestANodeOfHingesBearsNoMoment(t *testing.T) {
	// Two hinged bars at right angles between walls: a truss. A force is borne, a moment by nothing.
	f := frame.Frame{
		Nodes: []frame.Node{
			node("wall x", -300, 0, 0, frame.Clamped), node("wall y", 0, -300, 0, frame.Clamped), node("wall z", 0, 0, -300, frame.Clamped), node("joint", 0, 0, 0),
		},
	}
	for _, w := range []string{"wall x", "wall y", "wall z"} {
		m := rigid(w, w, "joint")
		m.End.Springs = frame.Springs{}
		f.Members = append(f.Members, m)
	}
	f.Members[0].Start.Springs = frame.Springs{}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "joint", Force: frame.Vec{100, 0, 0}}}})
	near(t, "push in the bar", -strain(t, a, "wall x").Axial*stick.Area, -100)
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	_, err = m.Solve(frame.Case{Name: "turned", Pushes: []frame.Push{{Node: "joint", Moment: frame.Vec{0, 0, 5}}}})
	var loose *frame.Mechanism
	if !errors.As(err, &loose) || loose.Node != "joint" || loose.Freedom != frame.AboutZ || loose.Case != "turned" {
		t.Errorf("got %v", err)
	}
}

func TestWhatIsNoFrameIsRefusedWithItsPlace(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		change func(*frame.Frame)
		want   string
	}{
		{func(f *frame.Frame) { f.Nodes = nil }, "nodes"},
		{func(f *frame.Frame) { f.Nodes[1].Name = "left foot" }, `"left foot"`},
		{func(f *frame.Frame) { f.Nodes[1].At = f.Nodes[0].At }, `"left post" from "left foot" to "left" is 0 mm long`},
		{func(f *frame.Frame) { f.Nodes[1].At[2] = nan }, `node "left"`},
		{func(f *frame.Frame) { f.Nodes[1].Hold[2] = -5 }, `node "left" holds -5 along z`},
		{func(f *frame.Frame) { f.Nodes[1].Gap = 2 }, `node "left" has a gap`},
		{func(f *frame.Frame) { f.Nodes[1].Floor = true }, `node "left" stands on a floor that does not push`},
		{func(f *frame.Frame) { f.Members[1].From = "nowhere" }, `member "beam"`},
		{func(f *frame.Frame) { f.Members[1].Up = frame.Vec{2, 0, 0} }, `member "beam" has up`},
		{func(f *frame.Frame) { f.Members[1].Section.Area = 0 }, `member "beam": the area is 0`},
		{func(f *frame.Frame) { f.Members[1].Section.J = nan }, `member "beam": the torsion constant`},
		{func(f *frame.Frame) { f.Members[1].Section.E = math.Inf(1) }, `member "beam": the modulus`},
		{func(f *frame.Frame) { f.Members[1].End.Springs.Z = -1 }, `member "beam": the end springs -1 about its own z`},
		{func(f *frame.Frame) { f.Members[1].Start.RootY = nan }, `the root moduli at its start`},
		{func(f *frame.Frame) {
			f.Panels = []frame.Panel{{Name: "top", Nodes: []string{"left"}, Normal: frame.Vec{0, 0, 1}}}
		}, `"top", binds 1`},
		{func(f *frame.Frame) {
			f.Panels = []frame.Panel{{Name: "top", Nodes: []string{"left", "left foot"}, Normal: frame.Vec{0, 0, 1}}}
		}, `off the plane`},
		{func(f *frame.Frame) {
			f.Panels = []frame.Panel{{Name: "top", Nodes: []string{"left", "x"}, Normal: frame.Vec{0, 0, 1}}}
		}, `binds "x"`},
		{func(f *frame.Frame) { f.Panels = []frame.Panel{{Name: "top", Nodes: []string{"left", "right"}}} }, `no direction`},
	} {
		f := portal(frame.Clamped, frame.Stiff)
		c.change(&f)
		if _, err := frame.New(f); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
	m, err := frame.New(portal(frame.Clamped, frame.Stiff))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []frame.Case{
		{Pushes: []frame.Push{{Node: "x"}}},
		{Pushes: []frame.Push{{Node: "left", Force: frame.Vec{nan}}}},
		{Points: []frame.Point{{Member: "beam", At: 1201}}},
		{Points: []frame.Point{{Member: "x"}}},
		{Evens: []frame.Even{{Member: "beam", From: 500, To: 400}}},
		{Evens: []frame.Even{{Member: "beam", PerMM: frame.Vec{math.Inf(1)}}}},
		{Shifts: []frame.Shift{{Node: "left", Freedom: frame.AlongX, By: 1}}},
		{Shifts: []frame.Shift{{Node: "left foot", Freedom: 7, By: 1}}},
	} {
		if _, err := m.Solve(c); err == nil {
			t.Errorf("%+v was taken", c)
		}
	}
}

func TestAShiftedFootPullsTheFrameAlong(t *testing.T) {
	// Roark Table 8.1 (from memory): a beam held at both ends, one end raised by d: 12EI d/L³ at both ends,
	// moments 6EI d/L². L = 1000, EI = 2e9, d = 5: 120 N, 60000 N·mm. Raised alike, nothing is strained.
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("b", 1000, 0, 0, frame.Clamped), node("tip", 1100, 0, 0)},
		Members: []frame.Member{rigid("ab", "a", "b"), rigid("over", "b", "tip")}}
	a := solve(t, f, frame.Case{Shifts: []frame.Shift{{Node: "b", Freedom: frame.AlongZ, By: 5}}})
	b, _ := a.Node("b")
	near(t, "force", b.Push[2], 120)
	near(t, "moment", math.Abs(strain(t, a, "ab").Start[4]), 60000)
	a = solve(t, f, frame.Case{Shifts: []frame.Shift{{Node: "a", Freedom: frame.AlongZ, By: 5}, {Node: "b", Freedom: frame.AlongZ, By: 5}}})
	near(t, "all rise", move(t, a, "tip")[2], 5)
	half := frame.Combine("half", frame.Term{By: 0.5, Case: frame.Case{Shifts: []frame.Shift{{Node: "b", Freedom: frame.AlongZ, By: 5}}}})
	b, _ = ptr(solve(t, f, half)).Node("b")
	near(t, "half as much", b.Push[2], 60)
	within(t, "nothing strained", strain(t, a, "ab").Bending, 0, 1e-9)
}

func TestATwistThatNothingBearsIsRefusedAboutItsOwnAxis(t *testing.T) {
	// A slanting arm along (3, 4, 0) hinged against twist at its tip: a moment about it turns nothing but the
	// tip itself, one across it bends the arm: slope M L/EI = 1e5·500/2e9 = 0.025 about own y = z × x = (−4, 3, 0)/5.
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 300, 400, 0)}, Members: []frame.Member{rigid("arm", "wall", "tip")}}
	f.Members[0].End.Springs.Twist = 0
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	a, err := m.Solve(frame.Case{Pushes: []frame.Push{{Node: "tip", Moment: frame.Vec{-8e4, 6e4, 0}}}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "about x", move(t, a[0], "tip")[3], -0.02)
	near(t, "about y", move(t, a[0], "tip")[4], 0.015)
	_, err = m.Solve(frame.Case{Pushes: []frame.Push{{Node: "tip", Moment: frame.Vec{6e4, 8e4, 0}}}})
	var loose *frame.Mechanism
	if !errors.As(err, &loose) || loose.Node != "tip" || loose.Freedom != frame.AboutY || math.Abs(loose.Direction[0]-0.6) > 1e-6 {
		t.Errorf("got %v", err)
	}
}
