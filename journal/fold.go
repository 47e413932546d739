package journal

import (
	"cmp"
	"slices"

	"rodwright/length"
)

// Thing is a part that was made, as it is now.
type Thing struct {
	ID       string   // of the entry that first told of it
	Label    string   // the tag it had when it was first made, as it is written on it
	Place    string   // what it is for; empty: it went to the rack
	State    State    // how far it has come
	FittedAt string   // the place it is fitted in; empty: in none
	Works    []string // the kinds of work that were told, each once, in order: openings are cut one kind after the other
	Shape    Shape
	HandsH   float64 // all that was spent on it
	AgainH   float64 // of those, what a piece made right at first does not take
	Stock    string  // tag of the goods it was cut from; empty where nobody said
	Spoiled  string  // what went wrong with it; empty: it can be used
	Since    int64   // number of the last entry about it
}

// Live reports whether the thing can be used for something.
func (t Thing) Live() bool { return t.Spoiled == "" }

// Piece is a board, stick or sheet that was bought, and what of its length is left.
type Piece struct {
	Goods
	ID   string // of the entry that told of it
	Left MM     // of its length, by the cuts that were told
	Lost MM     // of its length, by what went wrong with it
}

// Asking is a change the client asked for, and how it stands.
type Asking struct {
	Order
	ID       string
	Number   int64 // of its entry
	Answered bool
	Yes      bool
}

// Record is what the facts say that stand: how far a piece has come.
type Record struct {
	Things    []Thing  // in the order they were first told of
	Goods     []Piece  // what was bought, in order
	Distances []Taken  // in order
	Pushes    []Test   `json:",omitempty"` // in order
	Orders    []Asking // in order
	Layouts   []Laid   `json:",omitempty"` // that were accepted, in order: of those of one problem the last
	Finished  bool
	Delivered bool
	Last      int64 // number of the last entry folded
}

// Taken is a measured distance with the entry that told it.
type Taken struct {
	Distance
	Number int64
}

// Empty reports whether nothing was bought, made or measured: what the client asks for is nothing done, nor is a layout
// that was accepted.
func (r *Record) Empty() bool {
	return r == nil || len(r.Things) == 0 && len(r.Goods) == 0 && len(r.Distances) == 0 && len(r.Pushes) == 0 && !r.Finished && !r.Delivered
}

// Tells reports whether the record says anything that a piece is derived from: what is done, or a layout that was
// accepted.
func (r *Record) Tells() bool { return !r.Empty() || r != nil && len(r.Layouts) > 0 }

// Thing returns the thing with the given id.
func (r *Record) Thing(id string) (Thing, bool) {
	if r != nil {
		for _, t := range r.Things {
			if t.ID == id {
				return t, true
			}
		}
	}
	return Thing{}, false
}

// Fold returns what the facts say that stand after all entries. Facts that were withdrawn count as never written:
// what a thing is like is what the last standing fact of work on it says. What Check refuses tells nothing.
//
// A cut uses up length of the last goods with its tag that were bought before it, or of the first after it where the
// cut was written down before the buying was.
func Fold(es []Entry) *Record {
	f := folding{Record: &Record{}, at: make(map[string]int), owed: make(map[string]MM)}
	stands := Standing(es)
	for i, e := range es {
		f.Last = e.Number
		if stands[i] {
			f.entry(e)
		}
	}
	return f.Record
}

type folding struct {
	*Record
	at   map[string]int // of each thing, by its id
	owed map[string]MM  // by tag: what cuts used up of goods not yet told of
}

func (f *folding) entry(e Entry) {
	switch {
	case e.Kind == Fact && e.Fact != nil && e.Fact.Check() == nil:
		f.fact(e)
	case e.Kind == Asked && e.Order != nil && e.Order.check() == nil:
		f.Orders = append(f.Orders, Asking{Order: *e.Order, ID: e.ID, Number: e.Number})
	case e.Kind == Answer:
		f.answer(e)
	case e.Kind == Accepted && e.Layout != nil && e.Layout.check() == nil:
		f.laid(e)
	}
}

