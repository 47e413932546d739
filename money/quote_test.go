package money_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/money"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/steps"
)

// shopOf has one rate, no standing costs, and the given margin.
func shopOf(rate shop.Cents, margin float64) *shop.Shop {
	s := shop.Defaults().
		With(shop.Price{Item: shop.HourItem, Cents: rate, Pack: 1, Unit: "h"}).
		With(shop.Price{Item: shop.OverheadItem, Cents: 0, Pack: 1, Unit: "h"})
	s.Money = shop.Money{
		Margin: shop.Share{Value: margin, Known: true}, Tax: shop.Share{Known: true},
		Deposit: shop.Share{Value: 0.5, Known: true}, Consumables: shop.Share{Known: true},
	}
	s.Operations = slices.DeleteFunc(s.Operations, func(o shop.Operation) bool { return o.ID == "talk" })
	return s
}

func material(c shop.Cents) *money.List { return &money.List{Material: money.Of(c)} }

func TestAMarginIsAShareOfThePriceAndNotOfTheCost(t *testing.T) {
	// Arithmetic: 100 ÷ (1 − 0.30) = 142.857…, so 142.86; adding 30 % would give 130 and leave 23.1 %.
	q := money.Price(&steps.Work{HandsH: 1}, material(0), shopOf(10000, 0.30))
	if q.Cost != money.Of(10000) || q.Price != money.Of(14286) || q.Margin != money.Of(4286) {
		t.Errorf("cost %s, price %s, margin %s; want 100.00, 142.86, 42.86", q.Cost, q.Price, q.Margin)
	}
	if q.Total != q.Price || q.Tax != money.Of(0) {
		t.Errorf("without tax the total is %s", q.Total)
	}
}

func TestThePriceIsMaterialConsumablesHoursOverheadMarginAndTax(t *testing.T) {
	s := shopOf(4000, 0.25).With(shop.Price{Item: shop.OverheadItem, Cents: 1000, Pack: 1, Unit: "h"})
	s.Money.Tax, s.Money.Consumables = shop.Share{Value: 0.20, Known: true}, shop.Share{Value: 0.10, Known: true}
	// By hand: 200 + 20 + 10.5 h × 40 + 10.5 h × 10 = 745; ÷ 0.75 = 993.33; tax 198.67; total 1192.00; half 596.00.
	q := money.Price(&steps.Work{HandsH: 10.5}, material(20000), s)
	for _, c := range []struct {
		name string
		got  money.Amount
		want shop.Cents
	}{
		{"consumables", q.Consumables, 2000}, {"labour", q.Labour, 42000}, {"overhead", q.Overhead, 10500}, {"cost", q.Cost, 74500},
		{"price", q.Price, 99333}, {"tax", q.Tax, 19867}, {"total", q.Total, 119200}, {"deposit", q.Deposit, 59600},
	} {
		if c.got != money.Of(c.want) {
			t.Errorf("%s is %s, want %s", c.name, c.got, c.want)
		}
	}
	if len(q.Because) == 0 || len(q.Unknown) > 0 {
		t.Errorf("%d reasons, unknown %v", len(q.Because), q.Unknown)
	}
}

func TestWhatTheShopHasNotSettledMakesThePriceUnknown(t *testing.T) {
	full := shop.Sample()
	cases := []struct {
		name  string
		spoil func(*shop.Shop) *shop.Shop
		says  string
	}{
		{"no rate", func(s *shop.Shop) *shop.Shop { return s.Without(shop.HourItem) }, shop.HourItem},
		{"no standing costs", func(s *shop.Shop) *shop.Shop { return s.Without(shop.OverheadItem) }, shop.OverheadItem},
		{"no margin", func(s *shop.Shop) *shop.Shop { s.Money.Margin = shop.Share{}; return s }, "margin"},
		{"no tax", func(s *shop.Shop) *shop.Shop { s.Money.Tax = shop.Share{}; return s }, "tax"},
		{"no consumables", func(s *shop.Shop) *shop.Shop { s.Money.Consumables = shop.Share{}; return s }, "consumables"},
		{"a margin of everything", func(s *shop.Shop) *shop.Shop { s.Money.Margin.Value = 1; return s }, "price"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			q := money.Price(&steps.Work{HandsH: 1}, material(100), c.spoil(shop.Sample()))
			if q.Total.Known || !strings.Contains(strings.Join(q.Unknown, ";"), c.says) {
				t.Errorf("the total is %s, unknown %v", q.Total, q.Unknown)
			}
		})
	}
	if q := money.Price(&steps.Work{HandsH: 1, Unknown: []string{"time for thread"}}, material(100), full); q.Total.Known || q.Labour.Known {
		t.Errorf("with unknown hours the total is %s", q.Total)
	}
}

