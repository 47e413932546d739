package plate

import (
	"math"
	"testing"
)

// A strip on two pairs of springs: the pairs sink by F/k, and the sag below the line through them is that of
// the beam.
func TestPostsOnSpringsSinkAndTheBeamSagsBelowThem(t *testing.T) {
	p := strip()
	p.Load.Pressure = 2e-3 // 100 N, 0.1 N/mm
	p.pairs(false, 0, 1000)
	for i := range p.Posts {
		p.Posts[i].Spring = 10
	}
	r := solved(t, p)
	// 25 N on each spring of 10 N/mm: 2.5 mm.
	beam := 5 * 0.1 * 1e12 / (384 * stripEI)
	within(t, "sag", r.Sag.Value, beam+2.5, 0.01)
	within(t, "sag below the supports", r.BelowSupports.Value, beam, 0.01)
	for _, s := range r.Posts {
		within(t, "post", s.N, 25, 1e-6)
	}
	// One end on springs twice as soft: the plane through the posts leans, the beam sags below it the same.
	p.Posts[0].Spring, p.Posts[1].Spring = 5, 5
	within(t, "sag below leaning supports", solved(t, p).BelowSupports.Value, beam, 0.01)
}

// Rails under both ends of a strip across their middles: each is a beam with a force of half the load in its
// middle, F·L³/48EI = 100·10⁹/(48·10⁹). Where the rail is fixed to the strip, its middle 40 mm hardly bend:
// then ∫M²/F·EI ends 20 mm before the middle, F·480³/6EI.
func TestARailSagsAsABeamUnderItsLoad(t *testing.T) {
	for _, twoSided := range []bool{false, true} {
		p := &Plate{Width: 1000, Depth: 1000, Thickness: 40, Material: Even(1e5, 0)}
		p.Rails = []Rail{{FromX: 0, ToX: 1000, EI: 1e9, TwoSided: twoSided}, {FromX: 1000, FromY: 1000, ToX: 0, ToY: 1000, EI: 1e9, TwoSided: twoSided}}
		p.Openings = []Rect{{X: -1, Y: -1, W: 481, H: 1002}, {X: 520, Y: -1, W: 481, H: 1002}}
		p.Load.Points = []PointLoad{{X: 500, Y: 500, N: 200}}
		r := solved(t, p)
		w, ok := r.Field.At(500, 0)
		if !ok {
			t.Fatal("no wood over the rail")
		}
		want := 100 * 1e9 / (48 * 1e9)
		if twoSided {
			want = 100 * 480 * 480 * 480 / (6 * 1e9)
		}
		within(t, "rail", w, want, 0.02)
		for _, s := range r.Rails {
			within(t, "reaction", s.N, 100, 1e-6)
		}
	}
}

// A plate fixed to a stiff batten bends as both together: the strip on its ends with a batten along its middle
// has the stiffness of the sum.
func TestABattenAddsItsStiffness(t *testing.T) {
	p := strip()
	p.Load.Pressure = 2e-3
	p.Edges = [4]Edge{Resting, Resting}
	p.Rails = []Rail{{FromX: 0, FromY: 25, ToX: 1000, ToY: 25, EI: stripEI, Loose: true}}
	r := solved(t, p)
	within(t, "sag", r.Sag.Value, 5*0.1*1e12/(384*2*stripEI), 0.01)
	if math.Abs(r.Rails[0].N) > 1e-3 {
		t.Errorf("a batten that nothing carries carries %v N", r.Rails[0].N)
	}
	within(t, "edges", r.Edges[Left].N+r.Edges[Right].N, 100, 1e-6)
}

func TestAStiffRailIsAnUnyieldingOne(t *testing.T) {
	p := of1000(1)
	p.bear(false)
	rails := func(ei float64) float64 {
		p.Rails = []Rail{{FromX: 0, ToX: 0, ToY: 1000, EI: ei}, {FromX: 1000, ToX: 1000, ToY: 1000, EI: ei}}
		return solved(t, p).Sag.Value
	}
	rigid := rails(0)
	within(t, "very stiff rails", rails(1e14), rigid, 1e-3)
	if soft := rails(1e9); soft <= rigid*1.01 {
		t.Errorf("on soft rails it sags %v, on unyielding ones %v", soft, rigid)
	}
}

