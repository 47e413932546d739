package marking

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// square millimetres of a path: the corners' polygon, and between each chord and its arc the segment of a
// circle. A bulge b stands for an angle θ = 4·atan b and, over a chord c, a radius c ÷ (2·sin(θ ÷ 2)); the
// segment is r²·(θ − sin θ) ÷ 2 (any table of plane areas).
func pathArea(p draw.Path) (sum float64) {
	for i, v := range p {
		w := p[(i+1)%len(p)]
		sum += (v.X.MM()*w.Y.MM() - w.X.MM()*v.Y.MM()) / 2
		if v.Bulge == 0 {
			continue
		}
		angle := 4 * math.Atan(v.Bulge)
		r := math.Hypot((w.X-v.X).MM(), (w.Y-v.Y).MM()) / (2 * math.Sin(angle/2))
		sum += r * r * (angle - math.Sin(angle)) / 2
	}
	return sum
}

func woodArea(o outline) (sum float64) {
	for _, a := range o.areas {
		sum += math.Abs(pathArea(a.outer))
		for _, h := range a.holes {
			sum -= math.Abs(pathArea(h))
		}
	}
	return sum
}

func mm(v float64) length.Length { return length.FromMM(v) }

func cutOf(x, y, l, w, r float64) part.Feature {
	return part.Feature{Kind: piece.CutOutFeature, At: [2]length.Length{mm(x), mm(y)}, Size: [2]length.Length{mm(l), mm(w)}, Radius: mm(r)}
}

func holeAt(x, y, d float64) part.Feature {
	f := cutOf(x-d/2, y-d/2, d, d, d/2)
	f.Round = true
	return f
}

func panelOf(l, w float64, fs ...part.Feature) part.Part {
	return part.Part{Kind: part.Panel, Tag: "A1", Name: "board", Finished: [3]length.Length{mm(l), mm(w), mm(20)}, Features: fs}
}

// Worked by hand on a panel of 400 × 200 mm, 80 000 mm². What a corner of radius r keeps is (1 − π/4)·r²:
// for 10 mm 21.4602 mm².
func TestAreasAreThoseWorkedByHand(t *testing.T) {
	corner := (1 - math.Pi/4) * 100
	for _, c := range []struct {
		name  string
		cuts  []part.Feature
		area  float64
		holes int
		outer int // corners of the outer edge
	}{
		{"nothing cut", nil, 80000, 0, 4},
		// from x = 100 to 140, y = 150 to 200, open above: two rounded corners within the wood
		{"a notch", []part.Feature{cutOf(100, 150, 40, 50, 10)}, 80000 - 2000 + 2*corner, 0, 4 + 6},
		// both side by side: x = 100 to 160; the wall at 140 has no thickness, its two rounded corners stay as a
		// rib. (100, 200), (100, 160), (110, 150), (130, 150), (140, 160), (150, 150), (160, 160), (160, 200)
		{"two notches that meet", []part.Feature{cutOf(100, 150, 40, 50, 10), cutOf(140, 150, 20, 50, 10)}, 80000 - 3000 + 4*corner, 0, 4 + 8},
		// the second begins 20 mm inside the first: their floors are one line, no rounding between
		{"two notches in one another", []part.Feature{cutOf(100, 150, 40, 50, 10), cutOf(120, 150, 40, 50, 10)}, 80000 - 3000 + 2*corner, 0, 4 + 6},
		{"a notch out of a corner", []part.Feature{cutOf(0, 150, 40, 50, 10)}, 80000 - 2000 + corner, 0, 3 + 4},
		{"a hole", []part.Feature{holeAt(200, 100, 30)}, 80000 - math.Pi*225, 1, 4},
		// the hole takes the floor between the corners: (110, 150), (120, 140), (130, 150) instead
		{"a hole half in a notch's floor", []part.Feature{cutOf(100, 150, 40, 50, 10), holeAt(120, 150, 20)}, 80000 - 2000 + 2*corner - math.Pi*50, 0, 4 + 7},
		{"a hole within a notch", []part.Feature{cutOf(100, 150, 40, 50, 10), holeAt(120, 175, 20)}, 80000 - 2000 + 2*corner, 0, 4 + 6},
		{"a hole over the edge", []part.Feature{holeAt(200, 0, 20)}, 80000 - math.Pi*50, 0, 4 + 3},
		{"a slot", []part.Feature{cutOf(100, 90, 100, 20, 10)}, 80000 - 80*20 - math.Pi*100, 1, 4},
		{"a notch right across", []part.Feature{cutOf(100, 0, 40, 200, 10)}, 80000 - 8000, 0, 4},
	} {
		o := outlineOf(panelOf(400, 200, c.cuts...), nil)
		holes := 0
		for _, a := range o.areas {
			holes += len(a.holes)
		}
		if !o.whole || math.Abs(woodArea(o)-c.area) > 1e-3 || holes != c.holes || len(o.areas[0].outer) != c.outer {
			t.Errorf("%s: closed %v, %.4f mm² (%.4f by hand), %d holes (%d), %d corners (%d)", c.name, o.whole, woodArea(o), c.area, holes, c.holes, len(o.areas[0].outer), c.outer)
		}
	}
}

