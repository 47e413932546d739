package lumber_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/lumber"
	"rodwright/trade/table"
)

const (
	in   = length.Inch
	foot = length.Foot
)

var (
	//go:embed lumber.csv
	lumberCSV string
	//go:embed grades.csv
	gradesCSV string
	//go:embed yields.csv
	yieldsCSV string
	//go:embed terms.csv
	termsCSV string
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

func inches(v float64) length.Length { return length.FromInches(v) }

func TestEveryRowHasASource(t *testing.T) {
	for name, text := range map[string]string{"lumber": lumberCSV, "grades": gradesCSV, "yields": yieldsCSV, "terms": termsCSV} {
		for _, r := range table.Read(text) {
			if err := r.Sourced(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if n := len(lumber.Terms()); n != 23 {
		t.Errorf("%d terms", n)
	}
}

// NHLA Rules for the Measurement and Inspection of Hardwood and Cypress Lumber, surfaced thickness S2S:
// 4/4 13/16, 5/4 1-1/16, 6/4 1-5/16, 8/4 1-3/4.
func TestSurfacedThicknessOfTheRuleBook(t *testing.T) {
	for id, want := range map[string]length.Length{"4/4": in * 13 / 16, "5/4": in * 17 / 16, "6/4": in * 21 / 16, "8/4": in * 7 / 4} {
		s, err := lumber.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		if s.Surfaced != want || s.Source.Memory {
			t.Errorf("%s: %v from %v, want %v", id, s.Surfaced, s.Source, want)
		}
	}
}

func TestStockGetsThickerInOrder(t *testing.T) {
	last := length.Length(0)
	for _, id := range lumber.IDs() {
		s, err := lumber.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		if s.Surfaced <= last || s.Surfaced >= s.Rough {
			t.Errorf("%s: surfaced %v, rough %v", id, s.Surfaced, s.Rough)
		}
		last = s.Surfaced
	}
	if q := lumber.Quarters(); len(q) != 9 || q[0].ID != "4/4" || q[8].ID != "16/4" {
		t.Errorf("quarters %+v", q)
	}
	_, err := lumber.Lookup("9/4")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || len(unknown.Near) == 0 {
		t.Errorf("9/4: %v", err)
	}
}

// American Softwood Lumber Standard PS 20: a dry 1x6 is 3/4 × 5-1/2 in, a 2x4 1-1/2 × 3-1/2, a green 2x10
// 1-9/16 × 9-1/2.
func TestDressedSizesOfSoftwood(t *testing.T) {
	cases := []struct {
		nominal           string
		id                string
		thickness, width  length.Length
		greenThick, green length.Length
	}{
		{"1x6", "1x6", in * 3 / 4, in * 11 / 2, inches(0.7812), inches(5.625)},
		{"2 × 4", "2x4", in * 3 / 2, in * 7 / 2, in * 25 / 16, in * 57 / 16},
		{"2x10", "2x10", in * 3 / 2, in * 37 / 4, in * 25 / 16, in * 19 / 2},
		{"1 1/4 x 8", "1-1/4x8", in, in * 29 / 4, inches(1.0312), in * 15 / 2},
	}
	for _, c := range cases {
		d, err := lumber.Softwood(c.nominal)
		if err != nil {
			t.Fatal(err)
		}
		if d.ID != c.id || d.Thickness != c.thickness || d.Width != c.width || d.GreenThickness != c.greenThick || d.GreenWidth != c.green {
			t.Errorf("%s: %+v", c.nominal, d)
		}
	}
	for _, nominal := range []string{"", "x", "2x", "5x6", "1x1", "1x6x8"} {
		var unknown *table.UnknownError
		if _, err := lumber.Softwood(nominal); !errors.As(err, &unknown) {
			t.Errorf("%q: %v", nominal, err)
		}
	}
}

// Public question from outside the US, recomputed: a plan says 6 ft, the shop sells 1.8 m: 28.8 mm short;
// 70 mm square is 2.756 in: from 3 in stock.
func TestTheNearestMetricPieceIsShort(t *testing.T) {
	sold, short := lumber.MetricBelow(6 * foot)
	if sold != 1800*length.Millimetre {
		t.Errorf("sold %v", sold)
	}
	near(t, "short", short.MM(), 28.8, 0.1)
	if got := lumber.MetricFor(6 * foot); got != 2100*length.Millimetre {
		t.Errorf("buy %v", got)
	}
	if got := lumber.MetricFor(1800 * length.Millimetre); got != 1800*length.Millimetre {
		t.Errorf("a whole step buys %v", got)
	}
	if sold, short := lumber.MetricBelow(-in); sold != 0 || short != 0 {
		t.Errorf("nothing asked: %v %v", sold, short)
	}
	wanted := 70 * length.Millimetre
	near(t, "inches", wanted.Inches(), 2.756, 0.001)
	for _, s := range lumber.Quarters() {
		if s.Rough >= wanted {
			if s.ID != "12/4" {
				t.Errorf("%s", s.ID)
			}
			break
		}
	}
}

func TestSellersNeverGiveMoreThanTheirStep(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := length.Length(rapid.Int64Range(0, int64(10*length.Metre)).Draw(r, "length"))
		sold, short := lumber.MetricBelow(l)
		if sold+short != l || short >= 300*length.Millimetre || lumber.MetricFor(l) < l {
			r.Fatalf("%v: %v and %v", l, sold, short)
		}
	})
}

func ExampleBoardFeet() {
	for _, tally := range []lumber.Tally{lumber.Retail, lumber.NHLA, lumber.Volume} {
		f, err := lumber.BoardFeet(2*length.Inch, 29*length.Inch/4, 103*length.Inch, tally)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(tally, f.Show(length.Sixteenth))
	}
	// Output:
	// retail 12 board feet
	// nhla 10 board feet
	// volume 10.37 board feet
}

func FuzzSoftwood(f *testing.F) {
	for _, seed := range []string{"1x6", "2 × 4", "1 1/4 x 8", "", "x", "×", "1-1/2x12", "2x"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, nominal string) {
		d, err := lumber.Softwood(nominal)
		if err != nil {
			return
		}
		if d.Width <= 0 || d.Thickness <= 0 || d.GreenWidth < d.Width {
			t.Errorf("%q: %+v", nominal, d)
		}
		if again, err := lumber.Softwood(d.ID); err != nil || again != d {
			t.Errorf("%q is not found by its own name %q", nominal, d.ID)
		}
	})
}