// A flange held down at its circle sags less than a post at its middle and more than one that is clamped.
func TestAFlangeLiesBetweenAPostAndAClamp(t *testing.T) {
	p := desk()
	at := p.Discs
	screwed := solved(t, p)
	p.Discs = nil
	for _, d := range at {
		p.Posts = append(p.Posts, Post{X: d.X, Y: d.Y, TwoSided: true})
	}
	posts := solved(t, p)
	p.Posts, p.Discs = nil, at
	for i := range p.Discs {
		p.Discs[i].Clamped = true
	}
	clamped := solved(t, p)
	if !(clamped.Sag.Value < screwed.Sag.Value && screwed.Sag.Value < posts.Sag.Value) {
		t.Errorf("clamped %v, screwed %v, on posts %v", clamped.Sag.Value, screwed.Sag.Value, posts.Sag.Value)
	}
	for _, r := range []*Result{clamped, screwed, posts} {
		sum := 0.0
		for _, s := range append(r.Discs, r.Posts...) {
			sum += s.N
		}
		within(t, "reactions", sum, r.Load, 1e-6)
	}
}

// 1 MPa over a quarter and half of another quarter: what lies beyond the edge or over an opening is lost.
func TestALoadPressesOnWoodOnly(t *testing.T) {
	p := of1000(1)
	p.Edges = all(Resting)
	p.Openings = []Rect{{X: 400, Y: 400, W: 200, H: 200}}
	p.Load.Patches = []Patch{{Rect{-100, 300, 1200, 250}, 1e-3}}
	// 1000 × 250 less the 200 × 150 that lie over the opening.
	within(t, "load", solved(t, p).Load, 220, 1e-9)
	p.Load = Load{Density: 700}
	// 700 kg/m³ · 9.80665 · (1 − 0.04) m² · 0.01 m
	within(t, "own weight", solved(t, p).Load, 700*9.80665*0.96*0.01, 1e-9)
}

func TestARoundHoleIsNeverSmallerThanItsCircle(t *testing.T) {
	p := of1000(1)
	p.Edges = all(Resting)
	p.bear(false)
	p.Holes = []Circle{{X: 300, Y: 600, R: 80}}
	r := solved(t, p)
	for k := range 64 {
		a := 2 * math.Pi * float64(k) / 64
		if _, ok := r.Field.At(300+79*math.Cos(a), 600+79*math.Sin(a)); ok {
			t.Errorf("wood in the hole at %v°", 360*k/64)
		}
	}
	// The stepped outline holds two rectangles of 2r × √2·r less the square of side √2·r they share: 4√2 − 2 = 3.657
	// times r², instead of π.
	within(t, "load", r.Load, 1e-3*(1e6-(4*math.Sqrt2-2)*6400), 1e-9)
}

// A long narrow plate held along its long edges is a strip across: q·b⁴/384D (Timoshenko and Woinowsky-Krieger, chapter 1,
// bending to a cylindrical surface). At 7:1 and beyond the ends no longer reach the middle.
func TestANarrowPlateWithHeldEdgesSags(t *testing.T) {
	for _, ratio := range []float64{7, 12, 40} {
		for _, turned := range []bool{false, true} {
			p := of1000(ratio)
			if turned {
				p.Width, p.Depth = p.Depth, p.Width
			}
			p.bear(false)
			p.Edges = all(Held)
			within(t, "held strip", solved(t, p).Sag.Value, 1000.0/384, 0.01)
		}
	}
}

// On two resting ends a long narrow plate of wood is the beam of the same wood: 5·q·L⁴/384EI. What it bends across on the way
// changes that by less than a hundredth.
func TestALongNarrowPlateOnTwoEndsIsABeam(t *testing.T) {
	for _, slim := range []float64{8, 12, 20} {
		p := &Plate{Width: 1200, Depth: 1200 / slim, Thickness: 18, Material: wood, Load: Load{Pressure: 1e-3}}
		p.Edges = [4]Edge{Resting, Resting}
		want := 5 * 1e-3 * math.Pow(1200, 4) / (384 * wood.EL * 18 * 18 * 18 / 12)
		middle, _ := solved(t, p).Field.At(600, p.Depth/2)
		within(t, "strip on two ends", middle, want, 0.01)
	}
}

// A hole of a tenth of the shorter side, taken as the square around it, makes a plate on two ends sag more, by less than a
// thousandth more than the stepped circle does.
func TestASmallHoleAsASquareHardlyMatters(t *testing.T) {
	p := &Plate{Width: 1000, Depth: 400, Thickness: 18, Material: wood, Load: Load{Pressure: 1e-3}}
	p.Edges = [4]Edge{Resting, Resting}
	whole := solved(t, p).Sag.Value
	square, round := *p, *p
	square.Holes = []Circle{{X: 500, Y: 200, R: 20}}
	round.Holes = []Circle{{X: 500, Y: 200, R: 20.1}} // just too large
	a, b := solved(t, &square).Sag.Value, solved(t, &round).Sag.Value
	t.Logf("without %v, square %v, round %v", whole, a, b)
	if a < whole*0.999 || math.Abs(a-b) > 0.002*whole {
		t.Errorf("without a hole %v, as a square %v, round %v", whole, a, b)
	}
}
