package plate

import (
	"math"
	"strings"
	"testing"
)

func TestNonsenseIsAnErrorThatNamesIt(t *testing.T) {
	for _, c := range []struct {
		change func(*Plate)
		names  string
	}{
		{func(p *Plate) { p.Width = 0 }, "width"},
		{func(p *Plate) { p.Depth = math.NaN() }, "depth"},
		{func(p *Plate) { p.Width, p.Depth = 1000, 5 }, "thread"},
		{func(p *Plate) { p.Thickness = 0 }, "thickness"},
		{func(p *Plate) { p.Thickness = math.Inf(1) }, "thickness"},
		{func(p *Plate) { p.Material.EL = 0 }, "along the grain"},
		{func(p *Plate) { p.Material.GLT = -1 }, "shear"},
		{func(p *Plate) { p.Material.NuLT = 4 }, "Poisson"},
		{func(p *Plate) { p.Material.ET = 0.02 }, "10 000"},
		{func(p *Plate) { p.Openings = []Rect{{10, 10, 0, 5}} }, "opening 1"},
		{func(p *Plate) { p.Openings = []Rect{{-1, -1, 1e4, 1e4}} }, "leave nothing"},
		{func(p *Plate) { p.Openings = []Rect{{100, 100, 50, 50}, {150, 150, 50, 50}} }, "touch at a corner"},
		{func(p *Plate) { p.Openings = []Rect{{300, 200, 100, 100}}; p.Posts[0] = Post{X: 350, Y: 250} }, "post 1"},
		{func(p *Plate) { p.Openings = []Rect{{300, 200, 100, 100}}; p.Discs = []Disc{{X: 350, Y: 250, R: 10}} }, "disc 1"},
		{func(p *Plate) {
			p.Openings = []Rect{{300, 200, 100, 100}}
			p.Rails = []Rail{{FromX: 320, FromY: 250, ToX: 380, ToY: 250}}
		}, "rail 1"},
		{func(p *Plate) { p.Holes = []Circle{{X: 1, Y: 1, R: math.NaN()}} }, "hole 1"},
		{func(p *Plate) { p.Posts[1].X = -3 }, "post 2"},
		{func(p *Plate) { p.Posts[1].Spring = -3 }, "post 2"},
		{func(p *Plate) { p.Discs = []Disc{{X: 100, Y: 100}} }, "disc 1"},
		{func(p *Plate) { p.Rails = []Rail{{FromX: 0, FromY: 0, ToX: 100, ToY: 100}} }, "rail 1"},
		{func(p *Plate) { p.Rails = []Rail{{FromX: 10, FromY: 10, ToX: 10.1, ToY: 10}} }, "rail 1 is too short"},
		{func(p *Plate) { p.Rails = []Rail{{ToX: 100, Loose: true}} }, "rail 1"},
		{func(p *Plate) { p.Edges[2] = 9 }, "edge 3"},
		{func(p *Plate) { p.Load.Pressure = 1e9 }, "pressure"},
		{func(p *Plate) { p.Load.Density = -1 }, "density"},
		{func(p *Plate) { p.Load.Patches = []Patch{{Rect{0, 0, -1, 1}, 1}} }, "patch 1"},
		{func(p *Plate) { p.Load.Points = []PointLoad{{-5, 0, 1}} }, "point load 1"},
		{func(p *Plate) { p.Load.Points = []PointLoad{{5, 0, math.NaN()}} }, "point load 1"},
		{func(p *Plate) {
			p.Openings = []Rect{{300, 200, 100, 100}}
			p.Load.Points = []PointLoad{{350, 250, 1}}
		}, "point load 1"},
		{func(p *Plate) { p.Posts = make([]Post, 201) }, "posts"},
		{func(p *Plate) {
			for k := range 90 {
				p.Load.Points = append(p.Load.Points, PointLoad{X: 10 * float64(k), Y: 5 * float64(k)})
			}
		}, "too much detail"},
	} {
		p := &Plate{Width: 1000, Depth: 600, Thickness: 18, Material: wood, Posts: corners(1000, 600, true)}
		c.change(p)
		if _, err := p.Solve(); err == nil || !strings.Contains(err.Error(), c.names) {
			t.Errorf("%s: the error is %v", c.names, err)
		}
	}
}

func TestAPlateWithoutLoadLiesStill(t *testing.T) {
	p := &Plate{Width: 1000, Depth: 600, Thickness: 18, Material: wood, Posts: corners(1000, 600, false)}
	r := solved(t, p)
	if r.Sag.Value != 0 || r.Rise.Value != 0 || r.Load != 0 || r.Along.Value != 0 || r.Posts[0].Lifted {
		t.Errorf("%+v", r)
	}
}

func TestAPlateHeldAllOverLiesStill(t *testing.T) {
	p := &Plate{Width: 100, Depth: 100, Thickness: 18, Material: wood, Discs: []Disc{{X: 50, Y: 50, R: 80, Clamped: true}}, Load: Load{Pressure: 1}}
	if r := solved(t, p); r.Sag.Value != 0 {
		t.Errorf("sags %v", r.Sag.Value)
	}
}

func TestLinesThatLieNearBecomeOne(t *testing.T) {
	got := settled([]float64{-3, 0.4, 50, 50.5, 30, 99.8, 100, 200}, 100, 1)
	want := []float64{0, 30, 50.25, 100}
	if len(got) != len(want) {
		t.Fatalf("%v", got)
	}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 1e-12 {
			t.Errorf("%v, not %v", got, want)
		}
	}
	var many []float64
	for k := range 100 {
		many = append(many, 20+0.3*float64(k))
	}
	for i, v := range settled(many, 100, 1)[1:] {
		if v < 100 && math.Abs(v-20-29.7/29*float64(i)) > 1e-9 {
			t.Errorf("line %d lies at %v", i, v)
		}
	}
}
