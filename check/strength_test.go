package check

import (
	"math"
	"os"
	"strings"
	"testing"

	"rodwright/finding"
	beams "rodwright/mechanics/frame"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/beam"
)

// proven runs the cases of the first standing of a piece.
func proven(t testing.TB, p *Piece, g gives) (*skeleton, strong) {
	t.Helper()
	k := p.skeletonOf(p.standing[0])
	b := k.bound(g, k.loading())
	if b.err != nil {
		t.Fatal(b.err)
	}
	return k, b.strong
}

// one works out one sum of loads.
func one(t testing.TB, p *Piece, name string) (*skeleton, *beams.Answer, burden) {
	t.Helper()
	k := p.skeletonOf(p.standing[0])
	l := k.loading()
	m, err := beams.New(k.jointed(softest))
	if err != nil {
		t.Fatal(err)
	}
	on, err := m.Mix(l.floor...)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range l.sums {
		if c.name == name {
			a, err := on.Solve(c.name, c.inHands, c.shares, c.shifts...)
			if err != nil {
				t.Fatal(err)
			}
			return k, &a, c
		}
	}
	t.Fatalf("no case %q", name)
	return nil, nil, burden{}
}

// The table of the portal on hinged feet: pushed by F at its top each leg bears F/4, and its flange F/4·h with h the
// 28.5 in up to it. Statics. F is the 50 N at least.
func TestAFlangeBearsTheMomentOfTheLegBelowIt(t *testing.T) {
	k, a, _ := one(t, derive(t, legsOnly), "pushed at the top to the right, with everything it holds")
	for _, s := range k.stubs {
		m := a.Members[s.member]
		near(t, "moment", math.Hypot(m.Start[4], m.Start[5]), 50.0/4*28.5*25.4, 0.02*50.0/4*28.5*25.4)
	}
}

// Three screws and more on a circle of radius r pull a plate of radius R back as they are far from the rim about which it
// turns. Summed by hand for four screws of a plate of 44.45 and a circle of 33 mm, at 45° to the rim: distances
// 44.45 ± 33/√2 = 67.785 and 21.115, Σ d² = 2·(67.785² + 21.115²) = 10 081.3 = 4·(44.45² + 33²/2); the formula takes the
// farthest that a screw may stand, R + r = 77.45.
func TestAPlateIsPriedOffAboutItsRim(t *testing.T) {
	sum := 2 * (67.785*67.785 + 21.115*21.115)
	near(t, "prying", prying(44.45, 33)/4, 77.45/sum, 1e-5*77.45/sum)
	if got := 67.785 / sum; prying(44.45, 33)/4 < got {
		t.Errorf("screws at 45° pull %v, more than is reckoned", got)
	}
}

// ASTM A53 grade A yields at 30 000 psi = 206.84 MPa; ÷ 1.67 = 123.86 MPa, AISC 360 chapter F, from memory. At the root of
// a 3/4 in thread half of the pipe's modulus is left.
func TestAThreadIsStressedAtItsRoot(t *testing.T) {
	p := derive(t, legsOnly)
	f := only(t, Strength(p), "thread of the ")
	near(t, "limit", f.Limit.Value, 123.86, 0.01)
	near(t, "yield", beam.PipeYield, 206.84, 0.01)
	share := 0.0
	for _, in := range f.Figure.Inputs {
		if in.Name == "share of the plain pipe's" {
			share = in.Value
		}
	}
	near(t, "share at the root", share, 0.50, 0.01)
	k, strong := proven(t, p, stiffest)
	w := strong.root
	size := p.Sticks[k.sticks[w.at]].Section.Pipe
	_, a, _ := one(t, p, w.name)
	m := a.Members[w.at]
	moment := max(math.Hypot(m.Start[4], m.Start[5]), math.Hypot(m.End[4], m.End[5]))
	root, bore := size.Root.MM(), size.Bore.MM()
	want := moment/size.RootModulus() + math.Abs(m.End[0])/(math.Pi/4*(root*root-bore*bore))
	near(t, "stress", w.by, want, 0.02*want) // the joints differ a little
}

// Lifted by its top, the four flanges hang all that is not the top on their screws, and no foot stands. Statics.
func TestWhatIsLiftedByItsTopHangsOnItsScrews(t *testing.T) {
	p := derive(t, legsOnly)
	k, a, _ := one(t, p, "lifted by top, empty")
	pull, below := 0.0, 0.0
	for _, s := range k.stubs {
		pull += a.Members[s.member].End[0]
	}
	for i, b := range p.bodies(p.standing[0]) {
		if i > 0 { // the top comes first
			below += b.Kg
		}
	}
	near(t, "what hangs", pull, below*gravity, 0.001*below*gravity)
	for _, at := range k.floor {
		near(t, "push of the floor", a.Nodes[at].Push[beams.AlongZ], 0, 0.5)
	}
}

