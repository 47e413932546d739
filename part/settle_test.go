package part

import (
	"math"
	"slices"
	"testing"

	"rodwright/piece"
	"rodwright/shop"
)

// A tee to a tee that is 1/64 in more than a 4 in nipple bridges.
func TestANippleThatIsCutHasItsExactLength(t *testing.T) {
	f := tee(t, "3/4")
	between := 4*inch + 2*f.TakeOut() + inch/64
	p := pipeCut(between, f, f, shop.PipeWork{NippleUpTo: 6 * inch, LeastThreaded: 3 * inch})
	p.Tag, p.Tags, p.Count, p.Indexes = "C1", []string{"C1.1", "C1.2", "C1.3"}, 3, []int{0, 1, 2}
	cut := Chosen{Cut: true, Why: "cut"}
	kinds := p.divided(map[string]Chosen{"C1.1": {Why: "bought"}, "C1.2": cut, "C1.3": cut})
	if len(kinds) != 2 || kinds[0].Tag != "C1" || kinds[1].Tag != "C1.2" || !slices.Equal(kinds[1].Tags, []string{"C1.2", "C1.3"}) || kinds[1].Count != 2 {
		t.Fatalf("%+v", kinds)
	}
	if b := kinds[0]; b.From != FromNipple || b.Cut != 4*inch || b.FromWhy != "bought" || b.Sawn != nil {
		t.Errorf("bought: %v from %s, %q", b.Cut.Inches(), b.From, b.FromWhy)
	}
	pitch := f.Size.Pitch
	switch c := kinds[1]; {
	case c.From != FromStick || c.Cut != 4*inch+inch/64 || c.Moves != 0 || c.FromWhy != "cut":
		t.Errorf("cut: %v from %s moves %v, %q", c.Cut.Inches(), c.From, c.Moves.Inches(), c.FromWhy)
	case c.Tightest != between-2*pitch || c.Loosest != between+2*pitch:
		t.Errorf("built from %v to %v", c.Tightest.Inches(), c.Loosest.Inches())
	case math.Abs(c.MassKg-f.Size.Mass(c.Cut)) > 1e-12 || c.MassKg <= kinds[0].MassKg:
		t.Errorf("it weighs %v, the nipple %v", c.MassKg, kinds[0].MassKg)
	}
}

func TestWhatIsTooShortToThreadIsNoChoice(t *testing.T) {
	f := tee(t, "3/4")
	p := pipeCut(2*inch+2*f.TakeOut(), f, f, shop.PipeWork{NippleUpTo: 6 * inch, LeastThreaded: 3 * inch})
	if p.From != FromNipple || p.Sawn != nil {
		t.Errorf("a nipple of 2 in: %s, cut as well %v", p.From, p.Sawn != nil)
	}
}

func TestWithoutAChoiceTheListStaysAsItIs(t *testing.T) {
	list := &List{Parts: []Part{{Tag: "C1", Kind: Pipe, Tags: []string{"C1.1"}, Count: 1, From: FromStick}}}
	if got, err := Settle(&piece.Resolved{}, list, shop.Sample(), nil); err != nil || got != list {
		t.Errorf("%v, %v", got, err)
	}
}
