package change

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"rodwright/fate"
	"rodwright/journal"
	"rodwright/part"
)

// WayOut is one way out when something went wrong with a part.
type WayOut struct {
	Kind    string             `json:"kind"` // put right, another part, trim the siblings, shift the design, make again
	Words   string             `json:"words"`
	Edits   []journal.Put      `json:"edits"` // of the design, where it is shifted
	Cents   *int64             `json:"cents"` // more on the quote, in hundredths; nil where it is not known
	HandsH  float64            `json:"handsH"`
	Days    int                `json:"days"`  // calendar days of work more
	Shows   []string           `json:"shows"` // what will show
	Weighed *Weighed           `json:"weighed"`
	Meant   []journal.Happened `json:"-"` // what is to be written, after what went wrong and the edits, when it is taken
}

// The kinds of ways out.
const (
	PutRight     = "put right"
	AnotherPart  = "another part"
	TrimSiblings = "trim the siblings"
	ShiftDesign  = "shift the design"
	MakeItAgain  = "make again"
	LayOutAgain  = "lay out again"
)

// WaysOut lists the ways out when something went wrong with a part that is made, the cheapest first: put it right, take
// another part that is made, shift the design to what the part is now (and trim its siblings to match), or make it
// again from what is left or from new stock. Wrong is the completed fact; nothing is stored. Every way is weighed with
// all its consequences.
func WaysOut(now *Truth, wrong journal.Happened) ([]WayOut, error) {
	after, err := now.then(facts([]journal.Happened{wrong}))
	if err != nil {
		return nil, err
	}
	o := &waysOut{now: now, after: after, wrong: wrong}
	if wrong.From != "" {
		return o.layAgain(), nil
	}
	for _, find := range []func() error{o.putRight, o.another, o.shift, o.makeAgain} {
		if err := find(); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(o.ways, func(a, b WayOut) int {
		return cmp.Or(compareCents(a.Cents, b.Cents), cmp.Compare(a.HandsH, b.HandsH))
	})
	return o.ways, nil
}

// compareCents puts what is not known last.
func compareCents(a, b *int64) int {
	switch {
	case a == nil && b == nil:
		return 0
	case a == nil:
		return 1
	case b == nil:
		return -1
	}
	return cmp.Compare(*a, *b)
}

type waysOut struct {
	now, after *Truth // before and after what went wrong was told
	wrong      journal.Happened
	ways       []WayOut
}

// thing is the part that went wrong, as it is now, and how it is settled.
func (o *waysOut) settled() *fate.Settled {
	for i := range o.after.Build.Under.Settled {
		if s := &o.after.Build.Under.Settled[i]; s.Thing.ID == o.wrong.Thing {
			return s
		}
	}
	return nil
}

// add notes a way with what it costs against the piece before.
func (o *waysOut) add(kind, words string, w *Weighed, shows []string) {
	out := WayOut{Kind: kind, Words: words, Edits: nonNil(w.Edits), Shows: nonNil(shows), Weighed: w, Meant: w.Meant}
	before, after := o.now.Build, w.After.Build
	if before.Quote.Total.Known && after.Quote.Total.Known {
		c := int64(after.Quote.Total.Cents - before.Quote.Total.Cents)
		out.Cents = &c
	}
	out.HandsH, out.Days = six(handsOf(after)-handsOf(before)), after.Work.Days-before.Work.Days
	o.ways = append(o.ways, out)
}

// layAgain lays what is still to be cut out on what is left of the stock that went wrong, on other stock, and on new.
func (o *waysOut) layAgain() []WayOut {
	w := &Weighed{After: o.after}
	w.told(o.now)
	words := "lay out again what is still to be cut"
	for _, s := range w.Stock {
		words += fmt.Sprintf("; from %s: %s", s.Tag, cmp.Or(strings.Join(s.After, ", "), "nothing"))
	}
	for _, b := range w.Ripple.Boards {
		if b.To > b.From {
			words += fmt.Sprintf("; buy %g more %s of %s", six(b.To-b.From), b.Unit, b.Item)
		}
	}
	o.add(LayOutAgain, words, w, nil)
	return o.ways
}

// putRight uses the part at its place: as it is, cut, or added to.
func (o *waysOut) putRight() error {
	s := o.settled()
	if s == nil || s.Need == nil {
		return nil
	}
	w := &Weighed{After: o.after}
	w.told(o.now)
	o.add(PutRight, s.Way.Words, w, s.Way.Shows)
	return nil
}

// told fills in what differs where nothing but facts was written.
func (w *Weighed) told(now *Truth) {
	a, _ := assign(w.After, w.After.Build)
	for i := range a.Choices { // no thing is given another place
		if t := a.Choices[i].Thing; t != nil && a.Choices[i].Need != nil && t.Place != a.Choices[i].Need.Place {
			a.Choices[i].Thing = nil
		}
	}
	w.Edits, w.Fates, w.Again = nonNil(w.Edits), []Fate{}, []Anew{}
	w.Ripple = Compare(now.Build, w.After.Build)
	w.Redo, w.Stock, w.Papers, w.Unknown = redone(w.After.Build), relaid(now.Build, w.After.Build), papers(now.Build, w.After.Build), nonNil(a.Unknown)
	w.Figures, w.Promise = figuresMoved(now.Build, w.After.Build), promised(now.Log.Shop, now.Build, w.After.Build)
	w.cost(now.Build, w.After.Build, a)
	w.Words = w.words(w.After.Build.Doc.Fineness)
}

// another takes another part that is made for the place: of those that can be made into it the one that costs least,
// what it leaves behind included.
func (o *waysOut) another() error {
	_, costs := assign(o.after, o.after.Build)
	j := slices.IndexFunc(costs.Needs, func(n fate.Need) bool { return n.Place == o.wrong.Place })
	if j < 0 {
		return nil
	}
	best, least := -1, int64(fate.Never)
	for i, t := range costs.Things {
		if t.ID == o.wrong.Thing || costs.Serve[i][j] >= fate.Never {
			continue
		}
		cost := costs.Serve[i][j] - costs.Rack[i]
		if left := slices.IndexFunc(costs.Needs, func(n fate.Need) bool { return n.Place == t.Place }); left >= 0 {
			cost = costs.Serve[i][j] + costs.Make[left] - min(costs.Serve[i][left], costs.Make[left])
		}
		if cost < least {
			best, least = i, cost
		}
	}
	if best < 0 {
		return nil
	}
	t, way := costs.Things[best], costs.Ways[best][j][0]
	words := fmt.Sprintf("take %s for it: %s", t.Label, way.Words)
	if t.Place != "" {
		words += "; " + t.Place + " is then made anew"
	}
	return o.meant(AnotherPart, words, way.Shows,
		journal.Happened{What: journal.Meant, Thing: o.wrong.Thing, Part: o.wrong.Part},
		journal.Happened{What: journal.Meant, Thing: t.ID, Part: t.Label, Place: o.wrong.Place})
}

// meant weighs a way in which parts get other places.
func (o *waysOut) meant(kind, words string, shows []string, hs ...journal.Happened) error {
	after, err := o.after.then(facts(hs))
	if err != nil {
		return err
	}
	w := &Weighed{After: after, Meant: hs}
	w.told(o.now)
	o.add(kind, words, w, shows)
	return nil
}

// makeAgain puts the part on the rack and makes another.
func (o *waysOut) makeAgain() error {
	rack := journal.Happened{What: journal.Meant, Thing: o.wrong.Thing, Part: o.wrong.Part}
	after, err := o.after.then(facts([]journal.Happened{rack}))
	if err != nil {
		return err
	}
	words := "make it again"
	if need := needAt(after.needs(), o.wrong.Place); need != nil {
		words = "make " + need.Place + " again" + source(after, need)
		if need.Part.From == part.FromNipple {
			words = "buy another nipple"
		}
	}
	return o.meant(MakeItAgain, words, nil, rack)
}

// source says where a part made again comes from: stock bought for the piece, or new.
func source(t *Truth, need *fate.Need) string {
	for _, l := range t.Build.Layout.All() {
		on := l.PartsOn()[need.Tag]
		for _, g := range t.Record.Goods {
			if slices.Contains(on, g.Tag) {
				return " from " + g.Tag
			}
		}
		if len(on) > 0 {
			return " from new stock"
		}
	}
	return ""
}
