package frame_test

import (
	"math"
	"testing"

	"rodwright/mechanics/frame"
)

// A portal in the plane of x and z: posts of 800, beam of 1200, every stick bending about own y with I = 2e5
// in the posts (own z along x, so own y lies across the plane) and three times that in the beam.
const (
	postHigh, beamLong = 800.0, 1200.0
	beamSecond         = 6e5
)

// flat keeps a node in the plane of x and z.
var flat = [6]float64{0, frame.Rigid, 0, frame.Rigid, 0, frame.Rigid}

func portal(foot [6]float64, corner frame.Springs) frame.Frame {
	f := frame.Frame{
		Nodes: []frame.Node{
			node("left foot", 0, 0, 0, foot), node("left", 0, 0, postHigh, flat),
			node("right", beamLong, 0, postHigh, flat), node("right foot", beamLong, 0, 0, foot),
		},
		Members: []frame.Member{rigid("left post", "left foot", "left"), rigid("beam", "left", "right"), rigid("right post", "right foot", "right")},
	}
	f.Members[1].Section.IY = beamSecond
	f.Members[1].Start.Springs, f.Members[1].End.Springs = corner, corner
	return f
}

var hingedFoot = [6]float64{frame.Rigid, frame.Rigid, frame.Rigid, frame.Rigid, 0, frame.Rigid}

func sideways(n string, p float64) frame.Case {
	return frame.Case{Name: "sideways", Pushes: []frame.Push{{Node: n, Force: frame.Vec{p, 0, 0}}}}
}

// The portals: Kleinlogel, Rigid Frame Formulas, single-bay portal (formulas from memory, rederived
// by slope deflection): k = (Ib/Ic)(h/L); fixed feet δ = P h³/12EIc · (3k+2)/(6k+1), foot moment
// (P h/2)(3k+1)/(6k+1); hinged feet δ = P h³/12EIc · (2k+1)/k.

func TestAPortalOnFixedFeetSways(t *testing.T) {
	// k = 3 · 800/1200 = 2; P h³/12EIc with P = 100: 100·5.12e8/(2.4e10) = 2.13333; (6+2)/(12+1) = 8/13:
	// 1.312821 mm. Foot moment 100·400·7/13 = 21538.46, corner 100·400·6/13 = 18461.54.
	a := solve(t, portal(frame.Clamped, frame.Stiff), sideways("left", 100))
	near(t, "sway", move(t, a, "left")[0], 2.1333333*8/13)
	near(t, "foot moment", math.Abs(strain(t, a, "left post").Start[4]), 21538.4615)
	near(t, "corner moment", math.Abs(strain(t, a, "left post").End[4]), 18461.5385)
}

func TestAPortalOnHingedFeetSways(t *testing.T) {
	// (2·2+1)/2 = 2.5: 5.333333 mm; corner moment P h/2 = 40000.
	a := solve(t, portal(hingedFoot, frame.Stiff), sideways("left", 100))
	near(t, "sway", move(t, a, "left")[0], 2.1333333*2.5)
	near(t, "corner moment", math.Abs(strain(t, a, "beam").Start[4]), 40000)
}

func TestAPortalOfSoftCornersSwaysByTheirGiveAsWell(t *testing.T) {
	// Hinged feet: each corner bears P h/2 and gives by that over c, which tilts the post: P h²/2c more. With
	// c = 4e6 N·mm/rad: 100·640000/8e6 = 8 mm. Worked by hand from statics.
	soft := frame.Springs{Twist: frame.Rigid, Y: 4e6, Z: frame.Rigid}
	a := solve(t, portal(hingedFoot, soft), sideways("left", 100))
	near(t, "sway", move(t, a, "left")[0], 5.3333333+8)

	// Fixed feet, corners that don't hold at all: two cantilevers share P: P h³/6EIc = 4.266667.
	hinge := frame.Springs{Twist: frame.Rigid, Z: frame.Rigid}
	a = solve(t, portal(frame.Clamped, hinge), sideways("left", 100))
	near(t, "hinged corners", move(t, a, "left")[0], 4.2666667)

	// Fixed feet, soft corners: the corner spring in series with half the beam, which in antisymmetric bending
	// turns by M L/6EIb: 1/κ = L/6EIb + 1/c makes a beam of I' = κ L/6E. c = 6e6: 1/κ = 1200/3.6e10 + 1/6e6 =
	// 2e-7, κ = 5e6, I' = 1e5, k' = 0.5·800/1200 = 1/3: (1+2)/(2+1) = 1: 2.133333 mm.
	soft.Y = 6e6
	a = solve(t, portal(frame.Clamped, soft), sideways("left", 100))
	near(t, "soft corners", move(t, a, "left")[0], 2.1333333)
}

