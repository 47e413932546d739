package check

import (
	"math"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// The desk that was asked about in public: a top of 8 ft on four single legs of 3/4 in pipe, screwed to battens 3/4 in
// thick. It swayed once it stood on its legs, until cross pieces were put in.
const longDesk = `
rodwright: 1
piece: long desk
unit: in
fineness: 1/16
place: {room: office, humidity: 30–60 %, temperature: 16–27 C}
wood: {species: douglas-fir, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  front: {at: front corners of top, inset: 4 in, from: feet, to: top}
  back: {at: back corners of top, inset: 4 in, from: feet, to: top}
panels:
  top: {length: 96 in, width: 26 in, thickness: 1 1/2 in, grain: along length, level: 30 in, sits: [on front posts, on back posts]}
feet: caps
`

func TestSinglePipeLegsSwayUntilRailsJoinThem(t *testing.T) {
	p := derive(t, longDesk)
	for _, way := range ways {
		f := only(t, Sway(p), way)
		if f.Verdict == finding.Stands {
			t.Errorf("%s: four single legs stand", way)
		}
		says(t, f.Mend, "join front ", "post with ", " by a rail about ")
	}
	braced := derive(t, longDesk, "panels:", "rails:\n  end: {joins: front with back, level: 22 in}\n  front: {joins: front posts, level: 24 in}\n  back: {joins: back posts, level: 24 in}\npanels:")
	for _, way := range ways {
		was, is := only(t, Sway(p), way), only(t, Sway(braced), way)
		if is.Figure.Value > 0.6*was.Figure.Value {
			t.Errorf("%s: %v mm with rails, %v without", way, is.Figure.Value, was.Figure.Value)
		}
	}
}

func TestSwayIsARangeAndFailsOnlyWhereBothBoundsDo(t *testing.T) {
	for _, c := range []struct {
		soft, stiff float64
		want        finding.Verdict
	}{{1, 0.5, finding.Stands}, {4, 0.5, finding.Tight}, {4, 3.5, finding.Fails}, {3, 3, finding.Stands}} {
		if got := judgeRange(c.soft, c.stiff, 3); got != c.want {
			t.Errorf("%v to %v mm against 3: %v, want %v", c.soft, c.stiff, got, c.want)
		}
	}
	f := only(t, Sway(derive(t, longDesk)), "pushed along it")
	soft, stiff := because(t, f, "sway, soft joints"), because(t, f, "sway, stiff joints")
	if !(stiff.Value < soft.Value) || f.Figure.Value != soft.Value {
		t.Errorf("%v to %v, figure %v", soft.Value, stiff.Value, f.Figure.Value)
	}
	says(t, strings.Join(f.Assumed, "; "), "between a soft and a stiff bound", "a push test")
}

// The shop's own limit: height ÷ 200 by default, common practice, no source. 30 in ÷ 200 = 3.81 mm.
func TestTheLimitIsAShareOfTheHeight(t *testing.T) {
	f := only(t, Sway(derive(t, longDesk)), "pushed along it")
	near(t, "limit", f.Limit.Value, 3.81, 1e-9)
	s := *shop.Sample()
	s.Settings.SwayRatio = 100
	near(t, "a shop's own", only(t, Sway(deriveWith(t, &s, longDesk)), "pushed along it").Limit.Value, 7.62, 1e-9)
}

// tested derives the desk with a push test that its frame would give with joints so many times as stiff as the softest.
func testedDesk(t *testing.T, by float64) *Piece {
	t.Helper()
	p := derive(t, longDesk)
	k := p.skeletonOf(p.standing[0])
	push := k.push().Value
	p.Pushes = []Pushed{{Panel: "top", Towards: piece.LeftSide, Newtons: 2 * push, Moved: 2 * sways(t, p, stiffer(by))[0], Number: 1}}
	return p
}

func TestAPushTestMakesOneNumberOfTheRange(t *testing.T) {
	for _, by := range []float64{0.3, 1, 4, 30} {
		p := testedDesk(t, by)
		f := only(t, Sway(p), "pushed along it")
		want := p.Pushes[0].Moved / 2
		near(t, "sway", f.Figure.Value, want, 0.01*want)
		verdict(t, f, finding.Judge(f.Figure.Value, f.Limit.Value, finding.AtMost))
		near(t, "factor", because(t, f, "factor of the joints").Value, by, 0.02*by)
		says(t, strings.Join(f.Assumed, "; "), "measured: its joints give as the push test")
		if across := only(t, Sway(p), "front to back"); len(across.Because) != 3 || across.Because[0].Name != "sway, as tested" {
			t.Errorf("the other way is not calibrated: %v", across.Because)
		}
	}
}

func TestAPushTestThatNoJointExplainsIsTold(t *testing.T) {
	for _, moved := range []float64{0.001, 5000} {
		p := testedDesk(t, 1)
		p.Pushes[0].Moved = moved
		f := only(t, Sway(p), "pushed along it")
		says(t, strings.Join(f.Assumed, "; "), "than joints alone can give")
	}
}

func TestOfSeveralPushTestsTheSoftestJointsCount(t *testing.T) {
	p, soft := testedDesk(t, 8), testedDesk(t, 2)
	p.Pushes = append(p.Pushes, soft.Pushes...)
	near(t, "factor", because(t, only(t, Sway(p), "along it"), "factor of the joints").Value, 2, 0.04)
}

func TestAPushOnAPanelOfAnotherFrameTellsNothingOfThisOne(t *testing.T) {
	p := derive(t, longDesk)
	p.Pushes = []Pushed{{Panel: "no such", Towards: piece.LeftSide, Newtons: 50, Moved: 9}}
	if f := only(t, Sway(p), "pushed along it"); len(f.Because) != 3 || f.Because[1].Name != "sway, stiff joints" {
		t.Errorf("%v", f.Because)
	}
}

func TestAFrameOnFeetInOneLineIsToldLoose(t *testing.T) {
	f := only(t, Sway(derive(t, rungsInLine)), "")
	verdict(t, f, finding.Fails)
	says(t, strings.Join(f.Assumed, "; "), "nothing keeps it from moving along y")
	says(t, f.Mend, "1 more rail or brace", "wall")
}

func TestAFrameOnNothingIsUnknown(t *testing.T) {
	f := only(t, Sway(derive(t, hoop)), "")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "what it stands on")
}