// The floor bears the whole, wherever it is leant on; with a foot in the air the others do. Statics.
func TestTheFloorBearsTheWholeWhateverComesUponThePiece(t *testing.T) {
	p := derive(t, legsOnly, "posts:", "holds:\n  - {name: parts, on: top, size: 9 × 9 × 9 in, weight: 40 kg, at: [9 in, 9 in]}\nposts:")
	k := p.skeletonOf(p.standing[0])
	weight := 0.0
	for _, q := range append(append([]beams.Push(nil), k.weights...), k.held...) {
		weight -= q.Force[2]
	}
	for name, more := range map[string]float64{
		"with everything it holds": 0, "leant on at the front edge of top, with everything it holds": leanWeight,
		"pushed at the top to the left, with everything it holds": 0, "the floor ≈ 1/8 in lower under its front left foot, with everything it holds": 0,
	} {
		k, a, _ := one(t, p, name)
		sum := 0.0
		for _, at := range k.floor {
			sum += a.Nodes[at].Push[beams.AlongZ]
		}
		near(t, name, sum, weight+more, 1e-6*weight)
	}
}

func TestAnUnevenFloorLoadsTheFeetOnTheOtherDiagonal(t *testing.T) {
	p := derive(t, legsOnly)
	k, even, _ := one(t, p, "with everything it holds")
	_, off, _ := one(t, p, "the floor ≈ 1/8 in lower under its front left foot, with everything it holds")
	for i, at := range k.floor {
		name := p.Feet[i].Name
		was, is := even.Nodes[at].Push[beams.AlongZ], off.Nodes[at].Push[beams.AlongZ]
		if diagonal := strings.Contains(name, "front right") || strings.Contains(name, "back left"); diagonal != (is > was) {
			t.Errorf("%s bears %v N, on an even floor %v", name, is, was)
		}
	}
}

// A lean of the maker's own is one of the cases.
func TestTheMakersOwnLoadIsTried(t *testing.T) {
	plain := derive(t, legsOnly)
	for _, load := range []string{"sitter: {on: top, edge: left, weight: 400 kg}", "shove: {on: top, at: [1 in, 1 in], push: 300 lb, towards: back}"} {
		p := derive(t, legsOnly, "feet: caps", "feet: caps\nloads:\n  "+load)
		f, was := only(t, Strength(p), "thread of the "), only(t, Strength(plain), "thread of the ")
		if f.Figure.Value <= was.Figure.Value {
			t.Errorf("%s: %v MPa, without %v", load, f.Figure.Value, was.Figure.Value)
		}
		name, _, _ := strings.Cut(load, ":")
		says(t, f.Place, name)
	}
}

func TestOnlyTheWorstOfEachKindIsTold(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		if n, most := len(Sway(p))+len(Strength(p)), 7*len(p.standing); n > most {
			t.Errorf("seed %d: %d findings of %d standings", seed, n, len(p.standing))
		}
	}
}

// No force gets better when what a piece holds gets heavier: every load is tried on the empty piece as well. Where a foot
// leaves the floor the rest find other ways, which may relieve one of them a little: 3 % are left to that.
func TestNoStrengthGetsBetterWhenALoadGrows(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for n := range p.standing {
			was := p.rack(n)
			if was.missing != "" || was.loose != nil || len(p.standing[n].sticks) == 0 {
				continue
			}
			heavier := *p.Resolved
			heavier.Held = append([]piece.Held(nil), p.Held...)
			for i := range heavier.Held {
				heavier.Held[i].MassKg *= 1.7
			}
			is := Of(&heavier, p.Parts, p.Shop).rack(n)
			for kind, pair := range map[string][2]worst{
				"thread": {was.strong.root, is.strong.root}, "flange": {was.strong.flange, is.strong.flange},
				"strap": {was.strong.strap, is.strong.strap}, "foot": {was.strong.foot, is.strong.foot},
			} {
				if pair[1].by < pair[0].by*0.97-1e-9 {
					t.Errorf("seed %d: %s bears %v (%s), lighter %v (%s)", seed, kind, pair[1].by, pair[1].name, pair[0].by, pair[0].name)
				}
			}
		}
	}
}

func TestASheetOfWhichNobodyKnowsWhatScrewsHoldIsUnknown(t *testing.T) {
	p := derive(t, legsOnly, "thickness: 1 1/2 in", "sheet: birch-plywood-18, thickness: 18 mm")
	f := only(t, Strength(p), "screws into top")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "what screws hold in birch-plywood-18")
}

func TestATableTooWeakForItsLoadFailsWithThePipeThatHolds(t *testing.T) {
	p := derive(t, legsOnly, "feet: caps", "feet: caps\nloads:\n  shove: {on: top, edge: left, push: 900 N, towards: right}")
	f := only(t, Strength(p), "thread of the ")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "take pipe of ")
	says(t, f.Place, "shove")
}

