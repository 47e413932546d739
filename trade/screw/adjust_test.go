package screw_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/screw"
)

func must(t *testing.T) func(figure.Figure, error) float64 {
	return func(f figure.Figure, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return f.Value
	}
}

// National Design Specification for Wood Construction (2018) Table 12.2A, read: lag screws, lb per inch of
// thread, by specific gravity and diameter.
func TestLagScrewsHoldWhatThePrintedTableSays(t *testing.T) {
	for _, c := range []struct{ g, d, want float64 }{
		{0.42, 0.25, 173}, {0.50, 0.25, 225}, {0.50, 0.375, 305}, {0.50, 0.625, 447}, {0.36, 0.3125, 163}, {0.73, 1, 1123}, {0.68, 0.5, 600},
	} {
		near(t, "W", must(t)(screw.Lag(c.g, c.d*25.4, 25.4))/lbf, c.want, 1)
	}
}

// ASME B18.6.1, flat heads, from memory: No. 6 0.279, No. 8 0.332, No. 10 0.385, No. 12 0.438 in.
func TestHeadsByNumber(t *testing.T) {
	for gauge, want := range map[int]float64{6: 0.279, 8: 0.332, 10: 0.385, 12: 0.438} {
		near(t, "head", must(t)(screw.Head(gauge))/25.4, want, 0.0005)
	}
	if _, err := screw.Head(3); err == nil {
		t.Error("No. 3 is not in the list")
	}
}

// National Design Specification (2018) 12.2.5, from memory: 690·π·D·G²·t up to 2.5 D, 1725·π·D²·G² beyond: a No. 10
// through a batten of 3/4 in, G 0.50: 690·π·0.385·0.25·0.75 = 156.5 lb; through 2 in no more than 200.8 lb.
func TestAHeadPullsThroughABattenNotThroughSteel(t *testing.T) {
	near(t, "batten", must(t)(screw.PullThrough(of(0.5, true), 10, 3*in/4))/lbf, 156.5, 0.1)
	near(t, "thick", must(t)(screw.PullThrough(of(0.5, true), 10, 2*in))/lbf, 1725*math.Pi*0.385*0.385*0.25, 0.1)
	near(t, "rim on a hole of 1/4 in", must(t)(screw.Rim(10, in/4))/25.4, 0.0675, 1e-6)
	if rim := must(t)(screw.Rim(10, in/2)); rim >= 0 {
		t.Errorf("a head of 0.385 in does not slip through 1/2 in: rim %v", rim)
	}
}

// National Design Specification, Table 11.3.3 and Table 2.3.2, from memory: wet 0.7 above 19 %, permanent 0.9.
func TestWetWoodAndLastingLoadsTakeOffTheDesignValue(t *testing.T) {
	near(t, "dry", must(t)(screw.Wet(100, 19)), 100, 0)
	near(t, "wet", must(t)(screw.Wet(100, 19.1)), 70, 1e-9)
	near(t, "lasting", must(t)(screw.Lasting(100)), 90, 1e-9)
	near(t, "four", must(t)(screw.Group(25, 4)), 100, 0)
}

// Spacing of wood screws through steel, National Design Specification, Commentary, from memory: 2.5 D to the
// edge, 5 D to the end bored and 10 D not bored: for a No. 10 0.475, 0.95 and 1.9 in.
func TestScrewsKeepOffEdgesAndEnds(t *testing.T) {
	for bored, end := range map[bool]float64{true: 0.95, false: 1.9} {
		s, err := screw.Spaced(ten, bored)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "edge", s.Edge.Value/25.4, 0.475, 1e-9)
		near(t, "end", s.End.Value/25.4, end, 1e-9)
		near(t, "along", s.Along.Value/25.4, end, 1e-9)
	}
	if _, err := screw.Spaced(length.Inch, true); err == nil {
		t.Error("an inch is no wood screw")
	}
}

// Statics by hand: four screws at 1.3 in round a plate of 1.75 in radius, turned with one at the top: their arms
// from the lower rim are 3.05, 1.75, 1.75 and 0.45 in, Σ 15.63 in²; 100 lb·in pull the top one with 19.5 lb.
func TestThePlateIsPriedAboutItsRim(t *testing.T) {
	got := must(t)(screw.PlatePull(100*lbf*25.4, 1.75*25.4, 1.3*25.4, 4)) / lbf
	sum := 3.05*3.05 + 2*1.75*1.75 + 0.45*0.45
	near(t, "top screw", got, 100*3.05/sum, 1e-9)
	near(t, "one screw", must(t)(screw.PlatePull(100*lbf*25.4, 1.75*25.4, 1.3*25.4, 1))/lbf, 100/3.05, 1e-9)
}

func TestNoScrewOfAPlateIsRelievedByMoreMomentOrFewerScrews(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		m, rim := rapid.Float64Range(0, 1e6).Draw(r, "moment"), rapid.Float64Range(20, 80).Draw(r, "rim")
		circle, n := rim*rapid.Float64Range(0.3, 0.95).Draw(r, "share"), rapid.IntRange(3, 8).Draw(r, "screws")
		one, err1 := screw.PlatePull(m, rim, circle, n)
		more, err2 := screw.PlatePull(m*1.5, rim, circle, n)
		fewer, err3 := screw.PlatePull(m, rim, circle, n-1)
		if err1 != nil || err2 != nil || err3 != nil {
			r.Fatal(err1, err2, err3)
		}
		if more.Value < one.Value || fewer.Value < one.Value-1e-9 {
			r.Fatalf("pull %v, more moment %v, fewer screws %v", one.Value, more.Value, fewer.Value)
		}
	})
}

func TestFactorsAndPlatesRefuseWhatTheyDoNotCover(t *testing.T) {
	nan := math.NaN()
	errs := map[string]error{}
	_, errs["wet"] = screw.Wet(1, nan)
	_, errs["lasting"] = screw.Lasting(-1)
	_, errs["group"] = screw.Group(1, 0)
	_, errs["lag too thin"] = screw.Lag(0.5, 5, 25)
	_, errs["plate"] = screw.PlatePull(1, 0, 0, 4)
	_, errs["screws beyond the rim"] = screw.PlatePull(1, 10, 11, 4)
	_, errs["hole"] = screw.Rim(10, 0)
	_, errs["layer"] = screw.PullThrough(of(0.5, true), 10, 0)
	for name, err := range errs {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