func (f *folding) fact(e Entry) {
	switch h := e.Fact; h.What {
	case Wrong:
		if h.From != "" {
			f.lost(h.From, h.Took)
		} else {
			f.made(e)
		}
	case Made:
		f.made(e)
	case Spoiled, Meant:
		f.judged(e)
	case Bought:
		f.Goods = append(f.Goods, Piece{Goods: *h.Goods, ID: e.ID, Left: h.Goods.Size[0]})
		f.took(h.Goods.Tag, 0)
	case Measured:
		f.Distances = append(f.Distances, Taken{*h.Distance, e.Number})
	case Pushed:
		f.Pushes = append(f.Pushes, Test{*h.Push, e.Number})
	case Finished:
		f.Finished = true
	case Delivered:
		f.Delivered = true
	}
}

// judged folds what became of a part that was made: it is spoiled, or meant for another place.
func (f *folding) judged(e Entry) {
	i, ok := f.at[e.Fact.Thing]
	if !ok {
		return // nothing that stands tells that it was made
	}
	t := &f.Things[i]
	t.Since = e.Number
	if e.Fact.What == Spoiled {
		t.Spoiled = e.Fact.Why
		return
	}
	t.goesTo(e.Fact.Place)
}

// goesTo gives the thing a place: where it is fitted in another one it is to be taken out of there.
func (t *Thing) goesTo(place string) {
	switch {
	case t.Place == place:
		return
	case t.FittedAt == place && place != "": // it never left
		t.State = Fitted
	default:
		t.State = min(t.State, Coated)
	}
	t.Place = place
}

// TakeOut reports whether the thing is fitted where it is for no more.
func (t Thing) TakeOut() bool { return t.FittedAt != "" && t.FittedAt != t.Place }

func (f *folding) made(e Entry) {
	h := e.Fact
	id := h.Thing
	if id == "" {
		id = e.ID
	}
	i, ok := f.at[id]
	if !ok && h.What == Wrong {
		return // nothing that stands tells that it was made
	}
	if !ok {
		i = len(f.Things)
		f.at[id] = i
		f.Things = append(f.Things, Thing{ID: id, Label: h.Part})
	}
	t := &f.Things[i]
	to, _ := AfterWork(h.Work) // what went wrong gets a part no further
	t.goesTo(h.Place)
	t.State, t.Shape, t.Since = max(t.State, to), *h.Shape, e.Number
	switch {
	case to == Fitted:
		t.FittedAt = h.Place
	case h.Again || t.TakeOut(): // it was taken out of the piece for that
		t.State, t.FittedAt = min(t.State, Coated), ""
	}
	if h.Work != "" && !slices.Contains(t.Works, h.Work) {
		t.Works = append(t.Works[:len(t.Works):len(t.Works)], h.Work)
	}
	hours := cmp.Or(h.HandsH, h.PlanH)
	t.HandsH += hours
	if h.Again {
		t.AgainH += hours
	}
	if h.From != "" {
		t.Stock = h.From
		f.took(h.From, h.Took)
	}
}

// took uses up some of the length of the goods with a tag, and what was owed of it.
func (f *folding) took(tag string, much MM) {
	much += f.owed[tag]
	f.owed[tag] = min(much, MM(length.Max))
	for i := len(f.Goods) - 1; i >= 0; i-- {
		if g := &f.Goods[i]; g.Tag == tag && g.Kind != ItemGoods {
			g.Left, f.owed[tag] = max(0, g.Left-much), 0
			return
		}
	}
}

// lost takes off the length of the goods with a tag what can't be used of it any more.
func (f *folding) lost(tag string, much MM) {
	for i := len(f.Goods) - 1; i >= 0; i-- {
		if g := &f.Goods[i]; g.Tag == tag && g.Kind != ItemGoods {
			g.Lost += min(much, g.Left)
			break
		}
	}
	f.took(tag, much)
}

func (f *folding) answer(e Entry) {
	for i := range f.Orders {
		if o := &f.Orders[i]; o.ID == e.Names {
			o.Answered, o.Yes = true, e.Yes
		}
	}
}
