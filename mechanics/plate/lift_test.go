package plate

import (
	"errors"
	"math"
	"testing"
)

// strip is a beam of 1000 × 50 × 10 mm with no narrowing across: EI = 10 000·50·10³/12.
func strip() *Plate {
	return &Plate{Width: 1000, Depth: 50, Thickness: 10, Material: Material{EL: 10_000, ET: 8_000, GLT: 4_000}}
}

const stripEI = 10_000 * 50 * 1000 / 12.0

// pairs puts two posts under the strip at each place.
func (p *Plate) pairs(twoSided bool, xs ...float64) {
	for _, x := range xs {
		p.Posts = append(p.Posts, Post{X: x, Y: 0, TwoSided: twoSided}, Post{X: x, Y: 50, TwoSided: twoSided})
	}
}

// A force P in the middle of the first of two spans l: the far end pulls with 3P/32 when it can (the theorem of
// three moments, worked by hand: M over the middle post is 3Pl/32), and lifts when it can't: then the first
// span is a simple beam and the second follows its slope.
func TestTheFarEndOfTwoSpansLiftsUnlessItIsStrapped(t *testing.T) {
	const force, l = 100.0, 500.0
	p := strip()
	p.Load.Points = []PointLoad{{X: 250, Y: 25, N: force}}
	p.pairs(true, 0, 500, 1000)
	strapped := solved(t, p)
	within(t, "strapped far end", strapped.Posts[4].N+strapped.Posts[5].N, -3*force/32, 0.02)

	p.Posts = nil
	p.pairs(false, 0, 500, 1000)
	r := solved(t, p)
	for i, want := range []float64{25, 25, 25, 25, 0, 0} {
		if math.Abs(r.Posts[i].N-want) > 0.05 || r.Posts[i].Lifted != (want == 0) {
			t.Errorf("post %d carries %v, not %v: %+v", i+1, r.Posts[i].N, want, r.Posts[i])
		}
	}
	within(t, "sag", r.Sag.Value, force*l*l*l/(48*stripEI), 0.02)
	within(t, "rise of the far end", r.Rise.Value, force*l*l/(16*stripEI)*l, 0.02)
	if r.Rise.X != 1000 {
		t.Errorf("rises most at %v, not at its far end", r.Rise.X)
	}
}

// A force at u, v (of 1) of a plate on four corners goes to them as by bilinear interpolation, whatever the
// plate is made of: pushing opposite corners against the other two only twists it, w ~ u·v, so by Maxwell's
// reciprocity the force works on that motion as u·v, and statics gives the rest.
func TestFourCornersShareAForceBilinearly(t *testing.T) {
	p := of1000(1.5)
	p.Material = wood
	p.Posts = corners(1500, 1000, true)
	p.Load.Points = []PointLoad{{X: 450, Y: 200, N: 100}}
	r := solved(t, p)
	// u = 0.3, v = 0.2
	for i, want := range []float64{56, 24, 14, 6} {
		within(t, "corner", r.Posts[i].N, want, 1e-6)
	}
}

// 100 N three tenths of the way in from one corner, the far corner pulled up with 15 N: by the law above it
// would be held down with 15 − 9 N. Loose, it lifts and three carry: moments about the near corner give each
// neighbour (100·300 − 15·1000)/1000 N, the near one the rest of 85 N.
func TestAFarCornerLiftsAndThreeCarryAsByStatics(t *testing.T) {
	p := of1000(1)
	p.Material = wood
	p.Load.Points = []PointLoad{{X: 300, Y: 300, N: 100}, {X: 1000, Y: 1000, N: -15}}
	p.Posts = corners(1000, 1000, true)
	strapped := solved(t, p)
	within(t, "strapped corner", strapped.Posts[3].N, -6, 1e-6)
	p.Posts = corners(1000, 1000, false)
	r := solved(t, p)
	for i, want := range []float64{55, 15, 15, 0} {
		if math.Abs(r.Posts[i].N-want) > 1e-4 || r.Posts[i].Lifted != (want == 0) {
			t.Errorf("corner %d carries %v, not %v", i+1, r.Posts[i].N, want)
		}
	}
	if w, _ := r.Field.At(1000, 1000); w >= 0 {
		t.Errorf("the far corner has lifted and lies %v below its post", w)
	}
	// The 6 N that no longer hold it down had twisted the plate and nothing else: a corner force R is 2·Mxy = 4·Dk·κxy
	// (Timoshenko and Woinowsky-Krieger, chapter 2, pure twist), so that the corner rises by 6·1000²/(4·Dk) with
	// Dk = 750·10³/12, and the middle by a quarter of it.
	within(t, "far corner", r.Rise.Value, 6e6/(4*62_500.0), 1e-6)
	was, _ := strapped.Field.At(500, 500)
	is, _ := r.Field.At(500, 500)
	within(t, "middle", was-is, r.Rise.Value/4, 1e-6)
}

// The corners of a plate on four edges curl up under an even load (Timoshenko and Woinowsky-Krieger, chapter
// 5, on the forces that hold them down).
func TestCornersOfALyingPlateCurlUp(t *testing.T) {
	p := of1000(1)
	p.bear(false)
	p.Edges = all(Resting)
	down := solved(t, p)
	p.Edges = all(Lying)
	r := solved(t, p)
	sum := 0.0
	for i, e := range r.Edges {
		if !e.Partly || e.Lifted || e.N < 0 {
			t.Errorf("edge %d: %+v", i+1, e)
		}
		sum += e.N
	}
	within(t, "reactions", sum, 1000, 1e-6)
	for _, c := range [][2]float64{{0, 0}, {1000, 0}, {0, 1000}, {1000, 1000}} {
		if w, _ := r.Field.At(c[0], c[1]); w >= 0 {
			t.Errorf("corner %v lies at %v", c, w)
		}
	}
	if !(r.Sag.Value > down.Sag.Value && r.Sag.Value < 1.1*down.Sag.Value) {
		t.Errorf("sags %v lying, %v held down", r.Sag.Value, down.Sag.Value)
	}
}

