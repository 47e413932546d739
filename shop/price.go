package shop

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Cents is an amount of money in hundredths of the shop's currency. All sums of money are kept in it.
type Cents int64

// Value returns the amount in whole units of the currency.
func (c Cents) Value() float64 { return float64(c) / 100 }

// String prints the amount with two decimals.
func (c Cents) String() string {
	sign := ""
	if c < 0 {
		sign, c = "-", -c
	}
	return fmt.Sprintf("%s%d.%02d", sign, c/100, c%100)
}

// MostCents is the greatest amount that is read or reckoned with, ten thousand million of the currency:
// far above any piece, and far below where a count of cents in a float64 stops being exact.
const MostCents Cents = 1e12

// ToCents rounds a computed amount to the cent, halves away from zero, as money is rounded. It reports
// false for what is no amount or is out of range.
func ToCents(v float64) (Cents, bool) {
	c := math.Round(v * 100)
	if math.IsNaN(c) || math.Abs(c) > float64(MostCents) {
		return 0, false
	}
	return Cents(c), true
}

// Price is what one item costs as it is sold.
type Price struct {
	Item    string  // as the functions of this package name it, for example "tee 3/4"
	Cents   Cents   // for one pack
	Pack    float64 // how much of Unit one pack holds; 1 for things sold singly
	Unit    string  // each, board foot, g, ml, m2, h, …
	Pieces  bool    // sold only in whole packs; else any quantity is sold, as with board feet
	Assumed bool    // invented or guessed; no seller has named it
}

// Price returns what one pack of the item costs, in the shop's currency. It reports false where the
// shop has no price for it; see [Shop.Offer] for the pack.
func (s *Shop) Price(item string) (float64, bool) {
	p, ok := s.prices[item]
	return p.Cents.Value(), ok
}

// Offer returns the item's price with its pack and unit. It reports false where the shop has none.
func (s *Shop) Offer(item string) (Price, bool) {
	p, ok := s.prices[item]
	return p, ok
}

// Priced returns the names of all items the shop has a price for, sorted.
func (s *Shop) Priced() []string { return slices.Sorted(maps.Keys(s.prices)) }

// With returns a shop with one price changed or added; the receiver stays as it is.
func (s *Shop) With(p Price) *Shop {
	c := *s
	c.prices = maps.Clone(s.prices)
	if c.prices == nil {
		c.prices = map[string]Price{}
	}
	c.prices[p.Item] = p
	return &c
}

// Without returns a shop that has no price for the item; the receiver stays as it is.
func (s *Shop) Without(item string) *Shop {
	c := *s
	c.prices = maps.Clone(s.prices)
	delete(c.prices, item)
	return &c
}

// Packs returns how many packs hold the quantity, whole ones where the item is sold so. A relative slack
// of 1e-9 keeps 100 screws of a computed 100.00000000000001 in one box.
func (p Price) Packs(quantity float64) float64 {
	n := quantity / p.Pack
	if p.Pieces {
		return math.Ceil(n * (1 - 1e-9))
	}
	return n
}

// Cost returns what the quantity costs, rounded to the cent once. It reports false when the amount is
// out of range.
func (p Price) Cost(quantity float64) (Cents, bool) {
	return ToCents(p.Packs(quantity) * p.Cents.Value())
}

// parseCents reads an amount with at most two decimals. Money is never read through a float.
func parseCents(text string) (Cents, error) {
	whole, decimals, _ := strings.Cut(text, ".")
	n, err := strconv.ParseUint(whole+(decimals + "00")[:2], 10, 40)
	if err != nil || len(decimals) > 2 || whole == "" || Cents(n) > MostCents {
		return 0, fmt.Errorf("%q is no price; write an amount with at most two decimals, for example 6.40", text)
	}
	return Cents(n), nil
}

// Money is what the shop reckons with besides the prices of material. A share that is not known makes
// the price unknown, never zero.
type Money struct {
	Margin  Share // of the price, not of the cost
	Tax     Share // on the price
	Deposit Share // of the total, when work begins
	// Consumables is the share of the material's cost that goes in abrasives, blades, rags and the like.
	Consumables Share
}

// Share is a fraction that may be unknown. The zero Share is unknown.
type Share struct {
	Value float64 // 0.30 for 30 %
	Known bool
}
