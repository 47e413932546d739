package lumber_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/lumber"
	"rodwright/trade/table"
)

// Surface measure as printed: a hardwood association's page on lumber measure (2 × 6-1/4 in × 8 ft: 4) and
// a supplier's examples of the NHLA rules (6-1/2 × 8: 4; 8 × 12: 8; 10 × 13: 11); a published example with
// roundings (7-3/4 in × 8-1/4 ft: 5).
func TestSurfaceMeasureOfPublishedBoards(t *testing.T) {
	for _, c := range []struct{ width, feet, want float64 }{{6.25, 8, 4}, {6.5, 8, 4}, {8, 12, 8}, {10, 13, 11}, {7.75, 8.25, 5}, {7, 8, 5}} {
		f := must(t)(lumber.SurfaceMeasure(inches(c.width), inches(12*c.feet)))
		near(t, "surface measure", f.Value, c.want, 0)
	}
	f := must(t)(lumber.BoardFeet(2*in, inches(6.25), 8*foot, lumber.NHLA)) // the association's page: 8 board feet
	near(t, "board feet", f.Value, 8, 0)
}

// A hardwood association's page on lumber measure: for export 5-1/4 in × 8-1/2 ft is tallied 5 in and 8 ft.
func TestExportBundlesTallyWholeInchesAndFeet(t *testing.T) {
	if w, l := lumber.BundleTally(inches(5.25), 102*in); w != 5 || l != 8 {
		t.Errorf("%d in × %d ft", w, l)
	}
	if w, l := lumber.BundleTally(-in, -in); w != 0 || l != 0 {
		t.Errorf("nothing tallies %d × %d", w, l)
	}
}

// Board feet as printed by a timber supplier (4 × 6 × 10: 20), a hobby page (1 × 8 × 8: 5.33), a published
// answer (1 × 3 × 8: 2) and a supplier (1 × 6 × 10: 5).
func TestBoardFeetOfPublishedBoards(t *testing.T) {
	for _, c := range []struct{ thick, width, feet, want, tolerance float64 }{
		{4, 6, 10, 20, 0}, {1, 8, 8, 5.33, 0.005}, {1, 3, 8, 2, 0}, {1, 6, 10, 5, 0},
	} {
		f := must(t)(lumber.BoardFeet(inches(c.thick), inches(c.width), inches(12*c.feet), lumber.Volume))
		near(t, "board feet", f.Value, c.want, c.tolerance)
	}
}

// A published board-foot example with roundings: 2-1/8 × 7-3/4 in × 8-1/4 ft, down to the quarter, inch and
// foot: 9.3.
func TestRoundingEverythingDown(t *testing.T) {
	f := must(t)(lumber.BoardFeet(inches(2.125), inches(7.75), 99*in, lumber.Down))
	near(t, "board feet", f.Value, 9.3, 0.05)
}

// Worked by hand: 8/4 × 7-1/4 × 103 in: 10.372 by volume, 12 at retail, 10 by the NHLA rules.
func TestThreeTalliesOfOneBoard(t *testing.T) {
	for tally, want := range map[lumber.Tally]float64{lumber.Volume: 10.372, lumber.Retail: 12, lumber.NHLA: 10} {
		f := must(t)(lumber.BoardFeet(2*in, inches(7.25), 103*in, tally))
		near(t, string(tally), f.Value, want, 0.001)
	}
}

// A seller's page, recomputed: 4/4 ash, 8 in × 8 ft, 3.80 a board foot: 5.333 and 20.27, not the 20.14 that
// rounding to 5.3 first gives.
func TestTheMoneyIsRoundedOnceAndLast(t *testing.T) {
	f := must(t)(lumber.BoardFeet(in, 8*in, 8*foot, lumber.Volume))
	near(t, "board feet", f.Value, 5.333, 0.01)
	near(t, "money", math.Round(f.Value*3.80*100)/100, 20.27, 1e-9)
}

