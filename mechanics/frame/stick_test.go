package frame_test

import (
	"fmt"
	"math"
	"testing"

	"rodwright/mechanics/frame"
)

// A stick of the tests: E = 10000 MPa, IY = 2e5, IZ = 1e5, J = 3e5 mm⁴; the area is so large and the shear
// areas are left out, so that lengthening and shear do not show.
const (
	modE, modG = 10000.0, 4000.0
	secondY    = 2e5
	secondZ    = 1e5
	torsion    = 3e5
)

var stick = frame.Section{E: modE, G: modG, Area: 1e7, J: torsion, IY: secondY, IZ: secondZ, WY: 1e4, WZ: 5e3}

func node(name string, x, y, z float64, hold ...[6]float64) frame.Node {
	n := frame.Node{Name: name, At: frame.Vec{x, y, z}}
	if len(hold) > 0 {
		n.Hold = hold[0]
	}
	return n
}

func rigid(name, from, to string) frame.Member {
	return frame.Member{Name: name, From: from, To: to, Section: stick, Start: frame.End{Springs: frame.Stiff}, End: frame.End{Springs: frame.Stiff}}
}

// solve works out one case and fails the test when that can't be done.
func solve(t testing.TB, f frame.Frame, c frame.Case) frame.Answer {
	t.Helper()
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	a, err := m.Solve(c)
	if err != nil {
		t.Fatal(err)
	}
	return a[0]
}

// near fails when got is more than a thousandth off.
func near(t testing.TB, what string, got, want float64) {
	t.Helper()
	within(t, what, got, want, 1e-3)
}

func within(t testing.TB, what string, got, want, part float64) {
	t.Helper()
	if !(math.Abs(got-want) <= part*math.Abs(want)+1e-12) {
		t.Errorf("%s: got %.8g, want %.8g", what, got, want)
		return
	}
	if want != 0 {
		t.Logf("%s: %.8g, off by %.1e", what, got, math.Abs(got-want)/math.Abs(want))
	}
}

func move(t testing.TB, a frame.Answer, name string) [6]float64 {
	t.Helper()
	s, is := a.Node(name)
	if !is {
		t.Fatalf("no node %q", name)
	}
	return s.Move
}

func strain(t testing.TB, a frame.Answer, name string) frame.Strain {
	t.Helper()
	s, is := a.Member(name)
	if !is {
		t.Fatalf("no member %q", name)
	}
	return s
}

// resting holds a beam along x on two rests: the far one may slide, and only the near one keeps it from rolling.
var (
	nearRest = [6]float64{frame.Rigid, frame.Rigid, frame.Rigid, frame.Rigid, 0, 0}
	farRest  = [6]float64{0, frame.Rigid, frame.Rigid, 0, 0, 0}
)

// The closed forms of this file: Roark's Formulas for Stress and Strain, 7th ed., Table 8.1 (from memory),
// worked out by hand beside each.

func TestACantileverSagsByTheThirdPowerOfItsLength(t *testing.T) {
	// Case 1a: P L³/3EI = 100·1000³/(3·10000·2e5) = 1e11/6e9 = 16.6667 mm; slope P L²/2EI = 1e8/4e9 = 0.025;
	// sideways about z, half as stiff: 33.3333 mm. Moment at the wall 100·1000 = 1e5 N·mm: 1e5/1e4 = 10 MPa.
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 1000, 0, 0)}, Members: []frame.Member{rigid("arm", "wall", "tip")}}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 0, -100}}}})
	u := move(t, a, "tip")
	near(t, "sag", u[frame.AlongZ], -1e11/6e9)
	near(t, "slope: the tip turns from z to x", u[frame.AboutY], 0.025)
	arm := strain(t, a, "arm")
	near(t, "stress at the wall", arm.Bending, 10)
	if arm.At != 0 {
		t.Errorf("the largest stress stands at %g mm, not at the wall", arm.At)
	}
	wall, _ := a.Node("wall")
	near(t, "the wall pushes up", wall.Push[frame.AlongZ], 100)
	near(t, "and holds the moment, which turns the arm's tip up", wall.Push[frame.AboutY], -1e5)

	a = solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 100, 0}}}})
	near(t, "sideways", move(t, a, "tip")[frame.AlongY], 1e11/3e9)
	near(t, "turns from x to y", move(t, a, "tip")[frame.AboutZ], 0.05)
	near(t, "sideways stress", strain(t, a, "arm").Bending, 20)
}

