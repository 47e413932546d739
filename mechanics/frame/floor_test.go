package frame_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"rodwright/mechanics/frame"
)

// onFloor is a beam of two spans of 500 on three floors; it may not roll or slide.
func onFloor() frame.Frame {
	f := frame.Frame{
		Nodes: []frame.Node{
			node("a", 0, 0, 0, nearRest), node("m", 500, 0, 0, farRest), node("b", 1000, 0, 0, farRest),
		},
		Members: []frame.Member{rigid("am", "a", "m"), rigid("mb", "m", "b")},
	}
	for i := range f.Nodes {
		f.Nodes[i].Floor = true
	}
	return f
}

func TestAFootThatWouldBePulledLiftsOff(t *testing.T) {
	// P = 320 in the middle of the first of two spans L = 500. Held down, the far rest pulls with 3/32 P = 30
	// (steel manual beam diagrams, continuous beam of two spans, from memory). On floors it lifts: the near
	// span is a beam on two rests, P/2 each, its end turns by P L²/16EI = 320·250000/3.2e10 = 0.0025, which
	// raises the far end by 0.0025·500 = 1.25 mm.
	load := frame.Case{Points: []frame.Point{{Member: "am", At: 250, Force: frame.Vec{0, 0, -320}}}}
	f := onFloor()
	for i := range f.Nodes {
		f.Nodes[i].Floor = false
	}
	held, _ := ptr(solve(t, f, load)).Node("b")
	near(t, "held down", held.Push[2], -30)

	a := solve(t, onFloor(), load)
	for name, want := range map[string]float64{"a": 160, "m": 160, "b": 0} {
		n, _ := a.Node(name)
		near(t, "push at "+name, n.Push[2], want)
	}
	b, _ := a.Node("b")
	near(t, "lift", b.Lift, 1.25)
	near(t, "the foot stands as high", b.Move[2], 1.25)
}

func ptr[T any](v T) *T { return &v }

func TestAShortFootTouchesWhenTheBeamHasSagged(t *testing.T) {
	// w = 1 on 1000 over a gap in the middle: free sag 5wL⁴/384EI = 6.510417; with a gap of 2.510417 the foot
	// takes 4 mm · 48EI/L³ = 4·96 = 384 N. With a gap of 7 it takes nothing.
	w := frame.Vec{0, 0, -1}
	load := frame.Case{Evens: []frame.Even{{Member: "am", PerMM: w}, {Member: "mb", PerMM: w}}}
	f := onFloor()
	f.Nodes[1].Gap = 5e12/7.68e11 - 4
	m, _ := ptr(solve(t, f, load)).Node("m")
	near(t, "middle foot", m.Push[2], 384)
	f.Nodes[1].Gap = 7
	m, _ = ptr(solve(t, f, load)).Node("m")
	near(t, "never touches", m.Push[2], 0)
	near(t, "what is left of the gap", m.Lift, 7-5e12/7.68e11)
}

func TestAFloorThatGivesCarriesAsASpring(t *testing.T) {
	// The middle floor gives 96 N/mm, as much as the beam (48EI/L³): it takes half of the 4 mm beyond its
	// gap, 192 N; the ends are stiff.
	w := frame.Vec{0, 0, -1}
	load := frame.Case{Evens: []frame.Even{{Member: "am", PerMM: w}, {Member: "mb", PerMM: w}}}
	f := onFloor()
	f.Nodes[1].Gap, f.Nodes[1].Hold[frame.AlongZ] = 5e12/7.68e11-4, 96
	m, _ := ptr(solve(t, f, load)).Node("m")
	near(t, "middle foot", m.Push[2], 192)
}

// stool is a frame of four posts 400 high on a square of 300, joined by rails at the top, on four floors. The
// feet don't slide.
func stool() frame.Frame {
	f := frame.Frame{}
	corners := []frame.Vec{{0, 0, 0}, {300, 0, 0}, {300, 300, 0}, {0, 300, 0}}
	for i, c := range corners {
		n := string(rune('1' + i))
		foot := node("foot "+n, c[0], c[1], 0, frame.Pinned)
		foot.Floor = true
		f.Nodes = append(f.Nodes, foot, node("top "+n, c[0], c[1], 400))
		f.Members = append(f.Members, rigid("post "+n, "foot "+n, "top "+n))
	}
	for i := range corners {
		a, b := string(rune('1'+i)), string(rune('1'+(i+1)%4))
		f.Members = append(f.Members, rigid("rail "+a, "top "+a, "top "+b))
	}
	return f
}

