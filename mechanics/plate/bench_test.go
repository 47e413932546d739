package plate

import (
	"strconv"
	"testing"
)

// desk is 1200 × 500 mm of a hardwood of its class, 18 mm thick, with two notches and four flange discs.
func desk() *Plate {
	p := &Plate{Width: 1200, Depth: 500, Thickness: 18, Material: Material{EL: 11000, ET: 800, NuLT: 0.35, GLT: 700}}
	p.Load = Load{Pressure: 1e-3, Density: 600}
	p.Openings = []Rect{{500, 0, 200, 80}, {0, 200, 60, 100}}
	for _, x := range []float64{120, 1080} {
		for _, y := range []float64{80, 420} {
			p.Discs = append(p.Discs, Disc{X: x, Y: y, R: 40, TwoSided: true})
		}
	}
	return p
}

func BenchmarkSolveDesk(b *testing.B) {
	p := desk()
	for b.Loop() {
		r, err := p.Solve()
		if err != nil || !r.Converged {
			b.Fatal(err)
		}
	}
}

// BenchmarkSolveDeskThatLifts leaves the discs lying, under a load at one end: some of their points lift.
func BenchmarkSolveDeskThatLifts(b *testing.B) {
	p := desk()
	for i := range p.Discs {
		p.Discs[i].TwoSided = false
	}
	p.Load.Points = []PointLoad{{X: 1190, Y: 250, N: 300}}
	for b.Loop() {
		if _, err := p.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSolveBench works out plates of a bench that grows by posts and notches: the time should grow about as its length.
func BenchmarkSolveBench(b *testing.B) {
	for _, bays := range []int{1, 2, 4, 8, 16} {
		b.Run(strconv.Itoa(bays)+" bays", func(b *testing.B) {
			p := bench(bays)
			for b.Loop() {
				if _, err := p.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// bench is a plate with a pair of posts and a notch for every 600 mm of its length.
func bench(bays int) *Plate {
	p := &Plate{Width: 600 * float64(bays), Depth: 400, Thickness: 25, Material: wood, Load: Load{Pressure: 1e-3}}
	for k := range bays + 1 {
		x := min(max(600*float64(k), 50), p.Width-50)
		p.Posts = append(p.Posts, Post{X: x, Y: 50, TwoSided: true}, Post{X: x, Y: 350, TwoSided: true})
	}
	for k := range bays {
		p.Openings = append(p.Openings, Rect{X: 600*float64(k) + 280, Y: 0, W: 40, H: 60})
	}
	return p
}
