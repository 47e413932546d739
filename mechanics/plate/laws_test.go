package plate

import (
	"encoding/binary"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawn draws a plate as a shop might have: notches, an opening, supports of every kind.
func drawn(t *rapid.T) *Plate {
	num := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, name)) }
	p := &Plate{Width: num("width", 300, 1500), Depth: num("depth", 200, 900), Thickness: num("thickness", 6, 40), Material: wood}
	p.GrainAlongY = rapid.Bool().Draw(t, "turned")
	if rapid.Bool().Draw(t, "notch") {
		p.Openings = append(p.Openings, Rect{X: p.Width * num("notch x", 20, 60) / 100, Y: -1, W: p.Width / 6, H: p.Depth * num("notch y", 5, 40) / 100})
	}
	p.Load = Load{Pressure: num("pressure", 0, 30) / 1e4, Density: num("density", 0, 900)}
	in := num("inset", 0, 15) / 100
	for k, s := range corners(1, 1, rapid.Bool().Draw(t, "two-sided")) {
		x, y := p.Width*(in+(1-2*in)*s.X), p.Depth*(in+(1-2*in)*s.Y)
		switch k % 2 * rapid.IntRange(0, 2).Draw(t, "support") {
		case 0:
			p.Posts = append(p.Posts, Post{X: x, Y: y, TwoSided: s.TwoSided, Spring: num("spring", 0, 1) * 200})
		case 1:
			p.Posts = append(p.Posts, Post{X: x, Y: y, TwoSided: s.TwoSided})
		case 2:
			p.Discs = append(p.Discs, Disc{X: x, Y: y, R: 30, TwoSided: s.TwoSided, Clamped: rapid.Bool().Draw(t, "clamped")})
		}
	}
	if rapid.Bool().Draw(t, "rail") {
		p.Rails = []Rail{{FromX: p.Width * in, FromY: p.Depth / 2, ToX: p.Width * (1 - in), ToY: p.Depth / 2, EI: num("EI", 0, 3) * 1e9, TwoSided: rapid.Bool().Draw(t, "fixed")}}
	}
	if rapid.Bool().Draw(t, "force") {
		p.Load.Points = []PointLoad{{X: p.Width * num("force x", 0, 10) / 10, Y: p.Depth * num("force y", 5, 10) / 10, N: num("force N", -20, 500)}}
	}
	return p
}

func TestReactionsSumToTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		r, err := p.Solve()
		if err != nil {
			return
		}
		sum, size := 0.0, math.Abs(r.Load)
		for _, list := range [][]Reaction{r.Posts, r.Discs, r.Rails, r.Edges[:]} {
			for _, s := range list {
				sum += s.N
				size = max(size, math.Abs(s.N))
			}
		}
		if math.Abs(sum-r.Load) > 1e-5*size+1e-6 {
			t.Errorf("the supports carry %v of %v N", sum, r.Load)
		}
		for i, s := range r.Posts {
			// A post nearer to an edge of the notch than the mesh can tell stands between both.
			w, _ := r.Field.At(r.Field.X[nearest(r.Field.X, p.Posts[i].X)], r.Field.Y[nearest(r.Field.Y, p.Posts[i].Y)])
			if !p.Posts[i].TwoSided && s.N < -1e-4*size {
				t.Errorf("post %d pulls %v N and can't", i+1, s.N)
			}
			if p.Posts[i].Spring == 0 && w > 1e-5*max(1e-9, math.Abs(r.Sag.Value), r.Rise.Value) {
				t.Errorf("the plate has sunk %v mm into post %d", w, i+1)
			}
		}
	})
}

// The law holds exactly: supports that lift do not care about size, and the meshes are the same.
func TestSagGrowsAsTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		a, err := p.Solve()
		if err != nil {
			return
		}
		f := rapid.Float64Range(1, 10).Draw(t, "factor")
		p.Load.Pressure, p.Load.Density = f*p.Load.Pressure, f*p.Load.Density
		for i := range p.Load.Points {
			p.Load.Points[i].N *= f
		}
		b, err := p.Solve()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(b.Sag.Value-f*a.Sag.Value) > 1e-4*math.Abs(f*a.Sag.Value)+1e-9 {
			t.Errorf("%v times the load: sags %v instead of %v", f, b.Sag.Value, a.Sag.Value)
		}
	})
}

