package money

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/lumber"
	"rodwright/trade/pipe"
)

// Stock is what the layouts open: one board, stick or sheet, from the yard or from the rack.
type Stock struct {
	Item     string  // shop.WoodItem, shop.StickItem or the id of a sheet
	Material string  // of the layout: white-oak 5/4, 3/4, birch-plywood-18
	Quantity float64 // in Unit: board feet of a board, 1 of a stick or sheet
	Unit     string
	FromRack bool
}

// List is what must be bought.
type List struct {
	Lines    []Line
	Material Amount   // of all lines
	Unknown  []string // items without a price, and parts that can't be bought
	Assumed  []string
}

// Buy lists what a piece takes, in the order wood, sheets, pipe, nipples, fittings, hardware, threads and
// what is used up. Stock comes from the layouts; material that no layout covers is reckoned from the
// parts with the shop's share of waste, and said so. missing names what could not be laid out: what it
// costs is unknown.
func Buy(list *part.List, stock []Stock, s *shop.Shop, missing ...string) *List {
	b := &buyer{s: s, out: &List{Material: Of(0), Unknown: slices.Clone(missing)}}
	for _, st := range stock {
		b.stock(st)
	}
	b.uncovered(list, stock)
	for _, q := range list.Parts {
		b.part(q)
	}
	b.threads(list)
	for _, sup := range list.Supplies {
		b.need(Line{Item: sup.Class, Name: sup.Name, Needed: sup.Quantity.Value, Unit: string(sup.Quantity.Unit), Parts: sup.For, Assumed: sup.Assumed})
	}
	b.price()
	return b.out
}

// buyer gathers lines; one item is one line.
type buyer struct {
	s   *shop.Shop
	out *List
}

// need adds to the line of an item, or begins it. The same item in another unit is another line.
func (b *buyer) need(l Line) {
	i := slices.IndexFunc(b.out.Lines, func(m Line) bool { return m.Item == l.Item && m.Unit == l.Unit })
	if l.Name == "" {
		l.Name = stockName(l.Item)
	}
	if i < 0 {
		b.out.Lines = append(b.out.Lines, l)
		return
	}
	m := &b.out.Lines[i]
	m.Needed += l.Needed
	m.FromRack += l.FromRack
	m.Parts = once(append(slices.Clone(m.Parts), l.Parts...))
	m.Assumed = once(append(slices.Clone(m.Assumed), l.Assumed...))
}

func (b *buyer) stock(st Stock) {
	l := Line{Item: st.Item, Needed: st.Quantity, Unit: st.Unit, Floats: st.Unit == boardFoot}
	if st.FromRack {
		l.FromRack = st.Quantity
	}
	b.need(l)
}

const (
	boardFoot = "board foot"
	single    = "each"
)

// uncovered adds the material that no layout opens.
func (b *buyer) uncovered(list *part.List, stock []Stock) {
	covered := func(material string) bool {
		return slices.ContainsFunc(stock, func(st Stock) bool { return st.Material == material })
	}
	run := map[string]length.Length{}
	var sizes []string
	for _, q := range list.Parts {
		switch {
		case q.Kind == part.Panel && !q.Sheet && q.Rough != "" && !covered(shop.WoodItem(q.Material, q.Rough)):
			b.boards(q)
		case q.Kind == part.Panel && !q.Sheet && q.Rough == "":
			b.out.Unknown = append(b.out.Unknown, q.Tag+" "+q.Name+": no stock is thick enough")
		case q.Kind == part.Panel && q.Sheet && !covered(q.Material):
			b.out.Unknown = append(b.out.Unknown, q.Tag+" "+q.Name+": not laid out on a sheet of "+q.Material)
		case q.Kind == part.Pipe && q.From == part.FromStick && !covered(q.Material):
			run[q.Material] += q.Cut * length.Length(q.Count)
			sizes = once(append(sizes, q.Material))
		}
	}
	for _, size := range sizes {
		b.sticks(size, run[size])
	}
}

