package part

import (
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func size(t *testing.T, id string) pipe.Size {
	t.Helper()
	s, err := pipe.Lookup(id)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func tee(t *testing.T, id string) pipe.Fitting {
	t.Helper()
	f, err := size(t, id).Fitting(pipe.Tee)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Stock nipples by ASTM A733, from memory: close (1 3/8 in at 3/4), half inches to 6 in. What the threading
// machine holds: 3 in and more, common practice, no source.
func TestWhatAPipeIsMadeFrom(t *testing.T) {
	work := shop.PipeWork{NippleUpTo: 6 * inch, LeastThreaded: 3 * inch}
	for _, c := range []struct {
		name  string
		exact length.Length
		cut   length.Length
		from  string
	}{
		{"a stock length", 4 * inch, 4 * inch, FromNipple},
		{"a stock length missed by 1/32 in", 4*inch + inch/32, 4 * inch, FromNipple},
		{"by 1/32 in the other way", 4*inch - inch/32, 4 * inch, FromNipple},
		{"by a little more", 4*inch + inch/32 + 1, 4*inch + inch/32 + 1, FromStick},
		{"the close nipple", 11 * inch / 8, 11 * inch / 8, FromNipple},
		{"shorter than the close nipple", 5 * inch / 4, 5 * inch / 4, FromNothing},
		{"no stock step and too short to thread", 11 * inch / 4, 11 * inch / 4, FromNothing},
		{"just long enough to thread", 3*inch + inch/4, 3*inch + inch/4, FromStick},
		{"a nipple longer than the shop buys", 8 * inch, 8 * inch, FromStick},
		{"nothing", 0, 0, FromNothing},
		{"less than nothing", -inch, -inch, FromNothing},
	} {
		cut, from := source(size(t, "3/4"), c.exact, work)
		if cut != c.cut || from != c.from {
			t.Errorf("%s: %v in from %q, want %v from %q", c.name, cut.Inches(), from, c.cut.Inches(), c.from)
		}
	}
}

func TestAShopThatSetsNoLimitsTakesTheTrades(t *testing.T) {
	if cut, from := source(size(t, "3/4"), 8*inch, shop.PipeWork{}); cut != 8*inch || from != FromNipple {
		t.Errorf("8 in: %v from %q", cut, from)
	}
	if _, from := source(size(t, "3/4"), 11*inch/4, shop.PipeWork{}); from != FromNothing {
		t.Errorf("2 3/4 in from %q", from)
	}
}

func TestAStockNippleSaysHowFarItMovesItsEnds(t *testing.T) {
	f := tee(t, "3/4")
	between := 4*inch + 2*f.TakeOut() + inch/64
	p := pipeCut(between, f, f, shop.PipeWork{NippleUpTo: 6 * inch})
	if p.From != FromNipple || p.Cut != 4*inch || p.Moves != -inch/64 {
		t.Errorf("cut %v from %s moves %v", p.Cut.Inches(), p.From, p.Moves.Inches())
	}
	if p.Exact+p.TakeOuts[0]+p.TakeOuts[1] != between {
		t.Error("exact length and take-outs do not make up the distance")
	}
	pitch := f.Size.Pitch
	if p.Tightest != between-inch/64-2*pitch || p.Loosest != between-inch/64+2*pitch {
		t.Errorf("built from %v to %v", p.Tightest.Inches(), p.Loosest.Inches())
	}
}

func TestAPipeThatCantBeIsOnTheListStill(t *testing.T) {
	f := tee(t, "3/4")
	p := pipeCut(inch, f, f, shop.PipeWork{})
	if p.Cut >= 0 || p.From != FromNothing || p.MassKg != 0 || p.CutFigure.Missing() {
		t.Errorf("%+v", p)
	}
	if p.Least <= inch {
		t.Errorf("least distance %v in", p.Least.Inches())
	}
}

func TestAssumptionsArePartedByThing(t *testing.T) {
	got := words("tee 3/4: centre to end 1.31 in, from memory; measure yours; tee 3/4: band 1.46 in", "flat-sawn", "", "flat-sawn")
	want := []string{"tee 3/4: centre to end 1.31 in, from memory; measure yours", "tee 3/4: band 1.46 in", "flat-sawn"}
	if len(got) != len(want) {
		t.Fatalf("%q", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%q, want %q", got[i], want[i])
		}
	}
}
