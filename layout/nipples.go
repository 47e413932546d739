package layout

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// addNipples adds the pipes that can be bought as stock nipples as well as cut, those first that were bought already:
// they cost nothing more. Where the shop has no price of a nipple, or of a stick, the two can't be compared, and the
// nipple is bought, as the take-off has it.
func (t *Task) addNipples(size pipe.Size, list *part.List, s *shop.Shop) {
	there := map[string]float64{}
	making, unknown := makingOf(s)
	for _, q := range list.Parts {
		if q.Kind != part.Pipe || q.Sawn == nil || q.Material != size.ID {
			continue
		}
		item := shop.NippleItem(size, q.Cut)
		price, priced := nipplePrice(item, s)
		for _, lacks := range []struct {
			it   bool
			what string
		}{{!priced, "it"}, {priced && !stickPriced(size, s), "a stick of pipe " + size.ID}} {
			if lacks.it {
				t.assume(item + ": bought and not cut, as no price of " + lacks.what + " is known to compare")
			}
		}
		for _, tag := range q.Tags {
			n := Nipple{Tag: tag, Item: item, There: there[item] < s.Rack.Nipples[item]}
			p := cut.StickPart{Tag: tag, Length: q.Sawn.Cut, Count: 1, Bought: price, Making: making}
			if n.There {
				there[item]++
				p.Bought = cut.Priced(0)
			} else if !priced || !stickPriced(size, s) {
				continue
			}
			t.Sticks.Parts, t.Nipples = append(t.Sticks.Parts, p), append(t.Nipples, n)
		}
	}
	if len(t.Nipples) > 0 && unknown != "" {
		t.assume("nipples are bought or cut by the price of the pipe alone: no price or time of " + unknown + " is known")
	}
}

func (t *Task) assume(what string) {
	if !slices.Contains(t.Assumed, what) {
		t.Assumed = append(t.Assumed, what)
	}
}

// nipplePrice is what one stock nipple costs: its share, where they are sold in packs.
func nipplePrice(item string, s *shop.Shop) (price cut.Price, ok bool) {
	p, ok := s.Offer(item)
	if !ok || p.Unit != each || p.Pack <= 0 {
		return cut.Price{}, false
	}
	return cut.Priced(cut.RoundMoney(p.Cents.Value() / p.Pack)), true
}

// stickPriced reports whether a stick of the pipe that is sold has a price.
func stickPriced(size pipe.Size, s *shop.Shop) bool {
	for _, l := range s.StickLengths(size) {
		if _, ok := s.Price(shop.StickItem(size, l)); ok {
			return true
		}
	}
	return false
}

// pipeWork is what is done to a pipe that is cut from a stick, and how often: one cut, and thread and edge of both ends.
var pipeWork = []struct {
	work  string
	units float64
}{{"cut-pipe", 1}, {"thread", 2}, {"deburr", 2}}

// makingOf returns what the work on one pipe that is cut costs: its hours at the shop's price of an hour, and the
// seller's fee for two threads where the shop has none of its own. Setting stop and dies is not counted: other pipes
// want it as well. Where a time or a price is not known the work is not counted, and what lacks is told.
func makingOf(s *shop.Shop) (making cut.Price, unknown string) {
	hours, sum := 0.0, 0.0
	for _, w := range pipeWork {
		o, ok := s.Operation(w.work)
		if !ok {
			return cut.Price{}, w.work
		}
		hours += w.units * o.UnitH
	}
	if !s.Pipe.ThreadsAtShop {
		fee, ok := s.Price(shop.ThreadItem)
		if !ok {
			return cut.Price{}, shop.ThreadItem
		}
		sum += 2 * fee
	}
	p, ok := s.Offer(shop.HourItem)
	if !ok || p.Unit != "h" || p.Pack <= 0 {
		return cut.Price{}, shop.HourItem
	}
	c, ok := shop.ToCents(sum + hours/p.Pack*p.Cents.Value())
	if !ok {
		return cut.Price{}, shop.HourItem
	}
	return cut.Priced(c.Value()), ""
}