func TestHoursBeforeTheFirstCutAreCharged(t *testing.T) {
	// A maker counts over 8 unpaid hours: visit 3, preparation 1, drawing, list 2 and more, fetching wood 2.5 (public
	// workshop advice). The sample shop charges visit, drawing and list, and fetching is a step of its own.
	s := shop.Sample()
	_, w := taken(t, "low-bench", s)
	q := money.Price(w, material(100), s)
	if q.BeforeH < 3 || q.HandsH != w.HandsH+q.BeforeH {
		t.Errorf("%g h before the first cut, %g h in all", q.BeforeH, q.HandsH)
	}
	bare := shopOf(3800, 0.3)
	if q := money.Price(w, material(100), bare); !strings.Contains(strings.Join(q.Warnings, ";"), "visit, drawing and list") {
		t.Errorf("nobody is paid for the visit, and nothing is said: %v", q.Warnings)
	}
}

func TestMaterialThatEatsThePriceIsWarnedOf(t *testing.T) {
	// A one-person shop whose materials are half the price: too low; material and overhead should be at most 25 to 30 %
	// of the price (opinion of the trade).
	s := shopOf(4000, 0.30)
	s.Money.Deposit.Value = 0.40
	// By hand: material 50, work 20, cost 70, price 100: half of it is material, and a deposit of 40 does not cover it.
	q := money.Price(&steps.Work{HandsH: 0.5}, material(5000), s)
	said := strings.Join(q.Warnings, "; ")
	if q.Price != money.Of(10000) || !strings.Contains(said, "50 % of the price") || !strings.Contains(said, "deposit of 40.00 does not cover") {
		t.Errorf("price %s, warned: %s", q.Price, said)
	}
	// Material 20 of a price of 100 is as it should be.
	q = money.Price(&steps.Work{HandsH: 1.25}, material(2000), s)
	if q.Price != money.Of(10000) || strings.Contains(strings.Join(q.Warnings, ";"), "% of the price") {
		t.Errorf("price %s, warned: %v", q.Price, q.Warnings)
	}
}

func TestMoreHoursNeverMakeThePriceLess(t *testing.T) {
	s := shop.Sample()
	rapid.Check(t, func(r *rapid.T) {
		s.Money.Margin.Value = rapid.Float64Range(0, 0.9).Draw(r, "margin")
		buy := material(shop.Cents(rapid.IntRange(0, 1000000).Draw(r, "material")))
		few := rapid.Float64Range(0, 500).Draw(r, "hours")
		more := few + rapid.Float64Range(0, 500).Draw(r, "more")
		a := money.Price(&steps.Work{HandsH: few}, buy, s)
		b := money.Price(&steps.Work{HandsH: more}, buy, s)
		if !a.Total.Known || b.Total.Cents < a.Total.Cents || a.Price.Cents < a.Cost.Cents {
			r.Fatalf("%g h cost %s, %g h cost %s", few, a.Total, more, b.Total)
		}
	})
}

func TestABidAddsUpToItsTotal(t *testing.T) {
	// Public bid, recomputed: labour 982.42 as a cap, hardware 72.65, oak 115 board feet at 5.45, finish 63.28, sundries
	// 25.00: 1770.10, the wood at the day's price.
	oak := shop.Price{Item: "red-oak 4/4", Cents: 545, Pack: 1, Unit: "board foot"}
	list := money.Buy(&part.List{}, []money.Stock{{Item: "red-oak 4/4", Quantity: 115, Unit: "board foot"}}, priced(oak))
	if list.Material != money.Of(62675) {
		t.Errorf("115 board feet at 5.45 come to %s, want 626.75", list.Material)
	}
	bid := money.Bid{Tax: money.Of(0), Entries: []money.Entry{
		{Name: "labour", Amount: money.Of(98242), Holds: money.Cap}, {Name: "hardware", Amount: money.Of(7265), Holds: money.Fixed},
		{Name: "oak", Amount: list.Material, Holds: money.Floats}, {Name: "finish", Amount: money.Of(6328), Holds: money.Fixed},
		{Name: "sundries", Amount: money.Of(2500), Holds: money.Fixed},
	}}
	if bid.Sum() != money.Of(177010) {
		t.Errorf("the bid comes to %s, want 1770.10", bid.Sum())
	}
}