func TestAJointGivesBetweenHingeAndWall(t *testing.T) {
	// Cantilever on a spring, L = 1000, P = 100, k = 4e6: P L³/3EI + P L²/k = 16.66667 + 25 (statics).
	// Stiff and nearly stiff (1e15): 16.66667.
	arm := rigid("arm", "wall", "tip")
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 1000, 0, 0)}, Members: []frame.Member{arm}}
	for k, want := range map[float64]float64{4e6: 1e11/6e9 + 25, 1e15: 1e11 / 6e9, frame.Rigid: 1e11 / 6e9} {
		f.Members[0].Start.Springs.Y = k
		a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 0, 100}}}})
		near(t, "tip", move(t, a, "tip")[2], want)
	}
	// A twisting joint: T L/GJ + T/k with T = 1.2e6, L = 1000, k = 2.4e6: 1 + 0.5 rad.
	f.Members[0].Start.Springs = frame.Springs{Twist: 2.4e6, Y: frame.Rigid, Z: frame.Rigid}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Moment: frame.Vec{1.2e6, 0, 0}}}})
	near(t, "twist", move(t, a, "tip")[3], 1.5)
}

func TestABeamBetweenSoftJointsBearsPartOfTheHeldMoment(t *testing.T) {
	// w = 1 N/mm on L = 1000 between two springs k: the end turns by wL³/24EI − M L/2EI = M/k, so that
	// M = wL²/12 / (1 + 2EI/kL) (the fixity factor of Monforton and Wu, 1963, in another dress).
	// EI = 2e9, k = 4e6: 2EI/kL = 1: 41666.67. Hinge: 0. Wall: 83333.33.
	// One end hinged, the other a wall (Roark Table 8.1 case 2c, from memory): wL²/8 = 125000.
	m := rigid("shelf", "a", "b")
	f := frame.Frame{Nodes: []frame.Node{node("a", 0, 0, 0, frame.Clamped), node("b", 1000, 0, 0, frame.Clamped)}, Members: []frame.Member{m}}
	load := frame.Case{Evens: []frame.Even{{Member: "shelf", PerMM: frame.Vec{0, 0, -1}}}}
	for _, c := range []struct{ start, end, want float64 }{
		{4e6, 4e6, 41666.6667},
		{0, 0, 0},
		{frame.Rigid, frame.Rigid, 83333.3333},
		{frame.Rigid, 0, 125000},
		{frame.Rigid, 1e-9, 125000},
	} {
		f.Members[0].Start.Springs.Y, f.Members[0].End.Springs.Y = c.start, c.end
		near(t, "held moment", -strain(t, solve(t, f, load), "shelf").Start[4], c.want)
		// The other way round the far end bears it, turned the other way.
		f.Members[0].Start.Springs.Y, f.Members[0].End.Springs.Y = c.end, c.start
		near(t, "held moment at the end", strain(t, solve(t, f, load), "shelf").End[4], c.want)
	}
}

func TestABracketBendsAndTwists(t *testing.T) {
	// An arm of a = 600 out of the wall along x, then b = 400 along y with P = 50 down at its tip. By statics:
	// P b³/3EI + P a³/3EI + (P b) a/GJ · b = 50·6.4e7/6e9 + 50·2.16e8/6e9 + 50·400·600·400/1.2e9
	// = 0.533333 + 1.8 + 4 = 6.333333 mm. The elbow sinks by 1.8 and turns about x by 20000·600/1.2e9 = 0.01.
	f := frame.Frame{
		Nodes:   []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("elbow", 600, 0, 0), node("tip", 600, 400, 0)},
		Members: []frame.Member{rigid("arm", "wall", "elbow"), rigid("hand", "elbow", "tip")},
	}
	a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: frame.Vec{0, 0, -50}}}})
	near(t, "tip", move(t, a, "tip")[2], -6.3333333)
	near(t, "elbow", move(t, a, "elbow")[2], -1.8)
	near(t, "elbow twists", move(t, a, "elbow")[3], -0.01)
	// At the wall 50·600 = 30000 bends (3 MPa at W = 1e4) and 50·400 = 20000 twists.
	arm := strain(t, a, "arm")
	near(t, "stress", arm.Bending, 3)
	near(t, "torque", math.Abs(arm.Start[3]), 20000)
}

func TestARootWeakerThanTheStickBearsMore(t *testing.T) {
	// 1e5 N·mm at the wall: 10 MPa by W = 1e4, 25 by a root of 4e3; sideways 1e5/2e3 = 50 instead of 20.
	arm := rigid("arm", "wall", "tip")
	arm.Start.RootY, arm.Start.RootZ = 4e3, 2e3
	f := frame.Frame{Nodes: []frame.Node{node("wall", 0, 0, 0, frame.Clamped), node("tip", 1000, 0, 0)}, Members: []frame.Member{arm}}
	for _, c := range []struct {
		force frame.Vec
		round bool
		want  float64
	}{
		{frame.Vec{0, 0, 100}, false, 25},
		{frame.Vec{0, 100, 0}, false, 50},
		{frame.Vec{0, 100, 100}, false, 75},
		{frame.Vec{0, 100, 100}, true, math.Hypot(25, 50)},
	} {
		f.Members[0].Section.Round = c.round
		a := solve(t, f, frame.Case{Pushes: []frame.Push{{Node: "tip", Force: c.force}}})
		near(t, "root", strain(t, a, "arm").Bending, c.want)
	}
}
