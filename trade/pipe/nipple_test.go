package pipe

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

// ASTM A733, from memory: close, half inches to 6, inches to 12.
func TestNipplesComeInTheStepsOfTheStandard(t *testing.T) {
	got := StockNipples(size(t, "3/4"))
	want := []string{"1.375", "1.5", "2", "2.5", "3", "3.5", "4", "4.5", "5", "5.5", "6", "7", "8", "9", "10", "11", "12"}
	if len(got) != len(want) {
		t.Fatalf("%d lengths", len(got))
	}
	for i, l := range got {
		if l != inch(t, want[i]) {
			t.Errorf("nipple %d is %v in, want %s", i, l.Inches(), want[i])
		}
	}
	dn := StockNipples(size(t, "DN50"))
	if dn[0] != inch(t, "2") || dn[1] != 60*length.Millimetre || dn[len(dn)-1] != 300*length.Millimetre {
		t.Errorf("DN50 nipples %v", dn)
	}
}

func TestEverySizeHasNipplesRisingFromTheCloseOne(t *testing.T) {
	for _, id := range Sizes() {
		s := size(t, id)
		got := StockNipples(s)
		if len(got) < 8 || got[0] != s.CloseNipple || !slices.IsSorted(got) || len(slices.Compact(slices.Clone(got))) != len(got) {
			t.Errorf("%s: %v", id, got)
		}
	}
}

func TestTheNearestNippleAndItsNeighbours(t *testing.T) {
	for _, c := range []struct{ exact, stock, shorter, longer string }{
		{"3.1", "3", "3", "3.5"},
		{"3.25", "3", "3", "3.5"}, // halfway: the shorter
		{"3.26", "3.5", "3", "3.5"},
		{"3", "3", "3", "3"},
		{"1", "1.375", "0", "1.375"},
		{"1.375", "1.375", "1.375", "1.375"},
		{"12", "12", "12", "12"},
		{"15", "12", "12", "0"},
		{"0", "1.375", "0", "1.375"},
	} {
		stock, shorter, longer := NearestNipple(size(t, "3/4"), inch(t, c.exact))
		if stock != inch(t, c.stock) || shorter != inch(t, c.shorter) || longer != inch(t, c.longer) {
			t.Errorf("%s in: %v, between %v and %v", c.exact, stock.Inches(), shorter.Inches(), longer.Inches())
		}
	}
	if !IsStockNipple(size(t, "3/4"), 3*length.Inch) || IsStockNipple(size(t, "3/4"), inch(t, "3.25")) {
		t.Error("3 in is sold, 3 1/4 in is not")
	}
}

// Computed by hand: 1.375 + 2·0.7475; 1.375 + 0.7475 + (0.85 − 0.5625); 1.52 − 1.125 + 1.375.
func TestTheLeastDistancesOfThreeQuarterPipe(t *testing.T) {
	s := size(t, "3/4")
	for _, c := range []struct {
		name string
		got  length.Length
		want string
	}{
		{"tee to tee", LeastBetween(fitting(t, "3/4", Tee), fitting(t, "3/4", Tee)), "2.87"},
		{"flange to tee", LeastBetween(fitting(t, "3/4", Flange), fitting(t, "3/4", Tee)), "2.41"},
		{"coupling and close nipple", extension(t, s), "1.77"},
	} {
		if c.got != inch(t, c.want) {
			t.Errorf("%s: %v in, want %s", c.name, c.got.Inches(), c.want)
		}
	}
	if _, err := size(t, "3-1/2").Extension(length.Inch); err == nil {
		t.Error("no coupling of 3-1/2 is known")
	}
}

func extension(t *testing.T, s Size) length.Length {
	t.Helper()
	l, err := s.Extension(s.CloseNipple)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestANippleBridgesAGapWithTwoEngagements(t *testing.T) {
	if got := size(t, "3/4").Bridge(2 * length.Inch); got != inch(t, "3.125") {
		t.Errorf("%v in", got.Inches())
	}
}

// No stock length is nearer than the one returned, and the neighbours enclose the exact length.
func TestNoNippleIsNearer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, _ := Lookup(rapid.SampledFrom(Sizes()).Draw(t, "size"))
		exact := length.Length(rapid.Int64Range(0, int64(16*length.Inch)).Draw(t, "exact"))
		stock, shorter, longer := NearestNipple(s, exact)
		if shorter > exact || (longer != 0 && longer < exact) {
			t.Fatalf("%v does not lie between %v and %v", exact, shorter, longer)
		}
		for _, l := range StockNipples(s) {
			if (l-exact).Abs() < (stock-exact).Abs() || (l > shorter && l < exact) || (l >= exact && l < longer) {
				t.Fatalf("%v is nearer to %v than %v, %v, %v", l, exact, stock, shorter, longer)
			}
		}
	})
}

// Trade arithmetic, computed by hand and program.
func TestLoopsByCount(t *testing.T) {
	for _, c := range []struct{ pipes, joints, groups, want int }{
		{20, 16, 1, 5},
		{8, 8, 1, 1},
		{13, 14, 1, 0},
		{12, 8, 1, 5},
		{6, 8, 2, 0},
		{8, 8, 2, 2},
		{0, 0, 0, 0},
	} {
		if got := LoopCount(c.pipes, c.joints, c.groups); got != c.want {
			t.Errorf("%d pipes, %d joints, %d groups: %d loops, want %d", c.pipes, c.joints, c.groups, got, c.want)
		}
	}
}

// Published answer on pipe offsets: travel 1.414, 1.155, 2.613 per inch of offset at 45°, 60°, 22.5°; setback 0.577 at 60°,
// 2.414 at 22.5°.
func TestOffsetsTravelAsPublished(t *testing.T) {
	for _, c := range []struct{ degrees, travel, setback float64 }{
		{45, 1.414, 1},
		{60, 1.155, 0.577},
		{22.5, 2.613, 2.414},
		{90, 1, 0},
	} {
		travel, setback, err := Offset(length.Inch, c.degrees)
		if err != nil || math.Abs(travel.Inches()-c.travel) > 0.0005 || math.Abs(setback.Inches()-c.setback) > 0.0005 {
			t.Errorf("%v°: %v, %v, %v", c.degrees, travel.Inches(), setback.Inches(), err)
		}
	}
	for _, degrees := range []float64{0, -45, 91, math.NaN(), math.Inf(1), 1e-9} {
		if _, _, err := Offset(length.Inch, degrees); err == nil || !strings.Contains(err.Error(), "write") {
			t.Errorf("%v°: error %v", degrees, err)
		}
	}
}
