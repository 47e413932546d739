package main

import (
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/money"
)

func TestWhatIsBoughtIsCountedAsASellerDoes(t *testing.T) {
	for want, l := range map[string]money.Line{
		"8":              {Count: 8, Unit: "each", Pack: 1},
		"1 board foot":   {Count: 1, Unit: "board foot", Pack: 1},
		"48 board feet":  {Count: 48, Unit: "board foot"},
		"1 pack of 100":  {Count: 1, Unit: "each", Pack: 100},
		"2 packs of 100": {Count: 2, Unit: "each", Pack: 100},
		"2 × 750 ml":     {Count: 2, Unit: "ml", Pack: 750},
		"3 kg":           {Count: 3, Unit: "kg", Pack: 1},
	} {
		if got := packed(l); got != want {
			t.Errorf("%+v is told %q, want %q", l, got, want)
		}
	}
}

// A stick that the list of cuts calls stick 1 is called so wherever it comes.
func TestAPieceOfStockHasOneName(t *testing.T) {
	_, out, errs := run("", "derive", "../../examples/packing-table.piece.yaml")
	if errs != "" {
		t.Fatal(errs)
	}
	_, layouts, _ := strings.Cut(out, "\nLAYOUT")
	for _, says := range []string{
		"  stick 1 (pipe 1 21 ft): C7.1", "  board 1 (yard 96 in × 6 in,", " in from board 1 | ", "[ ]   1  board 1: cut ", "; from board 1; board 2",
		" in of board 1, ", "hard maple 8/4", "1 × 500 g      PVA wood glue", "hardwax oil  ", "21 ft stick of pipe 1",
	} {
		if !strings.Contains(layouts, says) {
			t.Errorf("%q is not told", says)
		}
	}
	for _, not := range []string{"from yard", "of yard", "pva", "hardwax-oil"} {
		if strings.Contains(layouts, not) {
			t.Errorf("%q is told", not)
		}
	}
}

// 1803.196 is proven, 1803.20 is not.
func TestABoundIsToldNoHigherThanItIs(t *testing.T) {
	if says := goodWords(&cut.Answer{Cost: 1832.622, Bound: 1803.196}); says != "cost 1832.62, at most 1.7 % could be saved (none costs less than 1803.19)" {
		t.Error(says)
	}
}

// No line ends within a measure: 11 at its end and 1/2 in on the next are read as eleven inches.
func TestAMeasureStandsOnOneLine(t *testing.T) {
	text := wrap(strings.Repeat("C24.1 ≈ 41 1/2 in, 2 × 3 13/16 in from board 12, ", 9), 37, 3)
	for l := range strings.Lines(text) {
		l = strings.TrimSpace(l)
		if l != "C24.1 ≈ 41 1/2 in, 2 × 3 13/16 in" && l != "from board 12, C24.1 ≈ 41 1/2 in," && l != "2 × 3 13/16 in from board 12," && l != "from board 12," {
			t.Errorf("a line is %q", l)
		}
	}
	box := "    [ ]   3  stick 2: cut " + strings.Repeat("C17.2, ", 20)
	if lines := strings.Split(folded(box), "\n"); len(lines) != 2 || !strings.HasPrefix(lines[1], strings.Repeat(" ", 17)+"C17.2") {
		t.Errorf("a long step is told %q", lines)
	}
}