func TestABeamOnTwoRestsUnderEvenLoad(t *testing.T) {
	// Case 2e: w = 1 N/mm, L = 1000. Mid-span 5wL⁴/384EI = 5e12/(384·2e9) = 6.51042 mm; ends turn by
	// wL³/24EI = 1e9/4.8e10 = 0.0208333; moment wL²/8 = 125000: 12.5 MPa in the middle.
	f := frame.Frame{
		Nodes:   []frame.Node{node("a", 0, 0, 0, nearRest), node("m", 500, 0, 0), node("b", 1000, 0, 0, farRest)},
		Members: []frame.Member{rigid("am", "a", "m"), rigid("mb", "m", "b")},
	}
	load := frame.Vec{0, 0, -1}
	a := solve(t, f, frame.Case{Evens: []frame.Even{{Member: "am", PerMM: load}, {Member: "mb", PerMM: load}}})
	near(t, "mid-span", move(t, a, "m")[frame.AlongZ], -5e12/7.68e11)
	near(t, "end turning", move(t, a, "a")[frame.AboutY], 1e9/4.8e10)

	f.Nodes, f.Members = []frame.Node{f.Nodes[0], f.Nodes[2]}, []frame.Member{rigid("ab", "a", "b")}
	a = solve(t, f, frame.Case{Evens: []frame.Even{{Member: "ab", PerMM: load}}})
	near(t, "end turning of one member", move(t, a, "b")[frame.AboutY], -1e9/4.8e10)
	s := strain(t, a, "ab")
	near(t, "stress", s.Bending, 12.5)
	near(t, "in the middle", s.At, 500)
}

func TestABeamOnTwoRestsUnderOneLoad(t *testing.T) {
	// Case 1e: P = 100 at a = 300 of 1000, b = 700. Turning at the start P a b (L+b)/6LEI =
	// 100·300·700·1700/(6·1000·2e9) = 0.002975; at the end P a b (L+a)/6LEI = 0.002275; moment P a b/L = 21000: 2.1 MPa.
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, nearRest), node("b", 1000, 0, 0, farRest)}, Members: []frame.Member{rigid("ab", "a", "b")}}
	a := solve(t, f, frame.Case{Points: []frame.Point{{Member: "ab", At: 300, Force: frame.Vec{0, 0, -100}}}})
	near(t, "start", move(t, a, "a")[frame.AboutY], 0.002975)
	near(t, "end", move(t, a, "b")[frame.AboutY], -0.002275)
	s := strain(t, a, "ab")
	near(t, "stress", s.Bending, 2.1)
	near(t, "under the load", s.At, 300)
	end, _ := a.Node("b")
	near(t, "the far rest bears 3/10", end.Push[frame.AlongZ], 30)
}

func TestABeamHeldAtBothEnds(t *testing.T) {
	// Case 1d: P = 100 at a = 300 of 1000: moment at the start P a b²/L² = 100·300·700²/1e6 = 14700, at the end
	// P a² b/L² = 6300. Case 2d: w = 1: wL²/12 = 83333.3 at both ends.
	// An even load over the first half alone (worked from the point load by integration): start ∫₀^500 x(1000−x)²/1e6 dx = [5e5x² − 2000x³/3 + x⁴/4]/1e6 = 57291.67.
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("b", 1000, 0, 0, frame.Clamped)}, Members: []frame.Member{rigid("ab", "a", "b")}}
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	answers, err := m.Solve(
		frame.Case{Points: []frame.Point{{Member: "ab", At: 300, Force: frame.Vec{0, 0, -100}}}},
		frame.Case{Evens: []frame.Even{{Member: "ab", PerMM: frame.Vec{0, 0, -1}}}},
		frame.Case{Evens: []frame.Even{{Member: "ab", To: 500, PerMM: frame.Vec{0, -1, 0}}}},
	)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "start of one load", strain(t, answers[0], "ab").Start[4], -14700)
	near(t, "end of one load", strain(t, answers[0], "ab").End[4], 6300)
	near(t, "start of even load", strain(t, answers[1], "ab").Start[4], -1e6/12)
	near(t, "stress of even load", strain(t, answers[1], "ab").Bending, 1e6/12/1e4)
	near(t, "start of half a load", strain(t, answers[2], "ab").Start[5], 57291.6667)
}

func TestAPostHeldAtBothEndsSwaysTwelveTimesStiffer(t *testing.T) {
	// 12EI/L³: head may slide, not turn. L = 800: 12·10000·2e5/5.12e8 = 46.875 N/mm about own y, half of that
	// about z. A plumb post has own z along x.
	head := [6]float64{0, 0, 0, frame.Rigid, frame.Rigid, frame.Rigid}
	f := frame.Frame{Nodes: []frame.Node{node("foot", 0, 0, 0, frame.Clamped), node("head", 0, 0, 800, head)}, Members: []frame.Member{rigid("post", "foot", "head")}}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "head", Force: frame.Vec{46.875, 0, 0}}}})
	near(t, "along x", move(t, a, "head")[frame.AlongX], 1)
	// The push turns the head from z to x about +y, so the foot holds with −V h/2 about y; own y = z × x = −y.
	near(t, "foot moment V h/2", strain(t, a, "post").Start[4], 46.875*400)
	a = solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "head", Force: frame.Vec{0, 46.875, 0}}}})
	near(t, "along y", move(t, a, "head")[frame.AlongY], 2)
	sway, _ := a.Sway("head")
	near(t, "sway", sway, 2)
}

