package wood

import (
	"errors"
	"slices"
	"testing"

	"rodwright/trade/table"
)

func TestCutsAreReadInTheTradesWords(t *testing.T) {
	for _, c := range []struct {
		text string
		want Cut
	}{
		{"flat", Flat},
		{"flat-sawn", Flat},
		{"Plain sawn", Flat},
		{"quarter", Quarter},
		{"quarter-sawn", Quarter},
		{"quartersawn", Quarter},
		{"mixed", Mixed},
		{"rift", Mixed},
	} {
		if got, err := ParseCut(c.text); err != nil || got != c.want {
			t.Errorf("%q is %q (%v), want %q", c.text, got, err, c.want)
		}
	}
	_, err := ParseCut("flit")
	var unknown *table.UnknownError
	if !errors.As(err, &unknown) || unknown.Near[0] != "flat" {
		t.Errorf("%v", err)
	}
}

func TestThicknessMovesByTheOtherCoefficient(t *testing.T) {
	for _, c := range Cuts() {
		if c.Thickness().Thickness() != c {
			t.Errorf("%s turned twice is %s", c, c.Thickness().Thickness())
		}
	}
	if Flat.Thickness() != Quarter || Mixed.Thickness() != Mixed {
		t.Error("a flat-sawn board is as thick as a quarter-sawn one is wide")
	}
	if !slices.Equal(Cuts(), []Cut{Flat, Quarter, Mixed}) {
		t.Errorf("%v", Cuts())
	}
	if s := mustLookup(t, "white-oak"); s.Coefficient("") != s.CT {
		t.Error("a board of unsure cut takes the tangential coefficient")
	}
}
