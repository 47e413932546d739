package money

import (
	"math/big"

	"rodwright/shop"
)

// Entry is one line of a quote as a client reads it.
type Entry struct {
	Name   string
	Amount Amount
	Holds  Holds
}

// Holds says how firmly a line of a quote stands.
type Holds string

// How firmly a line stands.
const (
	Fixed  Holds = "fixed"
	Cap    Holds = "at most"            // it may come to less, never to more
	Floats Holds = "at the day's price" // billed as the yard bills it
)

// Bid is a quote as a client reads it: what each thing costs and which lines may move. Margin is spread
// over the lines in proportion to their cost, so that they add up to the price to the cent.
type Bid struct {
	Entries []Entry
	Tax     Amount
	Total   Amount
	Note    string
}

// Itemised turns a quote into a bid: wood floats with the day's price, labour is a cap, all else is
// fixed, and a change of the drawing is agreed anew.
func Itemised(q *Quote, buy *List) Bid {
	wood, other := Of(0), Of(0)
	for _, l := range buy.Lines {
		if l.Floats {
			wood = wood.Plus(l.Price)
		} else {
			other = other.Plus(l.Price)
		}
	}
	costs := []Entry{
		{"work", q.Labour.Plus(q.Overhead), Cap},
		{"wood", wood, Floats},
		{"pipe, fittings, hardware and finish", other, Fixed},
		{"sundries", q.Consumables, Fixed},
	}
	return Bid{
		Entries: raised(costs, q.Price), Tax: q.Tax, Total: q.Total,
		Note: "Any change to the drawing is priced and agreed before it is made.",
	}
}

// raised scales the entries so that they add up to the price: the running sum is rounded, not each
// entry, so that no cent is lost. An unknown entry makes what it is scaled by unknown too.
func raised(costs []Entry, price Amount) []Entry {
	var cost, run, placed shop.Cents
	for _, e := range costs {
		cost += e.Amount.Cents
	}
	out := make([]Entry, len(costs))
	for i, e := range costs {
		run += e.Amount.Cents
		at := run
		if cost > 0 {
			at = scaled(run, price.Cents, cost)
		}
		out[i] = Entry{e.Name, Amount{at - placed, e.Amount.Known && price.Known}, e.Holds}
		placed = at
	}
	return out
}

// scaled returns a × b ÷ c rounded to the cent, halves up, exactly.
func scaled(a, b, c shop.Cents) shop.Cents {
	n := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	n.Lsh(n, 1).Add(n, big.NewInt(int64(c)))
	return shop.Cents(n.Div(n, big.NewInt(2*int64(c))).Int64())
}

// Sum adds up the entries and the tax of a bid.
func (b Bid) Sum() Amount {
	total := b.Tax
	for _, e := range b.Entries {
		total = total.Plus(e.Amount)
	}
	return total
}

// Difference is what a change costs: the second quote less the first, known where both are.
type Difference struct {
	Material, Labour, Total Amount
	HandsH                  float64
}

// Change returns what going from one quote to another costs. It is said before a change is taken.
func Change(from, to *Quote) Difference {
	less := func(a, b Amount) Amount { return Amount{Cents: b.Cents - a.Cents, Known: a.Known && b.Known} }
	return Difference{
		Material: less(from.Material, to.Material), Labour: less(from.Labour, to.Labour),
		Total: less(from.Total, to.Total), HandsH: to.HandsH - from.HandsH,
	}
}