func TestAnItemisedBidSaysWhatMayMoveAndLosesNoCent(t *testing.T) {
	s := shop.Sample()
	for _, name := range []string{"stepped-stand", "low-bench", "long-table", "wall-shelf"} {
		list, w := taken(t, name, s)
		buy := money.Buy(list, nil, s)
		bid := money.Itemised(money.Price(w, buy, s), buy)
		if bid.Sum() != bid.Total || !bid.Total.Known {
			t.Errorf("%s: the entries come to %s, the total is %s", name, bid.Sum(), bid.Total)
		}
		holds := map[string]money.Holds{}
		for _, e := range bid.Entries {
			holds[e.Name] = e.Holds
			if e.Amount.Cents <= 0 {
				t.Errorf("%s: %s costs %s", name, e.Name, e.Amount)
			}
		}
		if holds["wood"] != money.Floats || holds["work"] != money.Cap || !strings.Contains(bid.Note, "change") {
			t.Errorf("%s: %v, %q", name, holds, bid.Note)
		}
	}
	poor := s.Without("white-oak 6/4").Without("white-oak 5/4")
	list, w := taken(t, "stepped-stand", poor)
	buy := money.Buy(list, nil, poor)
	if bid := money.Itemised(money.Price(w, buy, poor), buy); bid.Sum().Known {
		t.Errorf("wood without a price: the bid comes to %s", bid.Sum())
	}
}

func TestAChangeSaysItsPriceBeforeItIsTaken(t *testing.T) {
	s := shopOf(4000, 0)
	from := money.Price(&steps.Work{HandsH: 1}, material(1000), s)
	to := money.Price(&steps.Work{HandsH: 1.5}, material(900), s)
	d := money.Change(from, to)
	if d.Total != money.Of(1900) || d.Material != money.Of(-100) || d.Labour != money.Of(2000) || d.HandsH != 0.5 {
		t.Errorf("%+v", d)
	}
	if d := money.Change(from, money.Price(&steps.Work{}, &money.List{}, s)); d.Total.Known {
		t.Errorf("going to an unknown price costs %s", d.Total)
	}
}

func TestAmountsOfWhichPartIsUnknownSaySo(t *testing.T) {
	known, unknown := money.Of(150), money.Amount{Cents: 150}
	if known.String() != "1.50" || unknown.String() != "at least 1.50" {
		t.Errorf("%s and %s", known, unknown)
	}
	if money.Sum(known, unknown).Known || !money.Sum().Known || money.Sum(known, known) != money.Of(300) {
		t.Error("a sum over something unknown is known, or the other way round")
	}
}

func ExamplePrice() {
	s := shop.Sample()
	q := money.Price(&steps.Work{HandsH: 7}, &money.List{Material: money.Of(20000)}, s)
	fmt.Println(q.Labour, q.Cost, q.Price, q.Total, q.Currency)
	// Output:
	// 380.00 686.00 980.00 1176.00 EUR
}

func TestHalfACentIsRoundedUpOnceAndTheRestTakesWhatIsLeft(t *testing.T) {
	// By hand: work and wood cost 0.50 each and the price is 1.01: 0.505 is 0.51, and 0.50 is left for the wood.
	q := &money.Quote{Labour: money.Of(50), Overhead: money.Of(0), Consumables: money.Of(0), Price: money.Of(101), Tax: money.Of(0), Total: money.Of(101)}
	buy := &money.List{Lines: []money.Line{{Item: "white-oak 4/4", Price: money.Of(50), Floats: true}}}
	bid := money.Itemised(q, buy)
	if work, wood := bid.Entries[0].Amount, bid.Entries[1].Amount; work != money.Of(51) || wood != money.Of(50) {
		t.Errorf("work %s and wood %s, want 0.51 and 0.50", work, wood)
	}
}
