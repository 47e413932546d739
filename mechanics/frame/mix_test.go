package frame_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/mechanics/frame"
)

// standsOn loads a stool with 25 N on each top.
func standsOn() frame.Case {
	c := frame.Case{Name: "weight"}
	for _, n := range []string{"top 1", "top 2", "top 3", "top 4"} {
		c.Pushes = append(c.Pushes, frame.Push{Node: n, Force: frame.Vec{0, 0, -25}})
	}
	return c
}

// alike compares two answers.
func alike(t testing.TB, what string, a, b frame.Answer) {
	t.Helper()
	same := func(x, y, by float64) {
		t.Helper()
		if !(math.Abs(x-y) <= 1e-6*by) {
			t.Fatalf("%s: %v and %v", what, x, y)
		}
	}
	for i := range a.Nodes {
		for j := range 6 {
			same(a.Nodes[i].Move[j], b.Nodes[i].Move[j], 1)
			same(a.Nodes[i].Push[j], b.Nodes[i].Push[j], 1e4)
		}
		same(a.Nodes[i].Lift, b.Nodes[i].Lift, 1)
	}
	for i := range a.Members {
		same(a.Members[i].Bending, b.Members[i].Bending, 100)
		same(a.Members[i].Axial, b.Members[i].Axial, 100)
	}
}

func TestAMixAnswersAsTheSumSolvedAnew(t *testing.T) {
	m, err := frame.New(stool())
	if err != nil {
		t.Fatal(err)
	}
	weight := standsOn() // its middle lies off both diagonals, else the stool may rock either way
	weight.Pushes[1].Force[2], weight.Pushes[2].Force[2] = -29, -38
	cases := []frame.Case{weight, sideways("top 1", 1), {Pushes: []frame.Push{{Node: "top 3", Force: frame.Vec{0, 1, -2}, Moment: frame.Vec{5, 0, 9}}}}}
	x, err := m.Mix(cases...)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(r *rapid.T) {
		by := []float64{1, rapid.Float64Range(-30, 30).Draw(r, "push"), rapid.Float64Range(0, 20).Draw(r, "other")}
		shift := frame.Shift{Node: "foot 2", Freedom: frame.AlongZ, By: rapid.Float64Range(-2, 2).Draw(r, "shift")}
		sum := frame.Case{Shifts: []frame.Shift{shift}}
		var shares []frame.Share
		for i, b := range by {
			shares = append(shares, frame.Share{Of: i, By: b})
			sum = frame.Combine("sum", frame.Term{By: 1, Case: sum}, frame.Term{By: b, Case: cases[i]})
		}
		for _, down := range []bool{true, false} {
			sum.HeldDown = down
			want, err1 := m.Solve(sum)
			got, err2 := x.Solve("sum", down, shares, shift)
			if (err1 == nil) != (err2 == nil) {
				t.Fatalf("%v and %v", err1, err2)
			}
			if err1 == nil {
				alike(t, "a mix", want[0], got)
			}
		}
	})
}

// 100 N on the stool, pushed with 50 N at the top: it would tip; held down the far floors push 25 + 50·400/(2·300) and the
// near ones pull as much less, by moments about the feet.
func TestAStoolThatIsHeldDownPullsAtItsFloor(t *testing.T) {
	m, err := frame.New(stool())
	if err != nil {
		t.Fatal(err)
	}
	c := frame.Combine("held", frame.Term{By: 1, Case: standsOn()}, frame.Term{By: 25, Case: sideways("top 1", 1)}, frame.Term{By: 25, Case: sideways("top 4", 1)})
	c.HeldDown = true
	a, err := m.Solve(c)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "far feet", push(t, a[0], "foot 2")+push(t, a[0], "foot 3"), 50+50.0*400/300)
	near(t, "near feet", push(t, a[0], "foot 1")+push(t, a[0], "foot 4"), 50-50.0*400/300)
}

func push(t *testing.T, a frame.Answer, node string) float64 {
	t.Helper()
	s, is := a.Node(node)
	if !is {
		t.Fatal(node)
	}
	return s.Push[frame.AlongZ]
}

func TestWhatDoesNotAddUpIsNotMixed(t *testing.T) {
	m, err := frame.New(stool())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := m.Mix(frame.Case{Evens: []frame.Even{{Member: "rail 1", PerMM: frame.Vec{0, 0, -1}}}}); err == nil {
		t.Error("a load along a member is mixed")
	}
	if _, err := m.Mix(frame.Case{Pushes: []frame.Push{{Node: "no such"}}}); err == nil {
		t.Error("a push on no node is mixed")
	}
	x, err := m.Mix(standsOn())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := x.Solve("s", false, []frame.Share{{Of: 1, By: 1}}); err == nil {
		t.Error("a case that is not there is taken")
	}
	if _, err := x.Solve("s", false, nil, frame.Shift{Node: "foot 1", Freedom: frame.AlongX, By: 1}); err == nil {
		t.Error("a floor is shifted sideways")
	}
	f := stool()
	f.Nodes[0].Gap = 1
	gap, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := gap.Mix(standsOn()); err == nil {
		t.Error("a frame with a gap is mixed")
	}
}
