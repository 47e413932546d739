// Package rules says which entry may follow a log, beyond what package journal checks of every entry by itself. The
// rules hold for the shop's database and for the journal beside a piece file alike.
package rules

import (
	"fmt"

	"rodwright/journal"
)

// Check reports, as a *journal.EntryError, why the entry can't follow the log: a fact about a thing nobody made, an
// order out of turn, an answer to what is not asked or is answered, something withdrawn that does not stand.
func Check(log []journal.Entry, e journal.Entry) error {
	switch e.Kind {
	case journal.Undo:
		_, err := named(log, e, journal.Edit, journal.Undo)
		return err
	case journal.Fact:
		return checkThing(log, e.Fact)
	case journal.Asked:
		return checkOrder(log, e.Order)
	case journal.Answer:
		return checkAnswer(log, e)
	case journal.Withdrawn:
		_, err := named(log, e, journal.Fact, journal.Asked, journal.Answer, journal.Accepted)
		return err
	}
	return nil
}

// NextOrder returns the number of the next change that the client asks for. Those that were withdrawn keep theirs.
func NextOrder(log []journal.Entry) int {
	last := 0
	for _, e := range log {
		if e.Kind == journal.Asked {
			last = max(last, e.Order.No)
		}
	}
	return last + 1
}

// Yes returns the standing yes with the given id, or to the asked change with the given id, and the order that it
// took. It reports false when there is none.
func Yes(log []journal.Entry, id string) (journal.Entry, *journal.Order, bool) {
	stands := journal.Standing(log)
	for i, e := range log {
		if stands[i] && e.Kind == journal.Answer && e.Yes && (e.ID == id || e.Names == id) {
			if asked, ok := find(log, e.Names); ok {
				return e, log[asked].Order, true
			}
		}
	}
	return journal.Entry{}, nil, false
}

func checkThing(log []journal.Entry, h *journal.Happened) error {
	if h.Thing == "" {
		return nil
	}
	if _, ok := journal.Fold(log).Thing(h.Thing); !ok {
		return &journal.EntryError{Field: "fact.thing", Why: "is no part that was made: it must be the id of the entry that first told of one"}
	}
	return nil
}

func checkOrder(log []journal.Entry, o *journal.Order) error {
	if next := NextOrder(log); o.No != next {
		return &journal.EntryError{Field: "order.no", Why: fmt.Sprintf("is %d: the next change of this piece is number %d", o.No, next)}
	}
	return nil
}

func checkAnswer(log []journal.Entry, e journal.Entry) error {
	asked, err := named(log, e, journal.Asked)
	if err != nil {
		return err
	}
	stands := journal.Standing(log)
	for i, other := range log {
		if stands[i] && other.Kind == journal.Answer && other.Names == e.Names {
			return &journal.EntryError{Field: "names", Why: fmt.Sprintf("is entry %d, change %d, which entry %d answered already: withdraw that first", asked.Number, asked.Order.No, other.Number)}
		}
	}
	return nil
}

// named returns the entry that e is about, which must stand and be of one of the kinds.
func named(log []journal.Entry, e journal.Entry, kinds ...journal.Kind) (journal.Entry, error) {
	i, ok := find(log, e.Names)
	if !ok {
		return journal.Entry{}, &journal.EntryError{Field: "names", Why: "names no entry of this piece"}
	}
	of := log[i]
	for _, kind := range kinds {
		if of.Kind != kind {
			continue
		}
		if !journal.Standing(log)[i] {
			return of, &journal.EntryError{Field: "names", Why: fmt.Sprintf("is entry %d, which was taken back or withdrawn", of.Number)}
		}
		return of, nil
	}
	return of, &journal.EntryError{Field: "names", Why: fmt.Sprintf("is entry %d, of kind %s: %s can't be about that", of.Number, of.Kind, e.Kind)}
}

// find returns the place in the log of the entry with the given id.
func find(log []journal.Entry, id string) (int, bool) {
	for i := range log {
		if log[i].ID == id {
			return i, true
		}
	}
	return -1, false
}