func TestAShortDeepBeamGivesInShear(t *testing.T) {
	// Timoshenko: tip of a cantilever P L³/3EI + P L/GA (S. Timoshenko, Strength of Materials, part I, from
	// memory). L = 200, P = 1000, E = 10000, I = 2e5, G = 600, A = 500: 8e9/6e9 = 1.33333, plus
	// 2e5/3e5 = 0.666667: 2 mm. Even load 5 N/mm: 5·1.6e9/(8·2e9) = 0.5, plus 5·4e4/(2·3e5) = 0.333333.
	// Held at both ends the head slides by P L³/12EI + P L/GA = 0.333333 + 0.666667 = 1.
	s := stick
	s.G, s.ShearZ = 600, 500
	m := rigid("arm", "wall", "tip")
	m.Section = s
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 200, 0, 0)}, Members: []frame.Member{m}}
	push := frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 0, 1000}}}}
	near(t, "tip", move(t, solve(t, f, push), "tip")[2], 2)
	even := frame.Case{Evens: []frame.Even{{Member: "arm", PerMM: frame.Vec{0, 0, 5}}}}
	near(t, "tip of even load", move(t, solve(t, f, even), "tip")[2], 0.5+1.0/3)
	f.Nodes[1].Hold = [6]float64{0, 0, 0, frame.Rigid, frame.Rigid, frame.Rigid}
	near(t, "sliding head", move(t, solve(t, f, push), "tip")[2], 1)
}

func TestAStickGrowsLongerUnderAPullAndTwistsUnderATorque(t *testing.T) {
	// Hooke: N L/EA = 5000·1000/(10000·500) = 1 mm, 10 MPa; a load of 2 N/mm along it 2·1e6/(2·5e6) = 0.2 mm;
	// T L/GJ = 1.2e6·1000/(4000·3e5) = 1 rad.
	s := stick
	s.Area = 500
	m := rigid("bar", "wall", "tip")
	m.Section = s
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 0, 1000, 0)}, Members: []frame.Member{m}}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 5000, 0}, Moment: frame.Vec{0, 1.2e6, 0}}}})
	near(t, "longer", move(t, a, "tip")[frame.AlongY], 1)
	near(t, "twist", move(t, a, "tip")[frame.AboutY], 1)
	near(t, "stress", strain(t, a, "bar").Axial, 10)
	a = solve(t, f, frame.Case{Evens: []frame.Even{{Member: "bar", PerMM: frame.Vec{0, 2, 0}}}})
	near(t, "longer by a load along it", move(t, a, "tip")[frame.AlongY], 0.2)
	near(t, "stress at the wall", strain(t, a, "bar").Axial, 4)
}

func TestAPullAlongAStickHeldAtBothEndsIsShared(t *testing.T) {
	// By statics and Hooke: 1000 N at 300 of 1000 is borne 7/10 by the near end and 3/10 by the far one.
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("b", 1000, 0, 0, frame.Clamped)}, Members: []frame.Member{rigid("ab", "a", "b")}}
	a := solve(t, f, frame.Case{Points: []frame.Point{{Member: "ab", At: 300, Force: frame.Vec{1000, 0, 0}}}})
	near(t, "near end", strain(t, a, "ab").Start[0], -700)
	near(t, "far end", strain(t, a, "ab").End[0], -300)
}

func TestSectionsAreThoseOfTheHandbooks(t *testing.T) {
	// A square's torsion constant is 0.1406 a⁴, that of 2:1 0.229 ab³ (Timoshenko, Strength of Materials, from
	// memory). 30 wide and 60 deep: W = 30·3600/6 = 18000 about y, 60·900/6 = 9000 about z; I = 540000, 135000.
	within(t, "square", frame.Rectangle(1e4, 600, 10, 10).J, 1406, 2e-3) // Roark's formula is good to some thousandths
	r := frame.Rectangle(1e4, 600, 30, 60)
	within(t, "2:1", r.J, 0.229*60*27000, 2e-3)
	for i, v := range [][2]float64{{r.WY, 18000}, {r.WZ, 9000}, {r.IY, 540000}, {r.IZ, 135000}, {r.Area, 1800}, {r.ShearZ, 1500}} {
		near(t, fmt.Sprint("rectangle ", i), v[0], v[1])
	}
	// Cowper at ν = 0.3: solid 6·1.3/(7+1.8) = 0.886364; inner half of outer, m = 0.5: (1+m²)² = 1.5625:
	// 7.8·1.5625/(8.8·1.5625 + 23.6·0.25) = 12.1875/19.65 = 0.620229; thin wall 2·1.3/(4+0.9) = 0.530612.
	for inner, want := range map[float64]float64{0: 0.886364, 10: 0.620229, 19.999: 0.530612} {
		p := frame.Pipe(2.6e5, 1e5, 20, inner)
		near(t, "shear area of its area", p.ShearY/p.Area, want)
	}
	// 20 mm bar: I = π 1.6e5/64 = 7853.98, W = 785.398, J = 15707.96.
	p := frame.Pipe(2.6e5, 1e5, 20, 0)
	near(t, "bar I", p.IY, 7853.98)
	near(t, "bar W", p.WZ, 785.398)
	near(t, "bar J", p.J, 15707.96)
}