// onEdges draws a plate of which more of any load means more sag everywhere: rectangular, on four edges.
func onEdges(t *rapid.T) *Plate {
	num := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, name)) }
	p := &Plate{Width: num("width", 300, 1500), Depth: num("depth", 200, 900), Thickness: num("thickness", 6, 40), Material: wood, Edges: all(Resting)}
	p.Load = Load{Pressure: num("pressure", 1, 30) / 1e4, Points: []PointLoad{{X: p.Width * num("x", 1, 9) / 10, Y: p.Depth * num("y", 1, 9) / 10, N: num("N", 0, 300)}}}
	return p
}

func TestSagNeverShrinksWhenALoadGrowsThicknessFallsOrSpanGrows(t *testing.T) {
	for name, worse := range map[string]func(p *Plate, f float64){
		"pressure":  func(p *Plate, f float64) { p.Load.Pressure *= f },
		"force":     func(p *Plate, f float64) { p.Load.Points[0].N *= f },
		"thickness": func(p *Plate, f float64) { p.Thickness /= f },
		"span": func(p *Plate, f float64) {
			p.Width, p.Depth = p.Width*f, p.Depth*f
			p.Load.Points[0].X, p.Load.Points[0].Y = p.Load.Points[0].X*f, p.Load.Points[0].Y*f
		},
	} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				p := onEdges(t)
				a, err := p.Solve()
				if err != nil {
					t.Fatal(err)
				}
				worse(p, rapid.Float64Range(1, 3).Draw(t, "factor"))
				b, err := p.Solve()
				if err != nil {
					t.Fatal(err)
				}
				// One may have ended on a finer mesh than the other: the figure of convergence is allowed for.
				if b.Sag.Value < a.Sag.Value*(1-2*enough) {
					t.Errorf("sags %v, before %v", b.Sag.Value, a.Sag.Value)
				}
			})
		})
	}
}

func mirror(p *Plate) *Plate {
	m := *p
	m.Openings, m.Posts, m.Discs, m.Rails, m.Load.Points = nil, nil, nil, nil, nil
	for _, o := range p.Openings {
		o.X = p.Width - o.X - o.W
		m.Openings = append(m.Openings, o)
	}
	for _, s := range p.Posts {
		s.X = p.Width - s.X
		m.Posts = append(m.Posts, s)
	}
	for _, s := range p.Discs {
		s.X = p.Width - s.X
		m.Discs = append(m.Discs, s)
	}
	for _, s := range p.Rails {
		s.FromX, s.ToX = p.Width-s.FromX, p.Width-s.ToX
		m.Rails = append(m.Rails, s)
	}
	for _, l := range p.Load.Points {
		l.X = p.Width - l.X
		m.Load.Points = append(m.Load.Points, l)
	}
	return &m
}

func TestAMirroredPlateSagsMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		a, err := p.Solve()
		b, err2 := mirror(p).Solve()
		if (err == nil) != (err2 == nil) {
			t.Fatalf("%v, mirrored %v", err, err2)
		}
		if err != nil {
			return
		}
		size := max(math.Abs(a.Sag.Value), a.Rise.Value, 1e-6)
		for i, x := range a.Field.X {
			for j, y := range a.Field.Y {
				w := a.Field.W[i*len(a.Field.Y)+j]
				if v, ok := b.Field.At(p.Width-x, y); ok && math.Abs(v-w) > 1e-4*size {
					t.Fatalf("at %v, %v: %v, mirrored %v", x, y, w, v)
				}
			}
		}
		for i := range a.Posts {
			if math.Abs(a.Posts[i].N-b.Posts[i].N) > 1e-4*max(1, math.Abs(a.Load)) {
				t.Errorf("post %d: %v, mirrored %v", i+1, a.Posts[i].N, b.Posts[i].N)
			}
		}
	})
}

