package stability_test

import (
	_ "embed"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/stability"
	"rodwright/trade/table"
)

//go:embed standards.csv
var standardsCSV string

func TestEveryFactOfTheStandardsHasASource(t *testing.T) {
	for _, r := range table.Read(standardsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
}

// IEC 62368-1, 3rd edition: 13 % of the weight, at most 250 N; 50 kg gives 63.8 N.
func TestPublishedTestForces(t *testing.T) {
	near(t, "push at 50 kg", must(t)(stability.PushTest(50)).Value, 63.8, 0.1)
	near(t, "push at 500 kg", must(t)(stability.PushTest(500)).Value, 250, 0)
	near(t, "down at 10 kg", must(t)(stability.DownTest(10)).Value, 49.03, 0.01)
	near(t, "down at 50 kg", must(t)(stability.DownTest(50)).Value, 100, 0)
}

// IEC 60335-1 clause 20.1: an inclined plane of 10°.
func TestTheTiltToSurviveIsThatOfHouseholdAppliances(t *testing.T) {
	f := stability.TiltLimit()
	near(t, "tilt", f.Value, 10, 0)
	if !strings.Contains(f.Source, "IEC 60335-1") || len(f.Assumed) == 0 {
		t.Errorf("source %q, assumed %q", f.Source, f.Assumed)
	}
}

// ASTM F2057-23, scope: clothing storage, 27 in, 30 lb and 3.2 cubic feet or more.
func TestWhichPiecesTheClothingStorageStandardCovers(t *testing.T) {
	const cubicFoot = 28.316846592
	chest := stability.Storage{Clothing: true, Height: 30 * in, MassKg: 45 * pound, Litres: 4 * cubicFoot}
	with := func(change func(*stability.Storage)) stability.Storage {
		s := chest
		change(&s)
		return s
	}
	cases := map[string]struct {
		piece stability.Storage
		want  bool
	}{
		"a chest of drawers":    {chest, true},
		"a rolling shelf":       {stability.Storage{Height: 53 * in, MassKg: 60, Litres: 0}, false},
		"a bookcase":            {with(func(s *stability.Storage) { s.Clothing = false }), false},
		"just at every limit":   {stability.Storage{Clothing: true, Height: 27 * in, MassKg: 30 * pound, Litres: 3.2 * cubicFoot}, true},
		"a nanometre too low":   {with(func(s *stability.Storage) { s.Height = 27*in - length.Nanometre }), false},
		"a light chest":         {with(func(s *stability.Storage) { s.MassKg = 29 * pound }), false},
		"little storage inside": {with(func(s *stability.Storage) { s.Litres = 3 * cubicFoot }), false},
	}
	for name, c := range cases {
		got, why := stability.TipOverStandard(c.piece)
		if got != c.want {
			t.Errorf("%s: covered %v, want %v (%s)", name, got, c.want, why)
		}
		if !strings.Contains(why, "F2057") {
			t.Errorf("%s: the reason does not name the standard: %s", name, why)
		}
	}
}
