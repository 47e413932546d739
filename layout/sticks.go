package layout

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// each is the unit of things sold singly.
const each = "each"

// stickTasks makes a problem for each size of pipe that is cut from sticks.
func stickTasks(_ *piece.Resolved, list *part.List, s *shop.Shop) (tasks []Task, missing []string) {
	var sizes []string
	for _, p := range list.Parts {
		if p.Kind == part.Pipe && (p.From == part.FromStick || p.Sawn != nil) && !slices.Contains(sizes, p.Material) {
			sizes = append(sizes, p.Material)
		}
	}
	slices.Sort(sizes)
	for _, id := range sizes {
		size, err := pipe.Lookup(id)
		if err != nil {
			missing = append(missing, "pipe "+id+": "+err.Error())
			continue
		}
		switch t := stickTask(size, list, s); {
		case len(t.Sticks.Stock) > 0 && len(t.Sticks.Parts) > 0:
			tasks = append(tasks, t)
		case len(t.Sticks.Parts) > 0:
			missing = append(missing, "pipe "+id+": no length that it is sold in is known, and none is in the rack")
		}
	}
	return tasks, missing
}

func stickTask(size pipe.Size, list *part.List, s *shop.Shop) Task {
	w := s.Pipe
	p := &cut.StickProblem{Unit: unitOf(size), Kerf: w.Kerf, Trim: w.Trim, Useful: w.Useful}
	t := Task{Kind: OfSticks, Material: size.ID, Sticks: p}
	t.addRackSticks(size, s)
	t.addSoldSticks(size, s)
	for _, q := range list.Parts {
		if q.Kind != part.Pipe || q.From != part.FromStick || q.Material != size.ID {
			continue
		}
		for _, tag := range q.Tags {
			p.Parts = append(p.Parts, cut.StickPart{Tag: tag, Length: q.Cut, Count: 1})
		}
	}
	if len(p.Stock) > 0 {
		t.addNipples(size, list, s)
	}
	return t
}

func unitOf(size pipe.Size) length.Unit {
	if size.Standard == pipe.ISO7 {
		return length.MM
	}
	return length.In
}

// soldAt returns what a stick costs: the shop's price, or where the shop prices no length of this pipe its
// length, so that the least pipe is used. A length without a price beside others with one is left out.
func soldAt(size pipe.Size, l length.Length, s *shop.Shop) (cost float64, ok bool) {
	if v, priced := s.Price(shop.StickItem(size, l)); priced {
		return v, true
	}
	for _, o := range s.StickLengths(size) {
		if _, priced := s.Price(shop.StickItem(size, o)); priced {
			return 0, false
		}
	}
	return cut.In(l, unitOf(size)), true
}

func (t *Task) addSoldSticks(size pipe.Size, s *shop.Shop) {
	for _, l := range s.StickLengths(size) {
		item := shop.StickItem(size, l)
		cost, ok := soldAt(size, l, s)
		if !ok {
			t.Assumed = append(t.Assumed, item+": no price, so it is not bought")
			continue
		}
		t.Sticks.Stock = append(t.Sticks.Stock, cut.StickStock{Tag: item, Length: l, Count: cut.Any, Price: cut.Priced(cost)})
		t.Stock = append(t.Stock, Stock{Tag: item, Item: item, Quantity: 1, Unit: each})
	}
}

// addRackSticks adds the sticks in the rack at the salvage share of what as much of the dearest new pipe
// costs, each for itself.
func (t *Task) addRackSticks(size pipe.Size, s *shop.Shop) {
	rate := 0.0
	for _, l := range s.StickLengths(size) {
		if cost, ok := soldAt(size, l, s); ok {
			rate = max(rate, cost/l.MM())
		}
	}
	if rate == 0 {
		rate = 1
	}
	for _, k := range s.Rack.Sticks {
		if k.Pipe != size.ID || k.Length <= 2*s.Pipe.Trim {
			continue
		}
		t.Sticks.Stock = append(t.Sticks.Stock, cut.StickStock{
			Tag: k.Tag, Length: k.Length, Count: 1, Price: cut.Priced(cut.RoundMoney(rackShare(s, k.Paid) * rate * k.Length.MM())),
		})
		t.Stock = append(t.Stock, Stock{Tag: k.Tag, Item: shop.StickItem(size, k.Length), Quantity: 1, Unit: each, FromRack: true})
	}
}
