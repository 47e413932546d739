package build

import (
	"encoding/json"
	"math"
	"testing"

	"rodwright/finding"
	"rodwright/length"
)

func TestAPictureIsToldWithItsNumbersWhereTheyAreFew(t *testing.T) {
	fs := []finding.Finding{
		{Check: "wall", Place: "deep board", Picture: finding.Picture{Year: &finding.Year{
			Times: []string{"driest", "dampest"}, Lines: []finding.Line{{Name: "gap", Values: []float64{2.5, math.NaN()}}}, Limit: 0.4,
		}}},
		{Check: "tip", Place: "to the back", Picture: finding.Picture{Tilt: &finding.Tilt{Rays: []finding.Ray{{Towards: 90, Tilt: 3.8}}, Limit: 10}}},
		{Check: "sag", Place: "deep board", Picture: finding.Picture{Bent: &finding.Bent{Down: []float64{math.Inf(1)}}}},
		{Check: "fit", Place: "trays"},
	}
	want := []string{
		`{"kind":"year","name":"wall-deep-board","times":["driest","dampest"],"lines":[{"name":"gap","values_mm":[2.5,null]}],"limit":0.4}`,
		`{"kind":"tilt","name":"tip-to-the-back","tilt":{"towards":[90],"tilt":[3.8]},"limit":10}`,
		`{"kind":"bent","name":"sag-deep-board"}`, `null`,
	}
	for i, f := range findingsJSON(fs, length.WholeMM) {
		if got, err := json.Marshal(f.Picture); err != nil || string(got) != want[i] {
			t.Errorf("%s: %s, %v", fs[i].Check, got, err)
		}
	}
}
