package shop_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func TestMoneyIsRoundedOnce(t *testing.T) {
	// A board of 4/4 ash, 8 in × 8 ft, 5 1/3 board feet at 3.80: 20.27, and not the 20.14 of a tally that
	// was rounded first.
	ash := shop.Price{Item: "ash 4/4", Cents: 380, Pack: 1, Unit: "board foot"}
	if got, ok := ash.Cost(8 * 8 / 12.); !ok || got != 2027 {
		t.Errorf("the board costs %s, want 20.27", got)
	}
	if got, _ := ash.Cost(5.3); got != 2014 {
		t.Errorf("rounded early it would cost %s, want 20.14", got)
	}
}

func TestWhatIsSoldInPacksIsBoughtInPacks(t *testing.T) {
	screws := shop.Price{Item: "wood screw 10 × 1 in", Cents: 720, Pack: 100, Unit: "each", Pieces: true}
	glue := shop.Price{Item: "pva", Cents: 950, Pack: 500, Unit: "g", Pieces: true}
	oak := shop.Price{Item: "white-oak 5/4", Cents: 980, Pack: 1, Unit: "board foot"}
	cases := []struct {
		price    shop.Price
		quantity float64
		packs    float64
		cost     shop.Cents
	}{
		{screws, 16, 1, 720},
		{screws, 100, 1, 720},
		{screws, 100.00000000001, 1, 720},
		{screws, 101, 2, 1440},
		{glue, 76, 1, 950},
		{oak, 9.375, 9.375, 9188}, // 91.875 rounds away from zero, as money is rounded
		{oak, 0, 0, 0},
	}
	for _, c := range cases {
		got, ok := c.price.Cost(c.quantity)
		if packs := c.price.Packs(c.quantity); !ok || packs != c.packs || got != c.cost {
			t.Errorf("%g %s of %s: %g packs for %s, want %g for %s", c.quantity, c.price.Unit, c.price.Item, packs, got, c.packs, c.cost)
		}
	}
}

func TestAMissingPriceIsUnknownAndNotZero(t *testing.T) {
	s := shop.Sample()
	if v, ok := s.Price("tee 3/4"); !ok || v <= 0 {
		t.Errorf("tee 3/4 costs %g", v)
	}
	if _, ok := s.Without("tee 3/4").Price("tee 3/4"); ok {
		t.Error("a price that was taken away is still there")
	}
	if _, ok := s.Price("tee 3/4"); !ok {
		t.Error("the shop itself lost its price")
	}
	dear := s.With(shop.Price{Item: "golden tee", Cents: 100000, Pack: 1, Unit: "each", Pieces: true})
	if v, ok := dear.Price("golden tee"); !ok || v != 1000 {
		t.Errorf("golden tee: %g", v)
	}
	if v, ok := (&shop.Shop{}).With(shop.Price{Item: "a", Cents: 5, Pack: 1}).Price("a"); !ok || v != 0.05 {
		t.Errorf("a shop without prices can't be given one: %g", v)
	}
}

func TestAmountsThatAreNoneAreRefused(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), 1e300, -1e11} {
		if c, ok := shop.ToCents(v); ok {
			t.Errorf("%g is taken for %s", v, c)
		}
	}
	for v, want := range map[shop.Cents]string{5: "0.05", 2027: "20.27", -305: "-3.05", 100: "1.00"} {
		if v.String() != want {
			t.Errorf("%d cents print as %s, want %s", int64(v), v, want)
		}
	}
}

func TestMoreIsNeverCheaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := shop.Price{
			Cents:  shop.Cents(rapid.IntRange(1, 100000).Draw(t, "cents")),
			Pack:   rapid.Float64Range(0.1, 1000).Draw(t, "pack"),
			Pieces: rapid.Bool().Draw(t, "pieces"),
		}
		a := rapid.Float64Range(0, 1000).Draw(t, "a")
		b := a + rapid.Float64Range(0, 1000).Draw(t, "more")
		less, _ := p.Cost(a)
		more, _ := p.Cost(b)
		if more < less {
			t.Errorf("%g costs %s and %g costs %s", a, less, b, more)
		}
		if p.Pieces && p.Packs(b)*p.Pack < b*(1-1e-8) {
			t.Errorf("%g packs of %g do not hold %g", p.Packs(b), p.Pack, b)
		}
	})
}

func TestItemsAreNamedAsTheyAreAskedFor(t *testing.T) {
	npt, _ := pipe.Lookup("3/4")
	dn, err := pipe.Lookup("DN20")
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct{ got, want string }{
		{shop.WoodItem("white-oak", "5/4"), "white-oak 5/4"},
		{shop.StickItem(npt, 21*length.Foot), "pipe 3/4 21 ft"},
		{shop.StickItem(dn, 6*length.Metre), "pipe DN20 6000 mm"},
		{shop.NippleItem(npt, length.Inch*5/2), "nipple 3/4 2 1/2 in"},
		{shop.NippleItem(npt, npt.CloseNipple), "nipple 3/4 close"},
		{shop.FittingItem(pipe.SideTee, npt), "side-tee 3/4"},
		{shop.ScrewItem(10, length.Inch*5/4), "wood screw 10 × 1 1/4 in"},
		{shop.StrapItem(dn), "strap DN20"},
	}
	for _, c := range cases {
		if c.got != c.want {
			t.Errorf("named %q, want %q", c.got, c.want)
		}
	}
}

func TestEveryStockPartOfTheSampleHasAPrice(t *testing.T) {
	s := shop.Sample()
	for _, id := range []string{"1/2", "3/4", "1", "1-1/4", "DN15", "DN20", "DN25", "DN32"} {
		size, err := pipe.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		var items []string
		for _, l := range s.StickLengths(size) {
			items = append(items, shop.StickItem(size, l))
		}
		for _, l := range pipe.StockNipples(size) {
			if l <= s.Pipe.NippleUpTo {
				items = append(items, shop.NippleItem(size, l))
			}
		}
		for _, k := range pipe.Kinds() {
			if k != pipe.None {
				items = append(items, shop.FittingItem(k, size))
			}
		}
		for _, item := range items {
			if _, ok := s.Price(item); !ok {
				t.Errorf("no price for %s", item)
			}
		}
	}
}

func Example() {
	s := shop.Sample()
	tee, ok := s.Price("tee 3/4")
	fmt.Println(tee, ok)
	_, ok = s.Price("tee 7/8")
	fmt.Println(ok)
	// Output:
	// 4.2 true
	// false
}
