package stability_test

import (
	_ "embed"
	"errors"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/stability"
	"rodwright/trade/table"
)

//go:embed requirements.csv
var requirementsCSV string

func TestEveryRequirementIsWholeAndHasASource(t *testing.T) {
	for _, r := range table.Read(requirementsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
	for _, id := range stability.RequirementIDs() {
		r, err := stability.LookupRequirement(id)
		if err != nil || r.Title == "" || r.Scope == "" || r.Words == "" {
			t.Errorf("%s: %+v, %v", id, r, err)
		}
		switch r.Kind {
		case stability.TiltRequirement, stability.PushRequirement, stability.DownRequirement:
			if !(r.Value > 0) {
				t.Errorf("%s asks nothing", id)
			}
		case stability.StorageRequirement, stability.TestRequirement:
		default:
			t.Errorf("%s is of no kind: %q", id, r.Kind)
		}
	}
}

// As published: 10° for household appliances (IEC 60335-1 clause 20.1), for audio, video and IT equipment (IEC 62368-1,
// 3rd edition) and for apparatus on its cart (IEC 60065 clause 19.1); 6°, 15° and 15° for luminaires (IEC 60598 parts 2-4,
// 2-7 and 2-10).
func TestThePublishedTilts(t *testing.T) {
	for id, want := range map[string]float64{
		"iec-60335-1-tilt": 10, "iec-62368-1-tilt": 10, "iec-60065-tilt": 10, "laboratory-tilt": 10,
		"iec-60598-2-4-tilt": 6, "iec-60598-2-7-tilt": 15, "iec-60598-2-10-tilt": 15,
	} {
		r, err := stability.LookupRequirement(id)
		if err != nil {
			t.Fatal(err)
		}
		near(t, id, r.Value, want, 0)
	}
}

// IEC 62368-1, 3rd edition: 13 % of the weight, at most 250 N, at up to 1.5 m; 50 %, at most 100 N, straight down.
// 250 N is reached at 250 ÷ (0.13 · 9.80665) = 196.1 kg, 100 N at 20.39 kg.
func TestThePublishedForcesAndWhereTheyEnd(t *testing.T) {
	push, err1 := stability.LookupRequirement("iec-62368-1-push")
	down, err2 := stability.LookupRequirement("iec-62368-1-down")
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	near(t, "push at 196 kg", push.Force(196), 249.87, 0.01)
	near(t, "push at 197 kg", push.Force(197), 250, 0)
	near(t, "down at 20 kg", down.Force(20), 98.07, 0.01)
	near(t, "down at 21 kg", down.Force(21), 100, 0)
	if push.UpTo != 1500*length.Millimetre {
		t.Errorf("pushed at up to %v", push.UpTo)
	}
}

// IEC 60065 clause 19.1: with the cart 25 kg or more, or 1 m high or more; the instrument maker's rule from 11 kg.
func TestARequirementSaysWhatItCovers(t *testing.T) {
	for _, c := range []struct {
		id   string
		kg   float64
		high length.Length
		want bool
	}{
		{"iec-60065-tilt", 25, 300 * length.Millimetre, true}, {"iec-60065-tilt", 5, length.Metre, true},
		{"iec-60065-tilt", 24.9, 999 * length.Millimetre, false}, {"laboratory-tilt", 11, 0, true},
		{"laboratory-tilt", 10.9, 3 * length.Metre, false}, {"iec-60335-1-tilt", 0.1, 0, true},
	} {
		r, err := stability.LookupRequirement(c.id)
		if err != nil {
			t.Fatal(err)
		}
		got, why := r.Covers(c.kg, c.high)
		if got != c.want || !got && !strings.Contains(why, "covers") {
			t.Errorf("%s, %v kg, %v: %v, %q", c.id, c.kg, c.high, got, why)
		}
	}
}

func TestAnUnknownRequirementNamesNearOnes(t *testing.T) {
	_, err := stability.LookupRequirement("iec-60335-1-tlt")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || len(unknown.Near) == 0 || unknown.Near[0] != "iec-60335-1-tilt" {
		t.Errorf("%v", err)
	}
}
