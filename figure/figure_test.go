package figure_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
)

var shrinkage = figure.Formula{Text: "ΔD = D·C·(MC2 − MC1)", Source: "Wood Handbook FPL-GTR-282 (2021) eq. 13-2", Range: "6 to 14 % MC"}

func ExampleOf() {
	f := figure.Of("change", 1.7, figure.MM, &shrinkage, figure.InLength("D", 232*length.Millimetre))
	fmt.Println(f.Show(length.SixtyFourth), "by", f.Formula.Text, "with D", f.Inputs[0].Show(length.WholeMM))
	// Output: 1/16 in by ΔD = D·C·(MC2 − MC1) with D 232 mm
}

func TestFiguresAreShownInTheirUnit(t *testing.T) {
	for _, c := range []struct {
		value float64
		unit  figure.Unit
		want  string
	}{
		{317.627, figure.MM, "12 1/2 in"},
		{13.2971, figure.Deg, "13.3°"},
		{8, figure.Percent, "8 %"},
		{11.5, figure.Count, "11.5"},
		{12345.678, figure.N, "12346 N"},
		{0.0012349, figure.Ratio, "0.001235"},
		{20.2667, figure.Money, "20.27"},
		{5.3333, figure.BoardFeet, "5.333 board feet"},
		{0, figure.Kg, "0 kg"},
	} {
		if got := figure.Of("x", c.value, c.unit, nil).Show(length.Sixteenth); got != c.want {
			t.Errorf("%v %s is shown as %q, want %q", c.value, c.unit, got, c.want)
		}
	}
}

func TestAnAnswerInWordsIsShownAsItIs(t *testing.T) {
	f := figure.Figure{Name: "shorten", Unit: figure.Text, Words: "leg b or d"}
	if got := f.Show(length.Sixteenth); got != "leg b or d" {
		t.Errorf("shown as %q", got)
	}
}

func TestShownDigitsNeverLieByMoreThanTheyShow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e9, 1e9).Draw(t, "value")
		n := rapid.IntRange(1, 8).Draw(t, "digits")
		got, err := strconv.ParseFloat(figure.Digits(v, n), 64)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got-v) > math.Max(math.Abs(v)*math.Pow(10, float64(1-n)), 1e-300) { // a number near the least there is is shown as 0
			t.Fatalf("%v shown as %v with %d digits", v, got, n)
		}
	})
}

func TestAssumingLeavesTheFirstFigureAlone(t *testing.T) {
	a := figure.Of("x", 1, figure.MM, nil).Assuming("one")
	b, c := a.Assuming("two"), a.Assuming("three")
	if len(a.Assumed) != 1 || b.Assumed[1] != "two" || c.Assumed[1] != "three" {
		t.Errorf("assumptions ran into each other: %q %q %q", a.Assumed, b.Assumed, c.Assumed)
	}
}

func TestOnlyTheZeroFigureIsMissing(t *testing.T) {
	if !(figure.Figure{}).Missing() || figure.Of("gap", 0, figure.MM, nil).Missing() {
		t.Error("a gap of nothing is a figure; no figure is none")
	}
}