func TestAPlateTurnedByAQuarterSagsTheSame(t *testing.T) {
	p := desk()
	q := &Plate{Width: p.Depth, Depth: p.Width, Thickness: p.Thickness, Material: p.Material, GrainAlongY: true, Load: p.Load}
	for _, o := range p.Openings {
		q.Openings = append(q.Openings, Rect{o.Y, o.X, o.H, o.W})
	}
	for _, d := range p.Discs {
		q.Discs = append(q.Discs, Disc{X: d.Y, Y: d.X, R: d.R, TwoSided: d.TwoSided})
	}
	a, b := solved(t, p), solved(t, q)
	within(t, "sag", b.Sag.Value, a.Sag.Value, 1e-9)
	within(t, "along", b.Along.Value, a.Along.Value, 1e-6)
	within(t, "across", b.Across.Value, a.Across.Value, 1e-6)
	if a.Sag.X != b.Sag.Y || a.Sag.Y != b.Sag.X {
		t.Errorf("sags most at %v, %v, turned at %v, %v", a.Sag.X, a.Sag.Y, b.Sag.X, b.Sag.Y)
	}
}

func TestTheSamePlateGivesTheSameBits(t *testing.T) {
	a, b := solved(t, desk()), solved(t, desk())
	if a.Sag != b.Sag || a.Along != b.Along || a.Discs[0] != b.Discs[0] {
		t.Error("two answers to the same question")
	}
}

// finite reports a result that holds NaN or infinity.
func finite(r *Result) bool {
	sum := r.Sag.Value + r.Rise.Value + r.BelowSupports.Value + r.Along.Value + r.Across.Value + r.Load + r.Change
	for _, list := range [][]Reaction{r.Posts, r.Discs, r.Rails, r.Edges[:]} {
		for _, s := range list {
			sum += s.N
		}
	}
	for _, w := range r.Field.W {
		sum += w
	}
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

func FuzzSolve(f *testing.F) {
	f.Add([]byte("a plate"), 1000.0, 500.0, 18.0, 11000.0, 1e-3)
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 200, 100, 50, 25}, 10.0, 900.0, 0.2, 1e7, -1e3)
	f.Add([]byte{255, 254, 3, 128}, math.NaN(), math.Inf(1), -1.0, 0.0, 1e300)
	f.Fuzz(func(t *testing.T, raw []byte, a, b, h, e, q float64) {
		if len(raw) > 120 {
			raw = raw[:120]
		}
		p := &Plate{Width: a, Depth: b, Thickness: h, Material: Material{EL: e, ET: e / 3, NuLT: 0.3, GLT: e / 5}, Load: Load{Pressure: q}}
		for ; len(raw) >= 6; raw = raw[6:] {
			x, y := a*float64(raw[1])/200, b*float64(raw[2])/200
			u, v := a*float64(raw[3])/200, b*float64(raw[4])/200
			flag := raw[5]
			switch raw[0] % 8 {
			case 0:
				p.Openings = append(p.Openings, Rect{x, y, u, v})
			case 1:
				p.Holes = append(p.Holes, Circle{x, y, u / 4})
			case 2:
				p.Edges[flag%4] = Edge(flag >> 4 % 5)
			case 3, 4:
				p.Posts = append(p.Posts, Post{X: x, Y: y, TwoSided: flag&1 > 0, Spring: float64(flag>>1) * u})
			case 5:
				p.Discs = append(p.Discs, Disc{X: x, Y: y, R: u / 4, TwoSided: flag&1 > 0, Clamped: flag&2 > 0})
			case 6:
				r := Rail{FromX: x, FromY: y, ToX: u, ToY: y, EI: float64(flag>>3) * e * h, TwoSided: flag&1 > 0, Loose: flag&2 > 0}
				if flag&4 > 0 {
					r.ToX, r.ToY = x, v
				}
				p.Rails = append(p.Rails, r)
			case 7:
				p.Load.Points = append(p.Load.Points, PointLoad{x, y, float64(int8(flag)) * q * u})
				p.Load.Patches = append(p.Load.Patches, Patch{Rect{x, y, u, v}, math.Float64frombits(binary.LittleEndian.Uint64(append([]byte{raw[1], raw[2], 0, 0, 0, 0}, flag, raw[3])))})
			}
		}
		r, err := p.Solve()
		if err == nil && !finite(r) {
			t.Errorf("%+v: %+v", p, r)
		}
	})
}
