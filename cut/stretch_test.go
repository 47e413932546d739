package cut

import (
	"slices"
	"testing"
)

func TestADefectIsTakenOutOfTheFreeRanges(t *testing.T) {
	for _, c := range []struct {
		defect Stretch
		want   []Stretch
	}{
		{Stretch{40, 50}, []Stretch{{10, 40}, {50, 90}}},
		{Stretch{0, 20}, []Stretch{{20, 90}}},
		{Stretch{80, 200}, []Stretch{{10, 80}}},
		{Stretch{0, 200}, nil},
		{Stretch{90, 95}, []Stretch{{10, 90}}},
	} {
		if got := Without([]Stretch{{10, 90}}, c.defect); !slices.Equal(got, c.want) {
			t.Errorf("without %v: %v, want %v", c.defect, got, c.want)
		}
	}
}
