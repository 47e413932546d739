package wood

import (
	"strings"
	"testing"

	"rodwright/trade/table"
)

// Wood Handbook FPL-GTR-282 (2021) Table 5-1, from memory.
func TestElasticRatiosAreThoseOfTheHandbook(t *testing.T) {
	for _, c := range []struct {
		id               string
		et, er, glr, glt float64
		assumed          string
	}{
		{"hard-maple", 0.065, 0.132, 0.111, 0.063, ""},
		{"red-oak", 0.082, 0.154, 0.089, 0.081, ""},
		{"white-oak", 0.072, 0.163, 0.086, 0.081, "G_LT as Oak, red"},
		{"douglas-fir", 0.050, 0.068, 0.064, 0.078, ""},
	} {
		got := mustLookup(t, c.id).Elastic()
		if got.ET != c.et || got.ER != c.er || got.GLR != c.glr || got.GLT != c.glt {
			t.Errorf("%s: %+v", c.id, got)
		}
		if (got.Assumed == "") != (c.assumed == "") || !strings.Contains(got.Assumed, c.assumed) {
			t.Errorf("%s assumes %q", c.id, got.Assumed)
		}
	}
}

func TestEverySpeciesHasElasticRatios(t *testing.T) {
	for _, id := range IDs() {
		s := mustLookup(t, id)
		r := s.Elastic()
		for _, v := range []float64{r.ET, r.ER, r.GLR, r.GLT} {
			if !(v > 0.02 && v < 0.25) {
				t.Errorf("%s: %+v", id, r)
			}
		}
		if s.Ratios == "" && !strings.Contains(r.Assumed, "the mean of its kind") {
			t.Errorf("%s borrows without saying so", id)
		}
		if want := map[bool]float64{true: 0.50, false: 0.42}[s.Hardwood]; r.NuLT != want || r.NuLR != 0.37 {
			t.Errorf("%s: Poisson ratios %v, %v", id, r.NuLT, r.NuLR)
		}
	}
	for _, r := range table.Read(elasticCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
}
