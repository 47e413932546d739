package build

import (
	"context"
	"encoding/json"

	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/money"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// searchNodes bounds the search for one layout inside Derive, so that typing is answered at once; a
// deeper search is a job's, and enters here when it is accepted.
const searchNodes = 20_000

// layouts lays out every stock material, each kept in the memo by its problem, and takes the layouts of the record that
// were accepted for these problems. Told is what has become of those of each material.
func layouts(r *piece.Resolved, list *part.List, s *shop.Shop, rec *journal.Record, memo *Memo) (_ *layout.Result, told []Accepted, _ error) {
	tasks, missing := layout.Tasks(r, list, s)
	laid := make([]layout.Layout, 0, len(tasks))
	var accepted []journal.Laid
	if rec != nil {
		accepted = rec.Layouts
	}
	for _, t := range tasks {
		type answer struct {
			cut *cut.Answer
			err error
		}
		got := memo.Keep("layout", []byte(t.Key()), func() any {
			l, err := t.Solve(context.Background(), cut.Limits{Nodes: searchNodes})
			return answer{l.Answer, err}
		}).(answer)
		if got.err != nil {
			return nil, nil, got.err
		}
		l, err := t.Accept(got.cut)
		if err != nil {
			return nil, nil, err
		}
		l, of := settle(l, accepted, memo)
		if of != nil {
			told = append(told, *of)
		}
		laid = append(laid, l)
	}
	return layout.Gather(laid, missing), told, nil
}

// stockOf hands the opened stock to the buying list.
func stockOf(r *layout.Result) (out []money.Stock) {
	for _, l := range r.All() {
		for _, o := range l.Opened {
			out = append(out, money.Stock{Item: o.Item, Material: l.Material, Quantity: o.Quantity, Unit: o.Unit, FromRack: o.FromRack})
		}
	}
	return out
}

// plansOf hands the layouts to the steps.
func plansOf(r *layout.Result) (out []steps.Layout) {
	for _, l := range r.All() {
		out = append(out, steps.Layout{Kind: steps.Kind(l.Kind), Material: l.Material, Answer: l.Answer})
	}
	return out
}

// cutJSON are the layouts by kind and material.
type cutJSON struct {
	Stick map[string]json.RawMessage `json:"stick"` // encoding/json writes the keys sorted
	Panel map[string]json.RawMessage `json:"panel"`
	Sheet map[string]json.RawMessage `json:"sheet"`
}

// cutOf writes the layouts in the document's unit, as the verb cut does.
func cutOf(r *layout.Result, u length.Unit) (cutJSON, error) {
	out := cutJSON{map[string]json.RawMessage{}, map[string]json.RawMessage{}, map[string]json.RawMessage{}}
	for _, l := range r.All() {
		text, err := wire.JSON(l.Answer, u, l.Kind != layout.OfSticks)
		if err != nil {
			return out, err
		}
		switch l.Kind {
		case layout.OfSticks:
			out.Stick[l.Material] = text
		case layout.OfBoards:
			out.Panel[l.Material] = text
		case layout.OfSheets:
			out.Sheet[l.Material] = text
		}
	}
	return out, nil
}