func TestALoadBeyondThePostsTipsThePlate(t *testing.T) {
	p := of1000(1)
	for _, x := range []float64{200, 800} {
		p.Posts = append(p.Posts, Post{X: x, Y: 200}, Post{X: x, Y: 800})
	}
	p.Load.Points = []PointLoad{{X: 950, Y: 500, N: 100}}
	var loose *Unheld
	if _, err := p.Solve(); !errors.As(err, &loose) {
		t.Fatalf("stands: %v", err)
	}
	t.Log(loose)
	// Strapped, it holds: moments about x = 800 give the near pair 100·(950 − 200)/600, the far −100·150/600.
	for i := range p.Posts {
		p.Posts[i].TwoSided = true
	}
	r := solved(t, p)
	for i, want := range []float64{-12.5, -12.5, 62.5, 62.5} {
		within(t, "strapped post", r.Posts[i].N, want, 1e-6)
	}
	// Or heavy enough: 1000 N of its own in the middle against 100·150 N·mm.
	for i := range p.Posts {
		p.Posts[i].TwoSided = false
	}
	p.Load.Pressure = 1e-3
	if _, err := p.Solve(); err != nil {
		t.Error(err)
	}
}

func TestAPlateThatRocksSettles(t *testing.T) {
	// Five posts and a heavy load over one corner: it bends over the middle one, and who lifts is not plain.
	p := of1000(1)
	p.bear(false)
	p.Posts = append(corners(1000, 1000, false), Post{X: 500, Y: 500})
	p.Load.Points = []PointLoad{{X: 50, Y: 50, N: 3000}}
	r := solved(t, p)
	sum := 0.0
	for i, s := range r.Posts {
		sum += s.N
		if s.N < -1e-3 || s.Lifted && s.N != 0 {
			t.Errorf("post %d: %+v", i+1, s)
		}
		if w, _ := r.Field.At(p.Posts[i].X, p.Posts[i].Y); w > 1e-6 {
			t.Errorf("post %d: the plate sinks into it by %v", i+1, w)
		}
	}
	within(t, "reactions", sum, 4000, 1e-6)
}

func TestAPlateThatNothingHoldsIsAnError(t *testing.T) {
	for name, change := range map[string]func(*Plate){
		"no support":      func(*Plate) {},
		"one post":        func(p *Plate) { p.Posts = []Post{{X: 500, Y: 500, TwoSided: true}} },
		"two posts":       func(p *Plate) { p.Posts = []Post{{X: 0, Y: 0, TwoSided: true}, {X: 1000, Y: 1000, TwoSided: true}} },
		"posts on a line": func(p *Plate) { p.Posts = []Post{{X: 0}, {X: 500}, {X: 1000}} },
		"one resting edge": func(p *Plate) {
			p.Edges[Left] = Resting
		},
		"a batten alone": func(p *Plate) {
			p.Rails = []Rail{{FromX: 100, FromY: 500, ToX: 900, ToY: 500, EI: 1e9, Loose: true}}
		},
		"a piece cut off": func(p *Plate) {
			p.Edges[Left] = Held
			p.Openings = []Rect{{X: 400, Y: -1, W: 50, H: 1002}}
		},
		"lifted off": func(p *Plate) {
			p.Posts = corners(1000, 1000, false)
			p.Load.Pressure = -1e-3
		},
	} {
		p := of1000(1)
		p.bear(false)
		change(p)
		r, err := p.Solve()
		var loose *Unheld
		if !errors.As(err, &loose) || loose.Text == "" {
			t.Errorf("%s: %v, %v", name, r, err)
			continue
		}
		t.Logf("%s: %v", name, err)
		if name == "a piece cut off" && loose.X < 400 {
			t.Errorf("says that it moves at %v", loose.X)
		}
	}
}

// More lifts at first than does in the end: what has sunk into its edge must come to rest on it again.
func TestAPlateNeverSinksIntoTheEdgesItLiesOn(t *testing.T) {
	for _, at := range [][2]float64{{100, 100}, {500, 60}, {150, 500}, {900, 300}} {
		p := &Plate{Width: 1000, Depth: 600, Thickness: 12, Material: wood, Edges: all(Lying)}
		p.Load.Points = []PointLoad{{X: at[0], Y: at[1], N: 200}, {X: 700, Y: 450, N: 150}}
		r := solved(t, p)
		f := r.Field
		for i, x := range f.X {
			for j, y := range f.Y {
				if rim := x == 0 || y == 0 || x == p.Width || y == p.Depth; rim && f.W[i*len(f.Y)+j] > 1e-6*r.Sag.Value {
					t.Errorf("force at %v: the plate lies %v mm below its edge at %v, %v", at, f.W[i*len(f.Y)+j], x, y)
				}
			}
		}
		within(t, "reactions", r.Edges[Left].N+r.Edges[Right].N+r.Edges[Front].N+r.Edges[Back].N, 350, 1e-6)
	}
}