func TestAStoolPushedTooHardTips(t *testing.T) {
	// 100 N of weight in the middle keep it down against 100·150/400 = 37.5 N at the top (moments about the
	// far feet, by hand). 37 N leave it standing, 38 tip it over feet 2 and 3.
	weight := frame.Case{Name: "weight"}
	for _, n := range []string{"top 1", "top 2", "top 3", "top 4"} {
		weight.Pushes = append(weight.Pushes, frame.Push{Node: n, Force: frame.Vec{0, 0, -25}})
	}
	m, err := frame.New(stool())
	if err != nil {
		t.Fatal(err)
	}
	push := sideways("top 1", 1)
	answers, err := m.Solve(frame.Combine("37 N", frame.Term{By: 1, Case: weight}, frame.Term{By: 37, Case: push}))
	if err != nil {
		t.Fatal(err)
	}
	total := 0.0
	for _, n := range answers[0].Nodes {
		if n.Push[2] < 0 {
			t.Errorf("the floor pulls %s with %g N", n.Node, n.Push[2])
		}
		total += n.Push[2]
	}
	near(t, "weight on the floor", total, 100)

	_, err = m.Solve(frame.Combine("38 N", frame.Term{By: 1, Case: weight}, frame.Term{By: 38, Case: push}))
	var tips *frame.Tips
	if !errors.As(err, &tips) {
		t.Fatalf("38 N: got %v, want that it tips", err)
	}
	slices.Sort(tips.Over)
	if tips.Case != "38 N" || !slices.Equal(tips.Over, []string{"foot 2", "foot 3"}) || !strings.Contains(err.Error(), "tips over") {
		t.Errorf("38 N: %v", err)
	}
	_, err = m.Solve(frame.Combine("lifted", frame.Term{By: -1, Case: weight}))
	if !errors.As(err, &tips) || len(tips.Over) != 0 || len(tips.Rises) != 4 {
		t.Errorf("lifted: %v", err)
	}
}

func TestAStoolWithAShortLegRocksUnderALightLoad(t *testing.T) {
	// A gap of 1 mm under foot 1 and 100 N on top of foot 3's side: foot 1 stays off the floor, and by moments
	// about the line through feet 2 and 4 a load on top 3 is borne by foot 3 alone.
	f := stool()
	f.Nodes[0].Gap = 1
	load := frame.Case{Pushes: []frame.Push{{Node: "top 3", Force: frame.Vec{0, 0, -100}}}}
	a := solve(t, f, load)
	one, _ := a.Node("foot 1")
	three, _ := a.Node("foot 3")
	near(t, "foot 1", one.Push[2], 0)
	near(t, "foot 3", three.Push[2], 100)
	// On top of foot 1 the stool rocks over feet 2 and 4 until foot 1 stands, and foot 3 rises.
	a = solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "top 1", Force: frame.Vec{0, 0, -100}}}})
	one, _ = a.Node("foot 1")
	three, _ = a.Node("foot 3")
	near(t, "foot 1 stands", one.Push[2], 100)
	if one.Lift > 1e-9 || three.Lift < 0.9 {
		t.Errorf("foot 1 lifts by %g, foot 3 by %g: want 0 and about 1 mm", one.Lift, three.Lift)
	}
}

func TestAStoolOfThreeLegsNeverRocksAndTipsOverTwo(t *testing.T) {
	// Feet at (0,0), (300,0), (0,300), tied at the top; feet 1 and 2 don't slide. A load of 90 at (100, 100) is
	// borne by thirds; on one leg's head it is borne by that leg; 1 mm of gap anywhere changes nothing. A push
	// of 50 along −x at 400 high with 90 at (100, 100) turns it over feet 1 and 3: 50·400 > 90·100.
	f := frame.Frame{Nodes: []frame.Node{node("hub", 100, 100, 400)}}
	for i, c := range []frame.Vec{{0, 0}, {300, 0}, {0, 300}} {
		n := string(rune('1' + i))
		foot := node("foot "+n, c[0], c[1], 0, frame.Pinned)
		foot.Floor = true
		f.Nodes = append(f.Nodes, foot)
		f.Members = append(f.Members, rigid("leg "+n, "foot "+n, "hub"))
	}
	f.Nodes[3].Hold[0], f.Nodes[3].Hold[1] = 0, 0
	weight := frame.Case{Pushes: []frame.Push{{Node: "hub", Force: frame.Vec{0, 0, -90}}}}
	for _, gap := range []float64{0, 1} {
		f.Nodes[2].Gap = gap
		a := solve(t, f, weight)
		for _, n := range a.Nodes[1:] {
			near(t, n.Node, n.Push[2], 30)
		}
	}
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	_, err = m.Solve(frame.Combine("push", frame.Term{By: 1, Case: weight}, frame.Term{By: -50, Case: sideways("hub", 1)}))
	var tips *frame.Tips
	if !errors.As(err, &tips) || !slices.Equal(tips.Over, []string{"foot 1", "foot 3"}) || !slices.Equal(tips.Rises, []string{"foot 2"}) {
		t.Errorf("got %v", err)
	}
}
