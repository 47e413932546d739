// Package money says what a piece costs: what must be bought, at the shop's prices, and the price that
// covers it with hours, standing costs, margin and tax.
//
// Start with [Buy] for the buying list and [Price] for the quote. Money is kept in whole cents and each
// amount is rounded once; a price that nobody knows makes every sum over it unknown, and is named, never
// taken for zero.
package money

import (
	"rodwright/shop"
)

// Amount is a sum of money that may be unknown. The zero Amount is unknown.
type Amount struct {
	Cents shop.Cents // of what is known; where Known is false the amount is at least this
	Known bool
}

// Of returns a known amount.
func Of(c shop.Cents) Amount { return Amount{Cents: c, Known: true} }

// Plus returns the sum of two amounts, known where both are.
func (a Amount) Plus(b Amount) Amount {
	return Amount{Cents: a.Cents + b.Cents, Known: a.Known && b.Known}
}

// String prints the amount, and at least where part of it is unknown.
func (a Amount) String() string {
	if !a.Known {
		return "at least " + a.Cents.String()
	}
	return a.Cents.String()
}

// Sum adds amounts up. No amounts make a known zero.
func Sum(as ...Amount) Amount {
	total := Of(0)
	for _, a := range as {
		total = total.Plus(a)
	}
	return total
}

// Line is one item of the buying list.
type Line struct {
	Item     string // as the shop's prices name it
	Name     string // what people call it
	Needed   float64
	Unit     string  // of Needed: each, board foot, g, ml
	Count    float64 // what is bought: packs where it is sold in packs, else Needed
	Pack     float64 // how much of Unit a pack holds; 1 for things sold singly
	Price    Amount  // of the whole line; zero where it comes from the rack
	FromRack float64 // how much of Needed the rack has
	Parts    []string
	Floats   bool // billed at the price of the day: wood is
	Assumed  []string
}

// lined prices a line, and says in words what of it is unknown.
func lined(l Line, s *shop.Shop) (Line, string) {
	need := l.Needed - l.FromRack
	l.Pack, l.Count = 1, need
	if need <= 0 {
		l.Count, l.Price = 0, Of(0)
		return l, ""
	}
	p, ok := s.Offer(l.Item)
	if !ok {
		return l, l.Item
	}
	scale, ok := into(l.Unit, p.Unit)
	if !ok {
		return l, l.Item + ": needed in " + l.Unit + ", priced per " + p.Unit
	}
	cents, ok := p.Cost(need * scale)
	if !ok {
		return l, l.Item + ": too dear to reckon"
	}
	l.Needed, l.FromRack, l.Unit = l.Needed*scale, l.FromRack*scale, p.Unit
	l.Count, l.Pack, l.Price = p.Packs(need*scale), p.Pack, Of(cents)
	if p.Assumed {
		l.Assumed = append(l.Assumed, "price of "+l.Item+" invented")
	}
	return l, ""
}

// into returns what one unit of the first kind is in the second.
func into(from, to string) (float64, bool) {
	if from == to {
		return 1, true
	}
	size := func(unit string) (kind string, v float64) {
		switch unit {
		case "g":
			return "mass", 1
		case "kg":
			return "mass", 1000
		case "ml":
			return "volume", 1
		case "L":
			return "volume", 1000
		}
		return "", 0
	}
	ka, a := size(from)
	kb, b := size(to)
	return a / max(b, 1e-300), ka == kb && ka != ""
}
