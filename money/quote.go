package money

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/shop"
	"rodwright/steps"
	"rodwright/trade/price"
)

// Quote is the price of a piece and how it comes about. Each amount is at least what is known of it where
// Unknown names something.
type Quote struct {
	Currency    string
	HandsH      float64 // hours of work, those before the first cut included
	BeforeH     float64 // of them: visit, drawing, list
	Material    Amount  // of the buying list
	Consumables Amount  // abrasives, blades, rags: a share of the material
	Labour      Amount  // hours × rate; what DERIVED calls hours
	Overhead    Amount  // hours × the standing costs of an hour
	Cost        Amount
	Margin      Amount // price − cost
	Price       Amount // before tax
	Tax         Amount
	Total       Amount
	Deposit     Amount
	Because     []figure.Figure
	Warnings    []string // in words, for the maker and not for the client
	Unknown     []string
	Assumed     []string
}

var (
	hoursFormula    = figure.Formula{Text: "labour = hours × rate", Source: "arithmetic"}
	overheadFormula = figure.Formula{Text: "overhead = hours × standing costs of an hour", Source: "arithmetic"}
	costFormula     = figure.Formula{Text: "cost = material + consumables + labour + overhead", Source: "common practice, no source"}
	taxFormula      = figure.Formula{Text: "tax = price × rate", Source: "arithmetic; which rate applies is local law"}
)

// Price works out the quote:
//
//	cost  = material + consumables + hours × rate + hours × overhead
//	price = cost ÷ (1 − margin)
//	total = price + tax
//
// Every amount is rounded to the cent once, halves away from zero. Hours are never rounded. Promise: more
// hours never make the price less.
func Price(w *steps.Work, buy *List, s *shop.Shop) *Quote {
	q := &Quote{
		Currency: s.Currency, HandsH: w.HandsH, Material: buy.Material,
		Unknown: slices.Clone(buy.Unknown), Assumed: slices.Clone(buy.Assumed),
	}
	q.Unknown = append(q.Unknown, w.Unknown...)
	if talk, ok := s.Operation("talk"); ok {
		q.BeforeH = talk.Hands(1)
		q.HandsH += q.BeforeH
	}
	q.Consumables = q.share("share of consumables", buy.Material, s.Money.Consumables)
	q.Labour = q.byHour(shop.HourItem, "labour", &hoursFormula, s, len(w.Unknown) == 0)
	q.Overhead = q.byHour(shop.OverheadItem, "overhead", &overheadFormula, s, len(w.Unknown) == 0)
	q.Cost = Sum(q.Material, q.Consumables, q.Labour, q.Overhead)
	q.Because = append(q.Because, figure.Of("cost", q.Cost.Cents.Value(), figure.Money, &costFormula,
		in("material", q.Material), in("consumables", q.Consumables), in("labour", q.Labour), in("overhead", q.Overhead)))
	q.priced(s.Money)
	q.Unknown, q.Assumed = once(q.Unknown), once(q.Assumed)
	q.Warnings = warnings(q)
	return q
}

func in(name string, a Amount) figure.Input {
	return figure.In(name, a.Cents.Value(), figure.Money)
}

// share returns a share of an amount; unknown where the share or the amount is.
func (q *Quote) share(name string, of Amount, share shop.Share) Amount {
	if !share.Known {
		q.Unknown = append(q.Unknown, name)
		return Amount{}
	}
	c, ok := shop.ToCents(of.Cents.Value() * share.Value)
	return Amount{Cents: c, Known: of.Known && ok}
}

// byHour returns the hours at the shop's price of an hour.
func (q *Quote) byHour(item, name string, f *figure.Formula, s *shop.Shop, known bool) Amount {
	p, ok := s.Offer(item)
	if !ok {
		q.Unknown = append(q.Unknown, item)
		return Amount{}
	}
	if p.Assumed {
		q.Assumed = append(q.Assumed, "price of "+item+" invented")
	}
	c, ok := p.Cost(q.HandsH)
	if !ok {
		q.Unknown = append(q.Unknown, item+": too dear to reckon")
		return Amount{}
	}
	q.Because = append(q.Because, figure.Of(name, c.Value(), figure.Money, f,
		figure.In("hours", q.HandsH, figure.Hours), figure.In("rate", p.Cents.Value()/p.Pack, figure.Money)))
	return Amount{Cents: c, Known: known}
}

// priced goes from cost to total.
func (q *Quote) priced(m shop.Money) {
	if !m.Margin.Known {
		q.Unknown = append(q.Unknown, "margin")
	}
	out, err := price.ByMargin(q.Cost.Cents.Value(), m.Margin.Value*100)
	if err != nil {
		q.Unknown = append(q.Unknown, "price: "+err.Error())
		return
	}
	c, ok := shop.ToCents(out.Price.Value)
	q.Price = Amount{Cents: c, Known: q.Cost.Known && m.Margin.Known && ok}
	q.Margin = Amount{Cents: q.Price.Cents - q.Cost.Cents, Known: q.Price.Known}
	q.Because = append(q.Because, out.Price, out.Markup)
	q.Tax = q.share("tax", q.Price, m.Tax)
	q.Because = append(q.Because, figure.Of("tax", q.Tax.Cents.Value(), figure.Money, &taxFormula, in("price", q.Price), figure.In("rate", m.Tax.Value*100, figure.Percent)))
	q.Total = q.Price.Plus(q.Tax)
	q.Deposit = q.share("deposit", q.Total, m.Deposit)
}

// The share of the price that material and standing costs may take, at most: a rule of the trade that
// one-person shops give each other, 25 to 30 %. Opinion of the trade, public workshop advice.
const mostMaterial = 0.30

// warnings says what of the quote a maker should look at twice.
func warnings(q *Quote) []string {
	var out []string
	if q.Price.Cents > 0 {
		share := Sum(q.Material, q.Consumables, q.Overhead).Cents.Value() / q.Price.Cents.Value()
		if share > mostMaterial {
			out = append(out, fmt.Sprintf("material and overhead are %.0f %% of the price; over 30 %% leaves too little for the work", math.Round(share*100)))
		}
	}
	if q.Deposit.Known && q.Material.Known && q.Deposit.Cents < q.Material.Cents {
		out = append(out, fmt.Sprintf("the deposit of %s does not cover the material of %s", q.Deposit, q.Material))
	}
	if q.BeforeH == 0 {
		out = append(out, "no hours for visit, drawing and list are charged: give the operation talk a time")
	}
	return out
}
