package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// pictured returns the one finding with a picture of tilts, and the least figure of all.
func pictured(t testing.TB, fs []finding.Finding) (f finding.Finding, least float64) {
	t.Helper()
	least = math.Inf(1)
	n := 0
	for _, g := range fs {
		least = math.Min(least, g.Figure.Value)
		if g.Picture.Tilt != nil {
			f, n = g, n+1
		}
	}
	if n != 1 {
		t.Fatalf("%d pictures:\n%s", n, told(fs))
	}
	return f, least
}

// Feet at the corners of 30 × 12 in, the centre in their middle, 20 in up: to the right atan(15 ÷ 20) = 36.870°, to the back
// atan(6 ÷ 20) = 16.699°, towards 60° the back is reached first: atan(6 ÷ (20·sin 60°)) = 19.107°.
func TestThePictureOfTilts(t *testing.T) {
	f, least := pictured(t, Tip(block([2]float64{30, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{20, 20}})))
	for _, ray := range f.Picture.Tilt.Rays {
		switch ray.Towards {
		case 0, 180:
			near(t, "along", ray.Tilt, 36.870, 0.001)
		case 90, 270:
			near(t, "across", ray.Tilt, 16.699, 0.001)
		case 60:
			near(t, "aslant", ray.Tilt, 19.107, 0.001)
		}
	}
	near(t, "least", f.Figure.Value, least, 0)
	if n := len(f.Picture.Tilt.Base); n != 4 || len(f.Picture.Tilt.Rays) != 36 {
		t.Errorf("%d corners, %d rays", n, len(f.Picture.Tilt.Rays))
	}
}

// Casters that swing in by 1.375 in stand, at their worst, on a base smaller by as much on every side.
func TestThePictureShowsTheBaseOfTheWorstSwivel(t *testing.T) {
	f, _ := pictured(t, Tip(block([2]float64{30, 12}, wheels, []slab{{20, 20}})))
	lo, hi := f.Picture.Tilt.Base[0], f.Picture.Tilt.Base[0]
	for _, c := range f.Picture.Tilt.Base {
		for k := range c {
			lo[k], hi[k] = math.Min(lo[k], c[k]), math.Max(hi[k], c[k])
		}
	}
	near(t, "along", (hi[0]-lo[0])/25.4, 30-2*1.375, 1e-9)
	near(t, "across", (hi[1]-lo[1])/25.4, 12-2*1.375, 1e-9)
}

// The least ray is the worst side's tilt, within what ten degrees between rays leave: tan α ÷ cos 5°. No ray is below it.
func TestTheLeastRayIsTheWorstSide(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range Tip(p) {
			if f.Picture.Tilt == nil || f.Figure.Value <= 0 {
				continue
			}
			least := math.Inf(1)
			for _, ray := range f.Picture.Tilt.Rays {
				least = math.Min(least, ray.Tilt)
			}
			most := math.Atan(math.Tan(f.Figure.Value*math.Pi/180)/math.Cos(5*math.Pi/180)) * 180 / math.Pi
			if least < f.Figure.Value-1e-9 || least > most+1e-9 {
				t.Errorf("seed %d: the least ray is %v°, the worst side %v°", seed, least, f.Figure.Value)
			}
		}
	}
}

// However the wheels are swivelled, the piece bears no less tilt than is told.
func TestNoSwivelIsWorseThanTheWorst(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{20, 20}})
	_, least := pictured(t, Tip(p))
	rapid.Check(t, func(r *rapid.T) {
		q := block([2]float64{30, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{20, 20}})
		for i := range q.Feet {
			y, x := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(r, "swivel"))
			q.Feet[i].At.X, q.Feet[i].At.Y = q.Feet[i].At.X+inch(1.375*x), q.Feet[i].At.Y+inch(1.375*y)
		}
		leans, err := q.leans(q.standing[0])
		if err != nil {
			r.Fatal(err)
		}
		for _, l := range leans {
			if l.angle.Value < least-1e-6 {
				r.Fatalf("tips at %v°, told is %v°", l.angle.Value, least)
			}
		}
	})
}

// A stand 50 in high on feet 12 in apart is 4.17 times as high: it is told to be anchored though its tilt stands.
func TestATallStandIsToldToBeAnchored(t *testing.T) {
	p := block([2]float64{30, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{20, 10}})
	p.Nodes[0].At.Z = 50 * in
	f, _ := pictured(t, Tip(p))
	verdict(t, f, finding.Stands)
	says(t, f.Caution, "4.2 times", "anchor it to a wall")
	near(t, "height", because(t, f, "height over depth of the base").Value, 50.0/12, 1e-9)
	p.Nodes[0].At.Z = 47 * in
	if f, _ := pictured(t, Tip(p)); f.Caution != "" {
		t.Error(f.Caution)
	}
}
