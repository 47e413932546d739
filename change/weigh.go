package change

import (
	"fmt"
	"slices"

	"rodwright/build"
	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// Weighed is what an edit of a piece under way does, before it is taken.
type Weighed struct {
	Edits   []journal.Put `json:"edits"`
	Nothing bool          `json:"nothing"` // it changes nothing
	Words   []string      `json:"words"`   // the whole in a few sentences, the dearest first
	Ripple  Ripple        `json:"ripple"`
	Fates   []Fate        `json:"fates"`   // of every part already made, in the order they were told of
	Again   []Anew        `json:"again"`   // parts that are to be made though something was made for them
	Redo    []Redo        `json:"redo"`    // work that puts made parts right, in order
	Stock   []Relaid      `json:"stock"`   // boards, sticks and sheets already bought that are laid out otherwise
	Papers  []string      `json:"papers"`  // papers that are out of date
	Figures []Moved       `json:"figures"` // findings whose verdict stays and whose figure moves
	Promise Days          `json:"promise"` // days until the piece may be promised: backlog, work, waits and slack
	Cost    Cost          `json:"cost"`
	Unknown []string      `json:"unknown"` // what of the cost has no price

	// Meant is what is to be written besides the edits when it is taken: what made parts are for from then on.
	Meant []journal.Happened `json:"-"`
	After *Truth             `json:"-"` // the piece as it stands then
}

// Fate is what becomes of one part that is already made.
type Fate struct {
	Thing     string    `json:"thing"` // id of the entry that first told of it
	Label     string    `json:"label"` // the tag that is written on it
	State     string    `json:"state"`
	From      string    `json:"from"` // what it was for; empty: the rack
	To        string    `json:"to"`   // what it is for then; empty: the rack
	Tag       string    `json:"tag"`  // in the plan then
	Kind      string    `json:"kind"` // as it is, cut down, add to, another part, rack
	Words     string    `json:"words"`
	Off       []OffMM   `json:"off"`
	Tools     []string  `json:"tools"` // with what it is done, in the order of the work
	Shows     []string  `json:"shows"` // what will show
	HandsH    float64   `json:"handsH"`
	Cents     int64     `json:"cents"`  // of putting it right, in hundredths
	Others    []Another `json:"others"` // the next best that could become of it, the cheapest first
	Unchanged bool      `json:"unchanged"`
}

// OffMM is how much is cut off one side.
type OffMM struct {
	Side string `json:"side"`
	MM   MM     `json:"mm"`
}

// Another is something else that could become of a part.
type Another struct {
	Kind  string `json:"kind"`
	To    string `json:"to"`
	Words string `json:"words"`
	Cents int64  `json:"cents"` // of the whole, more than what was chosen
}

// Anew is a part that is to be made though something was made for it.
type Anew struct {
	Tag   string `json:"tag"`
	Place string `json:"place"`
	Cents int64  `json:"cents"` // material and hours
	Why   string `json:"why"`   // what was made does not serve
}

// Redo is work that puts made parts right.
type Redo struct {
	Parts  []string `json:"parts"` // the tags written on them
	Work   string   `json:"work"`
	Title  string   `json:"title"`
	Tool   string   `json:"tool"`
	HandsH float64  `json:"handsH"`
	WaitH  float64  `json:"waitH"`
}

// Cost is what the change costs, all in all: the quote after it less the quote before, and of what that is made up.
type Cost struct {
	Total    *int64   `json:"total"` // in hundredths, margin and tax included; nil where it is not known
	Currency string   `json:"currency"`
	Parts    int64    `json:"parts"`  // of the parts already made: material and hours to put right or make again
	HandsH   float64  `json:"handsH"` // hours more, or fewer
	Lost     []string `json:"lost"`   // what was made in vain by it
}

// Weigh says what edits do to a piece as it stands. Nothing is stored. Promises:
//
//  1. Taking it gives the same build as After: the edits and Meant, written one after the other.
//  2. Of all ways to use what is made for what is needed, the chosen one costs least.
//  3. No part serves twice.
//  4. Nothing is larger afterwards but by a way that adds to it.
//  5. Edits without an effect change nothing, and are said to.
//
// The error is a *piece.Error that names the place of what can't be.
func Weigh(now *Truth, edits ...journal.Put) (*Weighed, error) {
	w := &Weighed{Edits: edits}
	text := now.Text
	var err error
	for _, e := range edits {
		if text, err = piece.Edit(text, e.Path, e.New); err != nil {
			return nil, err
		}
	}
	plan, err := now.Log.derive(text, frameOnly(now.Record))
	if err != nil {
		return nil, err
	}
	chosen, costs, err := w.choose(now, plan)
	if err != nil {
		return nil, err
	}
	w.tell(now, chosen, costs)
	return w, nil
}

// tell fills in what differs between now and after.
func (w *Weighed) tell(now *Truth, a fate.Assignment, costs *fate.Cost) {
	before, after := now.Build, w.After.Build
	w.Ripple = Compare(before, after)
	w.fates(now, a, costs)
	w.again(now, a, costs)
	w.Redo = redone(after)
	w.Stock = relaid(before, after)
	w.Papers = papers(before, after)
	w.Figures = figuresMoved(before, after)
	w.Promise = promised(now.Log.Shop, before, after)
	w.Unknown = nonNil(a.Unknown)
	w.cost(before, after, a)
	w.Nothing = w.Ripple.Empty() && len(w.Meant) == 0 && len(w.Papers) == 0 && len(w.Figures) == 0 && !slices.ContainsFunc(w.Fates, func(f Fate) bool { return !f.Unchanged })
	w.Words = w.words(after.Doc.Fineness)
}

// promised is in how many days the piece may be promised before and after.
func promised(s *shop.Shop, before, after *build.Build) Days {
	return Days{int(steps.Promise(before.Work, s).Value), int(steps.Promise(after.Work, s).Value)}
}

func nonNil[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// again tells which parts are to be made although something was made for them before.
func (w *Weighed) again(now *Truth, a fate.Assignment, costs *fate.Cost) {
	w.Again = []Anew{}
	for j := range costs.Needs {
		need, c := &costs.Needs[j], a.Choices[j]
		if c.Thing != nil {
			continue
		}
		i := slices.IndexFunc(costs.Things, func(t journal.Thing) bool { return t.Place == need.Place })
		if i < 0 {
			continue
		}
		why := costs.Why[i][j]
		if why == "" {
			why = whyNot(a, &costs.Things[i])
		}
		w.Again = append(w.Again, Anew{need.Tag, need.Place, costs.Make[j], why})
	}
}

// whyNot says why a part that could be made into what its place needs is not.
func whyNot(a fate.Assignment, t *journal.Thing) string {
	for _, c := range a.Choices {
		if c.Thing == t && c.Need != nil {
			return "what was made for it serves better elsewhere"
		}
	}
	return "a new one costs less than putting the old one right"
}

// redone lists the work that puts made parts right, those that are put right alike together.
func redone(b *build.Build) []Redo {
	out := []Redo{}
	if b.Under == nil {
		return out
	}
	for _, group := range fate.Alike(b.Under.Settled) {
		var labels []string
		for _, s := range group {
			labels = append(labels, s.Thing.Label)
		}
		for _, j := range group[0].Way.Jobs {
			hands := j.SetUpH + float64(len(group))*(j.HandsH-j.SetUpH)
			out = append(out, Redo{labels, j.Work, j.Titled(labels), j.Tool, six(hands), six(j.WaitH)})
		}
	}
	return out
}

// cost adds up what the change costs.
func (w *Weighed) cost(before, after *build.Build, a fate.Assignment) {
	w.Cost.Currency, w.Cost.Lost = after.Quote.Currency, []string{}
	if m := w.Ripple.Money; m.From != nil && m.To != nil {
		d := *m.To - *m.From
		w.Cost.Total = &d
	}
	for _, f := range w.Fates {
		if f.To != "" && !f.Unchanged {
			w.Cost.Parts += f.Cents
		}
		if f.To == "" && f.From != "" {
			w.Cost.Lost = append(w.Cost.Lost, f.Label)
		}
	}
	for _, n := range w.Again {
		w.Cost.Parts += n.Cents
	}
	w.Cost.HandsH = six(handsOf(after) - handsOf(before))
}

// handsOf is all the hours of a build, what is done and in vain included.
func handsOf(b *build.Build) float64 {
	if b.Under == nil {
		return b.Work.HandsH
	}
	return b.Under.Whole.HandsH + b.Under.Extra.HandsH
}

// mostWords is how many sentences are said before figures that move without turning a verdict are left to their list.
const mostWords = 8

// words says the whole in a few sentences.
func (w *Weighed) words(fine length.Fineness) []string {
	if w.Nothing {
		return []string{"Nothing changes."}
	}
	var out []string
	for _, n := range w.Again {
		out = append(out, fmt.Sprintf("%s (%s) is to be made again: %s.", n.Place, n.Tag, n.Why))
	}
	for _, f := range w.Fates {
		switch {
		case f.Unchanged:
		case f.To == "":
			out = append(out, fmt.Sprintf("%s goes to the rack.", f.Label))
		case f.Kind == string(fate.AsIs):
		default:
			out = append(out, fmt.Sprintf("%s: %s.", f.Label, f.Words))
		}
	}
	out = append(out, w.Ripple.Words(fine)...)
	for _, f := range w.Figures {
		if len(out) >= mostWords {
			break
		}
		out = append(out, fmt.Sprintf("%s, %s: %s → %s, %s as before.", f.Check, f.Place, f.From, f.To, f.Verdict))
	}
	return out
}
