package build_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/build"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// benchOf is the low bench with another length of board, in a shop whose hour costs so much. The take-off of its end
// rails is 3 1/2 in, a stock nipple at 2.97; a 10 ft stick of its pipe costs 28, one of 21 ft 52.
func benchOf(t *testing.T, long string, cents shop.Cents, rec *journal.Record) *build.Build {
	t.Helper()
	_, _, bench := bench(t)
	text, err := piece.Edit(bench.Doc.Text, "sizes/length", long)
	if err != nil {
		t.Fatal(err)
	}
	s := shop.Sample().With(shop.Price{Item: shop.HourItem, Cents: cents, Pack: 1, Unit: "h"})
	return deriveWith(t, read(t, "bench", text), s, rec, nil)
}

// endRails tells the parts of a build that are end rails: tag, count and what they are made from.
func endRails(b *build.Build) (said []string, parts []part.Part) {
	for _, p := range b.Parts.Parts {
		if p.Name == "end rail" {
			said, parts = append(said, fmt.Sprintf("%s: %d from %s", p.Tag, p.Count, p.From)), append(parts, p)
		}
	}
	return said, parts
}

// By hand: a 10 ft stick less 1/4 in at each end is 119 1/2 in. At 48 in the other pipes and their saw cuts leave
// 22.19 in of it, and a rail with its saw cut takes 3 9/16 in. A board 13 in longer leaves 9.19 in, room for two rails; one 22 in longer leaves 0.19 in, for
// none. An hour at 2.00 makes the work on one that is cut, 3 min + 2·5 min + 2·1 min, 0.50; at 38.00 it is 9.50, and
// every one is bought.
func TestEndRailsAreCutAsFarAsTheStickThatIsOpenedReaches(t *testing.T) {
	for _, c := range []struct {
		long  string
		cents shop.Cents
		want  []string
		cost  float64
	}{
		{"48 in", 200, []string{"C5: 4 from stick"}, 28 + 4*0.50},
		{"61 in", 200, []string{"C5: 2 from stick", "C5.3: 2 from nipple"}, 28 + 2*0.50 + 2*2.97},
		{"70 in", 200, []string{"C5: 4 from nipple"}, 28 + 4*2.97},
		{"48 in", 3800, []string{"C5: 4 from nipple"}, 28 + 4*2.97},
	} {
		b := benchOf(t, c.long, c.cents, nil)
		got, _ := endRails(b)
		if a := b.Layout.Stick[0].Answer; !slices.Equal(got, c.want) || math.Abs(a.Cost-c.cost) > 1e-6 || !a.Proven {
			t.Errorf("a board %s long, an hour at %v: %v, cost %v of at least %v; want %v for %v", c.long, c.cents, got, a.Cost, a.Bound, c.want, c.cost)
		}
	}
}

func TestWhatIsBoughtAndWhatIsCutIsOfOneMindEverywhere(t *testing.T) {
	b := benchOf(t, "61 in", 200, nil)
	if _, rails := endRails(b); rails[0].Cut != rails[0].Exact || rails[0].Moves != 0 || rails[1].Cut != 7*length.Inch/2 || rails[1].Sawn != nil {
		t.Errorf("cut to %v of %v, bought %v", rails[0].Cut, rails[0].Exact, rails[1].Cut)
	}
	for _, l := range b.Buy.Lines {
		if l.Item == "nipple 3/4 3 1/2 in" && (l.Needed != 2 || !slices.Equal(l.Parts, []string{"C5.3", "C5.4"})) {
			t.Errorf("%g nipples to buy, for %v", l.Needed, l.Parts)
		}
	}
	kg := 0.0
	for _, p := range b.Parts.Parts {
		kg += float64(p.Count) * p.MassKg
	}
	if math.Abs(kg-b.Parts.Totals.MassKg) > 1e-9 {
		t.Errorf("the parts weigh %v together, said is %v", kg, b.Parts.Totals.MassKg)
	}
	for _, st := range b.Work.Steps {
		if st.Work == "thread" && (!slices.Contains(st.Parts, "C5.2") || slices.Contains(st.Parts, "C5.3")) {
			t.Errorf("threaded are %v", st.Parts)
		}
	}
	why := map[string]string{}
	for _, p := range b.Parts.Parts {
		why[p.Tag] = p.FromWhy
	}
	for tag, want := range map[string]string{
		"C5":   "cut: 0.50 of sawing and threading, from a stick that is opened for other pipes, against nipple 3/4 3 1/2 in 2.97",
		"C5.3": "bought: nipple 3/4 3 1/2 in 2.97, as no stick that is opened has room left for it, though its share of one would be 1.24 cut (0.74 pipe, 0.50 sawing and threading)",
		"C1":   "",
	} {
		if why[tag] != want {
			t.Errorf("%s: %q, want %q", tag, why[tag], want)
		}
	}
}

func TestWithoutAPriceToCompareANippleIsBought(t *testing.T) {
	_, _, b := bench(t)
	cheap := b.Shop.With(shop.Price{Item: shop.HourItem, Cents: 1, Pack: 1, Unit: "h"})
	none := cheap.Without("nipple 3/4 3 1/2 in")
	unpriced := cheap.Without("pipe 3/4 10 ft").Without("pipe 3/4 21 ft")
	for name, s := range map[string]*shop.Shop{"nipple": none, "stick": unpriced} {
		b := derive(t, b.Doc, s, nil)
		got, rails := endRails(b)
		if !slices.Equal(got, []string{"C5: 4 from nipple"}) || rails[0].FromWhy != "" ||
			!slices.ContainsFunc(b.Layout.Assumed, func(a string) bool { return strings.Contains(a, "bought and not cut, as no price of") }) {
			t.Errorf("without a price of a %s: %v, assumed %v", name, got, b.Layout.Assumed)
		}
	}
	b = derive(t, b.Doc, b.Shop.Without(shop.HourItem), nil)
	if got, _ := endRails(b); !slices.Equal(got, []string{"C5: 4 from stick"}) ||
		!slices.ContainsFunc(b.Layout.Assumed, func(a string) bool { return strings.Contains(a, "by the price of the pipe alone") }) {
		t.Errorf("without a price of an hour: %v, assumed %v", got, b.Layout.Assumed)
	}
}
