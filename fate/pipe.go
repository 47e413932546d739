package fate

import (
	"fmt"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// pipe returns the ways to make a needed pipe out of one that is cut.
//
// A pipe that is too long is cut and threaded again at that end; what remains must be long enough for the threading
// machine, and at least a close nipple. One that is too short is lengthened by a coupling and a nipple, cut back
// first where the two are more than is missing.
func (b bench) pipe(t journal.Thing, n Need) ([]Way, string) {
	if t.Shape.Material != n.Part.Material {
		return nil, fmt.Sprintf("it is pipe %s and %s is wanted", t.Shape.Material, n.Part.Material)
	}
	size, err := pipe.Lookup(n.Part.Material)
	if err != nil {
		return nil, err.Error()
	}
	has, need := length.Length(t.Shape.Size[0]), n.Part.Cut
	switch {
	case n.Part.From == part.FromNothing:
		return nil, "no pipe can be made for that place"
	case length.Length(t.Shape.Drawn[0]) == need, (has - need).Abs() <= b.give(t, n, size):
		w := Way{Kind: AsIs, After: t.Shape, Words: "use it as it is"}
		b.moved(&w, t, n)
		return []Way{w}, ""
	case has > need:
		return b.shorten(t, n, size, has, need)
	}
	return b.lengthen(t, n, size, has, need)
}

// give is by how much a pipe may miss and be used as it is: what a stock nipple may; once it is in its place and tight, a
// pitch of its thread, which is what its joints take.
func (b bench) give(t journal.Thing, n Need, size pipe.Size) length.Length {
	if t.State >= journal.Fitted && t.Place == n.Place {
		return max(size.Pitch, part.NippleReach)
	}
	return part.NippleReach
}

// least is the shortest pipe that the shop can thread.
func (b bench) least(size pipe.Size) length.Length {
	least := b.s.Pipe.LeastThreaded
	if least == 0 {
		least = pipe.Threadable
	}
	return max(least, size.CloseNipple)
}

func (b bench) shorten(t journal.Thing, n Need, size pipe.Size, has, need length.Length) ([]Way, string) {
	if least := b.least(size); need < least {
		return nil, fmt.Sprintf("what would remain, %s, is shorter than the %s that can be threaded", b.show(need), b.show(least))
	}
	off := has - need
	w := Way{Kind: CutDown, Off: []Off{{"end", off}}, After: Drawn(n.Part, t.State, nil)}
	b.takeOut(&w, t)
	b.cutBack(&w, t, off)
	b.recoat(&w, t, need)
	w.Words = fmt.Sprintf("cut %s off one end, to %s", b.show(off), b.show(need))
	if t.State >= journal.Sized {
		w.Words += ", and thread it again"
	}
	return []Way{w}, ""
}

// cutBack cuts some off a pipe's end and threads it again where it was threaded.
func (b bench) cutBack(w *Way, t journal.Thing, off length.Length) {
	b.job(w, "cut-pipe", 1, 1, "Cut %s off one end of %s", b.show(off), itself)
	if t.State < journal.Sized {
		return
	}
	b.job(w, "thread", 1, 1, "Thread that end of %s again", itself)
	b.job(w, "deburr", 1, 1, "Deburr that end of %s, inside and outside", itself)
	if !b.s.Pipe.ThreadsAtShop {
		w.Goods = append(w.Goods, Goods{shop.ThreadItem, 1, "each"})
	}
}

// recoat coats a pipe again where it was coated.
func (b bench) recoat(w *Way, t journal.Thing, l length.Length) {
	if t.State >= journal.Coated {
		b.job(w, "coat-pipe", l.MM()/1000, 1, "Touch up the coat of %s where it was cut and gripped", itself)
	}
}

func (b bench) lengthen(t journal.Thing, n Need, size pipe.Size, has, need length.Length) (ways []Way, why string) {
	gap, err := size.Extension(0) // what the coupling alone adds
	if err != nil {
		return nil, err.Error()
	}
	short := need - has
	for _, nipple := range pipe.StockNipples(size) {
		// cut back by what the coupling and this nipple are too long
		back := gap + nipple - short
		if back < -part.NippleReach || has-max(back, 0) < b.least(size) {
			continue
		}
		if back <= part.NippleReach {
			back = 0
		}
		ways = append(ways, b.extended(t, n, size, back, nipple, true))
		break // the shortest that is long enough cuts off least
	}
	if exact := short - gap; exact >= b.least(size) && !pipe.IsStockNipple(size, exact) {
		ways = append(ways, b.extended(t, n, size, 0, exact, false))
	}
	if len(ways) == 0 {
		return nil, fmt.Sprintf("it is %s too short, and no coupling and nipple bridge that", b.show(short))
	}
	return ways, ""
}

// extended lengthens a pipe by a coupling and a nipple of stock, or one cut from a stick.
func (b bench) extended(t journal.Thing, n Need, size pipe.Size, back, nipple length.Length, stock bool) Way {
	w := Way{Kind: AddTo, After: Drawn(n.Part, t.State, nil)}
	b.takeOut(&w, t)
	words := ""
	if back > 0 {
		b.cutBack(&w, t, back)
		w.Off = []Off{{"end", back}}
		words = fmt.Sprintf("cut %s off one end, thread it again and ", b.show(back))
	}
	coupling := shop.FittingItem(pipe.Coupling, size)
	w.Goods = append(w.Goods, Goods{coupling, 1, "each"})
	what := fmt.Sprintf("a nipple of %s", b.show(nipple))
	if stock {
		w.Goods = append(w.Goods, Goods{shop.NippleItem(size, nipple), 1, "each"})
	} else {
		what = fmt.Sprintf("a piece of pipe %s long, threaded at both ends,", b.show(nipple))
		b.job(&w, "cut-pipe", 1, 1, "Cut a piece of pipe %s to %s", size.ID, b.show(nipple))
		b.job(&w, "thread", 2, 1, "Thread both ends of it")
		w.Goods = append(w.Goods, pipeGoods(b.s, size, nipple)...)
	}
	b.job(&w, "wrench", 2, 1, "Wrench a coupling and %s onto %s", what, itself)
	b.recoat(&w, t, n.Part.Cut)
	w.Words = words + "lengthen it by a coupling and " + what + " to " + b.show(n.Part.Cut)
	w.Shows = append(w.Shows, fmt.Sprintf("a coupling %s from its end", b.show(nipple)))
	return w
}

// pipeGoods is the share of a stick that a piece takes.
func pipeGoods(s *shop.Shop, size pipe.Size, l length.Length) []Goods {
	for _, stick := range s.StickLengths(size) {
		item := shop.StickItem(size, stick)
		if _, ok := s.Price(item); ok {
			return []Goods{{item, l.MM() / stick.MM(), "each"}}
		}
	}
	return nil
}