func TestWhatHangsOnAWallDoesNotSway(t *testing.T) {
	if fs := Sway(derive(t, wallShelf)); len(fs) != 0 {
		t.Errorf("%s", told(fs))
	}
}

func TestTheWorseSwayIsPicturedAsItMoves(t *testing.T) {
	fs := Sway(derive(t, longDesk))
	var seen *finding.Sway
	worst := 0.0
	for _, f := range fs {
		if f.Picture.Sway != nil {
			seen, worst = f.Picture.Sway, f.Figure.Value
		} else {
			worst = max(worst, 0)
		}
	}
	if seen == nil || len(seen.Sticks) != 4 || seen.Grown < 1 {
		t.Fatalf("picture %+v", seen)
	}
	most := 0.0
	for _, s := range seen.Sticks {
		if len(s.At) != len(s.Move) || len(s.At) != shapePoints+1 || s.Tag == "" {
			t.Fatalf("stick %+v", s)
		}
		for i, v := range s.Move {
			most = max(most, math.Hypot(v[0], v[1]))
			if s.At[i][2] < 1 && math.Hypot(v[0], v[1]) > 1e-6 {
				t.Errorf("a foot moves %v", v)
			}
		}
	}
	near(t, "its farthest point", most, worst, 0.05*worst)
}

// Least work: what a push yields along itself never shrinks when something gives more.
func TestSwayNeverShrinksWhenJointsGetSofter(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range p.standing {
			k := p.skeletonOf(s)
			if len(s.sticks) == 0 || k.missing != "" || s.wall || len(k.floor) == 0 {
				continue
			}
			last := [2]float64{}
			for _, g := range []gives{wholly, stiffest, stiffer(4), softest, stiffer(0.3)} {
				for axis := range last {
					now, ok := k.swayWith(g, axis)
					if ok && now < last[axis]*(1-1e-6) {
						t.Errorf("seed %d: %v sways %v, stiffer joints %v", seed, g, now, last[axis])
					}
					last[axis] = now
				}
			}
		}
	}
}

func TestARailThatIsNamedAsAMendMends(t *testing.T) {
	p := derive(t, longDesk)
	k := p.skeletonOf(p.standing[0])
	level, sway, _ := k.bestRail(softest, 0)
	now, _ := k.swayWith(softest, 0)
	if !(sway < now) || !(level > 0) {
		t.Errorf("%v mm with a rail at %v, %v without", sway, level, now)
	}
}
