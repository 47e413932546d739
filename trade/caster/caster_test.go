package caster_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/caster"
	"rodwright/trade/screw"
	"rodwright/trade/table"
)

const (
	in    = length.Inch
	pound = 0.45359237 // kg, exact
)

var (
	//go:embed casters.csv
	castersCSV string
	//go:embed stems.csv
	stemsCSV string
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

func must(t *testing.T) func(figure.Figure, error) figure.Figure {
	return func(f figure.Figure, err error) figure.Figure {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
}

func TestEveryRowHasASource(t *testing.T) {
	for _, text := range []string{castersCSV, stemsCSV} {
		for _, r := range table.Read(text) {
			if err := r.Sourced(); err != nil {
				t.Error(err)
			}
		}
	}
}

func TestEveryClassIsWholeAndSaysThatItIsAssumed(t *testing.T) {
	for _, id := range caster.IDs() {
		c, err := caster.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		if c.RatedKg <= 0 || c.Height <= 0 || !strings.Contains(c.Assumed, "from memory") || !c.Source.Memory {
			t.Errorf("%s: %+v", id, c)
		}
		if c.Kind != caster.Foot && (c.Height <= c.Wheel || c.Offset <= 0 || c.Offset >= c.Wheel) {
			t.Errorf("%s: wheel %v, height %v, offset %v", id, c.Wheel, c.Height, c.Offset)
		}
		if c.Kind == caster.Plate {
			plateOf(t, c)
		} else if c.StemInch == "" || c.StemMetric == "" {
			t.Errorf("%s has no stem", id)
		}
	}
}

// plateOf checks that a plate's screw is a wood screw and goes through a hole made for its bolt.
func plateOf(t *testing.T, c caster.Class) {
	t.Helper()
	bolt, err := screw.LookupBolt(c.Bolt)
	if err != nil {
		t.Fatal(err)
	}
	s, err := screw.Lookup(c.ScrewGauge)
	if err != nil {
		t.Fatal(err)
	}
	if s.Shank > bolt.Diameter || c.Holes != 4 || c.Plate[0] >= c.Plate[1] {
		t.Errorf("%s: screw %v through a %v hole, %d holes, plate %v", c.ID, s.Shank, bolt.Diameter, c.Holes, c.Plate)
	}
}

// Generic casters from memory: a 3 in plate caster stands 4 in high, offset 1-1/4 in, rated 150 lb.
func TestTheThreeInchPlateCaster(t *testing.T) {
	c, err := caster.Lookup("plate-3")
	if err != nil {
		t.Fatal(err)
	}
	if c.Wheel != 3*in || c.Height != 4*in || c.Offset != 5*in/4 || c.SwingRadius() != 11*in/4 {
		t.Errorf("%+v", c)
	}
	near(t, "rated", c.RatedKg/pound, 150, 1e-9)
}

func TestTheNearestClassSaysWhenItsWheelIsAnother(t *testing.T) {
	for _, c := range []struct {
		kind    caster.Kind
		wheel   length.Length
		want    string
		another bool
	}{
		{caster.Stem, 3 * in, "stem-3", false},
		{caster.Plate, 75 * length.Millimetre, "plate-3", true},
		{caster.Plate, 8 * in, "plate-5", true},
		{caster.Stem, 2 * in, "stem-3", true},
		{caster.Plate, 5 * in / 2, "plate-2", true},
		{caster.Foot, 0, "foot", false},
	} {
		got, err := caster.Nearest(c.kind, c.wheel)
		if err != nil {
			t.Fatal(err)
		}
		if got.ID != c.want || strings.Contains(got.Assumed, "no class") != c.another {
			t.Errorf("%s %v: %s, %q", c.kind, c.wheel, got.ID, got.Assumed)
		}
	}
	if _, err := caster.Nearest("ball", in); err == nil {
		t.Error("there are no ball casters here")
	}
}

func TestAnUnknownCasterNamesNearOnes(t *testing.T) {
	_, err := caster.Lookup("plate3")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || len(unknown.Near) == 0 || unknown.Near[0] != "plate-3" {
		t.Errorf("%v", err)
	}
}

// Caster makers' advice, printed: 3000 lb on four casters: add a third and divide by four, about 1000 lb each; divided
// by three it is the same.
func TestBothAdvicesForFourCastersComeToTheSame(t *testing.T) {
	near(t, "÷ 3", must(t)(caster.Share(3000*pound, 4)).Value/pound, 1000, 1e-6)
	near(t, "a third more, ÷ 4", must(t)(caster.ThirdMore(3000*pound)).Value/pound, 1000, 3)
}

// Public answer, recomputed: a 225 lb table needs 75 lb each on three wheels; casters of 90 lb have 15 to
// spare each, 45 lb on the table.
func TestCastersOfNinetyPoundsCarryATable(t *testing.T) {
	need := must(t)(caster.Share(225*pound, 4)).Value / pound
	near(t, "each", need, 75, 2)
	near(t, "spare", 90-need, 15, 2)
	near(t, "more on the table", 3*(90-need), 45, 2)
}

// Statics worked by hand: 215.2 lb: 107.600 in the middle, 121.050 at 0.1 and 0.0625 off it, 71.733 ÷ 3.
func TestARigidStandRocksOnItsDiagonal(t *testing.T) {
	near(t, "centred", must(t)(caster.Rigid(215.2*pound, 0, 0)).Value/pound, 107.600, 0.001)
	near(t, "off the middle", must(t)(caster.Rigid(215.2*pound, 0.1, -0.0625)).Value/pound, 121.050, 0.001)
	near(t, "divided by three", must(t)(caster.Share(215.2*pound, 4)).Value/pound, 71.733, 0.001)
}

// worst solves statics on each three of four corners that can stand, by Cramer's rule, and returns the
// greatest load on a corner as a share of the weight.
func worst(ex, ey float64) float64 {
	corners := [4][2]float64{{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}}
	most := 0.0
	for skip := range corners {
		var p [][2]float64
		for i, c := range corners {
			if i != skip {
				p = append(p, c)
			}
		}
		area := func(a, b, c [2]float64) float64 {
			return (b[0]-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(b[1]-a[1])
		}
		g, whole := [2]float64{ex, ey}, area(p[0], p[1], p[2])
		r := [3]float64{area(g, p[1], p[2]) / whole, area(p[0], g, p[2]) / whole, area(p[0], p[1], g) / whole}
		if min(r[0], r[1], r[2]) < -1e-12 {
			continue // would tip off this three
		}
		most = max(most, r[0], r[1], r[2])
	}
	return most
}

func TestTheRigidFigureIsTheWorstOfAllThreesThatStand(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		ex := rapid.Float64Range(-0.5, 0.5).Draw(r, "ex")
		ey := rapid.Float64Range(-0.5, 0.5).Draw(r, "ey")
		f, err := caster.Rigid(100, ex, ey)
		if err != nil {
			r.Fatal(err)
		}
		if want := 100 * worst(ex, ey); math.Abs(f.Value-want) > 1e-6 {
			r.Fatalf("%v, by solving every three %v", f.Value, want)
		}
	})
}

func TestCastersRefuseWhatTheirFormulasDoNotCover(t *testing.T) {
	errs := map[string]error{}
	_, errs["two casters"] = caster.Share(100, 2)
	_, errs["six casters"] = caster.Share(100, 6)
	_, errs["no weight"] = caster.Share(0, 4)
	_, errs["no weight, a third more"] = caster.ThirdMore(math.Inf(1))
	_, errs["centre outside"] = caster.Rigid(100, 0.6, 0)
	_, errs["not a number"] = caster.Rigid(100, 0, math.NaN())
	_, errs["load upwards"] = caster.PlateMoment(-1, in)
	_, _, errs["no stem"] = caster.StemAround(0)
	for name, err := range errs {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestASwivelledWheelPriesAtItsPlate(t *testing.T) {
	near(t, "moment", must(t)(caster.PlateMoment(300, 25*length.Millimetre)).Value, 7500, 1e-9)
}

// Public answer, recomputed: a paper strip of 1-3/16 in goes round a 3/8 in stem, and M10 can't be told
// from it by a ruler.
func TestAPaperStripTellsAStemButNotInchFromMetric(t *testing.T) {
	f, threads, err := caster.StemAround(19 * in / 16)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "diameter in inches", f.Value/25.4, 0.375, 0.02)
	near(t, "by geometry", f.Value/25.4, 0.37799, 0.00001) // 1.1875 ÷ 3.14159
	if len(threads) != 2 || threads[0].ID != "3/8-16" || threads[1].ID != "M10" {
		t.Errorf("threads %+v", threads)
	}
	if threads[0].Metric || !threads[1].Metric {
		t.Error("3/8-16 is an inch thread, M10 a metric one")
	}
	near(t, "M10 threads in an inch", float64(in)/float64(threads[1].Pitch), 16.9, 0.05)
	if _, none, err := caster.StemAround(4 * in); err != nil || len(none) != 0 {
		t.Errorf("no stem is that thick: %v, %v", none, err)
	}
}

func ExampleShare() {
	f, err := caster.Share(102, 4)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Show(length.Sixteenth), "by", f.Formula.Text)
	// Output: 34 kg by each = total ÷ 3
}