// boards adds the wood of a panel that is not laid out: buy = net ÷ (1 − waste).
func (b *buyer) boards(q part.Part) {
	waste := b.s.Settings.Waste
	buy, err := lumber.Buy(float64(q.Count)*q.BoardFeet.Retail, figure.BoardFeet, waste*100)
	if err != nil {
		b.out.Unknown = append(b.out.Unknown, q.Tag+" "+q.Name+": "+err.Error())
		return
	}
	b.need(Line{
		Item: shop.WoodItem(q.Material, q.Rough), Unit: boardFoot, Floats: true, Parts: q.Tags, Needed: buy.Value,
		Assumed: []string{fmt.Sprintf("not laid out on boards: %.0f %% of the wood bought taken as waste", waste*100)},
	})
}

// sticks adds pipe that is not laid out, in the longest sticks that are sold.
func (b *buyer) sticks(id string, run length.Length) {
	size, err := pipe.Lookup(id)
	sold := b.s.StickLengths(size)
	if err != nil || len(sold) == 0 {
		b.out.Unknown = append(b.out.Unknown, "pipe "+id+": no length that it is sold in is known")
		return
	}
	whole := sold[0] - 2*b.s.Pipe.Trim
	b.need(Line{
		Item: shop.StickItem(size, sold[0]), Unit: single, Needed: math.Ceil(run.MM() / whole.MM()),
		Assumed: []string{"pipe " + id + " not laid out on sticks: at least this many"},
	})
}

// part adds what is bought as it is.
func (b *buyer) part(q part.Part) {
	l := Line{Needed: float64(q.Count), Unit: single, Parts: q.Tags}
	switch {
	case q.Kind == part.Pipe && q.From == part.FromNothing:
		b.out.Unknown = append(b.out.Unknown, fmt.Sprintf("%s %s: a pipe of this length is neither sold nor cut", q.Tag, q.Name))
		return
	case q.Kind == part.Pipe && q.From == part.FromNipple:
		size, err := pipe.Lookup(q.Material)
		if err != nil {
			b.out.Unknown = append(b.out.Unknown, q.Tag+" "+q.Name+": "+err.Error())
			return
		}
		l.Item = shop.NippleItem(size, q.Cut)
		l.Name = l.Item
	case q.Kind == part.Fitting:
		l.Item, l.Name = string(q.Fitting)+" "+q.Material, q.Fitting.Words()+" "+q.Material
	case q.Kind == part.Hardware:
		l.Item, l.Name = q.Name, q.Name
	default:
		return
	}
	if q.Gauge > 0 {
		l.Parts = []string{q.Tag} // a hundred screws are one thing on a list
	}
	b.need(l)
}

// threads adds the seller's fee for two threads on every pipe that is cut, where the shop does not thread.
func (b *buyer) threads(list *part.List) {
	if b.s.Pipe.ThreadsAtShop {
		return
	}
	n := 0
	for _, q := range list.Parts {
		if q.Kind == part.Pipe && q.From == part.FromStick {
			n += 2 * q.Count
		}
	}
	if n > 0 {
		b.need(Line{Item: shop.ThreadItem, Name: "threads cut by the seller", Needed: float64(n), Unit: single})
	}
}

// price prices every line, and adds them up.
func (b *buyer) price() {
	for i, l := range b.out.Lines {
		priced, unknown := lined(l, b.s)
		b.out.Lines[i] = priced
		b.out.Material = b.out.Material.Plus(priced.Price)
		b.out.Assumed = append(b.out.Assumed, priced.Assumed...)
		if unknown != "" {
			b.out.Unknown = append(b.out.Unknown, unknown)
		}
	}
	b.out.Unknown, b.out.Assumed = once(b.out.Unknown), once(b.out.Assumed)
	b.out.Material.Known = b.out.Material.Known && len(b.out.Unknown) == 0
}

func once(texts []string) []string {
	var out []string
	for _, t := range texts {
		if t != "" && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}
