package draw_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

var (
	metricScales = []int64{1, 2, 5, 10, 15, 20, 25, 30, 50, 100, 150, 200, 250, 300, 500, 1000}
	inchScales   = []int64{1, 2, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192}
)

func TestTheScaleIsTheLeastThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := someStyle(t)
		w := length.Length(rapid.Int64Range(0, 20_000_000_000).Draw(t, "width"))
		h := length.Length(rapid.Int64Range(0, 20_000_000_000).Draw(t, "height"))
		series := metricScales
		if !st.Fineness.Unit.Metric() {
			series = inchScales
		}
		want := series[slices.IndexFunc(series, func(per int64) bool {
			return w.MM() <= st.Width*float64(per) && h.MM() <= st.Height*float64(per)
		})]
		if got := draw.ScaleFor(w, h, st); got != want {
			t.Errorf("%v by %v is drawn 1:%d, want 1:%d", w, h, got, want)
		}
	})
}

func TestWithoutALimitTheScaleIsFull(t *testing.T) {
	if got := draw.ScaleFor(length.Max, length.Max, draw.Style{}); got != 1 {
		t.Errorf("1:%d", got)
	}
}

func TestEvenTheLongestLengthHasAScale(t *testing.T) {
	st := draw.Style{Fineness: length.Sixteenth, Width: 1e-9, Height: 1}
	if got := draw.ScaleFor(length.Max, length.Max, st); got < int64(length.Max) {
		t.Errorf("1:%d", got)
	}
}

func TestPensTellThemselvesApart(t *testing.T) {
	seen := map[string]draw.Pen{}
	for _, p := range draw.Pens() {
		if p.Width() <= 0 || p.String() == "" {
			t.Errorf("pen %d has no width or name", p)
		}
		if q, twice := seen[p.String()]; twice {
			t.Errorf("pens %d and %d are both %s", p, q, p)
		}
		seen[p.String()] = p
		for _, l := range p.Dashes() {
			if l <= 0 || len(p.Dashes())%2 != 0 {
				t.Errorf("%s: dashes and gaps are %v", p, p.Dashes())
			}
		}
	}
}