// Public account of a yard's bill, recomputed: two 4/4 boards 5-1/2 in × 8 ft: billed 8.0, measured 7.33,
// real volume at 13/16 in 5.96.
func TestWhyTheYardBillsMoreThanIsMeasured(t *testing.T) {
	boards := func(thick length.Length) []lumber.Board {
		return []lumber.Board{{thick, inches(5.5), 8 * foot}, {thick, inches(5.5), 8 * foot}}
	}
	near(t, "billed", must(t)(lumber.Total(boards(in), lumber.Retail)).Value, 8.0, 0.05)
	near(t, "billed when surfaced", must(t)(lumber.Total(boards(in*13/16), lumber.Retail)).Value, 8.0, 0.05)
	near(t, "measured", must(t)(lumber.Total(boards(in), lumber.Volume)).Value, 7.33, 0.05)
	near(t, "real", must(t)(lumber.Total(boards(in*13/16), lumber.Volume)).Value, 5.96, 0.05)
}

// NHLA Rules, from memory: exact halves alternately up and down. 6 in × 9 ft is 4-1/2 square feet.
func TestHalvesGoAlternatelyUpAndDown(t *testing.T) {
	board := lumber.Board{Thickness: in, Width: 6 * in, Length: 9 * foot}
	for n, want := range []float64{0, 5, 9, 14, 18} {
		f := must(t)(lumber.Total(slices.Repeat([]lumber.Board{board}, n), lumber.NHLA))
		near(t, "board feet", f.Value, want, 0)
	}
}

// Woodworkers' accounts: length up to the next foot when more than 3 in over.
func TestARetailLengthGoesUpPastThreeInches(t *testing.T) {
	for _, c := range []struct {
		long length.Length
		want float64
	}{{8 * foot, 8}, {99 * in, 8}, {99*in + 1, 9}, {2 * in, 1}, {11 * in, 1}} {
		f := must(t)(lumber.BoardFeet(in, 12*in, c.long, lumber.Retail))
		near(t, "board feet", f.Value, c.want, 1e-9)
	}
}

// NHLA Rules, from memory: lumber thinner than 1 in counts as 1 in.
func TestThinStockCountsAsAnInchButNotByVolume(t *testing.T) {
	for tally, want := range map[lumber.Tally]float64{lumber.Retail: 8, lumber.NHLA: 8, lumber.Volume: 4, lumber.Down: 4} {
		f := must(t)(lumber.BoardFeet(in/2, 12*in, 8*foot, tally))
		near(t, string(tally), f.Value, want, 1e-9)
	}
}

func TestTalliesAreReadByName(t *testing.T) {
	for _, tally := range lumber.Tallies() {
		if got, err := lumber.ParseTally(string(tally)); err != nil || got != tally {
			t.Errorf("%s: %v %v", tally, got, err)
		}
	}
	_, err := lumber.ParseTally("nlha")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || unknown.Near[0] != "nhla" {
		t.Errorf("%v", err)
	}
	for name, b := range map[string][3]length.Length{"thickness": {0, in, in}, "width": {in, -in, in}, "length": {in, in, 0}} {
		if _, err := lumber.BoardFeet(b[0], b[1], b[2], lumber.Retail); err == nil {
			t.Errorf("no %s, no board", name)
		}
	}
	if _, err := lumber.BoardFeet(in, in, in, ""); err == nil {
		t.Error("a tally is named")
	}
	if _, err := lumber.SurfaceMeasure(0, in); err == nil {
		t.Error("no width, no face")
	}
}

func TestRetailNeverBillsLessThanVolumeForWholeFeet(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		thick := length.Length(rapid.Int64Range(1, 16).Draw(r, "quarters")) * in / 4
		width := length.Length(rapid.Int64Range(int64(in), int64(16*in)).Draw(r, "width"))
		long := length.Length(rapid.Int64Range(1, 16).Draw(r, "feet")) * foot
		retail, err1 := lumber.BoardFeet(thick, width, long, lumber.Retail)
		volume, err2 := lumber.BoardFeet(thick, width, long, lumber.Volume)
		down, err3 := lumber.BoardFeet(thick, width, long, lumber.Down)
		nhla, err4 := lumber.BoardFeet(max(thick, in), width, long, lumber.NHLA)
		if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
			r.Fatal(err1, err2, err3, err4)
		}
		if retail.Value < volume.Value-1e-6 || down.Value > volume.Value+1e-9 {
			r.Fatalf("retail %v, volume %v, down %v", retail.Value, volume.Value, down.Value)
		}
		whole := nhla.Value / max(thick, in).Inches()
		if math.Abs(whole-math.Round(whole)) > 1e-9 || math.Abs(whole-width.Inches()*long.Inches()/144) > 0.5+1e-9 {
			r.Fatalf("surface measure %v of %v", whole, width.Inches()*long.Inches()/144)
		}
	})
}
