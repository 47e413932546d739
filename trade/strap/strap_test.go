package strap_test

import (
	_ "embed"
	"errors"
	"fmt"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
	"rodwright/trade/strap"
	"rodwright/trade/table"
)

//go:embed straps.csv
var strapsCSV string

func TestEveryStrapHasASourceAndSaysThatItIsAssumed(t *testing.T) {
	for _, r := range table.Read(strapsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
	for _, id := range strap.Sizes() {
		s, err := strap.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(s.Assumed, "from memory") || s.Source.String() == "" {
			t.Errorf("%s: assumed %q, source %q", id, s.Assumed, s.Source)
		}
	}
}

func TestAStrapSpansItsPipeAndItsHolesPassItsScrew(t *testing.T) {
	for _, id := range strap.Sizes() {
		s, err := strap.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		p, err := pipe.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		sc, err := screw.Lookup(s.ScrewGauge)
		if err != nil {
			t.Fatal(err)
		}
		if room := s.HoleSpacing - p.OD - s.Hole; room <= 0 {
			t.Errorf("%s: holes %v apart leave no room beside a pipe of %v", id, s.HoleSpacing, p.OD)
		}
		if s.Hole <= sc.Shank {
			t.Errorf("%s: hole %v, screw %v", id, s.Hole, sc.Shank)
		}
	}
}

// Two-hole straps as sold, from memory: 3/4 pipe, holes 2-1/2 in apart, 3/4 in wide, No. 10 screws.
func TestTheStrapForThreeQuarterPipe(t *testing.T) {
	s, err := strap.Lookup("3/4")
	if err != nil {
		t.Fatal(err)
	}
	if s.HoleSpacing != 5*length.Inch/2 || s.Width != 3*length.Inch/4 || s.ScrewGauge != 10 {
		t.Errorf("%+v", s)
	}
}

func TestMetricPipeTakesTheStrapOfTheSameSizeAndSaysSo(t *testing.T) {
	metric, err := strap.Lookup("DN20")
	if err != nil {
		t.Fatal(err)
	}
	inch, err := strap.Lookup("3/4")
	if err != nil {
		t.Fatal(err)
	}
	if metric.HoleSpacing != inch.HoleSpacing || metric.Pipe != "DN20" || !strings.Contains(metric.Assumed, "NPS 3/4") {
		t.Errorf("%+v", metric)
	}
}

func TestAPipeWithoutAStrapIsAnError(t *testing.T) {
	for _, id := range []string{"3", "1/8", "seven", ""} {
		_, err := strap.Lookup(id)
		var unknown *table.UnknownError
		if !errors.As(err, &unknown) || len(unknown.Near) == 0 {
			t.Errorf("%q: %v", id, err)
		}
	}
}

func ExampleLookup() {
	s, err := strap.Lookup("3/4")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(length.Sixteenth.Text(s.HoleSpacing), "between holes;", s.Assumed)
	// Output: 2 1/2 in between holes; strap for 3/4 pipe: as commonly sold, from memory; measure yours
}
