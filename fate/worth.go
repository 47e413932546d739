package fate

import (
	"cmp"
	"math"
	"slices"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/lumber"
	"rodwright/trade/pipe"
	"rodwright/trade/sheet"
)

// hours is what that many hours with hands cost.
func (b bench) hours(h float64, unknown *[]string) shop.Cents {
	if h == 0 {
		return 0
	}
	return b.price(shop.HourItem, h, "h", unknown)
}

// price is what a quantity of an item costs: a share of a pack, as what is left of a pack is used elsewhere.
func (b bench) price(item string, quantity float64, unit string, unknown *[]string) shop.Cents {
	p, ok := b.s.Offer(item)
	if ok && p.Unit == unit && p.Pack > 0 {
		if c, ok := shop.ToCents(quantity / p.Pack * p.Cents.Value()); ok {
			return c
		}
	}
	if !slices.Contains(*unknown, item) {
		*unknown = append(*unknown, item)
	}
	return 0
}

// Worth is what the material of a part costs by itself: the wood of its blank with the shop's waste, the share of a
// stick or sheet, a nipple as it is sold.
func Worth(p *part.Part, s *shop.Shop) (c shop.Cents, unknown []string) {
	b := bench{s: s}
	switch {
	case p.Kind == part.Panel && p.Sheet:
		c = b.sheetWorth(p.Material, p.Blank[0], p.Blank[1], &unknown)
	case p.Kind == part.Panel:
		c = b.woodWorth(p.Material, p.Rough, p.BoardFeet.Retail, &unknown)
	case p.Kind == part.Pipe && p.From == part.FromNipple:
		if size, err := pipe.Lookup(p.Material); err == nil {
			c = b.price(shop.NippleItem(size, p.Cut), 1, "each", &unknown)
		}
	case p.Kind == part.Pipe:
		c = b.pipeWorth(p.Material, p.Cut, &unknown)
	}
	return c, unknown
}

// woodWorth is what board feet of net wood cost, waste included.
func (b bench) woodWorth(species, quarters string, feet float64, unknown *[]string) shop.Cents {
	if w := b.s.Settings.Waste; w > 0 && w < 1 {
		feet /= 1 - w
	}
	return b.price(shop.WoodItem(species, quarters), feet, "board foot", unknown)
}

// sheetWorth is the share of the cheapest sheet by area.
func (b bench) sheetWorth(id string, l, w length.Length, unknown *[]string) shop.Cents {
	sh, err := sheet.Lookup(id)
	if err != nil || sh.Size[0] <= 0 || sh.Size[1] <= 0 {
		*unknown = append(*unknown, id)
		return 0
	}
	return b.price(id, l.MM()*w.MM()/(sh.Size[0].MM()*sh.Size[1].MM()), "each", unknown)
}

// pipeWorth is the share of the stick that costs least by its length.
func (b bench) pipeWorth(id string, l length.Length, unknown *[]string) shop.Cents {
	size, err := pipe.Lookup(id)
	if err != nil {
		*unknown = append(*unknown, "pipe "+id)
		return 0
	}
	rate := 0.0
	for _, stick := range b.s.StickLengths(size) {
		if v, ok := b.s.Price(shop.StickItem(size, stick)); ok && (rate == 0 || v/stick.MM() < rate) {
			rate = v / stick.MM()
		}
	}
	if rate == 0 {
		*unknown = append(*unknown, "pipe "+id)
		return 0
	}
	c, _ := shop.ToCents(rate * l.MM())
	return c
}

// ThingWorth is what the material of a thing is worth on the rack: the shop's salvage share of what it cost.
func ThingWorth(t journal.Thing, s *shop.Shop) shop.Cents {
	var unknown []string
	c, _ := shop.ToCents(thingMaterial(t, s, &unknown).Value() * s.Panel.Salvage)
	return c
}

// thingMaterial is what the material of a thing would cost new: of wood, boards of the stock it could come from with the
// shop's waste.
func thingMaterial(t journal.Thing, s *shop.Shop, unknown *[]string) shop.Cents {
	b := bench{s: s}
	size := t.Shape.Size
	switch {
	case t.Shape.Kind == journal.KindPipe:
		return b.pipeWorth(t.Shape.Material, length.Length(size[0]), unknown)
	case t.Shape.Sheet:
		return b.sheetWorth(t.Shape.Material, length.Length(size[0]), length.Length(size[1]), unknown)
	}
	stock, err := lumber.NextStock(length.Length(size[2]), 0, 0)
	if err != nil {
		*unknown = append(*unknown, t.Shape.Material)
		return 0
	}
	feet, err := lumber.BoardFeet(stock.Rough, length.Length(size[1]), length.Length(size[0]), lumber.Volume)
	if err != nil {
		*unknown = append(*unknown, t.Shape.Material)
		return 0
	}
	return b.woodWorth(t.Shape.Material, stock.ID, feet.Value, unknown)
}

// order sorts ways by cost, then by hours, then by how little they change.
func order(ways []Way) {
	rank := map[Kind]int{AsIs: 0, CutDown: 1, AddTo: 2}
	slices.SortStableFunc(ways, func(a, b Way) int {
		return cmp.Or(cmp.Compare(a.Cents, b.Cents), cmp.Compare(a.HandsH, b.HandsH), cmp.Compare(rank[a.Kind], rank[b.Kind]))
	})
}

// lost is what the part of bought stock costs that went wrong: its share of what was paid, or of the shop's price where
// nobody told that.
func (b bench) lost(g journal.Piece, unknown *[]string) shop.Cents {
	share := float64(g.Lost) / float64(max(g.Size[0], 1))
	if g.Cents != nil {
		return shop.Cents(math.Round(share * float64(*g.Cents)))
	}
	whole := journal.Thing{Shape: journal.Shape{Kind: journal.KindPanel, Material: g.Material, Sheet: g.Kind == journal.SheetGoods, Size: g.Size}}
	if g.Kind == journal.StickGoods {
		whole.Shape.Kind = journal.KindPipe
	}
	return shop.Cents(math.Round(share * float64(thingMaterial(whole, b.s, unknown))))
}
