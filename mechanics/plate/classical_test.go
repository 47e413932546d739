package plate

import (
	"fmt"
	"math"
	"testing"
)

// classic is one line of the tables of Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.
// 1959: the sag at the middle is table · q·a⁴/D under an even pressure and table · P·a²/D under a force at
// the middle, ν = 0.3, a the shorter side. Numbers of tables and coefficients are from memory; the tests work
// each out again, by Navier's series or Ritz' method, and hold both against each other.
type classic struct {
	ratio float64 // the longer side over the shorter
	edges Edge
	point bool
	table float64
	where string
}

var classics = []classic{
	{1, Resting, false, 0.00406, "table 8"},
	{2, Resting, false, 0.01013, "table 8"},
	{1, Resting, true, 0.01160, "table 23"},
	{2, Resting, true, 0.01651, "table 23"},
	{1, Held, false, 0.00126, "table 35"},
	{2, Held, false, 0.00254, "table 35"},
	{1, Held, true, 0.00560, "table 37"},
	{2, Held, true, 0.00722, "table 37"},
}

// of1000 is a plate with the shorter side 1000 mm and D = E·t³/12(1 − ν²) = 10 920·1000/(12·0.91) = 1e6 N·mm.
func of1000(ratio float64) *Plate {
	return &Plate{Width: 1000 * ratio, Depth: 1000, Thickness: 10, Material: Even(10_920, 0.3)}
}

// bear loads the plate so that its sag in mm is 1000 times the coefficient, either way: q·a⁴/D = 1e-3·1e12/1e6
// and P·a²/D = 1000·1e6/1e6.
func (p *Plate) bear(point bool) {
	p.Load.Pressure = 1e-3
	if point {
		p.Load = Load{Points: []PointLoad{{X: p.Width / 2, Y: p.Depth / 2, N: 1000}}}
	}
}

func (c classic) reference(s Stiffness, p *Plate) float64 {
	q, force := p.Load.Pressure, 0.0
	if c.point {
		force = p.Load.Points[0].N
	}
	if c.edges == Held {
		return ritzClamped(s, p.Width, p.Depth, q, force)
	}
	return navier(s, p.Width, p.Depth, q, force)
}

func TestPlatesOnFourEdgesSagAsInTheTables(t *testing.T) {
	for _, c := range classics {
		p := of1000(c.ratio)
		p.Edges = all(c.edges)
		p.bear(c.point)
		name := fmt.Sprintf("1:%g, edges %d, point %v, %s", c.ratio, c.edges, c.point, c.where)
		want := c.reference(stiffness(t, p), p)
		// The coefficients have three or four figures: half a unit of the last is up to 0.4 %.
		within(t, name+", computed against printed", want, 1000*c.table, 0.005)
		r := solved(t, p)
		within(t, name, r.Sag.Value, want, 0.01)
		middle, ok := r.Field.At(p.Width/2, p.Depth/2)
		if !ok || off(middle, r.Sag.Value) > 1e-3 {
			t.Errorf("%s: sags %v at its middle, %v at most", name, middle, r.Sag.Value)
		}
	}
}

func TestAPlateOnItsCornersSagsAsByRitz(t *testing.T) {
	p := of1000(1)
	p.Posts = corners(1000, 1000, true)
	p.bear(false)
	want := ritzCorners(stiffness(t, p), 1000, 1000, 1e-3, 0)
	// 0.02551 q·a⁴/D is from memory.
	within(t, "Ritz against memory", want, 25.51, 0.002)
	r := solved(t, p)
	within(t, "on four corners", r.Sag.Value, want, 0.01)
	for i, s := range r.Posts {
		within(t, fmt.Sprintf("post %d", i+1), s.N, 250, 1e-6) // a quarter of 1e-3 · 1000²
	}
}

func TestAWoodenPlateOnItsCornersSagsAsByRitz(t *testing.T) {
	for _, turned := range []bool{false, true} {
		p := &Plate{Width: 900, Depth: 600, Thickness: 18, Material: wood, GrainAlongY: turned, Load: Load{Pressure: 2e-3}}
		p.Posts = corners(900, 600, false)
		r := solved(t, p)
		middle, _ := r.Field.At(450, 300)
		within(t, fmt.Sprintf("turned %v", turned), middle, ritzCorners(stiffness(t, p), 900, 600, 2e-3, 0), 0.01)
	}
}

