package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/length"
)

// bowl is a panel of 1000 by 600 that sags with the square of the distance from a place: every contour is a
// circle round it.
func bowl(x0, y0 float64) grid {
	g := grid{columns: 81, rows: 49, width: 1000, depth: 600}
	for j := range g.rows {
		for i := range g.columns {
			x, y := g.x(float64(i))-x0, g.y(float64(j))-y0
			g.down = append(g.down, (x*x+y*y)/1e4)
		}
	}
	return g
}

func TestTheContoursOfABowlAreCircles(t *testing.T) {
	g := bowl(500, 300)
	for _, lvl := range []float64{0.5, 2, 6} {
		line := g.contour(lvl)
		want, length := math.Sqrt(lvl*1e4), 0.0
		for _, c := range line {
			for _, p := range [][2]float64{{c.x0, c.y0}, {c.x1, c.y1}} {
				if r := math.Hypot(p[0]-500, p[1]-300); math.Abs(r-want) > 1 {
					t.Fatalf("the contour of %g passes %g mm from the middle, want %g", lvl, r, want)
				}
			}
			length += math.Hypot(c.x1-c.x0, c.y1-c.y0)
		}
		if math.Abs(length/(2*math.Pi*want)-1) > 0.01 {
			t.Errorf("the contour of %g is %g mm long, a circle is %g", lvl, length, 2*math.Pi*want)
		}
	}
}

func TestAContourKeepsOutOfNotches(t *testing.T) {
	g := bowl(0, 0)
	for j := range 10 {
		for i := range 10 {
			g.down[j*g.columns+i] = math.NaN()
		}
	}
	if line := g.contour(0.5); len(line) != 0 {
		t.Errorf("a contour of %d pieces runs through a notch", len(line))
	}
	whole := bowl(0, 0).edges()
	if cut := g.edges(); len(cut) != len(whole) { // a notch at a corner leaves the way round as long
		t.Errorf("%d pieces of outline with a notch at the corner, %d without", len(cut), len(whole))
	}
}

func TestInASaddleTheMeanSaysWhatBelongsTogether(t *testing.T) {
	g := grid{columns: 2, rows: 2, width: 1, depth: 1, down: []float64{1, 0, 0, 1}}
	for lvl, cut := range map[float64]float64{0.4: 0.6, 0.6: 0.6} { // corner 2 is cut off below the mean, corner 1 above it
		line := g.contour(lvl)
		if len(line) != 2 {
			t.Fatalf("%d pieces at %g", len(line), lvl)
		}
		for _, c := range line {
			if s := math.Abs(c.x1-c.x0) + math.Abs(c.y1-c.y0); s > 2*cut+1e-9 {
				t.Errorf("at %g a piece runs from %g, %g to %g, %g", lvl, c.x0, c.y0, c.x1, c.y1)
			}
		}
	}
}

func TestWhatFallsShortBeginsAndEndsAtTheLimit(t *testing.T) {
	rays := []finding.Ray{{Towards: 0, Tilt: 20}, {Towards: 90, Tilt: 5}, {Towards: 180, Tilt: 20}, {Towards: 270, Tilt: 20}}
	runs := shortRuns(rays, 10)
	if len(runs) != 1 || len(runs[0]) != 3 {
		t.Fatalf("%v", runs)
	}
	// from 20 to 5 over 90° the limit of 10 is reached two thirds of the way
	if a, b := runs[0][0], runs[0][2]; math.Abs(a.Towards-60) > 1e-9 || math.Abs(b.Towards-120) > 1e-9 || a.Tilt != 10 || b.Tilt != 10 {
		t.Errorf("from %v to %v", a, b)
	}
	if over := shortRuns([]finding.Ray{{Towards: 0, Tilt: 1}, {Towards: 120, Tilt: 2}, {Towards: 240, Tilt: 3}}, 10); len(over) != 1 || len(over[0]) != 4 {
		t.Errorf("short all round: %v", over)
	}
	across := shortRuns([]finding.Ray{{Towards: 10, Tilt: 5}, {Towards: 100, Tilt: 20}, {Towards: 190, Tilt: 20}, {Towards: 280, Tilt: 5}}, 10)
	if len(across) != 1 || len(across[0]) != 4 {
		t.Errorf("across the right: %v", across)
	}
}

func TestTheLeastWayToAnEdgeIsSquareToIt(t *testing.T) {
	base := [][2]float64{{0, 0}, {400, 0}, {400, 300}, {0, 300}}
	if near, far := nearest(base, [2]float64{350, 120}); near != [2]float64{400, 120} || far != 50 {
		t.Errorf("%v, %g", near, far)
	}
	if _, far := nearest(base, [2]float64{403, 304}); far != 5 { // 3, 4, 5 from a corner
		t.Errorf("%g from the corner", far)
	}
}

func TestDirectionsAreToldByTheSidesOfThePiece(t *testing.T) {
	for towards, want := range map[float64]string{0: "right", 90: "back", 180: "left", 270: "front", -90: "front", 44: "back right", 359: "right", 585: "front left"} {
		if got := Compass(towards); got != want {
			t.Errorf("%g° is %s, want %s", towards, got, want)
		}
	}
}

func TestLevelsAreThoseOfTheReadersTape(t *testing.T) {
	if got := lengthTicks(0, 25.4, 6, length.SixtyFourth); len(got.words) != 5 || got.words[1] != "1/4" || got.unit != "in" {
		t.Errorf("an inch is divided into %v %s", got.words, got.unit)
	}
	if got := lengthTicks(0, 0.5, 6, length.SixtyFourth); got.words[1] != "0.005" {
		t.Errorf("half a millimetre in inches: %v", got.words)
	}
	if got := lengthTicks(-1, 3, 6, length.WholeMM); len(got.words) != 5 || got.words[0] != "-1" {
		t.Errorf("four millimetres: %v", got.words)
	}
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e3, 1e3).Draw(t, "lo")
		hi := lo + rapid.Float64Range(1e-4, 1e4).Draw(t, "stretch")
		most := rapid.IntRange(2, 9).Draw(t, "most")
		got := lengthTicks(lo, hi, most, rapid.SampledFrom(length.Finenesses()).Draw(t, "to"))
		if len(got.at) > most+1 {
			t.Fatalf("%d levels for %d steps", len(got.at), most)
		}
		for i, v := range got.at {
			if rounding := 1e-9 * (hi - lo); v < lo-rounding || v > hi+rounding || i > 0 && v <= got.at[i-1] {
				t.Fatalf("level %g of %g to %g", v, lo, hi)
			}
		}
	})
}

func TestWhatMovesTooFarToDrawIsGrownLess(t *testing.T) {
	w := finding.Sway{Grown: 50, Sticks: []finding.Moved{{At: [][3]float64{{}, {0, 0, 1000}}, Move: [][3]float64{{}, {100, 0, 0}}}}}
	m, ok := movedOf(w)
	if !ok || m.most != 100 || m.grown != 2 || m.to[0]-m.from[0] != 200 { // 0.22 · 1000 ÷ 100 = 2.2, one digit of it
		t.Errorf("%v, most %g, %g times, to %v from %v", ok, m.most, m.grown, m.to, m.from)
	}
}
