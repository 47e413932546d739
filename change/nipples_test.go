package change_test

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"rodwright/part"
	"rodwright/shop"
)

// endRails tells what the end rails of the low bench are made from, in a shop whose hour costs so many cents.
func endRails(t *testing.T, cents shop.Cents, lines ...string) (said []string, of []part.Part) {
	t.Helper()
	text, err := os.ReadFile("../examples/low-bench.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s := begin(t, string(text))
	s.log.Shop = s.log.Shop.With(shop.Price{Item: shop.HourItem, Cents: cents, Pack: 1, Unit: "h"})
	for _, p := range s.say(lines...).now().Build.Parts.Parts {
		if p.Name == "end rail" {
			said, of = append(said, fmt.Sprintf("%s: %d from %s", p.Tag, p.Count, p.From)), append(of, p)
		}
	}
	return said, of
}

// At two an hour every end rail is cut from the stick that is opened anyway; three nipples that were bought are used first.
func TestNipplesThatWereBoughtComeFirst(t *testing.T) {
	if got, _ := endRails(t, 200); !slices.Equal(got, []string{"C5: 4 from stick"}) {
		t.Fatal(got)
	}
	got, of := endRails(t, 200, "bought 3 × nipple 3/4 3 1/2 in for 9")
	if !slices.Equal(got, []string{"C5: 3 from nipple", "C5.4: 1 from stick"}) || of[0].FromWhy != "bought: one nipple 3/4 3 1/2 in is there" {
		t.Errorf("%v, %q", got, of[0].FromWhy)
	}
}

// At 38 an hour every end rail is bought, but for the one that a maker cut all the same.
func TestARailThatWasCutStaysCut(t *testing.T) {
	if got, _ := endRails(t, 3800); !slices.Equal(got, []string{"C5: 4 from nipple"}) {
		t.Fatal(got)
	}
	got, of := endRails(t, 3800, "made C5.2 cut-pipe")
	if !slices.Equal(got, []string{"C5: 3 from nipple", "C5.2: 1 from stick"}) || !slices.Equal(of[0].Tags, []string{"C5.1", "C5.3", "C5.4"}) {
		t.Errorf("%v, %v", got, of[0].Tags)
	}
}