func TestAWoodenPlateOnFourEdgesSagsAsByNavier(t *testing.T) {
	for _, turned := range []bool{false, true} {
		for _, force := range []float64{0, 400} {
			p := &Plate{Width: 1000, Depth: 700, Thickness: 16, Material: wood, GrainAlongY: turned, Edges: all(Resting)}
			p.Load = Load{Pressure: 3e-3, Points: []PointLoad{{X: 500, Y: 350, N: force}}}
			want := navier(stiffness(t, p), 1000, 700, 3e-3, force)
			within(t, fmt.Sprintf("turned %v, force %v", turned, force), solved(t, p).Sag.Value, want, 0.01)
		}
	}
}

// A strip with no narrowing across is a beam.
func TestAStripSagsAndIsStressedAsABeam(t *testing.T) {
	const l, b, h, e, q = 1000.0, 50.0, 10.0, 10_000.0, 2e-3
	p := &Plate{Width: l, Depth: b, Thickness: h, Material: Material{EL: e, ET: e / 15, GLT: e / 16}, Load: Load{Pressure: q}}
	inertia := b * h * h * h / 12
	for _, c := range []struct {
		ends   Edge
		sag    float64 // of q·L⁴/EI
		moment float64 // of q·L²
	}{{Resting, 5.0 / 384, 1.0 / 8}, {Lying, 5.0 / 384, 1.0 / 8}, {Held, 1.0 / 384, 1.0 / 12}} {
		p.Edges = [4]Edge{c.ends, c.ends}
		r := solved(t, p)
		within(t, fmt.Sprintf("ends %d: sag", c.ends), r.Sag.Value, c.sag*q*b*l*l*l*l/(e*inertia), 0.002)
		// σ = M·(h/2)/I
		within(t, fmt.Sprintf("ends %d: stress", c.ends), r.Along.Value, c.moment*q*b*l*l*h/2/inertia, 0.03)
		within(t, "reactions", r.Edges[Left].N+r.Edges[Right].N, q*b*l, 1e-6)
	}
	// A cantilever: q·L⁴/8EI.
	p.Edges = [4]Edge{Held}
	within(t, "cantilever", solved(t, p).Sag.Value, q*b*l*l*l*l/(8*e*inertia), 0.002)
}

func TestTheLargestStressOfASquareIsThatOfTheTables(t *testing.T) {
	p := of1000(1)
	p.bear(false)
	// M at the middle of a resting square is 0.0479 q·a² (table 8), at the middle of a held edge 0.0513 q·a²
	// (table 35), both from memory; σ = 6M/t², q·a² = 1000 N.
	p.Edges = all(Resting)
	within(t, "resting", solvedTo(t, p, 8).Along.Value, 6*47.9/100, 0.01)
	p.Edges = all(Held)
	within(t, "held", solvedTo(t, p, 8).Across.Value, 6*51.3/100, 0.01)
}

// solvedTo solves on the given number of meshes, whatever they change.
func solvedTo(t *testing.T, p *Plate, meshes int) *Result {
	t.Helper()
	r, err := p.refine(0, meshes)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestErrorFallsAsTheMeshIsRefined(t *testing.T) {
	held, cornered := of1000(1), of1000(1)
	held.bear(false)
	held.Edges = all(Held)
	cornered.bear(false)
	cornered.Posts = corners(1000, 1000, true)
	for _, c := range []struct {
		name string
		p    *Plate
		want float64
	}{
		{"held", held, ritzClamped(stiffness(t, held), 1000, 1000, 1e-3, 0)},
		{"on corners", cornered, ritzCorners(stiffness(t, cornered), 1000, 1000, 1e-3, 0)},
	} {
		last := math.Inf(1)
		for _, cells := range []float64{2, 4, 8, 16} {
			s := stiffness(t, c.p)
			xs, ys := meshing{[]float64{0, 1000}, []float64{0, 1000}, cells, cells}.split()
			l, err := c.p.newLevel(s, xs, ys)
			if err == nil {
				err = l.settle()
			}
			if err != nil {
				t.Fatal(err)
			}
			e := off(l.result(c.p).Sag.Value, c.want)
			t.Logf("%s, %g × %g cells: off by %.5f %%", c.name, cells, cells, 100*e)
			// Below a few millionths the reference itself ends.
			if e > last/3 && e > 1e-5 {
				t.Errorf("%s: %g cells a side are off by %v, half as many by %v", c.name, cells, e, last)
			}
			last = e
		}
	}
}