// What a board does to its pipes through its straps is all that comes upon it. Statics.
func TestStrapsBearAllThatComesUponTheirBoard(t *testing.T) {
	p := derive(t, wallShelf)
	board := 0.0
	for _, i := range p.standing[0].panels {
		board += p.panels[i].MassKg * gravity
	}
	for name, want := range map[string][3]float64{
		"leant on at the front edge of shelf, empty": {0, 0, -board - leanWeight}, "pushed at the top to the left, empty": {-50, 0, -board}, "pushed at the top to the back, empty": {0, 50, -board},
	} {
		name = strings.Replace(name, ", empty", ", with everything it holds", 1)
		k, a, _ := one(t, p, name)
		pr := &prover{skeleton: k}
		sum := [3]float64{}
		for _, s := range k.stubs {
			if s.member >= 0 {
				t.Fatal("a stub where a strap shares its node")
			}
			f := pr.onPipe(a, s) // arms lead from the wall to the front: own x is -y, own z up, own y = z × x
			sum[0], sum[1], sum[2] = sum[0]+f[1], sum[1]-f[0], sum[2]+f[2]
		}
		for x := range sum {
			near(t, name, math.Abs(sum[x]), math.Abs(want[x]), 0.001*board)
		}
	}
}

// F/W = √(2Rs − s²) ÷ (R − s) for the leading wheels, which bear half: wheels of 3 in at a step of 5 %, R 1.5 and s 0.15 in,
// 0.48432; statics.
func TestWheelsAtAStepArePushedOverItAndPushBack(t *testing.T) {
	p := derive(t, legsOnly, "feet: caps", "feet: {casters: {kind: stem, fixed: through drilled caps, wheel: 3 in, height: 4 in, offset: 1 in, rated: 110 lb, locks: 2}}")
	k := p.skeletonOf(p.standing[0])
	l := k.loading()
	weight := 0.0
	for _, q := range k.weights {
		weight -= q.Force[2]
	}
	n := 0
	for _, c := range l.sums {
		if !c.wheels {
			continue
		}
		n++
		sum, most := beams.Vec{}, 0.0
		for _, s := range c.shares {
			for _, q := range l.wheels[s.Of].Pushes {
				for x := range 2 {
					sum[x] += s.By * q.Force[x]
					most = max(most, math.Abs(s.By*q.Force[x]))
				}
			}
		}
		near(t, c.name+" balance", math.Hypot(sum[0], sum[1]), 0, 1e-9*weight)
		near(t, c.name+" at each of two wheels", most, 0.48432*weight/4, 1e-4*weight)
	}
	if n != 4 {
		t.Errorf("%d sides", n)
	}
}

// An unlocked caster rolls, a locked one holds; with fewer than two that lock all are chocked.
func TestCastersHoldByTheirBrakes(t *testing.T) {
	for locks, want := range map[string]int{"locks: 4": 4, "locks: 2": 2, "locks: 1": 4} {
		p := derive(t, legsOnly, "feet: caps", "feet: {casters: {kind: stem, fixed: through drilled caps, wheel: 3 in, height: 4 in, offset: 1 in, rated: 110 lb, "+locks+"}}")
		k := p.skeletonOf(p.standing[0])
		held := 0
		for _, at := range k.floor {
			if n := k.frame.Nodes[at]; n.Hold[beams.AlongX] > 0 && n.Hold[beams.AlongY] > 0 {
				held++
			}
			if at := k.frame.Nodes[at].At[2]; at != 0 {
				t.Errorf("a wheel stands at %v", at)
			}
		}
		if held != want || k.chocked != (locks == "locks: 1") {
			t.Errorf("%s: %d hold", locks, held)
		}
	}
}

// Of two screws 40 mm apart: across 60/2 = 30 N, and what lies along the pipe slides; up 10/2, and 2000 N·mm about the pipe over
// 40 mm, and 3000 along it over the 50 mm that the board bears beside: (10 + 50 + 60)/2 = 60 N. Statics.
func TestAStrapIsPriedOffAndSlidesAlongItsPipe(t *testing.T) {
	var got strong
	got.strap.at = -1
	p := &prover{results: &got, screws: []grip{{count: 2, rim: 40, circle: 20, bears: 50, withdraw: 1000, across: 500}}}
	p.strapped(0, [6]float64{9999, -60, 10, -2000, 3000, 0}, worst{})
	near(t, "pull", got.strap.pull, 60, 1e-9)
	near(t, "across", got.strap.across, 30, 1e-9)
}

// A board that lies strapped on a rail and stands on flanged posts besides has its plane in the pipe's axis, below the
// flanges: lifted, it pulls at them all the same.
func TestALiftPullsAtAFlangeWhoseStubLeadsDown(t *testing.T) {
	text, err := os.ReadFile("../examples/stepped-stand.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	p := derive(t, string(text))
	k, a, _ := one(t, p, "lifted by deep board, empty")
	var got strong
	pr := &prover{skeleton: k, results: &got, screws: k.holding()}
	turned := 0
	for n, s := range k.stubs {
		if !s.turned {
			continue
		}
		turned++
		got = nothingYet()
		plain := a.Members[s.member]
		plain.Start[4], plain.Start[5] = 0, 0 // the pull alone
		pr.screwed(n, s, &plain, worst{})
		if !(got.flange.pull > 0) {
			t.Errorf("stub %d pulls %v N", n, got.flange.pull)
		}
	}
	if turned == 0 {
		t.Error("no stub leads down")
	}
	only(t, Strength(p), "screws of the flange at the ")
}
