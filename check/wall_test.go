package check

import (
	"fmt"
	"math"
	"testing"

	"rodwright/finding"
	"rodwright/piece/random"
	"rodwright/shop"
)

// hungShelf is a board of 1000 × 220 mm on two arms of pipe 600 mm apart, with a thing of the given kilograms whose
// middle is 500 mm from the left end and 130 mm from the wall.
func hungShelf(wall, thing string) string {
	return fmt.Sprintf(`rodwright: 1
piece: hung shelf
unit: mm
place: {room: living, wall: %s}
wood: white-oak
pipe: 3/4
holds:
%s
arms:
  bracket: {at: ends of shelf, inset: 200, count: 2, under: shelf, bands: short, reach: 300, end: cap}
panels:
  shelf: {length: 1000, width: 220, thickness: 21, level: 1400, sits: on bracket arms, straps: 1}
joints:
  wall flange: {screw: 14 × 3 in}
`, wall, thing)
}

func pot(kg float64, x float64) string {
	return fmt.Sprintf("  - {name: pot, on: shelf, size: 100 × 100 × 100, weight: %g kg, at: [%g, 110]}", kg, x)
}

// Lever rule (statics, any text): of a weight between two arms each bears by the distance from the other; beyond one arm
// that one bears more than all of it and the other is lifted.
func TestTwoArmsShareByTheLeverRule(t *testing.T) {
	arms := []wallFlange{{x: 0}, {x: 100}}
	for _, c := range []struct{ x, left float64 }{{25, 0.75}, {50, 0.5}, {100, 0}, {-50, 1.5}, {130, -0.3}} {
		left, right := influence(arms, 0)(c.x), influence(arms, 1)(c.x)
		if math.Abs(left-c.left) > 1e-12 || math.Abs(left+right-1) > 1e-12 {
			t.Errorf("at %v the arms bear %v and %v", c.x, left, right)
		}
	}
}

// By hand: 10 kg in the middle load each of two arms with 49.03 N. They pull at the screws of the flange with that times
// their distance from the wall over the height from the plate's lower rim to the upper screws: 3.5 in of plate and four
// screws on a circle of 2.5 in (the generic flange) are 1.75 + 1.25·√½ = 2.634 in = 66.9 mm, shared by two.
func TestAThingOnAShelfPullsAtTheUpperScrewsByItsLever(t *testing.T) {
	pull := func(thing string) float64 {
		p := derive(t, hungShelf("masonry", thing))
		fit := p.Nodes[p.wallFlanges(p.standing[0])[0].node].Fitting
		lever := fit.Plate.MM()/2 + fit.HoleCircle.MM()/2*math.Sqrt(0.5)
		if w := p.wallFlanges(p.standing[0])[0]; math.Abs(w.lever-lever) > 1e-9 || w.upper != 2 {
			t.Fatalf("lever %v over %v screws, want %v over 2", w.lever, w.upper, lever)
		}
		f := Wall(p)[0]
		return f.Because[1].Value * lever * 2
	}
	// Moments, so that the lever falls out: 10 kg more at its distance from the wall, half on either arm.
	p := derive(t, hungShelf("masonry", pot(10, 500)))
	away := p.Wall.MM() - (p.Held[0].Min.Y + p.Held[0].Max.Y).Half().MM()
	got, want := pull(pot(20, 500))-pull(pot(10, 500)), 10*9.80665/2*away
	if math.Abs(got-want) > 0.001*want {
		t.Errorf("10 kg more add %v N·mm to an arm, want %v", got, want)
	}
}

func TestAShelfThatNothingIsNamedForIsTakenAsFullOfBooks(t *testing.T) {
	p := derive(t, hungShelf("masonry", "  []"))
	f := Wall(p)[0]
	last := f.Because[len(f.Because)-1]
	if last.Name != "books on shelf" || last.Value != 30 {
		t.Errorf("the last reason is %s %v, want 30 kg of books on a metre of shelf", last.Name, last.Value)
	}
}

func TestFlangesThatMissTheStudsFailAndAreToldHowFarApart(t *testing.T) {
	p := derive(t, hungShelf("studs 400 mm", pot(2, 500)))
	f := only(t, Wall(p), "the whole piece, its flanges on the studs")
	verdict(t, f, finding.Fails)
	if math.Abs(f.Figure.Value-100) > 1e-9 { // 600 mm apart on studs of 400: half of 200 each
		t.Errorf("off by %v mm, want 100", f.Figure.Value)
	}
	says(t, f.Mend, "800 mm")
	p = derive(t, hungShelf("studs 300 mm", pot(2, 500)))
	verdict(t, only(t, Wall(p), "the whole piece, its flanges on the studs"), finding.Stands)
}

func TestAWallNobodyNamedIsUnknown(t *testing.T) {
	p := derive(t, hungShelf("masonry", pot(2, 500)))
	p.Doc.Place.WallKind = ""
	f := Wall(p)[0]
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "wall: studs or masonry")
}

func TestAScrewInAWallNeverHoldsMoreWhenMoreHangsOnIt(t *testing.T) {
	for _, wall := range []string{"masonry", "studs 300 mm"} {
		last := 0.0
		for _, kg := range []float64{1, 5, 20, 80} {
			fs := Wall(derive(t, hungShelf(wall, pot(kg, 300))))
			share := fs[len(fs)-1].Figure.Value
			if share <= last {
				t.Errorf("%s: with %v kg %v of what a screw is designed for, with less %v", wall, kg, share, last)
			}
			last = share
		}
	}
}

func TestWhatHangsOnAWallIsJudgedOnAnyPiece(t *testing.T) {
	hung := 0
	for seed := range uint64(120) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range Wall(p) {
			hung++
			if f.Verdict != finding.Unknown && (math.IsNaN(f.Figure.Value) || math.IsInf(f.Figure.Value, 0)) {
				t.Errorf("piece %d: %v", seed, f.Figure.Value)
			}
		}
	}
	if hung == 0 {
		t.Error("no random piece hangs on a wall")
	}
}