// The wood that is left is also counted by trying a grid of places, each feature tried by itself.
func TestAnOutlineHoldsWhatTheFeaturesLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := func(lo, hi int) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, "mm")) }
		var cuts []part.Feature
		for range rapid.IntRange(0, 7).Draw(t, "cuts") {
			if rapid.Bool().Draw(t, "round") {
				cuts = append(cuts, holeAt(of(-5, 205), of(-5, 105), 2*of(1, 20)))
			} else {
				cuts = append(cuts, cutOf(of(-10, 200), of(-10, 100), of(1, 80), of(1, 60), of(0, 12)))
			}
		}
		o := outlineOf(panelOf(200, 100, cuts...), nil)
		if !o.whole {
			t.Fatal("the outline does not close")
		}
		const step = 0.5
		n := 0.0
		for x := step / 2; x < 200; x += step {
			for y := step / 2; y < 100; y += step {
				if o.cutAt(spot{x * 1e6, y * 1e6}) != through {
					n += step * step
				}
			}
		}
		if a := woodArea(o); math.Abs(a-n) > 60 { // a grid of 0.5 mm errs by less along 1 m of edges
			t.Fatalf("%.2f mm² by its outline, %.2f by trying places", a, n)
		}
	})
}

// Resolved pieces say what one face measures; an outline is drawn of nothing else. Where rounded cuts lie in
// one another the part takes the overlap of the bare rectangles, so those are left to the grid above.
func TestAnOutlineMeasuresWhatThePartSays(t *testing.T) {
	s := shop.Sample()
	for seed := range uint64(150) {
		r, list := takenOff(t, seed, s)
		for _, p := range list.Parts {
			if p.Kind != part.Panel {
				continue
			}
			o := outlineOf(p, flatOf(r, p))
			if !o.whole {
				t.Errorf("random %d %s: the outline does not close", seed, p.Tag)
			}
			if overlapping(p) {
				continue
			}
			if got, want := woodArea(o), p.FaceM2*1e6; math.Abs(got-want) > 1e-6*want {
				t.Errorf("random %d %s: %.4f mm² drawn, the part has %.4f", seed, p.Tag, got, want)
			}
		}
	}
}

func takenOff(t testing.TB, seed uint64, s *shop.Shop) (*piece.Resolved, *part.List) {
	t.Helper()
	doc, err := piece.Read(fmt.Sprintf("random %d", seed), random.Document(seed))
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, s)
	if err != nil {
		t.Fatal(err)
	}
	return r, list
}

func overlapping(p part.Part) bool {
	for i, f := range p.Features {
		for _, g := range p.Features[:i] {
			apart := false
			for k := range 2 {
				apart = apart || f.At[k]+f.Size[k] <= g.At[k] || g.At[k]+g.Size[k] <= f.At[k]
			}
			if !apart && f.Depth == 0 && g.Depth == 0 {
				return true
			}
		}
	}
	return false
}

// A pocket 10 mm deep from x = 100 to 200 and y = 50 to 100, and one 5 mm deep from x = 150 to 250 and y = 40 to
// 110. The deep one shows all round, 300 mm; of the shallow one what is not in the deep one: 100 + 70 + 100 mm,
// and 10 + 10 mm at x = 150.
func TestPocketsInOneAnotherShowWhereTheDepthChanges(t *testing.T) {
	deep, shallow := cutOf(100, 50, 100, 50, 0), cutOf(150, 40, 100, 70, 0)
	deep.Depth, shallow.Depth = mm(10), mm(5)
	for _, cuts := range [][]part.Feature{{deep, shallow}, {shallow, deep}} {
		o := outlineOf(panelOf(400, 200, cuts...), nil)
		sum := 0.0
		for _, c := range o.pockets {
			sum += c.a.far(c.b) / 1e6
		}
		if math.Abs(sum-590) > 1e-6 || woodArea(o) != 80000 {
			t.Errorf("%.3f mm of edges, %.3f mm² of wood", sum, woodArea(o))
		}
	}
}