// Chosen says for each pipe that could be bought or cut which of the two the layouts chose, and why.
func (r *Result) Chosen() map[string]part.Chosen {
	out := map[string]part.Chosen{}
	for _, l := range r.Stick {
		for _, n := range l.Nipples {
			out[n.Tag] = l.chosen(n)
		}
	}
	return out
}

// Reasons tells why pipes are bought or cut, those together that have one reason: C5.1, C5.2 bought: …
func (l Layout) Reasons() (out []string) {
	var whys []string
	tags := map[string][]string{}
	for _, n := range l.Nipples {
		why := l.chosen(n).Why
		if tags[why] = append(tags[why], n.Tag); len(tags[why]) == 1 {
			whys = append(whys, why)
		}
	}
	for _, why := range whys {
		out = append(out, strings.Join(tags[why], ", ")+" "+why)
	}
	return out
}

func (l Layout) chosen(n Nipple) part.Chosen {
	at := slices.IndexFunc(l.Sticks.Parts, func(p cut.StickPart) bool { return p.Tag == n.Tag })
	p := l.Sticks.Parts[at]
	on := l.beside(n.Tag)
	switch cost := l.cutCost(p); {
	case on == nil && n.There:
		return part.Chosen{Why: "bought: one " + n.Item + " is there"}
	case on == nil && p.Bought.Value <= cost.sum():
		return part.Chosen{Why: fmt.Sprintf("bought: %s %s against %s", n.Item, money(p.Bought.Value), cost)}
	case on == nil:
		return part.Chosen{Why: fmt.Sprintf("bought: %s %s, as no stick that is opened has room left for it, though its share of one would be %s", n.Item, money(p.Bought.Value), cost)}
	case len(on) > 0 && cost.worked:
		return part.Chosen{Cut: true, Why: fmt.Sprintf("cut: %s of sawing and threading, from a stick that is opened for other pipes, against %s %s", money(cost.work), n.Item, money(p.Bought.Value))}
	case len(on) > 0:
		return part.Chosen{Cut: true, Why: fmt.Sprintf("cut: from a stick that is opened for other pipes, against %s %s", n.Item, money(p.Bought.Value))}
	default:
		return part.Chosen{Cut: true, Why: fmt.Sprintf("cut: %s against %s %s", cost, n.Item, money(p.Bought.Value))}
	}
}

// beside returns the parts that must be cut and lie on the stick that a pipe is cut from; nil where it is bought.
func (l Layout) beside(tag string) []string {
	for _, u := range l.Answer.Used {
		if !slices.ContainsFunc(u.Parts, func(p cut.Placed) bool { return p.Tag == tag }) {
			continue
		}
		others := []string{}
		for _, p := range u.Parts {
			if !slices.ContainsFunc(l.Nipples, func(n Nipple) bool { return n.Tag == p.Tag }) {
				others = append(others, p.Tag)
			}
		}
		return others
	}
	return nil
}

// sawn is what a pipe costs when it is cut: its share of the stick that costs least for its length, and the work.
type sawn struct {
	pipe, work float64
	worked     bool
}

func (l Layout) cutCost(p cut.StickPart) sawn {
	rate := 0.0
	for i, s := range l.Sticks.Stock {
		if r := l.Sticks.Cost(i) / s.Length.MM(); !l.Stock[i].FromRack && (rate == 0 || r < rate) {
			rate = r
		}
	}
	return sawn{rate * (p.Length + l.Sticks.Kerf).MM(), p.Making.Value, p.Making.Given}
}

func (s sawn) sum() float64 { return s.pipe + s.work }

// String tells what it costs, and of what: 9.30 cut (3.05 pipe, 6.25 sawing and threading).
func (s sawn) String() string {
	if !s.worked {
		return money(s.pipe) + " of pipe"
	}
	return fmt.Sprintf("%s cut (%s pipe, %s sawing and threading)", money(s.sum()), money(s.pipe), money(s.work))
}

func money(v float64) string { return fmt.Sprintf("%.2f", v) }
