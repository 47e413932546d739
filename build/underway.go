package build

import (
	"encoding/json"
	"maps"
	"slices"

	"rodwright/check"
	"rodwright/fate"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/money"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// Underway is what has become of a piece that is being built: what was made, bought and measured, and how it stands to
// the plan. The piece is derived twice then. As a whole, as if made right at first, it gives the price; what of it is
// left gives layouts, purchases, steps and days.
type Underway struct {
	Record  *journal.Record
	Settled []fate.Settled // of every thing, in the order they were told of
	Needs   []fate.Need
	Extra   fate.Extra
	Whole   *steps.Work // the work of the whole piece, made right at first
	DoneH   float64     // hours with hands spent so far
}

// underway derives a piece that is being built. It is set out already.
func (b *Build) underway(memo *Memo) error {
	u, rec := b.Under, b.Under.Record
	whole, _, err := layouts(b.Resolved, b.Parts, b.Shop, rec, memo)
	if err != nil {
		return err
	}
	drawn := b.Parts
	if b.Parts, err = part.Settle(b.Resolved, drawn, b.Shop, whole.Chosen()); err != nil {
		return err
	}
	buy := money.Buy(b.Parts, stockOf(whole), b.Shop, whole.Missing...)
	if u.Whole, err = steps.Plan(b.Resolved, b.Parts, plansOf(whole), b.Shop); err != nil {
		return err
	}
	u.Extra = fate.Extras(rec, u.Settled, b.Shop)
	for _, t := range rec.Things {
		u.DoneH += t.HandsH
	}
	b.Quote = money.Price(u.with(u.Whole), u.paid(buy), b.Shop)
	if err := b.left(u, drawn, whole.Chosen(), memo); err != nil {
		return err
	}
	b.Findings = append(findings(b.Resolved, b.Parts, b.Shop, pushed(rec), memo), fate.Findings(u.Settled, b.Doc.Fineness)...)
	return nil
}

// stand finds what every thing is for, and sets the piece out as it stands where something was measured: the frame
// first, then what was made to another size than drawn, as openings follow the frame.
func (b *Build) stand(u *Underway) error {
	facts := piece.Facts{}
	for range 2 {
		u.Needs = fate.Needs(b.Resolved, b.Parts)
		u.Settled = fate.Settle(u.Record, u.Needs, b.Shop, b.Doc.Fineness)
		next := fate.Facts(u.Record, u.Settled)
		if next.Empty() || facts.Distances != nil {
			break
		}
		if facts = next; facts.Distances == nil {
			facts.Distances = []piece.Distance{}
		}
		r, err := piece.ResolveStanding(b.Doc, b.Shop, facts)
		if err != nil {
			return err
		}
		list, err := part.TakeOff(r, b.Shop)
		if err != nil {
			return err
		}
		list.Retag(b.Parts)
		b.Drawn, b.Resolved, b.Parts = b.Resolved, r, list
	}
	return nil
}

// with adds the hours that were spent in vain, and those that put parts right, to a plan.
func (u *Underway) with(w *steps.Work) *steps.Work {
	more := *w
	more.HandsH += u.Extra.HandsH
	return &more
}

// paid adds the material that was used in vain, and what puts parts right, to a buying list.
func (u *Underway) paid(list *money.List) *money.List {
	more := *list
	more.Material = more.Material.Plus(money.Of(u.Extra.Material))
	more.Unknown = append(append([]string(nil), list.Unknown...), u.Extra.Unknown...)
	more.Material.Known = more.Material.Known && len(more.Unknown) == 0
	return &more
}

// left derives what is still to be laid out, bought and done, of the parts as they were taken off. chosen says which of
// the whole piece's pipes would be bought and which cut.
func (b *Build) left(u *Underway, drawn *part.List, chosen map[string]part.Chosen, memo *Memo) error {
	states, works := map[string]journal.State{}, map[string][]string{}
	for _, st := range u.Settled {
		if st.Need == nil {
			continue
		}
		states[st.Need.Tag], works[st.Need.Tag] = st.State(), st.Thing.Works
	}
	b.fitted(states)
	open := drawn.Made(states, works).Left(journal.BlankCut)
	s := stocked(b.Shop, u.Record)
	var err error
	if b.Layout, b.Accepted, err = layouts(b.Resolved, open, s, u.Record, memo); err != nil {
		return err
	}
	for tag := range inHand(b.Layout, u.Record) {
		states[tag] = journal.InHand
	}
	maps.Copy(chosen, b.Layout.Chosen())
	list, err := part.Settle(b.Resolved, drawn, s, asMade(chosen, works))
	if err != nil {
		return err
	}
	if b.Parts = list.Made(states, works); len(chosen) > 0 {
		u.Needs = fate.Needs(b.Resolved, b.Parts)
		u.Settled = fate.Settle(u.Record, u.Needs, b.Shop, b.Doc.Fineness)
	}
	b.Buy = money.Buy(b.Parts.Left(journal.BlankCut), stockOf(b.Layout), s, b.Layout.Missing...).Less(itemsOf(u.Record), s)
	if b.Work, err = steps.Plan(b.Resolved, b.Parts, plansOf(b.Layout), s, fate.Redo(u.Settled)...); err != nil {
		return err
	}
	switch {
	case u.Record.Delivered:
		b.Work = steps.Only(b.Work, s)
	case u.Record.Finished:
		b.Work = steps.Only(b.Work, s, "cure", "deliver", "anchor")
	}
	return nil
}

// asMade takes over how pipes that could be bought or cut were really made.
func asMade(chosen map[string]part.Chosen, works map[string][]string) map[string]part.Chosen {
	for tag := range chosen {
		if slices.Contains(works[tag], "cut-pipe") || slices.Contains(works[tag], "thread") {
			chosen[tag] = part.Chosen{Cut: true, Why: "cut: it was made so"}
		}
	}
	return chosen
}

// fitted tells the fittings at joints whose pipes are all in the frame: they are there too.
func (b *Build) fitted(states map[string]journal.State) {
	for i, n := range b.Resolved.Nodes {
		tag := b.Parts.NodeTags[i]
		if tag == "" || len(n.Sticks) == 0 {
			continue
		}
		all := true
		for _, s := range n.Sticks {
			all = all && states[b.Parts.StickTags[s]] >= journal.Fitted
		}
		if all {
			states[tag] = journal.Fitted
		}
	}
}

// stocked is the shop with what was bought for the piece and is not used up in its rack.
func stocked(s *shop.Shop, rec *journal.Record) *shop.Shop {
	if len(rec.Goods) == 0 {
		return s
	}
	with := *s
	rack := shop.Rack{Boards: clip(s.Rack.Boards), Sticks: clip(s.Rack.Sticks), Sheets: clip(s.Rack.Sheets), Nipples: itemsOf(rec)}
	for _, g := range rec.Goods {
		wide, thick := length.Length(g.Size[1]), length.Length(g.Size[2])
		switch left := length.Length(g.Left); {
		case left <= 0:
		case g.Kind == journal.BoardGoods:
			rack.Boards = append(rack.Boards, shop.Board{
				Tag: g.Tag, Species: g.Material, Quarters: g.Quarters, Length: left, Width: wide, Thickness: thick, RoughEdges: g.Rough, Defects: defects(g), Paid: true,
			})
		case g.Kind == journal.StickGoods:
			rack.Sticks = append(rack.Sticks, shop.Stick{Tag: g.Tag, Pipe: g.Material, Length: left, Paid: true})
		case g.Kind == journal.SheetGoods:
			rack.Sheets = append(rack.Sheets, shop.Sheet{Tag: g.Tag, Sheet: g.Material, Length: left, Width: wide, Paid: true})
		}
	}
	with.Rack = rack
	return &with
}

func clip[T any](all []T) []T { return all[:len(all):len(all)] }

// defects are those of a board that lie in what is left of it: cuts are taken from its start.
func defects(g journal.Piece) (out []shop.Defect) {
	gone := length.Length(g.Size[0] - g.Left)
	for _, d := range g.Defects {
		x, long := length.Length(d.At[0])-gone, length.Length(d.Size[0])
		if x < 0 {
			x, long = 0, long+x
		}
		if long > 0 {
			out = append(out, shop.Defect{Kind: d.Kind, Face: d.Face, X: x, Y: length.Length(d.At[1]), Length: long, Width: length.Length(d.Size[1])})
		}
	}
	return out
}

// itemsOf adds up the things that were bought by the piece.
func itemsOf(rec *journal.Record) map[string]float64 {
	have := map[string]float64{}
	for _, g := range rec.Goods {
		if g.Kind == journal.ItemGoods {
			have[g.Item] += g.Count
		}
	}
	return have
}

// inHand tells the parts that are laid out on stock that was bought for the piece.
func inHand(r *layout.Result, rec *journal.Record) map[string]bool {
	bought := map[string]bool{}
	for _, g := range rec.Goods {
		bought[g.Tag] = true
	}
	out := map[string]bool{}
	for _, l := range r.All() {
		for tag, on := range l.PartsOn() {
			all := len(on) > 0
			for _, stock := range on {
				all = all && bought[stock]
			}
			if all {
				out[tag] = true
			}
		}
	}
	return out
}

// recordHash is what of a record a build depends on: not what the client asked for, and not how many entries there are.
func recordHash(rec *journal.Record) []byte {
	done := *rec
	done.Orders, done.Last = nil, 0
	text, err := json.Marshal(done)
	if err != nil {
		return []byte(err.Error()) // a record is strings and finite numbers
	}
	return text
}

// pushed are the push tests of the standing frame.
func pushed(rec *journal.Record) (out []check.Pushed) {
	for _, t := range rec.Pushes {
		n, _ := t.Newtons()
		out = append(out, check.Pushed{Panel: t.On, Towards: piece.PanelSide(t.Towards), Newtons: n, Moved: length.Length(t.Moved).MM(), Number: t.Number})
	}
	return out
}
